//! Corners and starts taped out of plumb and level: a corner that leans as built corners do bears its post, and siding
//! starts on one level line. What is taped of a house with leaning corners is laid out as that house is, whose walls the
//! job gives outright.

use std::collections::BTreeMap;

use lapwright::finding::taped::TapedFinding;
use lapwright::finding::{FindingKind, Findings};
use lapwright::job::Job;
use lapwright::layout::Layout;
use lapwright::layout::backdrop::Backdrops;
use lapwright::layout::wall::LaidWall;
use lapwright::model::house::EdgeKind;
use lapwright::model::receiver::Receiver;
use lapwright::model::trim::TrimKind;

use crate::measures::assert_alike;
use crate::measures_ways::{job, laid, taped};
use crate::smallcase::{APART, Side, drawing, house, rect};
use crate::support::broken;

fn codes(findings: &Findings) -> Vec<&'static str> {
    findings.all().iter().map(|f| f.code().word()).collect()
}

fn wall<'a>(layout: &'a Layout, id: &str) -> &'a LaidWall {
    layout.walls().find(|(_, w)| w.id == *id).unwrap().1
}

/// How far the tops of the walls of a house stand right of their feet, left side and right side, wall by wall.
const LEANS: [(f64, f64); 4] = [(0.25, -0.5), (-0.75, 0.25), (0.5, 0.75), (0.0, -0.25)];

/// The job that gives the walls of a house outright, each with its corners leaning.
fn leaning(sides: &[Side]) -> Job {
    let (mut said, mut x) = (String::new(), 0.0);
    for (s, (left, right)) in sides.iter().zip(LEANS) {
        let ring = &s.rings[0].1;
        let places = ring.iter().map(|(a, b)| {
            let top = *b > 90.0 && (*a == 0.0 || *a == s.width);
            let lean = if !top {
                0.0
            } else if *a == 0.0 {
                left
            } else {
                right
            };
            format!("[{}, {b}]", a + lean + x)
        });
        said += &format!("[[wall]]\noutline = [{}]\n", places.collect::<Vec<_>>().join(", "));
        x += s.width + APART;
    }
    job(&said)
}

#[test]
fn leaning_corners_bear_their_posts_and_are_laid_out_as_the_house_that_leans() {
    for seed in 1..=3 {
        let sides = house(seed);
        let (text, of_truth) = (drawing(&sides), leaning(&sides));
        let (truth, _) = laid(&text, &of_truth);
        assert_eq!(broken(&truth), Vec::<String>::new(), "house {seed}");
        let mut with_tape = job("");
        with_tape.taped = taped(&text, &of_truth);
        let (moved, findings) = laid(&text, &with_tape);
        assert_alike(&moved, &truth, &format!("house {seed}"));
        assert_eq!(broken(&moved), Vec::<String>::new(), "house {seed}");
        let told = codes(&findings);
        assert!(told.contains(&"taped-leans") && !told.contains(&"taped-slopes"), "{told:?}");
        // As many posts as the house as drawn has, each along its corner: 3/4 in on 8 to 9 ft.
        let posts = |l: &Layout| -> Vec<(f64, f64)> {
            let posts = l.trims.iter().filter(|t| t.kind == TrimKind::OutsidePost);
            posts.map(|t| (t.from[0], t.to[0] - t.from[0])).collect()
        };
        let plain = laid(&text, &job("")).0;
        assert_eq!(posts(&plain).len(), posts(&moved).len(), "house {seed}");
        assert!(posts(&plain).iter().all(|p| p.1 == 0.0));
        let most = posts(&moved).iter().map(|p| p.1.abs()).fold(0.0, f64::max);
        assert!((0.45..=0.8).contains(&most), "{most}");
        // Panels are cut square at them, each course as long as the wall is there: no rake is cut on the right side.
        for c in &wall(&moved, "right-1").courses {
            for r in &c.runs {
                let ends = r.pieces.iter().flat_map(|p| &p.ends);
                assert!(ends.clone().all(|e| e.angle == 90.0), "{ends:?}");
            }
        }
        let wide = |i: usize| {
            let run = &wall(&moved, "right-1").courses[i].runs[0];
            run.x1 - run.x0
        };
        // 1 in more at the top than at the foot, over 12 courses or so.
        let n = wall(&moved, "right-1").courses.len();
        assert!((wide(n - 1) - wide(0) - 1.0).abs() < 0.2, "{} {}", wide(0), wide(n - 1));
    }
}

#[test]
fn with_a_third_of_the_blanks_empty_leaning_houses_are_laid_out() {
    let sides = house(2);
    let (text, of_truth) = (drawing(&sides), leaning(&sides));
    let all = taped(&text, &of_truth);
    for left in 0..3 {
        let mut some = job("");
        let filled = all.iter().enumerate().filter(|(k, _)| k % 3 != left);
        some.taped = filled.map(|(_, (k, v))| (k.clone(), *v)).collect();
        let (layout, findings) = laid(&text, &some);
        assert_eq!(broken(&layout), Vec::<String>::new(), "{left}");
        let told = findings.all().iter().find_map(|f| match &f.kind {
            FindingKind::Taped(TapedFinding::Taken { taken, as_drawn, .. }) => {
                Some((*taken, *as_drawn))
            }
            _ => None,
        });
        assert_eq!(told, Some((some.taped.len(), all.len() - some.taped.len())), "{left}");
    }
}

/// A wall of 20 ft by 8 ft, alone.
fn alone() -> String {
    drawing(&[Side {
        title: "FRONT ELEVATION".to_owned(),
        width: 240.0,
        rings: vec![("A-WALL-OTLN", rect(0.0, 0.0, 240.0, 96.0))],
    }])
}

fn with(said: &[(&str, f64)]) -> (Layout, Findings) {
    let mut job = job("");
    job.taped = said.iter().map(|(k, v)| (format!("front-1/{k}"), *v)).collect();
    laid(&alone(), &job)
}

#[test]
fn a_corner_bears_its_post_up_to_1_in_on_8_ft() {
    for (lean, stands) in [(0.5, true), (-1.0, true), (1.25, false), (-2.0, false)] {
        let (layout, findings) = with(&[("left-lean", lean)]);
        let kinds: Vec<EdgeKind> = wall(&layout, "front-1").edges.iter().map(|e| e.kind).collect();
        let corners = kinds.iter().filter(|k| **k == EdgeKind::OutsideCorner).count();
        assert_eq!(corners, if stands { 2 } else { 1 }, "{lean}: {kinds:?}");
        let told = codes(&findings);
        assert_eq!(told.contains(&"taped-leans"), stands, "{lean}: {told:?}");
        assert_eq!(told.contains(&"taped-slopes"), !stands, "{lean}: {told:?}");
        assert_eq!(broken(&layout), Vec::<String>::new(), "{lean}");
    }
}

#[test]
fn siding_starts_level_from_the_lower_corner() {
    // The right corner starts 5/8 in lower; the soffit is level, 96 in over the floor line.
    let said = [("right-foot", -0.625), ("left-height", 96.0), ("right-height", 96.625)];
    let (layout, findings) = with(&said);
    assert_eq!(broken(&layout), Vec::<String>::new());
    let front = wall(&layout, "front-1");
    let ys = |f: fn(f64, f64) -> f64, from: f64| front.outline.iter().map(|p| p[1]).fold(from, f);
    assert_eq!((ys(f64::min, f64::MAX), ys(f64::max, 0.0)), (-0.625, 96.0));
    let base: Vec<Receiver> =
        front.edges.iter().filter(|e| e.kind == EdgeKind::Base).map(|e| e.receiver).collect();
    assert_eq!(base, [Receiver::Starter]);
    assert!(!front.edges.iter().any(|e| e.kind == EdgeKind::LowerRoof));
    assert!(codes(&findings).contains(&"taped-start"));
    // With both heights blank the soffit is level still; one that is taped says where.
    for (more, top) in [(None, 96.0 - 0.3125), (Some(("left-height", 95.0)), 95.0)] {
        let mut said = vec![("right-foot", -0.625)];
        said.extend(more);
        let (layout, findings) = with(&said);
        let ys = wall(&layout, "front-1").outline.iter().map(|p| p[1]);
        assert!((ys.fold(0.0, f64::max) - top).abs() < 0.001, "{more:?}");
        assert!(!codes(&findings).contains(&"taped-slopes"), "{more:?}");
        assert_eq!(broken(&layout), Vec::<String>::new(), "{more:?}");
    }
    // More than an inch is built so.
    let (_, findings) = with(&[("right-foot", -1.5)]);
    let told = codes(&findings);
    assert!(told.contains(&"taped-slopes") && !told.contains(&"taped-start"), "{told:?}");
}

/// The wall alone, its top taped within the 12th course of 8 in, and `off` higher at the right corner, with more in the job.
fn with_top(off: f64, more: &str) -> (Layout, Findings) {
    let mut job = job(more);
    job.taped = BTreeMap::from([
        ("front-1/left-height".to_owned(), 94.0),
        ("front-1/right-height".to_owned(), 94.0 + off),
    ]);
    laid(&alone(), &job)
}

fn count(layout: &Layout, kind: TrimKind) -> usize {
    layout.trims.iter().filter(|t| t.kind == kind).count()
}

#[test]
fn the_top_course_is_cut_to_a_top_taped_out_of_level() {
    let (layout, findings) = with_top(0.625, "");
    assert_eq!(broken(&layout), Vec::<String>::new());
    let told = codes(&findings);
    assert!(told.contains(&"taped-top") && !told.contains(&"taped-slopes"), "{told:?}");
    let front = wall(&layout, "front-1");
    let kinds: Vec<EdgeKind> = front.edges.iter().map(|e| e.kind).collect();
    assert!(kinds.contains(&EdgeKind::Eave) && !kinds.contains(&EdgeKind::Rake), "{kinds:?}");
    // What is ordered is what a level top takes.
    let plain = laid(&alone(), &job("")).0;
    for kind in [TrimKind::FinishTrim, TrimKind::RakeChannel, TrimKind::OutsidePost] {
        assert_eq!(count(&layout, kind), count(&plain, kind), "{kind:?}");
    }
    assert_eq!(count(&layout, TrimKind::RakeChannel), 0);
    // Each piece of the top course rises by 5/8 in on 240 in from its left end to its right one, and is held in the trim.
    let top = front.courses.last().unwrap();
    let pieces: Vec<_> = top.runs.iter().flat_map(|r| &r.pieces).collect();
    assert!(pieces.len() > 1);
    for p in &pieces {
        let upper = p.outline.iter().filter(|q| q[1] > top.bottom + 1.0);
        let ends = |x: f64| {
            let at = upper.clone().filter(|q| (q[0] - x).abs() < 0.1);
            at.map(|q| q[1]).fold(0.0, f64::max)
        };
        let xs = || p.outline.iter().map(|q| q[0]);
        let (left, right) = (xs().fold(f64::MAX, f64::min), xs().fold(0.0, f64::max));
        let by_hand = 0.625 * (right - left) / 240.0;
        assert!((ends(right) - ends(left) - by_hand).abs() < 0.02, "{by_hand} {:?}", p.outline);
        assert!(p.edge_work.lugs > 0, "{:?}", p.edge_work);
    }
}

#[test]
fn cutting_sheets_give_both_heights_of_a_tapered_rip() {
    let (layout, _) = with_top(0.75, "");
    let sheets = lapwright::annotate::sheets(&layout, &Backdrops::default());
    let words = |s: &lapwright::model::sheet::Sheet| {
        let all: Vec<String> = crate::sheets::texts(s).map(|t| t.content.clone()).collect();
        all.join(" ").replace('\u{a0}', " ")
    };
    let told: String = sheets.iter().map(words).collect::<Vec<_>>().join(" ");
    // 6 in up in its course at the left corner of the wall, 3/4 in more at the right one, less 1/4 in of room; siding
    // ends 2 1/4 in inside the corners, where that is 1/128 in.
    assert!(told.contains("rip on a taper: 5 3/4\" over the butt edge at the left end"), "{told}");
    assert!(told.contains("6 1/2\" at the right end"), "{told}");
    assert!(!told.contains("top edge a point") && !told.contains("notch:"), "{told}");
}

#[test]
fn a_top_is_one_up_to_1_in_on_8_ft_out_of_level() {
    // 2 1/2 in on 20 ft.
    for (off, is_top) in [(2.4, true), (-2.4, true), (2.75, false), (-2.75, false)] {
        let (layout, findings) = with_top(off, "");
        let told = codes(&findings);
        assert_eq!(told.contains(&"taped-top"), is_top, "{off}: {told:?}");
        assert_eq!(told.contains(&"taped-slopes"), !is_top, "{off}: {told:?}");
        assert_eq!(broken(&layout), Vec::<String>::new(), "{off}");
    }
    // A quarter inch is drawing and taping noise.
    assert!(!codes(&with_top(0.2, "").1).contains(&"taped-top"));
}

#[test]
fn every_finish_of_the_top_follows_one_out_of_level() {
    let finishes =
        ["frieze = 7.25", "top = \"two-piece\"", "top = \"top-panel\"", "top = \"crown\""];
    for more in finishes {
        for off in [0.5, -1.25] {
            let (layout, _) = with_top(off, &format!("[trim]\n{more}\n"));
            assert_eq!(broken(&layout), Vec::<String>::new(), "{more} {off}");
            assert_eq!(count(&layout, TrimKind::RakeChannel), 0, "{more} {off}");
            // What runs along the top is as far out of level as it is.
            let along = [TrimKind::Frieze, TrimKind::TopBase, TrimKind::TopPanel];
            let tops = layout.trims.iter().filter(|t| along.contains(&t.kind));
            let rise: f64 = tops.map(|t| (t.to[1] - t.from[1]).abs()).sum();
            assert!((rise - off.abs()).abs() < 0.1, "{more} {off}: {rise}");
        }
    }
}

#[test]
fn a_bar_between_a_door_and_the_window_over_it_ends_with_the_window() {
    let sides = [Side {
        title: "FRONT ELEVATION".to_owned(),
        width: 240.0,
        rings: vec![
            ("A-WALL-OTLN", rect(0.0, 0.0, 240.0, 140.0)),
            ("A-DOOR", rect(60.0, 0.0, 96.0, 84.0)),
            ("A-WALL-BASE", rect(60.0, 84.0, 96.0, 84.75)),
            ("A-GLAZ", rect(60.0, 84.75, 96.0, 120.0)),
        ],
    }];
    let mut job = job("");
    let text = drawing(&sides);
    assert_eq!(broken(&laid(&text, &job).0), Vec::<String>::new());
    job.taped.insert("front-W1/width".to_owned(), 36.5);
    let (layout, _) = laid(&text, &job);
    assert_eq!(broken(&layout), Vec::<String>::new());
    // No part of the sill is left beside the bar.
    let front = wall(&layout, "front-1");
    assert!(!front.edges.iter().any(|e| e.kind == EdgeKind::Sill), "{:?}", front.edges);
}

#[test]
fn sheets_say_how_far_posts_lean() {
    let (layout, _) = with(&[("left-lean", 1.0), ("right-lean", -0.75)]);
    let sheets = lapwright::annotate::sheets(&layout, &Backdrops::default());
    let told = |s: &lapwright::model::sheet::Sheet| {
        let words: Vec<&str> = crate::sheets::texts(s).map(|t| t.content.as_str()).collect();
        let all = words.join(" ");
        all.contains("left corner 1\" to the right, right corner 3/4\" to the left")
    };
    assert!(sheets.iter().filter(|s| told(s)).count() >= 1);
    let (plain, _) = with(&[("left-lean", 0.0)]);
    let says = |s: &lapwright::model::sheet::Sheet| {
        crate::sheets::texts(s).any(|t| t.content.contains("lean as taped"))
    };
    assert!(!lapwright::annotate::sheets(&plain, &Backdrops::default()).iter().any(says));
}
