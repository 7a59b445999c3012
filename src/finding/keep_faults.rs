//! Earlier layouts that are held, what hangs, and what lies on the site: what is wrong with them.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::model::ids::WallId;

/// Why nothing can be held of an earlier layout.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(tag = "reason", rename_all = "kebab-case")]
pub enum KeepFault {
    /// Boards are jointed on studs: they are held by no search for seams.
    Boards,
    /// Panels are of several stock lengths.
    StockLengths,
    /// Both halves of ripped panels serve.
    Halves,
    /// The house is drawn the other hand.
    OtherHand,
    /// The job says what hangs, and no earlier layout is given.
    BuiltOfNothing,
    /// The job says that a wall hangs which the earlier layout has not.
    NoWall {
        /// The wall.
        wall: String,
        /// Those there are.
        walls: Vec<WallId>,
    },
    /// The job says that courses hang of a wall that has siding of several sets, each with courses of its own.
    WallOfSeveral {
        /// The wall.
        wall: String,
    },
    /// The job says that courses hang which the wall has not.
    NoCourses {
        /// The wall.
        wall: String,
        /// Its first and its last course, by their numbers on the sheet.
        courses: [i32; 2],
    },
    /// The job says that a piece hangs which the earlier layout has not.
    NoPiece {
        /// Its mark.
        piece: String,
    },
    /// Several houses are laid out in one call.
    ManyHouses,
    /// Stock at hand is given, and nothing is said to hang.
    StockAlone,
    /// The job lays by other settings than the earlier one.
    Settings {
        /// Their keys.
        keys: Vec<String>,
    },
}

/// Why a list of what lies on the site cannot be read.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(tag = "fault", rename_all = "kebab-case")]
pub enum StockFault {
    /// It is not text in UTF-8.
    NotUtf8,
    /// It holds nothing.
    Empty,
    /// A column is missing.
    ColumnMissing {
        /// Which.
        column: String,
    },
    /// A quotation mark is not closed.
    QuoteOpen,
    /// A length is none.
    Length {
        /// As written.
        text: String,
    },
    /// A length is longer than a panel.
    LongerThanPanel {
        /// The length, inches.
        length: f64,
        /// The panel's.
        panel: f64,
    },
    /// A count is no whole number, or one beyond reason.
    Count {
        /// As written.
        text: String,
    },
    /// There are more in all than a site holds.
    TooMany {
        /// The most.
        most: usize,
    },
    /// A factory end is none that there is.
    End {
        /// As written.
        text: String,
    },
    /// A length of a whole panel has one factory end, or none.
    EndOfWhole {
        /// As written.
        text: String,
    },
}

/// Why saved ticks cannot be used.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(tag = "fault", rename_all = "kebab-case")]
pub enum TicksFault {
    /// It is no file of ticks.
    NoTicks {
        /// What the reader says.
        reader_says: String,
    },
    /// It is of another format or version.
    OtherFormat {
        /// What it says it is.
        found: String,
    },
    /// They are ticks of another drawing.
    OtherDrawing,
}
