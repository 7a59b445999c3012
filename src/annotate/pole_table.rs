//! The story pole as a table, and the datum with what else could be.

use super::columns::Rows;
use crate::language::SheetLanguage;
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
    let at =
        |cells: [String; 4]| -> Vec<(f64, String)> { COLUMNS.into_iter().zip(cells).collect() };
    for lang in say.each() {
        out.ticked_cells(0, &at(sheets::LINE_HEADS.map(|h| h.of(*lang).to_owned())), true);
    }
    // Butt lines stand on the stick.
    let told = |l: &&PoleLine| l.kind != LineKind::Butt;
    for l in layout.story_pole.lines.iter().rev().filter(told) {
        let height = length(style, l.height);
        let course = l.course.to_string();
        let over = if l.over == 0.0 { String::new() } else { short(style, l.over) };
        out.columns(&at([height, course, over, String::new()]), &what(say, l));
    }
}

fn what(say: SheetLanguage, l: &PoleLine) -> String {
    format!("{}: {}", say.word(words::line(l.kind)), l.names.join(", "))
}
