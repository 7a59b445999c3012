//! Details: each dimension is a setting of the job, drawn to the scale that the title block names; a house
//! shows those that it has places for.

use lapwright::job::Job;
use lapwright::job::file as job_file;
use lapwright::model::drawing::{Dimension, Shape};
use lapwright::model::sheet::Sheet;
use lapwright::units::{Unit, parse_length};

use crate::sheets::{legible, texts};
use crate::support::{dxf, inches, lay_set, rect, root, sheets};

/// The sheets of details of a layout.
fn details(bytes: &[u8], job: &Job) -> Vec<Sheet> {
    let all = sheets(&lay_set(bytes, job));
    all.into_iter().filter(|s| s.title.starts_with("Details")).collect()
}

fn cottage(text: &str) -> Vec<Sheet> {
    let path = root().join("sample-drawings/curlew-cottage.dxf");
    let text = format!("[seams]\neffort = \"crew\"\n{text}");
    let sheets = details(&std::fs::read(path).unwrap(), &job_file::parse(&text, "job").unwrap());
    assert!(!sheets.is_empty());
    sheets.iter().for_each(|s| legible("details", s));
    sheets
}

fn dimensions(sheets: &[Sheet]) -> Vec<(String, f64)> {
    let shapes = sheets.iter().flat_map(|s| &s.drawing.items).map(|i| &i.shape);
    let paper = |d: &Dimension| (d.to - d.from).hypot();
    shapes
        .filter_map(|s| match s {
            Shape::Dimension(d) => Some((d.text.clone().unwrap(), paper(d))),
            _ => None,
        })
        .collect()
}

fn says(sheets: &[Sheet], words: &str) -> bool {
    sheets.iter().flat_map(texts).any(|t| t.content.contains(words))
}

#[test]
fn every_dimension_is_drawn_to_scale() {
    // 3 in to the foot: 4 in of the house to an inch of paper; 1:5.
    let jobs = [
        ("", 4.0, Unit::Inch),
        ("[product]\nkind = \"vinyl\"\n", 4.0, Unit::Inch),
        ("[product]\nkind = \"steel\"\n", 4.0, Unit::Inch),
        ("[product]\nkind = \"wood\"\n", 4.0, Unit::Inch),
        ("[product]\nkind = \"fiber-cement\"\n[sheet]\nlengths = \"mm\"\n", 5.0, Unit::Mm),
        ("[sheet]\npaper = \"ANSI A\"\n", 4.0, Unit::Inch),
    ];
    for (text, factor, unit) in jobs {
        let dims = dimensions(&cottage(text));
        assert!(dims.len() >= 8, "{text}: {dims:?}");
        for (words, paper) in dims {
            let told = parse_length(&words, unit).unwrap();
            // Whole millimeters, or sixteenths.
            assert!((told - paper * factor).abs() <= 0.0321, "{text}: {words} drawn as {paper} in");
        }
    }
}

#[test]
fn dimensions_are_the_settings_of_the_job() {
    // Each a length that no other setting has.
    let sheets = cottage(
        "[product]\noutside_post_set_back = 2.1875\noutside_post_face = 3.4375\nend_gap = 0.3125\n\
         foam_set_back = 0.6875\n[courses]\nclear_of_grade = 5.5\nclear_of_roof = 0.8125\n\
         notch_clearance = 0.375\n[trim]\ntab = 0.9375\nchannel_face = 0.625\nstarter_line = 1.75\n\
         inside_corner = \"two-channels\"\nsurround = 2.5625\n",
    );
    let dims: Vec<String> = dimensions(&sheets).into_iter().map(|d| d.0).collect();
    for (name, words) in [
        ("set-back of the post", "2 3/16\""),
        ("its face", "3 7/16\""),
        ("end gap", "5/16\""),
        ("foam stops short", "11/16\""),
        // Twice that: SidingFact::FoamLap.
        ("lap", "1 3/8\""),
        ("grade", "5 1/2\""),
        ("roof", "13/16\""),
        ("cut edges", "3/8\""),
        ("tab", "15/16\""),
        ("channel", "5/8\""),
        ("starter", "1 3/4\""),
    ] {
        assert!(dims.iter().any(|d| d == words), "{name}: no {words} in {dims:?}");
    }
    assert!(says(&sheets, "2 9/16\""), "the surround is told");
    assert!(says(&sheets, "A J-channel on each wall"));
}

#[test]
fn a_length_beyond_the_frame_is_told_in_words() {
    let sheets = cottage("[courses]\nclear_of_grade = 14\n");
    assert!(says(&sheets, "clear of grade: 14\""));
    assert!(dimensions(&sheets).iter().all(|d| d.0 != "14\""));
}

#[test]
fn a_house_shows_the_details_it_has_places_for() {
    let plain =
        details(dxf(&[("A-WALL-OTLN", &rect(0.0, 0.0, 240.0, 96.0))]).as_bytes(), &inches());
    assert!(says(&plain, "Start over grade") && says(&plain, "Seam, seen from above"));
    // On a roof a skirt board wide 1 1/2 in stands up to the course line at 128.
    let skirt = [
        ("A-WALL-OTLN", &rect(0.0, 0.0, 432.0, 220.0)[..]),
        ("A-ROOF-OTLN", &rect(-12.0, 96.0, 444.0, 126.0)[..]),
    ];
    let mut job = inches();
    job.courses.datum = Some(0.0);
    let skirt = details(dxf(&skirt).as_bytes(), &job);
    assert!(says(&skirt, "Skirt board over a level roof") && says(&skirt, "Flashing, up behind"));
    skirt.iter().for_each(|s| legible("skirt", s));
    for absent in ["Skirt board", "Sill", "Head", "Mounting block", "Roof to wall", "Inside corner"]
    {
        assert!(!says(&plain, absent), "{absent}");
    }
    let window = details(
        dxf(&[
            ("A-WALL-OTLN", &rect(0.0, 0.0, 240.0, 96.0)),
            ("A-GLAZ", &rect(60.0, 30.0, 96.0, 78.0)),
        ])
        .as_bytes(),
        &inches(),
    );
    assert!(says(&window, "Sill") && says(&window, "Water tab, seen from the front"));
    // Boards have no channels to bend tabs from.
    assert!(!says(&cottage("[product]\nkind = \"wood\"\n"), "Water tab"));
}
