//! Every letter of a name is drawn: as itself in the scripts the typeface has, else as a box with a question
//! mark that is told.

use std::collections::BTreeSet;

use lapwright::finding::letters::{LetterFinding, LetterPlace};
use lapwright::finding::{Finding, FindingKind, Findings, Severity};
use lapwright::job::file as job_file;
use lapwright::layout::set::LaidSet;
use lapwright::model::drawing::{Across, Drawing, Pen, Shape, Text, Up};
use lapwright::model::sheet::Sheet;
use lapwright::pipeline;
use lapwright::typeface;
use lapwright::write::{pdf, png, svg};
use resvg::tiny_skia::Pixmap;

use crate::inflate::streams;
use crate::sheets::texts;
use crate::support::{dxf, rect, said, sheets};

/// What stands for a letter that is not in the typeface, by the Unicode Standard.
const BOX: char = '\u{fffd}';

/// Names as architects write them: "front, north" in each language, with signs.
const NAMES: [&str; 8] = [
    "Πρόσοψη Βόρεια ≤ 3",
    "ФАСАД Северный → 1",
    "Їжакова ґанок ↑",
    "Mặt đứng phía Bắc",
    "Ma\u{323}\u{306}t \u{111}u\u{31b}\u{301}ng phi\u{301}a Nam",
    "Průčelí žluťoučké ½",
    "חזית צפון",
    "الواجهة الشمالية",
];

/// A house of one wall with a window for each name, which is its title.
fn house(names: &[&str], window_layer: &str) -> String {
    let mut rings = Vec::new();
    let mut titles = String::new();
    let at = |i: usize| 500.0 * i as f64;
    for i in 0..names.len() {
        let x = at(i);
        rings.push(("A-ELEV-FRAM", rect(x - 60.0, -60.0, x + 300.0, 160.0)));
        rings.push(("A-WALL-OTLN", rect(x, 0.0, x + 240.0, 96.0)));
        rings.push((window_layer, rect(x + 60.0, 32.0, x + 96.0, 72.0)));
    }
    for (i, name) in names.iter().enumerate() {
        titles +=
            &format!("0\nTEXT\n8\nA-ELEV-IDEN\n10\n{}\n20\n-30\n40\n9\n1\n{name}\n", at(i) + 60.0);
    }
    let rings: Vec<(&str, &[(f64, f64)])> = rings.iter().map(|(l, r)| (*l, &r[..])).collect();
    // R2007 and on are UTF-8.
    let head = "0\nSECTION\n2\nHEADER\n9\n$ACADVER\n1\nAC1021\n0\nENDSEC\n";
    head.to_owned() + &dxf(&rings).replace("0\nENDSEC\n", &format!("{titles}0\nENDSEC\n"))
}

fn laid(drawing: &str, job: &str) -> (LaidSet, Vec<Finding>) {
    let job = format!("[drawing]\nunit = \"inch\"\n[seams]\neffort = \"crew\"\n{job}");
    let job = job_file::parse(&job, "job").unwrap();
    let mut findings = Findings::default();
    let sets = pipeline::layout(drawing.as_bytes(), "d.dxf", &job, &mut findings, &mut |_| {});
    (sets.unwrap().house, findings.all().to_vec())
}

fn of_letters(findings: &[Finding]) -> Vec<&Finding> {
    findings.iter().filter(|f| matches!(f.kind, FindingKind::Letters(_))).collect()
}

/// Texts on a page, each `high` inches, with its place.
fn page(shown: &[(String, f64, f64)], high: f64) -> Sheet {
    let mut drawing = Drawing::default();
    let on = drawing.layer("text", Pen::default());
    for (content, x, y) in shown {
        let (content, at) = (content.clone(), (*x, *y).into());
        let (across, up) = (Across::Left, Up::Baseline);
        let (mirrored, bold) = (false, false);
        let text = Text { at, height: high, angle: 0.0, content, across, up, bold, mirrored };
        drawing.draw(on, Shape::Text(text));
    }
    let (name, title, description) = ("p".to_owned(), "p".to_owned(), "p".to_owned());
    Sheet { name, title, description, width: 17.0, height: 11.0, full_size: false, drawing }
}

const DOTS: f64 = 96.0;

fn picture(sheet: &Sheet) -> Pixmap {
    Pixmap::decode_png(&png::picture(&svg::document(sheet), DOTS).unwrap()).unwrap()
}

/// Dark pixels of a part of a page, as places from its lower left corner, inches.
fn ink(picture: &Pixmap, (x0, y0, x1, y1): (f64, f64, f64, f64)) -> BTreeSet<(i64, i64)> {
    let high = f64::from(picture.height()) / DOTS;
    let (left, top) = ((x0 * DOTS).round() as i64, ((high - y1) * DOTS).round() as i64);
    let (right, low) = ((x1 * DOTS).round() as i64, ((high - y0) * DOTS).round() as i64);
    let dark = |(x, y): &(i64, i64)| picture.pixel(*x as u32, *y as u32).unwrap().red() < 128;
    let all = (left..right).flat_map(|x| (top..low).map(move |y| (x, y)));
    all.filter(dark).map(|(x, y)| (x - left, y - top)).collect()
}

#[test]
fn names_in_every_script_stand_on_sheets_as_they_are_written() {
    let project = "Đường Nguyễn Huệ, Αθήνα ≤ ≥ → ↔ ½";
    let job = format!("[title]\nproject = \"{project}\"\nclient = \"Иван Žižka\"\n");
    let (set, findings) = laid(&house(&NAMES, "A-GLAZ"), &job);
    assert!(of_letters(&findings).is_empty(), "{:?}", of_letters(&findings));
    let sheets = sheets(&set);
    for s in &sheets {
        let told: Vec<&str> = texts(s).map(|t| t.content.as_str()).collect();
        assert!(!told.iter().any(|t| t.contains(BOX)), "{}", s.name);
        assert!(told.contains(&project) && told.contains(&"Иван Žižka"), "{}: {told:?}", s.name);
    }
    for name in NAMES {
        let name = name.trim();
        let own =
            sheets.iter().find(|s| s.title.contains(name)).unwrap_or_else(|| panic!("{name}"));
        assert!(texts(own).any(|t| t.content.contains(name)), "{name}");
        assert!(svg::document(own).contains(name), "{name}");
    }
}

#[test]
fn every_letter_of_the_names_has_a_look_of_its_own_in_pictures() {
    let letters: BTreeSet<char> = NAMES
        .iter()
        .flat_map(|n| n.chars())
        .filter(|c| c.is_alphanumeric() || "≤→↑".contains(*c))
        .collect();
    assert!(letters.len() > 60, "{}", letters.len());
    let cell = |i: usize| (0.5 + (i % 16) as f64, 0.5 + (i / 16) as f64);
    let mut shown: Vec<(String, f64, f64)> = Vec::new();
    for (i, c) in letters.iter().chain([&BOX]).enumerate() {
        shown.push((c.to_string(), cell(i).0, cell(i).1));
    }
    let picture = picture(&page(&shown, 0.4));
    let looks = |i: usize| {
        let (x, y) = cell(i);
        ink(&picture, (x - 0.2, y - 0.2, x + 0.8, y + 0.7))
    };
    let replaced = looks(letters.len());
    assert!(replaced.len() > 100, "{}", replaced.len());
    for (i, c) in letters.iter().enumerate() {
        let own = looks(i);
        assert!(own.len() > 10, "{c} is blank");
        assert_ne!(own, replaced, "{c} is replaced");
    }
}

#[test]
fn letters_with_combining_marks_look_as_their_composed_forms() {
    // Canonical equivalents by the Unicode Standard, which are to look alike.
    let pairs = [
        ("Ma\u{323}\u{306}t", "M\u{1eb7}t"),
        ("u\u{31b}\u{301}ng", "\u{1ee9}ng"),
        ("E\u{302}\u{301}", "\u{1ebe}"),
        ("\u{438}\u{306}", "\u{439}"),
        ("\u{3b1}\u{301}", "\u{3ac}"),
        ("z\u{30c}", "\u{17e}"),
    ];
    let shown = |pick: fn(&(&str, &str)) -> String| -> Vec<(String, f64, f64)> {
        pairs.iter().enumerate().map(|(i, p)| (pick(p), 1.0, 1.0 + i as f64)).collect()
    };
    let apart = picture(&page(&shown(|p| p.0.to_owned()), 0.4));
    let composed = picture(&page(&shown(|p| p.1.to_owned()), 0.4));
    assert!(ink(&apart, (0.0, 0.0, 17.0, 11.0)).len() > 2000);
    assert!(apart.data() == composed.data());
    for (apart, composed) in pairs {
        let wide = |t: &str| typeface::width(t, 1.0, false);
        // Room is kept for the composed form, and little more.
        let more = wide(apart) - wide(composed);
        assert!((-1e-9..0.1).contains(&more), "{composed}: {more}");
    }
}

#[test]
fn what_the_typeface_lacks_is_told_with_its_places_and_stands_as_a_box() {
    let job = "[layers]\nwindow = [\"*GLAZ\"]\n[title]\nproject = \"\u{6a39}\u{5c4b} Tree\"\nclient = \"\u{e000}\u{1f3e0}\"\n";
    let (set, findings) = laid(&house(&["\u{6b63}\u{9762}\u{56f3}", "East"], "\u{7a93}-GLAZ"), job);
    let [found] = of_letters(&findings)[..] else { panic!("{:?}", of_letters(&findings)) };
    let FindingKind::Letters(LetterFinding::LettersNotDrawn {
        letters,
        code_points,
        places,
        names,
        layers_alone,
        ..
    }) = &found.kind
    else {
        panic!("{found:?}")
    };
    // Two and two of the title block, three of the view, one of the layer.
    assert_eq!((*letters, *names, *layers_alone), (8, 4, false));
    for c in "\u{6a39}\u{5c4b}\u{e000}\u{1f3e0}\u{6b63}\u{9762}\u{56f3}\u{7a93}".chars() {
        assert!(code_points.contains(&u32::from(c)), "{c}");
    }
    let view = LetterPlace::View { text: "\u{6b63}\u{9762}\u{56f3}".to_owned() };
    let layer = LetterPlace::Layer { text: "\u{7a93}-GLAZ".to_owned() };
    assert!(places.contains(&view) && places.contains(&layer), "{places:?}");
    assert!(
        places.iter().any(|p| matches!(p, LetterPlace::Job { key, .. } if key == "title.project"))
    );
    assert!(said(found).starts_with("8 letters cannot be drawn") && said(found).contains("U+E000"));
    assert_eq!(found.severity(), Severity::Warning);
    // It stands in the layout, so that report and cover have it.
    assert!(set.layout.findings.contains(found));

    let sheets = sheets(&set);
    for s in &sheets {
        let project = texts(s).filter(|t| t.content == "\u{fffd}\u{fffd} Tree").count();
        let client = texts(s).filter(|t| t.content == "\u{fffd}\u{fffd}").count();
        assert!(project >= 1 && client >= 1, "{}", s.name);
        let lost = texts(s).find(|t| typeface::lacking(&t.content).next().is_some());
        assert!(lost.is_none(), "{}: {lost:?}", s.name);
    }
    // In the picture each of the two stands with ink in its own room.
    let block = texts(&sheets[1]).find(|t| t.content == "\u{fffd}\u{fffd} Tree").unwrap();
    let picture = picture(&sheets[1]);
    let wide = typeface::width("\u{fffd}", block.height, block.bold);
    for i in 0..2 {
        let x = block.at.x + wide * f64::from(i);
        let (low, high) = (block.at.y - block.height / 2.0, block.at.y + block.height / 2.0);
        let own = ink(&picture, (x, low, x + wide, high));
        assert!(own.len() > 10, "letter {i} of the project is blank");
    }
}

#[test]
fn names_of_layers_alone_are_a_note_and_spaces_and_joiners_are_nothing() {
    let job = "[layers]\nwindow = [\"*GLAZ\"]\n";
    let (_, findings) = laid(&house(&["East"], "\u{7a93}-GLAZ"), job);
    let [found] = of_letters(&findings)[..] else { panic!("{:?}", of_letters(&findings)) };
    assert_eq!(found.severity(), Severity::Info);
    assert!(said(found).starts_with("1 letter cannot be drawn"), "{}", said(found));
    // A wide space, a selector, a joiner and a mark of order.
    let title = "[title]\nproject = \"a\\u3000b\\uFE0F\\u200D\\uFEFF\"\n";
    let (_, findings) = laid(&house(&["East"], "A-GLAZ"), title);
    assert!(of_letters(&findings).is_empty());
}

#[test]
fn marks_of_pieces_tell_walls_apart_whatever_the_names() {
    let names = ["\u{6b63}\u{9762}", "\u{80cc}\u{9762}", "חזית צפון", "الواجهة", "Βορράς"];
    let (set, _) = laid(&house(&names, "A-GLAZ"), "");
    let mut marks = BTreeSet::new();
    for (_, w) in set.layout.walls() {
        for p in w.courses.iter().flat_map(|c| &c.runs).flat_map(|r| &r.pieces) {
            let shown = typeface::printable(&p.mark);
            assert!(!shown.contains(BOX), "{shown}");
            // Read from the right, the figures after it would be turned round.
            let from_right = |c: char| ('\u{590}'..'\u{900}').contains(&c);
            assert!(!shown.contains(from_right), "{shown}");
            assert!(marks.insert(shown), "{} stands twice", p.mark);
        }
    }
    assert!(marks.len() > 100, "{}", marks.len());
}

/// Where the program that draws sets each part of a text, and the width of all.
fn places(text: &str) -> (Vec<(String, f32)>, f32) {
    let mut fonts = usvg::fontdb::Database::new();
    fonts.load_font_data(typeface::REGULAR.to_vec());
    let options = usvg::Options { fontdb: fonts.into(), ..Default::default() };
    let svg = svg::document(&page(&[(text.to_owned(), 1.0, 1.0)], 0.714));
    let tree = usvg::Tree::from_str(&svg, &options).unwrap();
    fn found(group: &usvg::Group, out: &mut Vec<(String, f32)>, right: &mut f32) {
        for node in group.children() {
            match node {
                usvg::Node::Group(g) => found(g, out, right),
                usvg::Node::Text(t) => {
                    *right = right.max(t.abs_bounding_box().right());
                    let glyphs = t.layouted().iter().flat_map(|s| &s.positioned_glyphs);
                    out.extend(glyphs.map(|g| (g.text.clone(), g.transform().tx)));
                }
                _ => {}
            }
        }
    }
    let (mut out, mut right) = (Vec::new(), 0.0);
    found(tree.root(), &mut out, &mut right);
    (out, right)
}

#[test]
fn names_read_from_the_right_are_drawn_so_with_their_figures_from_the_left() {
    for (text, first, second) in [("חזית 12", "ח", "ז"), ("شمال 12", "ش", "م")] {
        let (all, _) = places(text);
        let at =
            |part: &str| all.iter().find(|(t, _)| t == part).unwrap_or_else(|| panic!("{all:?}")).1;
        assert!(at(first) > at(second), "{text}: {all:?}");
        assert!(at("1") < at("2"), "{text}: {all:?}");
    }
}

#[test]
fn no_text_is_drawn_wider_than_the_room_that_is_kept_for_it() {
    let plain = ["FRONT ELEVATION", "12'-6 1/2\"", "AVAWATo"];
    for name in NAMES.iter().chain(&plain) {
        let (_, right) = places(name);
        // One inch of 96 units is where it begins, and capitals of 0.714 in are a font size of one.
        let drawn = f64::from(right) / 96.0 - 1.0;
        let kept = typeface::width(name, 0.714, false);
        assert!(drawn > 0.5 * kept && drawn < 1.03 * kept, "{name}: {drawn} of {kept}");
    }
}

#[test]
fn the_pdf_tells_every_letter_as_text_in_a_subset_of_the_typeface() {
    let mut shown: Vec<(String, f64, f64)> = Vec::new();
    // A letter with marks of its own and its composed form are one glyph, which is told once.
    let names: Vec<&str> = NAMES.into_iter().filter(|n| !n.contains('\u{323}')).collect();
    for (i, name) in names.iter().enumerate() {
        shown.push(((*name).to_owned(), 1.0, 1.0 + i as f64));
    }
    shown.push(("\u{6b63} \u{e000}".to_owned(), 1.0, 10.0));
    let sheet = page(&shown, 0.2);
    let file =
        pdf::document(std::slice::from_ref(&sheet), &[svg::document(&sheet)], "t", "").unwrap();
    assert!(file.len() < 60_000, "{} bytes: the typeface is not cut down", file.len());
    // The tables from glyphs to Unicode, as the PDF has them (ISO 32000-1, 9.10.3).
    let tables: Vec<String> = streams(&file)
        .into_iter()
        .filter(|s| s.contains("beginbfchar") || s.contains("beginbfrange"))
        .collect();
    assert!(!tables.is_empty());
    let mut told = BTreeSet::new();
    for word in tables.iter().flat_map(|t| t.split(['<', '>'])) {
        let units: Option<Vec<u16>> = (word.len() % 4 == 0)
            .then(|| {
                (0..word.len() / 4)
                    .map(|i| u16::from_str_radix(&word[4 * i..4 * i + 4], 16).ok())
                    .collect()
            })
            .flatten();
        told.extend(String::from_utf16_lossy(&units.unwrap_or_default()).chars());
    }
    let wanted = names.iter().flat_map(|n| n.chars()).chain([BOX]);
    let missing: String = wanted.filter(|c| *c != ' ' && !told.contains(c)).collect();
    assert!(missing.is_empty(), "{missing}");
    assert!(!told.contains(&'\u{6b63}') && !told.contains(&'\u{e000}'));
}
