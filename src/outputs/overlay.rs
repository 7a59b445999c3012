//! The overlay: in a copy of the source, and as a drawing of its own.

use super::file::OutputFile;
use crate::annotate;
use crate::layout::Layout;
use crate::layout::backdrop::Backdrops;
use crate::layout::set::LaidSet;
use crate::write::overlay::{Measure, separate, spliced};
use crate::write::pdf_update::updated;

/// The overlay in a copy of the source; for a source that takes no splice (binary, or no DXF) a drawing of
/// its own on the same origin, with the source's lines on a layer beneath.
pub(super) fn in_source(layout: &Layout, backdrops: &Backdrops, source: &[u8]) -> OutputFile {
    let overlay = annotate::overlay(layout, backdrops);
    let whole = spliced(source, &overlay, measure(layout)).unwrap_or_else(|_| {
        let drawn = annotate::over_source(overlay, layout, backdrops);
        separate(&drawn, measure(layout))
    });
    ("overlay.dxf".to_owned(), whole)
}

/// The overlay on the pages of the PDF that the drawing came as; none of other sources.
pub(super) fn on_pages(
    layout: &Layout,
    backdrops: &Backdrops,
    source: &[u8],
) -> Option<OutputFile> {
    let base = backdrops.print()?;
    let overlay = annotate::overlay(layout, backdrops);
    let whole = updated(source, base, &overlay, measure(layout)).ok()?;
    Some(("overlay.pdf".to_owned(), whole))
}

/// The overlay as a drawing of its own, on the source's origin.
pub fn alone(laid: &LaidSet) -> OutputFile {
    let overlay = annotate::overlay(&laid.layout, &laid.backdrops);
    ("overlay-alone.dxf".to_owned(), separate(&overlay, measure(&laid.layout)))
}

/// How lengths of a layout's source read.
fn measure(layout: &Layout) -> Measure {
    Measure { inches: layout.drawing.inches_per_unit, style: layout.job.sheet.lengths }
}
