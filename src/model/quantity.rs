//! What a layout takes of each thing to buy, line by line, and what of it falls to each part of the
//! house.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::basis::Basis;
use super::ids::{CountedName, ElevationName, ItemId, WallId};
use super::item::{CountUnit, Item};
use super::trim::TrimKind;

/// One line of the takeoff.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct TakeoffLine {
    /// Short name that stays the same: `j-channel`.
    pub id: ItemId,
    /// What.
    pub item: Item,
    /// Counted in.
    pub unit: CountUnit,
    /// Part of the takeoff.
    pub group: Group,
    /// Needed by the layout.
    pub net: f64,
    /// To order, whole stock pieces or cartons; 0 for what is only counted.
    pub order: f64,
    /// Bought and not used, percent of what is bought.
    pub waste: f64,
    /// How the figure came about.
    pub basis: Basis,
    /// Color to order, where the job names one.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub color: String,
    /// The supplier's item number, where the job gives one.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub item_number: String,
    /// Stock length of one piece, inches.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub stock: Option<f64>,
    /// Length used, inches.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub length: Option<f64>,
    /// Marks of the pieces it counts, or names of what it counts.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub counts: Vec<CountedName>,
    /// `net` by kind of trim.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub kinds: Vec<KindShare>,
    /// `net` by wall.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub shares: Vec<Share>,
}

impl TakeoffLine {
    /// A line of an item with no figures yet.
    pub fn new(item: Item, unit: CountUnit, group: Group, basis: Basis) -> Self {
        TakeoffLine {
            id: item.id(),
            item,
            unit,
            group,
            net: 0.0,
            order: 0.0,
            waste: 0.0,
            basis,
            color: String::new(),
            item_number: String::new(),
            stock: None,
            length: None,
            counts: Vec::new(),
            kinds: Vec::new(),
            shares: Vec::new(),
        }
    }
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
    /// What else goes on the wall: barrier, sealant, soffit, and what the job counts.
    Further,
    /// Labor.
    Labor,
    /// Rules of thumb: never ordered.
    Comparison,
    /// Other cladding, measured by area and not laid out: never ordered.
    Measured,
}

/// What one kind of trim takes of a stock.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct KindShare {
    /// The kind.
    pub kind: TrimKind,
    /// Pieces.
    pub pieces: usize,
    /// Their length, inches.
    pub length: f64,
}

/// What one wall takes of a line.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Share {
    /// Elevation.
    pub elevation: ElevationName,
    /// Wall.
    pub wall: WallId,
    /// Part of the wall: `wall`, or `gable` above the lowest foot of a rake.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub wall_part: Option<WallPart>,
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
pub enum WallPart {
    /// Below the lowest foot of a rake.
    Wall,
    /// Above it.
    Gable,
}
