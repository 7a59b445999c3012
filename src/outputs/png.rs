//! Sheets as pictures.

use super::file::{OutputFile, pictured};
use crate::cores;
use crate::finding::files::WriterFault;
use crate::layout::Layout;
use crate::model::sheet::Sheet;
use crate::write::png;

/// Dots to the inch: 3/32 in capitals are then 14 dots high.
const DOTS_PER_INCH: f64 = 150.0;

/// A picture of each sheet; of a large set, none.
pub(super) fn sheets(
    _: &Layout,
    sheets: &[Sheet],
    svgs: &[String],
) -> Result<Vec<OutputFile>, WriterFault> {
    if !pictured(sheets.len()) {
        return Ok(Vec::new());
    }
    // Pictures do not depend on one another; their order is kept.
    let pictures: Result<Vec<Vec<u8>>, WriterFault> =
        cores::each(svgs, |svg| png::picture(svg, DOTS_PER_INCH)).into_iter().collect();
    let named = sheets.iter().zip(pictures?);
    Ok(named.map(|(sheet, png)| (format!("sheets/{}.png", sheet.name), png)).collect())
}
