//! Where siding of loose lines ends, all drawn on one layer: boards, sills, roofs and levels whose lines stand
//! a course apart by chance. Areas are reckoned by hand.

use lapwright::geom::vocabulary::Rect;

use crate::drawn_siding::{Line, courses, dxf, lines_of, patches, ring};

/// A wall 240 wide and 96 high with its eave, and courses of 6 from a first line on.
fn wall(first: f64, boxes: &[[f64; 4]]) -> Vec<Line> {
    let mut all = courses("0", (first, 96.0, 6.0), |_| (0.0, 240.0), boxes);
    all.extend([("0", (0.0, 0.0), (0.0, 96.0)), ("0", (240.0, 0.0), (240.0, 96.0))]);
    all.extend(ring("0", [-18.0, 96.0, 258.0, 103.0]));
    all.extend(boxes.iter().flat_map(|b| ring("0", *b)));
    all
}

/// The largest area of drawn courses: its box, square inches, boxes of its holes.
fn largest(lines: &[Line]) -> (Rect, f64, Vec<Rect>) {
    let (lines, _) = lines_of(dxf(lines).as_bytes());
    patches(&lines).into_iter().max_by(|a, b| a.1.total_cmp(&b.1)).unwrap()
}

fn level(y: f64, x0: f64, x1: f64) -> Line {
    ("0", (x0, y), (x1, y))
}

#[test]
fn the_foot_of_a_wall_on_the_line_of_a_floor_level_ends_its_siding() {
    // The first course line is a course over the foot; a level line 60 past the wall goes along the foot.
    let mut all = wall(6.0, &[]);
    all.extend([level(0.0, 0.0, 240.0), level(0.0, -60.0, 300.0)]);
    let (frame, area, _) = largest(&all);
    assert_eq!((frame.y0, frame.y1), (0.0, 96.0));
    assert!((area - 240.0 * 96.0).abs() < 1.0, "{area}");
    // The foot of a wall beside it, on the same line, is no ground of either.
    all.extend(
        wall(2.0, &[]).into_iter().map(|(l, a, b)| (l, (a.0 + 240.0, a.1), (b.0 + 240.0, b.1))),
    );
    all.push(level(0.0, 240.0, 480.0));
    let (lines, _) = lines_of(dxf(&all).as_bytes());
    let areas: f64 = patches(&lines).iter().map(|p| p.1).sum();
    assert!((areas - 480.0 * 96.0).abs() < 1.0, "{areas}");
}

#[test]
fn a_board_with_ends_under_a_course_line_is_trim_and_a_narrow_first_course_is_siding() {
    // Stone up to 20; the next line at 24 is a course under the line at 30.
    let mut all = wall(30.0, &[]);
    all.extend([level(20.0, 0.0, 240.0), level(24.0, 0.0, 240.0), level(0.0, 0.0, 240.0)]);
    let (frame, area, _) = largest(&all);
    assert_eq!(frame.y0, 20.0);
    assert!((area - 240.0 * 76.0).abs() < 1.0, "{area}");
    // The same strip drawn with its ends.
    all.extend(ring("0", [0.0, 20.0, 240.0, 24.0]));
    let (frame, area, _) = largest(&all);
    assert_eq!(frame.y0, 24.0);
    assert!((area - 240.0 * 72.0).abs() < 1.0, "{area}");
}

#[test]
fn a_strip_under_a_sill_in_which_no_course_line_falls_is_siding_and_an_apron_is_not() {
    // Lines at 5, 11, 17 and on; the window's sill stands 4 over the foot.
    let window = [100.0, 4.0, 140.0, 46.0];
    let mut all = wall(5.0, &[window]);
    all.push(level(0.0, 0.0, 240.0));
    let (_, area, holes) = largest(&all);
    assert_eq!(holes, [Rect::new(100.0, 4.0, 140.0, 46.0)]);
    assert!((area - (240.0 * 96.0 - 40.0 * 42.0)).abs() < 1.0, "{area}");
    all.extend(ring("0", [100.0, 0.0, 140.0, 4.0]));
    let (_, area, holes) = largest(&all);
    assert!(holes.is_empty());
    assert!((area - (240.0 * 96.0 - 40.0 * 46.0)).abs() < 1.0, "{area}");
}

#[test]
fn sashes_beside_one_another_a_course_under_a_line_are_in_their_casing() {
    // The sashes' heads stand at 81, a course under the line at 87; the casing's head between, at 86.
    let casing = [96.0, 40.0, 164.0, 86.0];
    let mut all = wall(3.0, &[casing]);
    all.push(level(0.0, 0.0, 240.0));
    all.extend(ring("0", [100.0, 44.0, 160.0, 82.0]));
    for x in [101.0, 131.0] {
        all.extend(ring("0", [x, 45.0, x + 28.0, 81.0]));
        all.extend(ring("0", [x + 2.0, 47.0, x + 26.0, 79.0]));
    }
    let (_, area, holes) = largest(&all);
    assert_eq!(holes, [Rect::new(96.0, 40.0, 164.0, 86.0)]);
    assert!((area - (240.0 * 96.0 - 68.0 * 46.0)).abs() < 1.0, "{area}");
}

#[test]
fn the_edges_of_a_lower_roof_are_no_courses() {
    // Courses of 7 up to a soffit at 204. The roof's fascia begins at 97.8, a hair under the course at 98; it
    // runs on past the wall.
    let edge = |y: f64| 120.0 + 6.0 * ((y - 103.8) / 20.5).max(0.0);
    let across = |y: f64| (0.0, if y > 97.8 && y < 124.3 { edge(y) } else { 240.0 });
    let mut all = courses("0", (7.0, 204.0, 7.0), across, &[]);
    all.extend([("0", (0.0, 0.0), (0.0, 204.0)), ("0", (240.0, 0.0), (240.0, 204.0))]);
    all.extend(ring("0", [-18.0, 204.0, 258.0, 213.0]));
    all.extend(ring("0", [120.0, 97.8, 252.0, 103.8]));
    all.extend([level(0.0, 0.0, 240.0), level(124.3, 126.0, 246.0)]);
    all.extend([("0", (120.0, 103.8), (126.0, 124.3)), ("0", (252.0, 103.8), (246.0, 124.3))]);
    // The roof covers 120 x 6 of fascia and 20.5 from 123 at the middle to the wall's end.
    let net = 240.0 * 204.0 - 120.0 * 6.0 - 117.0 * 20.5;
    let (lines, _) = lines_of(dxf(&all).as_bytes());
    let areas: f64 = patches(&lines).iter().map(|p| p.1).sum();
    assert!((areas / net - 1.0).abs() < 0.003, "{areas} for {net}");
}

#[test]
fn two_lines_at_the_pitch_of_a_roof_do_not_take_a_course_from_the_wall() {
    // The soffit stands 4.5 over the last course line at 90, and the roof's many rows are 4.5 apart.
    let mut all = courses("0", (6.0, 94.0, 6.0), |_| (0.0, 240.0), &[]);
    all.extend([("0", (0.0, 0.0), (0.0, 94.5)), ("0", (240.0, 0.0), (240.0, 94.5))]);
    all.extend(ring("0", [-18.0, 94.5, 258.0, 101.5]));
    all.push(level(0.0, 0.0, 240.0));
    for k in 1..16 {
        let y = 101.5 + 4.5 * f64::from(k);
        all.push(level(y, -18.0, 258.0));
        all.extend(
            (0..20).map(|n| f64::from(12 * n + 6 * (k % 2))).map(|x| ("0", (x, y - 4.5), (x, y))),
        );
    }
    let (frame, area, _) = largest(&all);
    assert_eq!(frame, Rect::new(0.0, 0.0, 240.0, 94.5));
    assert!((area - 240.0 * 94.5).abs() < 1.0, "{area}");
}
