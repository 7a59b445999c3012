//! Places where a panel cannot be bowed in, and how it gets there.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::corner::Hand;
use super::ids::{ObstacleId, OpeningId};

/// Courses between two receivers too near one another to bow a panel in.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct RestrictedAccess {
    /// First course, from 1.
    pub from_course: i32,
    /// Last course.
    pub to_course: i32,
    /// Left and right receiver, elevation inches.
    pub x: [f64; 2],
    /// Bottom and top, elevation inches.
    pub y: [f64; 2],
    /// What stands left and right of it.
    pub between: [AccessSide; 2],
    /// How the panels get in.
    pub install: InstallMethod,
}

/// What stands beside a place with restricted access.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(tag = "side", rename_all = "kebab-case")]
pub enum AccessSide {
    /// An opening.
    Opening {
        /// Which.
        opening: OpeningId,
    },
    /// An outside corner.
    OutsideCorner,
    /// An inside corner.
    InsideCorner,
    /// The wall's end.
    WallEnd,
    /// A fixture.
    Fixture {
        /// Which, where one is near.
        obstacle: Option<ObstacleId>,
    },
}

/// How panels get into a place with restricted access (common practice, no source).
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(tag = "method", rename_all = "kebab-case")]
pub enum InstallMethod {
    /// Both receivers fixed, panels slid down from the top.
    SlideDown {
        /// The course that closes it, from 1.
        before_course: i32,
    },
    /// Both receivers fixed, panels slid up from the bottom before what closes it.
    SlideUp {
        /// The course that closes it, from 1.
        before_course: i32,
    },
    /// One receiver fixed, the other held with one nail until the panels are in.
    HoldOneReceiver {
        /// Which is held.
        held: Hand,
    },
}
