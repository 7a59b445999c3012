//! Whether a strip is drawn as a board, with ends of its own.

use super::drawn_lines::DrawnLines;
use super::family::Span;
use crate::geom::segment::Segment;
use crate::geom::vocabulary::Rect;

/// Ends stand at the sides of a strip, and reach from its foot to its top, but for this, inches.
const NEAR: f64 = 1.0 / 16.0;

/// Whether upright lines as high as a strip close it at both ends: siding ends at corners and casings, which
/// go on past a course.
pub(super) fn is_boxed(lines: &DrawnLines, (x0, x1): Span, y0: f64, y1: f64) -> bool {
    let (low, high) = (y0.min(y1), y0.max(y1));
    if high - low <= NEAR {
        return false;
    }
    [x0, x1].into_iter().all(|x| {
        let end = |(p, q): &Segment| {
            (p.x - x).abs() <= NEAR
                && (q.x - x).abs() <= NEAR
                && (p.y.min(q.y) - low).abs() <= NEAR
                && (p.y.max(q.y) - high).abs() <= NEAR
        };
        let room = Rect::new(x - NEAR, low, x + NEAR, high);
        lines.within(room).iter().any(|(s, _)| end(s))
    })
}
