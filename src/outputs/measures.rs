//! The files that a house is taped by.

use super::file::OutputFile;
#[cfg(feature = "pdf")]
use super::file::write_failed;
use crate::annotate;
use crate::finding::Refusal;
use crate::layout::Layout;
use crate::model::measure::Measure;
use crate::write::{measures, svg};

/// Name of the table, as it goes out and comes back.
pub const TABLE: &str = "measured.csv";

/// The table with its blanks, and a sheet a wall, as SVG and as one PDF.
///
/// # Errors
/// `write-failed` when a sheet cannot be turned into a PDF.
pub fn files(layout: &Layout, all: &[Measure]) -> Result<Vec<OutputFile>, Refusal> {
    let pages = annotate::measures(layout, all);
    let svgs: Vec<String> = pages.iter().map(svg::document).collect();
    let mut out = vec![(TABLE.to_owned(), measures::csv(all, layout.job.sheet.lengths))];
    #[cfg(feature = "pdf")]
    if !pages.is_empty() {
        let title = &layout.drawing.name;
        let pdf = crate::write::pdf::document(&pages, &svgs, title, &layout.job.title.drawn_by);
        out.push(("measure.pdf".to_owned(), pdf.map_err(write_failed)?));
    }
    let named = |page: &crate::model::sheet::Sheet| format!("measure/{}.svg", page.name);
    out.extend(pages.iter().map(named).zip(svgs.into_iter().map(String::into_bytes)));
    Ok(out)
}
