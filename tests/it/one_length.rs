//! A piece has one length: every place where it is written tells the same, on sheets, in lists, in the workbook,
//! in the cut list, in the report, and as `layout.json` has it when it is rounded by the rule.

use std::collections::BTreeMap;
use std::io::Cursor;

use calamine::{Data, Reader, Xlsx};
use lapwright::layout::piece::Piece;
use lapwright::layout::set::LaidSet;
use lapwright::model::sheet::Sheet;
use lapwright::units::LengthStyle;
use lapwright::wording::wall_sheets::RAKE_HEADS;
use lapwright::write;

use crate::sheets::{of_wall, prefix, texts, told};
use crate::support::{lay_set, root};

/// The cottage, laid by a crew, with lengths in one of the styles.
fn cottage(style: LengthStyle) -> LaidSet {
    let path = root().join("sample-drawings/curlew-cottage.dxf");
    let mut job = crate::support::job(&path);
    job.sheet.lengths = style;
    job.seams.effort = lapwright::model::seam::Effort::Crew;
    lay_set(&std::fs::read(&path).unwrap(), &job)
}

/// Every place where a length was found, by the piece's mark: where, and what it says.
#[derive(Default)]
struct Found(BTreeMap<String, Vec<(&'static str, String)>>);

impl Found {
    fn add(&mut self, mark: &str, at: &'static str, said: &str) {
        // A hard space is a space, and a length of a table of inches stands without its unit.
        let said = said.replace('\u{a0}', " ").trim_end_matches(" mm").to_owned();
        self.0.entry(mark.to_owned()).or_default().push((at, said));
    }
}

/// The length that a text begins with: to its inch sign, or its figures.
fn first_length(text: &str, style: LengthStyle) -> Option<String> {
    let end = match style {
        LengthStyle::Feet => text.find('"')? + 1,
        LengthStyle::Mm => text.find(|c: char| !c.is_ascii_digit()).unwrap_or(text.len()),
    };
    let said = &text[..end];
    said.starts_with(|c: char| c.is_ascii_digit()).then(|| said.to_owned())
}

/// Drawing, saw list and table of rakes of a wall's sheets.
fn on_wall(pre: &str, own: &[&Sheet], style: LengthStyle, found: &mut Found) {
    let mark = |short: &str| format!("{pre}-{short}");
    let is_short = |t: &str| {
        t.split_once('-').is_some_and(|(a, b)| {
            !a.is_empty()
                && !b.is_empty()
                && [a, b].iter().all(|t| t.bytes().all(|c| c.is_ascii_digit()))
        })
    };
    let (mut batch, mut in_rakes) = (None, false);
    let mut raked: Option<(String, Vec<String>)> = None;
    for t in own.iter().flat_map(|s| texts(s)) {
        let content = t.content.replace('\u{a0}', " ");
        if let Some((short, said)) = content.split_once("  ").filter(|(s, _)| is_short(s)) {
            found.add(&mark(short), "drawing", said);
        } else if t.bold {
            in_rakes = content.starts_with("Rakes")
                || (in_rakes && RAKE_HEADS.iter().any(|h| h.en == content));
            batch = content.split_once(" at ").and_then(|(_, l)| first_length(l, style));
        } else if in_rakes && is_short(&content) {
            // A row of the table of rakes: the piece, then its bottom and its top edge.
            raked = Some((mark(&content), Vec::new()));
        } else if let Some((mark, edges)) = &mut raked {
            edges.extend(first_length(&content, style));
            if edges.len() == 2 {
                let inches =
                    |s: &String| lapwright::units::parse_length(s, lapwright::units::Unit::Mm);
                let longer = edges.iter().max_by(|a, b| inches(a).partial_cmp(&inches(b)).unwrap());
                found.add(mark, "table of rakes", longer.unwrap());
                raked = None;
            }
        } else if let Some(said) = &batch {
            for word in content.split([' ', ',', ';', ':']).filter(|w| is_short(w)) {
                found.add(&mark(word), "saw list", said);
            }
        }
    }
}

/// Cutting sheets: lengths beside the marks of a plain rip, else the dimension under the shape.
fn on_cutting(sheets: &[Sheet], pieces: &BTreeMap<String, String>, found: &mut Found) {
    let mut cells: Vec<(String, Vec<String>)> = Vec::new();
    for s in sheets.iter().filter(|s| s.title.starts_with("Cutting sheet")) {
        let mut in_head = false;
        for t in texts(s) {
            let content = t.content.replace('\u{a0}', " ");
            if t.bold {
                if content.starts_with("cut ") {
                    cells.push((String::new(), Vec::new()));
                }
                if let Some((head, _)) = cells.last_mut() {
                    head.push_str(&content);
                    head.push(' ');
                }
                in_head = true;
            } else if let Some((_, under)) = cells.last_mut().filter(|_| in_head) {
                under.push(content);
            }
        }
    }
    for (head, under) in &cells {
        for (mark, own) in pieces {
            // As a whole word of the head.
            let Some(at) =
                head.find(&format!("{mark} ")).or_else(|| head.find(&format!("{mark},")))
            else {
                continue;
            };
            if at > 0 && !head[..at].ends_with(' ') {
                continue;
            }
            let rest = head[at + mark.len()..].trim_start();
            match rest.starts_with(|c: char| c.is_ascii_digit()) {
                true => {
                    let said = rest.split([',', '(']).next().unwrap().trim();
                    found.add(mark, "cutting sheet", said);
                }
                false => {
                    let dimension = under.iter().find(|u| *u == own);
                    let said = dimension.cloned().unwrap_or_else(|| format!("none of {under:?}"));
                    found.add(mark, "cutting sheet", &said);
                }
            }
        }
    }
}

/// The bars of the cut list: the lengths under a panel's bar, those of its pieces in some order.
fn on_bars(
    sheets: &[Sheet],
    set: &LaidSet,
    told_of: &BTreeMap<String, String>,
    style: LengthStyle,
) -> usize {
    let mut under: BTreeMap<String, Vec<String>> = BTreeMap::new();
    let marks: Vec<&str> = told_of.keys().map(String::as_str).collect();
    for s in sheets.iter().filter(|s| s.title.starts_with("Cut list")) {
        let mut panel = String::new();
        for t in texts(s) {
            let content = t.content.replace('\u{a0}', " ");
            if t.bold {
                panel = content;
                continue;
            }
            if marks.contains(&content.as_str()) {
                continue;
            }
            let plain = content.split_once(": ").map_or(content.as_str(), |(_, rest)| rest);
            let plain = match plain.split_once(' ') {
                Some((first, rest)) if marks.contains(&first) => rest,
                _ => plain,
            };
            under.entry(panel.clone()).or_default().extend(first_length(plain, style));
        }
    }
    let mut seen = 0;
    for p in &set.layout.panels {
        let Some(mut said) = under.remove(p.id.as_str()) else { continue };
        let mut own: Vec<String> = p.pieces.iter().map(|m| told_of[m.as_str()].clone()).collect();
        said.sort_unstable();
        own.sort_unstable();
        assert_eq!(said, own, "under the bar of {}", p.id);
        seen += own.len();
    }
    seen
}

/// The cut list, with the length in figures.
fn in_csv(set: &LaidSet, found: &mut Found, figures: &mut BTreeMap<String, Vec<f64>>) {
    let bytes = write::csv::cut_list(&set.layout);
    let mut rows = csv::Reader::from_reader(bytes.as_slice());
    let heads = rows.headers().unwrap().clone();
    let column = |name: &str| heads.iter().position(|h| h == name).unwrap();
    let unit = set.layout.job.sheet.lengths.unit();
    let (mark, number, words) =
        (column("mark"), column(&format!("length ({unit})")), column("length"));
    for row in rows.records().map(Result::unwrap) {
        // Trim stands in the same list.
        if row[mark].contains('-') {
            found.add(&row[mark], "cut-list.csv", &row[words]);
            figures.entry(row[mark].to_owned()).or_default().push(row[number].parse().unwrap());
        }
    }
}

/// The workbook's sheet of panels.
fn in_workbook(set: &LaidSet, found: &mut Found, figures: &mut BTreeMap<String, Vec<f64>>) {
    let bytes = write::xlsx::workbook(&set.layout, &set.takeoff).unwrap();
    let mut book = Xlsx::new(Cursor::new(bytes)).unwrap();
    let panels = book.worksheet_range("Panels").unwrap();
    let rows: Vec<&[Data]> = panels.rows().collect();
    let head = rows.iter().position(|r| r.iter().any(|c| *c == "Cut to")).unwrap();
    let column = |name: &str| rows[head].iter().position(|c| *c == name).unwrap();
    let unit = set.layout.job.sheet.lengths.unit();
    let (mark, number, words) =
        (column("Piece"), column(&format!("Length ({unit})")), column("Cut to"));
    for row in rows[head + 1..].iter().filter(|r| r[mark].to_string().contains('-')) {
        found.add(&row[mark].to_string(), "workbook", &row[words].to_string());
        let Data::Float(figure) = row[number] else { panic!("{:?}", row[number]) };
        figures.entry(row[mark].to_string()).or_default().push(figure);
    }
}

/// The saw lists of the report: as many pieces of each length as the walls have.
fn in_report(set: &LaidSet, told_of: &BTreeMap<String, String>, style: LengthStyle) {
    let text = write::report::text(&set.layout, &set.takeoff);
    // Lines that go on are joined again.
    let joined = text.replace("\n      ", " ");
    let mut said: BTreeMap<String, usize> = BTreeMap::new();
    for line in joined.lines().filter_map(|l| l.trim().strip_prefix("- ")) {
        let Some((n, rest)) = line.split_once(" at ") else { continue };
        let (Ok(n), true) = (n.parse::<usize>(), rest.contains(", from P")) else { continue };
        let Some(length) = first_length(rest, style) else { continue };
        *said.entry(length).or_default() += n;
    }
    let stock = told(set.layout.first_length(), style).1;
    let mut own: BTreeMap<String, usize> = BTreeMap::new();
    for length in told_of.values() {
        *own.entry(length.clone()).or_default() += 1;
    }
    assert!(said.len() > 10, "{said:?}");
    // Whole panels are told apart, without a length.
    said.remove(&stock);
    own.remove(&stock);
    assert_eq!(said, own);
}

#[test]
fn every_place_that_writes_a_pieces_length_writes_one_value() {
    for style in [LengthStyle::Feet, LengthStyle::Mm] {
        let set = cottage(style);
        let layout = &set.layout;
        let pieces: Vec<&Piece> = layout.pieces().map(|(.., p)| p).collect();
        let told_of: BTreeMap<String, String> =
            pieces.iter().map(|p| (p.mark.to_string(), told(p.length, style).1)).collect();
        let sheets = crate::support::sheets(&set);
        let (mut found, mut figures) = (Found::default(), BTreeMap::new());
        for (_, w) in layout.walls() {
            on_wall(prefix(w), &of_wall(&sheets, prefix(w)), style, &mut found);
        }
        on_cutting(&sheets, &told_of, &mut found);
        in_csv(&set, &mut found, &mut figures);
        in_workbook(&set, &mut found, &mut figures);
        in_report(&set, &told_of, style);
        // `layout.json` has it to the last bit; rounded by the rule it is the same.
        let json: serde_json::Value = serde_json::from_slice(&write::json::layout(layout)).unwrap();
        lengths_of(&json, &mut |mark, inches| {
            if told_of.contains_key(mark) {
                found.add(mark, "layout.json", &told(inches, style).1);
            }
        });
        for p in &pieces {
            let (own, mark) = (&told_of[p.mark.as_str()], p.mark.as_str());
            let all = &found.0[mark];
            for (at, said) in all {
                assert_eq!(said, own, "{mark} in {at}: {all:?}");
            }
            let has = |at: &str| all.iter().filter(|(a, _)| *a == at).count();
            for at in ["drawing", "cut-list.csv", "workbook", "layout.json"] {
                assert_eq!(has(at), 1, "{mark} in {at}: {all:?}");
            }
            assert_eq!(has("saw list") + has("table of rakes"), 1, "{mark}: {all:?}");
            let exact = told(p.length, style).0 * if style == LengthStyle::Mm { 25.4 } else { 1.0 };
            let figures = &figures[mark];
            assert_eq!(figures.len(), 2);
            assert!(
                figures.iter().all(|f| (f - exact).abs() < 1e-6),
                "{mark}: {figures:?}, {exact}"
            );
        }
        let shaped = found.0.values().flatten().filter(|(at, _)| *at == "cutting sheet").count();
        assert!(shaped > 40, "{shaped}");
        assert!(on_bars(&sheets, &set, &told_of, style) > 200);
    }
}

/// Every object with a mark and a length.
fn lengths_of(value: &serde_json::Value, found: &mut impl FnMut(&str, f64)) {
    match value {
        serde_json::Value::Array(all) => all.iter().for_each(|v| lengths_of(v, found)),
        serde_json::Value::Object(all) => {
            if let (Some(mark), Some(length), true) = (
                all.get("mark").and_then(|m| m.as_str()),
                all.get("length").and_then(serde_json::Value::as_f64),
                all.contains_key("outline"),
            ) {
                found(mark, length);
            }
            all.values().for_each(|v| lengths_of(v, found));
        }
        _ => {}
    }
}
