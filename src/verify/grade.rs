//! Height of finished grade, and what of a wall lies too near to it.

use super::course_lines::{butt, course_at};
use super::named::bounds;
use super::scan::{Spans, joined, without};
use crate::geom::vocabulary::Xy;
use crate::layout::laid::LaidHouse;
use crate::layout::wall::{LaidElevation, LaidWall};

/// Height of grade at `x`, level beyond its ends.
pub(super) fn grade_at(e: &LaidElevation, x: f64) -> Option<f64> {
    let (first, last) = (e.grade.first()?, e.grade.last()?);
    if x <= first[0] {
        return Some(first[1]);
    }
    if x >= last[0] {
        return Some(last[1]);
    }
    let pair = e.grade.windows(2).find(|p| p[0][0] <= x && x <= p[1][0] && p[1][0] > p[0][0])?;
    Some(pair[0][1] + (x - pair[0][0]) / (pair[1][0] - pair[0][0]) * (pair[1][1] - pair[0][1]))
}

/// How far beside a turn of the grade its height is taken, inches.
pub(super) const BESIDE: f64 = 1e-6;

/// Rectangles of whole courses of a wall within `b` whose butt line would stand nearer to grade than the
/// clearance, and of what is left beside them and holds no piece from stud to stud.
pub(super) fn too_near(
    layout: &LaidHouse,
    (e, w): (&LaidElevation, &LaidWall),
    b: [f64; 4],
) -> Vec<Vec<Xy>> {
    let clear = layout.job.courses.clear_of_grade;
    let mut out = Vec::new();
    let mut index = course_at(layout, b[1]);
    loop {
        let (butt, top) = (butt(layout, index), butt(layout, index + 1));
        let steps = over(e, (b[0], b[2]), butt.max(b[1]) - clear);
        let middle = (butt.max(b[1]) + top.min(b[3])) / 2.0;
        let narrow = narrow(w, middle, &steps, layout.job.courses.stud_spacing);
        let both = steps.iter().chain(&narrow);
        out.extend(both.map(|s| vec![[s.0, b[1]], [s.1, b[1]], [s.1, top], [s.0, top]]));
        if steps.is_empty() || top >= b[3] {
            return out;
        }
        index += 1;
    }
}

/// Whether at a place a course from `bottom` to `top` would hold no piece from stud to stud between grade
/// and what stands beside.
pub(super) fn is_pocket(
    layout: &LaidHouse,
    (e, w): (&LaidElevation, &LaidWall),
    (bottom, top): (f64, f64),
    x: f64,
) -> bool {
    let [x0, _, x1, _] = bounds(&w.outline);
    let steps = over(e, (x0, x1), bottom - layout.job.courses.clear_of_grade);
    let narrow = narrow(w, (bottom + top) / 2.0, &steps, layout.job.courses.stud_spacing);
    narrow.iter().any(|s| s.0 < x && x < s.1)
}

/// From where to where grade stands higher than `limit` between two places and an inch beyond; a step
/// stands in whole sixteenths, outward.
fn over(e: &LaidElevation, (x0, x1): (f64, f64), limit: f64) -> Spans {
    let turns = e.grade.iter().map(|g| g[0]).filter(|x| *x > x0 - 1.0 && *x < x1 + 1.0);
    let mut xs: Vec<f64> = [x0 - 1.0, x1 + 1.0].into_iter().chain(turns).collect();
    xs.sort_by(f64::total_cmp);
    let mut near = Spans::new();
    for pair in xs.windows(2).filter(|p| p[1] - p[0] > 4.0 * BESIDE) {
        // Just inside: grade may stand plumb at a turn, as at a retaining wall.
        let inside = (pair[0] + BESIDE, pair[1] - BESIDE);
        let (Some(y0), Some(y1)) = (grade_at(e, inside.0), grade_at(e, inside.1)) else {
            continue;
        };
        if y0.max(y1) <= limit {
            continue;
        }
        let at = |y: f64| (limit - y0) / (y - y0) * (pair[1] - pair[0]) + pair[0];
        let (from, to) = match (y0 > limit, y1 > limit) {
            (true, true) => (pair[0], pair[1]),
            (true, false) => (pair[0], at(y1)),
            _ => (at(y1), pair[1]),
        };
        near.push((from - 0.0625, to + 0.0625));
    }
    joined(near)
}

/// What is clear of a wall at a height between steps, or between one and a jamb or corner, and narrower
/// than `least`.
fn narrow(w: &LaidWall, y: f64, steps: &Spans, least: f64) -> Spans {
    let hidden = w.hidden.iter().map(|h| &h.outline);
    let holes = hidden.flatten().chain(w.openings.iter().map(|o| &o.outline));
    let taken = joined(holes.flat_map(|ring| inside(ring, y)).collect());
    let clear = without(&without(&inside(&w.outline, y), &taken), steps);
    let ends = |x: f64| steps.iter().any(|s| s.0 == x || s.1 == x);
    clear.into_iter().filter(|s| s.1 - s.0 < least && (ends(s.0) || ends(s.1))).collect()
}

/// Where a level line lies inside a ring.
fn inside(ring: &[Xy], y: f64) -> Spans {
    let next = ring.iter().cycle().skip(1);
    let sides = ring.iter().zip(next).filter(|(a, b)| (a[1] > y) != (b[1] > y));
    let mut xs: Vec<f64> =
        sides.map(|(a, b)| a[0] + (y - a[1]) / (b[1] - a[1]) * (b[0] - a[0])).collect();
    xs.sort_by(f64::total_cmp);
    xs.chunks_exact(2).map(|p| (p[0], p[1])).collect()
}
