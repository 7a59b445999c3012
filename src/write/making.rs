//! Whether a file is as the writers of this room make it, for folders from before a list of files stood
//! beside them. Form alone would take an edited table for our own: each file is also held against what
//! the layout beside it says. Where in doubt a file is not ours: then nothing is done to it.

use std::collections::{BTreeMap, BTreeSet};

use serde_json::Value;

use crate::typeface;
use crate::wording::{cautions, report, siding};

/// What the layout among some files says of the others.
pub struct Results {
    layout: Option<Value>,
    /// Item, net and order of each line of the takeoff.
    lines: BTreeMap<String, (f64, f64)>,
    /// Marks of pieces and trim.
    marks: BTreeSet<String>,
    /// Width and height of each sheet in dots, by its name without an ending.
    sheets: BTreeMap<String, [u32; 2]>,
}

/// Dots to the inch of a sheet's picture.
const DOTS_PER_INCH: f64 = 150.0;

impl Results {
    /// Reads what the layout among the files of a set says, by their names in its folder.
    pub fn of(files: &BTreeMap<&str, &[u8]>) -> Self {
        let layout = files.get("layout.json").and_then(|b| json(b, "lapwright-layout/"));
        let mut marks = BTreeSet::new();
        layout.iter().for_each(|l| collect_marks(l, &mut marks));
        let takeoff = files.get("takeoff.json").and_then(|b| json(b, "lapwright-takeoff/"));
        let lines = takeoff.iter().filter_map(|t| t["lines"].as_array()).flatten();
        let line = |l: &Value| {
            let id = l["id"].as_str()?.to_owned();
            Some((id, (l["net"].as_f64()?, l["order"].as_f64()?)))
        };
        let sheet = |(name, bytes): (&&str, &&[u8])| {
            let stem = name.strip_suffix(".svg")?;
            Some((stem.to_owned(), sheet_size(bytes)?))
        };
        Results {
            lines: lines.filter_map(line).collect(),
            sheets: files.iter().filter_map(sheet).collect(),
            layout,
            marks,
        }
    }

    /// Whether the file of this name is as it was made.
    pub fn made(&self, name: &str, bytes: &[u8]) -> bool {
        match name {
            "layout.json" => json(bytes, "lapwright-layout/").is_some(),
            "takeoff.json" => {
                json(bytes, "lapwright-takeoff/").is_some_and(|t| self.same_drawing(&t))
            }
            "takeoff.csv" => self.takeoff(bytes),
            "takeoff-by-wall.csv" => rows(bytes, "item,unit,elevation,wall").is_some(),
            "story-pole.csv" => rows(bytes, "height (").is_some(),
            "cut-list.csv" => self.cut_list(bytes),
            "takeoff.xlsx" => self.layout.is_some() && workbook(bytes),
            "report.txt" => self.report(bytes),
            "check.txt" => findings(bytes),
            "sheets.pdf" => self.layout.is_some() && pdf(bytes),
            "overlay.dxf" | "overlay-alone.dxf" => self.layout.is_some() && overlay(bytes),
            _ if name.ends_with(".svg") => sheet_size(bytes).is_some(),
            _ => name.strip_suffix(".png").is_some_and(|stem| self.picture(stem, bytes)),
        }
    }

    fn same_drawing(&self, other: &Value) -> bool {
        self.layout.as_ref().is_some_and(|l| l["drawing"] == other["drawing"])
    }

    /// Each row has the quantities of its line in `takeoff.json`; rows without a line are rules beside.
    fn takeoff(&self, bytes: &[u8]) -> bool {
        let Some(rows) = rows(bytes, "item,unit,net,order") else { return false };
        let head = rows.first().cloned().unwrap_or_default();
        let Some(id) = head.iter().position(|h| h == "id") else { return false };
        let mut seen = 0;
        for row in rows.iter().skip(1) {
            let Some((net, order)) = self.lines.get(&row[id]) else { continue };
            let same = |cell: &str, of: f64| {
                cell.parse::<f64>().is_ok_and(|v| (v - of).abs() <= 1e-3 * of.abs().max(0.1))
            };
            if !same(&row[2], *net) || !same(&row[3], *order) {
                return false;
            }
            seen += 1;
        }
        seen == self.lines.len()
    }

    fn cut_list(&self, bytes: &[u8]) -> bool {
        let Some(rows) = rows(bytes, "stock,mark,") else { return false };
        rows.iter().skip(1).all(|row| self.marks.contains(&row[1]))
    }

    /// It begins with its title and the drawing, and ends with a caution.
    fn report(&self, bytes: &[u8]) -> bool {
        let Ok(text) = std::str::from_utf8(bytes) else { return false };
        let words = |t: &str| t.split_whitespace().collect::<Vec<_>>().join(" ");
        let sha = self.layout.as_ref().and_then(|l| l["drawing"]["sha256"].as_str());
        let sha = sha.and_then(|s| s.get(..16)).map(|s| format!("(SHA-256 {s})"));
        let head = words(&text.chars().take(2000).collect::<String>());
        let text = words(text);
        let mut last = siding::every().flat_map(cautions::all);
        text.starts_with(report::TITLE)
            && sha.is_some_and(|s| head.contains(&s))
            && last.any(|caution| text.ends_with(caution.en))
    }

    /// A picture of a sheet: of its size, with the chunks that are written and no other.
    fn picture(&self, stem: &str, bytes: &[u8]) -> bool {
        let Some(mut rest) = bytes.strip_prefix(b"\x89PNG\r\n\x1a\n") else { return false };
        let (mut kinds, mut size) = (Vec::new(), None);
        while let Some((head, after)) = rest.split_at_checked(8) {
            let (length, kind) = head.split_at(4);
            let length = length.iter().fold(0, |n, b| n * 256 + usize::from(*b));
            if kind == b"IHDR" {
                let number = |at: usize| {
                    after.get(at..at + 4).map(|b| b.iter().fold(0, |n, b| n * 256 + u32::from(*b)))
                };
                size = number(0).zip(number(4)).map(|(w, h)| [w, h]);
            }
            kinds.push(kind);
            // The chunk and its check value.
            let Some(next) = length.checked_add(4).and_then(|n| after.get(n..)) else {
                return false;
            };
            rest = next;
        }
        kinds.dedup();
        // Its size on paper was not told before there were lists; it is now.
        kinds.retain(|k| *k != b"pHYs");
        let ours: [&[u8]; 3] = [b"IHDR", b"IDAT", b"IEND"];
        rest.is_empty() && kinds == ours && size.is_some() && size == self.sheets.get(stem).copied()
    }
}

/// JSON of a format, as it is written: any other spelling of it was made by someone else.
fn json(bytes: &[u8], format: &str) -> Option<Value> {
    let value: Value = serde_json::from_slice(bytes).ok()?;
    let mut written = serde_json::to_vec_pretty(&value).ok()?;
    written.push(b'\n');
    let named = value["format"].as_str().is_some_and(|f| f.starts_with(format));
    (named && written == bytes).then_some(value)
}

fn collect_marks(value: &Value, out: &mut BTreeSet<String>) {
    match value {
        Value::Array(list) => list.iter().for_each(|v| collect_marks(v, out)),
        Value::Object(map) => {
            out.extend(map.get("mark").and_then(Value::as_str).map(str::to_owned));
            map.values().for_each(|v| collect_marks(v, out));
        }
        _ => {}
    }
}

/// Rows of a table whose columns begin so, all of one length, spelled as our writer spells them.
fn rows(bytes: &[u8], columns: &str) -> Option<Vec<csv::StringRecord>> {
    let plain = String::from_utf8_lossy(bytes.get(..200.min(bytes.len()))?).replace('"', "");
    if !plain.starts_with(columns) {
        return None;
    }
    let mut reader = csv::ReaderBuilder::new().has_headers(false).from_reader(bytes);
    let rows: Vec<csv::StringRecord> = reader.records().collect::<Result<_, _>>().ok()?;
    spelled(&rows, bytes).then_some(rows)
}

/// Whether a table is nothing but its cells, each bare or in quotes, with the line ends that are written.
fn spelled(rows: &[csv::StringRecord], bytes: &[u8]) -> bool {
    let mut rest = Some(bytes);
    for row in rows {
        for (i, cell) in row.iter().enumerate() {
            let quoted = format!("\"{}\"", cell.replace('"', "\"\""));
            let end: &[u8] = if i + 1 == row.len() { b"\r\n" } else { b"," };
            rest = rest
                .and_then(|r| {
                    r.strip_prefix(quoted.as_bytes()).or_else(|| r.strip_prefix(cell.as_bytes()))
                })
                .and_then(|r| r.strip_prefix(end));
        }
    }
    rest == Some(b"")
}

/// A sheet as SVG: its size in dots of a picture.
fn sheet_size(bytes: &[u8]) -> Option<[u32; 2]> {
    let text = std::str::from_utf8(bytes).ok()?;
    let head = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<svg height=\"";
    let (height, rest) = text.strip_prefix(head)?.split_once("in\" role=\"img\" viewBox=\"")?;
    let (_, rest) = rest.split_once("\" width=\"")?;
    let (width, rest) = rest.split_once("in\" xmlns=\"http://www.w3.org/2000/svg\">\n<title>")?;
    let style = format!("<style>\ntext{{font-family:'{}',sans-serif}}\n</style>", typeface::FAMILY);
    let dots = |inches: &str| inches.parse::<f64>().ok().map(|v| (v * DOTS_PER_INCH).ceil() as u32);
    let whole = rest.contains(&style) && rest.ends_with("\n</svg>\n") && !rest.contains("<!--");
    Some([dots(width)?, dots(height)?]).filter(|_| whole)
}

/// One file, not added to: whoever marks one up saves it anew, or puts a second end behind the first.
fn pdf(bytes: &[u8]) -> bool {
    let count = |what: &[u8]| memchr::memmem::find_iter(bytes, what).count();
    bytes.starts_with(b"%PDF-1.7")
        && bytes.trim_ascii_end().ends_with(b"%%EOF")
        && count(b"%%EOF") == 1
        && count(b"/Creator(Lapwright)") == 1
}

/// Parts of a workbook in the order that its writer packs them; programs that save it again have others.
fn workbook(bytes: &[u8]) -> bool {
    // Names in the directory at the end, each behind its mark and 42 more bytes of figures.
    let mut names = Vec::new();
    for at in memchr::memmem::find_iter(bytes, b"PK\x01\x02") {
        let length =
            bytes.get(at + 28..at + 30).map(|b| usize::from(b[0]) + 256 * usize::from(b[1]));
        names.extend(length.and_then(|n| bytes.get(at + 46..at + 46 + n)));
    }
    let first: [&[u8]; 4] = [
        b"[Content_Types].xml",
        b"_rels/.rels",
        b"xl/_rels/workbook.xml.rels",
        b"xl/theme/theme1.xml",
    ];
    let last: [&[u8]; 3] = [b"xl/sharedStrings.xml", b"docProps/core.xml", b"docProps/app.xml"];
    bytes.starts_with(b"PK\x03\x04") && names.starts_with(&first) && names.ends_with(&last)
}

/// A drawing whose last entity is one of the overlay's.
fn overlay(bytes: &[u8]) -> bool {
    let text = String::from_utf8_lossy(bytes);
    let lines: Vec<&str> = text.lines().map(str::trim).collect();
    let pairs: Vec<(&str, &str)> = lines.chunks_exact(2).map(|pair| (pair[0], pair[1])).collect();
    let start = pairs.iter().position(|p| *p == ("2", "ENTITIES"));
    let entities = start.map_or(&[][..], |s| &pairs[s..]);
    let end = entities.iter().position(|p| *p == ("0", "ENDSEC")).unwrap_or(0);
    let layer = entities[..end].iter().rev().find(|p| p.0 == "8");
    pairs.last() == Some(&("0", "EOF")) && layer.is_some_and(|l| l.1.starts_with("Z-ELEV-"))
}

/// The text of a check: walls and findings, each block under a head.
fn findings(bytes: &[u8]) -> bool {
    let Ok(text) = std::str::from_utf8(bytes) else { return false };
    let head = |line: &&str| {
        ["  note ", "  WARNING ", "  ERROR "].iter().any(|h| line.starts_with(h))
            && line.contains(':')
    };
    let heads = text.lines().filter(head).count();
    let advice = text.lines().filter(|l| l.starts_with("     -> ")).count();
    heads > 0 && heads == advice && text.lines().rev().take(1).all(|l| l.starts_with("     "))
}
