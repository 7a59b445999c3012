//! The bar of a failed check on what is seen and printed: pages of the PDF, pictures, the workbook, the
//! overview, the table that compares. A house that bears no siding is the shortest that fails.

use std::collections::BTreeMap;
use std::path::Path;

use assert_cmd::Command;
use lapwright::layout::Layout;
use lapwright::layout::set::LaidSet;
use lapwright::model::drawing::Shape;
use lapwright::model::sheet::Sheet;
use lapwright::outputs::set;
use lapwright::verify;
use resvg::tiny_skia::Pixmap;

use crate::inflate::{inflated, streams};
use crate::sheets::texts;
use crate::support::{dxf, inches, laid_set, lay_set, rect, root};

const BAR: &str = "CHECK FAILED: ";

/// A sample with pieces taken off its walls, checked again.
fn broken(stem: &str, remove: fn(&mut Layout)) -> LaidSet {
    let mut set = laid_set(stem);
    remove(&mut set.layout);
    set.layout.verify = verify::check(&set.layout);
    assert!(!set.layout.verify.passes());
    set
}

fn files(stem: &str, remove: fn(&mut Layout), pictures: bool) -> BTreeMap<String, Vec<u8>> {
    let source = root().join("sample-drawings").join(stem).with_extension("dxf");
    let set = broken(stem, remove);
    set::files(&set, &std::fs::read(source).unwrap(), pictures).unwrap().into_iter().collect()
}

fn first_piece(l: &mut Layout) {
    l.elevations[0].walls[0].courses[2].runs[0].pieces.remove(0);
}

/// Codes of the letters that a page of a PDF shows: two bytes each, in round brackets, with escapes
/// (ISO 32000-1, 7.3.4.2).
fn codes(page: &str) -> Vec<u16> {
    let mut bytes = Vec::new();
    let mut rest = page.chars().peekable();
    let mut within = false;
    while let Some(c) = rest.next() {
        match (within, c) {
            (false, '(') => within = true,
            (true, ')') => within = false,
            (true, '\\') => {
                let mut octal = String::new();
                while let Some(d) = rest.next_if(|d| octal.len() < 3 && d.is_digit(8)) {
                    octal.push(d);
                }
                let named = |c: char| match c {
                    'n' => b'\n',
                    'r' => b'\r',
                    't' => b'\t',
                    'b' => 8,
                    'f' => 12,
                    other => other as u8,
                };
                bytes.push(match u8::from_str_radix(&octal, 8) {
                    Ok(byte) => byte,
                    Err(_) => rest.next().map_or(0, named),
                });
            }
            (true, c) => bytes.push(c as u8),
            (false, _) => {}
        }
    }
    bytes.chunks_exact(2).map(|b| u16::from_be_bytes([b[0], b[1]])).collect()
}

/// Letters by their codes, a table a typeface (ISO 32000-1, 9.10.3).
fn letters(table: &str) -> BTreeMap<u16, char> {
    let pairs = table.lines().filter_map(|l| {
        let (code, letter) = l.strip_prefix('<')?.split_once("> <")?;
        let number = |hex: &str| u16::from_str_radix(hex, 16).ok();
        let letter = char::from_u32(u32::from(number(letter.trim_end_matches('>'))?))?;
        Some((number(code)?, letter))
    });
    pairs.collect()
}

#[test]
fn every_page_and_picture_has_a_red_bar_with_the_words() {
    let files = files("one-wall", first_piece, true);
    let sheets = files.keys().filter(|n| n.ends_with(".svg")).count();
    let streams = streams(&files["sheets.pdf"]);
    let typefaces: Vec<_> =
        streams.iter().filter(|s| s.contains("beginbfchar")).map(|s| letters(s)).collect();
    let pages: Vec<&String> =
        streams.iter().filter(|s| s.contains("BT") && s.contains("Tf")).collect();
    for (i, page) in pages.iter().enumerate() {
        // The red of the bar, 160 of 255, fills nothing else.
        assert!(page.contains("0.627451 0 0 rg"), "page {}", i + 1);
        let codes = codes(page);
        let said = |face: &BTreeMap<u16, char>| -> String {
            codes.iter().filter_map(|c| face.get(c)).filter(|c| **c != ' ').collect()
        };
        let words: Vec<String> = typefaces.iter().map(said).collect();
        assert!(words.iter().any(|w| w.contains("CHECKFAILED:")), "page {}", i + 1);
    }
    assert!(sheets >= 5 && pages.len() == sheets, "{} pages, {sheets} sheets", pages.len());
    // The bar is wider than half of the paper and of the red of a warning; nothing else on a sheet is.
    let red = |p: &resvg::tiny_skia::PremultipliedColorU8| {
        p.red() > 140 && p.green() < 40 && p.blue() < 40
    };
    let mut pictures = 0;
    for (name, bytes) in files.iter().filter(|f| f.0.ends_with(".png")) {
        let picture = Pixmap::decode_png(bytes).unwrap();
        let wide = picture.width() as usize;
        let bar = picture.pixels().chunks(wide).take(picture.height() as usize / 8);
        let most = bar.map(|row| row.iter().filter(|p| red(p)).count()).max().unwrap();
        assert!(most > wide / 2, "{name}: {most} red of {wide}");
        pictures += 1;
    }
    assert_eq!(pictures, sheets);
}

/// Files of a zip archive that are packed or stored, by their local headers (APPNOTE 4.3.7).
fn unzipped(zip: &[u8]) -> BTreeMap<String, String> {
    let number = |at: usize, bytes: usize| {
        (0..bytes).fold(0usize, |n, i| n | usize::from(zip[at + i]) << (8 * i))
    };
    // By the directory at the end, since a local header may leave sizes to what follows the file.
    let end = zip.windows(4).rposition(|w| w == b"PK\x05\x06").unwrap();
    let (count, mut at) = (number(end + 10, 2), number(end + 16, 4));
    let mut out = BTreeMap::new();
    for _ in 0..count {
        let (packed, size) = (number(at + 20, 4), number(at + 24, 4));
        let (name, more, note) = (number(at + 28, 2), number(at + 30, 2), number(at + 32, 2));
        let local = number(at + 42, 4);
        let called = String::from_utf8_lossy(&zip[at + 46..at + 46 + name]).into_owned();
        let from = local + 30 + number(local + 26, 2) + number(local + 28, 2);
        let body = &zip[from..from + packed];
        let text = if number(at + 10, 2) == 0 {
            body.to_vec()
        } else {
            // The same stream as in a PDF, without its head of two bytes.
            inflated(&[b"\x78\x9c", body].concat()).unwrap()
        };
        assert_eq!(text.len(), size, "{called}");
        out.insert(called, String::from_utf8_lossy(&text).into_owned());
        at += 46 + name + more + note;
    }
    out
}

#[test]
fn the_bar_of_every_sheet_of_the_workbook_is_red() {
    let book = unzipped(&files("one-gable", first_piece, false)["takeoff.xlsx"]);
    let styles = &book["xl/styles.xml"];
    let list = |from: &str, to: &str, each: &str| -> Vec<String> {
        let inner = styles.split(from).nth(1).unwrap().split(to).next().unwrap();
        inner.split(each).skip(1).map(str::to_owned).collect()
    };
    let fills = list("<fills", "</fills>", "<fill>");
    let formats = list("<cellXfs", "</cellXfs>", "<xf ");
    let quoted = |text: &str, key: &str| -> usize {
        let at = text.split(&format!("{key}=\"")).nth(1).unwrap();
        at.split('"').next().unwrap().parse().unwrap()
    };
    let sheets: Vec<_> = book.iter().filter(|f| f.0.starts_with("xl/worksheets/sheet")).collect();
    assert!(sheets.len() >= 7);
    for (name, xml) in sheets {
        let cell = xml.split("<c r=\"A1\"").nth(1).unwrap().split('>').next().unwrap();
        let format = &formats[quoted(cell, " s")];
        let fill = &fills[quoted(format, "fillId")];
        assert!(fill.contains("FFA00000"), "{name}: {fill}");
    }
}

fn is_overview(s: &Sheet) -> bool {
    s.description.contains("with names of walls and openings")
}

#[test]
fn the_overview_circles_and_numbers_every_place_too() {
    let set = broken("curlew-cottage", |l| {
        for (e, c) in [(1, 2), (1, 5), (2, 4)] {
            l.elevations[e].walls[0].courses[c].runs[0].pieces.remove(0);
        }
    });
    let sheets = lapwright::annotate::sheets(&set.layout, &set.backdrops);
    let overviews: Vec<&Sheet> = sheets.iter().filter(|s| is_overview(s)).collect();
    let placed: Vec<_> = set.layout.verify.numbered().filter(|(_, v)| v.at.is_some()).collect();
    assert!(placed.len() > 4);
    for (number, _) in &placed {
        let mark = format!("FAIL {number}");
        let marks = overviews.iter().flat_map(|s| texts(s)).filter(|t| t.content == mark).count();
        assert_eq!(marks, 1, "{mark}");
    }
    for s in &overviews {
        crate::sheets::legible("broken", s);
    }
    // Pieces were taken out at three places, none within 6 in of another: as many circles at least.
    let rings = overviews.iter().flat_map(|s| {
        s.drawing.items.iter().filter(|i| {
            s.drawing.layers[i.layer].name == "faults"
                && matches!(&i.shape, Shape::Polyline(p) if p.closed && p.vertices.len() == 24)
        })
    });
    assert!(rings.count() >= 3);
    // A sound house has none.
    let set = laid_set("curlew-cottage");
    for s in lapwright::annotate::sheets(&set.layout, &set.backdrops) {
        assert!(s.drawing.layers.iter().all(|l| l.name != "faults"), "{}", s.name);
    }
}

/// A wall 20 ft by 8 ft, grade drawn so high.
fn in_the_ground(dir: &Path, grade: f64) -> (LaidSet, String) {
    let wall = dxf(&[("A-WALL-OTLN", &rect(0.0, 0.0, 240.0, 96.0))]);
    let ground = format!("0\nLINE\n8\nC-TOPO-PROF\n10\n-60\n20\n{grade}\n11\n300\n21\n{grade}\n");
    let drawing = wall.replace("0\nENDSEC\n", &format!("{ground}0\nENDSEC\n"));
    std::fs::write(dir.join("d.dxf"), &drawing).unwrap();
    let job = "[drawing]\nunit = \"inch\"\n[seams]\neffort = \"crew\"\n";
    std::fs::write(dir.join("d.toml"), job).unwrap();
    (lay_set(drawing.as_bytes(), &inches()), drawing)
}

fn run(dir: &Path, args: &[&str]) -> (Option<i32>, String, String) {
    let o = Command::cargo_bin("lapwright").unwrap().current_dir(dir).args(args).output().unwrap();
    let text = |b: &[u8]| String::from_utf8_lossy(b).into_owned();
    (o.status.code(), text(&o.stdout), text(&o.stderr))
}

#[test]
fn the_table_that_compares_is_under_the_bar_too() {
    let dir = tempfile::tempdir().unwrap();
    in_the_ground(dir.path(), 40.0);
    let args = ["layout", "d.dxf", "--job", "d.toml", "--compare-waiting"];
    for more in [&[][..], &["--quiet"]] {
        let (code, said, told) = run(dir.path(), &[&args[..], more].concat());
        assert_eq!(code, Some(4), "{told}");
        assert!(said.contains(BAR) && said.contains("offcuts that may wait"), "{said}");
        assert!(told.contains(BAR) && told.contains("FAIL 1"), "{told}");
    }
    in_the_ground(dir.path(), -20.0);
    let (code, said, _) = run(dir.path(), &args);
    assert!(code == Some(0) && !said.contains(BAR), "{said}");
}

#[test]
fn a_wall_without_siding_has_no_minus_nothing_anywhere() {
    let dir = tempfile::tempdir().unwrap();
    let (set, drawing) = in_the_ground(dir.path(), 95.0);
    assert_eq!(set.layout.pieces().count(), 0);
    let out = set::files(&set, drawing.as_bytes(), false).unwrap();
    let mut all: Vec<(String, String)> = out
        .into_iter()
        .filter(|f| !f.0.ends_with(".xlsx") && !f.0.ends_with(".html"))
        .map(|(n, b)| (n, String::from_utf8_lossy(&b).into_owned()))
        .collect();
    for args in
        [&["takeoff", "d.dxf", "--job", "d.toml"][..], &["check", "d.dxf", "--job", "d.toml"]]
    {
        let (_, said, told) = run(dir.path(), args);
        all.push((args[0].to_owned(), said + &told));
    }
    for (name, text) in &all {
        // Feet and inches are parted by one: 8'-0".
        for (i, _) in text.match_indices("-0") {
            let before = text[..i].chars().next_back().unwrap_or(' ');
            let number: String =
                text[i + 2..].chars().take_while(|c| c.is_ascii_digit() || *c == '.').collect();
            let nothing = number.chars().all(|c| matches!(c, '0' | '.'));
            let around = &text[i.saturating_sub(30)..(i + 12).min(text.len())];
            let word = before.is_alphanumeric() || matches!(before, '\'' | '-' | '"');
            assert!(word && !around.contains("\"'-0") || !nothing, "{name}: {around}");
        }
    }
}
