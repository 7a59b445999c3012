//! The order of work in the report.

use super::text::{titled, wrapped};
use crate::clean::terminal;
use crate::language::Language;
use crate::layout::Layout;
use crate::wording::{offcuts, work};

pub(super) fn order(layout: &Layout) -> String {
    if layout.work.walls.is_empty() {
        return String::new();
    }
    let style = layout.job.sheet.lengths;
    let mut out = format!("  {}\n", work::PRECEDENCE.en);
    for rule in &layout.work.everywhere {
        out.push_str(&wrapped(
            &format!("- {}", terminal(&work::rule(Language::English, rule, style))),
            "    ",
        ));
        out.push('\n');
    }
    for w in &layout.work.walls {
        out.push_str(&format!("  {}: {}\n", terminal(&w.wall), terminal(&w.elevation)));
        for (i, step) in work::steps(Language::English, w, style).iter().enumerate() {
            out.push_str(&wrapped(&format!("{}. {}", i + 1, terminal(step)), "    "));
            out.push('\n');
        }
        for line in offcuts::saw(&w.saw, layout.job.product.kind.piece(), style) {
            out.push_str(&wrapped(&format!("- {}", terminal(&line)), "    "));
            out.push('\n');
        }
    }
    titled(crate::wording::report::ORDER_OF_WORK, &out)
}
