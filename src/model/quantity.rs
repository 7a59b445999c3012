//! What a layout takes of each thing to buy, line by line, and what of it falls to each part of the
//! house.

use super::ids::{ElevationName, WallId};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// One line of the takeoff.
#[derive(Clone, Debug, Default, PartialEq, Serialize, JsonSchema)]
pub struct TakeoffLine {
    /// What.
    pub item: String,
    /// Counted in.
    pub unit: String,
    /// Needed by the layout.
    pub net: f64,
    /// To order, whole stock pieces or cartons; 0 for what is only counted.
    pub order: f64,
    /// Bought and not used, percent of what is bought.
    pub waste: f64,
    /// How the figure came about.
    pub how: String,
    /// Short name that stays the same: `j-channel`.
    pub id: String,
    /// Part of the takeoff.
    pub group: Group,
    /// Colour to order, where the job names one.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub colour: String,
    /// Stock length of one piece, inches.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub stock: Option<f64>,
    /// Length used, inches.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub length: Option<f64>,
    /// Marks of the pieces it counts, or names of what it counts.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub counts: Vec<String>,
    /// `net` by kind of trim.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub kinds: Vec<KindShare>,
    /// `net` by wall.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub shares: Vec<Share>,
}

/// Parts of a takeoff.
#[derive(
    Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema,
)]
#[serde(rename_all = "lowercase")]
pub enum Group {
    /// Panels, in every unit they are counted in.
    #[default]
    Panels,
    /// Trim by stock.
    Trim,
    /// Flashing.
    Flashing,
    /// Fasteners and blocks.
    Fasteners,
    /// Rules of thumb: never ordered.
    Comparison,
    /// Other cladding, measured by area and not laid out: never ordered.
    Measured,
}

/// What one kind of trim takes of a stock.
#[derive(Clone, Debug, Default, PartialEq, Serialize, JsonSchema)]
pub struct KindShare {
    /// The kind in words.
    pub kind: String,
    /// Pieces.
    pub pieces: usize,
    /// Their length, inches.
    pub length: f64,
}

/// What one wall takes of a line.
#[derive(Clone, Debug, Default, PartialEq, Serialize, JsonSchema)]
pub struct Share {
    /// Elevation.
    pub elevation: ElevationName,
    /// Wall.
    pub wall: WallId,
    /// Part of the wall: `wall`, or `gable` above the lowest foot of a rake.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub zone: Option<Zone>,
    /// Pieces counted.
    pub pieces: usize,
    /// Its part of `net`, in the line's unit.
    pub net: f64,
}

/// Parts of a wall.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema,
)]
#[serde(rename_all = "lowercase")]
pub enum Zone {
    /// Below the lowest foot of a rake.
    Wall,
    /// Above it.
    Gable,
}

impl Zone {
    /// In words.
    pub fn word(self) -> &'static str {
        match self {
            Zone::Wall => "wall",
            Zone::Gable => "gable",
        }
    }
}
