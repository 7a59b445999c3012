//! Every kind of siding speaks its own language: all files of a set laid with it, and the explanation of
//! every line of its takeoff, are read for words of the other kinds, and so is what the architect is given. In
//! `layout.json` and `takeoff.json` names of enumerations are the same for all (`outside-post`); what else
//! they say is read, but for the job as it was in force.

use std::io::Cursor;

use calamine::{Reader, Xlsx};
use lapwright::job::file as job_file;
use lapwright::job::siding::kind::{BoardSiding, PanelSiding, Siding};
use lapwright::layout::set::LaidSet;
use lapwright::model::seam::Effort;
use lapwright::wording::{cautions, siding};

use crate::support::{lay_set, root};

/// Words of panels that hang in pockets, which nobody says of boards.
const PANELS: [&str; 24] = [
    "lug",
    "lugs",
    "tab",
    "tabs",
    "pocket",
    "hem",
    "undersill",
    "finish trim",
    "channel",
    "channels",
    "snap-lock",
    "nail slot",
    "nail slots",
    "starter strip",
    "corner post",
    "post",
    "posts",
    "flange",
    "flanges",
    "panel",
    "panels",
    "vinyl",
    "foam",
    "receiver",
];
/// Words of boards that butt on studs, which nobody says of panels.
const BOARDS: [&str; 8] = [
    "corner board",
    "corner boards",
    "starter piece",
    "head lap",
    "joint backing",
    "on studs",
    "fiber-cement",
    "silica",
];

/// Words that a set of this kind never holds.
fn foreign(kind: Siding) -> Vec<&'static str> {
    let own: &[&str] = match kind {
        Siding::Board(BoardSiding::FiberCement) => &["bevel siding", "wood lap siding"],
        Siding::Board(BoardSiding::Wood) => &["fiber-cement", "silica"],
        Siding::Panel(PanelSiding::FoamBacked) => &["steel lap siding", "trim nails"],
        Siding::Panel(PanelSiding::Steel) => &["foam", "vinyl", "lug", "lugs", "snap-lock"],
        Siding::Panel(PanelSiding::Vinyl) => &["foam", "steel lap siding", "trim nails"],
        _ => panic!("words of a new kind"),
    };
    if kind.system().receivers.has_pockets() {
        [own, &BOARDS].concat()
    } else {
        [own, &PANELS, &["carton", "cartons"]].concat()
    }
}

/// The words of a text, one blank between them, parted from signs.
fn plain(text: &str) -> String {
    let letters = |c: char| if c.is_alphanumeric() || c == '-' { c } else { ' ' };
    let words: String = text.to_lowercase().chars().map(letters).collect();
    format!(" {} ", words.split_whitespace().collect::<Vec<_>>().join(" "))
}

/// The first of the words in a text.
fn found(text: &str, words: &[&str]) -> Option<String> {
    let said = plain(text);
    let word = words.iter().find(|w| said.contains(&format!(" {w} ")))?;
    Some(format!("\"{word}\" in: {}", text.trim()))
}

/// Texts of a file: of pictures and drawings what is written in them, of tables their cells but for
/// the short names of lines, which are the same in every takeoff.
fn texts(name: &str, bytes: &[u8]) -> Vec<String> {
    let whole = || String::from_utf8_lossy(bytes).into_owned();
    match name.rsplit('.').next().unwrap() {
        "svg" | "html" => crate::review::without_code(&whole())
            .split('>')
            .filter_map(|t| t.split('<').next().map(str::to_owned))
            .collect(),
        "txt" => whole().split("\n\n").map(str::to_owned).collect(),
        "dxf" => {
            let lines: Vec<String> = whole().lines().map(|l| l.trim().to_owned()).collect();
            let pairs = lines.chunks(2).filter(|p| p.len() == 2 && p[0] == "1");
            pairs.map(|p| p[1].clone()).collect()
        }
        "csv" => {
            let mut rows = csv::Reader::from_reader(bytes);
            let head = rows.headers().unwrap().clone();
            let told = |i: &usize| !["id", "part"].contains(&&head[*i]);
            let mut out: Vec<String> = head.iter().map(str::to_owned).collect();
            for row in rows.records().map(Result::unwrap) {
                out.extend((0..row.len()).filter(told).map(|i| row[i].to_owned()));
            }
            out
        }
        "xlsx" => {
            let mut book = Xlsx::new(Cursor::new(bytes.to_vec())).unwrap();
            let names = book.sheet_names();
            let mut out = names.clone();
            for sheet in names {
                let cells = book.worksheet_range(&sheet).unwrap();
                // Settings in force stand with the words that explain them for every kind.
                let assumed = calamine::Data::String("assumed".to_owned());
                let settings = |row: &&[calamine::Data]| row[0] != assumed;
                let rows = cells.rows().filter(settings);
                out.extend(rows.flatten().map(ToString::to_string));
            }
            out
        }
        "json" => {
            let mut value: serde_json::Value = serde_json::from_slice(bytes).unwrap();
            value.as_object_mut().unwrap().remove("job");
            let mut out = Vec::new();
            said_in("", &value, &mut out);
            out
        }
        "sha256" | "pdf" | "png" => Vec::new(),
        other => panic!("{name}: no texts of {other} are read"),
    }
}

/// What a value of JSON says: its texts, but for names of enumerations with hyphens and short names of lines.
fn said_in(key: &str, value: &serde_json::Value, out: &mut Vec<String>) {
    match value {
        serde_json::Value::String(text) => {
            let named = text.contains('-') && !text.contains(' ');
            let line = text == "panels" && LINE_NAMES.contains(&key);
            if !named && !line {
                out.push(text.clone());
            }
        }
        serde_json::Value::Array(all) => all.iter().for_each(|v| said_in(key, v, out)),
        serde_json::Value::Object(all) => all.iter().for_each(|(k, v)| said_in(k, v, out)),
        _ => {}
    }
}

/// Keys of the short names of lines, which are the same in every takeoff, and of enumerations of one word.
const LINE_NAMES: [&str; 7] = ["id", "item", "part", "kind", "group", "kept_least", "panels_by"];

fn laid(kind: Siding) -> (LaidSet, Vec<u8>) {
    let text = format!("[product]\nkind = \"{}\"\n", kind.key());
    let mut job = job_file::parse(&text, "job").unwrap();
    job.seams.effort = Effort::Crew;
    let path = root().join("sample-drawings/curlew-cottage.dxf");
    let source = std::fs::read(path).unwrap();
    (lay_set(&source, &job), source)
}

#[test]
fn the_reading_finds_what_it_looks_for() {
    assert!(found("held by 7 lugs.", &PANELS).is_some());
    assert!(found("WATER TAB 3/4\"", &["tab"]).is_some());
    assert!(found("a table of slugs, posted", &PANELS).is_none());
    assert!(found("boards \"corner board 3\"", &BOARDS).is_some());
    // Every list is used somewhere: the words stand in sets of their own kind.
    let (set, source) = laid(Siding::Panel(PanelSiding::Vinyl));
    let files = lapwright::outputs::set::files(&set, &source, false).unwrap();
    let all: Vec<String> = files.iter().flat_map(|(name, bytes)| texts(name, bytes)).collect();
    for word in ["lugs", "undersill", "corner post", "starter strip", "panels", "cartons"] {
        assert!(all.iter().any(|t| found(t, &[word]).is_some()), "{word}");
    }
}

/// Reads a set laid with a kind.
fn read_through(kind: Siding) {
    let words = foreign(kind);
    let (set, source) = laid(kind);
    let (mut scanned, mut odd) = (0, Vec::new());
    for (name, bytes) in lapwright::outputs::set::files(&set, &source, false).unwrap() {
        for text in texts(&name, &bytes) {
            scanned += 1;
            odd.extend(found(&text, &words).map(|word| format!("{name}: {word}")));
        }
    }
    assert_eq!(odd, Vec::<String>::new(), "{}", kind.key());
    assert!(scanned > 2000, "{}: only {scanned} texts", kind.key());
    for line in &set.takeoff.lines {
        let said = lapwright::wording::takeoff::explain::explained(&set.layout, &set.takeoff, line);
        let said = said.replace(&format!("({})", line.id), "");
        assert_eq!(found(&said, &words), None, "{}: {}", kind.key(), line.id);
    }
    for said in cautions::all(kind) {
        assert_eq!(found(said.en, &words), None, "{}", kind.key());
    }
    assert_eq!(found(siding::name(kind).en, &words), None);
}

#[test]
fn a_set_of_wood_speaks_of_boards() {
    read_through(Siding::Board(BoardSiding::Wood));
}

#[test]
fn a_set_of_fiber_cement_speaks_of_boards() {
    read_through(Siding::Board(BoardSiding::FiberCement));
}

#[test]
fn a_set_of_vinyl_speaks_of_panels_without_foam() {
    read_through(Siding::Panel(PanelSiding::Vinyl));
}

#[test]
fn a_set_of_steel_speaks_of_no_vinyl() {
    read_through(Siding::Panel(PanelSiding::Steel));
}

#[test]
fn a_set_of_foam_backed_vinyl_speaks_of_panels() {
    read_through(Siding::Panel(PanelSiding::FoamBacked));
}

#[test]
fn what_the_architect_is_given_speaks_of_no_kind() {
    // The convention is for every house: it names no work of panels or of boards, but the job file beside it
    // explains the settings of all kinds.
    let mut read = 0;
    for (name, bytes) in lapwright::outputs::template::files().unwrap() {
        if name.ends_with(".toml") {
            continue;
        }
        for text in texts(&name, &bytes) {
            read += 1;
            let words = [&PANELS[..], &BOARDS[..]].concat();
            assert_eq!(found(&text, &words), None, "{name}");
        }
    }
    assert!(read > 50, "only {read} texts");
}

#[test]
fn boards_have_no_work_of_panels_and_no_trim_of_theirs() {
    use lapwright::model::trim::TrimStock;
    for kind in [BoardSiding::Wood, BoardSiding::FiberCement] {
        let (set, _) = laid(Siding::Board(kind));
        assert!(set.layout.pieces().all(|(.., p)| p.edge_work.is_none()));
        let of_panels = [TrimStock::JChannel, TrimStock::FlexibleChannel, TrimStock::FinishTrim];
        assert!(set.layout.trims.iter().all(|t| !of_panels.contains(&t.kind.stock())));
    }
}
