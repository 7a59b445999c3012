//! What the job says of walls and openings by hand, and what of it there is not: findings of `extract`.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::group::group;
use crate::model::ids::{ElevationName, WallId};

/// A list of the job that names walls or what is on them.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum NameList {
    /// `skip`.
    Skip,
    /// `join`.
    Join,
    /// `work.walls`.
    Order,
}

/// A list of the job whose entries are outlines.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum OutlineList {
    /// `[[wall]]`.
    Wall,
    /// `[[opening]]`.
    Opening,
}

/// Why walls are not one plane.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(tag = "why", rename_all = "kebab-case")]
pub enum Apart {
    /// They are in several elevations.
    Elevations {
        /// These.
        elevations: Vec<ElevationName>,
    },
    /// One of them stands neither beside, over nor under another.
    Facing,
    /// Another wall stands between them.
    Between {
        /// That one.
        wall: WallId,
    },
}

group! {
    /// What the job says of walls by hand.
    HandFinding, HandCode {
        /// The job names a wall, or something on one, that there is not.
        WallUnknown "wall-unknown", Error, Office {
            /// Where.
            list: NameList,
            /// The name.
            named: String,
            /// The walls there are.
            walls: Vec<WallId>,
        }
        /// Walls, openings or fixtures are left out as the job says.
        LeftOutByJob "left-out-by-job", Info, Office {
            /// Their names.
            names: Vec<String>,
        }
        /// Walls or openings that the job both leaves out by name and gives outright stay.
        GivenStays "given-stays", Info, Office {
            /// Their names.
            names: Vec<String>,
        }
        /// Walls are taken as one, as the job says.
        WallsJoined "walls-joined", Warning or Info if filled, Office {
            /// The walls.
            walls: Vec<WallId>,
            /// Openings drawn between them.
            openings: usize,
            /// Boards drawn between them.
            boards: usize,
            /// What is left bare between them, square feet.
            bare: f64,
            /// Whether openings and boards fill what parts them.
            filled: bool,
        }
        /// Walls that the job joins cannot be one.
        WallsApart "walls-apart", Error, Office {
            /// The walls.
            walls: Vec<WallId>,
            /// Why.
            #[serde(flatten)]
            apart: Apart,
        }
        /// A drawn wall gives way to one that the job gives.
        WallGivesWay "wall-gives-way", Warning or Info if covered, Office {
            /// Which `[[wall]]`, from 1.
            number: usize,
            /// The drawn wall's area, square feet.
            area: f64,
            /// How much of that the given wall covers, percent.
            percent: f64,
            /// Whether it covers as good as all of it.
            covered: bool,
        }
        /// A wall or an opening that the job gives lies in no elevation.
        GivenOutside "given-outside", Error, Office {
            /// The list.
            list: OutlineList,
            /// Which of the list, from 1.
            number: usize,
            /// The elevation it names, if it names one.
            #[serde(skip_serializing_if = "Option::is_none")]
            named: Option<String>,
            /// The elevations there are.
            elevations: Vec<ElevationName>,
        }
        /// The siding layer that the job gives a view shows no siding.
        SidingLayerEmpty "siding-layer-empty", Error, Office {
            /// The view.
            view: String,
            /// The layer, as the job names it.
            named: String,
            /// Layers with hatches or lines in the view.
            layers: Vec<String>,
        }
    }
}
