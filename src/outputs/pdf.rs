//! Files in PDF.

use super::file::OutputFile;
use crate::finding::files::WriterFault;
use crate::layout::Layout;
use crate::model::sheet::Sheet;
use crate::write::pdf;
use crate::write::svg_tree::SheetTree;

/// Every sheet in one file.
pub(super) fn sheets(
    layout: &Layout,
    sheets: &[Sheet],
    trees: &[SheetTree],
) -> Result<Vec<OutputFile>, WriterFault> {
    let project = &layout.job.title.project;
    let title = if project.is_empty() { &layout.drawing.name } else { project };
    let bytes = pdf::of_trees(sheets, trees, title, &layout.job.title.drawn_by)?;
    Ok(vec![("sheets.pdf".to_owned(), bytes)])
}

/// One page by itself, called as it is.
pub(super) fn page(page: &Sheet, svg: &str) -> Result<OutputFile, WriterFault> {
    let svgs = [svg.to_owned()];
    let bytes = pdf::document(std::slice::from_ref(page), &svgs, &page.title, "")?;
    Ok((format!("{}.pdf", page.name), bytes))
}
