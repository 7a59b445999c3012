//! Fasteners, flashing, spare panels and rules of thumb.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::length::{Length, length, maybe_length};

/// Fasteners and counts.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(default, deny_unknown_fields)]
pub struct TakeoffRules {
    /// What the rule of thumb adds to net area, percent. Default 10 (a lumber yard's estimating page
    /// and others).
    // TakeoffFact::GeneralWaste.
    pub area_waste: f64,
    /// Greatest spacing of nails in panels. Default 16 in (IRC 2018 R703.11.1.3).
    // NailFact::Spacing.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub nail_spacing: f64,
    /// Spacing of nails in trim. Default 10 in, within 8 to 12 (siding association's manual,
    /// accessories).
    // NailFact::PostNailing.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub trim_nail_spacing: f64,
    /// Nails in a box. Default 1000: common practice, no source.
    pub nail_box: u32,
    /// Layers between the panel's nail hem and nailable sheathing, foam and air included. Left out,
    /// 3/4 in hem stand-off for foam-backed siding (derived), 0 for plain vinyl.
    // NailFact::NailLength.
    #[serde(deserialize_with = "maybe_length")]
    #[schemars(with = "Option<Length>")]
    pub stand_off: Option<f64>,
    /// Spare panels for damage and miscuts, percent of those laid, rounded up; none where whole
    /// cartons leave as many. Default 3: some are bent, lost or cut wrong on every house, and a later
    /// lot differs in color; the figure is common practice, no source.
    pub spare: f64,
    /// Spare lengths of each trim, percent of those that the cutting plan takes, rounded up; none where
    /// what is sold in multiples leaves as many. Default 3, as for panels: common practice, no source.
    pub trim_spare: f64,
    /// Openings over this area, square feet, are large: one rule of thumb subtracts only those.
    /// Default 20, of 20 or 50 in use (shop pages; thresholds common practice, no source).
    // TakeoffFact::LargeOpeningsOff.
    pub large_opening: f64,
    /// Length of a roll of flashing. Default 50 ft: common practice, no source.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub flashing_roll: f64,
    /// How far lengths of flashing along one level run lap, where a run is longer than a roll, and how far a
    /// run, or step flashing along a slope, is turned round a corner that it ends at. Default 4 in: common practice, no source.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub flashing_lap: f64,
    /// How far the pan under a door is turned up at each jamb. Default 6 in: common practice, no source.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub door_pan_up: f64,
    /// Height of a course of roofing along its slope: one piece of step flashing goes with each.
    /// Default 5 in: common practice, no source.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub step_exposure: f64,
}

impl Default for TakeoffRules {
    fn default() -> Self {
        TakeoffRules {
            area_waste: 10.0,
            nail_spacing: 16.0,
            trim_nail_spacing: 10.0,
            nail_box: 1000,
            stand_off: None,
            spare: 3.0,
            trim_spare: 3.0,
            large_opening: 20.0,
            flashing_roll: 600.0,
            flashing_lap: 4.0,
            door_pan_up: 6.0,
            step_exposure: 5.0,
        }
    }
}
