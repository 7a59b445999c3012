//! The walls of `tests/hand/README.md`, reckoned by hand: pieces one by one, and trim.

use std::fs;

use lapwright::job::file as job_file;
use lapwright::layout::Layout;
use lapwright::layout::piece::{EndCut, Piece, PieceEnd};
use lapwright::model::notch::NotchSide;

use crate::support::{broken, lay, root};

/// Lengths reckoned by hand and by the program agree within this, inches: half a sixteenth.
const SAME: f64 = 1.0 / 32.0;

fn read(name: &str) -> String {
    fs::read_to_string(root().join("tests/hand").join(name)).unwrap()
}

fn rows(name: &str) -> Vec<Vec<String>> {
    let text = read(name);
    let rows = text.lines().skip(1).map(|l| l.split(',').map(str::to_owned).collect());
    rows.collect()
}

fn laid(name: &str) -> Layout {
    let job = job_file::parse(&read(&format!("{name}.toml")), "job").unwrap();
    let layout = lay(&fs::read(root().join(format!("tests/hand/{name}.dxf"))).unwrap(), &job);
    assert_eq!(broken(&layout), Vec::<String>::new());
    layout
}

fn figures(words: &str) -> Vec<f64> {
    words.split(' ').filter_map(|w| w.parse().ok()).collect()
}

fn near(a: f64, b: f64) -> bool {
    (a - b).abs() <= SAME
}

/// What of an end differs from the words for it.
fn end_differs(words: &str, end: &PieceEnd) -> bool {
    match words {
        "plumb" => {
            !matches!(end.cut, EndCut::Factory | EndCut::Square)
                || end.contour.is_some()
                || end.set_back() != 0.0
        }
        "factory" => end.cut != EndCut::Factory,
        _ => {
            let f = figures(words);
            end.cut != EndCut::Angled
                || (end.angle - f[0]).abs() > 0.01
                || !near(end.set_back(), f[1])
        }
    }
}

fn differs(row: &[String], p: &Piece) -> Vec<String> {
    let mut out = Vec::new();
    let mut say = |wrong: bool, what: &str| {
        if wrong {
            out.push(format!("{what} of {row:?}: {p:?}"));
        }
    };
    say(!near(p.x0, row[1].parse().unwrap()), "place");
    say(!near(p.length, row[2].parse().unwrap()), "length");
    say(end_differs(&row[3], &p.ends[0]) || p.ends[0].long_point != 0.0, "left");
    say(end_differs(&row[4], &p.ends[1]) || p.ends[1].long_point != p.length, "right");
    let rip = p.rip.as_ref().map_or(Vec::new(), |r| vec![r.from, r.to]);
    let wanted = figures(&row[5]);
    let alike = rip.len() == wanted.len() && rip.iter().zip(&wanted).all(|(a, b)| near(*a, *b));
    say(!alike, "rip");
    say(p.notches.len() != usize::from(!row[6].is_empty()), "notches");
    if let Some(n) = p.notches.first() {
        let f = figures(&row[6]);
        let side = match n.side {
            NotchSide::Top => "top",
            NotchSide::Bottom => "bottom",
            NotchSide::Left => "left",
            NotchSide::Right => "right",
            NotchSide::Hole => "hole",
        };
        say(row[6].split(' ').next() != Some(side), "notch's edge");
        say(!near(n.left, f[0]) || !near(n.width, f[1]) || !near(n.depth, f[2]), "notch");
    }
    say(p.edge_work.lugs.to_string() != row[7], "lugs");
    out
}

fn compare(name: &str) -> Layout {
    let layout = laid(name);
    let mut pieces: Vec<(i32, Piece)> =
        layout.pieces().map(|(_, c, _, p)| (c.index + 1, p.clone())).collect();
    pieces.sort_by(|a, b| a.0.cmp(&b.0).then(a.1.x0.total_cmp(&b.1.x0)));
    let rows = rows(&format!("{name}.csv"));
    let courses = |row: &[String]| row[0].parse::<i32>().unwrap();
    let found: Vec<i32> = pieces.iter().map(|p| p.0).collect();
    assert_eq!(found, rows.iter().map(|r| courses(r)).collect::<Vec<_>>(), "{name}");
    let wrong: Vec<String> =
        rows.iter().zip(&pieces).flat_map(|(row, (_, p))| differs(row, p)).collect();
    assert!(wrong.is_empty(), "{name}: {}", wrong.join("\n"));
    trim(name, &layout);
    layout
}

/// Trim of the kinds that the page reckons; finish trim under eaves is not among them.
fn trim(name: &str, layout: &Layout) {
    let mut wanted: Vec<(String, f64)> = rows(&format!("{name}-trim.csv"))
        .iter()
        .map(|r| (r[0].clone(), r[1].parse().unwrap()))
        .collect();
    let kind = |t: &lapwright::model::trim::TrimPiece| {
        serde_json::to_value(t.kind).unwrap().as_str().unwrap().to_owned()
    };
    let mut found: Vec<(String, f64)> = layout
        .trims
        .iter()
        .filter(|t| t.opening.is_some() || kind(t) != "finish-trim")
        .map(|t| (kind(t), t.length))
        .filter(|(k, _)| wanted.iter().any(|(w, _)| w == k))
        .collect();
    let order = |a: &(String, f64), b: &(String, f64)| a.0.cmp(&b.0).then(a.1.total_cmp(&b.1));
    wanted.sort_by(order);
    found.sort_by(order);
    let alike = wanted.len() == found.len()
        && wanted.iter().zip(&found).all(|(a, b)| a.0 == b.0 && near(a.1, b.1));
    assert!(alike, "{name}: {found:?} for {wanted:?}");
}

#[test]
fn a_window_wall_is_as_reckoned_by_hand() {
    let layout = compare("a-window");
    let furred: Vec<i32> = layout
        .pieces()
        .filter(|(.., p)| p.edge_work.furring)
        .map(|(_, c, ..)| c.index + 1)
        .collect();
    assert_eq!(furred, [4]);
}

#[test]
fn a_gable_with_both_rakes_is_as_reckoned_by_hand() {
    let layout = compare("b-gable");
    // Example::GableOfFour: widths at the foot, a gap more at each side than the pieces.
    let (wide, courses): (Vec<f64>, Vec<i32>) = layout
        .pieces()
        .filter(|(_, c, ..)| c.index >= 5)
        .map(|(_, c, _, p)| (p.length + 0.5, c.index - 5))
        .unzip();
    assert_eq!(courses, [0, 1, 2, 3, 4, 5]);
    // Within the grid of 1/1024 in.
    let wanted = [288.0, 240.0, 192.0, 144.0, 96.0, 48.0];
    assert!(wide.iter().zip(wanted).all(|(a, b): (&f64, f64)| (a - b).abs() < 1e-3), "{wide:?}");
    // DrawingFact::RakeStep: long edge less short edge is two steps for a piece that reaches both
    // rakes.
    for (.., p) in layout.pieces().filter(|(_, c, ..)| (5..10).contains(&c.index)) {
        let ((a, b), (c, d)) = (p.edge(false), p.edge(true));
        assert!(((b - a) - (d - c) - 48.0).abs() < 2e-3);
    }
}

#[test]
fn a_step_in_grade_a_door_and_a_bare_fixture_are_as_reckoned_by_hand() {
    let layout = compare("c-step");
    let slots: Vec<f64> =
        layout.pieces().flat_map(|(.., p)| &p.notches).filter_map(|n| n.foot).collect();
    assert_eq!(slots, [1.75, 1.75]);
}
