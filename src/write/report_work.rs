//! The order of work in the report.

use super::report::{plain, titled, wrapped};
use crate::layout::Layout;

pub(super) fn order(layout: &Layout) -> String {
    if layout.work.walls.is_empty() {
        return String::new();
    }
    let mut out = String::from(
        "  The makers' instructions, the local code and licensed practice go before it.\n",
    );
    for rule in &layout.work.everywhere {
        out.push_str(&wrapped(&format!("- {}", plain(rule)), "    "));
        out.push('\n');
    }
    for w in &layout.work.walls {
        out.push_str(&format!("  {}: {}\n", plain(&w.wall), plain(&w.elevation)));
        for (i, step) in w.steps.iter().enumerate() {
            out.push_str(&wrapped(&format!("{}. {}", i + 1, plain(step)), "    "));
            out.push('\n');
        }
    }
    titled("ORDER OF WORK", &out)
}
