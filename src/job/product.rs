//! The siding, and the day it goes up.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::length::{Length, length, maybe_length};

/// Gap at a panel's end, association figure (FACTS SD-50, VSI-H).
pub const END_GAP: f64 = 0.25;
/// Same below 40 F (FACTS SD-51, VSI-H).
pub const COLD_END_GAP: f64 = 0.375;

/// Siding's temperature on the day, F, where the job says nothing: common practice, no source.
const MILD: f64 = 60.0;
/// The same on a cold day: under the 40 F at which the gap changes (FACTS SD-51, VSI-H).
const COLD: f64 = 35.0;

/// The day's weather, and the place's.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(default, deny_unknown_fields)]
pub struct Weather {
    /// Installed below 40 F (4.4 C): end gaps 3/8 in rather than 1/4 in (FACTS SD-50, SD-51, VSI-H).
    pub below_40f: bool,
    /// Temperature of the siding when it goes up, F; left out, 60 F, or 35 F on a day below 40 F:
    /// common practice, no source.
    pub installed_f: Option<f64>,
    /// Lowest temperature the siding gets to, F. Default 20: a swing of 100 F to the highest, as
    /// published figures take it (FACTS SD-57); the place's own, no source.
    pub lowest_f: f64,
    /// Highest temperature the siding gets to, F: a sunny wall is hotter than the air. Default 120:
    /// see the lowest.
    pub highest_f: f64,
}

impl Default for Weather {
    fn default() -> Self {
        Weather { below_40f: false, installed_f: None, lowest_f: 20.0, highest_f: 120.0 }
    }
}

impl Weather {
    /// Temperature on the day in force, F.
    pub fn installed(&self) -> f64 {
        self.installed_f.unwrap_or(if self.below_40f { COLD } else { MILD })
    }

    /// Whether the cold day's gap is in force.
    pub fn cold(&self) -> bool {
        self.below_40f || self.installed_f.is_some_and(|f| f < 40.0)
    }
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
    /// Growth of the siding, length per length and F. Default 4.5e-5, the ceiling for rigid PVC (FACTS
    /// SD-04, CGSB); 3.0e-5 to 3.6e-5 are typical (SD-05).
    pub expansion: f64,
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
            expansion: 4.5e-5,
            carton: 24,
            colour: String::new(),
        }
    }
}
