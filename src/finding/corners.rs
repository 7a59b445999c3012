//! Corners, and the walls that a job gives since no elevation shows them, or shows them short: findings
//! of `extract`.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::group::group;
use crate::model::corner::CornerKind;
use crate::model::ids::{CornerId, OpeningId, WallId};

/// A corner's height on one wall.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct HeightOn {
    /// The wall.
    pub wall: WallId,
    /// The height, house inches.
    pub height: f64,
}

/// Why a return has no corner to start at.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(tag = "fault", rename_all = "kebab-case")]
pub enum ReturnFault {
    /// Several corners may be meant.
    Ambiguous {
        /// These.
        corners: Vec<CornerId>,
    },
    /// No corner is named so.
    NoSuchCorner {
        /// Corners whose other wall is not known.
        open: Vec<CornerId>,
    },
    /// Both walls of the corner are known.
    BothWallsKnown {
        /// Corners whose other wall is not known.
        open: Vec<CornerId>,
    },
    /// It ends at the corner it begins at.
    EndsWhereItBegins,
}

/// What an angled wall of the job names that there is not.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(tag = "fault", rename_all = "kebab-case")]
pub enum AngledFault {
    /// No wall is named so.
    NoSuchWall {
        /// The walls there are.
        walls: Vec<WallId>,
    },
    /// No opening of the wall is named so.
    NoSuchOpening {
        /// The wall.
        wall: WallId,
    },
}

/// A set-back that no job gave.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct TakenSetBack {
    /// Which corners it is of.
    pub corner: CornerKind,
    /// Degrees between their walls, of corners that are not square.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub angle: Option<f64>,
    /// What was taken, inches.
    pub set_back: f64,
}

group! {
    /// What is not known of a corner, or wrong with what the job says of one.
    CornerFinding, CornerCode {
        /// The wall round a corner is not drawn.
        ReturnNotDrawn "return-not-drawn", Warning or Info if only_elevation, Architect {
            /// The corner; the first where only one elevation is drawn.
            corner: CornerId,
            /// Which way it turns.
            turns: CornerKind,
            /// Tag drawn beside it.
            #[serde(skip_serializing_if = "Option::is_none")]
            tag: Option<String>,
            /// Its height, inches.
            height: f64,
            /// Whether no other elevation is drawn.
            only_elevation: bool,
            /// Other corners of the same, where only one elevation is drawn.
            #[serde(default, skip_serializing_if = "Vec::is_empty")]
            others: Vec<CornerId>,
        }
        /// The job does not say how far from a corner siding ends.
        SetBackTaken "set-back-taken", Warning, Office {
            /// What was taken, by sorts of corners.
            taken: Vec<TakenSetBack>,
            /// Whether corner boards stand there rather than posts.
            boards: bool,
        }
        /// Walls meet at an angle that a usual corner post does not fit.
        PostAngle "post-angle", Warning, Office {
            /// The corner.
            corner: CornerId,
            /// Which way it turns.
            turns: CornerKind,
            /// Degrees between the faces of its walls, where that is known.
            #[serde(skip_serializing_if = "Option::is_none")]
            angle: Option<f64>,
        }
        /// A wall is so narrow that what stands in its corners covers it.
        WallBehindPosts "wall-behind-posts", Info, Office {
            /// The wall.
            wall: WallId,
            /// Its width, inches.
            width: f64,
        }
        /// Two elevations show one corner at different heights.
        CornerHeightsDisagree "corner-heights-disagree", Warning or Info if usual, Architect {
            /// The corner.
            corner: CornerId,
            /// Its top on either wall, where these disagree.
            #[serde(skip_serializing_if = "Option::is_none")]
            tops: Option<[HeightOn; 2]>,
            /// Its bottom on either wall, where these disagree.
            #[serde(skip_serializing_if = "Option::is_none")]
            bottoms: Option<[HeightOn; 2]>,
            /// Whether that is usual: foundations step, and a roof may cross an inside corner.
            usual: bool,
        }
        /// The job gives a return at a corner that takes none.
        ReturnCornerUnknown "return-corner-unknown", Error, Office {
            /// The corner, as the job names it.
            named: String,
            /// Why it takes none.
            #[serde(flatten)]
            fault: ReturnFault,
        }
        /// The job gives a wall at an angle, or an opening on one, that there is not.
        AngledUnknown "angled-unknown", Error, Office {
            /// The name.
            named: String,
            /// What there is not.
            #[serde(flatten)]
            fault: AngledFault,
        }
        /// The true width that the job gives a wall is less than the drawn one.
        AngledNarrow "angled-narrow", Error, Office {
            /// The wall.
            wall: WallId,
            /// Width by the job, inches.
            given: f64,
            /// Width as drawn, inches.
            drawn: f64,
        }
        /// The job places an opening outside its wall.
        AngledOutside "angled-outside", Error, Office {
            /// The opening.
            opening: OpeningId,
            /// The wall.
            wall: WallId,
            /// Its left side from the wall's left end, inches.
            left: f64,
            /// Its right side, inches.
            right: f64,
        }
        /// A zone lies on a wall at an angle in a way that cannot be widened.
        AngledZone "angled-zone", Error, Office {
            /// The wall.
            wall: WallId,
            /// The zone.
            zone: String,
        }
    }
}
