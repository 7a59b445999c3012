//! Boards drawn between courses at the courses' own pitch, or near it, and what stands beside them. Areas reckoned
//! by hand.

use crate::architect::run::score;
use crate::drawn_siding::{Line, courses, dxf, lines_of, patches, ring};

const L: &str = "0";

/// What all patches cover, square inches.
fn covered(lines: &[Line]) -> f64 {
    let (found, _) = lines_of(dxf(lines).as_bytes());
    patches(&found).iter().map(|p| p.1).sum()
}

/// A wall 240 wide and 200 high, courses of 4 in, a band 8 in high from 112 up: both its edges are course lines,
/// and none is drawn at 116. Net 240 x (200 - 8).
#[test]
fn a_band_two_courses_high_between_two_course_lines_is_a_board() {
    let across = |_: f64| (0.0, 240.0);
    let mut all = ring(L, [0.0, 0.0, 240.0, 200.0]);
    all.extend(courses(L, (0.0, 113.0, 4.0), across, &[]));
    all.extend(courses(L, (120.0, 200.0, 4.0), across, &[]));
    all.extend(ring(L, [0.0, 112.0, 240.0, 120.0]));
    assert!((covered(&all) - 46_080.0).abs() < 1.0, "{}", covered(&all));
}

/// A wall 240 wide and 320 high, courses of 8 in, a band from 216 to 224 1/2: its head stands 1/2 in off where a
/// course line would. Net 240 x (320 - 8.5).
#[test]
fn a_band_half_an_inch_higher_than_a_course_is_a_board() {
    let across = |_: f64| (0.0, 240.0);
    let mut all = ring(L, [0.0, 0.0, 240.0, 320.0]);
    all.extend(courses(L, (0.0, 217.0, 8.0), across, &[]));
    all.extend(courses(L, (232.0, 320.0, 8.0), across, &[]));
    all.extend(ring(L, [0.0, 216.0, 240.0, 224.5]));
    assert!((covered(&all) - 74_760.0).abs() < 1.0, "{}", covered(&all));
}

/// A course line that is cut at a sign and goes on beside it, in courses as exact: no board. Net 240 x 160.
#[test]
fn a_gap_in_one_course_line_is_siding() {
    let across = |_: f64| (0.0, 240.0);
    let mut all = ring(L, [0.0, 0.0, 240.0, 160.0]);
    all.extend(courses(L, (0.0, 160.0, 8.0), across, &[[100.0, 79.0, 140.0, 81.0]]));
    assert!((covered(&all) - 38_400.0).abs() < 1.0, "{}", covered(&all));
}

/// A wall 300 wide and 120 high, courses of 6 in, a window from 100 to 140 in a casing 5 in wide that stands on the
/// foot of the siding; the frame is drawn with its own line, and a line of the sash, 6 in up, is on a course line. Net
/// 300 x 120 - 40 x 66. A casing that ends 3 in over the foot leaves siding under it: 40 x 3 more.
#[test]
fn a_casing_on_the_foot_of_the_siding_is_no_siding_up_to_its_frame() {
    let wall = |foot: f64| {
        let mut all = ring(L, [0.0, 0.0, 300.0, 120.0]);
        all.extend(courses(L, (0.0, 120.0, 6.0), |_| (0.0, 300.0), &[[100.0, foot, 140.0, 66.0]]));
        all.extend(ring(L, [100.0, foot, 140.0, 66.0]));
        all.extend(ring(L, [105.0, foot + 5.0, 135.0, 61.0]));
        all.extend(ring(L, [106.0, foot + 6.0, 134.0, 60.0]));
        covered(&all)
    };
    assert!((wall(0.0) - 33_360.0).abs() < 1.0, "{}", wall(0.0));
    assert!((wall(3.0) - 33_480.0).abs() < 1.0, "{}", wall(3.0));
}

/// A wall 300 wide and 200 high, courses of 7 in. At the left of the middle a band ends at 122, at the right the
/// roof of a porch, with standing seams, at 125 1/2; the first course line over both is at 126. Over them stand
/// 150 x (200 - 122) + 150 x (200 - 125.5).
#[test]
fn siding_goes_down_to_a_band_beside_a_roof() {
    let mut all = ring(L, [0.0, 0.0, 300.0, 200.0]);
    all.extend(courses(L, (0.0, 99.0, 7.0), |_| (0.0, 300.0), &[]));
    all.extend(courses(L, (105.0, 112.0, 7.0), |_| (0.0, 150.0), &[]));
    all.extend(courses(L, (126.0, 200.0, 7.0), |_| (0.0, 300.0), &[]));
    all.extend(ring(L, [0.0, 112.0, 150.0, 122.0]));
    all.extend(ring(L, [150.0, 100.0, 320.0, 125.5]));
    all.extend((1..=10).map(|k| 150.0 + 16.0 * f64::from(k)).map(|x| (L, (x, 100.0), (x, 125.5))));
    let (found, _) = lines_of(dxf(&all).as_bytes());
    let upper: f64 = patches(&found).iter().filter(|p| p.0.y0 > 112.0).map(|p| p.1).sum();
    assert!((upper - 22_875.0).abs() < 1.0, "{:?}", patches(&found));
}

/// A wall 240 wide and 160 high between corner boards of 4 1/2 in, courses of 8 in; its foot is drawn out to the
/// corners, and the ground, 60 in farther, 8 in under it. Net 240 x 160.
#[test]
fn the_ground_a_course_under_the_foot_is_no_course() {
    let mut all = ring(L, [0.0, 0.0, 240.0, 160.0]);
    all.extend(courses(L, (0.0, 160.0, 8.0), |_| (0.0, 240.0), &[]));
    all.extend(ring(L, [-4.5, 0.0, 0.0, 160.0]));
    all.extend(ring(L, [240.0, 0.0, 244.5, 160.0]));
    all.push((L, (-4.5, 0.0), (244.5, 0.0)));
    all.push((L, (-64.5, -8.0), (304.5, -8.0)));
    assert!((covered(&all) - 38_400.0).abs() < 1.0, "{}", covered(&all));
}

/// Where a gable's hatch ends in a spike along its rake, the wall was lost whole, and nothing told of it.
#[test]
fn a_hatch_that_ends_in_a_spike_is_a_wall() {
    let s = score(&[1281]);
    assert!(s.walls() == 1.0 && s.silent().is_empty(), "{}", s.line());
}
