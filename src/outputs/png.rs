//! Sheets as pictures.

use super::file::{OutputFile, pictured};
use crate::cores;
use crate::finding::files::WriterFault;
use crate::layout::Layout;
use crate::model::sheet::Sheet;
use crate::write::png;
use crate::write::svg_tree::SheetTree;

/// Dots to the inch: 3/32 in capitals are then 14 dots high.
const DOTS_PER_INCH: f64 = 150.0;

/// A picture of each sheet; of a large set, none, and none of patterns: a picture has no size on paper, and
/// they must be printed at theirs, from PDF or SVG.
pub(super) fn sheets(
    _: &Layout,
    sheets: &[Sheet],
    trees: &[SheetTree],
) -> Result<Vec<OutputFile>, WriterFault> {
    if !pictured(sheets.len()) {
        return Ok(Vec::new());
    }
    let drawn: Vec<(&Sheet, &SheetTree)> =
        sheets.iter().zip(trees).filter(|(s, _)| !s.full_size).collect();
    // Pictures do not depend on one another; their order is kept.
    let pictures: Result<Vec<Vec<u8>>, WriterFault> =
        cores::each(&drawn, |(_, tree)| png::of_tree(tree, DOTS_PER_INCH)).into_iter().collect();
    let named = drawn.iter().zip(pictures?);
    Ok(named.map(|((sheet, _), png)| (format!("sheets/{}.png", sheet.name), png)).collect())
}
