//! Siding of loose lines beside roofs, under rakes, at boards drawn in one go, and under eaves that run along
//! several walls. Areas reckoned by hand.

use std::fmt::Write;

use crate::drawn_siding::{Line, courses, dxf, lines_of, patches, ring};

const L: &str = "0";

/// What all patches cover, square inches; boxes are drawn as closed lines.
fn covered(lines: &[Line], boxes: &[[f64; 4]]) -> f64 {
    let mut text = dxf(lines);
    let mut closed = String::new();
    for [x0, y0, x1, y1] in boxes {
        closed += &format!("0\nPOLYLINE\n8\n{L}\n66\n1\n70\n1\n");
        for (x, y) in [(x0, y0), (x1, y0), (x1, y1), (x0, y1)] {
            let _ = write!(closed, "0\nVERTEX\n8\n{L}\n10\n{x}\n20\n{y}\n");
        }
        closed += "0\nSEQEND\n";
    }
    text.insert_str(text.find("0\nENDSEC").unwrap(), &closed);
    let (found, _) = lines_of(text.as_bytes());
    patches(&found).iter().map(|p| p.1).sum()
}

/// A wall 240 wide and 160 high, courses of 8 in, a band drawn as one closed line from 107 to 112: its head is a
/// course line, its foot is none. Net 240 x (160 - 5).
#[test]
fn a_closed_band_whose_head_is_a_course_line_is_a_board() {
    let mut all = ring(L, [0.0, 0.0, 240.0, 160.0]);
    all.extend(courses(L, (0.0, 105.0, 8.0), |_| (0.0, 240.0), &[]));
    all.extend(courses(L, (120.0, 160.0, 8.0), |_| (0.0, 240.0), &[]));
    let found = covered(&all, &[[0.0, 107.0, 240.0, 112.0]]);
    assert!((found - 37_200.0).abs() < 1.0, "{found}");
}

/// A gable 240 wide and 60 high over a level board; the first course line stands 3 in over its foot. Net
/// 240 x 60 / 2, to the corners under the rakes.
#[test]
fn siding_goes_into_the_corners_under_a_rake() {
    let across = |y: f64| (2.0 * (y - 96.0), 240.0 - 2.0 * (y - 96.0));
    let mut all = courses(L, (99.0, 156.0, 4.0), across, &[]);
    all.push((L, (0.0, 96.0), (240.0, 96.0)));
    all.extend([(L, (0.0, 96.0), (120.0, 156.0)), (L, (240.0, 96.0), (120.0, 156.0))]);
    let found = covered(&all, &[]);
    assert!((found - 7_200.0).abs() < 1.0, "{found}");
}

/// A wall 366 wide under a band at 108 1/2, courses of 7 in; at its left a porch's roof: a fascia from 94 to 100 out
/// to 200, over it a slope back to 186 at 120. The last course goes out to the slope by 3 1/2 in. Net 366 x 94,
/// 166 x 14.5, and 8.5 x (0.7 x 8.5) / 2 over the slope.
#[test]
fn a_course_beside_a_roof_goes_as_far_as_the_roof_lets_it() {
    let slope = |y: f64| if y < 100.0 { 200.0 } else { 200.0 - 0.7 * (y - 100.0) };
    let mut all = courses(L, (0.0, 94.0, 7.0), |_| (0.0, 366.0), &[]);
    all.extend(courses(L, (98.0, 106.0, 7.0), |y| (slope(y), 366.0), &[]));
    all.extend([(L, (0.0, 0.0), (366.0, 0.0)), (L, (0.0, 0.0), (0.0, 120.0))]);
    all.extend([(L, (366.0, 0.0), (366.0, 120.0)), (L, (slope(108.5), 108.5), (366.0, 108.5))]);
    all.extend(ring(L, [0.0, 94.0, 200.0, 100.0]));
    all.extend([(L, (200.0, 100.0), (186.0, 120.0)), (L, (0.0, 120.0), (186.0, 120.0))]);
    let found = covered(&all, &[]);
    let net = 366.0 * 94.0 + 166.0 * 14.5 + 8.5 * 0.7 * 8.5 / 2.0;
    assert!((found - net).abs() < 1.0, "{found} of {net}");
}

/// Three walls side by side, 115 high, courses of 7 in from 4, from 0 and from 2.8: the upper edge of a fascia along
/// all, at 122, stands 0.2 in off a course of the last one. Net 560 x 115.
#[test]
fn a_fascia_along_several_walls_is_no_course_of_the_narrowest() {
    let mut all = Vec::new();
    for (x0, x1, from) in [(0.0, 170.0, 4.0), (170.0, 420.0, 0.0), (420.0, 560.0, 2.8)] {
        all.extend(ring(L, [x0, 0.0, x1, 115.0]));
        all.extend(courses(L, (from, 114.0, 7.0), move |_| (x0, x1), &[]));
    }
    all.extend([(L, (-90.0, 115.0), (650.0, 115.0)), (L, (-20.0, 122.0), (580.0, 122.0))]);
    all.extend([(L, (-20.0, 115.0), (-20.0, 122.0)), (L, (580.0, 115.0), (580.0, 122.0))]);
    let found = covered(&all, &[]);
    assert!((found - 64_400.0).abs() < 1.0, "{found}");
}

/// A wall 240 wide and 112 high, courses of 7 in; over it a fascia as high as a course, from 13 in beside the wall to
/// 13 in beside it, and a hipped roof on that. Net 240 x 112.
#[test]
fn a_fascia_as_high_as_a_course_is_no_course() {
    let mut all = ring(L, [0.0, 0.0, 240.0, 112.0]);
    all.extend(courses(L, (0.0, 112.0, 7.0), |_| (0.0, 240.0), &[]));
    all.extend(ring(L, [-13.0, 112.0, 253.0, 119.0]));
    all.extend([(L, (-13.0, 119.0), (37.0, 169.0)), (L, (253.0, 119.0), (203.0, 169.0))]);
    all.push((L, (37.0, 169.0), (203.0, 169.0)));
    all.extend((1..13).map(|k| 37.0 + 12.0 * f64::from(k)).map(|x| (L, (x, 119.0), (x, 169.0))));
    let found = covered(&all, &[]);
    assert!((found - 26_880.0).abs() < 1.0, "{found}");
}

/// A wall 249 wide, courses of 8 in, under a band at 112; at its left a porch's roof with rows 4 1/2 in apart, over
/// a fascia from 94 to 100: a slope from 137 at 100 to 123 at 124. Net 249 x 94, 112 x 6 and up to the band
/// 12 x (112 + 119) / 2.
#[test]
fn rows_of_a_roof_that_end_on_its_slope_are_none_of_the_wall_beside_it() {
    let slope = |y: f64| if y < 100.0 { 137.0 } else { 137.0 - (y - 100.0) * 7.0 / 12.0 };
    let mut all = courses(L, (0.0, 94.0, 8.0), |_| (0.0, 249.0), &[]);
    all.extend(courses(L, (96.0, 105.0, 8.0), |y| (slope(y), 249.0), &[]));
    all.extend(courses(L, (104.5, 124.0, 4.5), |y| (0.0, slope(y)), &[]));
    all.extend([(L, (0.0, 0.0), (249.0, 0.0)), (L, (0.0, 0.0), (0.0, 124.0))]);
    all.extend([(L, (249.0, 0.0), (249.0, 124.0)), (L, (slope(112.0), 112.0), (249.0, 112.0))]);
    all.extend(ring(L, [0.0, 94.0, 137.0, 100.0]));
    all.extend([(L, (137.0, 100.0), (123.0, 124.0)), (L, (0.0, 124.0), (123.0, 124.0))]);
    let joints = (0..5).flat_map(|k| (0..12).map(move |i| (f64::from(k), f64::from(i))));
    all.extend(
        joints
            .map(|(k, i)| (10.0 * i + 3.0, 100.0 + 4.5 * k))
            .map(|(x, y)| (L, (x, y), (x, y + 4.5))),
    );
    let found = covered(&all, &[]);
    let net = 249.0 * 94.0 + 112.0 * 6.0 + 12.0 * (112.0 + 119.0) / 2.0;
    assert!((found - net).abs() < 1.0, "{found} of {net}");
}
