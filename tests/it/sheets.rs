//! Sheets: text neither overlaps nor leaves the page, every piece is marked once, dimensions add
//! up, hostile text stays text.

use std::collections::BTreeMap;
use std::sync::OnceLock;

use lapwright::job::paper::PAPERS;
use lapwright::layout::Layout;
use lapwright::layout::piece::Piece;
use lapwright::layout::set::LaidSet;
use lapwright::layout::wall::{LaidElevation, LaidWall};
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
    // The names of these drawings are short: what is cut off is our own words.
    for t in texts(s) {
        assert!(!t.content.ends_with('…'), "{stem} {}: cut off: {}", s.name, t.content);
    }
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

/// The drawn sheets of one wall, by what marks of its pieces begin with.
pub(crate) fn of_wall<'a>(sheets: &'a [Sheet], prefix: &str) -> Vec<&'a Sheet> {
    // In each language, and in both.
    let own = ["Wall", "Pared", "Wall / Pared"].map(|wall| format!("{wall} {prefix}, "));
    sheets.iter().filter(|s| own.iter().any(|o| s.title.starts_with(o))).collect()
}

/// The sheets of an elevation's walls.
pub(crate) fn of<'a>(sheets: &'a [Sheet], e: &LaidElevation) -> Vec<&'a Sheet> {
    e.walls.iter().flat_map(|w| of_wall(sheets, prefix(w))).collect()
}

/// What marks of a wall's pieces begin with.
pub(crate) fn prefix(w: &LaidWall) -> &str {
    let mut pieces = w.courses.iter().flat_map(|c| &c.runs).flat_map(|r| &r.pieces);
    pieces.next().map_or(&w.id, |p| p.mark.split('-').next().unwrap())
}

/// A length to cut as everything must tell it: whole sixteenths or millimeters down, but for the 1/512 in
/// that the grid of a drawing may leave off a mark (TakeoffFact::RoundedForSafety).
pub(crate) fn told(inches: f64, style: LengthStyle) -> (f64, String) {
    let marks = if style == LengthStyle::Feet { 16.0 } else { 25.4 };
    let down = ((inches + 1.0 / 512.0) * marks).floor() / marks;
    let words = style.length(down);
    (down, words.trim_end_matches(" mm").to_owned())
}

/// On the sheets of its wall, and on no other, every piece stands on the drawing with its mark and length, and
/// once in the lists with its panel; every trim that shows has one mark.
pub(crate) fn marked_once(stem: &str, layout: &Layout, sheets: &[Sheet]) {
    let style = layout.job.sheet.lengths;
    for (_, w) in layout.walls() {
        let own = of_wall(sheets, prefix(w));
        let pieces: Vec<_> =
            w.courses.iter().flat_map(|c| &c.runs).flat_map(|r| &r.pieces).collect();
        let short = |p: &Piece| p.mark.split_once('-').unwrap().1.to_owned();
        let label = |p: &Piece| format!("{}  {}", short(p), told(p.length, style).1);
        let mut wanted: Vec<String> = pieces.iter().map(|p| label(p)).collect();
        // What lies behind the siding is not drawn on it: flashing is in the trim list.
        let shown = |t: &&lapwright::model::trim::TrimPiece| {
            t.wall == w.id && !wording::trim::kind(t.kind).en.starts_with("flashing")
        };
        wanted.extend(layout.trims.iter().filter(shown).map(|t| t.mark.to_string()));
        wanted.sort_unstable();
        let all = own.iter().flat_map(|s| texts(s)).map(|t| t.content.as_str());
        let mut found: Vec<&str> =
            all.filter(|t| wanted.binary_search_by(|w| w.as_str().cmp(t)).is_ok()).collect();
        found.sort_unstable();
        assert_eq!(found, wanted, "{stem} {}", w.id);
        // In the drawing, and in the saw list or the table of rakes.
        let mut seen: BTreeMap<String, usize> = BTreeMap::new();
        for t in own.iter().flat_map(|s| texts(s)) {
            for word in t.content.split([' ', ',', '\u{a0}']) {
                *seen.entry(word.to_owned()).or_default() += 1;
            }
        }
        for p in pieces {
            assert_eq!(seen.get(&short(p)), Some(&2), "{stem} {}", p.mark);
        }
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
            for s in of(&sheets, e).into_iter().filter(|s| is_drawn(s)) {
                add_up(stem, s);
            }
        }
    }
}

/// Whether a sheet has strings of dimensions.
pub(crate) fn is_drawn(s: &Sheet) -> bool {
    s.drawing.items.iter().any(|i| matches!(i.shape, Shape::Dimension(_)))
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
            // Only what is held in the hand is turned.
            let turned = (s.width, s.height) == (paper.height, paper.width) && paper.width <= 12.0;
            assert!(turned || (s.width, s.height) == (paper.width, paper.height), "{}", s.name);
            legible(paper.name, s);
        }
        marked_once(paper.name, &set.layout, &sheets);
        if set.layout.job.sheet.lengths == LengthStyle::Mm {
            // Whole millimeters, but for what is under 3 of them: a tape has no others.
            for t in sheets.iter().flat_map(texts) {
                let words: Vec<&str> = t.content.split(' ').collect();
                for w in words.windows(2).filter(|w| w[1].starts_with("mm") && w[0].contains('.')) {
                    let mm: f64 = w[0].parse().unwrap_or(0.0);
                    assert!(mm < 3.0, "{}: {}", paper.name, t.content);
                }
            }
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
    // The rear is one wall, 48 ft: 24 in at 1/2 in, more than an ARCH B sheet is wide.
    let rear = &layout.elevations[2];
    let parts: Vec<&Sheet> = of(&sheets, rear).into_iter().filter(|s| is_drawn(s)).collect();
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
    let width = rear.walls.iter().flat_map(|w| &w.outline).map(|p| p[0]).fold(0.0, f64::max);
    assert!((whole - rows as f64 * width).abs() < 0.2, "{whole} of {rows} x {width}");
}

#[test]
fn widths_are_those_of_the_walls() {
    let set = cottage();
    let (layout, sheets) = (&set.layout, crate::support::sheets(&set));
    for (_, w) in layout.walls() {
        let xs = || w.outline.iter().map(|p| p[0]);
        let width = xs().fold(f64::MIN, f64::max) - xs().fold(f64::MAX, f64::min);
        for s in of_wall(&sheets, prefix(w)).into_iter().filter(|s| is_drawn(s)) {
            let sum: f64 =
                strings(s).iter().find(|(k, _)| !k.0).unwrap().1.iter().map(|p| p.0).sum();
            assert!((sum - width).abs() <= 1.0 / 16.0, "{}: {sum} of {width}", w.id);
        }
    }
}

#[test]
fn every_shaped_cut_is_on_a_cutting_sheet_with_its_marks() {
    for (stem, set) in all() {
        let (layout, sheets) = (&set.layout, crate::support::sheets(set));
        let mut found: Vec<String> = sheets
            .iter()
            .filter(|s| s.title.starts_with("Cutting sheet"))
            .flat_map(texts)
            .flat_map(|t| {
                t.content.split([',', ' ', '\u{a0}']).map(str::to_owned).collect::<Vec<_>>()
            })
            .filter(|w| layout.pieces().any(|(.., p)| p.mark == *w))
            .collect();
        found.sort();
        found.dedup();
        // Ripped, notched, held by lugs or nails, or to a contour: more than a saw set to a length does.
        let shaped = |p: &Piece| {
            p.rip.is_some()
                || !p.notches.is_empty()
                || !p.edge_work.is_none()
                || p.ends.iter().any(|e| e.contour.as_ref().is_some_and(|c| c.points.len() > 2))
        };
        let wanted: Vec<String> =
            layout.pieces().filter(|(.., p)| shaped(p)).map(|(.., p)| p.mark.to_string()).collect();
        for mark in &wanted {
            assert!(found.contains(mark), "{stem}: {mark}");
        }
    }
}

#[test]
fn mirror_images_are_drawn_once_and_round_holes_told_by_their_middle() {
    let set = cottage();
    let sheets = crate::support::sheets(&set);
    let cutting: Vec<&str> = sheets
        .iter()
        .filter(|s| s.title.starts_with("Cutting sheet"))
        .flat_map(texts)
        .map(|t| t.content.as_str())
        .collect();
    // The arched window stands in the middle of its gable: both panels beside it in course 20 are one cut.
    let at = cutting.iter().position(|t| t.ends_with(": F2-20-1")).unwrap();
    assert_eq!(cutting[at + 1], "mirrored: F2-20-2");
    // No list of a curve's points is left: patterns stand for them.
    assert!(!cutting.iter().any(|t| t.contains("points every")));
    assert!(sheets.iter().any(|s| s.title.starts_with("Curve pattern, front-W3")));
}

#[test]
fn the_cottage_takes_sixteen_sheets_and_patterns_are_full_size() {
    let mut set = cottage();
    let sheets = crate::support::sheets(&set);
    let counted = |sheets: &[Sheet]| sheets.iter().filter(|s| !s.title.contains("pattern")).count();
    assert!(counted(&sheets) <= 16, "{}", counted(&sheets));
    set.layout.job.sheet.paper = "ANSI A".to_owned();
    let letter = crate::support::sheets(&set);
    assert!(counted(&letter) <= LETTER, "{}", counted(&letter));
    // A slope of 8 in 12 steps 12 in in a course of 8 in: the pattern is as large, on any paper.
    for sheets in [&sheets, &letter] {
        let mut corners: Vec<(f64, f64)> = Vec::new();
        for s in sheets.iter().filter(|s| s.title.starts_with("Gable pattern, 8 in 12")) {
            assert!(texts(s).all(|t| !t.content.contains("at 1:")), "{}", s.name);
            let walls = s.drawing.layers.iter().position(|l| l.name == "walls").unwrap();
            for i in s.drawing.items.iter().filter(|i| i.layer == walls) {
                if let Shape::Polyline(p) = &i.shape {
                    let ends = p.vertices.iter().map(|v| (v.at.x, v.at.y));
                    corners.extend(ends);
                }
            }
        }
        assert!(!corners.is_empty());
    }
    let whole = sheets.iter().find(|s| s.title == "Gable pattern, 8 in 12").unwrap();
    let walls = whole.drawing.layers.iter().position(|l| l.name == "walls").unwrap();
    let xs: Vec<f64> = whole
        .drawing
        .items
        .iter()
        .filter(|i| i.layer == walls)
        .filter_map(|i| match &i.shape {
            Shape::Polyline(p) => Some(p.vertices.iter().map(|v| v.at.x).collect::<Vec<_>>()),
            _ => None,
        })
        .flatten()
        .collect();
    let spread =
        xs.iter().fold(f64::MIN, |a, x| a.max(*x)) - xs.iter().fold(f64::MAX, |a, x| a.min(*x));
    assert!((spread - 12.0).abs() < 1e-6, "{spread}");
}

/// Sheets of the cottage on letter paper at most, patterns at full size not counted: what a crew carries.
const LETTER: usize = 32;

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
