//! What a revision of a drawing changes, in the shape of `compare.json`: facts alone. Lengths inches, areas
//! square feet; places are elevation inches of the new layout, whatever the old one stood on.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::corner::{CornerKind, Hand};
use super::house::{HiddenBy, OpeningKind};
use super::ids::{ElevationName, FeatureId, ItemId, WallId};
use super::item::{CountUnit, Item};
use super::source::Source;
use crate::geom::vocabulary::Xy;

/// The format's name.
pub const FORMAT: &str = "lapwright-compare/1";

/// Two layouts of one house, compared.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Comparison {
    /// Always `lapwright-compare/1`.
    #[schemars(extend("const" = FORMAT))]
    pub format: String,
    /// Letter of the revision.
    pub revision: String,
    /// Date of the new drawing, as its job gives it; empty where it gives none.
    pub date: String,
    /// The drawing compared with.
    pub old: Source,
    /// The drawing that is new.
    pub new: Source,
    /// What is no change of the house.
    pub remarks: Vec<Remark>,
    /// What the drawing changes, in the order of elevations and walls.
    pub changes: Vec<Change>,
    /// Settings that the two jobs give differently.
    pub settings: Vec<SettingChange>,
    /// Butt line of course 1 over the floor reference line: before and after.
    pub datum: [f64; 2],
    /// Panels or boards laid, before and after.
    pub panels: [usize; 2],
    /// What it does to each wall: those that differ.
    pub walls: Vec<WallEffect>,
    /// Walls that take what they took before.
    pub walls_alike: usize,
    /// What to order more and what is over: lines that differ.
    pub orders: Vec<OrderChange>,
    /// Lines to order that are the same.
    pub orders_alike: usize,
    /// What it costs, where prices are given.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub cost: Option<CostChange>,
    /// Whether a layout breaks a rule of the check: before and after. Its figures are not to be ordered by.
    pub check_failed: [bool; 2],
}

/// What is no change of the house.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(tag = "is", rename_all = "kebab-case")]
pub enum Remark {
    /// The views stand elsewhere on the sheet, the house as it was.
    Moved {
        /// Which.
        elevations: Vec<ElevationName>,
    },
    /// The whole house is drawn the other hand.
    Mirrored,
    /// The drawing is the same file.
    SameFile,
}

/// One thing that the drawing changes.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Change {
    /// Its number, from 1: beside its cloud on the sheets.
    pub number: usize,
    /// Zone whose set it is in; left out for the house's own siding.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub zone: Option<String>,
    /// Elevation, by its new name; by its old one where it is gone.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub elevation: Option<ElevationName>,
    /// Wall it is on, by its new name; by its old one where it is gone.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub wall: Option<WallId>,
    /// What is changed.
    pub subject: Subject,
    /// What kind of opening it is; what it was, where it is gone.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub opening: Option<OpeningKind>,
    /// Its name in the old layout.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub old_name: Option<FeatureId>,
    /// Its name in the new layout.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub new_name: Option<FeatureId>,
    /// How.
    #[serde(flatten)]
    pub how: How,
    /// Where to look on the new elevation: left, bottom, right, top of each place.
    pub places: Vec<[f64; 4]>,
    /// The outline of what is gone.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub gone: Vec<Xy>,
}

/// What is changed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Subject {
    /// An elevation, with its title.
    Elevation,
    /// A part of the walls with siding of its own, as the job names it.
    Zone,
    /// A wall.
    Wall,
    /// An opening.
    Opening,
    /// A fixture.
    Fixture,
    /// A band board.
    Band,
    /// A joint of the building.
    MovementJoint,
    /// A corner of the house.
    Corner,
    /// Finished grade.
    Grade,
    /// The floor reference line.
    FloorLine,
    /// What stands before a wall: roofs, stone, other cladding.
    InFront,
}

/// A side of a wall.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema,
)]
#[serde(rename_all = "kebab-case")]
pub enum WallSide {
    /// Its left side.
    Left,
    /// Its right side.
    Right,
    /// Its foot, where siding begins.
    Foot,
    /// Its level top: a soffit.
    Top,
    /// A sloped side: a rake.
    Rake,
}

/// How a thing is changed. Lengths are positive to the right and up.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(tag = "change", rename_all = "kebab-case")]
pub enum How {
    /// It was not there.
    Added {
        /// Width and height; none of what has no size.
        size: Option<[f64; 2]>,
        /// Openings that came with it.
        #[serde(default, skip_serializing_if = "is_zero")]
        openings: usize,
    },
    /// It is gone.
    Removed {
        /// Width and height it had; none of what has no size.
        size: Option<[f64; 2]>,
        /// Openings that went with it.
        #[serde(default, skip_serializing_if = "is_zero")]
        openings: usize,
    },
    /// It stands elsewhere, as large as it was, with all that stands on it.
    Moved {
        /// To the right.
        right: f64,
        /// Up.
        up: f64,
    },
    /// It is of another size.
    Resized {
        /// Width and height before.
        from: [f64; 2],
        /// Width and height now.
        to: [f64; 2],
        /// How far its left, lower, right and upper side moved.
        sides: [f64; 4],
    },
    /// One side of a wall moved.
    SideMoved {
        /// The side.
        side: WallSide,
        /// How far: right for an upright side, else up.
        by: f64,
    },
    /// A slope is another one.
    Pitch {
        /// Rise in 12 before.
        from: f64,
        /// Rise in 12 now.
        to: f64,
    },
    /// Its outline is of another shape.
    Reshaped {
        /// Area before, square feet.
        from: f64,
        /// Area now, square feet.
        to: f64,
        /// What stands before the wall, where that is what changed.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        by: Option<HiddenBy>,
    },
    /// It is level with another height all along.
    Raised {
        /// Up.
        up: f64,
    },
    /// It runs along other heights.
    Regraded {
        /// The most it lies higher anywhere; negative where it lies lower all along.
        highest: f64,
        /// The most it lies lower anywhere: up.
        lowest: f64,
    },
    /// It is of another kind.
    Kind {
        /// What it was.
        from: OpeningKind,
        /// What it is.
        to: OpeningKind,
    },
    /// A fixture has a mounting block now, or has none any more.
    Block {
        /// Whether it has one now.
        now: bool,
    },
    /// A corner turns the other way or by another angle.
    Turned {
        /// The side of the wall it is on.
        side: Hand,
        /// Which way it turned, and by how many degrees where that is known and not square.
        from: (CornerKind, Option<f64>),
        /// The same now.
        to: (CornerKind, Option<f64>),
    },
    /// It bears another title.
    Renamed {
        /// The title before.
        from: String,
        /// The title now.
        to: String,
    },
}

#[allow(clippy::trivially_copy_pass_by_ref, reason = "serde hands it over by reference")]
fn is_zero(count: &usize) -> bool {
    *count == 0
}

/// A setting that two jobs give differently.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct SettingChange {
    /// Its key: `product.exposure`.
    pub key: String,
    /// Its value before, as JSON writes it; none where there was none.
    pub from: Option<String>,
    /// Its value now; none where there is none.
    pub to: Option<String>,
}

/// What a revision does to one wall. Counts and lengths are those before and those after.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct WallEffect {
    /// Zone whose set it is in; left out for the house's own siding.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub zone: Option<String>,
    /// Its name in the old layout; none for a wall that was not there.
    pub old: Option<WallId>,
    /// Its name in the new layout; none for one that is gone.
    pub new: Option<WallId>,
    /// Net area, square feet.
    pub net_area: [f64; 2],
    /// Courses.
    pub courses: [usize; 2],
    /// Pieces of siding.
    pub pieces: [usize; 2],
    /// Pieces of the new layout that hang where they hung, cut to the same length.
    pub pieces_alike: usize,
    /// Panels, trim and flashing that it takes: lines that differ.
    pub lines: Vec<LineEffect>,
}

/// What one wall takes of a line of the takeoff.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct LineEffect {
    /// Line of the takeoff.
    pub id: ItemId,
    /// What.
    pub item: Item,
    /// Counted in.
    pub unit: CountUnit,
    /// Its part of what is needed, before and after.
    pub net: [f64; 2],
}

/// A line of the order before and after.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct OrderChange {
    /// Line of the takeoff.
    pub id: ItemId,
    /// What.
    pub item: Item,
    /// Counted in.
    pub unit: CountUnit,
    /// Stock length of one piece, inches.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub stock: Option<f64>,
    /// Needed.
    pub net: [f64; 2],
    /// To buy: whole stock pieces or cartons, in whole multiples where a price list gives them.
    pub order: [f64; 2],
    /// To order more; negative what is over.
    pub more: f64,
    /// What that costs, in the currency of the price list; negative what is over. None without a price.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub cost: Option<f64>,
}

/// Costs before and after.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct CostChange {
    /// Currency as the price list writes it.
    pub currency: String,
    /// Sum of the priced lines, before and after, tax left out.
    pub total: [f64; 2],
    /// Tax, before and after, where the jobs give one.
    pub tax: [f64; 2],
    /// What is to be ordered more.
    pub more: f64,
    /// What was ordered and is over.
    pub over: f64,
    /// Lines that differ and have no price.
    pub unpriced: Vec<ItemId>,
}

impl Comparison {
    /// Whether the drawing changes nothing of the house.
    pub fn is_same_house(&self) -> bool {
        self.changes.is_empty()
    }
}
