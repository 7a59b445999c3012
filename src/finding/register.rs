//! The register: every finding there is, by the room that makes it. What stands in no group here has
//! no code.

use std::fmt;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::by_hand::{HandCode, HandFinding};
use super::corners::{CornerCode, CornerFinding};
use super::drawing::{DrawingCode, DrawingFinding};
use super::files::{FileCode, FileFinding};
use super::house::{HouseCode, HouseFinding};
use super::job::{JobCode, JobFinding};
use super::laying::{LayingCode, LayingFinding};
use super::letters::{LetterCode, LetterFinding};
use super::lines::{LineCode, LineFinding};
use super::prices::{PriceCode, PriceFinding};
use super::severity::{Audience, Severity};
use super::taped::{TapedCode, TapedFinding};
use super::views::{ViewCode, ViewFinding};

macro_rules! register {
    ($( $(#[$about:meta])* $name:ident($group:ident, $codes:ident) ),* $(,)?) => {
        /// What was found, with its numbers and names.
        #[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
        #[serde(untagged)]
        pub enum FindingKind {
            $( $(#[$about])* $name($group) ),*
        }

        /// The code of a finding: stable, in words.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
        pub enum FindingCode {
            $( $(#[$about])* $name($codes) ),*
        }

        impl FindingKind {
            /// Its code.
            pub fn code(&self) -> FindingCode {
                match self {
                    $( FindingKind::$name(one) => FindingCode::$name(one.code()) ),*
                }
            }

            /// How much it matters.
            pub fn severity(&self) -> Severity {
                match self {
                    $( FindingKind::$name(one) => one.severity() ),*
                }
            }
        }

        impl FindingCode {
            /// Every code, in the order of the groups.
            pub fn all() -> Vec<FindingCode> {
                let mut out = Vec::new();
                $( out.extend($codes::ALL.iter().map(|one| FindingCode::$name(*one))); )*
                out
            }

            /// The code as it is written: `wall-open`.
            pub fn word(self) -> &'static str {
                match self {
                    $( FindingCode::$name(one) => one.word() ),*
                }
            }

            /// How much its findings may matter, the usual first.
            pub fn severities(self) -> &'static [Severity] {
                match self {
                    $( FindingCode::$name(one) => one.severities() ),*
                }
            }

            /// Who must act.
            pub fn audience(self) -> Audience {
                match self {
                    $( FindingCode::$name(one) => one.audience() ),*
                }
            }
        }

        $(
            impl From<$group> for FindingKind {
                fn from(one: $group) -> Self {
                    FindingKind::$name(one)
                }
            }
        )*
    };
}

register! {
    /// The drawing's file and what it holds.
    Drawing(DrawingFinding, DrawingCode),
    /// Its lines, layers, unit and dimensions.
    Lines(LineFinding, LineCode),
    /// Which part of it is which elevation.
    Views(ViewFinding, ViewCode),
    /// Walls, openings and fixtures.
    House(HouseFinding, HouseCode),
    /// Corners, and walls that the job gives.
    Corners(CornerFinding, CornerCode),
    /// What the job says of walls by hand.
    Hand(HandFinding, HandCode),
    /// What is laid out.
    Laying(LayingFinding, LayingCode),
    /// The job.
    Job(JobFinding, JobCode),
    /// The price list and the takeoff.
    Prices(PriceFinding, PriceCode),
    /// What was taped on site.
    Taped(TapedFinding, TapedCode),
    /// Letters that cannot be drawn.
    Letters(LetterFinding, LetterCode),
    /// Files and folders.
    Files(FileFinding, FileCode),
}

impl FindingCode {
    /// The code that is written so.
    pub fn named(word: &str) -> Option<FindingCode> {
        FindingCode::all().into_iter().find(|c| c.word() == word)
    }
}

impl fmt::Display for FindingCode {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(self.word())
    }
}
