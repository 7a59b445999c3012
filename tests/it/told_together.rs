//! Findings about one subject told as one: in text, on the picture of problems.

use std::collections::BTreeSet;

use lapwright::annotate;
use lapwright::finding::corners::CornerFinding;
use lapwright::finding::drawing::{DrawingFinding, LooksLike};
use lapwright::finding::house::HouseFinding;
use lapwright::finding::lines::LineFinding;
use lapwright::finding::{Finding, FindingCode, Findings, Severity, Subject, gathered};
use lapwright::geom::vocabulary::{Point, Rect};
use lapwright::job::file;
use lapwright::model::drawing::{Across, Drawing, Shape};
use lapwright::model::sheet::Sheet;
use lapwright::pipeline;
use lapwright::typeface;
use lapwright::units::LengthStyle;
use lapwright::wording::findings::subject;
use lapwright::write::findings::findings_text;

use crate::architect::drawing;

/// Two mended lines, an opening off its siding, an assumed plane, two files of the wrong sort.
fn some() -> Vec<Finding> {
    let at = |f: Finding, x: f64| f.at(Point::new(x, 1.0));
    let not_dxf = |name: &str| {
        Finding::new(DrawingFinding::NotDxf { name: name.to_owned(), looks_like: LooksLike::Pdf })
    };
    vec![
        at(Finding::new(LineFinding::LineTwice { lines: 2 }), 1.0),
        at(Finding::new(HouseFinding::JointInOpening {}), 2.0),
        not_dxf("a"),
        at(Finding::new(LineFinding::LineZero { lines: 3 }), 3.0),
        at(Finding::new(HouseFinding::FixtureOutside {}), 4.0),
        at(Finding::new(LineFinding::LineTwice { lines: 5 }), 5.0),
        Finding::new(CornerFinding::SetBackTaken { taken: Vec::new(), boards: false }),
        not_dxf("b"),
    ]
}

#[test]
fn errors_come_first_and_alone_then_subjects_with_a_warning() {
    let all = some();
    let told: Vec<(Subject, Vec<(&str, usize)>)> = gathered(&all)
        .iter()
        .map(|g| {
            let kinds = g.kinds.iter().map(|k| (k.first().code().word(), k.all().len()));
            (g.subject, kinds.collect())
        })
        .collect();
    let wanted = [
        (Subject::Read, vec![("not-dxf", 2)]),
        (Subject::Openings, vec![("joint-in-opening", 1), ("fixture-outside", 1)]),
        (Subject::Corners, vec![("set-back-taken", 1)]),
        (Subject::Linework, vec![("line-twice", 2), ("line-zero", 1)]),
    ];
    assert_eq!(told, wanted);
}

#[test]
fn each_code_is_about_one_subject_and_each_subject_has_its_names() {
    let met: BTreeSet<Subject> = FindingCode::all().into_iter().map(FindingCode::subject).collect();
    assert_eq!(met, BTreeSet::from(Subject::ALL));
    assert!(Subject::ALL.is_sorted());
    for lang in lapwright::language::Language::ALL {
        let names: BTreeSet<&str> = Subject::ALL.iter().map(|s| subject(*s).of(lang)).collect();
        assert_eq!(names.len(), Subject::ALL.len());
    }
}

/// Every code, place and cure stands in the text; what is told together has one head.
#[test]
fn the_text_has_one_head_for_a_subject_and_loses_nothing() {
    let text = findings_text(&some(), LengthStyle::Feet);
    let heads: Vec<&str> = text.lines().filter(|l| !l.starts_with("   ")).collect();
    assert!(heads[0].starts_with("  ERROR not-dxf (2): a "), "{text}");
    assert_eq!(heads[1], "  WARNING Openings and fixtures: 1 warning, 1 note", "{text}");
    assert!(heads[2].starts_with("  WARNING set-back-taken: "), "{text}");
    assert_eq!(heads[3], "  note Linework: 3 notes", "{text}");
    assert_eq!(heads.len(), 4, "{text}");
    for kind in ["WARNING joint-in-opening at (2.000, 1.000): ", "note line-twice (2) at (1.000"] {
        assert!(text.contains(&format!("\n    {kind}")), "{kind}: {text}");
    }
    assert!(text.contains("\n       and at (5.000, 1.000): "), "{text}");
    assert_eq!(text.matches("-> ").count(), 6, "{text}");
}

/// A number at circles, and what it must keep off.
struct Picture {
    marks: Vec<(String, Rect)>,
    others: Vec<Rect>,
    circles: Vec<(Point, f64)>,
}

/// `3`, `3b`, or several of them.
fn is_mark(text: &str) -> bool {
    text.split(", ").all(|m| {
        let letters = m.trim_start_matches(|c: char| c.is_ascii_digit());
        letters.len() < m.len() && letters.chars().all(|c| c.is_ascii_lowercase())
    })
}

/// What stands on the sheet, by the typeface's own widths and the height of capitals.
fn picture(sheet: &Sheet) -> Picture {
    let mut out = Picture { marks: Vec::new(), others: Vec::new(), circles: Vec::new() };
    for item in &sheet.drawing.items {
        let layer = sheet.drawing.layers[item.layer].name.as_str();
        match &item.shape {
            Shape::Text(t) if layer != "source-text" => {
                let wide = typeface::width(&t.content, t.height, t.bold);
                let left = match t.across {
                    Across::Left => t.at.x,
                    Across::Center => t.at.x - wide / 2.0,
                    Across::Right => t.at.x - wide,
                };
                let half = t.height / 2.0;
                let r = Rect::new(left, t.at.y - half, left + wide, t.at.y + half);
                if is_mark(&t.content) && t.across == Across::Center {
                    out.marks.push((t.content.clone(), r));
                } else {
                    out.others.push(r);
                }
            }
            Shape::Polyline(p) if ["faults", "doubts", "remarks"].contains(&layer) => {
                let (a, b) = (p.vertices[0].at, p.vertices[1].at);
                out.circles.push((a.midpoint(b), a.distance(b) / 2.0));
            }
            _ => {}
        }
    }
    out
}

fn stands_clear(sheet: &Sheet, said: &str) -> usize {
    // Two pages lying, one over the other.
    assert!(sheet.width <= 17.0 && sheet.height <= 22.0, "{said}: {}", sheet.height);
    let Picture { marks, others, circles } = picture(sheet);
    for (i, (text, r)) in marks.iter().enumerate() {
        let on = r.x0 >= 0.0 && r.y0 >= 0.0 && r.x1 <= sheet.width && r.y1 <= sheet.height;
        assert!(on, "{said}: {text} is off the page");
        let rest = marks[i + 1..].iter().map(|m| m.1).chain(others.iter().copied());
        let hit = rest.clone().find(|o| r.x0 < o.x1 && o.x0 < r.x1 && r.y0 < o.y1 && o.y0 < r.y1);
        assert!(hit.is_none(), "{said}: {text} at {r:?} stands on {hit:?}");
        let near =
            |c: &Point| Point::new(c.x.clamp(r.x0, r.x1), c.y.clamp(r.y0, r.y1)).distance(*c);
        let under = circles.iter().find(|(c, radius)| near(c) < radius * 0.97);
        assert!(under.is_none(), "{said}: {text} at {r:?} in the circle {under:?}");
    }
    marks.len()
}

/// What a person sees of a check of a drawing.
fn sheet_of(bytes: &[u8], name: &str) -> (Sheet, Findings) {
    let mut findings = Findings::default();
    let job = file::read("[seams]\neffort = \"crew\"\n", "job.toml", &mut findings).unwrap();
    let checked = pipeline::checked(bytes.to_vec(), name, &job, &mut findings);
    pipeline::checked_layout(&checked, &job, &mut findings, &mut |_| {});
    let read = checked.lines.layers_read();
    (annotate::problems(&checked.drawing, &read, findings.all(), LengthStyle::Feet), findings)
}

#[test]
fn numbers_of_drawings_as_architects_draw_them_stand_clear() {
    let mut numbers = 0;
    for seed in 1..=16 {
        let d = drawing(seed);
        let (sheet, findings) = sheet_of(d.dxf.as_bytes(), "drawn.dxf");
        let placed =
            findings.all().iter().any(|f| f.at.is_some() && f.severity() >= Severity::Warning);
        let here = stands_clear(&sheet, &format!("seed {seed}"));
        assert!(here > 0 || !placed, "seed {seed}");
        numbers += here;
    }
    assert!(numbers > 60, "{numbers}");
}

/// Four hundred places a twentieth of an inch apart on the page, of as many kinds as come: every kind's
/// number is there, none on another.
#[test]
fn numbers_of_a_crowd_stand_clear() {
    let mut all = Vec::new();
    for i in 0..100 {
        let at = |dy: f64| Point::new(f64::from(i % 20) * 3.0, f64::from(i / 20) * 3.0 + dy);
        all.push(Finding::new(LineFinding::LineTwice { lines: 2 }).at(at(0.0)));
        all.push(Finding::new(LineFinding::LineZero { lines: 2 }).at(at(20.0)));
        all.push(Finding::new(HouseFinding::FixtureOutside {}).at(at(0.7)));
        all.push(Finding::new(HouseFinding::JointInOpening {}).at(at(1.1)));
    }
    let sheet = annotate::problems(&Drawing::default(), &BTreeSet::new(), &all, LengthStyle::Feet);
    assert!(stands_clear(&sheet, "crowd") > 20);
    let marks = picture(&sheet).marks;
    for one in ["1a", "1b", "2a", "2b"] {
        assert!(marks.iter().any(|m| m.0.split(", ").any(|x| x == one)), "{one}");
    }
}
