//! Panels and offcuts on the site, from a list: `length,count,factory end`.
//!
//! ```text
//! length,count,factory end
//! 12'-6",31,both
//! 64 1/2",3,right
//! 40,2,none
//! ```
//! Columns may stand in any order; `factory end` may be left out, and is then none for what is shorter than a
//! panel. Lengths are inches or texts with their unit; cells may be parted by semicolons, and stand in quotes.

use crate::csv_rows::{self, Cell, CsvFault, Misread};
use crate::finding::Refusal;
use crate::finding::files::{FileFinding, StockFault};
use crate::layout::at_hand::{AtHand, FactoryEnd};
use crate::units::{Unit, parse_length};

/// A length that differs from the panel's by less is the panel's, inches: a mark of the tape (common practice, no
/// source).
const SAME: f64 = 1.0 / 16.0;
/// Most lengths that a list may name in all: no site holds more. Of our own choosing, no source.
const MOST: usize = 100_000;

/// Reads a list for panels of this length; `name` is what errors call it.
///
/// # Errors
/// `stock-unreadable` with line and column.
pub fn parse(bytes: &[u8], name: &str, panel: f64) -> Result<Vec<AtHand>, Refusal> {
    let refused = |line: usize, column: usize, fault: StockFault| {
        Refusal::new(FileFinding::StockUnreadable { file: name.to_owned(), line, column, fault })
    };
    let misread = |m: Misread| {
        let fault = match m.fault {
            CsvFault::NotUtf8 => StockFault::NotUtf8,
            CsvFault::QuoteOpen => StockFault::QuoteOpen,
        };
        refused(m.line, m.column, fault)
    };
    let mut rows = csv_rows::read(bytes).map_err(misread)?.rows.into_iter();
    let head = rows.next().ok_or_else(|| refused(1, 1, StockFault::Empty))?;
    let line = head.first().map_or(1, |c| c.line);
    let find = |wanted: &str| head.iter().position(|c| c.text.to_lowercase() == wanted);
    let missing =
        |column: &str| refused(line, 1, StockFault::ColumnMissing { column: column.to_owned() });
    let length = find("length").ok_or_else(|| missing("length"))?;
    let count = find("count").ok_or_else(|| missing("count"))?;
    let end = find("factory end");
    let mut out = Vec::new();
    let mut all = 0_usize;
    for row in rows {
        let at = |c: &Cell, fault: StockFault| refused(c.line, c.column, fault);
        let cell = |k: usize| row.get(k).cloned().unwrap_or_else(|| after(&row));
        let long = cell(length);
        let found = parse_length(&long.text, Unit::Inch).filter(|v| v.is_finite() && *v > 0.0);
        let found =
            found.ok_or_else(|| at(&long, StockFault::Length { text: long.text.clone() }))?;
        if found > panel + SAME {
            return Err(at(&long, StockFault::LongerThanPanel { length: found, panel }));
        }
        let many = cell(count);
        let number = many.text.parse::<usize>().ok().filter(|n| *n <= MOST);
        let number =
            number.ok_or_else(|| at(&many, StockFault::Count { text: many.text.clone() }))?;
        all += number;
        if all > MOST {
            return Err(at(&many, StockFault::TooMany { most: MOST }));
        }
        let whole = found >= panel - SAME;
        let told = end.map_or_else(|| after(&row), cell);
        let end = match told.text.to_lowercase().as_str() {
            "" | "both" if whole => FactoryEnd::Both,
            // As long as a panel it is one, with both its ends.
            _ if whole => {
                return Err(at(&told, StockFault::EndOfWhole { text: told.text.clone() }));
            }
            "" | "none" => FactoryEnd::None,
            "left" => FactoryEnd::Left,
            "right" => FactoryEnd::Right,
            _ => return Err(at(&told, StockFault::End { text: told.text.clone() })),
        };
        let length = if end == FactoryEnd::Both { panel } else { found };
        out.push(AtHand { length, count: number, end });
    }
    Ok(out)
}

/// An empty cell where a row that is too short ends.
fn after(row: &[Cell]) -> Cell {
    let (line, column) = row.last().map_or((1, 1), |c| (c.line, c.column));
    Cell { text: String::new(), line, column }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::finding::FindingKind;

    #[test]
    fn lengths_counts_and_ends_are_read() {
        let text = "Length,Count,Factory End\n12'-6\",31,\n\"64 1/2\"\"\",3,right\n40;,2,none\n";
        let text = text.replace("40;", "40");
        let found = parse(text.as_bytes(), "s.csv", 150.0).unwrap();
        let of = |length: f64, count: usize, end| AtHand { length, count, end };
        assert_eq!(
            found,
            [
                of(150.0, 31, FactoryEnd::Both),
                of(64.5, 3, FactoryEnd::Right),
                of(40.0, 2, FactoryEnd::None)
            ]
        );
        // Without the column, what is shorter than a panel has no factory end.
        let found = parse(b"count;length\n4;1016mm\n", "s.csv", 150.0).unwrap();
        assert_eq!(found, [of(40.0, 4, FactoryEnd::None)]);
    }

    #[test]
    fn faults_have_their_line_and_column() {
        let at = |text: &str| match parse(text.as_bytes(), "s.csv", 150.0).unwrap_err().0.kind {
            FindingKind::Files(FileFinding::StockUnreadable { line, column, .. }) => (line, column),
            other => panic!("{other:?}"),
        };
        assert_eq!(at(""), (1, 1));
        assert_eq!(at("\nlength\n40\n"), (2, 1));
        assert_eq!(at("length,count\n40,2\nlong,2\n"), (3, 1));
        assert_eq!(at("length,count\n40,two\n"), (2, 4));
        assert_eq!(at("length,count\n200,2\n"), (2, 1));
        assert_eq!(at("length,count,factory end\n40,2,both\n"), (2, 6));
        // Its other end would be as it left the works too: it is a whole panel, or shorter than that.
        assert_eq!(at("length,count,factory end\n40,2,\n150,2,left\n"), (3, 7));
        assert_eq!(at("length,count,factory end\n149.95,2,none\n"), (2, 10));
        assert_eq!(at("length,count\n40,60000\n41,40000\n42,1\n"), (4, 4));
        // What follows would be lost in the cell that is not closed.
        assert_eq!(at("length,count\n40,2\n\"64 1/2,3\n36,\"4\"\n"), (3, 1));
    }
}
