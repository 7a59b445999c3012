//! Headings and sentences of the report.

use crate::language::Language;
use std::collections::BTreeMap;

use super::source as words;
use crate::job::Job;
use crate::layout::wall::{LaidWall, LaidZone};
use crate::model::item::Item;
use crate::model::receiver::BareBy;
use crate::model::source::Source;
use crate::model::takeoff::OrderLine;
use crate::model::trim::TrimStock;
use crate::units::{LengthStyle, counted};
use crate::wording::lists::joined;
use crate::wording::takeoff::items;
use crate::wording::{names, siding};

/// Its title.
pub const TITLE: &str = "LAPWRIGHT REPORT";
/// Heading over other cladding.
pub const OTHER_CLADDING: &str = "OTHER CLADDING, MEASURED BY AREA";
/// Heading over how lines of the takeoff came about.
pub const BASIS: &str = "BASIS OF QUANTITIES";
/// Heading over ways of counting.
pub const COMPARISON: &str = "COMPARISON";
/// Heading over published rules.
pub const CROSS_CHECK: &str = "PUBLISHED COUNTING RULES, AS A CROSS-CHECK";
/// Heading over what is left of stock.
pub const USE_AND_WASTE: &str = "USE AND WASTE";
/// Heading over what the office reads.
pub const ORDERING_NOTES: &str = "ORDERING NOTES";
/// Heading over nails and weather.
pub const FASTENERS: &str = "FASTENERS AND MOVEMENT";
/// Heading over the order of work.
pub const ORDER_OF_WORK: &str = "ORDER OF WORK";
/// Column of the comparison.
pub const WAY_OF_COUNTING: &str = "way of counting";
/// Column of use and waste.
pub const ON_WALL: &str = "on the wall";
/// Column of the comparison.
pub const AGAINST_LAYOUT: &str = "against this layout";

/// Heading over the one order.
pub const ONE_ORDER: &str = "ONE ORDER FOR THE HOUSE AND ITS ZONES";
/// Column of it.
pub const FOR_SETS: &str = "for";
/// What it is.
pub const ONE_ORDER_NOTE: &str = "Buy by this list: what the house and its zones share is summed before it is rounded up to boxes, rolls, cartons and spare lengths. Their own tables say what each takes.";

/// What a line of the one order is of, with the siding it is made for and its color where the job names
/// one.
pub fn order_item(l: &OrderLine, job: &Job) -> String {
    let mut out = items::item(Language::English, &l.item, job.sheet.lengths);
    let made_for = match l.item.spared().as_ref().unwrap_or(&l.item) {
        Item::Panels { .. } | Item::Cartons { .. } | Item::Squares => true,
        Item::Trim { stock, .. } => *stock == TrimStock::Starter,
        _ => false,
    };
    if made_for {
        let zone = l.sets.first().and_then(|s| s.zone.as_ref());
        let own = zone.and_then(|z| job.zone.iter().find(|own| own.name == *z)?.product.as_ref());
        let kind = own.unwrap_or(&job.product).kind;
        out.push_str(&format!(", {}", siding::name(kind).en));
    }
    if !l.color.is_empty() {
        out.push_str(&format!(", {}", l.color));
    }
    out
}

/// The sets that take of a line: one by its name, several by their number.
pub fn order_sets(l: &OrderLine) -> String {
    match l.sets.as_slice() {
        [one] => one.zone.clone().unwrap_or_else(|| "house".to_owned()),
        all => format!("{} sets", all.len()),
    }
}

/// Where the drawing comes from.
pub fn drawing(name: &str, sha256: &str) -> String {
    format!("Drawing: {name} (SHA-256 {})", sha256.get(..16).unwrap_or(""))
}

/// The unit, and whether anything proves it.
pub fn unit(source: &Source) -> String {
    let proof = if source.unit_proved {
        "evidence in the drawing agrees"
    } else {
        "nothing in the drawing proves it: check one length"
    };
    format!(
        "Unit: {}, taken by {}; {proof}.",
        words::unit(Language::English, source),
        words::unit_basis(source.unit_basis).en
    )
}

/// A part of a wall with another cladding.
pub fn zone(z: &LaidZone, elevation: &str, style: LengthStyle) -> String {
    format!(
        "{} on {elevation}, {}: {} {}; {:.1} {} net, {:.1} gross.",
        z.zone,
        z.id,
        siding::cladding(Language::English, z),
        if z.laid_out { "is a set of its own" } else { "is not laid out here" },
        style.area(z.net_area),
        style.area_unit(),
        style.area(z.gross_area)
    )
}

/// What of a wall gets no siding; nothing where it is sided all over. What lies outside its gross area is told
/// apart: the rest and the openings are what net area lacks of gross.
pub fn bare_wall(w: &LaidWall, style: LengthStyle) -> Option<String> {
    let mut by: BTreeMap<BareBy, f64> = BTreeMap::new();
    w.bare.iter().for_each(|b| *by.entry(b.by).or_default() += b.area);
    let each = |(by, area): (&BareBy, &f64)| {
        format!("{:.1} {} {}", style.area(*area), style.area_unit(), names::bare(*by))
    };
    let beyond = |by: &BareBy| matches!(by, BareBy::BehindRoof | BareBy::StopsShort);
    let told = |outside: bool, what: &str| {
        let mine: Vec<String> = by.iter().filter(|(k, _)| beyond(k) == outside).map(each).collect();
        (!mine.is_empty()).then(|| format!("{what}: {}", joined(&mine)))
    };
    let parts: Vec<String> = told(false, "not in its net area")
        .into_iter()
        .chain(told(true, "outside its gross area"))
        .collect();
    (!parts.is_empty()).then(|| format!("{} without siding, {}.", w.id, parts.join("; ")))
}

/// A broken seam rule by its mark.
pub fn break_at(lang: Language, mark: &str, elevation: &str, fault: &str) -> String {
    say!(lang, "{}, fails on {}: {}.", "{}, falla en {}: {}.", mark, elevation, fault)
}

/// What is usable of leftovers.
pub fn usable(shortest: f64, style: LengthStyle) -> String {
    format!(
        "Usable: {} or longer, the shortest piece of this job. Scrap: shorter ends and saw cuts; rips, notches and rake cuts are not in it.",
        style.short(shortest)
    )
}

/// A layout in one line.
pub fn in_one_line(drawing: &str, elevations: usize, walls: usize, net: f64) -> String {
    format!(
        "{drawing}: {}, {}, {net:.1} sq ft net",
        counted(elevations, "elevation"),
        counted(walls, "wall")
    )
}

/// What a set of sheets is, for a reader of documents.
pub fn set_of_sheets(count: usize) -> String {
    format!("Siding layout on {count} sheets")
}

/// Heading over prices.
pub fn cost_heading(currency: &str) -> String {
    format!("COST AT THE PRICES GIVEN ({currency})")
}

/// Under the priced lines.
pub const PRICED_TOTAL: &str = "total of the priced lines";
/// The total with tax.
pub const WITH_TAX: &str = "total with tax";

/// Tax on priced materials.
pub fn tax(percent: f64) -> String {
    format!("sales tax on materials, {percent} %, labor left out")
}

/// Lines that no price was given for.
pub const WITHOUT_PRICE: &str = "Without a price";
/// Prices that no line has.
pub const PRICES_NOT_USED: &str = "Prices not used";
/// No price list.
pub const NO_PRICE_LIST: &str = "no price list was given";

/// How many lines have no price.
pub fn lines_without_price(count: usize) -> String {
    format!("{count} lines without a price")
}
