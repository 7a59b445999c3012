//! Lower roofs and decks along an elevation's walls: what is flashed, and where water is turned out.

use super::wall::{LaidEdge, LaidElevation, LaidWall};
use crate::geom::polygon::ring_contains;
use crate::geom::tol::LEVEL;
use crate::geom::vocabulary::{Point, Xy};
use crate::model::house::EdgeKind;

/// Shorter sides over a roof are returns of its edge, inches: common practice, no source.
const LEAST: f64 = 12.0;

/// How far beside the foot of a slope its wall must go on for water to run behind its siding, inches:
/// common practice, no source.
const BESIDE: f64 = 1.0;

/// A side of a wall that runs over a lower roof or deck.
#[derive(Clone, Copy, Debug)]
pub struct RoofSide<'a> {
    /// Its wall.
    pub wall: &'a LaidWall,
    /// The side.
    pub edge: &'a LaidEdge,
    /// Whether the roof slopes along the wall: step flashing.
    pub sloped: bool,
    /// The foot of a slope where the roof ends and its wall goes on: a kick-out stands there, or water
    /// from the roof runs behind the siding. Where the wall ends first, water falls clear of it.
    pub kick_out: Option<Xy>,
}

impl RoofSide<'_> {
    /// Its length, inches.
    pub fn length(&self) -> f64 {
        reach(self.edge.from, self.edge.to)
    }
}

impl LaidElevation {
    /// Its sides over lower roofs and decks, a foot or longer.
    pub fn roof_sides(&self) -> Vec<RoofSide<'_>> {
        let over = |e: &&LaidEdge| e.kind == EdgeKind::LowerRoof && reach(e.from, e.to) >= LEAST;
        let all: Vec<(&LaidWall, &LaidEdge)> = self
            .walls
            .iter()
            .flat_map(|w| w.edges.iter().filter(over).map(move |e| (w, e)))
            .collect();
        all.iter()
            .map(|(wall, edge)| {
                let sloped = (edge.from[1] - edge.to[1]).abs() > LEVEL;
                let at = foot(edge);
                let roof_ends = !all.iter().any(|(_, o)| leads_on(o, edge));
                let out = sloped && roof_ends && wall_goes_on(wall, edge);
                RoofSide { wall, edge, sloped, kick_out: out.then_some(at) }
            })
            .collect()
    }
}

/// Whether another side of a roof leads on from the foot of a slope, level or down.
fn leads_on(other: &LaidEdge, slope: &LaidEdge) -> bool {
    let at = foot(slope);
    let far = match (reach(other.from, at) < LEVEL, reach(other.to, at) < LEVEL) {
        (true, false) => other.to,
        (false, true) => other.from,
        _ => return false,
    };
    let down = at[0] - top(slope)[0];
    far[1] < at[1] - LEVEL || (far[1] <= at[1] + LEVEL && (far[0] - at[0]) * down > 0.0)
}

/// Whether a wall goes on beside the foot of a slope, on its low side.
fn wall_goes_on(wall: &LaidWall, slope: &LaidEdge) -> bool {
    let (at, top) = (foot(slope), top(slope));
    let beside = Point::new(at[0] + BESIDE.copysign(at[0] - top[0]), at[1] + BESIDE / 2.0);
    let outline: Vec<Point> = wall.outline.iter().map(|p| Point::new(p[0], p[1])).collect();
    ring_contains(&outline, beside)
}

fn reach(a: Xy, b: Xy) -> f64 {
    (a[0] - b[0]).hypot(a[1] - b[1])
}

fn foot(e: &LaidEdge) -> Xy {
    if e.from[1] < e.to[1] { e.from } else { e.to }
}

fn top(e: &LaidEdge) -> Xy {
    if e.from[1] < e.to[1] { e.to } else { e.from }
}
