//! What hangs already.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Siding that hangs already: it is kept as it hangs, and the rest is laid anew (common practice). It needs the earlier
/// layout that the crew has worked by: `lapwright layout --keep`.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(default, deny_unknown_fields)]
pub struct Built {
    /// The wall, as the earlier layout names it; all of its siding hangs, or what `courses` says.
    pub wall: String,
    /// Of that wall, the first and the last course that hang, by the numbers on its sheet.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub courses: Vec<i32>,
    /// Marks of single pieces that hang.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub pieces: Vec<String>,
    /// A file of ticks that the page of the earlier layout saved: what is ticked as hung.
    pub ticks: String,
}
