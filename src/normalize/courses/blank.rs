//! Strips under a sill or over a head that no course line falls in: what is drawn beside them is siding, and
//! so are they.

use super::boxed::is_boxed;
use super::drawn_lines::DrawnLines;
use super::family::Span;
use crate::geom::polygon::Polygon;
use crate::geom::segment::Segment;
use crate::geom::vocabulary::Rect;

/// What ends, stands level or meets is so but for this, inches.
const NEAR: f64 = 1.0 / 16.0;
/// Least height of a strip, inches.
const LEAST: f64 = 1.0 / 4.0;

/// What lies beyond the last course line at one end of courses: from side to side, the line, and the drawn
/// end.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct End {
    pub(super) over: Span,
    pub(super) y: f64,
    pub(super) to: f64,
}

/// The strips between ends that stand beside one another on one course line and end at one level: where an
/// opening stands between them and its sill or head, as wide as the gap, no farther from the end than they.
pub(super) fn blank(lines: &DrawnLines, mut ends: Vec<End>) -> Vec<Polygon> {
    ends.sort_by(|a, b| a.y.total_cmp(&b.y).then(a.over.0.total_cmp(&b.over.0)));
    let pairs = ends.windows(2).map(|w| (w[0], w[1]));
    pairs.filter_map(|(left, right)| between(lines, left, right)).collect()
}

fn between(lines: &DrawnLines, left: End, right: End) -> Option<Polygon> {
    let (x0, x1) = (left.over.1, right.over.0);
    let alike = (left.y - right.y).abs() <= NEAR && (left.to - right.to).abs() <= NEAR;
    if !alike || x1 - x0 < LEAST {
        return None;
    }
    let (low, high) = (left.y.min(left.to), left.y.max(left.to));
    let room = Rect::new(x0, low - NEAR, x1, high + NEAR);
    let level = |(p, q): &Segment| (p.y - q.y).abs() <= NEAR && q.x - p.x > NEAR;
    let found: Vec<Segment> =
        lines.within(room).into_iter().map(|(s, _)| s).filter(|s| level(s)).collect();
    let ended = found
        .iter()
        .any(|(p, q)| (p.y - left.to).abs() <= NEAR && p.x <= x0 + NEAR && q.x >= x1 - NEAR);
    // The nearest line to the end that is drawn over any of the gap.
    let inner = found.iter().filter(|(p, _)| (p.y - left.to).abs() > LEAST);
    let inside = inner.filter(|(p, q)| q.x.min(x1) - p.x.max(x0) > NEAR);
    let (p, q) =
        inside.min_by(|a, b| (a.0.y - left.to).abs().total_cmp(&(b.0.y - left.to).abs()))?;
    let whole = (p.x - x0).abs() <= NEAR && (q.x - x1).abs() <= NEAR;
    let free = !is_boxed(lines, (x0, x1), p.y, left.to);
    (ended && whole && free).then(|| Polygon::rect(x0, p.y.min(left.to), x1, p.y.max(left.to)))
}
