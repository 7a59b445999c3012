//! What stands on the layers of openings and is none: slanted skylights, tags, panes, swings of doors. Areas
//! are reckoned by hand: a wall of 240 by 96 in with a window of 36 by 48 and a door of 36 by 80 at its foot,
//! 240 x 96 - 36 x 48 - 36 x 80 = 18,432 sq in, 128 sq ft.

use std::fmt::Write;

use lapwright::finding::house::HouseFinding;
use lapwright::finding::{Finding, FindingKind, Findings};
use lapwright::layout::Layout;
use lapwright::pipeline;

type At = (f64, f64);

fn polyline(layer: &str, points: &[At]) -> String {
    let mut out = format!("0\nLWPOLYLINE\n8\n{layer}\n90\n{}\n70\n1\n", points.len());
    points.iter().for_each(|(x, y)| _ = write!(out, "10\n{x}\n20\n{y}\n"));
    out
}

fn boxed(layer: &str, [x0, y0, x1, y1]: [f64; 4]) -> String {
    polyline(layer, &[(x0, y0), (x1, y0), (x1, y1), (x0, y1)])
}

fn line(layer: &str, a: At, b: At) -> String {
    format!("0\nLINE\n8\n{layer}\n10\n{}\n20\n{}\n11\n{}\n21\n{}\n", a.0, a.1, b.0, b.1)
}

/// The wall as an outline, or as a hatch with its openings cut out.
fn wall(hatched: bool) -> String {
    if !hatched {
        return boxed("A-WALL-OTLN", [0.0, 0.0, 240.0, 96.0]);
    }
    let outer =
        [(0.0, 0.0), (140.0, 0.0), (140.0, 80.0), (176.0, 80.0), (176.0, 0.0), (240.0, 0.0)];
    let outer = [&outer[..], &[(240.0, 96.0), (0.0, 96.0)]].concat();
    let window = vec![(40.0, 36.0), (76.0, 36.0), (76.0, 84.0), (40.0, 84.0)];
    let mut out = String::from(
        "0\nHATCH\n8\nA-WALL-PATT\n10\n0\n20\n0\n30\n0\n2\nLINES\n70\n0\n71\n0\n91\n2\n",
    );
    for ring in [outer, window] {
        let _ = write!(out, "92\n7\n72\n0\n73\n1\n93\n{}\n", ring.len());
        ring.iter().for_each(|(x, y)| _ = write!(out, "10\n{x}\n20\n{y}\n"));
        out.push_str("97\n0\n");
    }
    out + "75\n0\n76\n0\n52\n0\n41\n1\n77\n0\n78\n1\n53\n0\n43\n0\n44\n0\n45\n0\n46\n6\n79\n0\n98\n0\n"
}

fn laid(hatched: bool, more: &str) -> (Layout, Vec<Finding>) {
    let openings =
        boxed("A-GLAZ", [40.0, 36.0, 76.0, 84.0]) + &boxed("A-DOOR", [140.0, 0.0, 176.0, 80.0]);
    let all = wall(hatched) + &openings + more;
    let drawing = format!("0\nSECTION\n2\nENTITIES\n{all}0\nENDSEC\n0\nEOF\n");
    let text = "[drawing]\nunit = \"inch\"\n[seams]\neffort = \"crew\"\n";
    let job = lapwright::job::file::parse(text, "job").unwrap();
    let mut found = Findings::default();
    let sets = pipeline::layout(drawing.as_bytes(), "t.dxf", &job, &mut found, &mut |_| {});
    (sets.unwrap().house.layout, found.all().to_vec())
}

/// Openings and the siding left, square feet.
fn is_cut(layout: &Layout) -> (usize, f64) {
    let walls = || layout.walls().map(|(_, w)| w);
    let net: f64 = walls().map(|w| w.net_area).sum();
    (walls().map(|w| w.openings.len()).sum(), (net * 1000.0).round() / 1000.0)
}

/// Panes, sash and a cross of bars inside the window's casing, drawn as loops and as lines.
fn panes() -> String {
    let sash = boxed("A-GLAZ", [42.0, 38.0, 74.0, 82.0]);
    let panes = [[43.0, 39.0, 57.0, 59.0], [59.0, 39.0, 73.0, 59.0], [43.0, 61.0, 73.0, 81.0]];
    let bars =
        line("A-GLAZ", (58.0, 36.0), (58.0, 84.0)) + &line("A-GLAZ", (40.0, 60.0), (76.0, 60.0));
    sash + &panes.map(|p| boxed("A-GLAZ", p)).concat() + &bars
}

/// The dashed triangle of a leaf's swing, from its hinges at mid height to the corners of the other jamb.
fn swing() -> String {
    line("A-DOOR", (140.0, 40.0), (176.0, 80.0)) + &line("A-DOOR", (140.0, 40.0), (176.0, 0.0))
}

/// A mark round a number, on the glass and beside it on the siding.
fn tags() -> String {
    let circle = |x: f64, y: f64| format!("0\nCIRCLE\n8\nA-GLAZ-IDEN\n10\n{x}\n20\n{y}\n40\n8\n");
    let six =
        [(116.0, 50.0), (112.0, 57.0), (104.0, 57.0), (100.0, 50.0), (104.0, 43.0), (112.0, 43.0)];
    let words = "0\nTEXT\n8\nA-GLAZ-IDEN\n10\n106\n20\n48\n40\n4\n1\n12\n";
    circle(58.0, 60.0) + &circle(20.0, 60.0) + &polyline("A-DOOR-IDEN", &six) + words
}

#[test]
fn panes_swings_and_tags_are_part_of_their_opening_or_none() {
    for hatched in [false, true] {
        for more in ["", &panes(), &swing(), &tags(), &(panes() + &swing() + &tags())] {
            let (layout, found) = laid(hatched, more);
            assert_eq!(is_cut(&layout), (2, 128.0), "{hatched}: {more}");
            let unused = found.iter().find(|f| f.code().word() == "drawn-unused");
            assert!(unused.is_none(), "{hatched}: {unused:?}");
        }
    }
}

/// Skylights in a roof over the wall: two slanted, as a gable's slope shows them, one upright, each with a
/// frame inside it.
fn skylights() -> String {
    let slanted = |x: f64, in_by: f64| {
        let (x0, x1, y0, y1) = (x + in_by, x + 30.0 - in_by, 120.0 + in_by, 150.0 - in_by);
        polyline("A-GLAZ", &[(x0, y0), (x1, y0), (x1 + 15.0, y1), (x0 + 15.0, y1)])
    };
    let roof = [(-12.0, 100.0), (252.0, 100.0), (210.0, 180.0), (30.0, 180.0)];
    polyline("A-ROOF-OTLN", &roof)
        + &slanted(40.0, 0.0)
        + &slanted(40.0, 2.0)
        + &slanted(100.0, 0.0)
        + &slanted(100.0, 2.0)
        + &boxed("A-GLAZ", [170.0, 120.0, 200.0, 150.0])
        + &boxed("A-GLAZ", [172.0, 122.0, 198.0, 148.0])
}

#[test]
fn skylights_in_a_roof_are_left_out_and_told_as_one() {
    for hatched in [false, true] {
        let (layout, found) = laid(hatched, &skylights());
        assert_eq!(is_cut(&layout), (2, 128.0), "{hatched}");
        assert_eq!(off_siding(&found), [3], "{hatched}");
    }
    // Where no roof is drawn, a loop beside an outline may be a wall's that is missing: that stops the run.
    let text = "[drawing]\nunit = \"inch\"\n";
    let job = lapwright::job::file::parse(text, "job").unwrap();
    let all = wall(false) + &boxed("A-GLAZ", [260.0, 36.0, 290.0, 66.0]);
    let drawing = format!("0\nSECTION\n2\nENTITIES\n{all}0\nENDSEC\n0\nEOF\n");
    let mut found = Findings::default();
    let stop = pipeline::layout(drawing.as_bytes(), "t.dxf", &job, &mut found, &mut |_| {});
    assert_eq!(stop.unwrap_err().0.code().word(), "opening-outside");
}

/// Findings of openings off the siding, each with how many.
fn off_siding(found: &[Finding]) -> Vec<usize> {
    let of = |f: &Finding| match f.kind {
        FindingKind::House(HouseFinding::OpeningsOffSiding { openings }) => Some(openings),
        _ => None,
    };
    found.iter().filter_map(of).collect()
}

#[test]
fn forty_windows_in_stone_are_one_finding() {
    // Eight across and five up, each 20 by 12, in the stone under the wall: no name tells one from another.
    let stone = boxed("A-WALL-BASE", [0.0, -90.0, 240.0, 0.0]);
    let at = (0..40).map(|k| (8.0 + 28.0 * f64::from(k % 8), -88.0 + 17.0 * f64::from(k / 8)));
    let all: String = at.map(|(x, y)| boxed("A-GLAZ", [x, y, x + 20.0, y + 12.0])).collect();
    for hatched in [false, true] {
        let (layout, found) = laid(hatched, &(stone.clone() + &all));
        assert_eq!(is_cut(&layout), (2, 128.0), "{hatched}");
        assert_eq!(off_siding(&found), [40], "{hatched}");
    }
}
