//! Whether a strip is drawn as a board, with ends of its own, or is a part of a casing.

use super::drawn_lines::DrawnLines;
use super::family::Span;
use super::pieces::Piece;
use crate::geom::polygon::Polygon;
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

/// Whether what lies beyond a part of a course line, with courses at both sides of it, is the casing of a window that
/// stands on the line or hangs under it: upright lines at both ends begin at the line and go on past the frame. A
/// casing that ends short of the line leaves siding between.
pub(super) fn is_in_casing(lines: &DrawnLines, of: &Piece, over: Span, found: &[Polygon]) -> bool {
    let Some(room) = found.iter().map(Polygon::bounds).reduce(|a, b| a.union(b)) else {
        return false;
    };
    let up = room.center().y > of.y;
    let side = |x: f64, (p, q): &Segment| {
        let (low, high) = (p.y.min(q.y), p.y.max(q.y));
        let plumb = (p.x - x).abs() <= NEAR && (q.x - x).abs() <= NEAR;
        let begins = (if up { low } else { high } - of.y).abs() <= NEAR;
        plumb && begins && if up { high > room.y1 + NEAR } else { low < room.y0 - NEAR }
    };
    let drawn = |x: f64| {
        let beside = Rect::new(x - NEAR, room.y0, x + NEAR, room.y1);
        lines.within(beside).iter().any(|(s, _)| side(x, s))
    };
    let inside = over.0 > of.x0 + NEAR && over.1 < of.x1 - NEAR;
    inside && drawn(over.0) && drawn(over.1)
}
