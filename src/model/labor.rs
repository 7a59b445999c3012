//! Hours of labor.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::ids::ItemId;

/// Hours of labor for one line.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct LaborPart {
    /// The line.
    pub line: ItemId,
    /// Units of it.
    pub units: f64,
    /// Hours for each.
    pub hours: f64,
}
