//! What a crew has ticked on the page of a layout, as it is saved there.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// What such a file says it is.
pub const FORMAT: &str = "lapwright-ticks/1";

/// Pieces that are cut and pieces that hang, by their marks in one layout.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Ticks {
    /// Always `lapwright-ticks/1`.
    #[schemars(regex(pattern = r"^lapwright-ticks/1$"))]
    pub format: String,
    /// SHA-256 of the drawing that was laid out, hex, as `layout.json` has it.
    #[schemars(regex(pattern = r"^[0-9a-f]{64}$"))]
    pub drawing: String,
    /// Marks of pieces that are cut.
    pub cut: Vec<String>,
    /// Marks of pieces that hang.
    pub hung: Vec<String>,
}
