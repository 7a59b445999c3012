//! A layout read back from its file is the layout that was written: every figure to its last bit, every
//! name, every fact. What is no layout of this format is told so, with what to do.

use lapwright::layout::Layout;
use lapwright::layout::format::FORMAT;
use lapwright::model::seam::Effort;
use lapwright::read::layout_json;
use lapwright::write::json;

use crate::random_sheets::house;
use crate::support::{dxf, job, laid, lay, lay_sets, samples};

/// Read back equal, and written again to the same bytes.
fn reads_back(name: &str, layout: &Layout) {
    let bytes = json::layout(layout);
    let read = layout_json::layout(&bytes).unwrap_or_else(|r| panic!("{name}: {r}"));
    assert!(read == *layout, "{name}: {}", first_difference(layout, &read));
    assert!(json::layout(&read) == bytes, "{name}: other bytes");
}

/// The first part of two layouts that is not the same, to look at.
fn first_difference(a: &Layout, b: &Layout) -> String {
    let (a, b) = (format!("{a:#?}"), format!("{b:#?}"));
    let pair = a.lines().zip(b.lines()).find(|(a, b)| a != b);
    pair.map_or("none in print".to_owned(), |(a, b)| format!("{a} became {b}"))
}

#[test]
fn every_sample_is_read_back_as_it_was_written() {
    for (stem, path) in samples() {
        reads_back(&stem, &laid(&stem));
        for zone in lay_sets(&std::fs::read(&path).unwrap(), &job(&path)).zones {
            reads_back(&stem, &zone.layout);
        }
    }
}

#[test]
fn fifty_random_houses_are_read_back_as_they_were_written() {
    for seed in 501..=550 {
        let (rings, mut job) = house(seed);
        job.seams.effort = Effort::Crew;
        let drawn: Vec<(&str, &[(f64, f64)])> =
            rings.iter().map(|(l, r)| (*l, r.as_slice())).collect();
        reads_back(&format!("house {seed}"), &lay(dxf(&drawn).as_bytes(), &job));
    }
}

#[test]
fn figures_come_back_to_the_last_bit() {
    // Sums and quotients that have no short decimal, the least and the greatest that a double holds.
    let figures = [
        0.1 + 0.2,
        1.0 / 3.0,
        f64::MIN_POSITIVE,
        f64::MAX,
        -1e-300,
        9_007_199_254_740_993.0,
        5e-324,
    ];
    let mut layout = laid("one-window");
    for figure in figures {
        layout.datum = figure;
        layout.elevations[0].walls[0].courses[0].runs[0].pieces[0].ends[0].angle = figure;
        let read = layout_json::layout(&json::layout(&layout)).unwrap();
        let angle = read.elevations[0].walls[0].courses[0].runs[0].pieces[0].ends[0].angle;
        assert_eq!((read.datum.to_bits(), angle.to_bits()), (figure.to_bits(), figure.to_bits()));
    }
}

/// The code of what is told of some bytes, with its sentence and remedy.
fn told(bytes: &[u8]) -> (String, String) {
    let lapwright::finding::Refusal(why) = layout_json::layout(bytes).unwrap_err();
    let words = lapwright::wording::findings::words(&why, Default::default());
    (why.code().to_string(), format!("{} {}", words.message, words.help))
}

#[test]
fn a_file_of_another_format_is_told_by_its_name_with_what_to_do() {
    let whole = String::from_utf8(json::layout(&laid("one-window"))).unwrap();
    assert!(whole.contains(FORMAT));
    for other in ["lapwright-layout/1", "lapwright-layout/3", "lapwright-takeoff/1"] {
        let (code, words) = told(whole.replacen(FORMAT, other, 1).as_bytes());
        assert_eq!(code, "layout-format");
        assert!(words.contains(other) && words.contains(FORMAT), "{words}");
        assert!(words.contains("lapwright layout"), "{words}");
    }
    let (code, words) = told(b"{\"panels\": []}");
    assert_eq!(code, "layout-format");
    assert!(words.contains("names no format"), "{words}");
}

#[test]
fn a_broken_file_is_told_with_its_place() {
    let whole = json::layout(&laid("one-window"));
    for cut in [0, 1, whole.len() / 3, whole.len() - 3] {
        let (code, words) = told(&whole[..cut]);
        assert!(code == "layout-unreadable" && words.contains("line "), "{cut}: {code}: {words}");
    }
    // In order as JSON, but no layout: what is missing or wrong is named.
    let text = String::from_utf8(whole).unwrap();
    for (from, to, names) in [
        ("\"datum\":", "\"dat\":", "datum"),
        ("\"cut\": \"factory\"", "\"cut\": \"torn\"", "torn"),
        ("\"panels\": [", "\"panels\": 7, \"was\": [", "sequence"),
    ] {
        assert!(text.contains(from), "{from}");
        let (code, words) = told(text.replacen(from, to, 1).as_bytes());
        assert!(code == "layout-unreadable" && words.contains(names), "{to}: {words}");
    }
}
