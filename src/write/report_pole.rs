//! The datum in the report: what is in force, and what else could be.

use super::report::{bullets, titled};
use crate::layout::Layout;

pub(super) fn datum(layout: &Layout) -> String {
    let style = layout.job.sheet.lengths;
    let pole = &layout.story_pole;
    if pole.choices.is_empty() {
        return String::new();
    }
    let lines: Vec<String> = pole
        .choices
        .iter()
        .map(|c| {
            let what = if c.chosen { "in force" } else { "or" };
            format!("{what}: {}, {:.1} points: {}.", style.length(c.datum), c.score, c.words)
        })
        .collect();
    let title = format!(
        "DATUM, {} HEIGHTS TRIED (points count against; all lines: story-pole.csv)",
        pole.tried
    );
    titled(&title, &bullets(lines.iter().map(String::as_str)))
}
