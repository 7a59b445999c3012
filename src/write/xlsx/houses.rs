//! `houses.xlsx`: many houses and their one purchase as a workbook. Totals are formulas with their results
//! beside them; text is written as text whatever it begins with.

use crate::language::Language;
use rust_xlsxwriter::{Format, Formula, Workbook, Worksheet, XlsxError};

use super::dates::date;
use super::grid::letter;
use crate::clean::{Destination, clean};
use crate::finding::files::WriterFault;
use crate::layout::houses::{HouseTold, HowItWent, Purchase, houses_of};
use crate::units::LengthStyle;
use crate::wording::houses as words;
use crate::wording::takeoff::items;
use crate::write::houses::{Bought, rows};

/// Sheets of the workbook, each written in a thread of its own.
pub const SHEETS: usize = words::SHEETS.len();

/// Excel's widest column, characters: texts are clipped to it, no more.
const WIDEST: f64 = 60.0;

/// The workbook's bytes.
///
/// # Errors
/// What the writing library says.
pub fn workbook(
    houses: &[HouseTold],
    purchase: &Purchase,
    style: LengthStyle,
) -> Result<Vec<u8>, WriterFault> {
    let mut book = Workbook::new();
    let made = [of_houses(houses), of_purchase(purchase, style), of_shares(purchase, style)];
    for sheet in made {
        book.push_worksheet(sheet.map_err(WriterFault::of)?);
    }
    // No clock is asked: the first day of 2000.
    let made = date("").map_err(WriterFault::of)?;
    book.set_properties(&rust_xlsxwriter::DocProperties::new().set_creation_datetime(&made));
    book.save_to_buffer().map_err(WriterFault::of)
}

/// A sheet with its head.
fn sheet(name: &str, head: &[&str], wide: &[u16]) -> Result<Worksheet, XlsxError> {
    let mut sheet = Worksheet::new();
    sheet.set_name(name)?;
    let bold = Format::new().set_bold().set_text_wrap();
    for (col, words) in (0u16..).zip(head) {
        sheet.write_string_with_format(0, col, *words, &bold)?;
        sheet.set_column_width(col, if wide.contains(&col) { 28.0 } else { 12.0 })?;
    }
    sheet.set_freeze_panes(1, 1)?;
    sheet.set_landscape();
    sheet.set_print_fit_to_pages(1, 0);
    sheet.set_repeat_rows(0, 0)?;
    Ok(sheet)
}

fn say(sheet: &mut Worksheet, row: u32, col: u16, text: &str) -> Result<(), XlsxError> {
    sheet.write_string(row, col, clean(text, Destination::Workbook)).map(|_| ())
}

fn two() -> Format {
    Format::new().set_num_format("#,##0.00")
}

fn of_houses(houses: &[HouseTold]) -> Result<Worksheet, XlsxError> {
    let mut s = sheet(words::SHEETS[0], &words::HOUSES, &[0, 1, 2, 3, 15])?;
    s.set_column_width(15, WIDEST)?;
    let mut sums = [0.0; 8];
    for (row, h) in (1u32..).zip(houses) {
        let texts = [&h.name, &h.drawing, &h.job, &h.folder];
        for (col, text) in (0u16..).zip(texts) {
            say(&mut s, row, col, text)?;
        }
        say(&mut s, row, 4, words::state(&h.how))?;
        if let Some(f) = &h.figures {
            let counts = [f.panels, f.least, f.trims, f.warnings, f.remarks, f.broken];
            let all = [f.gross, f.net].into_iter().chain(counts.map(|n| n as f64));
            for (i, value) in all.enumerate() {
                sums[i] += value;
                match i {
                    0 | 1 => s.write_number_with_format(row, 5 + i as u16, value, &two())?,
                    _ => s.write_number(row, 5 + i as u16, value)?,
                };
            }
        }
        match &h.how {
            HowItWent::Laid { seconds } => {
                s.write_number_with_format(row, 13, *seconds, &two())?;
            }
            HowItWent::Before => {}
            HowItWent::Refused { code, message } => {
                say(&mut s, row, 14, code)?;
                say(&mut s, row, 15, message)?;
            }
        }
    }
    let last = houses.len() as u32;
    s.write_string_with_format(last + 1, 0, words::TOTAL, &Format::new().set_bold())?;
    for (i, sum) in sums.iter().enumerate() {
        total(&mut s, 5 + i as u16, last, *sum)?;
    }
    s.autofilter(0, 0, last, words::HOUSES.len() as u16 - 1)?;
    Ok(s)
}

/// The sum of a column from the second row to `last`, in the row under it.
fn total(s: &mut Worksheet, col: u16, last: u32, result: f64) -> Result<(), XlsxError> {
    let at = letter(col);
    let formula =
        Formula::new(format!("=SUM({at}2:{at}{})", last + 1)).set_result(result.to_string());
    let look = Format::new().set_bold().set_num_format("#,##0.##");
    s.write_formula_with_format(last + 1, col, formula, &look).map(|_| ())
}

fn of_purchase(purchase: &Purchase, style: LengthStyle) -> Result<Worksheet, XlsxError> {
    let mut s = sheet(words::SHEETS[1], &words::PURCHASE, &[0])?;
    let mut last = 0;
    for (row, (line, bought)) in (1u32..).zip(rows(purchase)) {
        say(&mut s, row, 0, &items::item(Language::English, &line.item, style))?;
        say(&mut s, row, 1, items::unit(line.unit).en)?;
        say(&mut s, row, 2, &line.color)?;
        say(&mut s, row, 3, &line.stock.map_or(String::new(), |l| style.length(l)))?;
        s.write_number(row, 4, houses_of(line) as f64)?;
        let apart: f64 = line.sets.iter().map(|s| s.order).sum();
        for (col, value) in (5u16..).zip([line.net, apart, line.order]) {
            s.write_number(row, col, value)?;
        }
        match bought {
            Bought::Costs(cost) => {
                s.write_number_with_format(row, 8, cost as f64 / 100.0, &two())?;
            }
            Bought::Unpriced => {}
            Bought::Counted => say(&mut s, row, 8, words::IN_CARTONS)?,
        }
        last = row;
    }
    if !purchase.currency.is_empty() {
        s.write_string(last + 1, 0, words::TOTAL)?;
        say(&mut s, last + 1, 7, &purchase.currency)?;
        total(&mut s, 8, last, purchase.total as f64 / 100.0)?;
    }
    s.write_string(last + 3, 0, words::PURCHASE_NOTE)?;
    Ok(s)
}

fn of_shares(purchase: &Purchase, style: LengthStyle) -> Result<Worksheet, XlsxError> {
    let mut s = sheet(words::SHEETS[2], &words::BY_HOUSE, &[0, 3])?;
    let mut row = 0;
    for (line, _) in rows(purchase) {
        for share in &line.sets {
            row += 1;
            say(&mut s, row, 0, &items::item(Language::English, &line.item, style))?;
            say(&mut s, row, 1, items::unit(line.unit).en)?;
            say(&mut s, row, 2, &line.color)?;
            say(&mut s, row, 3, &words::taker(share))?;
            s.write_number(row, 4, share.net)?;
            s.write_number(row, 5, share.order)?;
        }
    }
    s.autofilter(0, 0, row, words::BY_HOUSE.len() as u16 - 1)?;
    Ok(s)
}
