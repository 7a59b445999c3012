//! `measured.csv`: lengths to tape, with a blank for each; the same table filled in is read back.

use super::csv_cell::{Cell, count, number, table, text};
use crate::language::Language;
use crate::model::measure::Measure;
use crate::units::LengthStyle;
use crate::wording::measures as words;

/// The table, worst first.
pub fn csv(all: &[Measure], style: LengthStyle) -> Vec<u8> {
    let head: Vec<String> = words::COLUMNS.iter().map(|c| (*c).to_owned()).collect();
    let rows = all.iter().map(|m| {
        vec![
            text(m.elevation.as_str()),
            text(m.wall.as_str()),
            text(m.name.as_str()),
            text(words::what(Language::English, m)),
            text(style.length(m.drawn)),
            Cell::BLANK,
            count(m.spoils.pieces as i128),
            number((m.spoils.length / 12.0 * 10.0).round() / 10.0),
        ]
    });
    table(&head, rows)
}
