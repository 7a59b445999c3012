//! What holds on every wall: order of work, fasteners and movement, safety.

use super::columns::Rows;
use crate::layout::Layout;
use crate::wording::{cautions, movement, nails, sheets, work};

/// Adds it to a list.
pub(super) fn rows(out: &mut Rows, layout: &Layout) {
    let style = layout.job.sheet.lengths;
    if !layout.work.walls.is_empty() {
        out.head(sheets::ON_EVERY_WALL, "");
        out.text(work::PRECEDENCE);
        for rule in &layout.work.everywhere {
            out.text(&format!("- {}", work::rule(rule, style)));
        }
    }
    out.head(sheets::FASTENERS_AND_MOVEMENT, "");
    let movement = movement::sentences(&layout.movement, style);
    for line in nails::sentences(&layout.fastening, &layout.job).iter().chain(&movement) {
        out.text(&format!("- {line}"));
    }
    out.head(sheets::BEFORE_YOU_CLIMB, "");
    for c in cautions::BEFORE_CLIMBING {
        out.text(c);
    }
}
