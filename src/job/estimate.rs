//! Further lines of an estimate: each is off until the job turns it on or gives it.

use std::collections::BTreeMap;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::length::{Length, length};

/// Further lines of an estimate, each off until it is turned on or given here. None is invented:
/// depths, counts, weights, hours, colors and numbers are the office's own.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(default, deny_unknown_fields)]
pub struct Estimate {
    /// Your own price list (CSV), from the folder of the file that names it; `--prices` comes before it. The
    /// page does not read it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub price_list: Option<String>,
    /// Whether to count a weather barrier over the walls, openings included, and tape for its seams.
    /// Default `false`.
    pub barrier: bool,
    /// Width of a roll of weather barrier. Default 9 ft: common practice, no source.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub barrier_width: f64,
    /// Length of a roll of weather barrier. Default 100 ft: common practice, no source.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub barrier_length: f64,
    /// Lap of level seams of the barrier. Default 2 in (IRC R703.2, an older text).
    // TakeoffFact::BarrierLaps.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub barrier_lap: f64,
    /// Lap of upright seams of the barrier. Default 6 in (IRC R703.2, an older text).
    // TakeoffFact::BarrierLaps.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub barrier_end_lap: f64,
    /// Length of a roll of tape. Default 165 ft: common practice, no source.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub tape_roll: f64,
    /// Whether to count sealant: around openings behind their flanges, for boards along the trim that
    /// they butt against. Default `false`.
    pub sealant: bool,
    /// Width and depth of a bead of sealant. Default 1/4 in: common practice, no source.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub sealant_bead: f64,
    /// Fluid ounces of sealant in a cartridge. Default 10.1: common practice, no source.
    pub sealant_cartridge: f64,
    /// Whether to count furring behind the cut edges that stand off the wall. Default `false`.
    pub furring: bool,
    /// Stock of furring strips. Default 8 ft: common practice, no source.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub furring_stock: f64,
    /// Width of the strip of coil stock that wraps a fascia. Default 0: not wrapped.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub wrap_fascia: f64,
    /// Width of the strip that wraps a frieze board. Default 0: not wrapped.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub wrap_frieze: f64,
    /// Width of the strip that wraps a band board. Default 0: not wrapped.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub wrap_band: f64,
    /// Width of the strip that wraps a flat surround. Default 0: not wrapped.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub wrap_surround: f64,
    /// Width of coil stock. Default 24 in: common practice, no source.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub coil_width: f64,
    /// Length of a roll of coil stock. Default 50 ft: common practice, no source.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub coil_length: f64,
    /// Depth of the soffit under level eaves, as drawn on a section. Default 0: not counted.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub soffit_depth: f64,
    /// Depth of the soffit along rakes. Default 0: not counted.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub rake_soffit_depth: f64,
    /// Width that a soffit panel covers. Default 12 in: common practice, no source.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub soffit_cover: f64,
    /// Stock of soffit panels and of the channel that takes them at the wall. Default 12 ft: common
    /// practice, no source.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub soffit_stock: f64,
    /// Height of the fascia along eaves and rakes. Default 0: not counted.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub fascia: f64,
    /// Stock of fascia. Default 12 ft: common practice, no source.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub fascia_stock: f64,
    /// Pairs of shutters. Default 0.
    pub shutters: u32,
    /// Gable vents and others that are bought with the siding. Default 0.
    pub vents: u32,
    /// Blocks for fixtures that are not drawn. Default 0.
    pub blocks: u32,
    /// Siding nails in a pound, as the supplier says: nails are then bought by the pound. Default 0: by
    /// the box.
    pub siding_nails_per_pound: f64,
    /// Trim nails in a pound, likewise. Default 0: by the box.
    pub trim_nails_per_pound: f64,
    /// The office's own hours of labor for one unit of a line, by its short name: `squares = 2.5`.
    pub hours: BTreeMap<String, f64>,
    /// Sales tax on priced materials, percent. Default 0: none.
    pub tax: f64,
    /// Color to order a line in, by its short name; it goes before the siding's and the trim's.
    pub colors: BTreeMap<String, String>,
    /// The supplier's item number of a line, by its short name.
    pub item_numbers: BTreeMap<String, String>,
}

impl Default for Estimate {
    fn default() -> Self {
        Estimate {
            price_list: None,
            barrier: false,
            barrier_width: 108.0,
            barrier_length: 1200.0,
            barrier_lap: 2.0,
            barrier_end_lap: 6.0,
            tape_roll: 1980.0,
            sealant: false,
            sealant_bead: 0.25,
            sealant_cartridge: 10.1,
            furring: false,
            furring_stock: 96.0,
            wrap_fascia: 0.0,
            wrap_frieze: 0.0,
            wrap_band: 0.0,
            wrap_surround: 0.0,
            coil_width: 24.0,
            coil_length: 600.0,
            soffit_depth: 0.0,
            rake_soffit_depth: 0.0,
            soffit_cover: 12.0,
            soffit_stock: 144.0,
            fascia: 0.0,
            fascia_stock: 144.0,
            shutters: 0,
            vents: 0,
            blocks: 0,
            siding_nails_per_pound: 0.0,
            trim_nails_per_pound: 0.0,
            hours: BTreeMap::new(),
            tax: 0.0,
            colors: BTreeMap::new(),
            item_numbers: BTreeMap::new(),
        }
    }
}
