//! The walls of a house as drawn and as taped, elevation by elevation, and which of them moves a place.

use super::wall::Wall;
use crate::geom::vocabulary::{Point, Rect, Vec2};
use crate::model::house::DrawnElevation;
use crate::model::ids::ElevationName;
use crate::model::linework::{Linework, Role};

/// How much the size of a wall counts where several are as near: the smallest one is meant.
const SIZE: f64 = 1e-9;

/// What was taped of a house; nothing by default, and then nothing moves.
#[derive(Debug, Default)]
pub(crate) struct Tape {
    pub(super) elevations: Vec<Elevation>,
    /// Width at a joint of the building, inches.
    pub(super) gap: f64,
}

/// The walls of an elevation.
#[derive(Debug)]
pub(super) struct Elevation {
    pub(super) name: ElevationName,
    pub(super) walls: Vec<Wall>,
    /// Where its own places begin, inches of the drawing as it lies now.
    pub(super) origin: Vec2,
}

/// Where the places of an elevation begin, inches of the drawing as it lies now.
pub(super) fn origin(lines: &Linework, e: &DrawnElevation) -> Vec2 {
    lines.placed(e.to_source * Point::ZERO).to_vec2()
}

impl Elevation {
    /// The wall of a name.
    pub(super) fn wall(&self, id: &str) -> Option<&Wall> {
        self.walls.iter().find(|w| w.id == id)
    }

    /// The wall that a place is on or nearest to.
    pub(super) fn nearest(&self, at: Point) -> Option<&Wall> {
        let off = |w: &&Wall| away(w.frame, at) + w.frame.area() * SIZE;
        self.walls.iter().min_by(|a, b| off(a).total_cmp(&off(b)))
    }

    /// Where a place goes with the wall that it is nearest to.
    pub(super) fn moved(&self, at: Point) -> Point {
        self.nearest(at).map_or(at, |w| w.moved(at))
    }

    /// Where the points of a thing go that is drawn in the elevation: with its opening, with its wall, or each with
    /// the wall nearest to it, since lines may run past several. Level lines stay: heights are taped from them.
    pub(super) fn drawn(&self, role: Option<Role>, b: Rect, points: &mut [Point]) {
        if matches!(role, Some(Role::Level | Role::Frame | Role::Title)) {
            return;
        }
        let Some(wall) = self.nearest(b.center()) else { return };
        let opening = wall.opening_of(b);
        points.iter_mut().for_each(|p| {
            *p = match (role, opening) {
                (Some(Role::Wall), _) => wall.moved(*p),
                (_, Some(i)) => wall.at_opening(i, *p),
                (_, None) => self.moved(*p),
            }
        });
    }
}

/// How far a place is from a box, along the farther of the two axes.
fn away(r: Rect, at: Point) -> f64 {
    let x = (r.x0 - at.x).max(at.x - r.x1).max(0.0);
    let y = (r.y0 - at.y).max(at.y - r.y1).max(0.0);
    x.max(y)
}
