//! The order of work in the report.

use super::report::{plain, titled, wrapped};
use crate::layout::Layout;
use crate::wording::work;

pub(super) fn order(layout: &Layout) -> String {
    if layout.work.walls.is_empty() {
        return String::new();
    }
    let style = layout.job.sheet.lengths;
    let mut out = format!("  {}\n", work::PRECEDENCE);
    for rule in &layout.work.everywhere {
        out.push_str(&wrapped(&format!("- {}", plain(&work::rule(rule, style))), "    "));
        out.push('\n');
    }
    for w in &layout.work.walls {
        out.push_str(&format!("  {}: {}\n", plain(&w.wall), plain(&w.elevation)));
        for (i, step) in work::steps(w, style).iter().enumerate() {
            out.push_str(&wrapped(&format!("{}. {}", i + 1, plain(step)), "    "));
            out.push('\n');
        }
    }
    titled("ORDER OF WORK", &out)
}
