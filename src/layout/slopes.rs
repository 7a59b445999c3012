//! Lower roofs and decks along an elevation's walls: what is flashed, and where water is turned out.

use super::wall::{LaidEdge, LaidElevation, LaidWall};
use crate::geom::tol::LEVEL;
use crate::geom::vocabulary::Xy;
use crate::model::house::EdgeKind;

/// Shorter sides over a roof are returns of its edge, inches: common practice, no source.
const LEAST: f64 = 12.0;

/// A side of a wall that runs over a lower roof or deck.
#[derive(Clone, Copy, Debug)]
pub struct RoofSide<'a> {
    /// Its wall.
    pub wall: &'a LaidWall,
    /// The side.
    pub edge: &'a LaidEdge,
    /// Whether the roof slopes along the wall: step flashing.
    pub sloped: bool,
    /// The foot of a slope that no other slope goes on from: a kick-out stands there.
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
        let goes_on = |at: Xy| {
            all.iter().any(|(_, o)| {
                foot(o)[1] < at[1] - LEVEL && (reach(o.from, at) < LEVEL || reach(o.to, at) < LEVEL)
            })
        };
        all.iter()
            .map(|(wall, edge)| {
                let sloped = (edge.from[1] - edge.to[1]).abs() > LEVEL;
                let at = foot(edge);
                RoofSide { wall, edge, sloped, kick_out: (sloped && !goes_on(at)).then_some(at) }
            })
            .collect()
    }
}

fn reach(a: Xy, b: Xy) -> f64 {
    (a[0] - b[0]).hypot(a[1] - b[1])
}

fn foot(e: &LaidEdge) -> Xy {
    if e.from[1] < e.to[1] { e.from } else { e.to }
}
