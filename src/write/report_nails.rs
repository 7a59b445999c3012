//! Nails and movement in the report.

use super::text::{bullets, titled};
use crate::language::Language;
use crate::layout::Layout;
use crate::wording::{movement, nails};

pub(super) fn section(layout: &Layout) -> String {
    let mut lines = nails::sentences(Language::English, &layout.fastening, &layout.job);
    lines.extend(movement::sentences(
        Language::English,
        &layout.movement,
        layout.job.sheet.lengths,
    ));
    titled(crate::wording::report::FASTENERS, &bullets(lines.iter().map(String::as_str)))
}
