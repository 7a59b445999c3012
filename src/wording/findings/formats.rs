//! Of a drawing that is a DWG or a PDF.

use super::finding_words::FindingWords;

use crate::finding::formats::{DwgFault, PdfFault, PdfPageSeen, PdfPagesWhy};
use crate::units::counted;

/// Pages that are listed one by one.
const LISTED: usize = 12;

pub(super) fn dwg_unreadable(name: &str, fault: &DwgFault) -> FindingWords {
    match fault {
        DwgFault::Version { version } => FindingWords::new(
            format!("{name} is a DWG of version {version}, which is not read"),
            "Save it as DWG of version 2000 to 2018 (AC1015 to AC1032), or as DXF.",
        ),
        DwgFault::Locked => FindingWords::new(
            format!("{name} is locked with a password"),
            "Save it without a password.",
        ),
        DwgFault::Broken => FindingWords::new(
            format!("{name} is a broken DWG: its parts do not fit together"),
            "Open it in the program that drew it, have it repaired there, and save it again; or save it as DXF.",
        ),
    }
}

pub(super) fn dwg_texts_lost(texts: usize) -> FindingWords {
    FindingWords::new(
        format!("{} of the DWG could not be read", counted(texts, "text")),
        "Titles and tags may be missing. Give views and names in the job, or save the drawing as DXF.",
    )
}

pub(super) fn unreadable(name: &str, fault: PdfFault) -> FindingWords {
    match fault {
        PdfFault::Locked => FindingWords::new(
            format!("{name} is locked with a password"),
            "Ask for a PDF without a password, or print it to a new PDF.",
        ),
        PdfFault::Broken => FindingWords::new(
            format!("{name} is a broken PDF: no pages can be found in it"),
            "Fetch it again or print it to a new PDF. Best ask the architect for the DWG or DXF.",
        ),
    }
}

pub(super) fn no_pages(
    name: &str,
    pages: usize,
    why: &PdfPagesWhy,
    seen: &[PdfPageSeen],
) -> FindingWords {
    let all = counted(pages, "page");
    let pick = "Name the pages with elevations: `--page 3`, or `pages = [3, 4]` under [drawing].";
    match why {
        PdfPagesWhy::Beyond { page } => {
            FindingWords::new(format!("{name} has {all}; there is no page {page}"), pick)
        }
        PdfPagesWhy::TooMany { most } => FindingWords::new(
            format!("{name} has {all}, more than the {most} that are looked through"),
            pick,
        ),
        PdfPagesWhy::TooMuch { page } => FindingWords::new(
            format!("page {page} of {name} asks for more than is read of a page"),
            "Ask the architect for the DWG or DXF, or print only the elevations.",
        ),
        PdfPagesWhy::NothingDrawn => FindingWords::new(
            format!("{name}: there is nothing to measure; {}", list(seen)),
            "A scan or photo has no lines. Ask the architect for the PDF as printed from the drawing, or for the DWG or DXF.",
        ),
        PdfPagesWhy::NoTitle => FindingWords::new(
            format!("no page of {name} has the title of an elevation: {}", list(seen)),
            pick,
        ),
    }
}

pub(super) fn pages_read(taken: &[usize], pages: usize, others: &[PdfPageSeen]) -> FindingWords {
    let numbers: Vec<String> = taken.iter().map(usize::to_string).collect();
    let word = if taken.len() == 1 { "page" } else { "pages" };
    let mut message = format!("{word} {} of {pages} read", numbers.join(", "));
    if !others.is_empty() {
        message.push_str(&format!("; not read: {}", list(others)));
    }
    let help = "Pages that look like elevations are read. To read others, name them: `--page 3`, or `pages = [3, 4]` under [drawing].";
    FindingWords::new(message, help)
}

pub(super) fn mute(letters: usize) -> FindingWords {
    FindingWords::new(
        format!(
            "{} of the PDF cannot be told: their font does not say which they are",
            counted(letters, "letter")
        ),
        "Titles and tags may be missing: give views their names in the job.",
    )
}

/// What was seen, page by page.
fn list(seen: &[PdfPageSeen]) -> String {
    let one = |p: &PdfPageSeen| {
        let page = p.page;
        match (p.strokes, p.pictures) {
            (0, 0) => format!("page {page} has no lines"),
            (0, _) => format!("page {page} is a picture"),
            (n, 0) => format!("page {page} has {}", counted(n, "line")),
            (n, m) => {
                format!("page {page} has {} and {}", counted(n, "line"), counted(m, "picture"))
            }
        }
    };
    let mut out: Vec<String> = seen.iter().take(LISTED).map(one).collect();
    if seen.len() > LISTED {
        out.push(format!("{} more", seen.len() - LISTED));
    }
    out.join(", ")
}
