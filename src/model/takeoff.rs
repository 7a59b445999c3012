//! What to buy, and what it is weighed against. Lengths inches, areas square feet.

use schemars::JsonSchema;
use serde::{Deserialize, Deserializer, Serialize, Serializer};

use super::advice::Advice;
use super::counting::{CountingMethod, CountingRule};
use super::ids::{ItemId, TrimMark, TrimStockId};
use super::item::{CountUnit, Item};
use super::quantity::{TakeoffLine, WallPart};
use super::source::Source;

/// The format's name.
pub const FORMAT: &str = "lapwright-takeoff/2";

/// The takeoff of a house, in the shape of `takeoff.json`.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Takeoff {
    /// Always `lapwright-takeoff/2`.
    #[schemars(extend("const" = FORMAT))]
    pub format: String,
    /// The drawing it is of.
    pub drawing: Source,
    /// Line by line, in ordering order; what `layout.json` holds.
    pub lines: Vec<TakeoffLine>,
    /// Each stock length of trim with what is cut from it.
    pub trim_cuts: Vec<StockCut>,
    /// Leftovers long enough to use, longest first within an item.
    pub leftovers: Vec<Leftover>,
    /// What is bought and where it goes, by item.
    pub offcuts: Vec<Offcut>,
    /// This layout and the rules of thumb.
    pub comparison: Vec<Comparison>,
    /// Published counting rules beside the layout's own counts.
    pub checks: Vec<CrossCheck>,
    /// What whoever orders should know.
    pub advice: Vec<Advice>,
    /// Line that panels are bought by: `cartons`, unless the user prices another unit.
    pub panels_by: PanelUnit,
    /// Costs, where the user gave prices.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub cost: Option<Cost>,
    /// One list to buy by for the house and its zones with siding of their own, in the takeoff of the house;
    /// empty where there are none.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub one_order: Vec<OrderLine>,
}

/// A line of the order for all sets of a house: what several take is summed before it is rounded up.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct OrderLine {
    /// Line of each set's takeoff.
    pub id: ItemId,
    /// What it is of.
    pub item: Item,
    /// Counted in.
    pub unit: CountUnit,
    /// Color to order, where the job names one.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub color: String,
    /// Stock length of one piece, inches.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub stock: Option<f64>,
    /// Needed by all sets.
    pub net: f64,
    /// To order.
    pub order: f64,
    /// What each set takes.
    pub sets: Vec<SetShare>,
}

/// What one set takes of a line of the order.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct SetShare {
    /// The house; left out where one house alone is bought for.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub house: Option<String>,
    /// The zone; left out for the house's own siding.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub zone: Option<String>,
    /// Needed.
    pub net: f64,
    /// What the set by itself would order.
    pub order: f64,
}

/// Parts of a house that quantities are shared out by.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum ShareBy {
    /// The house as a whole.
    #[default]
    House,
    /// Each elevation.
    Elevation,
    /// Each wall.
    Wall,
    /// Walls and gables: below and above the lowest foot of a wall's rakes.
    Gable,
}

/// What one part of the house takes of a line.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct PartShare {
    /// Elevation; empty where parts are not told by it.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub elevation: String,
    /// Wall; empty where parts are not told by it.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub wall: String,
    /// Wall or gable, where parts are told by it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub wall_part: Option<WallPart>,
    /// Line of the takeoff.
    pub id: ItemId,
    /// What it is of.
    pub item: Item,
    /// Counted in.
    pub unit: CountUnit,
    /// Pieces counted; one that lies on two walls is counted on one.
    pub pieces: usize,
    /// Its part of the line's `net`.
    pub net: f64,
}

/// Units that panels may be bought by; their lines say the same panels over again.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum PanelUnit {
    /// Whole cartons.
    #[default]
    Cartons,
    /// Single panels.
    Panels,
    /// Squares in whole cartons.
    Squares,
}

impl PanelUnit {
    /// All of them, the usual one first.
    pub const ALL: [PanelUnit; 3] = [PanelUnit::Cartons, PanelUnit::Panels, PanelUnit::Squares];

    /// Short name of its line.
    pub fn id(self) -> &'static str {
        match self {
            PanelUnit::Cartons => "cartons",
            PanelUnit::Panels => "panels",
            PanelUnit::Squares => "squares",
        }
    }
}

impl PanelUnit {
    /// Whether a line is bought where panels are bought by this unit: it has something to order, and
    /// says no panels over again. Cartons and squares hold the spare panels.
    pub fn buys(self, line: &TakeoffLine) -> bool {
        let counted_by = match line.item {
            Item::Panels { .. } | Item::SparePanels { .. } => PanelUnit::Panels,
            Item::Cartons { .. } => PanelUnit::Cartons,
            Item::Squares => PanelUnit::Squares,
            _ => self,
        };
        line.order > 0.0 && counted_by == self
    }
}

impl Takeoff {
    /// Whether this line is bought.
    pub fn buys(&self, line: &TakeoffLine) -> bool {
        self.panels_by.buys(line)
    }

    /// The line with this short name.
    pub fn line(&self, id: &str) -> Option<&TakeoffLine> {
        self.lines.iter().find(|l| l.id == *id)
    }
}

/// One stock length of trim.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct StockCut {
    /// Line of the takeoff it is ordered by.
    pub item: ItemId,
    /// Its name: `j-channel-12`.
    pub stock: TrimStockId,
    /// Length bought.
    pub length: f64,
    /// Marks of the pieces cut from it, longest first.
    pub pieces: Vec<TrimMark>,
    /// Length of those pieces.
    pub used: f64,
    /// What is left at the end, saw cuts taken off.
    pub left: f64,
}

/// A length left over.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Leftover {
    /// Line of the takeoff.
    pub item: ItemId,
    /// Stock piece it is left of.
    pub stock: String,
    /// Length.
    pub length: f64,
    /// Whether one of its ends is as it left the works.
    pub factory_end: bool,
}

/// Where what is bought goes, by length.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Offcut {
    /// Line of the takeoff.
    pub item: ItemId,
    /// Bought.
    pub bought: f64,
    /// On the wall, laps included.
    pub used: f64,
    /// Left over in usable lengths.
    pub usable: f64,
    /// Short ends and saw cuts.
    pub scrap: f64,
}

/// What one way of counting panels buys.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Comparison {
    /// How it counts.
    pub method: CountingMethod,
    /// Area it counts, percentage included; `None` for the layout, which counts pieces.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub area: Option<f64>,
    /// Panels it buys.
    pub panels: usize,
    /// Cartons it buys.
    pub cartons: usize,
    /// Panels over (positive) or short of (negative) what this layout takes.
    pub over: i64,
    /// Cost of its panels, where panels are priced, in hundredths; written as a decimal.
    #[serde(default, skip_serializing_if = "Option::is_none", with = "maybe_hundredths")]
    #[schemars(with = "Option<f64>")]
    pub cost: Option<i64>,
}

/// A published counting rule beside the layout.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct CrossCheck {
    /// Line of the takeoff it speaks of, where it does.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub item: Option<ItemId>,
    /// The rule.
    pub counting_rule: CountingRule,
    /// Unit of both figures.
    pub unit: CountUnit,
    /// By the rule.
    pub rule: f64,
    /// By the layout; 0 where it counts no such thing.
    pub layout: f64,
}

/// What the takeoff costs at the user's own prices.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Cost {
    /// Currency as the user wrote it.
    pub currency: String,
    /// Priced lines.
    pub lines: Vec<Priced>,
    /// Sum of the priced lines, hundredths of the currency; written as a decimal.
    #[serde(with = "hundredths")]
    #[schemars(with = "f64")]
    pub total: i64,
    /// Sales tax, percent, where the job gives one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub tax_percent: Option<f64>,
    /// Tax on the priced materials, labor left out, hundredths; written as a decimal.
    #[serde(default, skip_serializing_if = "Option::is_none", with = "maybe_hundredths")]
    #[schemars(with = "Option<f64>")]
    pub tax: Option<i64>,
    /// Lines to order that have no price.
    pub unpriced: Vec<ItemId>,
    /// Prices for what this takeoff does not hold.
    pub unused: Vec<UnusedPrice>,
}

/// A price that no line takes.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct UnusedPrice {
    /// The item as the price list names it.
    pub item: String,
    /// Its line in the price list.
    pub line: usize,
}

/// One priced line.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Priced {
    /// Line of the takeoff.
    pub item: ItemId,
    /// Price of one unit, ten-thousandths of the currency; written as a decimal.
    #[serde(with = "ten_thousandths")]
    #[schemars(with = "f64")]
    pub price: i64,
    /// Sold in multiples of this many units.
    pub multiple: u32,
    /// Units to buy, a multiple.
    pub quantity: u64,
    /// Price times quantity, hundredths, half and over up; written as a decimal.
    #[serde(with = "hundredths")]
    #[schemars(with = "f64")]
    pub extended: i64,
}

/// Money as people write it: a double holds every such decimal to the last digit.
macro_rules! money {
    ($name:ident, $parts:literal) => {
        mod $name {
            use super::{Deserialize, Deserializer, Serializer};

            pub(super) fn serialize<S: Serializer>(v: &i64, s: S) -> Result<S::Ok, S::Error> {
                s.serialize_f64(*v as f64 / $parts)
            }

            pub(super) fn deserialize<'de, D: Deserializer<'de>>(d: D) -> Result<i64, D::Error> {
                f64::deserialize(d).map(|v| (v * $parts).round() as i64)
            }
        }
    };
}

money!(hundredths, 100.0);
money!(ten_thousandths, 10_000.0);

mod maybe_hundredths {
    use super::{Deserialize, Deserializer, Serializer, hundredths};

    pub(super) fn serialize<S: Serializer>(v: &Option<i64>, s: S) -> Result<S::Ok, S::Error> {
        match v {
            Some(v) => hundredths::serialize(v, s),
            None => s.serialize_none(),
        }
    }

    pub(super) fn deserialize<'de, D: Deserializer<'de>>(d: D) -> Result<Option<i64>, D::Error> {
        let decimal = Option::<f64>::deserialize(d)?;
        Ok(decimal.map(|v| (v * 100.0).round() as i64))
    }
}
