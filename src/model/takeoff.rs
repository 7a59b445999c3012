//! What to buy, and what it is weighed against. Lengths inches, areas square feet.

use super::seam::MOST_STOCKS;
use schemars::JsonSchema;
use serde::{Serialize, Serializer};

use crate::model::ids::{TrimMark, TrimStockId};
use crate::model::quantity::{TakeoffLine, Zone};
use crate::model::source::Source;

/// The format's name.
pub const FORMAT: &str = "lapwright-takeoff/1";

/// The takeoff of a house, in the shape of `takeoff.json`.
#[derive(Clone, Debug, Default, PartialEq, Serialize, JsonSchema)]
pub struct Takeoff {
    /// Always `lapwright-takeoff/1`.
    #[schemars(extend("const" = FORMAT))]
    pub format: &'static str,
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
    /// This layout and the rules of thumb, side by side.
    pub ways: Vec<Way>,
    /// Published counting rules beside the layout's own counts.
    pub checks: Vec<CrossCheck>,
    /// What whoever orders should know.
    pub advice: Vec<String>,
    /// Line that panels are bought by: `cartons`, unless the user prices another unit.
    pub panels_by: PanelUnit,
    /// Costs, where the user gave prices.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub cost: Option<Cost>,
}

/// Parts of a house that quantities are told by.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum By {
    /// The house as a whole.
    #[default]
    House,
    /// Each elevation.
    Elevation,
    /// Each wall.
    Wall,
    /// Below and above the lowest foot of a wall's rakes.
    Zone,
}

/// What one part of the house takes of a line.
#[derive(Clone, Debug, Default, PartialEq, Serialize, JsonSchema)]
pub struct PartShare {
    /// Elevation; empty where parts are not told by it.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub elevation: String,
    /// Wall; empty where parts are not told by it.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub wall: String,
    /// Zone, where parts are told by it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub zone: Option<Zone>,
    /// Line of the takeoff.
    pub item: String,
    /// Its words.
    pub words: String,
    /// Counted in.
    pub unit: String,
    /// Pieces counted; one that lies on two walls is counted on one.
    pub pieces: usize,
    /// Its part of the line's `net`.
    pub net: f64,
}

/// Units that panels may be bought by; their lines say the same panels over again.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, JsonSchema)]
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

/// What the short names of lines of a stock end in, by its place: `panels`, `panels-second`, `panels-3`.
pub fn stock_suffix(stock: usize) -> String {
    match stock {
        0 => String::new(),
        1 => "-second".to_owned(),
        n => format!("-{}", n + 1),
    }
}

/// A line's short name without the ending of its stock.
pub fn of_any_stock(id: &str) -> &str {
    let endings = (1..MOST_STOCKS).map(stock_suffix);
    endings.filter_map(|ending| id.strip_suffix(&ending)).next().unwrap_or(id)
}

impl Takeoff {
    /// Whether this line is bought: it has something to order, and says no panels over again.
    /// Cartons and squares hold the spare panels.
    pub fn buys(&self, line: &TakeoffLine) -> bool {
        let panels = |id: &str| PanelUnit::ALL.iter().any(|u| u.id() == id);
        // Panels of each length have lines of their own.
        let id = of_any_stock(&line.id);
        line.order > 0.0
            && match id {
                "spare-panels" => self.panels_by == PanelUnit::Panels,
                id if panels(id) => id == self.panels_by.id(),
                _ => true,
            }
    }

    /// The line with this short name or these words, in any case.
    pub fn line(&self, name: &str) -> Option<&TakeoffLine> {
        let name = name.trim().to_lowercase();
        self.lines.iter().find(|l| l.id == name || l.item.to_lowercase() == name)
    }
}

/// One stock length of trim.
#[derive(Clone, Debug, Default, PartialEq, Serialize, JsonSchema)]
pub struct StockCut {
    /// Line of the takeoff it is ordered by.
    pub item: String,
    /// Its name in the cut list: `J-channel 12`.
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
#[derive(Clone, Debug, Default, PartialEq, Serialize, JsonSchema)]
pub struct Leftover {
    /// Line of the takeoff.
    pub item: String,
    /// Stock piece it is left of.
    pub stock: String,
    /// Length.
    pub length: f64,
    /// Whether one of its ends is as it left the works.
    pub factory_end: bool,
}

/// Where what is bought goes, by length.
#[derive(Clone, Debug, Default, PartialEq, Serialize, JsonSchema)]
pub struct Offcut {
    /// Line of the takeoff.
    pub item: String,
    /// Bought.
    pub bought: f64,
    /// On the wall, laps included.
    pub used: f64,
    /// Left over in usable lengths.
    pub usable: f64,
    /// Short ends and saw cuts.
    pub scrap: f64,
}

/// One way of counting panels.
#[derive(Clone, Debug, Default, PartialEq, Serialize, JsonSchema)]
pub struct Way {
    /// The way in words.
    pub name: String,
    /// Area it counts, percentage included; `None` for the layout, which counts pieces.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub area: Option<f64>,
    /// Panels it buys.
    pub panels: usize,
    /// Cartons it buys.
    pub cartons: usize,
    /// Panels over (positive) or short of (negative) what this layout takes.
    pub over: i64,
    /// Cost of its panels, where panels are priced, in hundredths; written as a decimal.
    #[serde(skip_serializing_if = "Option::is_none", serialize_with = "maybe_hundredths")]
    #[schemars(with = "Option<f64>")]
    pub cost: Option<i64>,
    /// How it counts, with its source.
    pub how: String,
}

/// A published counting rule.
#[derive(Clone, Debug, Default, PartialEq, Serialize, JsonSchema)]
pub struct CrossCheck {
    /// Line of the takeoff it speaks of, where it does.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub item: String,
    /// What is counted.
    pub what: String,
    /// Unit of both figures.
    pub unit: String,
    /// By the rule.
    pub rule: f64,
    /// By the layout.
    pub layout: f64,
    /// The rule with its source.
    pub how: String,
}

/// What the takeoff costs at the user's own prices.
#[derive(Clone, Debug, Default, PartialEq, Serialize, JsonSchema)]
pub struct Cost {
    /// Currency as the user wrote it.
    pub currency: String,
    /// Priced lines.
    pub lines: Vec<Priced>,
    /// Sum of the priced lines, hundredths of the currency; written as a decimal.
    #[serde(serialize_with = "hundredths")]
    #[schemars(with = "f64")]
    pub total: i64,
    /// Lines to order that have no price.
    pub unpriced: Vec<String>,
    /// Prices for what this takeoff does not hold, with their lines.
    pub unused: Vec<String>,
}

/// One priced line.
#[derive(Clone, Debug, Default, PartialEq, Serialize, JsonSchema)]
pub struct Priced {
    /// Line of the takeoff.
    pub item: String,
    /// Price of one unit, ten-thousandths of the currency; written as a decimal.
    #[serde(serialize_with = "ten_thousandths")]
    #[schemars(with = "f64")]
    pub price: i64,
    /// Sold in multiples of this many units.
    pub multiple: u32,
    /// Units to buy, a multiple.
    pub quantity: u64,
    /// Price times quantity, hundredths, half and over up; written as a decimal.
    #[serde(serialize_with = "hundredths")]
    #[schemars(with = "f64")]
    pub extended: i64,
}

/// Money as people write it: a double holds every such decimal to the last digit.
fn hundredths<S: Serializer>(v: &i64, s: S) -> Result<S::Ok, S::Error> {
    s.serialize_f64(*v as f64 / 100.0)
}

fn ten_thousandths<S: Serializer>(v: &i64, s: S) -> Result<S::Ok, S::Error> {
    s.serialize_f64(*v as f64 / 10_000.0)
}

fn maybe_hundredths<S: Serializer>(v: &Option<i64>, s: S) -> Result<S::Ok, S::Error> {
    match v {
        Some(v) => hundredths(v, s),
        None => s.serialize_none(),
    }
}
