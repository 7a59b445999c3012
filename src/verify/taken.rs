//! What clearances over roofs and decorative boards take of a wall at most.

use super::along::reach;
use crate::geom::tol::SAME;
use crate::layout::by_wall::ByWall;
use crate::layout::laid::LaidHouse;
use crate::layout::wall::{LaidEdge, LaidWall};
use crate::model::corner::CornerKind;
use crate::model::house::EdgeKind;
use crate::model::trim::TrimKind;

/// Area over lower roofs that the clearance to them takes at most, square inches.
pub(super) fn over_roofs(w: &LaidWall, clear: f64) -> f64 {
    // Beside the plumb end of a roof as over its slope.
    let plumb = |e: &LaidEdge| e.kind == EdgeKind::Abutment && !on_outline(w, e);
    let roofs = w.edges.iter().filter(|e| e.kind == EdgeKind::LowerRoof || plumb(e));
    // Square to the roof, with a corner at each end.
    roofs.map(|e| (reach(e.from, e.to) + 2.0 * clear + 1.0) * clear).sum()
}

/// Whether a plumb side is one of the wall itself.
fn on_outline(w: &LaidWall, side: &LaidEdge) -> bool {
    let (x, y) = ((side.from[0] + side.to[0]) / 2.0, (side.from[1] + side.to[1]) / 2.0);
    (0..w.outline.len()).any(|i| {
        let (a, b) = (w.outline[i], w.outline[(i + 1) % w.outline.len()]);
        let plumb = (a[0] - x).abs() < SAME && (b[0] - x).abs() < SAME;
        plumb && a[1].min(b[1]) <= y && a[1].max(b[1]) >= y
    })
}

/// Area that corner covers and friezes take at most, square inches.
pub(super) fn decorated(layout: &LaidHouse, at: &ByWall, w: &LaidWall) -> f64 {
    let rules = &layout.job.trim;
    let (cover, frieze) = (rules.corner_cover, rules.frieze.max(rules.rake_frieze));
    let sides = at.sides(&w.id).iter().filter(|(c, _)| c.kind == CornerKind::Outside);
    // Along a slope a cover goes on by its own width and pitch.
    let covers: f64 = sides.map(|(_, k)| (k.high - k.low + 3.0 * cover) * cover).sum();
    // What a frieze takes is covered by its boards; its foot may be put on a course line.
    let boards = at.trims(&w.id).iter().filter(|t| t.kind == TrimKind::Frieze);
    covers + boards.map(|t| t.length * (frieze + SAME)).sum::<f64>()
}

/// What rounding to the grid and drawing noise along every side of a wall may add, square inches.
pub(super) fn noise(w: &LaidWall) -> f64 {
    1.0 + SAME * round(w)
}

/// Length of every side that bounds the wall, inches.
fn round(w: &LaidWall) -> f64 {
    let rings = w.hidden.iter().flat_map(|h| &h.outline);
    let rings = rings.chain(w.openings.iter().map(|o| &o.outline)).chain([&w.outline]);
    rings.map(|r| (0..r.len()).map(|i| reach(r[i], r[(i + 1) % r.len()])).sum::<f64>()).sum()
}
