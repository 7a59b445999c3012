//! Sheets: text neither overlaps nor leaves the page, every piece is marked once, dimensions add
//! up, hostile text stays text.

use std::collections::BTreeMap;
use std::sync::OnceLock;

use lapwright::job::paper::PAPERS;
use lapwright::layout::Layout;
use lapwright::layout::set::LaidSet;
use lapwright::layout::wall::LaidElevation;
use lapwright::model::drawing::{Across, Shape, Text};
use lapwright::model::sheet::Sheet;
use lapwright::typeface;
use lapwright::units::{LengthStyle, Unit, parse_length};
use lapwright::wording;
use lapwright::write::{pdf, svg};

use crate::support::{laid_set, samples};

pub(crate) fn texts(s: &Sheet) -> impl Iterator<Item = &Text> {
    s.drawing.items.iter().filter_map(|i| match &i.shape {
        Shape::Text(t) => Some(t),
        _ => None,
    })
}

/// The ink of a line of text: its capitals' box, a hair smaller.
fn ink(t: &Text) -> (f64, f64, f64, f64) {
    let w = typeface::width(&t.content, t.height, t.bold);
    let x = match t.across {
        Across::Left => t.at.x,
        Across::Center => t.at.x - w / 2.0,
        Across::Right => t.at.x - w,
    };
    (x + 0.004, t.at.y - t.height / 2.0 + 0.004, x + w - 0.004, t.at.y + t.height / 2.0 - 0.004)
}

/// No text is too small, leaves the page or overlaps another.
pub(crate) fn legible(stem: &str, s: &Sheet) {
    let boxes: Vec<_> = texts(s).map(|t| (ink(t), t)).collect();
    assert!(boxes.len() > 10, "{stem} {}: only {} texts", s.name, boxes.len());
    for (i, (a, t)) in boxes.iter().enumerate() {
        let inside = a.0 > 0.0 && a.1 > 0.0 && a.2 < s.width && a.3 < s.height;
        assert!(inside, "{stem} {}: `{}` leaves the page", s.name, t.content);
        // DrawingFact::TextHeight: 3/32 in at least.
        assert!(t.height >= 3.0 / 32.0 - 1e-9, "{stem} {}: `{}` is small", s.name, t.content);
        for (b, u) in &boxes[i + 1..] {
            let apart = a.2 <= b.0 || b.2 <= a.0 || a.3 <= b.1 || b.3 <= a.1;
            assert!(apart, "{stem} {}: `{}` and `{}` overlap", s.name, t.content, u.content);
        }
    }
}

/// Sheets of one elevation: one, or its parts.
pub(crate) fn of<'a>(sheets: &'a [Sheet], e: &LaidElevation) -> Vec<&'a Sheet> {
    let part = format!("{}, part ", e.name);
    sheets.iter().filter(|s| s.title == e.name || s.title.starts_with(&part)).collect()
}

/// Every piece and trim of every elevation has one mark on its sheets.
pub(crate) fn marked_once(stem: &str, layout: &Layout, sheets: &[Sheet]) {
    for e in &layout.elevations {
        let pieces = e.walls.iter().flat_map(|w| &w.courses).flat_map(|c| &c.runs);
        let pieces = pieces.flat_map(|r| &r.pieces).map(|p| p.mark.split_once('-').unwrap().1);
        // What lies behind the siding is not drawn on it: flashing is in the trim list.
        let shown = |t: &&lapwright::model::trim::TrimPiece| {
            !wording::trim::kind(t.kind).starts_with("flashing")
        };
        let trims = layout.trims.iter().filter(|t| t.elevation == e.name);
        let trims = trims.filter(shown).map(|t| t.mark.as_str());
        let mut wanted: Vec<&str> = pieces.chain(trims).collect();
        wanted.sort_unstable();
        let mut found: Vec<&str> = of(sheets, e)
            .into_iter()
            .flat_map(texts)
            .map(|t| t.content.as_str())
            .filter(|t| wanted.binary_search(t).is_ok())
            .collect();
        found.sort_unstable();
        assert_eq!(found, wanted, "{stem} {}", e.name);
    }
}

/// The strings of dimensions on a sheet, by the place of their line: lengths in inches, and drawn
/// lengths on paper.
fn strings(s: &Sheet) -> BTreeMap<(bool, i64), Vec<(f64, f64)>> {
    let mut out: BTreeMap<(bool, i64), Vec<(f64, f64)>> = BTreeMap::new();
    for i in &s.drawing.items {
        let Shape::Dimension(d) = &i.shape else { continue };
        let upright = d.angle == Some(90.0);
        let at = if upright { d.from.x } else { d.from.y };
        let words = d.text.as_ref().unwrap();
        assert!(texts(s).any(|t| t.content == *words), "{}: `{words}` is not written", s.name);
        let bare = if words.contains('\'') { Unit::Inch } else { Unit::Mm };
        let length = parse_length(words, bare).unwrap();
        let key = (upright, (at * 1000.0).round() as i64);
        out.entry(key).or_default().push((length, d.from.distance(d.to)));
    }
    out
}

/// Every string of a sheet sums to the same whole as the string with the fewest parts, to the
/// sixteenth or millimeter.
pub(crate) fn add_up(stem: &str, s: &Sheet) {
    let strings = strings(s);
    let level: Vec<f64> =
        strings.iter().filter(|(k, _)| !k.0).map(|(_, v)| v.iter().map(|p| p.0).sum()).collect();
    assert!(level.len() >= 2, "{stem} {}: {} level strings", s.name, level.len());
    for sum in &level {
        assert!((sum - level[0]).abs() < 1e-6, "{stem} {}: {level:?}", s.name);
    }
}

/// Every sample laid out, once for all tests here.
fn all() -> &'static [(String, LaidSet)] {
    static ALL: OnceLock<Vec<(String, LaidSet)>> = OnceLock::new();
    ALL.get_or_init(|| samples().into_iter().map(|(s, _)| (s.clone(), laid_set(&s))).collect())
}

fn cottage() -> LaidSet {
    all().iter().find(|(s, _)| s == "curlew-cottage").unwrap().1.clone()
}

#[test]
fn text_is_legible_marks_are_single_and_strings_add_up_on_every_sample() {
    for (stem, set) in all() {
        let (layout, sheets) = (&set.layout, crate::support::sheets(set));
        sheets.iter().for_each(|s| legible(stem, s));
        marked_once(stem, layout, &sheets);
        for e in &layout.elevations {
            for s in of(&sheets, e) {
                add_up(stem, s);
            }
        }
    }
}

#[test]
fn every_paper_and_both_units_keep_the_same_rules() {
    // Words about lengths are written when a house is laid out.
    let path = crate::support::root().join("sample-drawings/curlew-cottage.dxf");
    let mut job = crate::support::job(&path);
    job.sheet.lengths = LengthStyle::Mm;
    job.seams.effort = lapwright::model::seam::Effort::Crew;
    let metric = crate::support::lay_set(&std::fs::read(&path).unwrap(), &job);
    let feet = cottage();
    for paper in PAPERS {
        let mut set = if paper.name.len() == 2 { metric.clone() } else { feet.clone() };
        set.layout.job.sheet.paper = paper.name.to_owned();
        let sheets = crate::support::sheets(&set);
        for s in &sheets {
            assert_eq!((s.width, s.height), (paper.width, paper.height));
            legible(paper.name, s);
        }
        marked_once(paper.name, &set.layout, &sheets);
        if set.layout.job.sheet.lengths == LengthStyle::Mm {
            let feet = sheets.iter().flat_map(texts).find(|t| t.content.contains("'-"));
            assert!(feet.is_none(), "{}: {:?}", paper.name, feet.map(|t| &t.content));
        }
    }
}

#[test]
fn a_fixed_scale_parts_an_elevation_at_match_lines() {
    let mut set = cottage();
    set.layout.job.sheet.scale = Some("1/2\" = 1'-0\"".to_owned());
    let (layout, sheets) = (&set.layout, crate::support::sheets(&set));
    sheets.iter().for_each(|s| legible("1/2", s));
    marked_once("1/2", layout, &sheets);
    let front = &layout.elevations[0];
    let parts = of(&sheets, front);
    // 48 ft at 1/2 in is 24 in of wall: more than an ARCH B sheet is wide.
    assert!(parts.len() >= 2);
    let mut whole = 0.0;
    for s in &parts {
        assert!(texts(s).any(|t| t.content.starts_with("match line: see part ")), "{}", s.name);
        add_up("1/2", s);
        let strings = strings(s);
        let drawn = strings.iter().find(|(k, _)| !k.0).unwrap().1;
        // House inches in a paper inch: 24 (DrawingFact::ArchitecturalScales).
        for (length, paper) in drawn {
            assert!((length - paper * 24.0).abs() < 1.0 / 16.0, "{}: {length}", s.name);
        }
        whole += drawn.iter().map(|p| p.0).sum::<f64>();
    }
    let rows = parts.len() / 2;
    let width = front.walls.iter().flat_map(|w| &w.outline).map(|p| p[0]).fold(0.0, f64::max);
    assert!((whole - rows as f64 * width).abs() < 0.2, "{whole} of {rows} x {width}");
}

#[test]
fn widths_are_those_of_the_walls() {
    let set = cottage();
    let (layout, sheets) = (&set.layout, crate::support::sheets(&set));
    for e in &layout.elevations {
        let width = e.walls.iter().flat_map(|w| &w.outline).map(|p| p[0]).fold(0.0, f64::max);
        for s in of(&sheets, e) {
            let sum: f64 =
                strings(s).iter().find(|(k, _)| !k.0).unwrap().1.iter().map(|p| p.0).sum();
            assert!((sum - width).abs() <= 1.0 / 16.0, "{}: {sum} of {width}", e.name);
        }
    }
}

#[test]
fn every_distinct_cut_is_on_a_cutting_sheet_with_its_marks() {
    for (stem, set) in all() {
        let (layout, sheets) = (&set.layout, crate::support::sheets(set));
        let cutting =
            |s: &&Sheet| s.title.starts_with("Cutting sheet") || s.title.starts_with("Square cuts");
        let mut found: Vec<String> = sheets
            .iter()
            .filter(cutting)
            .flat_map(texts)
            .flat_map(|t| t.content.split([',', ' ']).map(str::to_owned).collect::<Vec<_>>())
            .filter(|w| layout.pieces().any(|(.., p)| p.mark == *w))
            .collect();
        found.sort();
        let mut wanted: Vec<String> = layout.pieces().map(|(.., p)| p.mark.to_string()).collect();
        wanted.sort();
        assert_eq!(found, wanted, "{stem}");
    }
}

#[test]
fn a_pattern_stands_for_every_rake_at_its_published_step() {
    // DrawingFact::PitchTable (framing-square figures): 8 in 12 steps 12 in a course of 8 in, 33.690 deg.
    let sheets = crate::support::sheets(&cottage());
    let s = sheets.iter().find(|s| s.title == "Gable pattern, 8 in 12").unwrap();
    let words: Vec<&str> = texts(s).map(|t| t.content.as_str()).collect();
    assert!(words.iter().any(|w| w.contains("step 12\" in a course of 8\"")), "{words:?}");
    assert!(words.iter().any(|w| w.contains("33.7° from the long edge, 56.3° from square")));
    assert!(words.iter().any(|w| w.starts_with("FULL SIZE")));
}

#[test]
fn svg_is_read_back_with_nothing_dropped() {
    for (stem, set) in all() {
        for s in crate::support::sheets(set) {
            let text = svg::document(&s);
            let doc = usvg::roxmltree::Document::parse(&text).unwrap();
            let count = |name: &str| doc.descendants().filter(|n| n.has_tag_name(name)).count();
            assert_eq!(count("text"), texts(&s).count(), "{stem} {}", s.name);
            assert!(count("title") == 1 && count("desc") == 1);
            let words: Vec<&str> = doc
                .descendants()
                .filter(|n| n.has_tag_name("text"))
                .filter_map(|n| n.text())
                .map(str::trim)
                .collect();
            for t in texts(&s) {
                assert!(words.contains(&t.content.trim()), "{stem}: {}", t.content);
            }
        }
    }
}

#[test]
fn hostile_names_stay_text() {
    let mut set = laid_set("one-window");
    let evil = "</text><script>alert(1)</script>&\u{202e}\u{0}\u{1b}[31m'\"";
    set.layout.elevations[0].name = evil.into();
    set.layout.job.title.project = evil.repeat(40);
    let sheets = crate::support::sheets(&set);
    let svgs: Vec<String> = sheets.iter().map(svg::document).collect();
    for s in &svgs {
        let doc = usvg::roxmltree::Document::parse(s).unwrap();
        assert!(!doc.descendants().any(|n| n.has_tag_name("script")));
        assert!(!s.contains('\u{202e}') && !s.contains('\u{1b}'));
    }
    assert!(pdf::document(&sheets, &svgs, evil, evil).unwrap().starts_with(b"%PDF"));
}
