//! Lower roofs and decks along an elevation's walls: what is flashed, and where water is turned out.

use super::drawn_ends::{corner_ends, drawn_ends, skirt_under};
use super::laid::LaidHouse;
use super::wall::{LaidEdge, LaidElevation, LaidWall};
use crate::geom::polygon::ring_contains;
use crate::geom::tol::LEVEL;
use crate::geom::vocabulary::{Point, Xy};
use crate::model::filler::FilledTo;
use crate::model::house::EdgeKind;
use crate::real::Real;

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
    /// One end; where the side ends at a corner post or board, the drawn corner behind it.
    pub from: Xy,
    /// The other end, likewise.
    pub to: Xy,
    /// Whether the roof slopes along the wall: step flashing.
    pub sloped: bool,
    /// The foot of a slope where the roof ends and its wall goes on: a kick-out stands there, or water
    /// from the roof runs behind the siding. Where the wall ends first, water falls clear of it.
    pub kick_out: Option<Xy>,
    /// At how many of its ends it meets a corner, which its flashing is turned round.
    pub turns: usize,
}

impl RoofSide<'_> {
    /// Its length, inches.
    pub fn length(&self) -> f64 {
        reach(self.from, self.to)
    }
}

impl LaidElevation {
    /// Its sides over lower roofs and decks, a foot or longer, up to the drawn corners of the house.
    pub fn roof_sides(&self, house: &LaidHouse) -> Vec<RoofSide<'_>> {
        let all: Vec<(&LaidWall, [Xy; 2], usize)> = self
            .walls
            .iter()
            .flat_map(|w| w.edges.iter().map(move |e| (w, e)))
            .filter_map(|(w, e)| Some((w, over_roof(house, w, e)?, corner_ends(house, w, e))))
            .filter(|(_, [from, to], _)| reach(*from, *to) >= LEAST)
            .collect();
        all.iter()
            .map(|(wall, side, turns)| {
                let [from, to] = *side;
                let sloped = (from[1] - to[1]).abs() > LEVEL;
                let roof_ends = !all.iter().any(|(_, o, _)| leads_on(*o, *side));
                let out = sloped && roof_ends && wall_goes_on(wall, *side);
                let kick_out = out.then_some(foot(*side));
                RoofSide { wall, from, to, sloped, kick_out, turns: *turns }
            })
            .collect()
    }
}

/// Both ends of a side over a lower roof, up to the drawn corners: on the roof's clearance, where a skirt board
/// lifts the siding off it.
fn over_roof(house: &LaidHouse, w: &LaidWall, e: &LaidEdge) -> Option<[Xy; 2]> {
    let skirt = skirt_under(w, e).filter(|f| f.between[0].to == FilledTo::LowerRoof);
    let ends = drawn_ends(house, w, e);
    match skirt {
        Some(f) => Some(ends.map(|p| [p[0], f.place[1]])),
        None => (e.kind == EdgeKind::LowerRoof).then_some(ends),
    }
}

/// Whether another side of a roof leads on from the foot of a slope, level or down.
fn leads_on(other: [Xy; 2], slope: [Xy; 2]) -> bool {
    let at = foot(slope);
    let far = match other.map(|end| reach(end, at) < LEVEL) {
        [true, false] => other[1],
        [false, true] => other[0],
        _ => return false,
    };
    let down = at[0] - top(slope)[0];
    far[1] < at[1] - LEVEL || (far[1] <= at[1] + LEVEL && (far[0] - at[0]) * down > 0.0)
}

/// Whether a wall goes on beside the foot of a slope, on its low side.
fn wall_goes_on(wall: &LaidWall, slope: [Xy; 2]) -> bool {
    let (at, top) = (foot(slope), top(slope));
    let beside = Point::new(at[0] + BESIDE.copysign(at[0] - top[0]), at[1] + BESIDE / 2.0);
    let outline: Vec<Point> = wall.outline.iter().map(|p| Point::new(p[0], p[1])).collect();
    ring_contains(&outline, beside)
}

fn reach(a: Xy, b: Xy) -> f64 {
    (a[0] - b[0]).hypotenuse(a[1] - b[1])
}

fn foot([from, to]: [Xy; 2]) -> Xy {
    if from[1] < to[1] { from } else { to }
}

fn top([from, to]: [Xy; 2]) -> Xy {
    if from[1] < to[1] { to } else { from }
}
