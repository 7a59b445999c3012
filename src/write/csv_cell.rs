//! Cells of CSV by RFC 4180. Whatever is no number stands in quotes, blanks too, and numbers stand bare:
//! a reader that takes what is quoted as text keeps the mark `1-2-3` from becoming a date and the color
//! `007` from becoming 7. A text that begins with `=`, `+`, `-`, `@`, a tab or a return gets an apostrophe
//! before it, so that no spreadsheet runs it as a formula.

use crate::clean::{Destination, clean};

/// A cell.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Cell {
    /// Text, or blank.
    Text(String),
    /// A number as it is written.
    Number(String),
}

impl Cell {
    /// A cell without anything.
    pub(super) const BLANK: Cell = Cell::Text(String::new());

    fn written(&self) -> String {
        match self {
            Cell::Text(text) => {
                format!("\"{}\"", clean(text, Destination::Csv).replace('"', "\"\""))
            }
            Cell::Number(number) => number.clone(),
        }
    }
}

/// A cell of text.
pub(super) fn text(text: impl Into<String>) -> Cell {
    Cell::Text(text.into())
}

/// A number to four decimals, without trailing zeros.
pub(super) fn number(v: f64) -> Cell {
    let rounded = (v * 1e4).round() / 1e4;
    Cell::Number(format!("{}", if rounded == 0.0 { 0.0 } else { rounded }))
}

/// A whole number.
pub(super) fn count(n: impl Into<i128>) -> Cell {
    Cell::Number(n.into().to_string())
}

/// Hundredths of a currency's unit, with both decimals.
pub(super) fn money(hundredths: i64) -> Cell {
    Cell::Number(format!("{}.{:02}", hundredths / 100, hundredths % 100))
}

/// A table: the head, which is text, and its rows.
pub(super) fn table(header: &[String], rows: impl Iterator<Item = Vec<Cell>>) -> Vec<u8> {
    // Cells come quoted: the writer has the delimiters and line ends.
    let mut writer = csv::WriterBuilder::new()
        .terminator(csv::Terminator::CRLF)
        .quote_style(csv::QuoteStyle::Never)
        .from_writer(Vec::new());
    let head = header.iter().map(text).collect();
    for row in std::iter::once(head).chain(rows) {
        // Writing to memory cannot fail; a row of another length would, and there is none.
        let _ = writer.write_record(row.iter().map(Cell::written));
    }
    writer.into_inner().unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_cell_runs_as_a_formula() {
        for t in ["=1+1", "+1", "-1", "@x", "\tx", "\rx"] {
            assert!(text(t).written().starts_with("\"'"), "{t:?}");
        }
        assert_eq!(text("front-1").written(), "\"front-1\"");
    }

    #[test]
    fn numbers_carry_no_noise() {
        assert_eq!(number(-0.000001).written(), "0");
        assert_eq!(number(0.1 + 0.2).written(), "0.3");
        assert_eq!((count(-3).written(), money(1205).written()), ("-3".into(), "12.05".into()));
    }

    #[test]
    fn every_text_is_quoted_and_read_back_as_it_was() {
        let texts = ["1-2-3", "0123", "1e5", "3/4", "a,b", "a \"b\"", "Πρόσοψη", "", "12'-6 1/2\""];
        let rows = std::iter::once(texts.map(text).to_vec());
        let bytes = table(&texts.map(str::to_owned), rows);
        let lines = String::from_utf8(bytes.clone()).unwrap();
        for line in lines.trim_end().split("\r\n") {
            assert!(line.starts_with('"') && line.ends_with('"'), "{line}");
            assert_eq!(line.matches("\",\"").count(), texts.len() - 1, "{line}");
        }
        let mut reader = csv::Reader::from_reader(bytes.as_slice());
        assert_eq!(*reader.headers().unwrap(), csv::StringRecord::from(texts.to_vec()));
        let read = reader.records().next().unwrap().unwrap();
        assert_eq!(read, csv::StringRecord::from(texts.to_vec()));
    }
}
