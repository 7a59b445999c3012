//! A comparison of two layouts as report, tables and workbook say it: heads, names of rows, and walls.

use crate::model::change::WallEffect;
use crate::model::ids::ElevationName;

/// Which of the two drawings: the old, the new; at the beginning of a line.
pub const DRAWINGS: [&str; 2] = ["Old", "New"];
/// The same in a sentence.
pub const WHICH: [&str; 2] = ["old", "new"];
/// Sheets of the workbook.
pub const SHEETS: [&str; 3] = ["Changes", "By wall", "Order"];
/// Columns of the walls in the workbook.
pub const WALL_COLUMNS: [&str; 6] = ["Wall", "What", "Unit", "Before", "After", "More"];
/// Rows of a wall there.
pub const NET_AREA: &str = "net area";
/// The same.
pub const COURSES: &str = "courses";
/// The same.
pub const PIECES: &str = "pieces";
/// The same: pieces that stay.
pub const ALIKE: &str = "cut alike";

/// Heads of the walls in the report.
pub fn wall_heads(area_unit: &str) -> [String; 5] {
    ["wall".to_owned(), format!("net {area_unit}"), COURSES.into(), PIECES.into(), ALIKE.into()]
}

/// Heads of the order in the report: of what to order more, or of what is over; the last stays empty without prices.
pub fn order_heads(more: bool, priced: bool) -> [&'static str; 6] {
    let by = if more { "more" } else { "over" };
    ["item", "was", "is", by, "unit", if priced { "cost" } else { "" }]
}

/// Over the costs in the workbook.
pub fn cost_head(currency: &str) -> String {
    format!("Cost {currency}")
}

/// Over the changes of one elevation, with the zone where it is of one.
pub fn changes_of(elevation: Option<&ElevationName>, zone: Option<&str>) -> String {
    let name = elevation.map(|e| e.to_string()).unwrap_or_default();
    let zone = zone.map(|z| format!(", zone {z}")).unwrap_or_default();
    format!("{name}{zone}")
}

/// A wall's name: the new one, and the old one where it had another.
pub fn wall_name(w: &WallEffect) -> String {
    let zone = w.zone.as_ref().map(|z| format!(" ({z})")).unwrap_or_default();
    let name = match (&w.old, &w.new) {
        (Some(old), Some(new)) if old == new => new.to_string(),
        (Some(old), Some(new)) => format!("{new} (was {old})"),
        (None, Some(new)) => format!("{new}, new"),
        (Some(old), None) => format!("{old}, gone"),
        (None, None) => String::new(),
    };
    name + &zone
}

/// A number before and after; once where it stays.
pub fn before_after(before: String, after: String) -> String {
    if before == after { after } else { format!("{before} -> {after}") }
}
