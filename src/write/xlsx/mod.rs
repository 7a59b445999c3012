//! `takeoff.xlsx`: the takeoff as a workbook.
//!
//! Numbers are numbers with formats, totals are formulas with their results beside them, and text
//! is written as text whatever it begins with. Same bytes for the same layout: the file's date is
//! the job's, or a fixed one.

mod assumptions;
mod compare;
mod dates;
mod grid;
pub mod houses;
mod order;
mod panels;
mod pole;
mod print;
mod summary;
mod trim;
mod walls;
mod zones;

use rust_xlsxwriter::{DocProperties, Workbook};

use crate::clean::{Destination, clean};
use crate::finding::files::WriterFault;
use crate::layout::Layout;
use crate::model::change::Comparison;
use crate::model::takeoff::Takeoff;

/// Sheets of the workbook: the library writes each in a thread of its own, all at once, and stops the
/// program where there is none to be had.
pub const SHEETS: usize = 8;

/// The workbook's bytes.
///
/// # Errors
/// What the writing library says; no layout is known to bring it to that.
pub fn workbook(layout: &Layout, takeoff: &Takeoff) -> Result<Vec<u8>, WriterFault> {
    let mut book = Workbook::new();
    for sheet in sheets(layout, takeoff) {
        book.push_worksheet(sheet.done(layout).map_err(WriterFault::of)?);
    }
    let date = dates::date(&layout.job.title.date).map_err(WriterFault::of)?;
    let properties = DocProperties::new()
        .set_title(clean(&summary::title(layout), Destination::Workbook))
        .set_author(clean(&layout.job.title.drawn_by, Destination::Workbook))
        .set_creation_datetime(&date);
    book.set_properties(&properties);
    book.save_to_buffer().map_err(WriterFault::of)
}

/// The workbook of a comparison: what is changed, each wall, the order.
///
/// # Errors
/// As [`workbook`].
pub fn comparison(layout: &Layout, comparison: &Comparison) -> Result<Vec<u8>, WriterFault> {
    let mut book = Workbook::new();
    let all = [
        compare::changes(layout, comparison),
        compare::walls(layout, comparison),
        compare::order(layout, comparison),
    ];
    for sheet in all {
        book.push_worksheet(sheet.done(layout).map_err(WriterFault::of)?);
    }
    let date = dates::date(&comparison.date).map_err(WriterFault::of)?;
    let title = clean(&summary::title(layout), Destination::Workbook);
    book.set_properties(&DocProperties::new().set_title(title).set_creation_datetime(&date));
    book.save_to_buffer().map_err(WriterFault::of)
}

fn sheets(layout: &Layout, takeoff: &Takeoff) -> [grid::Grid; SHEETS] {
    [
        summary::sheet(layout, takeoff),
        order::sheet(layout, takeoff),
        panels::sheet(layout),
        trim::sheet(layout, takeoff),
        walls::sheet(layout, takeoff),
        zones::sheet(layout, takeoff),
        pole::sheet(layout),
        assumptions::sheet(layout, takeoff),
    ]
}

/// Pages that each sheet prints on.
pub fn pages(layout: &Layout, takeoff: &Takeoff) -> [u16; SHEETS] {
    sheets(layout, takeoff).map(|s| s.pages().1)
}
