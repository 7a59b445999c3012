//! Nails and movement in the report.

use super::report::{bullets, titled};
use crate::layout::Layout;

pub(super) fn section(layout: &Layout) -> String {
    let lines = layout.fastening.words.iter().chain(&layout.movement.words);
    titled(crate::wording::report::FASTENERS, &bullets(lines.map(String::as_str)))
}
