//! Height of finished grade, and what of a wall lies too near to it.

use super::course_lines::{butt, course_at};
use crate::geom::vocabulary::Xy;
use crate::layout::laid::LaidHouse;
use crate::layout::wall::LaidElevation;

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
const BESIDE: f64 = 1e-6;

/// Rectangles of whole courses whose butt line would stand nearer to grade than the clearance.
pub(super) fn too_near(layout: &LaidHouse, e: &LaidElevation, b: [f64; 4]) -> Vec<Vec<Xy>> {
    let clear = layout.job.courses.clear_of_grade;
    let turns = e.grade.iter().map(|g| g[0]).filter(|x| *x > b[0] - 1.0 && *x < b[2] + 1.0);
    let mut xs: Vec<f64> = [b[0] - 1.0, b[2] + 1.0].into_iter().chain(turns).collect();
    xs.sort_by(f64::total_cmp);
    let mut out = Vec::new();
    let mut index = course_at(layout, b[1]);
    loop {
        let (butt, top) = (butt(layout, index), butt(layout, index + 1));
        let limit = butt.max(b[1]) - clear;
        let before = out.len();
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
            // A step stands in whole sixteenths, outward.
            let (from, to) = (from - 0.0625, to + 0.0625);
            out.push(vec![[from, b[1]], [to, b[1]], [to, top], [from, top]]);
        }
        if out.len() == before || top >= b[3] {
            return out;
        }
        index += 1;
    }
}
