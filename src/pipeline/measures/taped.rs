//! What was taped, from the table that `measure` writes.

use std::collections::BTreeMap;

use crate::finding::Refusal;
use crate::finding::taped::TapedFinding;
use crate::units::{Unit, parse_length};

/// Reads `measured.csv`: each row names a measure in its column `measure`, and the column `taped` has the length
/// found, as a text with its unit (`12'-6 1/2"`) or a number of `bare` units; a row without one says nothing. Cells
/// are parted by commas, or by semicolons where the first line has some and no comma.
///
/// # Errors
/// `measured-unreadable` with the line: a column that is missing, a length that cannot be read, a measure twice.
pub fn read(bytes: &[u8], name: &str, bare: Unit) -> Result<BTreeMap<String, f64>, Refusal> {
    let text = String::from_utf8_lossy(bytes);
    let text = text.strip_prefix('\u{feff}').unwrap_or(&text);
    let refused = |line: usize, said: &str| {
        let (file, said) = (name.to_owned(), said.to_owned());
        Refusal::new(TapedFinding::Unreadable { file, line, said })
    };
    let first = text.lines().next().unwrap_or_default();
    let between = if first.contains(';') && !first.contains(',') { ';' } else { ',' };
    let mut rows = rows(text, between).into_iter();
    let (_, head) = rows.next().unwrap_or_default();
    let column = |called: &str| head.iter().position(|h| h.trim().eq_ignore_ascii_case(called));
    let (Some(measure), Some(taped)) = (column("measure"), column("taped")) else {
        return Err(refused(1, &head.join(", ")));
    };
    let mut out = BTreeMap::new();
    for (line, row) in rows {
        let cell = |i: usize| row.get(i).map_or("", |c| c.trim());
        let (key, said) = (cell(measure), cell(taped));
        if key.is_empty() || said.is_empty() {
            continue;
        }
        let length = parse_length(said, bare).filter(|l| l.is_finite());
        let length = length.ok_or_else(|| refused(line, said))?;
        if out.insert(key.to_owned(), length).is_some() {
            return Err(refused(line, key));
        }
    }
    Ok(out)
}

/// Rows of cells with the line that each begins in, by RFC 4180: a cell in quotes may hold anything, a quote twice.
fn rows(text: &str, between: char) -> Vec<(usize, Vec<String>)> {
    let mut out = Vec::new();
    let (mut row, mut cell) = (Vec::new(), String::new());
    let (mut quoted, mut line, mut begun) = (false, 1, 1);
    let mut all = text.chars().chain(['\n']).peekable();
    while let Some(c) = all.next() {
        match c {
            '"' if quoted && all.peek() == Some(&'"') => {
                all.next();
                cell.push('"');
            }
            '"' if quoted || cell.trim().is_empty() => quoted = !quoted,
            '\r' => {}
            '\n' if !quoted => {
                row.push(std::mem::take(&mut cell));
                if row.iter().any(|c: &String| !c.trim().is_empty()) {
                    out.push((begun, std::mem::take(&mut row)));
                }
                row.clear();
                line += 1;
                begun = line;
            }
            c if c == between && !quoted => row.push(std::mem::take(&mut cell)),
            c => {
                line += usize::from(c == '\n');
                cell.push(c);
            }
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lengths_are_read_as_they_are_written_on_site() {
        let text = "\"measure\",\"drawn\",\"taped\"\r\n\"a/width\",36,\"3'-0 1/2\"\"\"\r\nb/width,36,35.75\r\nc/width,36,\r\nd/width,36,910mm\r\n";
        let read = read(text.as_bytes(), "m.csv", Unit::Inch).unwrap();
        let all: Vec<(&str, f64)> = read.iter().map(|(k, v)| (k.as_str(), *v)).collect();
        assert_eq!(all[0], ("a/width", 36.5));
        assert_eq!(all[1], ("b/width", 35.75));
        assert_eq!((all[2].0, (all[2].1 * 25.4).round()), ("d/width", 910.0));
        assert_eq!(all.len(), 3, "a blank says nothing");
    }

    #[test]
    fn what_cannot_be_read_is_told_with_its_line() {
        for (text, line) in [
            ("name;taped\na;1\n", 1),
            ("measure,taped\na/width,long\n", 2),
            ("measure,taped\na/width,1\n\na/width,2\n", 4),
        ] {
            let why = read(text.as_bytes(), "m.csv", Unit::Inch).unwrap_err();
            let said = format!("{:?}", why.0.kind);
            assert!(said.contains(&format!("line: {line}")), "{said}");
        }
    }
}
