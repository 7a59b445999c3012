//! Places where two things of a drawing end within a hair of each other, or one clears away what the other
//! stands on, each on a wall as small as it gets: every rule is kept, and what is laid is as reckoned by hand.

use lapwright::layout::Layout;
use lapwright::model::house::EdgeKind;
use lapwright::model::trim::TrimKind;

use crate::small_walls::{job, laid, lengths, of};
use crate::support::{broken, dxf, lay_sets, rect};

/// Low and high ends of the upright sides of one kind at a place.
fn uprights(l: &Layout, kind: EdgeKind, x: f64) -> Vec<(f64, f64)> {
    let edges = l.walls().flat_map(|(_, w)| &w.edges).filter(|e| e.kind == kind);
    let at = edges.filter(|e| (e.from[0] - x).abs() < 0.01 && (e.to[0] - x).abs() < 0.01);
    at.map(|e| (e.from[1].min(e.to[1]), e.from[1].max(e.to[1]))).collect()
}

/// Whether spans are these within a hundredth.
fn are(found: &[(f64, f64)], wanted: &[(f64, f64)]) -> bool {
    let near =
        |(a, b): (&(f64, f64), &(f64, f64))| (a.0 - b.0).abs() < 0.01 && (a.1 - b.1).abs() < 0.01;
    found.len() == wanted.len() && found.iter().zip(wanted).all(near)
}

#[test]
fn a_surround_whose_head_a_zone_leaves_a_hair_of_runs_up_its_jamb() {
    // The surround stands from 85.5 to 126.5 and up to 80.5. The zone ends at 85.875: over its 3/8 in of the
    // head goes no board, so that the jamb's runs from the zone's foot, 36, through to 80.5.
    let rings: [(&str, &[(f64, f64)]); 3] = [
        ("A-WALL-OTLN", &rect(0.0, 0.0, 200.0, 100.0)),
        ("A-DOOR", &rect(86.0, 0.0, 126.0, 80.0)),
        ("A-WALL-SHNG", &rect(10.0, 36.0, 85.875, 96.0)),
    ];
    let zone =
        "[[zone]]\nname = \"part\"\nlayers = [\"A-WALL-SHNG\"]\n[zone.product]\nkind = \"vinyl\"\n";
    let sets = lay_sets(dxf(&rings).as_bytes(), &job(&format!("[trim]\nsurround = 0.5\n{zone}")));
    for set in sets.iter() {
        assert_eq!(broken(&set.layout), Vec::<String>::new());
    }
    let part = sets.iter().find(|s| s.layout.zone.is_some()).unwrap();
    assert_eq!(lengths(&part.layout, TrimKind::Surround), [44.5]);
}

#[test]
fn a_post_takes_its_strip_up_to_a_roof_that_leans_less_than_a_mark() {
    // The underside falls 1 in 180, over the left wall by 11/180 = 0.061: at the strip's inner side, 2 in before
    // the corner, it stands 11 - 9/180 = 10.95 high. Nothing is left past that line.
    let rings: [(&str, &[(f64, f64)]); 3] = [
        ("A-WALL-OTLN", &rect(0.0, 0.0, 109.0, 60.0)),
        ("A-WALL-OTLN", &rect(109.0, 0.0, 289.0, 83.0)),
        ("A-ROOF-OTLN", &[(98.0, 11.0), (278.0, 10.0), (278.0, 18.0), (98.0, 19.0)]),
    ];
    let posts =
        "[product]\nkind = \"steel\"\noutside_post_set_back = 2\ninside_post_set_back = 2\n";
    let l = laid(&rings, posts);
    let (_, left) = l.walls().next().unwrap();
    let farthest = left.field.iter().flatten().map(|p| p[0]).fold(0.0, f64::max);
    assert_eq!(farthest, 107.0);
    let beneath = left.field.iter().flatten().filter(|p| p[0] == 107.0 && p[1] < 12.0);
    let top = beneath.map(|p| p[1]).fold(0.0, f64::max);
    assert!((top - 10.95).abs() < 0.005, "{top}");
}

/// Two elevations that meet, 97 and 66 high, with bands.
fn banded_corner() -> Layout {
    let rings: [(&str, &[(f64, f64)]); 2] = [
        ("A-WALL-OTLN", &rect(0.0, 0.0, 120.0, 97.0)),
        ("A-WALL-OTLN", &rect(1000.0, 0.0, 1120.0, 66.0)),
    ];
    let mut text = String::new();
    for (name, x) in [("FRONT", 0.0), ("RIGHT", 1000.0)] {
        let (left, right) = (x - 200.0, x + 400.0);
        text += &format!(
            "[[elevation]]\nname = \"{name}\"\nregion = [{left:.1}, -200.0, {right:.1}, 300.0]\n"
        );
    }
    for (name, low, high) in [("FRONT", 56, 65), ("RIGHT", 46, 52)] {
        text += &format!("[[band]]\nelevation = \"{name}\"\nbottom = {low}\ntop = {high}\n");
    }
    laid(&rings, &text)
}

#[test]
fn a_post_goes_on_over_bands_that_part_a_corner_at_different_heights() {
    // Siding on the first wall from 0 to 56 and from 65 to 97, on the second to 46 and from 52 to 66: each
    // overlaps the next, so one post stands from 3/4 under the first to 1/4 under the soffit.
    let l = banded_corner();
    let posts = of(&l, TrimKind::OutsidePost).into_iter();
    let mine = posts.filter(|t| t.wall == "front-1" && (t.from[0] - 120.0).abs() < 0.01);
    let heights: Vec<(f64, f64)> =
        mine.map(|t| (t.from[1].min(t.to[1]), t.from[1].max(t.to[1]))).collect();
    assert_eq!(heights, [(-0.75, 96.75)]);
    assert_eq!(l.corners.iter().filter(|c| c.id.starts_with("front-1/right")).count(), 1);
}

#[test]
fn a_band_that_ends_a_hair_inside_a_wall_ends_with_it() {
    // A band from 1/32 in off the wall's left side on leaves no strip of siding there, and one that begins
    // 1/32 in before its right side is none; so with its foot.
    for kind in ["wood", "vinyl"] {
        let sides = |band: &str| {
            let text = format!("[product]\nkind = \"{kind}\"\n{band}");
            let l = laid(&[("A-WALL-OTLN", &rect(0.0, 0.0, 120.0, 96.0))], &text);
            l.walls().flat_map(|(_, w)| w.edges.clone()).collect::<Vec<_>>()
        };
        let band = |bottom: f64, more: &str| {
            sides(&format!(
                "[[band]]\nelevation = \"elevation\"\nbottom = {bottom}\ntop = 54\n{more}"
            ))
        };
        assert_eq!(band(48.0, "left = 0.03125\n"), band(48.0, ""));
        assert_eq!(band(48.0, "left = 0.008\n"), band(48.0, ""));
        assert_eq!(band(48.0, "left = 119.96875\n"), sides(""));
        assert_eq!(band(0.03125, ""), band(0.0, ""));
        // A foot is a strip.
        assert_ne!(band(48.0, "left = 12\n"), band(48.0, ""));
    }
}

#[test]
fn no_slot_is_left_between_a_post_and_a_jamb() {
    // The post takes 3.98 of the wall, to 1/50 in beside the door's jamb at 96: the siding's side there begins
    // over the door's head at 30, and the door has its one other jamb.
    let rings: [(&str, &[(f64, f64)]); 2] =
        [("A-WALL-OTLN", &rect(0.0, 0.0, 100.0, 40.0)), ("A-DOOR", &rect(40.0, 0.0, 96.0, 30.0))];
    let l = laid(&rings, "[product]\nkind = \"steel\"\noutside_post_set_back = 3.98\n");
    let corner = uprights(&l, EdgeKind::OutsideCorner, 96.02);
    assert!(are(&corner, &[(30.0, 40.0)]), "{corner:?}");
    assert!(uprights(&l, EdgeKind::Jamb, 96.02).is_empty());
    assert_eq!(uprights(&l, EdgeKind::Jamb, 40.0), [(0.0, 30.0)]);
}

#[test]
fn a_strip_at_the_start_as_thin_as_noise_is_left_out_and_the_check_agrees() {
    // Courses of 51 mm from -1.75: the first line over the foot stands at 0.25787, on the grid at 0.2578125.
    // Less the clearance of 1/4 in there are 8/1024 of the first course, which is no strip.
    let l = laid(
        &[("A-WALL-OTLN", &rect(0.0, 0.0, 152.0, 40.0))],
        "[product]\nkind = \"vinyl\"\nexposure = \"51mm\"\n[courses]\ndatum = -1.75\n",
    );
    let (_, w) = l.walls().next().unwrap();
    assert_eq!((w.courses[0].index, w.courses[0].bottom), (1, 0.2578125));
}

#[test]
fn siding_that_meets_a_post_past_its_corner_alone_ends_in_a_channel() {
    // Corner boards take 3.5; the left rake rises 89 in 115 and the right one falls 89 in 71. Siding starts
    // 9 1/16 over the zone's foot at 78.8125, at 87.875, over the corners' tops at 86: beside the boards'
    // lines it stands up to 86 + 3.5 x 89 / 115 = 88.709 and 86 + 3.5 x 89 / 71 = 90.387.
    let gable = [(0.0, 0.0), (186.0, 0.0), (186.0, 86.0), (115.0, 175.0), (0.0, 86.0)];
    let zone = "[[zone]]\nname = \"part\"\n[zone.product]\nkind = \"wood\"\ncorner_board = 3.5\n[[zone.region]]\nbottom = 78.8125\n";
    let text = format!("[courses]\nclear_of_ledge = 9.0625\n[product]\nkind = \"wood\"\n{zone}");
    let sets = lay_sets(dxf(&[("A-WALL-OTLN", &gable)]).as_bytes(), &job(&text));
    let part = &sets.iter().find(|s| s.layout.zone.is_some()).unwrap().layout;
    assert_eq!(broken(part), Vec::<String>::new());
    for (x, top) in [(3.5, 88.709), (182.5, 90.387)] {
        let found = uprights(part, EdgeKind::Abutment, x);
        assert!(are(&found, &[(87.875, top)]), "{x}: {found:?}");
    }
}

#[test]
fn seams_keep_off_jambs_where_they_are() {
    // Courses of 8 from 0. What one of them keeps off is beside it, under it or over it.
    let lines = |window: &[(f64, f64)], index: i32| {
        let l = laid(
            &[("A-WALL-OTLN", &rect(0.0, 0.0, 300.0, 120.0)), ("A-GLAZ", window)],
            "[product]\nkind = \"vinyl\"\nexposure = 8\n[courses]\ndatum = 0\n",
        );
        let (_, w) = l.walls().next().unwrap();
        let course = w.courses.iter().find(|c| c.index == index).unwrap();
        course.avoid.iter().map(|x| (x * 16.0).round() / 16.0).collect::<Vec<f64>>()
    };
    // Jambs lean in by 12 in 48, a quarter: at 72 the window reaches from 108 to 152, at 80 from 110 to 150, and
    // it ends at 88.
    let leaning = [(100.0, 40.0), (160.0, 40.0), (148.0, 88.0), (112.0, 88.0)];
    assert_eq!(lines(&leaning, 10), [108.0, 110.0, 150.0, 152.0]);
    // Under its sill; from 16 to 40 it only touches.
    assert_eq!(lines(&leaning, 4), [100.0, 160.0]);
    assert_eq!(lines(&leaning, 3), Vec::<f64>::new());
    // An L: its right part ends at 56, three courses under the upper ones, whose own jamb is at 124.
    let l =
        [(100.0, 40.0), (160.0, 40.0), (160.0, 56.0), (124.0, 56.0), (124.0, 88.0), (100.0, 88.0)];
    assert_eq!(lines(&l, 9), [100.0, 124.0]);
    assert_eq!(lines(&l, 7), [100.0, 124.0, 160.0]);
    assert_eq!(lines(&l, 5), [100.0, 160.0]);
}
