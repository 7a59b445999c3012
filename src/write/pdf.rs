//! All sheets as one PDF: real text in a subset of the vendored typeface, bookmarks, page labels,
//! document properties, the same bytes for the same sheets.

use krilla::Document;
use krilla::destination::XyzDestination;
use krilla::geom::{Point, Size};
use krilla::metadata::Metadata;
use krilla::outline::{Outline, OutlineNode};
use krilla::page::{PageLabel, PageSettings};
use krilla_svg::{SurfaceExt, SvgSettings};

use super::svg_tree::{SheetTree, tree};
use crate::cores;
use crate::finding::files::WriterFault;
use crate::model::sheet::Sheet;

/// The sheets as PDF. `svgs` are the same sheets as SVG, in order.
///
/// # Errors
/// When a sheet cannot be read back or the file cannot be made.
pub fn document(
    sheets: &[Sheet],
    svgs: &[String],
    title: &str,
    author: &str,
) -> Result<Vec<u8>, WriterFault> {
    let trees: Result<Vec<SheetTree>, WriterFault> =
        cores::each(svgs, |svg| tree(svg)).into_iter().collect();
    of_trees(sheets, &trees?, title, author)
}

/// The same of sheets that are read already.
///
/// # Errors
/// When the file cannot be made.
pub fn of_trees(
    sheets: &[Sheet],
    trees: &[SheetTree],
    title: &str,
    author: &str,
) -> Result<Vec<u8>, WriterFault> {
    let mut doc = Document::new();
    let mut outline = Outline::new();
    for (i, (sheet, SheetTree(tree))) in sheets.iter().zip(trees).enumerate() {
        let (w, h) = ((sheet.width * 72.0) as f32, (sheet.height * 72.0) as f32);
        // A page is called what its own file is called.
        let label = PageLabel::new(None, Some(sheet.name.clone()), None);
        let settings = PageSettings::from_wh(w, h)
            .ok_or(WriterFault::SheetWithoutSize)?
            .with_page_label(label);
        let mut page = doc.start_page_with(settings);
        let mut surface = page.surface();
        let size = Size::from_wh(w, h).ok_or(WriterFault::SheetWithoutSize)?;
        surface.draw_svg(tree, size, SvgSettings::default()).ok_or(WriterFault::SheetNotDrawn)?;
        surface.finish();
        page.finish();
        let top = XyzDestination::new(i, Point::from_xy(0.0, 0.0));
        outline.push_child(OutlineNode::new(sheet.title.clone(), top));
    }
    doc.set_outline(outline);
    let mut about = Metadata::new()
        .title(title.to_owned())
        .description(crate::wording::report::set_of_sheets(sheets.len()))
        .keywords(
            ["siding", "layout", "elevations", "cut list", "takeoff"].map(str::to_owned).to_vec(),
        )
        .creator("Lapwright".to_owned())
        .language("en".to_owned());
    if !author.is_empty() {
        about = about.authors(vec![author.to_owned()]);
    }
    doc.set_metadata(about);
    doc.finish().map_err(|e| WriterFault::of(format_args!("{e:?}")))
}
