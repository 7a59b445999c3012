//! Habits of drawing that hide a wall, each by itself: patterns of roofs and plans that look like siding,
//! hatches in small pieces, windows across a band, elevations on layers of their own. Lengths are inches;
//! areas are reckoned by hand beside each drawing.

use std::fmt::Write;

use lapwright::finding::Findings;
use lapwright::geom::polygon::signed_area;
use lapwright::job::file as job_file;
use lapwright::layout::Layout;
use lapwright::layout::wall::LaidWall;
use lapwright::units::Unit;
use lapwright::{normalize, read};

use crate::support::{inches, lay, rect};

/// A hatch of level lines `pitch` apart, one of them at `level`.
pub(crate) fn hatch(ring: &[(f64, f64)], pitch: f64, level: f64) -> String {
    hatch_of(&[ring.to_vec()], pitch, level)
}

/// The same inside several rings.
pub(crate) fn hatch_of(rings: &[Vec<(f64, f64)>], pitch: f64, level: f64) -> String {
    let mut out = String::from("0\nHATCH\n8\n0\n10\n0\n20\n0\n30\n0\n2\nLINES\n70\n0\n71\n0\n");
    let _ = writeln!(out, "91\n{}", rings.len());
    for ring in rings {
        let _ = writeln!(out, "92\n7\n72\n0\n73\n1\n93\n{}", ring.len());
        ring.iter().for_each(|(x, y)| out.push_str(&format!("10\n{x}\n20\n{y}\n")));
        out.push_str("97\n0\n");
    }
    let family = format!("53\n0\n43\n0\n44\n{level}\n45\n0\n46\n{pitch}\n79\n0\n98\n0\n");
    out + "75\n0\n76\n0\n52\n0\n41\n1\n77\n0\n78\n1\n" + &family
}

pub(crate) fn line(layer: &str, (x0, y0): (f64, f64), (x1, y1): (f64, f64)) -> String {
    format!("0\nLINE\n8\n{layer}\n10\n{x0}\n20\n{y0}\n11\n{x1}\n21\n{y1}\n")
}

fn text(words: &str, x: f64, y: f64) -> String {
    format!("0\nTEXT\n8\n0\n10\n{x}\n20\n{y}\n40\n9\n1\n{words}\n")
}

pub(crate) fn file(header: Option<i32>, blocks: &str, entities: &[String]) -> String {
    let head = header.map_or(String::new(), |code| {
        format!("0\nSECTION\n2\nHEADER\n9\n$INSUNITS\n70\n{code}\n0\nENDSEC\n")
    });
    let blocks = match blocks {
        "" => String::new(),
        b => format!("0\nSECTION\n2\nBLOCKS\n{b}0\nENDSEC\n"),
    };
    let entities = entities.concat();
    format!("{head}{blocks}0\nSECTION\n2\nENTITIES\n{entities}0\nENDSEC\n0\nEOF\n")
}

pub(crate) fn laid(entities: &[String]) -> Layout {
    lay(file(Some(1), "", entities).as_bytes(), &inches())
}

fn walls(layout: &Layout) -> Vec<&LaidWall> {
    layout.elevations.iter().flat_map(|e| &e.walls).collect()
}

/// Net areas of the walls as drawn, square inches.
pub(crate) fn nets(layout: &Layout) -> Vec<f64> {
    let net = |w: &&LaidWall| (w.net_area + w.bare_area()) * 144.0;
    walls(layout).iter().map(net).map(f64::round).collect()
}

/// Sizes of a wall's openings, each by its box.
fn openings(wall: &LaidWall) -> Vec<(f64, f64)> {
    let size = |ring: &[[f64; 2]]| {
        let of = |k: usize| {
            let all = || ring.iter().map(|p| p[k]);
            all().fold(f64::MIN, f64::max) - all().fold(f64::MAX, f64::min)
        };
        (of(0), of(1))
    };
    wall.openings.iter().map(|o| size(&o.outline)).collect()
}

#[test]
fn a_roof_that_reaches_out_at_one_end_is_none_of_the_walls() {
    // A wall of 200 by 96 with lines 4 apart. Over a fascia of 7 a hip roof with lines 4 1/2 apart: at the left
    // it reaches out by 14, at the right the next part of the house begins.
    let roof = vec![(-14.0, 103.0), (200.0, 103.0), (200.0, 160.0), (40.0, 160.0)];
    let wall = hatch(&rect(0.0, 0.0, 200.0, 96.0), 4.0, 0.0);
    assert_eq!(nets(&laid(&[wall.clone(), hatch(&roof, 4.5, 103.0)])), [200.0 * 96.0]);
    // Siding over a band at another spacing, as wide as the wall, is siding.
    let upper = hatch(&rect(0.0, 103.0, 200.0, 160.0), 4.5, 103.0);
    let sum: f64 = nets(&laid(&[wall, upper])).iter().sum();
    assert_eq!(sum, 200.0 * 96.0 + 200.0 * 57.0);
}

#[test]
fn siding_between_two_bands_under_a_gable_is_no_hip() {
    // A gable wall of 180 by 200 with rakes rising 1 in 2 from 180 up: a band of 8 at 96, another of 8 at 190. The field between them leans in over the eave as a hip does, but only there: its sides
    // stand plumb for 76 of its 86. Rakes are 20 in at 190, 36 in at 198, and meet 45 over the eave, at 225.
    let lower = rect(0.0, 0.0, 180.0, 96.0);
    let middle =
        [(0.0, 104.0), (180.0, 104.0), (180.0, 180.0), (160.0, 190.0), (20.0, 190.0), (0.0, 180.0)];
    let peak = [(36.0, 198.0), (144.0, 198.0), (90.0, 225.0)];
    let drawn = [hatch(&lower, 6.0, 0.0), hatch(&middle, 6.0, 0.0), hatch(&peak, 6.0, 0.0)];
    let layout = laid(&drawn);
    // Of the field over the eave the mean width is 160.
    let net = 180.0 * 96.0 + 180.0 * 76.0 + 160.0 * 10.0 + 108.0 * 27.0 / 2.0;
    assert_eq!(nets(&layout), [net]);
    // A hip roof of the same width and lines leans in from its eave on, and is none.
    let hip = [(-14.0, 103.0), (194.0, 103.0), (150.0, 160.0), (30.0, 160.0)];
    assert_eq!(nets(&laid(&[hatch(&lower, 6.0, 0.0), hatch(&hip, 6.0, 103.0)])), [180.0 * 96.0]);
}

#[test]
fn a_roof_over_corner_boards_is_a_roof() {
    // One wall of 300 by 96 with corner boards of 4, and no second elevation that tells more: the siding is 292
    // wide. The roof reaches out past the boards by 16, its lines 4 1/2 apart.
    let siding = hatch(&rect(4.0, 0.0, 296.0, 96.0), 4.0, 0.0);
    let boards = [(0.0, 4.0), (296.0, 300.0)].map(|(a, b)| {
        let sides = [a, b].map(|x| line("0", (x, 0.0), (x, 100.0)));
        sides.concat() + &line("0", (a, 0.0), (b, 0.0))
    });
    let roof = hatch(&rect(-16.0, 108.0, 316.0, 170.0), 4.5, 108.0);
    let drawn = [siding, boards.concat(), roof];
    assert_eq!(nets(&laid(&drawn)), [292.0 * 96.0]);
}

/// The same hatch on a layer of its own.
fn on(layer: &str, hatch: String) -> String {
    hatch.replacen("8\n0\n", &format!("8\n{layer}\n"), 1)
}

#[test]
fn a_roofs_lines_are_a_roofs_in_every_elevation() {
    // Two elevations, each on a layer of its own: siding 4 apart, roofs 5 apart. South's roof reaches out over
    // its wall at both ends; east's stands between two gables, as wide as the wall under it.
    let south = [rect(0.0, 0.0, 200.0, 96.0), rect(-14.0, 104.0, 214.0, 160.0)];
    let east = [rect(1000.0, 0.0, 1200.0, 96.0), rect(1000.0, 104.0, 1200.0, 150.0)];
    let drawn = [
        on("SOUTH", hatch(&south[0], 4.0, 0.0)),
        on("SOUTH", hatch(&south[1], 5.0, 104.0)),
        on("EAST", hatch(&east[0], 4.0, 0.0)),
        on("EAST", hatch(&east[1], 5.0, 104.0)),
    ];
    assert_eq!(nets(&laid(&drawn)), [200.0 * 96.0, 200.0 * 96.0]);
}

#[test]
fn a_door_and_its_leaf_cut_at_the_foot_of_the_siding_are_one_opening() {
    // Stone up to 30: siding from 30 to 96. The door's frame from 0 to 80 and the leaf's upper light in it are
    // both cut at 30; so is its leaf, as wide as the frame.
    let outline = |layer: &str, r: Vec<(f64, f64)>| {
        let mut out = format!("0\nLWPOLYLINE\n8\n{layer}\n90\n4\n70\n1\n");
        r.iter().for_each(|(x, y)| out.push_str(&format!("10\n{x}\n20\n{y}\n")));
        out
    };
    let drawn = [
        outline("A-WALL-OTLN", rect(0.0, 30.0, 200.0, 96.0).to_vec()),
        outline("A-DOOR", rect(80.0, 0.0, 116.0, 80.0).to_vec()),
        outline("A-DOOR", rect(80.0, -2.0, 116.0, 80.0).to_vec()),
        outline("A-DOOR", rect(80.0, 4.0, 118.0, 78.0).to_vec()),
    ];
    let layout = laid(&drawn);
    // The third is none of the first's: 38 wide, it stands beside it by 2.
    assert_eq!(openings(walls(&layout)[0]).len(), 2);
    assert_eq!(openings(walls(&laid(&drawn[..3]))[0]), [(36.0, 50.0)]);
}

#[test]
fn a_window_across_a_band_is_one_opening() {
    // Siding from 0 to 100 and from 108 to 200, 300 wide; a window of 36 by 80 from 70 to 150 in both.
    let (x0, x1) = (140.0, 176.0);
    let lower = vec![
        (0.0, 0.0),
        (300.0, 0.0),
        (300.0, 100.0),
        (x1, 100.0),
        (x1, 70.0),
        (x0, 70.0),
        (x0, 100.0),
        (0.0, 100.0),
    ];
    let upper = vec![
        (0.0, 108.0),
        (x0, 108.0),
        (x0, 150.0),
        (x1, 150.0),
        (x1, 108.0),
        (300.0, 108.0),
        (300.0, 200.0),
        (0.0, 200.0),
    ];
    let layout = laid(&[hatch(&lower, 4.0, 0.0), hatch(&upper, 4.0, 0.0)]);
    assert_eq!(nets(&layout), [300.0 * 192.0 - 36.0 * (30.0 + 42.0)]);
    assert_eq!(openings(walls(&layout)[0]), [(36.0, 80.0)]);
}

#[test]
fn a_small_piece_of_a_hatch_is_siding_where_lines_run_on_into_it() {
    // A wall of 200 by 96 with a door of 36 by 82 from 80 to 116, hatched in pieces cut at 80 and 86: the piece
    // over the door from 80 to 86 has 6 x 14 = 84 square inches.
    let right =
        vec![(116.0, 0.0), (200.0, 0.0), (200.0, 96.0), (86.0, 96.0), (86.0, 82.0), (116.0, 82.0)];
    let small = rect(80.0, 82.0, 86.0, 96.0).to_vec();
    let pieces = [rect(0.0, 0.0, 80.0, 96.0).to_vec(), small, right];
    let layout = laid(&pieces.map(|p| hatch(&p, 4.0, 0.0)));
    assert_eq!(nets(&layout), [200.0 * 96.0 - 36.0 * 82.0]);
    assert_eq!(openings(walls(&layout)[0]), [(36.0, 82.0)]);
    // Cut at 100 and 103 over and under a window of 40 by 49 from 100 to 140: over it the piece has 3 x 7 = 21.
    let right = vec![
        (103.0, 0.0),
        (200.0, 0.0),
        (200.0, 96.0),
        (103.0, 96.0),
        (103.0, 89.0),
        (140.0, 89.0),
        (140.0, 40.0),
        (103.0, 40.0),
    ];
    let parts = [(0.0, 0.0, 100.0, 96.0), (100.0, 0.0, 103.0, 40.0), (100.0, 89.0, 103.0, 96.0)];
    let mut pieces = parts.map(|(a, b, c, d)| rect(a, b, c, d).to_vec()).to_vec();
    pieces.push(right);
    let layout = laid(&pieces.iter().map(|p| hatch(p, 4.0, 0.0)).collect::<Vec<_>>());
    assert_eq!(nets(&layout), [200.0 * 96.0 - 40.0 * 49.0]);
    assert_eq!(openings(walls(&layout)[0]), [(40.0, 49.0)]);
    // By itself it is none.
    let far = hatch(&rect(400.0, 0.0, 406.0, 14.0), 4.0, 0.0);
    assert_eq!(nets(&laid(&[hatch(&rect(0.0, 0.0, 200.0, 96.0), 4.0, 0.0), far])), [200.0 * 96.0]);
}

#[test]
fn boards_of_a_floor_are_a_plans_though_its_title_stands_under_another_room() {
    let front = hatch(&rect(0.0, 0.0, 240.0, 96.0), 4.0, 0.0);
    let floor = hatch(&rect(700.0, 0.0, 900.0, 200.0), 5.0, 0.0);
    let titles = [text("FRONT ELEVATION", 60.0, -60.0), text("FLOOR PLAN", 560.0, -60.0)];
    let layout = laid(&[front, floor, titles.concat()]);
    assert_eq!(nets(&layout), [240.0 * 96.0]);
}

/// Level lines of siding over a box, in a unit.
fn courses(layer: &str, [x0, y0, x1, y1]: [f64; 4], pitch: f64, unit: Unit) -> Vec<String> {
    let k = 1.0 / unit.inches();
    let count = ((y1 - y0) / pitch).ceil() as i32;
    let at = |n: i32| y0 + pitch * f64::from(n);
    (1..count).map(|n| line(layer, (x0 * k, at(n) * k), (x1 * k, at(n) * k))).collect()
}

/// The unit taken.
pub(crate) fn unit(text: &str) -> Option<Unit> {
    let mut findings = Findings::default();
    let job = job_file::parse("", "job").unwrap();
    let drawing = read::drawing(text.as_bytes(), "d", &read::Limits::default(), &mut findings);
    normalize::in_inches(&drawing.unwrap(), &job, &mut findings).unwrap().scale.unit
}

#[test]
fn siding_of_loose_lines_speaks_for_a_unit() {
    // Lines 6 in apart over 240 by 96 in, nothing else; whatever the header says.
    let codes = [(Unit::Inch, 1), (Unit::Foot, 2), (Unit::Mm, 4), (Unit::Cm, 5), (Unit::M, 6)];
    for (drawn, _) in codes {
        let lines = courses("0", [0.0, 0.0, 240.0, 96.0], 6.0, drawn);
        for header in codes.map(|c| Some(c.1)).into_iter().chain([None]) {
            assert_eq!(unit(&file(header, "", &lines)), Some(drawn), "{header:?}");
        }
    }
    // Two stories with lines 8 in apart may be 220 cm with lines 8 cm apart: the scale written under them is of
    // feet and inches.
    let mut lines = courses("0", [0.0, 0.0, 240.0, 220.0], 8.0, Unit::Inch);
    assert_eq!(unit(&file(Some(5), "", &lines)), Some(Unit::Cm));
    lines.push(text("1/4\" = 1'-0\"", 0.0, -40.0));
    assert_eq!(unit(&file(Some(5), "", &lines)), Some(Unit::Inch));
}

#[test]
fn the_picture_of_a_dimension_speaks_for_a_unit() {
    // The same two stories; a dimension of 110 units is lettered 9'-2" by its block.
    let mut lines = courses("0", [0.0, 0.0, 240.0, 220.0], 8.0, Unit::Inch);
    let block = "0\nBLOCK\n8\n0\n2\n*D1\n10\n0\n20\n0\n0\nTEXT\n8\n0\n10\n0\n20\n0\n40\n5\n1\n9'-2\"\n0\nENDBLK\n";
    lines.push(String::from(
        "0\nDIMENSION\n8\n0\n2\n*D1\n70\n0\n10\n-20\n20\n110\n13\n0\n23\n0\n14\n0\n24\n110\n50\n90\n",
    ));
    assert_eq!(unit(&file(Some(5), block, &lines)), Some(Unit::Inch));
}

/// Areas of drawn courses, square inches.
fn areas(entities: &[String]) -> Vec<f64> {
    let mut findings = Findings::default();
    let text = file(Some(1), "", entities);
    let d = read::drawing(text.as_bytes(), "d", &read::Limits::default(), &mut findings).unwrap();
    let lines = normalize::linework(&d, &inches(), &mut findings).unwrap();
    let drawn = lines.hatches.iter().filter(|h| h.course_lines > 0 && h.no_siding.is_none());
    drawn.map(|h| h.hatch.rings().iter().map(|r| signed_area(r)).sum::<f64>().abs()).collect()
}

#[test]
fn courses_end_at_lines_of_a_reference_that_is_called_a_residence() {
    // 240 by 95, lines 6 apart: the foot and the head are lines of a bound reference.
    let mut lines = courses("siding", [0.0, 0.0, 240.0, 95.0], 6.0, Unit::Inch);
    for y in [0.0, 95.0] {
        lines.push(line("residence$0$A-WALL", (0.0, y), (240.0, y)));
    }
    assert_eq!(areas(&lines), [240.0 * 95.0]);
}

#[test]
fn elevations_on_layers_of_their_own_have_the_same_siding() {
    // The east is siding alone; on the west's layer most level lines are those of brick at its foot.
    let mut lines = courses("EAST", [0.0, 0.0, 240.0, 98.0], 7.0, Unit::Inch);
    lines.extend([0.0, 98.0].map(|y| line("EAST", (0.0, y), (240.0, y))));
    lines.extend(courses("WEST", [800.0, 40.0, 1000.0, 110.0], 7.0, Unit::Inch));
    lines.extend([40.0, 110.0].map(|y| line("WEST", (800.0, y), (1000.0, y))));
    let brick = courses("WEST", [800.0, 0.0, 1000.0, 39.0], 2.667, Unit::Inch);
    lines.extend(brick);
    for k in 0..15 {
        for n in 0..12 {
            let (x, y) = (804.0 + 8.0 * f64::from(n), 2.667 * f64::from(k));
            lines.push(line("WEST", (x, y), (x, y + 2.667)));
        }
    }
    let found = areas(&lines);
    assert!(found.contains(&(240.0 * 98.0)), "{found:?}");
    assert!(found.contains(&(200.0 * 70.0)), "{found:?}");
}
