//! Every drawing of a folder of other people's drawings, named by `LAPWRIGHT_CORPUS`: each ends in
//! a layout or in named findings, none panics or hangs.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::disallowed_types,
    clippy::disallowed_methods,
    reason = "a test or bench may stop at the first thing that is not as it should be"
)]

use std::path::{Path, PathBuf};

use lapwright::finding::{Findings, Severity};
use lapwright::job::Job;
use lapwright::model::drawing::Drawing;
use lapwright::pipeline;
use lapwright::read::{self, Limits};
use lapwright::units::LengthStyle;
use lapwright::wording::findings::words;

mod dwg;
#[path = "../dwgcase/mod.rs"]
#[allow(dead_code, reason = "of the small house only what changes bytes is used here")]
mod dwgcase;
mod house;
mod house_prints;
#[path = "../jobcase/mod.rs"]
mod jobcase;
#[path = "../taping/mod.rs"]
mod taping;
mod tapings;

fn corpus() -> PathBuf {
    let dir = std::env::var_os("LAPWRIGHT_CORPUS")
        .expect("set LAPWRIGHT_CORPUS to the folder of drawings");
    let dir = PathBuf::from(dir);
    // A relative folder is meant from the project's own.
    if dir.is_absolute() { dir } else { Path::new(env!("CARGO_MANIFEST_DIR")).join(dir) }
}

fn drawings() -> Vec<PathBuf> {
    let mut out = Vec::new();
    for part in ["real", "stress"] {
        for e in std::fs::read_dir(corpus().join(part)).unwrap() {
            out.push(e.unwrap().path());
        }
    }
    out.retain(|p| p.extension().is_some_and(|x| x == "dxf"));
    out.sort();
    assert!(out.len() > 40, "only {} drawings", out.len());
    out
}

fn read(path: &Path) -> (Result<Drawing, lapwright::finding::Refusal>, Findings) {
    let mut notes = Findings::default();
    let bytes = std::fs::read(path).unwrap();
    let d = read::drawing(&bytes, "corpus", &Limits::default(), &mut notes);
    (d, notes)
}

#[test]
fn every_drawing_ends_in_a_layout_or_named_findings() {
    let mut refused = 0;
    for path in drawings() {
        let bytes = std::fs::read(&path).unwrap();
        let mut notes = Findings::default();
        match pipeline::layout(&bytes, "corpus", &Job::default(), &mut notes, &mut |_| {}) {
            Ok(_) => {}
            Err(r) => {
                refused += 1;
                assert!(
                    !r.0.code().word().is_empty()
                        && !words(&r.0, LengthStyle::Feet).help.is_empty(),
                    "{}",
                    path.display()
                );
            }
        }
    }
    // None of them follows our convention.
    assert!(refused > 40);
}

#[test]
fn ascii_and_binary_twins_read_the_same() {
    let mut pairs = 0;
    for path in drawings() {
        let name = path.file_name().unwrap().to_string_lossy().into_owned();
        if !name.ends_with("_ascii.dxf") {
            continue;
        }
        let twin = path.with_file_name(name.replace("_ascii.dxf", "_binary.dxf"));
        let (a, b) = (read(&path).0.unwrap(), read(&twin).0.unwrap());
        assert_eq!(a.items.len(), b.items.len(), "{name}");
        for (x, y) in a.items.iter().zip(&b.items) {
            assert_eq!(a.layers[x.layer].name, b.layers[y.layer].name, "{name}");
            assert_eq!(
                std::mem::discriminant(&x.shape),
                std::mem::discriminant(&y.shape),
                "{name}"
            );
        }
        pairs += 1;
    }
    assert!(pairs >= 3, "{pairs}");
}

#[test]
fn real_drawings_are_read_without_loss() {
    let mut seen = 0;
    for path in drawings().into_iter().filter(|p| p.parent().is_some_and(|d| d.ends_with("real"))) {
        let (d, notes) = read(&path);
        let d = d.unwrap();
        assert!(d.items.len() > 100, "{}: {}", path.display(), d.items.len());
        assert_eq!(notes.count(Severity::Error), 0);
        seen += 1;
    }
    assert!(seen >= 5);
}

#[test]
fn a_shed_whose_walls_are_loose_lines_is_refused_with_its_layers_named() {
    let path = drawings().into_iter().find(|p| p.to_string_lossy().contains("E3_")).unwrap();
    let bytes = std::fs::read(path).unwrap();
    let r = pipeline::reading(&bytes, "e3", &Job::default(), &mut Findings::default()).unwrap_err();
    assert_eq!(r.0.code().word(), "no-walls");
}

fn named(part: &str, job: &str) -> lapwright::layout::Layout {
    let path = drawings().into_iter().find(|p| p.to_string_lossy().contains(part)).unwrap();
    let bytes = std::fs::read(path).unwrap();
    let job = lapwright::job::file::parse(job, "job").unwrap();
    pipeline::layout(&bytes, part, &job, &mut Findings::default(), &mut |_| {})
        .unwrap()
        .house
        .layout
}

/// The box of a wall or opening in the source's units.
fn source_box(to: [f64; 6], points: &[[f64; 2]]) -> [f64; 4] {
    let place = |p: &[f64; 2]| [to[0] * p[0] + to[4], to[3] * p[1] + to[5]];
    let start = [f64::INFINITY, f64::INFINITY, f64::NEG_INFINITY, f64::NEG_INFINITY];
    points
        .iter()
        .map(place)
        .fold(start, |b, p| [b[0].min(p[0]), b[1].min(p[1]), b[2].max(p[0]), b[3].max(p[1])])
}

#[test]
fn a_shed_front_by_its_layer_gives_the_wall_and_openings_of_its_check_values() {
    // Check values of the folder's own page, millimeters.
    let wall = [1100.0, 2364.0, 7335.0, 4764.0];
    let openings = [
        [2025.0, 3184.0, 2985.0, 4154.0],
        [3750.0, 2364.0, 4685.0, 4344.0],
        [5450.0, 3184.0, 6410.0, 4154.0],
    ];
    let near = |a: [f64; 4], b: [f64; 4]| a.iter().zip(b).all(|(a, b)| (a - b).abs() <= 1.0);
    for job in ["[layers]\nwall = ['front']", "[[elevation]]\nname = 'F'\nlayers = ['front']"] {
        let l = named("E1_", job);
        let e = &l.elevations[0];
        assert_eq!(e.walls.len(), 1);
        let w = &e.walls[0];
        assert!(near(source_box(e.to_source, &w.outline), wall), "{:?}", w.outline);
        let mut found: Vec<[f64; 4]> =
            w.openings.iter().map(|o| source_box(e.to_source, &o.outline)).collect();
        found.sort_by(|a, b| a[0].total_cmp(&b[0]));
        assert_eq!(found.len(), 3);
        assert!(found.iter().zip(openings).all(|(a, b)| near(*a, b)), "{found:?}");
    }
}

#[test]
fn a_shed_side_has_the_lowest_of_its_slopes_for_rake() {
    let l = named("E2_", "[layers]\nwall = ['sideview']");
    let pitches: Vec<f64> =
        l.walls().flat_map(|(_, w)| w.edges.iter()).filter_map(|e| e.pitch).collect();
    assert_eq!(pitches.len(), 1);
    let degrees = (pitches[0] / 12.0).atan().to_degrees();
    // (943.3, 3880.6)-(3718.3, 3507.6) is 7.66 degrees.
    assert!((degrees - 7.66).abs() < 0.05, "{degrees}");
}

#[test]
fn siding_hatches_of_an_apartment_house_are_its_walls() {
    // Eight hatches of one level family 4 in apart, as the folder's own page and ezdxf say.
    let l = named("P1_", "[drawing]\nunit = 'inch'");
    let walls: Vec<_> = l.walls().map(|(_, w)| w).collect();
    // Those at one level, parted by a board or an opening alone, are one wall; their area by shapely. What
    // corner posts hide of notches in the ends, 0.7 sq ft, counts as the wall's.
    let area: f64 = walls.iter().map(|w| w.net_area + w.bare_area()).sum();
    assert!((area - 296.99).abs() <= 0.003 * 296.99, "{area} sq ft");
    assert!(l.verify.rules.iter().all(|r| r.violations.is_empty()));
    assert!(walls.iter().all(|w| (w.drawn_exposure.unwrap() - 4.0).abs() < 0.01));
}
