//! Which sides of walls stand at a corner.

use super::tolerance::NEAR;
use crate::layout::laid::LaidHouse;
use crate::layout::wall::{LaidEdge, LaidWall};
use crate::model::corner::{Corner, CornerKind, CornerSide, Hand};
use crate::model::house::EdgeKind;

/// The edges' word for a corner's kind.
pub(super) fn kind(c: &Corner) -> EdgeKind {
    match c.kind {
        CornerKind::Outside => EdgeKind::OutsideCorner,
        CornerKind::Inside => EdgeKind::InsideCorner,
    }
}

/// The hand of a corner's side: the field lies on the left hand, so the right one runs up.
pub(super) fn hand(s: &LaidEdge) -> Option<Hand> {
    let corner = matches!(s.kind, EdgeKind::OutsideCorner | EdgeKind::InsideCorner);
    corner.then(|| if s.to[1] > s.from[1] { Hand::Right } else { Hand::Left })
}

/// Whether a side of a wall lies on the corner's side.
pub(super) fn lies(layout: &LaidHouse, w: &LaidWall, s: &LaidEdge, k: &CornerSide) -> bool {
    // A cover stands between the corner and the siding; along a slope its edge runs on.
    let cover = if s.kind == EdgeKind::OutsideCorner { layout.job.trim.corner_cover } else { 0.0 };
    let (low, high) = (s.from[1].min(s.to[1]), s.from[1].max(s.to[1]));
    let x = (s.from[0] + s.to[0]) / 2.0;
    k.wall == w.id
        && hand(s) == Some(k.side)
        // A side that leans is off by as much at most.
        && (x - k.x).abs() < NEAR + (s.from[0] - s.to[0]).abs() + cover
        && low >= k.low - NEAR - 3.0 * cover
        && high <= k.high + NEAR + 3.0 * cover
        && low < k.high
        && high > k.low
}
