//! A sheet as it is filled: cells with their looks, column widths, and how it prints.

use crate::language::Language;
use rust_xlsxwriter::{Color, Format, FormatAlign, FormatBorder, Formula, Worksheet, XlsxError};

use super::print::{lines, pages};
use crate::clean::{Destination, clean};
use crate::layout::Layout;
use crate::wording::checks;

/// How a cell looks.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Look {
    /// Heading of a sheet.
    Title,
    /// Heading of a table.
    Heading,
    /// Column heading.
    Head,
    /// Column heading over numbers.
    HeadRight,
    /// Plain text.
    Text,
    /// Text on as many lines as it needs.
    Wrapped,
    /// Whole number.
    Count,
    /// Two decimals.
    Two,
    /// Three decimals.
    Three,
    /// Share of one, as percent.
    Percent,
    /// Money; nothing is shown for none.
    Money,
    /// A cell the user fills in: money.
    Entry,
    /// A cell the user fills in: whole number.
    EntryCount,
    /// Total: whole number.
    TotalCount,
    /// Total: two decimals.
    Total,
    /// Total: money.
    TotalMoney,
    /// Total: text.
    TotalText,
    /// That the check failed.
    Alarm,
}

/// A column letter for formulas.
pub(super) fn letter(col: u16) -> String {
    rust_xlsxwriter::utility::column_number_to_name(col)
}

/// A sheet in the making. A fault of the library is kept and told at the end.
pub(super) struct Grid {
    sheet: Worksheet,
    fault: Option<XlsxError>,
    /// Next free row.
    pub(super) row: u32,
    name: &'static str,
    widths: Vec<f64>,
    /// Lines of text that the present row needs.
    lines: u32,
    /// Lines of text of all rows above it.
    above: u32,
    /// Columns that are printed: the first so many.
    printed: usize,
    /// Rows that are printed and the lines they take, where not all are.
    printed_rows: Option<(u32, u32)>,
}

/// What bold letters leave of a column's room: a guess on the safe side.
const BOLD: f64 = 0.8;

/// Characters that one landscape page holds and can still be read: some 100 stand on it at full
/// size, and these at 7 points.
const PAGE: f64 = 160.0;

/// Without what binary fractions leave after the ninth decimal: 18 rather than 18.000000000000004.
fn even(value: f64) -> f64 {
    if value.abs() < 1e6 { (value * 1e9).round() / 1e9 } else { value }
}

/// Margins of printed pages, inches, with the header and the footer in them.
const MARGIN: f64 = 0.5;

/// Height of one line of text, points.
const LINE: f64 = 13.0;

/// Rows that the bar takes over a sheet.
pub(super) fn alarm_rows(places: usize) -> u32 {
    u32::from(places > 0)
}

impl Grid {
    /// A sheet with its column widths in characters; over a layout that breaks rules of the check a
    /// red bar stands in the first row.
    pub(super) fn new(layout: &Layout, name: &'static str, widths: &[f64]) -> Self {
        let mut grid = Grid {
            sheet: Worksheet::new(),
            fault: None,
            row: 0,
            name,
            widths: widths.to_vec(),
            lines: 1,
            above: 0,
            printed: widths.len(),
            printed_rows: None,
        };
        grid.try_to(|s| s.set_name(name).map(drop));
        for (col, width) in widths.iter().enumerate() {
            grid.try_to(|s| s.set_column_width(col as u16, *width).map(drop));
        }
        if !layout.verify.passes() {
            grid.alarm(layout.verify.places());
        }
        grid
    }

    /// The bar over every sheet of a layout that breaks rules: red, in a heavy frame, with words.
    fn alarm(&mut self, places: usize) {
        // As wide as a page shows, so that the words are seen without scrolling.
        let mut wide = 0.0;
        let columns = self.widths.iter().take_while(|w| {
            wide += **w;
            wide <= PAGE
        });
        let last = (columns.count() as u16).saturating_sub(1).max(1);
        let words = checks::bar_of_table(Language::English, places);
        self.try_to(|s| s.merge_range(0, 0, 0, last, &words, &format(Look::Alarm)).map(drop));
        self.try_to(|s| s.set_row_height(0, 2.0 * LINE).map(drop));
        self.row = alarm_rows(places);
    }

    fn try_to(&mut self, what: impl FnOnce(&mut Worksheet) -> Result<(), XlsxError>) {
        if let Err(e) = what(&mut self.sheet) {
            self.fault.get_or_insert(e);
        }
    }

    /// Text, never run as a formula.
    pub(super) fn text(&mut self, col: u16, words: &str, look: Look) {
        let row = self.row;
        let words = clean(words, Destination::Workbook);
        if matches!(look, Look::Wrapped | Look::Head | Look::HeadRight) {
            let width = self.widths.get(usize::from(col)).copied().unwrap_or(8.0);
            // Headings are bold, and so wider.
            let width = if look == Look::Wrapped { width } else { width * BOLD };
            self.lines = self.lines.max(lines(&words, width));
        }
        self.try_to(|s| s.write_string_with_format(row, col, words, &format(look)).map(drop));
    }

    /// A number; one that is none leaves the cell blank.
    pub(super) fn number(&mut self, col: u16, value: f64, look: Look) {
        let (row, value) = (self.row, even(value));
        if value.is_finite() {
            self.try_to(|s| s.write_number_with_format(row, col, value, &format(look)).map(drop));
        }
    }

    /// A blank cell with a look: one for the user to fill in.
    pub(super) fn blank(&mut self, col: u16, look: Look) {
        let row = self.row;
        self.try_to(|s| s.write_blank(row, col, &format(look)).map(drop));
    }

    /// A formula of our own making, with its result for readers that do not calculate.
    pub(super) fn formula(&mut self, col: u16, formula: &str, result: &str, look: Look) {
        let row = self.row;
        let formula = Formula::new(formula).set_result(result);
        self.try_to(|s| s.write_formula_with_format(row, col, formula, &format(look)).map(drop));
    }

    /// A formula with a number for its result.
    pub(super) fn sum(&mut self, col: u16, formula: &str, result: f64, look: Look) {
        self.formula(col, formula, &even(result).to_string(), look);
    }

    /// The sum of a column's rows from `first` (1-based) to the row above this one, hidden rows of
    /// a filter left out.
    pub(super) fn subtotal(&mut self, col: u16, first: u32, result: f64, look: Look) {
        let c = letter(col);
        let last = self.row.max(first);
        self.sum(col, &format!("=SUBTOTAL(109,{c}{first}:{c}{last})"), result, look);
    }

    /// Goes to the next row; this one is made as high as its text needs, since not every reader
    /// works that out.
    pub(super) fn next(&mut self) {
        let (row, height) = (self.row, LINE * f64::from(self.lines) + 2.0);
        if self.lines > 1 {
            self.try_to(|s| s.set_row_height(row, height).map(drop));
        }
        self.above += self.lines;
        self.lines = 1;
        self.row += 1;
    }

    /// A row of texts.
    pub(super) fn texts(&mut self, words: &[&str], look: Look) {
        for (col, w) in words.iter().enumerate() {
            self.text(col as u16, w, look);
        }
        self.next();
    }

    /// Plain texts in this row's first columns.
    pub(super) fn texts_at(&mut self, words: &[&str]) {
        for (col, w) in words.iter().enumerate() {
            self.text(col as u16, w, Look::Text);
        }
    }

    /// A row of column headings, those of `numbers` over numbers.
    pub(super) fn heads(&mut self, words: &[&str], numbers: &[u16]) {
        for (col, w) in words.iter().enumerate() {
            let over_numbers = numbers.contains(&(col as u16));
            self.text(col as u16, w, if over_numbers { Look::HeadRight } else { Look::Head });
        }
        self.next();
    }

    /// Column headings at this row: kept in sight and printed on every page.
    pub(super) fn head(&mut self, words: &[&str], numbers: &[u16]) {
        let row = self.row;
        self.heads(words, numbers);
        self.try_to(|s| {
            s.set_freeze_panes(row + 1, 0)?;
            s.set_repeat_rows(row, row).map(drop)
        });
    }

    /// Prints the first columns alone; the others are for whoever reads the file.
    pub(super) fn print_columns(&mut self, count: usize) {
        self.printed = count;
    }

    /// Prints nothing of what follows: it is for whoever reads the file.
    pub(super) fn print_to_here(&mut self) {
        self.printed_rows.get_or_insert((self.row, self.above));
    }

    /// A filter over the columns of a table whose headings stand at `head` (0-based) and whose last
    /// row is the one above this.
    pub(super) fn filter(&mut self, head: u32, columns: u16) {
        let last = self.row.saturating_sub(1);
        if last > head {
            self.try_to(|s| s.autofilter(head, 0, last, columns - 1).map(drop));
        }
    }

    /// Whether its pages lie, and how many there are.
    pub(super) fn pages(&self) -> (bool, u16) {
        let printed = &self.widths[..self.printed.min(self.widths.len())];
        pages(printed, self.printed_rows.map_or(self.above + self.lines, |p| p.1))
    }

    /// Prints one page wide on a few: paper of the job's part of the world, page numbers, name.
    pub(super) fn done(mut self, layout: &Layout) -> Result<Worksheet, XlsxError> {
        use crate::units::LengthStyle;
        // Codes of the file format: 3 is 11 by 17 in, 8 is A3.
        let paper = if layout.job.sheet.lengths == LengthStyle::Mm { 8 } else { 3 };
        let name = if layout.job.title.project.is_empty() {
            &layout.drawing.name
        } else {
            &layout.job.title.project
        };
        // Headers and footers hold 255 characters, and `&` begins a code in them.
        let name: String = clean(name, Destination::Workbook).chars().take(80).collect();
        let name = name.replace('&', "&&");
        let verify = &layout.verify;
        // Bold, on every page printed.
        let failed = match verify.places() {
            0 => String::new(),
            n => format!("&C&B{}", checks::failed(Language::English, n)),
        };
        let (lies, high) = self.pages();
        let rows = self.printed_rows.map_or(self.row + 1, |p| p.0);
        if self.printed < self.widths.len() || self.printed_rows.is_some() {
            let last_column = self.printed.saturating_sub(1) as u16;
            let last_row = rows.saturating_sub(1);
            self.try_to(|s| s.set_print_area(0, 0, last_row, last_column).map(drop));
        }
        if lies {
            self.sheet.set_landscape();
        } else {
            self.sheet.set_portrait();
        }
        self.sheet
            .set_paper_size(paper)
            .set_margins(MARGIN, MARGIN, MARGIN, MARGIN, MARGIN / 2.0, MARGIN / 2.0)
            .set_print_fit_to_pages(1, high)
            .set_header(format!("&L{name}{failed}&R{}", self.name))
            .set_footer(format!("&L{}&R&P / &N", crate::wording::tables::FOOTER));
        match self.fault {
            Some(e) => Err(e),
            None => Ok(self.sheet),
        }
    }
}

fn format(look: Look) -> Format {
    let top = Format::new().set_align(FormatAlign::Top);
    // Text after a number keeps off it; without an alignment of its own an indent counts for nothing.
    let plain = top.clone().set_align(FormatAlign::Left).set_indent(1);
    let number = |f: &str| top.clone().set_num_format(f);
    let total =
        |f: &str| Format::new().set_bold().set_border_top(FormatBorder::Thin).set_num_format(f);
    // Cells to fill in carry a border, not a color alone.
    let entry = |f: &str| {
        number(f).set_border(FormatBorder::Dotted).set_background_color(Color::RGB(0xF5_F2_E6))
    };
    let head = Format::new()
        .set_bold()
        .set_text_wrap()
        .set_align(FormatAlign::Bottom)
        .set_border_bottom(FormatBorder::Medium);
    match look {
        Look::Title => Format::new().set_bold().set_font_size(16),
        Look::Heading => Format::new().set_bold().set_font_size(12),
        Look::Head => head.set_align(FormatAlign::Left).set_indent(1),
        Look::HeadRight => head.set_align(FormatAlign::Right),
        Look::Text => plain,
        Look::Wrapped => plain.set_text_wrap(),
        Look::Count => number("#,##0"),
        Look::Two => number("#,##0.00"),
        Look::Three => number("#,##0.000"),
        Look::Percent => number("0.0%"),
        Look::Money => number("#,##0.00##;-#,##0.00##;"),
        Look::Entry => entry("#,##0.00##"),
        Look::EntryCount => entry("#,##0"),
        Look::TotalCount => total("#,##0"),
        Look::Total => total("#,##0.00"),
        Look::TotalMoney => total("#,##0.00"),
        Look::Alarm => Format::new()
            .set_bold()
            .set_font_size(14)
            .set_font_color(Color::White)
            .set_background_color(Color::RGB(0xA0_00_00))
            .set_border(FormatBorder::Thick)
            .set_align(FormatAlign::Left)
            .set_align(FormatAlign::VerticalCenter),
        Look::TotalText => total("@").set_align(FormatAlign::Left).set_indent(1),
    }
}
