//! What is flashed on a wall before siding (`LayoutFact::OrderOfWork`).

use crate::geom::tol::level;
use crate::layout::wall::{LaidEdge, LaidWall};
use crate::model::house::EdgeKind;
use crate::model::work::FlashedPlace;

/// Places of one wall, in the order they are told.
pub(super) fn flashed(w: &LaidWall) -> Vec<FlashedPlace> {
    let has = |kind: EdgeKind| w.edges.iter().any(|e| e.kind == kind);
    let mut out = Vec::new();
    if !w.openings.is_empty() {
        let openings = w.openings.iter().map(|o| o.id.clone()).collect();
        out.push(FlashedPlace::Openings { openings });
    }
    if has(EdgeKind::OutsideCorner) || has(EdgeKind::InsideCorner) {
        out.push(FlashedPlace::Corners);
    }
    let roofs = || w.edges.iter().filter(|e| e.kind == EdgeKind::LowerRoof);
    let level_roof = |e: &LaidEdge| level(e.to[1] - e.from[1]);
    if roofs().any(|e| !level_roof(e)) {
        out.push(FlashedPlace::SlopedRoof);
    }
    if roofs().any(level_roof) {
        out.push(FlashedPlace::LevelRoof);
    }
    if has(EdgeKind::BareTop) {
        out.push(FlashedPlace::Ledge);
    }
    out
}
