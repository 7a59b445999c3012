//! Bands that part a wall's siding, and joints it must not bridge, where the drawing has none.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::length::{Length, length, maybe_length};

/// A band board, frieze or water table right across walls (common practice): no siding lies on it,
/// and the field over it starts anew on the same datum.
// LayoutFact::BandsPartWalls.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Band {
    /// Elevation it is on; left out, on all of them.
    #[serde(default)]
    pub elevation: Option<String>,
    /// Its lower edge over the level line.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub bottom: f64,
    /// Its upper edge over the level line.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub top: f64,
    /// Its left end, from the elevation's leftmost wall; left out, it runs through.
    #[serde(default, deserialize_with = "maybe_length")]
    #[schemars(with = "Option<Length>")]
    pub left: Option<f64>,
    /// Its right end, likewise.
    #[serde(default, deserialize_with = "maybe_length")]
    #[schemars(with = "Option<Length>")]
    pub right: Option<f64>,
}

/// A movement joint of the building, which siding must not bridge (common practice).
// LayoutFact::MovementJoints.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct MovementJoint {
    /// Elevation it is on.
    pub elevation: String,
    /// Its place, from the elevation's leftmost wall.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub at: f64,
}
