//! The table of revisions.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A revision of the drawing: a line in the table of revisions that stands over the title block of every
/// sheet (common practice). The last three show; give them in their order.
// DrawingFact::RevisionClouds.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(default, deny_unknown_fields)]
pub struct Revision {
    /// Its letter.
    pub letter: String,
    /// Date of issue, as it shall be printed.
    pub date: String,
    /// What it changes.
    pub what: String,
}
