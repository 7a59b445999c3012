//! Rows of a CSV file that a user gives, each cell with its place: price lists, what was taped, what lies on the
//! site. Cells are parted by commas, or by semicolons where the first line has some and no comma, as spreadsheets
//! write them where the comma is decimal.

/// A cell with its place: line and column from 1, columns in characters.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Cell {
    /// What it holds, without blanks round it.
    pub(crate) text: String,
    /// Its line.
    pub(crate) line: usize,
    /// Its column.
    pub(crate) column: usize,
}

/// The rows of a file; blank ones are left out.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct CsvRows {
    /// Row by row, the head first.
    pub(crate) rows: Vec<Vec<Cell>>,
    /// Whether semicolons part the cells.
    pub(crate) semicolons: bool,
}

/// Why a file is no table, with line and column from 1.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Misread {
    /// The line.
    pub(crate) line: usize,
    /// The column.
    pub(crate) column: usize,
    /// What is wrong.
    pub(crate) fault: CsvFault,
}

/// What is wrong with a table.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum CsvFault {
    /// It is not UTF-8.
    NotUtf8,
    /// The quotation mark that a cell begins with is not closed, or something follows where it is.
    QuoteOpen,
}

/// Reads rows by RFC 4180: a cell in quotes may hold anything, a quote twice. A quote within a cell that begins
/// otherwise is an inch mark like any letter.
///
/// # Errors
/// Not UTF-8; a quotation mark that stays open, by the cell that it begins: what follows would be lost in it.
pub(crate) fn read(bytes: &[u8]) -> Result<CsvRows, Misread> {
    let text = std::str::from_utf8(bytes).map_err(|e| {
        let line = bytes[..e.valid_up_to()].iter().filter(|b| **b == b'\n').count() + 1;
        Misread { line, column: 1, fault: CsvFault::NotUtf8 }
    })?;
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    let first = text.lines().find(|l| !l.trim().is_empty()).unwrap_or_default();
    let semicolons = first.contains(';') && !first.contains(',');
    let mut rows = cells(text, if semicolons { ';' } else { ',' })?;
    rows.retain(|r| r.iter().any(|c| !c.text.trim().is_empty()));
    for c in rows.iter_mut().flatten() {
        c.text = c.text.trim().to_owned();
    }
    Ok(CsvRows { rows, semicolons })
}

fn cells(text: &str, between: char) -> Result<Vec<Vec<Cell>>, Misread> {
    let open = |c: &Cell| Misread { line: c.line, column: c.column, fault: CsvFault::QuoteOpen };
    let mut rows = Vec::new();
    let mut row: Vec<Cell> = Vec::new();
    let (mut line, mut column) = (1, 1);
    let mut cell = Cell { line, column, ..Cell::default() };
    let (mut quoted, mut was_quoted) = (false, false);
    let mut chars = text.chars().peekable();
    while let Some(c) = chars.next() {
        column += 1;
        match c {
            '"' if quoted && chars.peek() == Some(&'"') => {
                chars.next();
                column += 1;
                cell.text.push('"');
            }
            '"' if quoted => quoted = false,
            '"' if cell.text.trim().is_empty() && !was_quoted => {
                cell.text.clear();
                (quoted, was_quoted) = (true, true);
            }
            c if !quoted && (c == between || c == '\n') => {
                row.push(std::mem::take(&mut cell));
                was_quoted = false;
                if c == '\n' {
                    (line, column) = (line + 1, 1);
                    rows.push(std::mem::take(&mut row));
                }
                (cell.line, cell.column) = (line, column);
            }
            '\r' if !quoted && chars.peek().is_none_or(|n| *n == '\n') => {}
            // The quote that closed the cell was another's: what stands before it was taken in by mistake.
            c if was_quoted && !quoted && !c.is_whitespace() => return Err(open(&cell)),
            _ => {
                if c == '\n' {
                    (line, column) = (line + 1, 1);
                }
                cell.text.push(c);
            }
        }
    }
    if quoted {
        return Err(open(&cell));
    }
    row.push(cell);
    rows.push(row);
    Ok(rows)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn texts(text: &str) -> Vec<Vec<String>> {
        let rows = read(text.as_bytes()).unwrap().rows;
        rows.into_iter().map(|r| r.into_iter().map(|c| c.text).collect()).collect()
    }

    /// The examples of RFC 4180, section 2, rules 1 to 7, but that blanks round a cell go.
    #[test]
    fn rows_are_read_by_the_standard() {
        assert_eq!(
            texts("aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n"),
            [["aaa", "bbb", "ccc"], ["zzz", "yyy", "xxx"]]
        );
        assert_eq!(
            texts("aaa,bbb,ccc\r\nzzz,yyy,xxx"),
            [["aaa", "bbb", "ccc"], ["zzz", "yyy", "xxx"]]
        );
        assert_eq!(
            texts("\"aaa\",\"bbb\",\"ccc\"\r\nzzz,yyy,xxx"),
            [["aaa", "bbb", "ccc"], ["zzz", "yyy", "xxx"]]
        );
        assert_eq!(
            texts("\"aaa\",\"b\r\nbb\",\"ccc\"\r\nzzz,yyy,xxx"),
            [["aaa", "b\r\nbb", "ccc"], ["zzz", "yyy", "xxx"]]
        );
        assert_eq!(texts("\"aaa\",\"b\"\"bb\",\"ccc\""), [["aaa", "b\"bb", "ccc"]]);
    }

    #[test]
    fn inch_marks_are_no_quotes() {
        assert_eq!(texts("a;12'-6\";\"64 1/2\"\"\"\n"), [["a", "12'-6\"", "64 1/2\""]]);
    }

    #[test]
    fn cells_know_their_places() {
        let rows = read("\u{feff}a,b\n\n c,\"d\ne\", f\n".as_bytes()).unwrap().rows;
        let at: Vec<(usize, usize)> = rows.iter().flatten().map(|c| (c.line, c.column)).collect();
        assert_eq!(at, [(1, 1), (1, 3), (3, 1), (3, 4), (4, 4)]);
    }

    #[test]
    fn a_quote_that_stays_open_takes_in_no_rows() {
        let at = |text: &str| {
            let m = read(text.as_bytes()).unwrap_err();
            assert_eq!(m.fault, CsvFault::QuoteOpen);
            (m.line, m.column)
        };
        assert_eq!(at("a,b\n1,\"2\n3,4\n"), (2, 3));
        // The next quoted cell would close it.
        assert_eq!(at("a,b\n1,\"2\n3,\"4\"\n"), (2, 3));
        assert_eq!(at("a,b\n\"1\" 2,3\n"), (2, 1));
        let m = read(b"a\nb\n\xff\n").unwrap_err();
        assert_eq!(m, Misread { line: 3, column: 1, fault: CsvFault::NotUtf8 });
    }
}
