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
    /// What this takeoff leaves out.
    Excluded {
        /// Thing by thing.
        things: Vec<Excluded>,
    },
}

/// What a takeoff leaves out.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Excluded {
    /// Soffit and fascia.
    SoffitAndFascia,
    /// Weather barrier and its tape.
    Barrier,
    /// Sealant.
    Sealant,
    /// Furring behind cut edges.
    Furring,
    /// Blocks for fixtures that are not drawn.
    BlocksNotDrawn,
    /// Coil stock for wrapped trim.
    Coil,
    /// Shutters and vents.
    ShuttersAndVents,
    /// Flashing of the roofs themselves: valleys, edges, chimneys, skylights.
    RoofFlashing,
    /// Flashing behind upright joints between claddings.
    UprightJoints,
    /// Pans under garage doors.
    GarageDoorPans,
    /// Flashing round pipes and fixtures.
    FixtureFlashing,
    /// Copings and built-in gutters.
    CopingsAndGutters,
}
