//! Drawing noise changes nothing: drawings turned by a little, or with every corner a little off, are
//! laid out and ordered as the clean ones are.

use std::f64::consts::TAU;

use lapwright::finding::lines::LineFinding;
use lapwright::finding::{FindingKind, Findings, Severity};
use lapwright::geom::vocabulary::{Affine, Point};
use lapwright::job::Job;
use lapwright::layout::Layout;
use lapwright::model::seam::Effort;

use crate::drafting_noise::{Noisy, differ, laid};
use crate::random_sheets::{Dice, house};
use crate::support::{dxf, inches, job, rect, root};

/// Every order line within one piece of the clean one, the same walls, openings, corners and posts.
fn assert_same(name: &str, clean: &Layout, noisy: &Layout) {
    let differ = differ(clean, noisy);
    assert!(differ.is_empty(), "{name}: {}", differ.join("; "));
}

/// How many sides were squared, how far a corner was moved at most, and the tilt undone.
fn told(findings: &Findings) -> Option<(usize, f64, Option<f64>)> {
    let mut all = findings.all().iter().filter_map(|f| match &f.kind {
        FindingKind::Lines(LineFinding::LinesSquared { sides, most, tilt, .. }) => {
            Some((*sides, *most, *tilt))
        }
        _ => None,
    });
    let first = all.next();
    assert!(all.next().is_none(), "said once");
    first
}

fn sample() -> (String, Job) {
    let path = root().join("sample-drawings/curlew-cottage.dxf");
    let mut job = job(&path);
    job.seams.effort = Effort::Crew;
    (std::fs::read_to_string(path).unwrap(), job)
}

#[test]
fn the_sample_house_tilted_is_ordered_as_the_clean_one() {
    let (source, job) = sample();
    let (clean, findings) = laid(&source, &job);
    assert_eq!(told(&findings), None);
    for degrees in [0.01, -0.05, 0.1] {
        let (tilted, findings) = laid(&Noisy::tilted(degrees).drawing(&source), &job);
        assert_same(&format!("tilted by {degrees}"), &clean, &tilted);
        let tilt = told(&findings).unwrap().2.unwrap();
        assert!((tilt - degrees).abs() < 1e-6, "{tilt}");
        // Over the source the layout lies tilted as it does.
        let (front, mate) = (&clean.elevations[0], &tilted.elevations[0]);
        let at = |e: &lapwright::layout::wall::LaidElevation| {
            Affine::new(e.to_source) * Point::new(100.0, 50.0)
        };
        let over = Affine::rotate(degrees.to_radians()) * at(front);
        assert!(over.distance(at(mate)) < 0.04, "{over:?} {:?}", at(mate));
    }
}

#[test]
fn the_sample_house_jittered_is_ordered_as_the_clean_one() {
    let (source, job) = sample();
    let (clean, _) = laid(&source, &job);
    for seed in 1..4 {
        for by in [0.01, 0.03] {
            let (noisy, findings) = laid(&Noisy::jittered(by, seed).drawing(&source), &job);
            assert_same(&format!("jittered by {by}, seed {seed}"), &clean, &noisy);
            let (sides, most, _) = told(&findings).unwrap();
            // No corner is moved by more than noise put it off, beside what a tape shows.
            assert!(sides > 20 && most < 2.0 * by + 1.0 / 64.0, "{sides} {most}");
        }
    }
}

#[test]
fn random_houses_with_noise_are_ordered_as_clean_ones() {
    for seed in 0..8 {
        let (rings, mut job) = house(seed);
        job.seams.effort = Effort::Crew;
        let rings: Vec<(&str, &[(f64, f64)])> =
            rings.iter().map(|(l, p)| (*l, p.as_slice())).collect();
        let source = dxf(&rings);
        let (clean, _) = laid(&source, &job);
        for mut noisy in [Noisy::tilted(0.07), Noisy::jittered(0.03, seed + 1)] {
            let name = format!("house {seed}, tilt {}, jitter {}", noisy.tilt, noisy.jitter);
            let (other, _) = laid(&noisy.drawing(&source), &job);
            assert_same(&name, &clean, &other);
        }
    }
}

/// A wall 40 ft by 8 ft, its corners as given.
fn wall(corners: [(f64, f64); 4], more: &[(&str, &[(f64, f64)])]) -> (Layout, Findings) {
    let all: Vec<(&str, &[(f64, f64)])> =
        [("A-WALL-OTLN", &corners[..])].into_iter().chain(more.iter().copied()).collect();
    let mut job = inches();
    job.seams.effort = Effort::Crew;
    laid(&dxf(&all), &job)
}

#[test]
fn one_leaning_side_is_squared_with_what_stands_on_it() {
    // The foot leans by 0.2 in over 40 ft, and a door stands on it three quarters along.
    let corners = [(0.0, 0.0), (480.0, 0.2), (480.0, 96.0), (0.0, 96.0)];
    let door = [(360.0, 0.15), (396.0, 0.15), (396.0, 80.0), (360.0, 80.0)];
    let (layout, findings) = wall(corners, &[("A-DOOR", &door)]);
    let (sides, most, tilt) = told(&findings).unwrap();
    assert_eq!((sides, tilt), (1, None));
    assert!((most - 0.2).abs() < 1e-9, "{most}");
    let laid = &layout.elevations[0].walls[0];
    assert!(laid.outline.iter().all(|p| p[1] == 0.0 || p[1] == 96.0), "{:?}", laid.outline);
    let foot = laid.openings[0].outline.iter().map(|p| p[1]).fold(f64::MAX, f64::min);
    assert_eq!(foot, 0.0);
}

#[test]
fn slopes_and_steps_that_are_built_stay() {
    let told_of =
        |corners: [(f64, f64); 4], more: &[(&str, &[(f64, f64)])]| told(&wall(corners, more).1);
    // A roof of 1 in 200 falls 2.4 in over 40 ft.
    assert_eq!(told_of([(0.0, 0.0), (480.0, 0.0), (480.0, 93.6), (0.0, 96.0)], &[]), None);
    // Under 0.1 degree, but over 1/4 in: 1 in 1200.
    assert_eq!(told_of([(0.0, 0.0), (480.0, 0.0), (480.0, 95.6), (0.0, 96.0)], &[]), None);
    // A sill that falls 1/8 in over 2 ft is a sloped one: 0.3 degree.
    let sill = [(100.0, 30.0), (124.0, 30.125), (124.0, 60.0), (100.0, 60.0)];
    let square = rect(0.0, 0.0, 480.0, 96.0);
    assert_eq!(told_of(square, &[("A-GLAZ", &sill)]), None);
    // Steps of a foot by 1/8 in.
    let stepped =
        [(0.0, 0.0), (240.0, 0.0), (240.0, 0.125), (480.0, 0.125), (480.0, 96.0), (0.0, 96.0)];
    let layout = laid(&dxf(&[("A-WALL-OTLN", &stepped)]), &inches()).0;
    assert_eq!(layout.elevations[0].walls[0].outline.len(), 6);
}

#[test]
fn a_rough_wall_keeps_a_step_of_a_quarter_inch_and_loses_one_of_noise() {
    let mut dice = Dice(77);
    let mut off = || (dice.roll(1 << 20) as f64 / f64::from(1 << 19) - 1.0) * 0.02;
    let mut rough = |p: &[(f64, f64)]| -> Vec<(f64, f64)> {
        p.iter().map(|(x, y)| (x + off(), y + off())).collect()
    };
    let steps =
        |by: f64| [(0.0, 0.0), (240.0, 0.0), (240.0, by), (480.0, by), (480.0, 96.0), (0.0, 96.0)];
    for (by, corners) in [(0.25, 6), (0.03, 4)] {
        let ring = rough(&steps(by));
        let (layout, findings) = laid(&dxf(&[("A-WALL-OTLN", &ring)]), &inches());
        assert!(told(&findings).is_some());
        let outline = &layout.elevations[0].walls[0].outline;
        let count = outline
            .iter()
            .zip(outline.iter().cycle().skip(1))
            .filter(|(a, b)| (a[0] - b[0]).hypot(a[1] - b[1]) > 1.0 / 64.0);
        let heights: std::collections::BTreeSet<u64> =
            outline.iter().map(|p| (p[1] * 1024.0).round() as u64).collect();
        assert_eq!(heights.len(), corners / 2, "{by}: {outline:?}");
        assert!(count.count() >= corners, "{by}: {outline:?}");
    }
}

#[test]
fn a_round_window_of_a_rough_drawing_stays_round() {
    let circle: Vec<(f64, f64)> = (0..32)
        .map(|i| (TAU * f64::from(i) / 32.0).sin_cos())
        .map(|(s, c)| (200.0 + 18.0 * c, 50.0 + 18.0 * s))
        .collect();
    let corners = [(0.0, 0.02), (480.02, -0.01), (479.98, 96.02), (0.02, 95.98)];
    let (layout, _) = wall(corners, &[("A-GLAZ", &circle)]);
    let window = &layout.elevations[0].walls[0].openings[0];
    for p in &window.outline {
        let r = (p[0] - 200.0).hypot(p[1] - 50.0);
        assert!((r - 18.0).abs() < 0.04, "{p:?}");
    }
}

#[test]
fn a_view_turned_by_some_degrees_is_set_upright_and_a_warning() {
    let gable = [(0.0, 0.0), (240.0, 0.0), (240.0, 96.0), (120.0, 170.0), (0.0, 96.0)];
    let window = rect(90.0, 36.0, 126.0, 84.0);
    let source = dxf(&[("A-WALL-OTLN", &gable), ("A-GLAZ", &window)]);
    let mut job = inches();
    job.seams.effort = Effort::Crew;
    let (clean, _) = laid(&source, &job);
    for degrees in [3.0, -7.5, 25.0] {
        let (turned, findings) = laid(&Noisy::tilted(degrees).drawing(&source), &job);
        assert_same(&format!("turned by {degrees}"), &clean, &turned);
        let tilt = told(&findings).unwrap().2.unwrap();
        assert!((tilt - degrees).abs() < 0.01, "{tilt}");
        let warned = findings.all().iter().find(|f| f.code().word() == "lines-squared").unwrap();
        assert_eq!(warned.severity(), Severity::Warning);
    }
    // A gable by itself stands on its base, however steep; a view of one leaning side has others.
    let alone = [(0.0, 0.0), (240.0, 0.0), (120.0, 74.0)];
    let leaning = [(0.0, 0.0), (240.0, 0.0), (250.0, 96.0), (10.0, 96.0)];
    for ring in [&alone[..], &leaning[..]] {
        let (_, findings) = laid(&dxf(&[("A-WALL-OTLN", ring)]), &job);
        assert_eq!(told(&findings), None, "{ring:?}");
    }
}
