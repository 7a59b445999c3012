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

use crate::finding::Refusal;
use crate::finding::files::{FileFinding, StockFault};
use crate::layout::at_hand::{AtHand, FactoryEnd};
use crate::units::{Unit, parse_length};

/// A length that differs from the panel's by less is the panel's, inches: a mark of the tape.
const SAME: f64 = 1.0 / 16.0;
/// Most of one sort that a list may name: no site holds more.
const MOST: usize = 100_000;

/// Reads a list for panels of this length; `name` is what errors call it.
///
/// # Errors
/// `stock-unreadable` with line and column.
pub fn parse(bytes: &[u8], name: &str, panel: f64) -> Result<Vec<AtHand>, Refusal> {
    let refused = |line: usize, column: usize, fault: StockFault| {
        Refusal::new(FileFinding::StockUnreadable { file: name.to_owned(), line, column, fault })
    };
    let text = std::str::from_utf8(bytes).map_err(|e| {
        let line = bytes[..e.valid_up_to()].iter().filter(|b| **b == b'\n').count() + 1;
        refused(line, 1, StockFault::NotUtf8)
    })?;
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    let mut lines = text.lines().enumerate().filter(|(_, l)| !l.trim().is_empty());
    let Some((at, head)) = lines.next() else { return Err(refused(1, 1, StockFault::Empty)) };
    let by = if head.contains(';') && !head.contains(',') { ';' } else { ',' };
    let names = cells(head, by);
    let find = |wanted: &str| names.iter().position(|(_, c)| c.trim().to_lowercase() == wanted);
    let missing =
        |column: &str| refused(at + 1, 1, StockFault::ColumnMissing { column: column.to_owned() });
    let length = find("length").ok_or_else(|| missing("length"))?;
    let count = find("count").ok_or_else(|| missing("count"))?;
    let end = find("factory end");
    let mut out = Vec::new();
    for (i, line) in lines {
        let row = cells(line, by);
        let cell =
            |k: usize| row.get(k).cloned().unwrap_or((line.chars().count() + 1, String::new()));
        let (column, told) = cell(length);
        let found = parse_length(&told, Unit::Inch).filter(|v| v.is_finite() && *v > 0.0);
        let found = found
            .ok_or_else(|| refused(i + 1, column, StockFault::Length { text: told.clone() }))?;
        if found > panel + SAME {
            let fault = StockFault::LongerThanPanel { length: found, panel };
            return Err(refused(i + 1, column, fault));
        }
        let (column, told) = cell(count);
        let many = told.trim().parse::<usize>().ok().filter(|n| *n <= MOST);
        let many =
            many.ok_or_else(|| refused(i + 1, column, StockFault::Count { text: told.clone() }))?;
        let whole = found >= panel - SAME;
        let (column, told) = end.map_or((1, String::new()), cell);
        let end = match told.trim().to_lowercase().as_str() {
            "" if whole => FactoryEnd::Both,
            "" | "none" => FactoryEnd::None,
            "left" => FactoryEnd::Left,
            "right" => FactoryEnd::Right,
            "both" if whole => FactoryEnd::Both,
            _ => return Err(refused(i + 1, column, StockFault::End { text: told })),
        };
        let length = if end == FactoryEnd::Both { panel } else { found };
        out.push(AtHand { length, count: many, end });
    }
    Ok(out)
}

/// The cells of a line with their columns, from 1; a quote within quotes is doubled.
fn cells(line: &str, by: char) -> Vec<(usize, String)> {
    let mut out = vec![(1, String::new())];
    let mut quoted = false;
    let mut letters = line.chars().enumerate().peekable();
    while let Some((i, c)) = letters.next() {
        let Some(last) = out.last_mut() else { break };
        let begins = last.1.trim().is_empty();
        match c {
            '"' if quoted && letters.peek().is_some_and(|n| n.1 == '"') => {
                last.1.push('"');
                letters.next();
            }
            '"' if quoted => quoted = false,
            // Inches stand after a figure: a quote begins a cell only where nothing stands before it.
            '"' if begins => quoted = true,
            c if c == by && !quoted => out.push((i + 2, String::new())),
            c => last.1.push(c),
        }
    }
    out
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
        assert_eq!(at("length\n40\n"), (1, 1));
        assert_eq!(at("length,count\n40,2\nlong,2\n"), (3, 1));
        assert_eq!(at("length,count\n40,two\n"), (2, 4));
        assert_eq!(at("length,count\n200,2\n"), (2, 1));
        assert_eq!(at("length,count,factory end\n40,2,both\n"), (2, 6));
    }
}
