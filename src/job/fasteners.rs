//! What nails go through, and how far apart they stand in trim.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::length::{Length, length, length_list, maybe_length};

/// Fasteners. `takeoff.stand_off` holds the panel's own stand-off, `takeoff.nail_spacing` the spacing
/// in panels.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(default, deny_unknown_fields)]
pub struct FastenerRules {
    /// Thickness of wood sheathing, where nails are to hold in studs and go through it first:
    /// fiber-cement (IBC 1405.16). Default 7/16 in: common practice, no source.
    // NailFact::FiberCementPenetration.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub sheathing: f64,
    /// Foam board between the panel and nailable sheathing: it counts as nothing. Default 0 (siding
    /// association's manual, horizontal siding).
    // NailFact::FoamHoldsNothing.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub foam_board: f64,
    /// Other layers that hold no nail: gypsum board, battens over an air space. Default 0.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub other_layers: f64,
    /// Penetration into nailable material, framing and nailable sheathing together; left out, 1 1/4
    /// in for vinyl (siding association's manual, horizontal siding; IRC), 1 1/2 in for wood
    /// (NAVEDTRA 14044), 1 in into studs for fiber-cement (IBC 1405.16), 1 in for steel (from
    /// memory).
    // NailFact::Penetration, NailFact::WoodPenetration, NailFact::FiberCementPenetration.
    #[serde(deserialize_with = "maybe_length")]
    #[schemars(with = "Option<Length>")]
    pub penetration: Option<f64>,
    /// Shortest nail; left out, 2 1/2 in for foam-backed siding (common practice, no
    /// source), 1 1/2 in for plain vinyl (a house-building handbook), 1 3/4 in for steel (IRC Table
    /// R703.3(1), from memory), none for boards.
    // NailFact::FoamBackedNails, NailFact::PlainVinylNails.
    #[serde(deserialize_with = "maybe_length")]
    #[schemars(with = "Option<Length>")]
    pub shortest: Option<f64>,
    /// Lengths nails are sold in; beyond the last, and where none are named, every half inch,
    /// for boards and steel every quarter (California Redwood Association).
    // NailFact::NailLength, Example::NailsThroughBoards.
    #[serde(deserialize_with = "length_list")]
    #[schemars(with = "Vec<Length>")]
    pub lengths: Vec<f64>,
    /// Least shank. Left out, 0.120 in (IRC), for steel 0.113 in (IRC Table R703.3(1),
    /// from memory).
    // NailFact::Shank.
    #[serde(deserialize_with = "maybe_length")]
    #[schemars(with = "Option<Length>")]
    pub shank: Option<f64>,
    /// Least head. Default 5/16 in (IRC).
    // NailFact::Head.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub head: f64,
    /// Spacing in corner posts; left out, `takeoff.trim_nail_spacing`. 8 to 12 in are published
    /// (siding association's manual, accessories), 10 to 12 are usual (common practice).
    // NailFact::PostNailing, NailFact::PostNails.
    #[serde(deserialize_with = "maybe_length")]
    #[schemars(with = "Option<Length>")]
    pub post_spacing: Option<f64>,
    /// Spacing in J-channel; left out, `takeoff.trim_nail_spacing`. 8 to 10 in (an estimating
    /// handbook of 2018).
    // NailFact::ChannelNails, NailFact::TrimNailingInPrint.
    #[serde(deserialize_with = "maybe_length")]
    #[schemars(with = "Option<Length>")]
    pub channel_spacing: Option<f64>,
    /// Spacing in starter, finish trim and drip cap; left out, `takeoff.trim_nail_spacing` (an
    /// estimating handbook of 2018; Journal of Light Construction on vinyl siding).
    // NailFact::TrimNailingInPrint.
    #[serde(deserialize_with = "maybe_length")]
    #[schemars(with = "Option<Length>")]
    pub strip_spacing: Option<f64>,
}

impl Default for FastenerRules {
    fn default() -> Self {
        FastenerRules {
            sheathing: 0.4375,
            foam_board: 0.0,
            other_layers: 0.0,
            penetration: None,
            shortest: None,
            lengths: Vec::new(),
            shank: None,
            head: 0.3125,
            post_spacing: None,
            channel_spacing: None,
            strip_spacing: None,
        }
    }
}
