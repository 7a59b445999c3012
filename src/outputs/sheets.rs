//! Sheets as files.

#[cfg(any(feature = "pdf", feature = "png"))]
pub(super) use super::drawn::pictures;
use super::file::OutputFile;
use crate::model::sheet::Sheet;

/// The sheets as SVG, a file each.
pub(super) fn svg_files(sheets: &[Sheet], svgs: Vec<String>) -> Vec<OutputFile> {
    let name = |s: &Sheet| format!("sheets/{}.svg", s.name);
    sheets.iter().zip(svgs).map(|(s, svg)| (name(s), svg.into_bytes())).collect()
}

/// None: this build makes no pictures.
#[cfg(not(any(feature = "pdf", feature = "png")))]
pub(super) fn pictures(
    _: &crate::layout::Layout,
    _: &[Sheet],
    _: &[String],
) -> Result<Vec<OutputFile>, crate::finding::files::WriterFault> {
    Ok(Vec::new())
}
