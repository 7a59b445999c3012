//! Guesses at layers in words.

use crate::model::guess::GuessReason;

/// Over a fragment of guesses.
pub const GUESSES: &str =
    "Guesses, to be checked and edited: a role named here replaces its agreed layer names.";
/// Where there are none.
pub const NO_GUESS: &str = "No layer without a role looks like one that matters.";

/// What a guess at a layer's role rests on: `its name holds "fenst"`.
pub fn guess_reason(reason: &GuessReason) -> String {
    match reason {
        GuessReason::NameHolds { word } => format!("its name holds \"{word}\""),
        GuessReason::LargestOutline => "it holds the largest closed outline".to_owned(),
        GuessReason::InsideWalls { outlines } => {
            format!("{outlines} of its closed outlines lie inside those of the wall layer")
        }
    }
}
