//! What whoever orders should know.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::item::SidingPiece;

/// One thing to know.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(tag = "know", rename_all = "kebab-case")]
pub enum Advice {
    /// All of one production lot, since lots differ in color.
    OneLot {
        /// Panels or boards.
        piece: SidingPiece,
        /// Color, where the job names one.
        color: String,
    },
    /// Whole cartons leave panels uncut.
    WholeCartons {
        /// Panels or boards.
        piece: SidingPiece,
        /// How many.
        over: f64,
    },
    /// Trim round boards must stand out past their butts.
    BoardTrim {
        /// Thickness of the starter piece, inches.
        starter: f64,
    },
    /// Strips, posts and channels must be made for this siding.
    MatchingTrim {
        /// Pocket that takes the ends of panels, inches.
        pocket: f64,
    },
    /// Posts of some corners are for another angle than 90 degrees.
    PostAngle {
        /// How many corners.
        corners: usize,
        /// Degrees between the faces of their walls.
        angle: f64,
    },
    /// Walls that the elevations hide are not counted.
    HiddenWalls,
    /// Materials that no takeoff of siding holds.
    NotCounted,
}
