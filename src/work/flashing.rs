//! What is flashed on a wall before siding (`LayoutFact::OrderOfWork`).

use crate::geom::tol::level;
use crate::layout::drawn_ends::skirt_under;
use crate::layout::wall::{LaidEdge, LaidWall};
use crate::model::filler::FilledTo;
use crate::model::house::EdgeKind;
use crate::model::work::FlashedPlace;

/// Places of one wall, in the order they are told; `kick_out` says whether a roof ends on it.
pub(super) fn flashed(w: &LaidWall, kick_out: bool) -> Vec<FlashedPlace> {
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
    if kick_out {
        out.push(FlashedPlace::KickOut);
    }
    // A skirt board lifts the siding off what it stands over.
    let (over_roofs, over_ledges): (Vec<&LaidEdge>, Vec<&LaidEdge>) =
        w.edges.iter().filter(|e| e.kind == EdgeKind::BareTop).partition(|e| {
            skirt_under(w, e).is_some_and(|f| f.between[0].to == FilledTo::LowerRoof)
        });
    if roofs().any(level_roof) || !over_roofs.is_empty() {
        out.push(FlashedPlace::LevelRoof);
    }
    if !over_ledges.is_empty() {
        out.push(FlashedPlace::Ledge);
    }
    out
}
