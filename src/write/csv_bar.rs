//! The bar over tables in CSV.

use super::csv_cell;
use crate::language::Language;
use crate::layout::Layout;
use crate::wording::checks;

/// A table of a layout: one that breaks rules of the check says so in a row over its head, as wide as
/// the head, so that who opens it sees it and a program that reads it stops.
pub fn under_bar(layout: &Layout, table: Vec<u8>) -> Vec<u8> {
    if layout.verify.passes() {
        return table;
    }
    let mut head = csv::Reader::from_reader(table.as_slice());
    let columns = head.headers().map_or(1, |h| h.len().max(1));
    let mut row = vec![checks::bar_of_table(Language::English, layout.verify.places())];
    row.resize(columns, String::new());
    let mut out = csv_cell::table(&row, std::iter::empty());
    out.extend(table);
    out
}
