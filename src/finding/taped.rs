//! What was taped on site: findings of the head of the flow and of the command.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::group::group;
use crate::model::house::EdgeKind;
use crate::model::ids::WallId;

/// Why a table of taped lengths cannot be taken.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(tag = "fault", rename_all = "kebab-case")]
pub enum TapedFault {
    /// A column is missing.
    ColumnMissing {
        /// Which.
        column: String,
    },
    /// A quotation mark is not closed.
    QuoteOpen,
    /// A length of no measure.
    NoMeasure {
        /// As written.
        text: String,
    },
    /// What is taped is no length.
    NoLength {
        /// As written.
        text: String,
    },
    /// A length that no such measure has.
    Beyond {
        /// The measure.
        measure: String,
        /// As written.
        text: String,
    },
    /// A length far off the drawn one.
    FarOff {
        /// As written.
        text: String,
        /// As drawn, inches.
        drawn: f64,
    },
    /// A measure is there twice.
    Twice {
        /// Which.
        measure: String,
    },
}

group! {
    /// What the tape says of a house.
    TapedFinding, TapedCode {
        /// A table of taped lengths cannot be read.
        Unreadable "measured-unreadable", Error, Office {
            /// The file.
            file: String,
            /// Line of the fault, from 1.
            line: usize,
            /// What is wrong.
            #[serde(flatten)]
            fault: TapedFault,
        }
        /// A taped length is of nothing that is drawn.
        Unknown "measure-unknown", Error, Office {
            /// The names.
            measures: Vec<String>,
        }
        /// Walls that no sheet to tape by shows.
        LeftOut "measure-left-out", Warning, Office {
            /// The walls.
            walls: Vec<WallId>,
            /// They are no wider than this, inches.
            narrower: f64,
        }
        /// The house is laid out as it was taped.
        Taken "taped-taken", Info, Office {
            /// Lengths taken.
            taken: usize,
            /// Lengths left blank, taken as drawn.
            as_drawn: usize,
            /// The first of these.
            named: Vec<String>,
        }
        /// Corners of a wall lean as they were taped, and bear their posts.
        Leans "taped-leans", Info, Office {
            /// The wall.
            wall: WallId,
            /// How far the left one leans to the right, from foot to top, inches; 0 where it is plumb.
            left: f64,
            /// How far the right one does.
            right: f64,
        }
        /// The start of a wall was taped out of level: siding starts level, from the lower corner.
        LevelStart "taped-start", Warning, Office {
            /// The wall.
            wall: WallId,
            /// How far the right corner lies over the left one, inches.
            off: f64,
        }
        /// The top of a wall was taped out of level: the top course is cut to it.
        Top "taped-top", Info, Office {
            /// The wall.
            wall: WallId,
            /// How far the right end lies over the left one, inches.
            off: f64,
        }
        /// Sides that were drawn level or plumb slope as they were taped.
        Slopes "taped-slopes", Warning, Office {
            /// The wall.
            wall: WallId,
            /// What these sides were drawn as.
            sloped: Vec<EdgeKind>,
        }
        /// Taped lengths of a wall do not go together.
        Contradicts "taped-contradicts", Warning, Office {
            /// The wall.
            wall: WallId,
            /// The lengths.
            measures: Vec<String>,
            /// By how much they do not close, inches.
            off: f64,
        }
    }
}
