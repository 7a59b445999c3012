//! Which upright sides of a plane are no corners: what is not its end is cut against something.

use super::ink::Ink;
use crate::geom::polygon::{Polygon, sides};
use crate::geom::tol::{LEVEL, plumb};
use crate::geom::vocabulary::Point;

/// How far from the outermost place of a plane a side may stand and be its end, inches.
const END: f64 = 6.0;
/// Shorter sides than this, inches, are steps.
const LEAST: f64 = 24.0;
/// How far beside a side nothing is drawn where the wall ends before the sky, inches.
const CLEAR: f64 = 12.0;

/// Upright sides of an outline that are no corners.
pub(super) fn channels(outline: &Polygon, ink: &Ink) -> Vec<(Point, Point)> {
    let b = outline.bounds();
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
        end || free
    };
    sides(&outline.outer).filter(|(p, q)| plumb(q.x - p.x)).filter(|s| !is_corner(s)).collect()
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
