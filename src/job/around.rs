//! Walls that elevations do not show, or show too short.

use std::collections::BTreeMap;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::length::{Length, length, lengths, maybe_length};

/// A wall round a corner that no elevation shows (common practice): it is laid out as an elevation of
/// its own.
// LayoutFact::HiddenWalls.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ReturnWall {
    /// Corner it begins at: its name in the layout (`front-1/right`) or the tag drawn beside it.
    pub corner: String,
    /// Corner it ends at, likewise; left out, it ends in a J-channel against what stands there.
    #[serde(default)]
    pub to: Option<String>,
    /// Width from corner to corner; 0 where nothing is sided round the corner.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub width: f64,
    /// Height over the foot of the corner; left out, as high as the corner.
    #[serde(default, deserialize_with = "maybe_length")]
    #[schemars(with = "Option<Length>")]
    pub height: Option<f64>,
}

/// A wall that stands at an angle to its elevation and is drawn too short: it is laid
/// out at its true width, as an elevation of its own.
// LayoutFact::AngledWallsShort.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct AngledWall {
    /// Name of the wall in the layout: `front-2`.
    pub wall: String,
    /// Its true width, as a plan shows it.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub width: f64,
    /// True distance of openings from the wall's left end, by their names (`front-W1`); one left out
    /// stands where it is drawn, widened with the wall. Widths of openings grow with the wall.
    #[serde(default, deserialize_with = "lengths")]
    #[schemars(with = "BTreeMap<String, Length>")]
    pub openings: BTreeMap<String, f64>,
}

/// Widest wall taken, inches, 1,000 ft: of our own choosing, no source.
pub const WIDEST: f64 = 12_000.0;
