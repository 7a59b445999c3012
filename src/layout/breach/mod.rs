//! The ways in which rules are broken, by what they concern.

pub mod count;
pub mod piece;
pub mod trim;
pub mod wall;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use self::count::CountBreach;
use self::piece::{PanelBreach, PieceBreach, RunBreach};
use self::trim::{CornerBreach, OpeningBreach, TrimBreach};
use self::wall::{CourseBreach, FieldBreach};

/// In which way a rule is broken.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(tag = "concerns", rename_all = "kebab-case")]
#[non_exhaustive]
pub enum Breach {
    /// A field, its sides, a wall's areas, a zone.
    Field(FieldBreach),
    /// A course's height.
    Course(CourseBreach),
    /// A run or its seams.
    Run(RunBreach),
    /// A piece.
    Piece(PieceBreach),
    /// A stock panel.
    Panel(PanelBreach),
    /// Trim and flashing of an opening.
    Opening(OpeningBreach),
    /// Other trim.
    Trim(TrimBreach),
    /// A corner or its post.
    Corner(CornerBreach),
    /// A count or the proof of the bound.
    Count(CountBreach),
}

macro_rules! grouped {
    ($($group:ident($part:ident)),*) => {
        $(impl From<$part> for Breach {
            fn from(part: $part) -> Self {
                Breach::$group(part)
            }
        })*
    };
}

grouped!(
    Field(FieldBreach),
    Course(CourseBreach),
    Run(RunBreach),
    Piece(PieceBreach),
    Panel(PanelBreach),
    Opening(OpeningBreach),
    Trim(TrimBreach),
    Corner(CornerBreach),
    Count(CountBreach)
);
