//! Which part of the drawing is which elevation: findings of `extract`.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::group::group;
use crate::model::ids::ElevationName;

/// What a view shows that is no elevation.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum OtherView {
    /// A plan.
    Plan,
    /// A section.
    Section,
    /// A detail.
    Detail,
}

/// A list of the job that names elevations.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum JobList {
    /// `[[band]]`.
    Band,
    /// `[[movement_joint]]`.
    Joint,
    /// `[[zone.region]]`.
    ZoneRegion,
}

group! {
    /// What was taken for an elevation, and what was not.
    ViewFinding, ViewCode {
        /// A view is no elevation by its title.
        ViewLeftAlone "view-left-alone", Info, Office {
            /// The title.
            title: String,
            /// What it shows.
            shows: OtherView,
        }
        /// A section shows siding.
        ViewSection "view-section", Warning, Office {
            /// The title.
            title: String,
        }
        /// Views have neither frame nor title.
        ViewUntitled "view-untitled", Info, Architect {
            /// How many.
            untitled: usize,
            /// Of how many.
            views: usize,
        }
        /// Walls or openings lie outside every view.
        OutsideViews "outside-views", Warning, Architect {
            /// Lines left out.
            lines: usize,
        }
        /// Elevations have no level line.
        LevelAssumed "level-assumed", Warning or Info if shared_base, Architect {
            /// The elevations.
            elevations: Vec<ElevationName>,
            /// Whether all stand on one line in the drawing, so that heights can be compared.
            shared_base: bool,
        }
        /// An elevation has more walls than any house.
        WallsTooMany "walls-too-many", Error, Office {
            /// Walls.
            walls: usize,
            /// The most laid out.
            most: usize,
        }
        /// The job names an elevation that there is not.
        PartUnknown "part-unknown", Error, Office {
            /// Where.
            list: JobList,
            /// The name.
            named: String,
            /// The elevations there are.
            elevations: Vec<ElevationName>,
        }
    }
}
