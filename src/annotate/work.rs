//! What holds on every wall: order of work, fasteners and movement, safety.

use super::columns::Rows;
use crate::layout::Layout;
use crate::wording::{cautions, movement, nails, sheets, work};

/// Adds it to a list.
pub(super) fn rows(out: &mut Rows, layout: &Layout) {
    let say = layout.job.sheet.language;
    let style = layout.job.sheet.lengths;
    if !layout.work.walls.is_empty() {
        out.head(&say.word(sheets::ON_EVERY_WALL), "");
        out.text(&say.sentence(work::PRECEDENCE));
        for rule in &layout.work.everywhere {
            out.text(&format!("- {}", say.block(|lang| work::rule(lang, rule, style))));
        }
    }
    out.head(&say.word(sheets::FASTENERS_AND_MOVEMENT), "");
    let movement = say.blocks(|lang| movement::sentences(lang, &layout.movement, style));
    let nails = say.blocks(|lang| nails::sentences(lang, &layout.fastening, &layout.job));
    for line in nails.iter().chain(&movement) {
        out.text(&format!("- {line}"));
    }
    out.head(&say.word(sheets::BEFORE_YOU_CLIMB), "");
    for c in cautions::BEFORE_CLIMBING {
        out.text(&say.sentence(c));
    }
}
