//! PDF: pages printed from a drawing. Strokes, fills and words by pen, or by the layers that the file
//! keeps; lengths are points of paper, seventy-two to the inch.

mod base;
mod clip;
mod cost;
mod dashes;
mod pages;
mod pen;
mod printed;
mod sheet;
mod words;

use hayro_interpret::hayro_syntax::{LoadPdfError, Pdf};

use crate::finding::drawing::DrawingFinding;
use crate::finding::formats::PdfFault;
use crate::finding::{Findings, Refusal};
use crate::geom::vocabulary::Vec2;
use crate::model::drawing::{Dialect, Drawing};
use crate::model::pdf_base::PdfBase;
use crate::read::limits::Limits;

/// Room between pages that stand side by side, as a share of the first one's width: more than any gap
/// between the views of one sheet.
const APART: f64 = 0.5;

/// Reads the pages of a PDF that the limits name, or those that look like elevations, side by side.
///
/// # Errors
/// `pdf-unreadable` when it is locked or broken, `pdf-pages` when no page or no such page can be taken.
pub(super) fn drawing(
    bytes: &[u8],
    name: &str,
    limits: &Limits,
    findings: &mut Findings,
) -> Result<Drawing, Refusal> {
    let refused =
        |fault| Refusal::new(DrawingFinding::PdfUnreadable { name: name.to_owned(), fault });
    let pdf = Pdf::new(bytes.to_vec()).map_err(|e| {
        refused(match e {
            LoadPdfError::Decryption(_) => PdfFault::Locked,
            LoadPdfError::Invalid => PdfFault::Broken,
        })
    })?;
    let read = pages::read(&pdf, name, limits)?;
    read.tell(findings);
    let dialect = Dialect { format: "PDF".to_owned(), ..Dialect::default() };
    let mut out = Drawing { name: name.to_owned(), dialect, ..Drawing::default() };
    let mut x = 0.0;
    for page in read.taken {
        let width = page.size.x;
        page.put_into(&mut out, Vec2::new(x, 0.0));
        x += width * (1.0 + APART);
    }
    Ok(out)
}

/// What an update of the same pages needs to know of the file.
pub(super) fn base(bytes: &[u8], limits: &Limits) -> Option<PdfBase> {
    base::base(bytes, limits, APART)
}
