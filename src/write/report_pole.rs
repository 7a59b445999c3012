//! The datum in the report: what is in force, and what else could be.

use super::text::{bullets, titled};
use crate::language::Language;
use crate::layout::Layout;
use crate::wording::pole as words;

pub(super) fn datum(layout: &Layout) -> String {
    let style = layout.job.sheet.lengths;
    let pole = &layout.story_pole;
    if pole.choices.is_empty() {
        return String::new();
    }
    let choices = pole.choices.iter();
    let lines: Vec<String> = choices
        .map(|c| {
            words::choice(Language::English, c, &style.length(c.datum), layout.reworked(), style)
        })
        .collect();
    titled(&words::heading(pole).to_uppercase(), &bullets(lines.iter().map(String::as_str)))
}
