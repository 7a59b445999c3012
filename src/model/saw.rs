//! What is cut at the saw for a wall, and which offcuts wait at its end.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::ids::{PanelId, PieceMark, WallId};
use super::waiting::OffcutReach;

/// Offcuts of a house that wait: from the end of the wall where their panel is opened to the start of the wall
/// that uses them. A panel that is cut in its middle first counts for both its ends.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct OffcutPlan {
    /// Most that may wait at the end of a wall; left out where any number may.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub most: Option<usize>,
    /// How far one may go.
    pub reach: OffcutReach,
    /// The walls in the order they are sided, each with how many wait at its end.
    pub at_ends: Vec<WaitingAt>,
    /// Panels that give two pieces or more to one wall and none to another.
    pub within_walls: usize,
    /// Panels that give pieces to several walls.
    pub between_walls: usize,
}

impl OffcutPlan {
    /// The most that wait at the end of any wall.
    pub fn most_waiting(&self) -> usize {
        self.at_ends.iter().map(|w| w.waiting).max().unwrap_or(0)
    }
}

/// How many offcuts wait at the end of a wall.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct WaitingAt {
    /// The wall.
    pub wall: WallId,
    /// Offcuts that a later wall uses.
    pub waiting: usize,
    /// The most that lie about at one time while the wall is sided course by course, those of other walls
    /// among them.
    pub peak: usize,
}

/// What is cut for one wall.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct SawList {
    /// Panels opened for it, in cutting order.
    pub opened: Vec<PanelId>,
    /// Offcuts that waited for it, by their panel.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub taken: Vec<TakenOffcut>,
    /// Equal cuts at one setting of the stop, the longest first.
    pub batches: Vec<SawBatch>,
    /// Panels of which an offcut waits at its end, each with the next wall that uses it.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub laid_aside: Vec<LaidAside>,
}

/// An offcut that waited.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct TakenOffcut {
    /// Its panel.
    pub panel: PanelId,
    /// The wall where that was opened.
    pub opened_at: WallId,
}

/// An offcut that is kept for another wall.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct LaidAside {
    /// Its panel.
    pub panel: PanelId,
    /// The next wall that uses it.
    pub wanted_at: WallId,
}

/// Pieces cut at one setting of the stop.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct SawBatch {
    /// Long point to long point, inches: what the stop is set to.
    pub length: f64,
    /// Whether they are whole panels, which no saw touches.
    pub whole: bool,
    /// Angles of the left and right cut with the panel's long edge, 90 for square; none where an end is cut to
    /// a contour.
    pub angles: [Option<f64>; 2],
    /// The pieces, course by course from the bottom.
    pub pieces: Vec<SawPiece>,
}

/// A piece with the panel it is cut from.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct SawPiece {
    /// Its mark.
    pub mark: PieceMark,
    /// Its panel.
    pub panel: PanelId,
}

/// What a house takes where so many offcuts may wait: a line of the table that compares them.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct WaitingPrice {
    /// How many may wait at the end of a wall; none for any number.
    pub waiting: Option<usize>,
    /// Panels that are cut, those of all sets.
    pub panels: usize,
    /// Panels that several walls share.
    pub shared: usize,
    /// The most that wait at the end of a wall.
    pub most: usize,
    /// Whether the job asks for this number.
    pub in_force: bool,
}
