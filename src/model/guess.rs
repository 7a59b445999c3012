//! Guesses at what layers without a role mean.

use serde::{Deserialize, Serialize};

use super::linework::Role;

/// A guess at a layer's role, and what it rests on.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, schemars::JsonSchema)]
pub struct LayerGuess {
    /// Name of the layer as written.
    pub layer: String,
    /// What it may be.
    pub role: Role,
    /// What the guess rests on.
    pub reason: GuessReason,
}

/// What a guess at a layer's role rests on.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, schemars::JsonSchema)]
#[serde(tag = "reason", rename_all = "kebab-case")]
#[non_exhaustive]
pub enum GuessReason {
    /// Its name holds a word of a general dictionary.
    NameHolds {
        /// The word, in lower case.
        word: String,
    },
    /// It is an agreed layer of the role.
    Agreed,
    /// Hatches with level lines are drawn on it.
    SidingHatches {
        /// How many.
        hatches: usize,
    },
    /// Level lines over one another are drawn on it.
    LevelLines {
        /// At how many heights.
        heights: usize,
    },
    /// It holds the largest closed outline of the drawing.
    LargestOutline,
    /// Some of its closed outlines lie inside those of the layer taken for the walls.
    InsideWalls {
        /// How many.
        outlines: usize,
    },
}
