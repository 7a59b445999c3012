//! What to buy, and what it is weighed against. Lengths inches, areas square feet.

use serde::Serialize;

use super::layout::TakeoffLine;

/// The takeoff of a house.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Takeoff {
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

/// Units that panels may be bought by; their lines say the same panels over again.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize)]
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

impl Takeoff {
    /// Whether this line is bought: it has something to order, and says no panels over again.
    /// Cartons and squares hold the spare panels.
    pub fn buys(&self, line: &TakeoffLine) -> bool {
        let panels = |id: &str| PanelUnit::ALL.iter().any(|u| u.id() == id);
        line.order > 0.0
            && match line.id.as_str() {
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
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct StockCut {
    /// Line of the takeoff it is ordered by.
    pub item: String,
    /// Its name in the cut list: `J-channel 12`.
    pub stock: String,
    /// Length bought.
    pub length: f64,
    /// Marks of the pieces cut from it, longest first.
    pub pieces: Vec<String>,
    /// Length of those pieces.
    pub used: f64,
    /// What is left at the end, saw cuts taken off.
    pub left: f64,
}

/// A length left over.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
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
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
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
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
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
    /// Cost of its panels, where panels are priced, in hundredths.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub cost: Option<i64>,
    /// How it counts, with its source.
    pub how: String,
}

/// A published counting rule.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
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
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Cost {
    /// Currency as the user wrote it.
    pub currency: String,
    /// Priced lines.
    pub lines: Vec<Priced>,
    /// Sum of the priced lines, hundredths of the currency.
    pub total: i64,
    /// Lines to order that have no price.
    pub unpriced: Vec<String>,
    /// Prices for what this takeoff does not hold, with their lines.
    pub unused: Vec<String>,
}

/// One priced line.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Priced {
    /// Line of the takeoff.
    pub item: String,
    /// Price of one unit, ten-thousandths of the currency.
    pub price: i64,
    /// Sold in multiples of this many units.
    pub multiple: u32,
    /// Units to buy, a multiple.
    pub quantity: u64,
    /// Price times quantity, hundredths, half and over up.
    pub extended: i64,
}
