//! The story pole as a table, and the datum with what else could be.

use super::columns::Rows;
use super::style::TEXT;
use crate::language::SheetLanguage;
use crate::layout::Layout;
use crate::model::pole::{LineKind, PoleLine};
use crate::wording::pole as words;
use crate::wording::sheet_lengths::{length, short};
use crate::wording::sheets;

/// Room between the table's columns.
const APART: f64 = 0.12;

/// Adds both to a list.
pub(super) fn rows(out: &mut Rows, layout: &Layout) {
    if layout.story_pole.lines.is_empty() {
        return;
    }
    choices(out, layout);
    table(out, layout);
}

fn choices(out: &mut Rows, layout: &Layout) {
    let say = layout.job.sheet.language;
    let pole = &layout.story_pole;
    out.head(&say.word(sheets::DATUM), "");
    out.text(&say.block(|lang| words::search(lang, pole)));
    let style = layout.job.sheet.lengths;
    for c in &pole.choices {
        out.text(&say.block(|lang| {
            words::choice(lang, c, &length(style, c.datum), layout.reworked(), style)
        }));
    }
    out.text(&say.sentence(words::STRIKE));
}

fn table(out: &mut Rows, layout: &Layout) {
    let say = layout.job.sheet.language;
    let style = layout.job.sheet.lengths;
    out.head(&say.word(sheets::LINES_TOP_DOWN), "");
    let heads = say.each().iter().map(|lang| sheets::LINE_HEADS.map(|h| h.of(*lang).to_owned()));
    let heads: Vec<[String; 4]> = heads.collect();
    // Butt lines stand on the stick.
    let told = |l: &&PoleLine| l.kind != LineKind::Butt;
    let lines: Vec<&PoleLine> = layout.story_pole.lines.iter().rev().filter(told).collect();
    let figures = |l: &&PoleLine| {
        let over = if l.over == 0.0 { String::new() } else { short(style, l.over) };
        [length(style, l.height), l.course.to_string(), over, String::new()]
    };
    let rows: Vec<[String; 4]> = lines.iter().map(figures).collect();
    let columns = distances(&heads, &rows);
    let at = |cells: &[String; 4]| -> Vec<(f64, String)> {
        columns.into_iter().zip(cells.iter().cloned()).collect()
    };
    for head in &heads {
        out.ticked_cells(0, &at(head), true);
    }
    for (l, row) in lines.iter().zip(&rows) {
        out.columns(&at(row), &what(say, l));
    }
}

/// Where the table's columns begin: what stands at a height gets all the room that figures leave.
fn distances(heads: &[[String; 4]], rows: &[[String; 4]]) -> [f64; 4] {
    let wide = |column: usize| {
        let of = |rows: &[[String; 4]], bold: bool| {
            let cells = rows.iter().filter_map(|r| r.get(column));
            cells.map(|t| crate::typeface::width(t, TEXT, bold)).fold(0.0, f64::max)
        };
        of(heads, true).max(of(rows, false)) + APART
    };
    let mut out = [0.0; 4];
    let mut x = 0.0;
    for (column, at) in out.iter_mut().enumerate() {
        *at = x;
        x += wide(column);
    }
    out
}

fn what(say: SheetLanguage, l: &PoleLine) -> String {
    format!("{}: {}", say.word(words::line(l.kind)), l.names.join(", "))
}
