//! The order of work on a wall.

use super::ids::{ElevationName, PieceMark, RunId, WallId};
use schemars::JsonSchema;
use serde::Serialize;

/// The order of work of a house.
#[derive(Clone, Debug, Default, PartialEq, Serialize, JsonSchema)]
pub struct WorkOrder {
    /// What holds on every wall, in sentences.
    pub everywhere: Vec<String>,
    /// Wall by wall.
    pub walls: Vec<WallWork>,
}

/// How one wall is built, from the barrier to the last piece.
#[derive(Clone, Debug, Default, PartialEq, Serialize, JsonSchema)]
pub struct WallWork {
    /// Elevation.
    pub elevation: ElevationName,
    /// Wall.
    pub wall: WallId,
    /// Where along the elevation the wall is mostly seen from, inches: laps show their edge away from
    /// there.
    pub seen_from: f64,
    /// The same in words.
    pub seen_from_what: String,
    /// Each run with a seam: its pieces in the order they go on, each lapping over its neighbour that
    /// is on already.
    pub runs: Vec<RunOrder>,
    /// Numbers of courses, from 1, on whose top edge level is checked.
    pub level_checks: Vec<i32>,
    /// Places where panels cannot be slid in sideways.
    pub tight: Vec<TightSpot>,
    /// The whole of it in sentences, in order.
    pub steps: Vec<String>,
}

/// In which order the pieces of a run go on.
#[derive(Clone, Debug, Default, PartialEq, Serialize, JsonSchema)]
pub struct RunOrder {
    /// Number of the course, from 1.
    pub course: i32,
    /// Name of the run.
    pub run: RunId,
    /// Where it begins.
    pub begins: Begins,
    /// Marks in order.
    pub order: Vec<PieceMark>,
}

/// Where a course begins: at the end farthest from where it is seen.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Begins {
    /// At its left end, going right.
    #[default]
    Left,
    /// At its right end, going left.
    Right,
    /// At both ends, the last piece between.
    Both,
}

/// Courses between two receivers too near one another to bow a panel in.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct TightSpot {
    /// First course, from 1.
    pub from_course: i32,
    /// Last course.
    pub to_course: i32,
    /// Left and right receiver, elevation inches.
    pub x: [f64; 2],
    /// Bottom and top, elevation inches.
    pub y: [f64; 2],
    /// What stands left and right of it.
    pub between: [String; 2],
    /// How the panels get in.
    pub way: WayIn,
    /// The same in words.
    pub words: String,
}

/// How panels get into a tight place (FACTS PR-12, common practice, no source).
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum WayIn {
    /// Both receivers fixed, panels slid down from the top.
    FromTop,
    /// Both receivers fixed, panels slid up from the bottom before what closes it.
    FromBottom,
    /// One receiver fixed, the other held with one nail until the panels are in.
    HoldOne,
}
