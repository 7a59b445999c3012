//! The files of a comparison.

use super::file::{OutputFile, write_failed};
#[cfg(feature = "pdf")]
use super::pdf;
#[cfg(feature = "png")]
use super::png;
use super::sheets::svg_files;
use crate::annotate;
use crate::cores;
use crate::finding::Refusal;
use crate::finding::files::WriterFault;
use crate::layout::set::{LaidSet, LaidSets};
use crate::model::change::Comparison;
use crate::model::sheet::Sheet;
use crate::write::{compare, json, svg};

/// Every file of a comparison: report, JSON, workbook, and the sheets of the new layout that it changes, those of a
/// zone in a folder of their own. Without `pictures` neither PDF nor PNG is made.
///
/// # Errors
/// `write-failed` when a writer cannot make its file; `threads-missing`.
pub fn files(
    new: &LaidSets,
    comparison: &Comparison,
    pictures: bool,
) -> Result<Vec<OutputFile>, Refusal> {
    let mut out = report(new, comparison);
    #[cfg(feature = "xlsx")]
    {
        super::workbook::can_be_made()?;
        let book =
            crate::write::xlsx::comparison(&new.house.layout, comparison).map_err(write_failed)?;
        out.push(("compare.xlsx".to_owned(), book));
    }
    let mut sheets = Vec::new();
    for set in new.iter() {
        let inner = super::names::set_folder(&set.layout);
        let own = annotate::revised(&set.layout, &set.backdrops, comparison);
        // A zone of which nothing is changed has the house's table alone.
        if inner.is_some() && own.iter().all(|s| s.name.contains("revisions")) {
            continue;
        }
        let files = drawn(set, &own, pictures && sheets.is_empty()).map_err(write_failed)?;
        let path = |n: String| inner.as_ref().map_or_else(|| n.clone(), |i| format!("{i}/{n}"));
        out.extend(files.into_iter().map(|(n, b)| (path(n), b)));
        sheets.extend(own);
    }
    Ok(out)
}

/// Report and JSON of a comparison alone.
pub fn report(new: &LaidSets, comparison: &Comparison) -> Vec<OutputFile> {
    let job = &new.house.layout.job;
    vec![
        ("compare.json".to_owned(), json::comparison(comparison)),
        ("compare.txt".to_owned(), compare::text(comparison, job).into_bytes()),
    ]
}

/// The sheets by every writer.
#[cfg_attr(
    not(any(feature = "pdf", feature = "png")),
    allow(unused_variables, clippy::unnecessary_wraps)
)]
fn drawn(set: &LaidSet, sheets: &[Sheet], pictures: bool) -> Result<Vec<OutputFile>, WriterFault> {
    let svgs: Vec<String> = cores::each(sheets, svg::document);
    let mut out = Vec::new();
    #[cfg(any(feature = "pdf", feature = "png"))]
    if pictures {
        let trees = cores::each(&svgs, |s| crate::write::svg_tree::tree(s));
        let trees = trees.into_iter().collect::<Result<Vec<_>, WriterFault>>()?;
        #[cfg(feature = "pdf")]
        {
            let named = pdf::sheets(&set.layout, sheets, &trees)?;
            out.extend(named.into_iter().map(|(_, bytes)| ("compare.pdf".to_owned(), bytes)));
        }
        #[cfg(feature = "png")]
        out.extend(png::sheets(&set.layout, sheets, &trees)?);
    }
    out.extend(svg_files(sheets, svgs));
    Ok(out)
}
