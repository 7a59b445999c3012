//! Letters of names that the sheets' typeface lacks.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::group::group;

/// A name with letters that cannot be drawn.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(tag = "in", rename_all = "kebab-case")]
pub enum LetterPlace {
    /// The name or title of a view.
    View {
        /// The name.
        text: String,
    },
    /// A text of the job.
    Job {
        /// Its key, with the tables it stands in.
        key: String,
        /// What it says.
        text: String,
    },
    /// The name of the drawing's file.
    Drawing {
        /// The name.
        text: String,
    },
    /// The name of a layer.
    Layer {
        /// The name.
        text: String,
    },
    /// What another finding names.
    Finding {
        /// What it names.
        text: String,
    },
}

group! {
    /// What cannot be drawn as it is written.
    LetterFinding, LetterCode {
        /// Letters of names are not in the typeface of the sheets.
        LettersNotDrawn "letters-not-drawn", Warning or Info if layers_alone, Office {
            /// How many, each name counted once.
            letters: usize,
            /// Which, as code points, each once; some are enough where there are many.
            code_points: Vec<u32>,
            /// How many different ones.
            kinds: usize,
            /// In which names; some are enough where there are many.
            places: Vec<LetterPlace>,
            /// In how many names.
            names: usize,
            /// Whether they are in names of layers alone, which sheets show only where something
            /// was found on one.
            layers_alone: bool,
        }
    }
}
