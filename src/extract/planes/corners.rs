//! Which upright sides of a plane are no corners: what is not its end is cut against something.

use super::ends::END;
use crate::extract::ink::Ink;
use crate::geom::polygon::{Polygon, bounds, sides};
use crate::geom::tol::{LEVEL, plumb};
use crate::geom::vocabulary::Point;
use crate::model::house::DrawnOpening;

/// Shorter sides than this, inches, are steps.
const LEAST: f64 = 24.0;
/// How far beside a side nothing is drawn where the wall ends before the sky, inches: farther than a post
/// is wide.
const CLEAR: f64 = 36.0;
/// Siding stands at a corner over this height at least, inches; what has less is the side of a window.
const SIDED: f64 = 12.0;

/// Upright sides of an outline that are no corners.
pub(super) fn channels(
    outline: &Polygon,
    openings: &[DrawnOpening],
    ink: &Ink,
) -> Vec<(Point, Point)> {
    let b = outline.bounds();
    let upright = |right: bool| {
        let all = sides(&outline.outer);
        all.filter(move |(p, q)| plumb(q.x - p.x) && (q.y > p.y) == right)
            .map(|(p, q)| ((p.x + q.x) / 2.0, (p.y.min(q.y), p.y.max(q.y))))
            .map(|(x, reach)| (x, siding_at(openings, x, reach)))
    };
    let sided = |right: bool, x: f64| -> f64 {
        upright(right).filter(|s| (s.0 - x).abs() <= LEVEL).map(|s| s.1).sum()
    };
    // Where most of the siding of one hand ends, the wall ends, though less of it goes on over a roof.
    let most = [false, true].map(|right| upright(right).map(|s| s.1).sum::<f64>() / 2.0);
    // A plane ends in one line at each hand: where most of its end stands.
    let ends = [end(outline, false), end(outline, true)];
    let is_corner = |(p, q): &(Point, Point)| {
        let (low, high) = (p.y.min(q.y), p.y.max(q.y));
        let x = (p.x + q.x) / 2.0;
        // The wall lies on the left hand: its right side runs up.
        let right = q.y > p.y;
        let at_end = if right { b.x1 - x <= END } else { x - b.x0 <= END };
        let end = ends[usize::from(right)].is_some_and(|e| (e - x).abs() <= LEVEL);
        let beyond = if right { (x + 1.0, x + CLEAR) } else { (x - CLEAR, x - 1.0) };
        let free = !at_end && high - low >= LEAST && !ink.plumb_between(beyond, (low, high));
        let here = sided(right, x);
        here > most[usize::from(right)] || ((end || free) && here >= SIDED.min(high - low))
    };
    sides(&outline.outer).filter(|(p, q)| plumb(q.x - p.x)).filter(|s| !is_corner(s)).collect()
}

/// How much of a side at `x` has siding beside it and no opening, inches.
fn siding_at(openings: &[DrawnOpening], x: f64, (low, high): (f64, f64)) -> f64 {
    let boxes = openings.iter().filter_map(|o| bounds(&o.outline));
    let beside = boxes.filter(|b| (b.x0 - x).abs() <= LEVEL || (b.x1 - x).abs() <= LEVEL);
    let taken: f64 = beside.map(|b| (b.y1.min(high) - b.y0.max(low)).max(0.0)).sum();
    high - low - taken
}

/// Where most of the left or right end of a plane stands.
fn end(outline: &Polygon, right: bool) -> Option<f64> {
    let b = outline.bounds();
    let mut sums: Vec<(f64, f64)> = Vec::new();
    let upright = sides(&outline.outer).filter(|(p, q)| plumb(q.x - p.x) && (q.y > p.y) == right);
    for (p, q) in upright {
        let (x, length) = ((p.x + q.x) / 2.0, (q.y - p.y).abs());
        if (if right { b.x1 - x } else { x - b.x0 }) <= END {
            match sums.iter_mut().find(|s| (s.0 - x).abs() <= LEVEL) {
                Some(s) => s.1 += length,
                None => sums.push((x, length)),
            }
        }
    }
    sums.into_iter().max_by(|p, q| p.1.total_cmp(&q.1)).map(|s| s.0)
}
