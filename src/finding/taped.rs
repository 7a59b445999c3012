//! What was taped on site: findings of the head of the flow and of the command.

use super::group::group;
use crate::model::ids::WallId;

group! {
    /// What the tape says of a house.
    TapedFinding, TapedCode {
        /// A table of taped lengths cannot be read.
        Unreadable "measured-unreadable", Error, Office {
            /// The file.
            file: String,
            /// Line of the fault, from 1.
            line: usize,
            /// What stands there.
            said: String,
        }
        /// A taped length is of nothing that is drawn.
        Unknown "measure-unknown", Error, Office {
            /// The names.
            measures: Vec<String>,
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
