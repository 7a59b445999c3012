//! Pictures of sheets: each sheet is read back once, and the writers work beside one another.

use super::file::OutputFile;
#[cfg(feature = "pdf")]
use super::pdf;
#[cfg(feature = "png")]
use super::png;
use crate::cores;
use crate::finding::files::WriterFault;
use crate::layout::Layout;
use crate::model::sheet::Sheet;
use crate::write::svg_tree::{SheetTree, tree};

/// A writer of pictures: given the layout, its sheets, and each of them read back.
type Peer = fn(&Layout, &[Sheet], &[SheetTree]) -> Result<Vec<OutputFile>, WriterFault>;

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
    let trees: Result<Vec<SheetTree>, WriterFault> =
        cores::each(svgs, |svg| tree(svg)).into_iter().collect();
    let trees = trees?;
    let made = cores::each(PEERS, |peer| peer(layout, sheets, &trees));
    Ok(made.into_iter().collect::<Result<Vec<_>, WriterFault>>()?.into_iter().flatten().collect())
}
