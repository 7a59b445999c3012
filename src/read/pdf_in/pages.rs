//! Which pages of a PDF are read.

use hayro_interpret::hayro_syntax::Pdf;

use super::printed::page;
use super::sheet::Sheet;
use crate::finding::drawing::DrawingFinding;
use crate::finding::formats::{PdfPageSeen, PdfPagesWhy};
use crate::finding::{Finding, Findings, Refusal};
use crate::model::elevation_words::{plain, says_elevation};
use crate::read::limits::Limits;

/// Most pages that are looked through where none is named.
const MOST_PAGES: usize = 40;
/// Most pages that are taken together where none has a title of an elevation.
const MOST_UNTITLED: usize = 4;
/// Strokes of a page with a drawing: a page of text alone has underlines and frames.
const DRAWN: usize = 50;

/// The pages taken, and what was seen of the others.
pub(super) struct Taken {
    pub(super) taken: Vec<Sheet>,
    others: Vec<PdfPageSeen>,
    pages: usize,
}

/// Reads the pages that are named, or those with a title of an elevation, or all where they are few.
pub(super) fn read(pdf: &Pdf, name: &str, limits: &Limits) -> Result<Taken, Refusal> {
    let pages = pdf.pages().len();
    let refused = |why, seen| {
        let name = name.to_owned();
        Refusal::new(DrawingFinding::PdfPages { name, pages, why, seen })
    };
    if let Some(beyond) = limits.pages.iter().find(|p| **p == 0 || **p > pages) {
        return Err(refused(PdfPagesWhy::Beyond { page: *beyond }, Vec::new()));
    }
    let named = !limits.pages.is_empty();
    if !named && pages > MOST_PAGES {
        return Err(refused(PdfPagesWhy::TooMany { most: MOST_PAGES }, Vec::new()));
    }
    let numbers: Vec<usize> =
        if named { limits.pages.iter().map(|p| p - 1).collect() } else { (0..pages).collect() };
    let all: Vec<Sheet> = numbers.into_iter().filter_map(|n| page(pdf, n, limits)).collect();
    let seen: Vec<PdfPageSeen> = all.iter().map(seen).collect();
    let drawn = |s: &Sheet| s.strokes() >= DRAWN && !s.too_much;
    let titled = all.iter().any(|s| drawn(s) && has_title(s));
    let wanted = |s: &Sheet| named || (drawn(s) && (!titled || has_title(s)));
    let (taken, rest): (Vec<Sheet>, Vec<Sheet>) = all.into_iter().partition(|s| wanted(s));
    if let Some(heavy) = taken.iter().find(|s| s.too_much) {
        return Err(refused(PdfPagesWhy::TooMuch { page: heavy.number }, seen));
    }
    if !taken.iter().any(drawn) {
        return Err(refused(PdfPagesWhy::NothingDrawn, seen));
    }
    if !named && !titled && taken.len() > MOST_UNTITLED {
        return Err(refused(PdfPagesWhy::NoTitle, seen));
    }
    let others = rest.iter().map(self::seen).collect();
    Ok(Taken { taken, others, pages })
}

fn has_title(sheet: &Sheet) -> bool {
    sheet.texts.iter().any(|t| says_elevation(&plain(&t.content)))
}

fn seen(sheet: &Sheet) -> PdfPageSeen {
    PdfPageSeen {
        page: sheet.number,
        strokes: sheet.strokes(),
        pictures: sheet.pictures,
        texts: sheet.texts.len(),
    }
}

impl Taken {
    /// Says which pages are read, which are not, and where letters say nothing.
    pub(super) fn tell(&self, findings: &mut Findings) {
        let taken: Vec<usize> = self.taken.iter().map(|s| s.number).collect();
        if self.pages > 1 {
            let (pages, others) = (self.pages, self.others.clone());
            let kind = DrawingFinding::PdfPagesRead { taken, pages, others };
            findings.push(Finding::new(kind));
        }
        let letters: usize = self.taken.iter().map(|s| s.mute).sum();
        if letters > 0 {
            findings.push(Finding::new(DrawingFinding::PdfLettersMute { letters }));
        }
    }
}
