//! Where a layout came from.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Where the layout came from.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Source {
    /// File name.
    pub name: String,
    /// SHA-256 of its bytes, hex.
    pub sha256: String,
    /// Unit taken.
    pub unit: String,
    /// Why that unit.
    pub unit_source: String,
    /// Inches in one drawing unit.
    pub inches_per_unit: f64,
    /// Whether evidence in the drawing agrees with the unit.
    pub unit_proved: bool,
}
