//! Sheets as files.

use super::file::OutputFile;
#[cfg(feature = "pdf")]
use super::pdf;
#[cfg(feature = "png")]
use super::png;
use crate::finding::files::WriterFault;
use crate::layout::Layout;
use crate::model::sheet::Sheet;

/// A writer of sheets: given the layout, its sheets, and each of them as SVG.
type Peer = fn(&Layout, &[Sheet], &[String]) -> Result<Vec<OutputFile>, WriterFault>;

/// The writers of pictures, in the order of their files.
const PEERS: &[Peer] = &[
    #[cfg(feature = "pdf")]
    pdf::sheets,
    #[cfg(feature = "png")]
    png::sheets,
];

/// The sheets by every writer of pictures.
pub(super) fn pictures(
    layout: &Layout,
    sheets: &[Sheet],
    svgs: &[String],
) -> Result<Vec<OutputFile>, WriterFault> {
    let each = PEERS.iter().map(|peer| peer(layout, sheets, svgs));
    Ok(each.collect::<Result<Vec<_>, WriterFault>>()?.into_iter().flatten().collect())
}

/// The sheets as SVG, a file each.
pub(super) fn svg_files(sheets: &[Sheet], svgs: Vec<String>) -> Vec<OutputFile> {
    let name = |s: &Sheet| format!("sheets/{}.svg", s.name);
    sheets.iter().zip(svgs).map(|(s, svg)| (name(s), svg.into_bytes())).collect()
}
