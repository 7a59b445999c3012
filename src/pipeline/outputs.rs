//! From what is laid out to files: every sheet and table with its name in the folder.

use crate::diag::{Note, Notes, Refusal};
use crate::job::layers::AGREED_LAYERS;
use crate::layout::Layout;
use crate::layout::laid::LaidHouse;
use crate::layout::set::LaidSet;
use crate::model::drawing::Drawing;
use crate::model::sheet::Sheet;
use crate::write::overlay::Measure;
use crate::{annotate, cores, write};

/// A file: its path in the folder and its bytes.
pub type Output = (String, Vec<u8>);

/// Dots to the inch of PNG sheets: 3/32 in capitals are then 14 dots high.
const PNG_DPI: f64 = 150.0;
/// Most sheets of a set that is written as PNG too: of a larger one that would take longer than
/// everything else, and its PDF holds every sheet.
const MOST_PICTURES: usize = 80;

/// Every file of a set.
///
/// # Errors
/// `write-failed` when a sheet cannot be turned into PDF or PNG.
pub fn outputs(set: &LaidSet, source: &[u8], pictures: bool) -> Result<Vec<Output>, Refusal> {
    // Tables, overlay and sheets do not depend on one another; their order is kept.
    let (tables, (sheets, svgs)) = cores::both(
        || tables(set, source),
        || {
            let sheets = annotate::sheets(&set.layout, &set.backdrops);
            let svgs: Vec<String> = cores::each(&sheets, write::svg::document);
            (sheets, svgs)
        },
    );
    let mut out = tables.map_err(write_failed)?;
    if pictures {
        out.extend(printed(&set.layout, &sheets, &svgs).map_err(write_failed)?);
    }
    let named = |(s, svg): (&Sheet, String)| (format!("sheets/{}.svg", s.name), svg.into_bytes());
    out.extend(sheets.iter().zip(svgs).map(named));
    Ok(out)
}

/// Whether a set of so many sheets is written as PNG too.
pub fn pictured(sheets: usize) -> bool {
    sheets <= MOST_PICTURES
}

/// The sheets as PDF, and as pictures where they are few enough.
fn printed(laid: &LaidHouse, sheets: &[Sheet], svgs: &[String]) -> Result<Vec<Output>, String> {
    let words = &laid.job.title;
    let title = if words.project.is_empty() { &laid.drawing.name } else { &words.project };
    let pdf = write::pdf::document(sheets, svgs, title, &words.drawn_by)?;
    let mut out = vec![("sheets.pdf".to_owned(), pdf)];
    let few = if pictured(sheets.len()) { svgs } else { &[] };
    // Pictures do not depend on one another; their order is kept.
    for (sheet, png) in sheets.iter().zip(cores::each(few, |s| write::render::png(s, PNG_DPI))) {
        out.push((format!("sheets/{}.png", sheet.name), png?));
    }
    Ok(out)
}

/// What is written beside the sheets.
fn tables(set: &LaidSet, source: &[u8]) -> Result<Vec<Output>, String> {
    let (layout, takeoff) = (&set.layout, &set.takeoff);
    let overlay = annotate::overlay(layout);
    let spliced = write::overlay::spliced(source, &overlay, measure(layout));
    // A source that takes no splice (binary) gets an overlay on the same origin.
    let overlay =
        spliced.unwrap_or_else(|_| write::overlay::separate(&overlay, measure(layout)));
    let files = [
        ("layout.json", write::json::layout(layout)),
        ("takeoff.xlsx", write::xlsx::workbook(layout, takeoff)?),
        ("takeoff.json", write::json::takeoff(takeoff)),
        ("takeoff.csv", write::csv::takeoff(layout, takeoff)),
        ("takeoff-by-wall.csv", write::csv::by_wall(layout)),
        ("cut-list.csv", write::csv::cut_list(layout)),
        ("story-pole.csv", write::csv::story_pole(layout)),
        ("report.txt", write::report::text(layout, takeoff).into_bytes()),
        ("overlay.dxf", overlay),
    ];
    Ok(files.into_iter().map(|(name, bytes)| (name.to_owned(), bytes)).collect())
}

/// The overlay as a drawing of its own, on the source's origin.
pub fn overlay_alone(layout: &Layout) -> Vec<u8> {
    write::overlay::separate(&annotate::overlay(layout), measure(layout))
}

/// How lengths of a layout's source read.
fn measure(laid: &LaidHouse) -> Measure {
    Measure { inches: laid.drawing.inches_per_unit, style: laid.job.sheet.lengths }
}

/// The drawing with its findings circled, as SVG.
pub fn problems(drawing: &Drawing, notes: &Notes) -> Vec<u8> {
    write::svg::document(&annotate::problems(drawing, notes.all())).into_bytes()
}

/// What an architect needs: an empty drawing with the agreed layers, the convention as a page, a job
/// file with every setting explained.
///
/// # Errors
/// `write-failed` when the page cannot be turned into a PDF.
pub fn template() -> Result<Vec<Output>, Refusal> {
    let page = annotate::convention();
    let svg = write::svg::document(&page);
    let (pages, svgs) = (std::slice::from_ref(&page), std::slice::from_ref(&svg));
    let pdf = write::pdf::document(pages, svgs, &page.title, "").map_err(write_failed)?;
    let files = [
        ("template.dxf", write::template::dxf(&AGREED_LAYERS)),
        ("convention.svg", svg.into_bytes()),
        ("convention.pdf", pdf),
        ("job.toml", crate::job::commented::text().into_bytes()),
    ];
    Ok(files.into_iter().map(|(name, bytes)| (name.to_owned(), bytes)).collect())
}

fn write_failed(e: String) -> Refusal {
    let help = "Please report this with the drawing; --no-pictures leaves PDF and PNG out.";
    Note::error("write-failed", e, help).into()
}
