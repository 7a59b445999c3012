//! What clearances over roofs, corner posts and decorative boards take of a wall at most.

use super::along::reach;
use super::corner_sides::set_back;
use crate::geom::tol::SAME;
use crate::geom::vocabulary::Xy;
use crate::layout::by_wall::ByWall;
use crate::layout::laid::LaidHouse;
use crate::layout::wall::{LaidEdge, LaidWall};
use crate::model::corner::{Corner, CornerSide};
use crate::model::filler::FilledTo;
use crate::model::house::{EdgeKind, HiddenBy};
use crate::model::trim::TrimKind;

/// Area that what is kept clear over roofs and ledges takes at most, square inches.
pub(super) fn kept_clear(layout: &LaidHouse, w: &LaidWall) -> f64 {
    let keep = layout.job.clearances();
    over_roofs(w, keep.roof) + over_ledges(w, keep.ledge)
}

/// Area over the tops of bare areas that the clearance to them takes at most, square inches. Reckoned as
/// over roofs.
pub(super) fn over_ledges(w: &LaidWall, clear: f64) -> f64 {
    let met = w.edges.iter().filter(|e| e.kind == EdgeKind::BareTop);
    let met: f64 = met.map(|e| strip_over(e.from, e.to, clear)).sum();
    let bare =
        |by: HiddenBy| matches!(by, HiddenBy::NotSided | HiddenBy::OtherZone | HiddenBy::Band);
    let drawn = w.hidden.iter().filter(|h| bare(h.by)).flat_map(|h| &h.outline);
    let drawn = drawn.flat_map(|ring| upper_sides(ring)).filter(|(a, b)| !on_outline(w, *a, *b));
    met.max(drawn.map(|(a, b)| strip_over(a, b, clear)).sum())
}

/// Area over lower roofs that the clearance to them takes at most, square inches. Reckoned from the sides of
/// the field, and from the roofs as drawn, since a wide clearance may leave no side of the field at a roof;
/// the greater holds.
pub(super) fn over_roofs(w: &LaidWall, clear: f64) -> f64 {
    // Beside the plumb end of a roof as over its slope.
    let plumb = |e: &LaidEdge| e.kind == EdgeKind::Abutment && !on_outline(w, e.from, e.to);
    let met = w.edges.iter().filter(|e| e.kind == EdgeKind::LowerRoof || plumb(e));
    let met: f64 = met.map(|e| strip_over(e.from, e.to, clear)).sum();
    // Siding may start on a board there.
    let boards = w.fillers.iter().filter(|f| f.between[0].to == FilledTo::LowerRoof);
    let feet = boards.map(|f| ([f.place[0], f.place[1]], [f.place[2], f.place[1]]));
    let met: f64 = met + feet.map(|(a, b)| strip_over(a, b, clear)).sum::<f64>();
    let drawn = w.hidden.iter().filter(|h| h.by == HiddenBy::Roof).flat_map(|h| &h.outline);
    let drawn = drawn.flat_map(|ring| upper_sides(ring)).filter(|(a, b)| !on_outline(w, *a, *b));
    met.max(drawn.map(|(a, b)| strip_over(a, b, clear)).sum())
}

/// A strip square to a roof's side, with a corner at each end.
fn strip_over(a: Xy, b: Xy, clear: f64) -> f64 {
    (reach(a, b) + 2.0 * clear + 1.0) * clear
}

/// The sides of a ring that have its area beneath or beside them.
fn upper_sides(ring: &[Xy]) -> impl Iterator<Item = (Xy, Xy)> {
    let sides = (0..ring.len()).map(|i| (ring[i], ring[(i + 1) % ring.len()]));
    let twice: f64 = sides.clone().map(|(a, b)| a[0] * b[1] - b[0] * a[1]).sum();
    // Left of the way round lies the area, where that is counter-clockwise.
    sides.filter(move |(a, b)| (b[0] - a[0]) * twice.signum() <= SAME)
}

/// Whether a side lies on the wall's own outline.
fn on_outline(w: &LaidWall, from: Xy, to: Xy) -> bool {
    let middle = [(from[0] + to[0]) / 2.0, (from[1] + to[1]) / 2.0];
    (0..w.outline.len()).any(|i| {
        let (a, b) = (w.outline[i], w.outline[(i + 1) % w.outline.len()]);
        let long = reach(a, b).max(SAME);
        let along = [(b[0] - a[0]) / long, (b[1] - a[1]) / long];
        let d = [middle[0] - a[0], middle[1] - a[1]];
        let (on, off) = (d[0] * along[0] + d[1] * along[1], d[0] * along[1] - d[1] * along[0]);
        off.abs() < SAME && on > -SAME && on < long + SAME
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
