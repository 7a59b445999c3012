//! Sheets: text neither overlaps nor leaves the page, every piece is marked once, dimensions add
//! up, hostile text stays text.

use lapwright::annotate;
use lapwright::model::drawing::{Across, Shape, Text};
use lapwright::model::layout::Layout;
use lapwright::model::sheet::Sheet;
use lapwright::typeface;
use lapwright::write::{pdf, svg};

use crate::support::{laid, samples};

fn texts(s: &Sheet) -> impl Iterator<Item = &Text> {
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
        Across::Centre => t.at.x - w / 2.0,
        Across::Right => t.at.x - w,
    };
    (x + 0.004, t.at.y - t.height / 2.0 + 0.004, x + w - 0.004, t.at.y + t.height / 2.0 - 0.004)
}

fn all() -> Vec<(String, Layout)> {
    samples().into_iter().map(|(s, _)| (s.clone(), laid(&s))).collect()
}

#[test]
fn no_text_overlaps_another_or_leaves_the_page() {
    for (stem, layout) in all() {
        for s in annotate::sheets(&layout) {
            let boxes: Vec<_> = texts(&s).map(|t| (ink(t), t)).collect();
            assert!(boxes.len() > 10);
            for (i, (a, t)) in boxes.iter().enumerate() {
                assert!(
                    a.0 > 0.0 && a.1 > 0.0 && a.2 < s.width && a.3 < s.height,
                    "{stem} {}: `{}` leaves the page",
                    s.name,
                    t.content
                );
                assert!(
                    t.height >= 3.0 / 32.0 - 1e-9,
                    "{stem} {}: `{}` is too small",
                    s.name,
                    t.content
                );
                for (b, u) in &boxes[i + 1..] {
                    let apart = a.2 <= b.0 || b.2 <= a.0 || a.3 <= b.1 || b.3 <= a.1;
                    assert!(
                        apart,
                        "{stem} {}: `{}` and `{}` overlap",
                        s.name, t.content, u.content
                    );
                }
            }
        }
    }
}

#[test]
fn every_piece_is_marked_once_on_its_elevation() {
    for (stem, layout) in all() {
        let sheets = annotate::sheets(&layout);
        for e in &layout.elevations {
            let s = sheets.iter().find(|s| s.title == e.name).unwrap();
            let mut wanted: Vec<String> = e
                .walls
                .iter()
                .flat_map(|w| &w.courses)
                .flat_map(|c| &c.runs)
                .flat_map(|r| &r.pieces)
                .map(|p| p.mark.split_once('-').unwrap().1.to_owned())
                .collect();
            wanted.sort();
            let mut found: Vec<String> = texts(s)
                .map(|t| t.content.clone())
                .filter(|t| wanted.binary_search(t).is_ok())
                .collect();
            found.sort();
            assert_eq!(found, wanted, "{stem} {}", e.name);
        }
    }
}

#[test]
fn the_chain_of_dimensions_sums_to_the_whole() {
    use lapwright::units::{Unit, parse_length};
    let layout = laid("curlew-cottage");
    for s in annotate::sheets(&layout) {
        let Some(e) = layout.elevations.iter().find(|e| e.name == s.title) else { continue };
        let width = e.walls.iter().flat_map(|w| &w.outline).map(|p| p[0]).fold(0.0, f64::max);
        let whole = lapwright::units::feet_inches(width);
        let is_length = |t: &&Text| {
            t.content.contains('\'') && t.across == Across::Centre && !t.content.contains('x')
        };
        let lengths: Vec<&Text> = texts(&s).filter(is_length).collect();
        let total = lengths.iter().find(|t| t.content == whole).unwrap();
        // The chain stands half an inch over the whole.
        let in_chain = |t: &&&Text| t.at.y > total.at.y + 0.2 && t.at.y < total.at.y + 0.95;
        let parts: f64 = lengths
            .iter()
            .filter(in_chain)
            .map(|t| parse_length(&t.content, Unit::Inch).unwrap())
            .sum();
        assert!((parts - width).abs() < 0.01, "{}: {parts} of {width}", e.name);
    }
}

#[test]
fn svg_is_read_back_with_nothing_dropped() {
    for (stem, layout) in all() {
        for s in annotate::sheets(&layout) {
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
    let mut layout = laid("one-window");
    let evil = "</text><script>alert(1)</script>&\u{202e}\u{0}\u{1b}[31m'\"";
    layout.elevations[0].name = evil.to_owned();
    layout.job.title.project = evil.repeat(40);
    let sheets = annotate::sheets(&layout);
    let svgs: Vec<String> = sheets.iter().map(svg::document).collect();
    for s in &svgs {
        let doc = usvg::roxmltree::Document::parse(s).unwrap();
        assert!(!doc.descendants().any(|n| n.has_tag_name("script")));
        assert!(!s.contains('\u{202e}') && !s.contains('\u{1b}'));
    }
    assert!(pdf::document(&sheets, &svgs, evil, evil).unwrap().starts_with(b"%PDF"));
}
