//! Heads and notes of workbook and tables.

use crate::finding::{Audience, Finding, Severity};
use crate::model::takeoff::Takeoff;

/// Notes and titles of the workbook's sheets.
pub const ASSUMPTIONS: &str = "Assumptions and findings";
/// Column of them.
pub const SOURCE_OR_ACTION: &str = "Source, or what to do";
/// Where a setting comes from.
pub const SET_BY_JOB: &str = "set by the job";
/// Foot of every printed sheet.
pub const FOOTER: &str =
    "The siding manufacturer's instructions and the local code override every figure";
/// Sheet of prices.
pub const PRICES: &str = "Prices are the user's own; type them into the bordered cells, or give a price list. No price is made up.";
/// Column of the published rule.
pub const BY_RULE: &str = "By published rule";
/// Column of the multiple.
pub const SOLD_IN: &str = "Sold in multiples of";
/// Column of what is bought.
pub const UNITS_TO_BUY: &str = "Units to buy";
/// Column of how a figure came about.
pub const BASIS: &str = "Basis of quantity";
/// Column of the supplier's numbers.
pub const ITEM_NUMBER: &str = "Item number";
/// Under the priced lines.
pub const PRICED_TOTAL: &str = "Total of the priced lines";
/// Fingerprint of the source.
pub const SHA: &str = "SHA-256 of the drawing";
/// Totals.
pub const CARTONS: &str = "Cartons to order";
/// Totals.
pub const NET_SQUARES: &str = "Squares of net area";
/// Totals.
pub fn fewest(piece: &str) -> String {
    format!("Fewest {piece}s any layout could use")
}
/// Heading of ways of counting.
pub const COMPARISON: &str = "Comparison";
/// Column of it.
pub const WAY_OF_COUNTING: &str = "Way of counting";
/// Column of it.
pub const AGAINST_LAYOUT: &str = "More or less than laid";
/// Column of it.
pub fn siding_cost(piece: &str) -> String {
    format!("Cost of {piece}s")
}
/// Heading of the one order.
pub const ONE_ORDER: &str = "One order for the house and its zones";
/// Heading of what is left of stock.
pub const USE_AND_WASTE: &str = "Use and waste";
/// Column of it.
pub const ON_WALL: &str = "On the wall";
/// Heading of published rules.
pub const CROSS_CHECK: &str = "Published counting rules, as a cross-check";
/// Walls.
pub const WALLS: &str = "Walls and openings";
/// Walls.
pub const WALLS_NOTE: &str = "What each wall takes of each line, in the line's own unit: parts of what it is bought in, not whole ones.";
/// Column of walls.
pub const WITHOUT_SIDING: &str = "Without siding";
/// Gables.
pub const GABLES: &str = "Walls and gables";
/// Gables.
pub const GABLES_NOTE: &str = "A gable is what lies above the lowest bottom of a wall's rakes; a course belongs where its butt line is, trim where its middle is.";
/// Column of gables.
pub const WALL_OR_GABLE: &str = "Wall or gable";
/// Totals of gables.
pub const BY_WALL_AND_GABLE: &str = "By wall and gable";

/// Where the least is bought in two stock lengths.
pub fn least_bought(unit: &str) -> String {
    format!("Least any layout buys, in {unit}")
}

/// What the priced lines cost.
pub fn priced(currency: Option<&str>) -> String {
    let currency = currency.map_or(String::new(), |c| format!(", {c}"));
    format!("Cost of the priced lines{currency}")
}

/// A place in the drawing.
pub fn place(x: f64, y: f64) -> String {
    format!("at ({x:.3}, {y:.3}) of the drawing")
}

/// The gap in force.
pub fn end_gap(piece: &str, gap: &str) -> String {
    format!("gap at {piece} ends in force: {gap}")
}

/// What is left of a line's stock.
pub fn left_over(usable: &str, scrap: &str) -> String {
    format!("; left over in usable lengths {usable}, short ends and saw cuts {scrap}")
}

/// How many lines of a takeoff have no price.
pub fn cost_note(takeoff: &Takeoff) -> String {
    match &takeoff.cost {
        None => super::report::NO_PRICE_LIST.to_owned(),
        Some(cost) => super::report::lines_without_price(cost.unpriced.len()),
    }
}

/// Who must act on a finding, or that there is nothing to do.
pub fn sort(f: &Finding) -> &'static str {
    match (f.severity(), f.audience()) {
        (Severity::Info, _) => "noted",
        (_, Audience::Architect) => "for the architect",
        (_, Audience::Office) => "for the office",
        (_, Audience::Crew) => "for the crew",
    }
}

/// Heading over the count of findings that someone must act on.
pub fn open_findings(audience: Audience) -> &'static str {
    match audience {
        Audience::Architect => "Open questions for the architect (see Assumptions)",
        Audience::Office => "For the office (see Assumptions)",
        Audience::Crew => "For the crew (see Assumptions)",
    }
}

/// Where a printed table of settings ends.
pub const DEFAULTS_FOLLOW: &str =
    "Every other setting is at its default; the file lists them below, with their sources.";
