//! What nails go through, and how far apart they stand in trim.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::length::{Length, length, maybe_length};

/// Fasteners. `takeoff.stand_off` holds the panel's own stand-off, `takeoff.nail_spacing` the spacing
/// in panels.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(default, deny_unknown_fields)]
pub struct FastenerRules {
    /// Foam board between the panel and nailable sheathing: it counts as nothing. Default 0 (FACTS
    /// SD-30, VSI-H).
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub foam_board: f64,
    /// Other layers that hold no nail: gypsum board, battens over an air space. Default 0.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub other_layers: f64,
    /// Penetration into nailable material, framing and nailable sheathing together. Default 1 1/4 in
    /// (FACTS SD-29, VSI-H, IRC).
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub penetration: f64,
    /// Shortest nail. Default 2 1/2 in, for foam-backed siding (FACTS PR-06, common practice, no
    /// source); 1 1/2 to 2 in are in use for plain vinyl (SD-38, HAB).
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub shortest: f64,
    /// Lengths nails are sold in, inches; over the last, every half inch. Default 1 1/2, 1 3/4, 2,
    /// 2 1/2, 3, 3 1/2, 4: common practice, no source.
    pub lengths: Vec<f64>,
    /// Least shank. Default 0.120 in (FACTS SD-32, IRC).
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub shank: f64,
    /// Least head. Default 5/16 in (FACTS SD-33, IRC).
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub head: f64,
    /// Spacing in corner posts; left out, `takeoff.trim_nail_spacing`. 8 to 12 in are published (FACTS
    /// SD-23, VSI-A), 10 to 12 are usual (PR-07).
    #[serde(deserialize_with = "maybe_length")]
    #[schemars(with = "Option<Length>")]
    pub post_spacing: Option<f64>,
    /// Spacing in J-channel; left out, `takeoff.trim_nail_spacing`. 8 to 10 in (FACTS PR-08; SD-24,
    /// EST18).
    #[serde(deserialize_with = "maybe_length")]
    #[schemars(with = "Option<Length>")]
    pub channel_spacing: Option<f64>,
    /// Spacing in starter, finish trim and drip cap; left out, `takeoff.trim_nail_spacing` (FACTS
    /// SD-24, EST18, JLC-V).
    #[serde(deserialize_with = "maybe_length")]
    #[schemars(with = "Option<Length>")]
    pub strip_spacing: Option<f64>,
}

impl Default for FastenerRules {
    fn default() -> Self {
        FastenerRules {
            foam_board: 0.0,
            other_layers: 0.0,
            penetration: 1.25,
            shortest: 2.5,
            lengths: vec![1.5, 1.75, 2.0, 2.5, 3.0, 3.5, 4.0],
            shank: 0.12,
            head: 0.3125,
            post_spacing: None,
            channel_spacing: None,
            strip_spacing: None,
        }
    }
}
