//! What was taped, from the table that `measure` writes.

use std::collections::BTreeMap;

use crate::csv_rows::{self, Cell, CsvFault, Misread};
use crate::finding::Refusal;
use crate::finding::taped::{TapedFault, TapedFinding};
use crate::model::measure::MeasureKind;
use crate::units::{Unit, parse_length};

/// A taped length farther off the drawn one of its row than this, and than half of that, is a slip of the pen or of
/// the unit, inches: of our own choosing, no source.
const FAR: f64 = 120.0;

/// Reads `measured.csv`: each row names a measure in its column `measure`, and the column `taped` has the length
/// found, as a text with its unit (`12'-6 1/2"`) or a number of `bare` units; a row without one says nothing. Cells
/// are parted by commas, or by semicolons where the first line has some and no comma.
///
/// # Errors
/// `measured-unreadable` with the line: a column that is missing, a quotation mark that stays open, a length that
/// cannot be read, one that its measure cannot have or that is far off the drawn one, a measure twice.
pub fn read(bytes: &[u8], name: &str, bare: Unit) -> Result<BTreeMap<String, f64>, Refusal> {
    let refused = |line: usize, fault: TapedFault| {
        Refusal::new(TapedFinding::Unreadable { file: name.to_owned(), line, fault })
    };
    // Spreadsheets may write titles of elevations otherwise than in UTF-8: nothing hangs on them.
    let text = String::from_utf8_lossy(bytes);
    let misread = |Misread { line, fault, .. }: Misread| match fault {
        CsvFault::NotUtf8 | CsvFault::QuoteOpen => refused(line, TapedFault::QuoteOpen),
    };
    let mut rows = csv_rows::read(text.as_bytes()).map_err(misread)?.rows.into_iter();
    let head = rows.next().unwrap_or_default();
    let line = head.first().map_or(1, |c| c.line);
    let find = |called: &str| head.iter().position(|h| h.text.eq_ignore_ascii_case(called));
    let column = |called: &str| {
        let missing = || refused(line, TapedFault::ColumnMissing { column: called.to_owned() });
        find(called).ok_or_else(missing)
    };
    let (measure, taped, drawn) = (column("measure")?, column("taped")?, find("drawn"));
    let mut out = BTreeMap::new();
    for row in rows {
        let cell = |i: usize| row.get(i).cloned().unwrap_or_default();
        let (key, said) = (cell(measure), cell(taped));
        if said.text.is_empty() {
            continue;
        }
        if key.text.is_empty() {
            return Err(refused(said.line, TapedFault::NoMeasure { text: said.text }));
        }
        let as_drawn = drawn.and_then(|i| parse_length(&cell(i).text, bare));
        let length = length((&key, &said), as_drawn, bare).map_err(|f| refused(said.line, f))?;
        if out.insert(key.text.clone(), length).is_some() {
            return Err(refused(key.line, TapedFault::Twice { measure: key.text }));
        }
    }
    Ok(out)
}

/// The length that a cell says, where its measure can have it.
fn length((key, said): (&Cell, &Cell), drawn: Option<f64>, bare: Unit) -> Result<f64, TapedFault> {
    let text = || said.text.clone();
    let length = parse_length(&said.text, bare).filter(|l| l.is_finite());
    let length = length.ok_or_else(|| TapedFault::NoLength { text: text() })?;
    let kind = MeasureKind::of_name(&key.text);
    if !kind.is_none_or(|k| k.may_be(length)) {
        return Err(TapedFault::Beyond { measure: key.text.clone(), text: text() });
    }
    match drawn.filter(|d| (d - length).abs() > FAR.max(d.abs() / 2.0)) {
        Some(drawn) => Err(TapedFault::FarOff { text: text(), drawn }),
        None => Ok(length),
    }
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
            // Rows that a quote took in were lost before, without a word.
            ("measure,taped\na/width,1\n\"b/width,2\nc/width,3\n", 3),
            ("measure,taped\na/width,\"1\nb/width,\"2\"\n", 2),
            ("measure,taped\na/width,1\n,36\n", 3),
            // No width is under nothing, none is wider than any house; levels may lie under the floor line.
            ("measure,taped\na/sill,-3\nb/width,-36\n", 3),
            ("measure,taped\na/width,0\n", 2),
            ("measure,taped\na/left-foot,-400\na/foot-width,90000\n", 3),
            ("measure,taped\na/left-lean,-1\na/right-lean,240\n", 3),
            ("measure,taped\na/width,NaN\n", 2),
            // 7,320 mm taken for inches.
            ("measure,drawn,taped\na/foot-width,24',24.5'\nb/foot-width,24',7320\n", 3),
        ] {
            let why = read(text.as_bytes(), "m.csv", Unit::Inch).unwrap_err();
            let said = format!("{:?}", why.0.kind);
            assert!(said.contains(&format!("line: {line}")), "{said}");
        }
    }
}
