//! Many houses at once: the table of houses, the purchase, what is told as they are laid out. Names and paths
//! come in ready for the terminal.

use crate::layout::houses::{HouseFigures, HouseTold, HowItWent};
use crate::model::takeoff::SetShare;
use crate::units::counted;

/// Columns of the table of houses.
pub const HOUSES: [&str; 16] = [
    "house",
    "drawing",
    "job",
    "folder",
    "state",
    "wall area (sq ft)",
    "sided area (sq ft)",
    "panels",
    "fewest proven",
    "pieces of trim",
    "warnings",
    "remarks",
    "broken rules",
    "seconds",
    "code",
    "why",
];

/// Columns of the purchase.
pub const PURCHASE: [&str; 9] = [
    "item",
    "unit",
    "color",
    "stock",
    "houses",
    "needed",
    "ordered house by house",
    "ordered at once",
    "cost",
];

/// Columns of what each house takes of the purchase.
pub const BY_HOUSE: [&str; 6] = ["item", "unit", "color", "house", "needed", "ordered by itself"];

/// Before the sum of all rows.
pub const TOTAL: &str = "total";
/// Names of the sheets of the workbook.
pub const SHEETS: [&str; 3] = ["Houses", "Purchase", "By house"];
/// Under the purchase.
pub const PURCHASE_NOTE: &str = "Each house is cut from its own panels and lengths, and keeps its own offcuts: panels are the sum of the houses'. Cartons, boxes, rolls and spare pieces are rounded up once for all.";
/// Said of panels that are bought in cartons.
pub const IN_CARTONS: &str = "counted; bought by another unit below";

/// How it went, in a word.
pub fn state(how: &HowItWent) -> &'static str {
    match how {
        HowItWent::Laid { .. } => "laid out",
        HowItWent::Before => "laid out before",
        HowItWent::Refused { .. } => "not laid out",
    }
}

/// A house is done.
pub fn progress(done: usize, of: usize, house: &HouseTold, name: &str) -> String {
    let figures = house.figures.as_ref().map(figures).unwrap_or_default();
    let said = match &house.how {
        HowItWent::Laid { seconds } => format!("{figures} ({seconds:.1} s)"),
        HowItWent::Before => format!("{figures} (laid out before, unchanged)"),
        HowItWent::Refused { code, .. } => format!("not laid out: {code}"),
    };
    format!("{done} of {of}: {name}: {said}")
}

fn figures(f: &HouseFigures) -> String {
    let mut out = counted(f.panels, "panel");
    if f.warnings > 0 {
        out.push_str(&format!(", {}", counted(f.warnings, "warning")));
    }
    if f.broken > 0 {
        out.push_str(&format!(", {} in {}", "THE CHECK FAILED", counted(f.broken, "place")));
    }
    out
}

/// What all houses come to.
pub fn all(houses: &[HouseTold]) -> String {
    let count = |is: fn(&HowItWent) -> bool| houses.iter().filter(|h| is(&h.how)).count();
    let panels: usize = houses.iter().filter_map(|h| h.figures.as_ref()).map(|f| f.panels).sum();
    let laid = count(|h| matches!(h, HowItWent::Laid { .. }));
    let before = count(|h| matches!(h, HowItWent::Before));
    let refused = count(|h| matches!(h, HowItWent::Refused { .. }));
    let mut out = format!("{}: {laid} laid out", counted(houses.len(), "house"));
    if before > 0 {
        out.push_str(&format!(", {before} laid out before and unchanged"));
    }
    if refused > 0 {
        out.push_str(&format!(", {refused} not laid out"));
    }
    format!("{out}; {}.", counted(panels, "panel"))
}

/// Over what is told of one house.
pub fn of_house(name: &str) -> String {
    format!("House {name}:")
}

/// Houses have several price lists.
pub const NO_PRICES: &str = "The purchase is written without prices: the houses' jobs name different price lists; give one with --prices.";
/// Code of a house that the program itself failed at.
pub const FAILED_CODE: &str = "program-fault";
/// What is said of it.
pub const FAILED: &str = "the program failed at this house; the others are not touched by it";

/// What takes a share of a line: a house, and the zone of it that has a set of its own.
pub fn taker(share: &SetShare) -> String {
    [&share.house, &share.zone].into_iter().flatten().cloned().collect::<Vec<_>>().join(", ")
}
