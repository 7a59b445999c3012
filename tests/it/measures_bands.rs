//! Levels of band edges taped on site: a frieze, a belly band and a skirt board of which the drawing has other levels
//! than the house; and openings that end with steps and sides of their wall as drawn, which do so as taped.

use std::collections::BTreeMap;

use lapwright::finding::Findings;
use lapwright::job::{Job, file as job_file};
use lapwright::layout::Layout;
use lapwright::model::measure::Measure;
use lapwright::pipeline;
use lapwright::pipeline::measures::measures;

use crate::measures::assert_alike;
use crate::smallcase::{JOB, Side, drawing, rect};
use crate::support::broken;

/// To which a tape is read, inches.
const TAPE: f64 = 1.0 / 16.0;

fn job(taped: &[(&str, f64)]) -> Job {
    let mut job = job_file::parse(JOB, "job").unwrap();
    job.taped = taped.iter().map(|(k, v)| ((*k).to_owned(), *v)).collect();
    job
}

fn laid(text: &str, job: &Job) -> (Layout, Findings) {
    let mut findings = Findings::default();
    let sets = pipeline::layout(text.as_bytes(), "t.dxf", job, &mut findings, &mut |_| {});
    (sets.unwrap_or_else(|e| panic!("{e:?} {findings:?}")).house.layout, findings)
}

fn all(text: &str) -> Vec<Measure> {
    let job = job(&[]);
    let read = pipeline::reading(text.as_bytes(), "t.dxf", &job, &mut Findings::default());
    measures(&read.unwrap().house, &laid(text, &job).0)
}

fn codes(findings: &Findings) -> Vec<&'static str> {
    findings.all().iter().map(|f| f.code().word()).collect()
}

fn front(rings: Vec<(&'static str, Vec<(f64, f64)>)>) -> String {
    let title = "FRONT ELEVATION".to_owned();
    drawing(&[Side { title, width: 300.0, rings }])
}

/// Top of the skirt board, bottom and top of the belly band, bottom of the frieze.
const DRAWN: [f64; 4] = [8.0, 100.0, 110.0, 190.0];
/// The skirt 3/8 in higher, the belly band 3/8 in higher and 1/8 in narrower, the frieze 1/2 in wider.
const BUILT: [f64; 4] = [8.375, 100.375, 110.25, 189.5];

/// A wall of 300 by 200 with a window under its belly band and one over it, 12 in off.
fn banded([skirt, bottom, top, frieze]: [f64; 4]) -> String {
    front(vec![
        ("A-WALL-OTLN", rect(0.0, 0.0, 300.0, 200.0)),
        ("A-WALL-BAND", rect(0.0, 0.0, 300.0, skirt)),
        ("A-WALL-BAND", rect(0.0, bottom, 300.0, top)),
        ("A-WALL-BAND", rect(0.0, frieze, 300.0, 200.0)),
        ("A-GLAZ", rect(60.0, 36.0, 104.0, 84.0)),
        ("A-GLAZ", rect(120.0, 130.0, 164.0, 170.0)),
    ])
}

/// Boards of the front wall, from the lowest: bottom and top.
fn boards(layout: &Layout) -> Vec<[f64; 2]> {
    let wall = layout.walls().next().unwrap().1;
    let box_of = |ring: &Vec<[f64; 2]>| {
        let ys = || ring.iter().map(|p| p[1]);
        [ys().fold(f64::MAX, f64::min), ys().fold(f64::MIN, f64::max)]
    };
    wall.bands.iter().map(box_of).collect()
}

#[test]
fn bands_taped_at_other_levels_are_laid_out_as_the_house_is() {
    let (drawn, built) = (banded(DRAWN), banded(BUILT));
    let truth = laid(&built, &job(&[])).0;
    let taped: BTreeMap<String, f64> = all(&built).into_iter().map(|m| (m.name, m.drawn)).collect();
    // An edge at the foot or under the soffit is where the wall ends: it has its own blanks.
    let of_bands: Vec<(&str, f64)> = taped
        .iter()
        .filter(|(k, _)| k.starts_with("front-1-B"))
        .map(|(k, v)| (k.as_str(), *v))
        .collect();
    let names = ["front-1-B1/top", "front-1-B2/bottom", "front-1-B2/top", "front-1-B3/bottom"];
    let expected: Vec<(&str, f64)> = names.into_iter().zip(BUILT).collect();
    assert_eq!(of_bands, expected);
    let mut with_tape = job(&[]);
    with_tape.taped = taped.clone();
    let (moved, findings) = laid(&drawn, &with_tape);
    assert_alike(&moved, &truth, "bands");
    assert_eq!(broken(&moved), Vec::<String>::new());
    assert!(!codes(&findings).contains(&"taped-contradicts"), "{findings:?}");
    let levels: Vec<[f64; 2]> = vec![[0.0, 8.375], [100.375, 110.25], [189.5, 200.0]];
    let (a, b) = (boards(&moved), boards(&truth));
    assert_eq!(a.len(), levels.len());
    for ((x, y), z) in a.concat().iter().zip(b.concat()).zip(levels.concat()) {
        assert!((x - y).abs() <= TAPE && (x - z).abs() <= TAPE, "{a:?} {b:?}");
    }
    assert_ne!(boards(&laid(&drawn, &job(&[])).0), a);
}

#[test]
fn a_band_of_which_one_edge_was_taped_keeps_its_width_and_the_rest_its_place() {
    let (moved, _) = laid(&banded(DRAWN), &job(&[("front-1-B2/bottom", 99.5)]));
    assert_eq!(boards(&moved), [[0.0, 8.0], [99.5, 109.5], [190.0, 200.0]]);
    assert_eq!(broken(&moved), Vec::<String>::new());
    // A bottom edge over the top edge, and a belly band over the frieze, cannot be.
    for said in [
        &[("front-1-B2/bottom", 112.0), ("front-1-B2/top", 110.0)][..],
        &[("front-1-B2/top", 196.0)],
    ] {
        let (moved, findings) = laid(&banded(DRAWN), &job(said));
        assert!(codes(&findings).contains(&"taped-contradicts"), "{said:?} {findings:?}");
        assert_eq!(boards(&moved), boards(&laid(&banded(DRAWN), &job(&[])).0), "{said:?}");
    }
}

#[test]
fn an_error_at_the_edge_of_a_band_spoils_the_course_that_ends_there() {
    let text = banded(DRAWN);
    let found = all(&text);
    for name in ["front-1-B1/top", "front-1-B2/bottom", "front-1-B2/top", "front-1-B3/bottom"] {
        let m = found.iter().find(|m| m.name == name).unwrap();
        // One course over 300 in of wall, less what its posts take.
        assert!((280.0..=300.0).contains(&m.spoils.length), "{m:?}");
    }
    let counts: Vec<usize> = found.iter().map(|m| m.spoils.pieces).collect();
    assert!(counts.is_sorted_by(|a, b| a >= b), "{counts:?}");
    for s in lapwright::annotate::measures(&laid(&text, &job(&[])).0, &found) {
        crate::sheets::legible("bands", &s);
    }
}

#[test]
fn steps_of_a_wall_go_with_the_jambs_they_stand_on() {
    // The soffit steps down to the head of the upper window, from jamb to jamb; the lower one has the same jambs.
    let step = [(300.0, 120.0), (160.0, 120.0), (160.0, 118.0), (120.0, 118.0), (120.0, 120.0)];
    let outline = [&[(0.0, 0.0), (300.0, 0.0)], &step[..], &[(0.0, 120.0)]].concat();
    let text = front(vec![
        ("A-WALL-OTLN", outline),
        ("A-GLAZ", rect(120.0, 20.0, 160.0, 60.0)),
        ("A-GLAZ", rect(120.0, 88.0, 160.0, 118.0)),
    ]);
    assert_eq!(broken(&laid(&text, &job(&[])).0), Vec::<String>::new());
    let plain = all(&text);
    let of = |sill: f64| {
        let found = plain.iter().find(|m| m.drawn == sill && m.name.ends_with("/sill")).unwrap();
        found.thing.clone()
    };
    let (low, high) = (of(20.0), of(88.0));
    let said = [
        (format!("{low}/place"), 119.75),
        (format!("{low}/width"), 39.25),
        (format!("{high}/place"), 120.25),
        (format!("{high}/width"), 40.5),
    ];
    let mut with_tape = job(&[]);
    with_tape.taped = said.into();
    let (moved, _) = laid(&text, &with_tape);
    assert_eq!(broken(&moved), Vec::<String>::new());
    let wall = moved.walls().next().unwrap().1;
    let mut steps: Vec<f64> = wall.outline.iter().filter(|p| p[1] == 118.0).map(|p| p[0]).collect();
    steps.sort_by(f64::total_cmp);
    assert_eq!(steps, [120.25, 160.75]);
}
