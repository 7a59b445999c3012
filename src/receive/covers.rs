//! What corner posts, corner boards and decorative trim take of a wall: siding ends at the bottoms of the
//! posts' pockets and at the boards' edges.

use super::corners::WallCorners;
use crate::geom::polygon::Polygon;
use crate::geom::tol::{SAME, level};
use crate::geom::vocabulary::{Point, Vec2};
use crate::job::TrimRules;
use crate::model::house::{DrawnEdge, DrawnWall, EdgeKind};

/// Beyond the wall's own sides, so that no sliver stays, inches.
const OVER: f64 = 0.25;

/// Areas that posts, covers and friezes take, and the sides that siding ends at instead.
pub(super) fn covered(
    wall: &DrawnWall,
    trim: &TrimRules,
    corners: &WallCorners,
) -> (Vec<Polygon>, Vec<DrawnEdge>) {
    let (mut off, mut moved) = (Vec::new(), Vec::new());
    for e in &wall.edges {
        match e.kind {
            EdgeKind::OutsideCorner | EdgeKind::InsideCorner => {
                let w = corners.set_back(e);
                if w > 0.0 {
                    let (strip, side) = set_back(wall, e, w);
                    off.push(strip);
                    moved.push(side);
                }
            }
            EdgeKind::Eave if trim.frieze > 0.0 => {
                let down = Vec2::new(0.0, -trim.frieze);
                let (x0, x1) = (e.from.x.min(e.to.x), e.from.x.max(e.to.x));
                off.push(Polygon::rect(x0, e.from.y - trim.frieze, x1, e.from.y + OVER));
                moved.push(DrawnEdge { from: e.from + down, to: e.to + down, ..e.clone() });
            }
            EdgeKind::Rake if trim.rake_frieze > 0.0 => {
                let w = trim.rake_frieze;
                let along = (e.to - e.from) / e.from.distance(e.to).max(SAME);
                let inward = Vec2::new(-along.y, along.x) * w;
                let out = inward * (-OVER / w);
                let (from, to) = (
                    e.from - along * past_plumb(wall, e, e.from, w),
                    e.to + along * past_plumb(wall, e, e.to, w),
                );
                off.push(
                    Polygon::simple(vec![from + out, from + inward, to + inward, to + out]).wound(),
                );
                moved.push(DrawnEdge { from: from + inward, to: to + inward, ..e.clone() });
            }
            _ => {}
        }
    }
    (off, moved)
}

/// What stands in a corner takes a strip of the wall along it; siding ends at the strip's inner side.
fn set_back(wall: &DrawnWall, e: &DrawnEdge, w: f64) -> (Polygon, DrawnEdge) {
    // The field lies on the left hand: the right side of a wall runs up.
    let inward = if e.to.y > e.from.y { -1.0 } else { 1.0 };
    let (low, high) = if e.to.y > e.from.y { (e.from, e.to) } else { (e.to, e.from) };
    // A rake or a sloping roof goes on rising or falling along the strip.
    let (down, up) = (w * steepest(wall, low), w * steepest(wall, high));
    // Past a level end there may be wall that hangs over the corner or stands under it.
    let past = |slope: f64| if slope > 0.0 { OVER } else { 0.0 };
    let (a, b) = (low.x - inward * OVER, low.x + inward * w);
    let (bottom, top) = (low.y - down, high.y + up);
    let strip = Polygon::rect(a.min(b), bottom - past(down), a.max(b), top + past(up));
    let shift = Vec2::new(inward * w, 0.0);
    let (low, high) = (Point::new(low.x, bottom) + shift, Point::new(high.x, top) + shift);
    let (from, to) = if inward < 0.0 { (low, high) } else { (high, low) };
    (strip, DrawnEdge { from, to, ..e.clone() })
}

/// How far the lower edge of a board along a rake goes on past the rake's end, to a plumb side.
fn past_plumb(wall: &DrawnWall, rake: &DrawnEdge, end: Point, width: f64) -> f64 {
    let plumb = wall.edges.iter().any(|e| {
        level(e.to.x - e.from.x) && (e.from.distance(end) < SAME || e.to.distance(end) < SAME)
    });
    if plumb { width * rake.pitch.unwrap_or(0.0) / 12.0 } else { 0.0 }
}

/// Rise over run of the steepest side that ends at `p`.
fn steepest(wall: &DrawnWall, p: Point) -> f64 {
    let at = |e: &&DrawnEdge| e.from.distance(p) < SAME || e.to.distance(p) < SAME;
    wall.edges.iter().filter(at).filter_map(|e| e.pitch).map(|p| p / 12.0).fold(0.0, f64::max)
}
