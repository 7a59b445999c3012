//! Where a layout came from.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::units::Unit;

/// What the unit of a drawing was taken by.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum UnitBasis {
    /// The job names it.
    Job,
    /// A known distance of the job sets the scale.
    KnownDistance,
    /// The drawing's header names it.
    Header,
    /// The size of walls and doors speaks for it.
    WallAndDoorSizes,
    /// Dimensions that state lengths speak for it.
    Dimensions,
    /// Nothing speaks for another.
    #[default]
    Custom,
}

/// Where the layout came from.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Source {
    /// File name.
    pub name: String,
    /// SHA-256 of its bytes, hex.
    pub sha256: String,
    /// Unit taken; none where a known distance set the scale.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub unit: Option<Unit>,
    /// Why that unit.
    pub unit_basis: UnitBasis,
    /// Inches in one drawing unit.
    pub inches_per_unit: f64,
    /// Whether evidence in the drawing agrees with the unit.
    pub unit_proved: bool,
}
