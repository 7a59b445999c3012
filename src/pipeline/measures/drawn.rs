//! What is drawn moved to what was taped: lines, fills and lettering, each once, by the elevation that it is nearest
//! to and by the wall there. Level lines stay: heights are taped from them.

use super::wall::Wall;
use crate::geom::polygon::bounds;
use crate::geom::vocabulary::{Point, Rect, Vec2};
use crate::model::linework::{HatchArea, Label, Linework, Role, Stroke};

/// What lies farther from the walls of an elevation is no part of it, inches. Of our own choosing, no source.
const REACH: f64 = 60.0;
/// How much the size of a wall counts where several are as near: the smallest one is meant.
const SIZE: f64 = 1e-9;

/// The walls of an elevation, where they stand in the drawing.
pub(super) struct Elevation {
    walls: Vec<Wall>,
    /// Where its own places begin, inches of the drawing as it lies now.
    origin: Vec2,
    /// Round its walls, inches of the drawing.
    region: Rect,
}

impl Elevation {
    /// None where it has no wall.
    pub(super) fn of(walls: Vec<Wall>, origin: Vec2) -> Option<Self> {
        let region = walls.iter().map(|w| w.frame).reduce(|a, b| a.union(b))? + origin;
        Some(Elevation { walls, origin, region })
    }

    /// The wall that a place is on or nearest to.
    fn nearest(&self, at: Point) -> Option<&Wall> {
        let off = |w: &&Wall| away(w.frame + self.origin, at) + w.frame.area() * SIZE;
        self.walls.iter().min_by(|a, b| off(a).total_cmp(&off(b)))
    }

    /// Where a place goes with the wall that it is nearest to.
    fn moved(&self, at: Point) -> Point {
        self.nearest(at).map_or(at, |w| w.moved(at - self.origin) + self.origin)
    }
}

/// How far a place is from a box, along the farther of the two axes.
fn away(r: Rect, at: Point) -> f64 {
    let x = (r.x0 - at.x).max(at.x - r.x1).max(0.0);
    let y = (r.y0 - at.y).max(at.y - r.y1).max(0.0);
    x.max(y)
}

/// The elevation that a place is nearest to.
fn nearest(all: &[Elevation], at: Point) -> Option<&Elevation> {
    let off = |e: &&Elevation| away(e.region, at);
    all.iter().min_by(|a, b| off(a).total_cmp(&off(b)))
}

/// The one that a place belongs to: the nearest, within reach.
fn of_place(all: &[Elevation], at: Point) -> Option<&Elevation> {
    nearest(all, at).filter(|e| away(e.region, at) <= REACH)
}

/// What moves as a whole: an opening of a wall with its frame, or a wall.
enum Thing<'a> {
    Opening(&'a Elevation, &'a Wall, usize),
    Wall(&'a Elevation, &'a Wall),
    /// Each place by itself.
    Loose(&'a Elevation),
}

impl Thing<'_> {
    fn moved(&self, all: &[Elevation], at: Point) -> Point {
        match self {
            Thing::Opening(e, wall, i) => wall.at_opening(*i, at - e.origin) + e.origin,
            Thing::Wall(e, wall) => wall.moved(at - e.origin) + e.origin,
            // Lines may run past several walls, and grade past several elevations.
            Thing::Loose(own) => nearest(all, at).unwrap_or(own).moved(at),
        }
    }
}

/// What a box of this role moves with; nothing where it stays.
fn thing(all: &[Elevation], role: Option<Role>, b: Rect) -> Option<Thing<'_>> {
    if matches!(role, Some(Role::Level | Role::Frame | Role::Title)) {
        return None;
    }
    let e = of_place(all, b.center())?;
    let wall = e.nearest(b.center())?;
    if role == Some(Role::Wall) {
        return Some(Thing::Wall(e, wall));
    }
    let opening = wall.opening_of(b - e.origin);
    Some(opening.map_or(Thing::Loose(e), |i| Thing::Opening(e, wall, i)))
}

/// Moves all that is drawn.
pub(super) fn move_all(lines: &mut Linework, all: &[Elevation]) {
    let left = lines.left.iter_mut().map(|l| &mut l.stroke);
    lines.strokes.iter_mut().chain(left).for_each(|s| stroke(s, all));
    lines.hatches.iter_mut().for_each(|h| hatch(h, all));
    lines.labels.iter_mut().for_each(|l| label(l, all));
}

fn stroke(s: &mut Stroke, all: &[Elevation]) {
    let Some(thing) = bounds(&s.points).and_then(|b| thing(all, s.role, b)) else { return };
    s.points.iter_mut().for_each(|p| *p = thing.moved(all, *p));
}

/// A fill may be an opening or stone by itself; a texture goes with what it is on.
fn hatch(h: &mut HatchArea, all: &[Elevation]) {
    let b = h.hatch.bounds();
    let Some(thing) = thing(all, h.role, b) else { return };
    h.hatch.move_places(&|p| thing.moved(all, p));
}

/// Sizes written at an opening are read by their places.
fn label(l: &mut Label, all: &[Elevation]) {
    let at = l.text.at;
    let Some(thing) = thing(all, l.role, Rect::from_points(at, at)) else { return };
    l.text.at = thing.moved(all, at);
}
