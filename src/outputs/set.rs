//! All files of one set.

use super::file::{OutputFile, write_failed};
use super::{sheets, tables};
use crate::annotate;
use crate::cores;
use crate::finding::Refusal;
use crate::layout::set::LaidSet;
use crate::write::svg;

/// Every file of a set; its takeoff may carry the user's prices. Without `pictures` neither PDF nor
/// PNG is made.
///
/// # Errors
/// `write-failed` when a writer cannot make its file; `threads-missing`.
pub fn files(set: &LaidSet, source: &[u8], pictures: bool) -> Result<Vec<OutputFile>, Refusal> {
    #[cfg(feature = "xlsx")]
    super::workbook::can_be_made()?;
    let LaidSet { layout, backdrops, .. } = set;
    // Tables, overlay and sheets do not depend on one another; their order is kept.
    let (tables, (pages, svgs)) = cores::both(
        || tables::files(set, source),
        || {
            let pages = annotate::sheets(layout, backdrops);
            let svgs: Vec<String> = cores::each(&pages, svg::document);
            (pages, svgs)
        },
    );
    let mut out = tables.map_err(write_failed)?;
    if pictures {
        out.extend(sheets::pictures(layout, &pages, &svgs).map_err(write_failed)?);
    }
    out.extend(sheets::svg_files(&pages, svgs));
    Ok(out)
}
