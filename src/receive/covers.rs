//! What corner posts, corner boards and decorative trim take of a wall: siding ends at the bottoms of the
//! posts' pockets and at the boards' edges.

use super::corners::WallCorners;
use crate::geom::polygon::{Polygon, sides};
use crate::geom::tol::{GRID, LEVEL, SAME, level, same, snap};
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
                    off.extend(slots(wall, &strip));
                    off.push(strip);
                    moved.push(side);
                }
            }
            EdgeKind::Eave if trim.frieze > 0.0 => {
                // On the grid of all that is drawn, else a sliver stands between it and what ends at it.
                let foot = |p: Point| Point::new(p.x, snap(p.y - trim.frieze));
                let over = |p: Point| Point::new(p.x, p.y + OVER);
                let (from, to) = (foot(e.from), foot(e.to));
                off.push(Polygon::simple(vec![from, over(e.from), over(e.to), to]).wound());
                moved.push(DrawnEdge { from, to, ..e.clone() });
            }
            EdgeKind::Rake if trim.rake_frieze > 0.0 => {
                let [first, last] = rake_ends(wall, e, trim.rake_frieze);
                off.push(Polygon::simple(vec![first.0, first.1, last.1, last.0]).wound());
                moved.push(DrawnEdge { from: first.1, to: last.1, ..e.clone() });
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
    let reach = |p: Point| match w * steepest(wall, p) {
        // Past a level end there may be wall that hangs over the corner or stands under it.
        0.0 => (lean(wall, p, inward * w), 0.0),
        slope => (slope, OVER),
    };
    let ((down, past_low), (up, past_high)) = (reach(low), reach(high));
    let (bottom, top) = (low.y - down, high.y + up);
    // What stands in a corner that leans leans with it; a jog of drawing noise, farther across than up, does not.
    let (run, rise) = (high.x - low.x, high.y - low.y);
    let lean = if same(run, 0.0) || rise <= run.abs() { 0.0 } else { run / rise };
    let outer = |y: f64| low.x + lean * (y - low.y) - inward * OVER;
    // Siding ends on the grid, as under a frieze.
    let inner = |y: f64| snap(low.x + lean * (y - low.y) + inward * w);
    let ends = [bottom - past_low, top + past_high];
    let [[a, b], [c, d]] = ends.map(|y| [Point::new(outer(y), y), Point::new(inner(y), y)]);
    let strip = if lean == 0.0 {
        Polygon::rect(a.x.min(b.x), a.y, a.x.max(b.x), d.y)
    } else {
        Polygon::simple(vec![a, b, d, c]).wound()
    };
    let (low, high) = (Point::new(inner(bottom), bottom), Point::new(inner(top), top));
    let (from, to) = if inward < 0.0 { (low, high) } else { (high, low) };
    (strip, DrawnEdge { from, to, ..e.clone() })
}

/// Upper and lower corner of a board along a rake at its two ends, the upper one a little outside the
/// wall: cut plumb where a plumb side ends it, else square.
fn rake_ends(wall: &DrawnWall, rake: &DrawnEdge, width: f64) -> [(Point, Point); 2] {
    let along = (rake.to - rake.from) / rake.from.distance(rake.to).max(SAME);
    [(rake.from, -1.0), (rake.to, 1.0)].map(|(end, out)| {
        let plumb = wall.edges.iter().find(|e| {
            let meets = if out < 0.0 { e.to } else { e.from };
            level(e.to.x - e.from.x) && meets.distance(end) < SAME
        });
        let Some(side) = plumb else {
            let inward = Vec2::new(-along.y, along.x);
            return (end - inward * OVER, end + inward * width);
        };
        // Round a wall's own corner the board goes on past the side, so that no sliver stays; where the
        // wall goes on round the rake's end, as at a roof before it, it ends there.
        let run = side.to - side.from;
        let turns = if out < 0.0 { run.cross(along) } else { along.cross(run) };
        let past = if turns > 0.0 { along * (out * OVER) } else { Vec2::ZERO };
        let down = Vec2::new(0.0, -1.0 / along.x.abs());
        (end + past - down * OVER, end + past + down * width)
    })
}

/// Rise over run of the steepest side that ends at `p`.
fn steepest(wall: &DrawnWall, p: Point) -> f64 {
    let at = |e: &&DrawnEdge| e.from.distance(p) < SAME || e.to.distance(p) < SAME;
    wall.edges.iter().filter(at).filter_map(|e| e.pitch).map(|p| p / 12.0).fold(0.0, f64::max)
}

/// How far a side that reads as level, and ends at `p`, rises or falls along a strip as wide as `across`
/// (over 0 to the right): along the underside of a roof a spur would be left that no saw leaves.
fn lean(wall: &DrawnWall, p: Point, across: f64) -> f64 {
    let far = wall.edges.iter().filter(|e| e.pitch.is_none()).filter_map(|e| match () {
        () if e.from.distance(p) < SAME => Some(e.to),
        () if e.to.distance(p) < SAME => Some(e.from),
        () => None,
    });
    // One that ends over the strip may have wall past its end.
    let over = far.map(|q| q - p).filter(|d| d.x * across.signum() >= across.abs());
    over.map(|d| (d.y * across / d.x).abs()).fold(0.0, f64::max)
}

/// What is left between a strip that a post takes and the jambs of openings beside it, where it is so narrow
/// that no side is told from the other: the post stands against the opening there.
fn slots(wall: &DrawnWall, strip: &Polygon) -> Vec<Polygon> {
    let b = strip.bounds();
    let jambs = wall.openings.iter().flat_map(|o| sides(&o.outline));
    let beside = jambs.filter(|(p, q)| same(p.x, q.x)).filter_map(|(p, q)| {
        let (low, high) = (p.y.min(q.y).max(b.y0), p.y.max(q.y).min(b.y1));
        let near = if p.x > b.x1 { p.x - b.x1 } else { b.x0 - p.x };
        let slot = high > low && near > 0.0 && near <= LEVEL;
        let (from, to) = if p.x > b.x1 { (b.x1, p.x) } else { (p.x, b.x0) };
        // Into both, so that no hairline stays.
        slot.then(|| Polygon::rect(from - GRID, low, to + GRID, high))
    });
    beside.collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::model::house::WallWay;
    use crate::origin::Origin;

    fn wall() -> DrawnWall {
        DrawnWall {
            id: "wall-1".into(),
            outline: Vec::new(),
            faces: Vec::new(),
            hidden: Vec::new(),
            openings: Vec::new(),
            obstacles: Vec::new(),
            bands: Vec::new(),
            joints: Vec::new(),
            edges: Vec::new(),
            fillers: Vec::new(),
            short: Vec::new(),
            drawn_exposure: None,
            way: WallWay::Outline,
            origin: Origin::default(),
        }
    }

    #[test]
    fn a_jog_of_noise_at_a_corner_leaves_places_that_are_numbers() {
        // Drawn up to 50 and on from 0.05 aside of it: the jog is a side of its own, no higher than nothing.
        let at = |x: f64, y: f64| Point::new(x, y);
        for (from, to) in [(at(240.0, 50.0), at(240.05, 50.0)), (at(0.0, 50.01), at(0.05, 50.0))] {
            let kind = EdgeKind::OutsideCorner;
            let jog = DrawnEdge { kind, from, to, pitch: None, tag: None };
            let (strip, side) = set_back(&wall(), &jog, 2.0);
            let places = strip.outer.iter().copied().chain([side.from, side.to]);
            assert!(places.into_iter().all(|p| p.x.is_finite() && p.y.is_finite()), "{strip:?}");
        }
    }
}
