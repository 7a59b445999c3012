//! Holes and notches of a wall in which an opening stands.

use crate::extract::openings::OVERHEAD;
use crate::geom::boolean::{difference, union_all};
use crate::geom::polygon::{Polygon, bounds, sides};
use crate::geom::tol::level;
use crate::geom::vocabulary::{Point, Rect, Ring};
use crate::model::house::{DrawnOpening, OpeningKind};
use crate::origin::Origin;

/// How much wider than the drawn opening its notch may be at each side, inches: the widest casing
/// with room to spare (common practice, no source).
const CASING: f64 = 12.0;
/// A hole whose foot is no higher than this over the wall's is a door's, inches: a step and a sill
/// (common practice, no source).
const STEP: f64 = 12.0;
/// Least height of a door, inches (`TakeoffFact::CallSizes`: 80).
const DOOR: f64 = 72.0;

/// An opening as drawn, inches of the whole drawing.
#[derive(Clone, Debug)]
pub(crate) struct FoundOpening {
    pub(crate) outline: Ring,
    pub(crate) kind: OpeningKind,
    pub(crate) block: Option<String>,
    pub(crate) origin: Origin,
}

impl FoundOpening {
    fn frame(&self) -> Rect {
        bounds(&self.outline).unwrap_or(Rect::ZERO)
    }

    /// Whether its middle lies in the ring.
    pub(crate) fn within(&self, ring: &[Point]) -> bool {
        crate::geom::polygon::ring_contains(ring, self.frame().center())
    }
}

/// Openings of the holes that a way found; their kind is settled by what is drawn.
pub(super) fn holes(rings: &[Ring], origin: &Origin) -> Vec<DrawnOpening> {
    rings
        .iter()
        .map(|r| DrawnOpening {
            id: Default::default(),
            kind: OpeningKind::Window,
            outline: Polygon::simple(r.clone()).wound().outer,
            unfilled: None,
            cut: Vec::new(),
            block: None,
            origin: origin.clone(),
        })
        .collect()
}

/// The kind of a hole: of the opening drawn in it, else by its place and height.
pub(super) fn kind_in(ring: &[Point], foot: f64, drawn: &[FoundOpening]) -> OpeningKind {
    let here = || drawn.iter().filter(|d| d.within(ring));
    if let Some(d) = here().max_by(|a, b| a.frame().area().total_cmp(&b.frame().area())) {
        return d.kind;
    }
    by_size(bounds(ring).unwrap_or(Rect::ZERO), foot)
}

/// Doors stand at the foot of their wall and are a man's height.
pub(crate) fn by_size(b: Rect, foot: f64) -> OpeningKind {
    if b.y0 - foot <= STEP && b.height() >= DOOR {
        if b.width() > OVERHEAD { OpeningKind::OverheadDoor } else { OpeningKind::Door }
    } else {
        OpeningKind::Window
    }
}

/// The wall with its notches closed where an opening is drawn in them, and these openings.
pub(super) fn notches(
    wall: &Polygon,
    holes: &[DrawnOpening],
    drawn: &[FoundOpening],
) -> (Ring, Vec<DrawnOpening>) {
    let mut whole = Polygon::simple(wall.outer.clone());
    let mut found = Vec::new();
    for d in drawn {
        let b = d.frame();
        let outside = !whole.contains(b.center());
        if !outside || holes.iter().any(|h| d.within(&h.outline)) {
            continue;
        }
        let Some(notch) = notch(&whole, b) else { continue };
        let Some(joined) = union_all(&[whole.clone(), notch.clone()])
            .into_iter()
            .max_by(|p, q| p.area().total_cmp(&q.area()))
        else {
            continue;
        };
        whole = Polygon::simple(joined.outer);
        found.push(DrawnOpening {
            id: Default::default(),
            kind: d.kind,
            outline: notch.outer,
            unfilled: None,
            cut: Vec::new(),
            block: d.block.clone(),
            origin: d.origin.clone(),
        });
    }
    (whole.outer, found)
}

/// The notch of a wall in which a thing with box `b` stands: wall at both sides, and above it or
/// below it.
fn notch(wall: &Polygon, b: Rect) -> Option<Polygon> {
    let c = b.center();
    let left = reach(wall, c, (-1.0, 0.0))?;
    let right = reach(wall, c, (1.0, 0.0))?;
    let (up, down) = (reach(wall, c, (0.0, 1.0)), reach(wall, c, (0.0, -1.0)));
    let (x0, x1) = (c.x - left, c.x + right);
    if b.x0 - x0 > CASING || x1 - b.x1 > CASING {
        return None;
    }
    let (top, foot) = match (up, down) {
        (Some(u), Some(d)) => (c.y + u, c.y - d),
        (Some(u), None) => (c.y + u, side_end(wall, x0, x1, c.y, false)?),
        (None, Some(d)) => (side_end(wall, x0, x1, c.y, true)?, c.y - d),
        (None, None) => return None,
    };
    if top - b.y1 > CASING || (b.y0 - foot > 3.0 * CASING) {
        return None;
    }
    // Arched heads and steps in the hatch stay as they are: only what the wall leaves free counts.
    let room = Polygon::rect(x0, foot, x1, top);
    let free = difference(&[room], std::slice::from_ref(wall));
    free.into_iter().find(|p| p.contains(c)).map(|p| Polygon::simple(p.outer))
}

/// How far it is from `from` to the wall in direction `way`.
fn reach(wall: &Polygon, from: Point, way: (f64, f64)) -> Option<f64> {
    sides(&wall.outer)
        .filter_map(|(a, b)| {
            // Turned so that the way is to the right.
            let turn = |p: Point| {
                let d = p - from;
                (d.x * way.0 + d.y * way.1, d.y * way.0 - d.x * way.1)
            };
            let ((ax, ay), (bx, by)) = (turn(a), turn(b));
            ((ay > 0.0) != (by > 0.0)).then(|| ax - ay * (bx - ax) / (by - ay))
        })
        .filter(|t| *t > 0.0)
        .min_by(f64::total_cmp)
}

/// Where the plumb sides of a notch end, upward or downward: the farther of the two corners.
fn side_end(wall: &Polygon, x0: f64, x1: f64, y: f64, up: bool) -> Option<f64> {
    let ends = sides(&wall.outer).filter_map(|(a, b)| {
        let plumb = level(a.x - b.x) && (level(a.x - x0) || level(a.x - x1));
        let (low, high) = (a.y.min(b.y), a.y.max(b.y));
        (plumb && low < y && high > y).then_some(if up { high } else { low })
    });
    // The nearer one: past it the notch is open on one side, and no longer a notch.
    ends.reduce(|a, b| if up { a.min(b) } else { a.max(b) })
}

/// Whether wall or known openings lie at both sides of a face, by probes at several heights.
pub(super) fn between(face: &Polygon, solid: &[Polygon]) -> bool {
    let b = face.bounds();
    let heights: Vec<f64> = (1..10).map(|k| b.y0 + b.height() * f64::from(k) / 10.0).collect();
    let beside = |x: f64| {
        heights.iter().filter(|y| solid.iter().any(|p| p.contains(Point::new(x, **y)))).count() >= 6
    };
    beside(b.x0 - 0.5) && beside(b.x1 + 0.5)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn drawn(r: Polygon, kind: OpeningKind) -> FoundOpening {
        FoundOpening { outline: r.outer, kind, block: None, origin: Origin::default() }
    }

    #[test]
    fn a_door_in_a_notch_closes_it_with_its_casing() {
        // A wall 200 x 100 with a notch of 44 x 86 from its foot; the door is 36 x 80 in it.
        let wall = difference(
            &[Polygon::rect(0.0, 0.0, 200.0, 100.0)],
            &[Polygon::rect(80.0, 0.0, 124.0, 86.0)],
        );
        let door = drawn(Polygon::rect(84.0, 1.0, 120.0, 81.0), OpeningKind::Door);
        let (ring, found) = notches(&wall[0], &[], std::slice::from_ref(&door));
        assert_eq!(Polygon::simple(ring).wound().area(), 20_000.0);
        assert_eq!(bounds(&found[0].outline), Some(Rect::new(80.0, 0.0, 124.0, 86.0)));
        // Without the door the notch stays.
        assert_eq!(notches(&wall[0], &[], &[]).1, []);
        // A thing that stands far from the notch's sides is not what the notch is for.
        let lamp = drawn(Polygon::rect(100.0, 50.0, 102.0, 54.0), OpeningKind::Vent);
        assert_eq!(notches(&wall[0], &[], &[lamp]).1, []);
    }

    #[test]
    fn without_a_drawing_in_it_a_hole_is_named_by_size_and_place() {
        let hole = |x0: f64, y0: f64, x1: f64, y1: f64| Polygon::rect(x0, y0, x1, y1).outer;
        assert_eq!(kind_in(&hole(0.0, 4.0, 36.0, 84.0), 0.0, &[]), OpeningKind::Door);
        assert_eq!(kind_in(&hole(0.0, 0.0, 96.0, 84.0), 0.0, &[]), OpeningKind::OverheadDoor);
        assert_eq!(kind_in(&hole(0.0, 30.0, 36.0, 84.0), 0.0, &[]), OpeningKind::Window);
    }
}
