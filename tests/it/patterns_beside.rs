//! Patterns beside siding that look like it: roofs, brick at the foot, and what stands in siding as a measure of
//! the unit. Lengths are inches; areas are reckoned by hand beside each drawing.

use lapwright::model::house::OpeningKind;
use lapwright::units::Unit;

use crate::as_drawn::{file, hatch, hatch_of, laid, line, nets, unit};
use crate::drawn_siding::{Line, courses, dxf, lines_of, patches, ring};
use crate::support::rect;

fn sum(entities: &[String]) -> f64 {
    nets(&laid(entities)).iter().sum()
}

#[test]
fn a_roof_between_gables_is_a_roof_where_another_one_like_it_shows_its_eave() {
    // Two parts of a house, 100 and 400 by 96, with lines 4 apart at other levels. Both have roofs over a fascia of
    // 7 with lines 4 1/2 apart: the small one, 20 high, reaches out at the left by 14; the other, 60 high, ends
    // with its wall at both ends and is twelve times as large.
    let parts = [
        hatch(&rect(0.0, 0.0, 100.0, 96.0), 4.0, 0.0),
        hatch(&rect(100.0, 0.0, 500.0, 96.0), 4.0, 2.0),
    ];
    let small = hatch(&rect(-14.0, 103.0, 100.0, 123.0), 4.5, 103.0);
    let large = rect(100.0, 103.0, 500.0, 163.0);
    let roofs = [small.clone(), hatch(&large, 4.5, 103.0)];
    assert_eq!(sum(&[parts.concat(), roofs.concat()]), 500.0 * 96.0);
    // With a window of 30 by 40 in it, it is a story with other siding.
    let story = hatch_of(&[large.to_vec(), rect(280.0, 113.0, 310.0, 153.0).to_vec()], 4.5, 103.0);
    assert_eq!(sum(&[parts.concat(), small, story]), 500.0 * 96.0 + 400.0 * 60.0 - 1200.0);
}

#[test]
fn a_porch_roof_flush_with_its_wall_is_one_where_another_like_it_stands_between_the_ends() {
    // Two elevations, 200 wide: siding 4 apart from 0 to 96 and from 130 to 200, and between them a porch roof 120
    // wide with lines 4 1/2 apart, from 100 to 126; in one it stands in the middle, in the other at the left end.
    let view = |x: f64, porch: f64| {
        let siding = [(0.0, 96.0), (130.0, 200.0)];
        let siding = siding.map(|(a, b)| hatch(&rect(x, a, x + 200.0, b), 4.0, 0.0));
        siding.concat() + &hatch(&rect(porch, 100.0, porch + 120.0, 126.0), 4.5, 100.0)
    };
    let net = sum(&[view(0.0, 40.0), view(1000.0, 1000.0)]);
    assert_eq!(net, 2.0 * 200.0 * (96.0 + 70.0));
}

#[test]
fn a_porch_roof_that_slopes_out_past_its_wall_is_a_roof() {
    // A wall of 200 by 200 with lines 7 apart, left free from 94 to 126 up to 120 from its left end. There a porch
    // roof with lines 4 1/2 apart: its foot begins 16 before the wall, its head 6 before it.
    let wall = [
        (0.0, 0.0),
        (200.0, 0.0),
        (200.0, 200.0),
        (0.0, 200.0),
        (0.0, 126.0),
        (120.0, 126.0),
        (120.0, 94.0),
        (0.0, 94.0),
    ];
    let porch = [(-16.0, 100.0), (120.0, 100.0), (110.0, 124.0), (-6.0, 124.0)];
    let drawn = [hatch(&wall, 7.0, 0.0), hatch(&porch, 4.5, 100.0)];
    assert_eq!(nets(&laid(&drawn)), [200.0 * 200.0 - 120.0 * 32.0]);
}

#[test]
fn a_band_that_fits_between_two_courses_parts_them() {
    // Courses 8 apart from 5.6 on; a band from 110 to 117.5 stands between those at 109.6 and 117.6.
    let mut lines = courses("one", (5.6, 216.0, 8.0), |_| (0.0, 200.0), &[]);
    lines.extend(ring("two", [0.0, 0.0, 200.0, 216.0]));
    lines.extend(ring("two", [0.0, 110.0, 200.0, 117.5]));
    let (found, _) = lines_of(dxf(&lines).as_bytes());
    let areas: Vec<f64> = patches(&found).iter().map(|p| p.1).collect();
    assert_eq!(areas.len(), 2, "{areas:?}");
    assert!((areas.iter().sum::<f64>() - 200.0 * 208.5).abs() < 1.0, "{areas:?}");
}

#[test]
fn a_doors_panel_is_no_door_that_speaks_for_a_unit() {
    // Lines 5 in apart over 240 by 220 in, drawn in centimeters, the header says inches. A door of 36 by 82 in out
    // of loose lines: 208 units; its panel of 33 in is 84 units, as high as a door in inches.
    let k = Unit::Cm.inches();
    let mut drawn: Vec<String> = Vec::new();
    let mut put = |layer: &str, a: (f64, f64), b: (f64, f64)| {
        drawn.push(line(layer, (a.0 / k, a.1 / k), (b.0 / k, b.1 / k)));
    };
    (1..44).for_each(|n| put("0", (0.0, 5.0 * f64::from(n)), (240.0, 5.0 * f64::from(n))));
    for [x0, y0, x1, y1] in [[60.0, 0.0, 96.0, 82.0], [66.0, 6.0, 90.0, 39.0]] {
        for (_, a, b) in ring("A-DOOR", [x0, y0, x1, y1]) {
            put("A-DOOR", a, b);
        }
    }
    put("A-DOOR", (60.0, 39.0), (96.0, 39.0));
    assert_eq!(unit(&file(Some(1), "", &drawn)), Some(Unit::Cm));
}

/// A closed outline.
fn closed(layer: &str, [x0, y0, x1, y1]: [f64; 4]) -> String {
    let at = [(x0, y0), (x1, y0), (x1, y1), (x0, y1)];
    let points = at.map(|(x, y)| format!("0\nVERTEX\n8\n{layer}\n10\n{x}\n20\n{y}\n"));
    format!("0\nPOLYLINE\n8\n{layer}\n66\n1\n70\n1\n{}0\nSEQEND\n", points.concat())
}

/// The kind of an opening 120 wide that stands on the foot of a wall of 300 by 140, with lines in it.
fn kind_at_the_foot(layer: &str, height: f64, lines: &str) -> OpeningKind {
    let wall = closed("A-WALL-OTLN", [0.0, 0.0, 300.0, 140.0]);
    let layout = laid(&[wall, closed(layer, [60.0, 0.0, 180.0, height]), lines.to_owned()]);
    layout.elevations[0].walls[0].openings[0].kind
}

#[test]
fn a_wide_door_parted_into_lights_is_no_overhead_door() {
    // A door of 120 by 84: as one leaf, in three lights of 40, and with an overhead door's joints across them.
    let mullions = [100.0, 140.0].map(|x| line("A-DOOR", (x, 2.0), (x, 82.0))).concat();
    let joints = [21.0, 42.0, 63.0].map(|y| line("A-DOOR", (60.0, y), (180.0, y))).concat();
    let kind = |more: &str| kind_at_the_foot("A-DOOR", 84.0, more);
    assert_eq!(kind(""), OpeningKind::OverheadDoor);
    assert_eq!(kind(&mullions), OpeningKind::Door);
    assert_eq!(kind(&(mullions + &joints)), OpeningKind::OverheadDoor);
}

#[test]
fn glass_as_wide_as_an_overhead_door_is_a_glass_door_or_windows_over_windows() {
    // Drawn as a window, 120 wide, on the wall's foot: nothing in it, three lights 80 high, and two rows of lights,
    // 108 high in all, with a band of 10 from 76 to 86 across.
    let up = |x: f64, y0: f64, y1: f64| line("A-GLAZ", (x, y0), (x, y1));
    let row = |y0: f64, y1: f64| [100.0, 140.0].map(|x| up(x, y0, y1)).concat();
    let band = [76.0, 81.0, 86.0].map(|y| line("A-GLAZ", (60.0, y), (180.0, y))).concat();
    assert_eq!(kind_at_the_foot("A-GLAZ", 80.0, ""), OpeningKind::OverheadDoor);
    assert_eq!(kind_at_the_foot("A-GLAZ", 80.0, &row(2.0, 78.0)), OpeningKind::Door);
    let rows = row(2.0, 76.0) + &row(86.0, 106.0) + &band;
    assert_eq!(kind_at_the_foot("A-GLAZ", 108.0, &rows), OpeningKind::Window);
}

#[test]
fn a_bed_joint_a_course_under_the_last_line_is_no_course() {
    // Brick with courses of 8/3: the ninth joint stands at 24, its upright joints every 8 in. The brick ends at a
    // line at 25 1/2, on a layer of its own. Siding over it, 4 apart from 28 to 96: its next line would be at 24.
    let mut lines = courses("one", (28.0, 96.0, 4.0), |_| (0.0, 200.0), &[]);
    let brick = 8.0 / 3.0;
    for n in 1..=9 {
        let y = brick * f64::from(n);
        lines.push(("one", (0.0, y), (200.0, y)));
        let from = if n % 2 == 0 { 8.0 } else { 4.0 };
        let joints = (0..24).map(|k| from + 8.0 * f64::from(k));
        lines.extend(joints.map(|x| -> Line { ("one", (x, y - brick), (x, y)) }));
    }
    lines.extend(ring("two", [0.0, 0.0, 200.0, 96.0]));
    lines.push(("two", (0.0, 25.5), (200.0, 25.5)));
    let (found, _) = lines_of(dxf(&lines).as_bytes());
    let of_siding = patches(&found).into_iter().filter(|p| p.0.y1 > 30.0);
    let areas: Vec<f64> = of_siding.map(|p| p.1).collect();
    assert_eq!(areas.len(), 1, "{areas:?}");
    assert!((areas[0] - 200.0 * 70.5).abs() < 1.0, "{areas:?}");
}

/// The one area of drawn courses, square inches.
fn area(lines: &[Line]) -> f64 {
    let (found, _) = lines_of(dxf(lines).as_bytes());
    let areas: Vec<f64> = patches(&found).iter().map(|p| p.1).collect();
    assert_eq!(areas.len(), 1, "{areas:?}");
    areas[0]
}

#[test]
fn a_casings_head_under_a_course_by_itself_is_none() {
    // Courses 7 apart up to 91, a fascia's foot at 94; all on one layer. A window's casing, 37 by 47, ends at
    // 87.5, its frame 5.5 lower, at 82: between 82 and 94 the head might be a course by itself, but one is drawn
    // there at 91.
    let casing = [80.0, 40.5, 117.0, 87.5];
    let mut lines = courses("one", (7.0, 94.0, 7.0), |_| (0.0, 200.0), &[casing]);
    for b in
        [casing, [85.5, 46.0, 111.5, 82.0], [0.0, 0.0, 200.0, 94.0], [-14.0, 94.0, 214.0, 100.0]]
    {
        lines.extend(ring("one", b));
    }
    let found = area(&lines);
    assert!((found - (200.0 * 94.0 - 37.0 * 47.0)).abs() < 1.0, "{found}");
}

#[test]
fn a_frames_head_on_the_level_of_a_course_is_none_where_the_casing_ends_just_under_the_next() {
    // Courses 4.75 apart: the 12th at 57, the 13th at 61.75. A casing from 30 to 61.55 with its frame's head at 57.
    let casing = [80.0, 30.0, 117.0, 61.55];
    let mut lines = courses("one", (4.75, 99.0, 4.75), |_| (0.0, 200.0), &[casing]);
    for b in [casing, [84.5, 34.5, 112.5, 57.0], [0.0, 0.0, 200.0, 99.0]] {
        lines.extend(ring("one", b));
    }
    let found = area(&lines);
    assert!((found - (200.0 * 99.0 - 37.0 * 31.55)).abs() < 1.0, "{found}");
}

#[test]
fn siding_does_not_end_at_a_leader() {
    // Courses 8 apart from 52.5 up to 118, stone under 45.5. A leader's tip stands between, with an arrow; it goes
    // up and out past the wall's end.
    let mut lines = courses("one", (52.5, 118.0, 8.0), |_| (0.0, 200.0), &[]);
    lines.extend(ring("one", [0.0, 45.5, 200.0, 118.0]));
    lines.push(("one", (170.0, 50.0), (230.0, 55.0)));
    lines.push(("one", (170.0, 50.0), (174.0, 51.5)));
    let found = area(&lines);
    assert!((found - 200.0 * 72.5).abs() < 1.0, "{found}");
    // A slope that ends at an upright line is a roof's: from 46.5 at the line to 50.5 at the wall's end, and
    // under it is none.
    lines.truncate(lines.len() - 2);
    lines.push(("one", (160.0, 46.5), (200.0, 50.5)));
    lines.push(("one", (160.0, 38.0), (160.0, 46.5)));
    let found = area(&lines);
    let roof = 40.0 * (1.0 + 5.0) / 2.0;
    assert!((found - (200.0 * 72.5 - roof)).abs() < 1.0, "{found}");
}

#[test]
fn windows_over_one_another_stand_a_story_apart() {
    // Three stories, 396 in high, lines 7 apart: as centimeters they are 13 ft, lines 2 3/4 in apart. Blocks of 36
    // by 48 stand at 34, 143 and 252: 109 in apart, or 43 as centimeters.
    let block = "0\nBLOCK\n8\n0\n2\nW\n10\n0\n20\n0\n0\nLINE\n8\n0\n10\n0\n20\n0\n11\n36\n21\n48\n0\nENDBLK\n";
    let windows: Vec<String> =
        [34, 143, 252].map(|y| format!("0\nINSERT\n8\n0\n2\nW\n10\n100\n20\n{y}\n")).to_vec();
    let wall = hatch(&rect(0.0, 0.0, 400.0, 396.0), 7.0, 0.0);
    assert_eq!(unit(&file(None, block, &[wall, windows.concat()])), Some(Unit::Inch));
}

#[test]
fn what_is_a_roof_over_one_wall_is_a_roof_where_no_wall_is_drawn_under_it() {
    // East: a wall of 200 by 90 with lines 8 apart, its roof with lines 4 1/2 apart reaching out by 14 at both ends.
    // South shows a roof like it alone, 354 by 72: more than there is of siding.
    let east = [
        hatch(&rect(0.0, 0.0, 200.0, 90.0), 8.0, 0.0),
        hatch(&rect(-14.0, 98.0, 214.0, 160.0), 4.5, 98.0),
    ];
    let south = hatch(&rect(986.0, 98.0, 1340.0, 170.0), 4.5, 98.0);
    assert_eq!(sum(&[east.concat(), south]), 200.0 * 90.0);
    // A wall of 300 by 96 drawn so, with a roof of its own over it, is a wall.
    let south = [
        hatch(&rect(1000.0, 0.0, 1300.0, 96.0), 4.5, 0.0),
        hatch(&rect(986.0, 104.0, 1314.0, 150.0), 6.0, 104.0),
    ];
    assert_eq!(sum(&[east.concat(), south.concat()]), 200.0 * 90.0 + 300.0 * 96.0);
}
