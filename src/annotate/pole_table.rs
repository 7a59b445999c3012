//! The story pole as a table, and the datum with what else could be.

use super::columns::Rows;
use crate::layout::Layout;
use crate::model::pole::{LineKind, PoleLine};
use crate::wording::pole as words;
use crate::wording::sheet_lengths::{length, short};
use crate::wording::sheets;

/// Distances of the table's columns.
const COLUMNS: [f64; 4] = [0.0, 0.92, 1.44, 2.14];

/// Adds both to a list.
pub(super) fn rows(out: &mut Rows, layout: &Layout) {
    if layout.story_pole.lines.is_empty() {
        return;
    }
    choices(out, layout);
    table(out, layout);
}

fn choices(out: &mut Rows, layout: &Layout) {
    let pole = &layout.story_pole;
    out.head(sheets::DATUM, "");
    out.text(&words::search(pole));
    let style = layout.job.sheet.lengths;
    for c in &pole.choices {
        out.text(&words::choice(c, &length(style, c.datum), layout.reworked(), style));
    }
    out.text(words::STRIKE);
}

fn table(out: &mut Rows, layout: &Layout) {
    let style = layout.job.sheet.lengths;
    out.head(sheets::LINES_TOP_DOWN, "");
    let at = |cells: [&str; 4]| -> Vec<(f64, String)> {
        COLUMNS.into_iter().zip(cells.map(str::to_owned)).collect()
    };
    out.ticked_cells(0, &at(sheets::LINE_HEADS), true);
    // Butt lines stand on the stick.
    let told = |l: &&PoleLine| l.kind != LineKind::Butt;
    for l in layout.story_pole.lines.iter().rev().filter(told) {
        let height = length(style, l.height);
        let course = l.course.to_string();
        let over = if l.over == 0.0 { String::new() } else { short(style, l.over) };
        out.columns(&at([&height, &course, &over, ""]), &what(l));
    }
}

fn what(l: &PoleLine) -> String {
    format!("{}: {}", words::line(l.kind), l.names.join(", "))
}
