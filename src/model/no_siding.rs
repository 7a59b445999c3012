//! Why level lines at one pitch are not taken for siding.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Why level lines at one pitch are not taken for siding.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema,
)]
#[serde(rename_all = "kebab-case")]
pub enum NoSiding {
    /// Short upright lines stand between them, as between stones, bricks and shingles.
    UprightJoints,
    /// They are rows of a table: words or columns stand between them.
    Table,
    /// Other level lines of their layer, color and weight run among them.
    Mixed,
    /// They are few, beside what else is drawn with their layer, color and weight.
    Few,
    /// They stand apart from the siding, and are fewer.
    Apart,
    /// They cover a roof.
    Roof,
    /// No wall comes of them: they are strips that no panel fits into, or their outline crosses itself.
    NoWall,
}
