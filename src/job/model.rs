//! Which house of a model is built: the drawing, the variant of its elevations, the hand.

use std::collections::BTreeSet;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::fault::Fault;
use crate::finding::job_value::ValueFault;

/// Which house of a model is built, where several are built from one drawing.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(default, deny_unknown_fields)]
pub struct Model {
    /// The drawing, from this file's own folder, for `lapwright layout JOB.toml`: many houses may be built
    /// from one drawing, each with a job of its own.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub drawing: Option<String>,
    /// The variant that is built, a letter or a number as titles of elevations have it: `B` takes FRONT
    /// ELEVATION B and leaves FRONT ELEVATION A out. Elevations without a letter are taken for every
    /// variant, but for one of a side that the variant has an elevation of its own for.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub variant: Option<String>,
    /// The house is built the other way round from the drawing: right is left. Elevations titled left and
    /// right, or east and west, change their names. The other lists of the job name walls and count inches as the
    /// mirrored sheets show them; `region`, `outline` and `[[elevation]]` stay those of the drawing.
    #[serde(skip_serializing_if = "std::ops::Not::not")]
    pub mirrored: bool,
}

impl Model {
    /// Whether the drawing is built as it is drawn.
    pub(super) fn is_plain(&self) -> bool {
        *self == Model::default()
    }

    /// The marks of variants that a title has, in capitals: letters that stand alone where the variant asked
    /// for is a letter, numbers where it is a number; none where none is asked for.
    pub fn marks(&self, title: &str) -> BTreeSet<String> {
        let Some(asked) = self.asked() else { return BTreeSet::new() };
        let words = title.split(|c: char| !c.is_alphanumeric()).map(str::to_uppercase);
        words.filter(|w| is_mark(w) && is_number(w) == is_number(&asked)).collect()
    }

    /// The variant asked for, in capitals.
    pub fn asked(&self) -> Option<String> {
        self.variant.as_ref().map(|v| v.trim().to_uppercase())
    }
}

/// A variant that no title can have.
pub(super) fn faults(model: &Model) -> Option<Fault> {
    let text = model.variant.as_ref().filter(|_| model.asked().is_none_or(|v| !is_mark(&v)))?;
    let (key, text) = ("model.variant".to_owned(), text.clone());
    Some(Fault::new([key.clone()], ValueFault::VariantForm { key, text }))
}

fn is_number(word: &str) -> bool {
    word.chars().all(|c| c.is_ascii_digit())
}

/// One letter, or a number of one or two digits.
fn is_mark(word: &str) -> bool {
    let letter = word.chars().count() == 1 && word.chars().all(char::is_alphabetic);
    letter || (!word.is_empty() && word.len() <= 2 && is_number(word))
}
