//! The siding, and the day it goes up.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::length::{Length, length, maybe_length};

/// Gap at a panel's end, association figure (FACTS SD-50, VSI-H).
pub const END_GAP: f64 = 0.25;
/// Same below 40 F (FACTS SD-51, VSI-H).
pub const COLD_END_GAP: f64 = 0.375;

/// The day's weather.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(default, deny_unknown_fields)]
pub struct Weather {
    /// Installed below 40 F (4.4 C): end gaps 3/8 in rather than 1/4 in (FACTS SD-50, SD-51, VSI-H).
    pub below_40f: bool,
}

/// The siding.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(default, deny_unknown_fields)]
pub struct Product {
    /// Height of a course. Default 8 in, a double 4 (FACTS SD-81).
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub exposure: f64,
    /// Boards a panel shows. Default 2 (FACTS SD-81).
    pub faces: u32,
    /// Stock length. Default 12 ft 6 in, 24 panels of D4 to two squares (FACTS TK-03).
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub length: f64,
    /// How far the foam stops short of the vinyl at each factory end. Default 5/8 in (FACTS PR-01,
    /// common practice, no source).
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub foam_set_back: f64,
    /// Lap at a seam; left out, twice the foam's set-back, so that foam meets foam (FACTS PR-02,
    /// SD-72).
    #[serde(deserialize_with = "maybe_length")]
    #[schemars(with = "Option<Length>")]
    pub lap: Option<f64>,
    /// End gap; left out, 1/4 in, or 3/8 in below 40 F (FACTS SD-50, SD-51, VSI-H).
    #[serde(deserialize_with = "maybe_length")]
    #[schemars(with = "Option<Length>")]
    pub end_gap: Option<f64>,
    /// Panels in a carton. Default 24, two squares of D4 at 12 ft 6 in (FACTS TK-02, TK-03).
    pub carton: u32,
    /// Colour, as it shall be ordered.
    pub colour: String,
}

impl Default for Product {
    fn default() -> Self {
        Product {
            exposure: 8.0,
            faces: 2,
            length: 150.0,
            foam_set_back: 0.625,
            lap: None,
            end_gap: None,
            carton: 24,
            colour: String::new(),
        }
    }
}
