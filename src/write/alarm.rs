//! That the check failed, in plain text: a bar that is seen without color.

use super::text::{WIDTH, wrapped};
use crate::clean::terminal;
use crate::language::Language;
use crate::layout::Layout;
use crate::layout::verified::Verify;
use crate::units::LengthStyle;
use crate::wording::checks;

/// Most places listed on a terminal; the report holds more.
const MOST_LISTED: usize = 20;

/// The bar over what is written of a layout that breaks rules; empty where it keeps them.
pub fn bar(verify: &Verify) -> String {
    if verify.passes() {
        return String::new();
    }
    let rule = "#".repeat(WIDTH);
    format!("{rule}\n#  {}\n{rule}\n", checks::bar(Language::English, verify.places()))
}

/// What standard error is told, whether it is to be quiet or not; empty where every rule is kept.
pub fn alarm(layout: &Layout) -> String {
    if layout.verify.passes() {
        return String::new();
    }
    wrapped(&terminal(&checks::alarm(layout)), "") + "\n"
}

/// Every place in words, as `check` lists them.
pub fn places(verify: &Verify, style: LengthStyle) -> String {
    let mut out = String::new();
    for (number, v) in verify.numbered().take(MOST_LISTED) {
        let words = format!(
            "{}: {}",
            checks::mark(Language::English, number),
            checks::in_full(Language::English, v, style)
        );
        out.push_str(&wrapped(&terminal(&words), "  "));
        out.push('\n');
    }
    if let Some(more) = verify.places().checked_sub(MOST_LISTED).filter(|n| *n > 0) {
        out.push_str(&format!("  {}\n", checks::and_more(Language::English, more)));
    }
    out
}
