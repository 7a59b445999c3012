//! Patterns beside siding that look like it: roofs, brick at the foot, and what stands in siding as a measure of
//! the unit. Lengths are inches; areas are reckoned by hand beside each drawing.

use lapwright::units::Unit;

use crate::as_drawn::{file, hatch, hatch_of, laid, nets, unit};
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
