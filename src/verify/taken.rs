//! What clearances over roofs, corner posts and decorative boards take of a wall at most.

use super::along::reach;
use super::corner_sides::set_back;
use crate::geom::tol::SAME;
use crate::layout::by_wall::ByWall;
use crate::layout::laid::LaidHouse;
use crate::layout::wall::{LaidEdge, LaidWall};
use crate::model::corner::{Corner, CornerSide};
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

/// Area that corner posts, covers and friezes take at most, square inches.
pub(super) fn decorated(layout: &LaidHouse, at: &ByWall, w: &LaidWall) -> f64 {
    let rules = &layout.job.trim;
    let frieze = rules.frieze.max(rules.rake_frieze);
    // Along a slope a post goes on by its own width and pitch.
    let strip = |(c, k): &(&Corner, &CornerSide)| {
        let back = set_back(layout, c, k);
        (k.high - k.low + 3.0 * back) * back
    };
    let posts: f64 = at.sides(&w.id).iter().map(strip).sum();
    // What a frieze takes is covered by its boards; its foot may be put on a course line.
    let boards = at.trims(&w.id).iter().filter(|t| t.kind == TrimKind::Frieze);
    posts + boards.map(|t| t.length * (frieze + SAME)).sum::<f64>()
}
