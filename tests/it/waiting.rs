//! Offcuts that wait at the ends of walls, the order of walls, and saw lists.

use std::collections::{BTreeMap, BTreeSet};

use lapwright::job::{WaitingLimit, file as job_file};
use lapwright::layout::Layout;
use lapwright::model::item::SidingPiece;
use lapwright::model::seam::{Effort, Exclusion, SeamCourse, SeamElevation, SeamProblem, SeamRun};
use lapwright::model::waiting::{OffcutReach, Waiting};
use lapwright::pipeline::waiting_prices::waiting_prices;
use lapwright::seam::plan;
use lapwright::units::LengthStyle;
use lapwright::wording::offcuts;

use crate::seamcase::cases::{rules, waiting};
use crate::seamcase::check::check;
use crate::seamcase::made;
use crate::support::{broken, dxf, inches, laid, lay, lay_sets, rect};

/// Walls of so many runs that one piece of 70 in covers: two of them, with a saw cut of 1/8, go into a panel of
/// 150, a third does not.
fn walls(runs: &[usize], most: Option<usize>, reach: OffcutReach) -> SeamProblem {
    let run = |wall: usize, i: usize| SeamRun {
        id: format!("{wall}-{i}").into(),
        wall,
        x0: 0.0,
        x1: 70.5,
        fixed: vec![],
        barred: vec![],
        notched: vec![],
    };
    let course = |wall: usize, i: usize| SeamCourse {
        index: i32::try_from(i).unwrap(),
        runs: vec![run(wall, i)],
        ..Default::default()
    };
    let elevations = runs.iter().enumerate().map(|(wall, n)| SeamElevation {
        name: format!("e{wall}").into(),
        courses: (0..*n).map(|i| course(wall, i)).collect(),
        ..Default::default()
    });
    SeamProblem {
        rules: rules(150.0, 1.0, 24.0, Effort::Usual),
        elevations: elevations.collect(),
        waiting: Waiting { most, reach, orders: vec![(0..runs.len()).collect()] },
    }
}

#[test]
fn a_panel_is_opened_anew_where_its_offcut_may_not_wait() {
    // Three pieces on each of two walls: three panels where the third piece's other half waits, two a wall
    // where it may not.
    let house = OffcutReach::House;
    for (most, reach, panels, wait) in [
        (None, house, 3, 1),
        (Some(1), house, 3, 1),
        (Some(0), house, 4, 0),
        (None, OffcutReach::Wall, 4, 0),
        (Some(8), OffcutReach::NextWall, 3, 1),
    ] {
        let p = walls(&[3, 3], most, reach);
        let got = plan(&p, &mut |_| {});
        let found = check(&p, &got);
        assert_eq!(found.broken, Vec::<String>::new());
        assert_eq!((got.panels, found.waiting[0], found.waiting[1]), (panels, wait, 0), "{most:?}");
    }
    // One piece, a wall of two, one piece: the first and the last share a panel, two walls apart.
    for (reach, panels) in [(house, 2), (OffcutReach::NextWall, 3), (OffcutReach::Wall, 3)] {
        let p = walls(&[1, 2, 1], Some(8), reach);
        let got = plan(&p, &mut |_| {});
        assert_eq!(check(&p, &got).broken, Vec::<String>::new());
        // To the next wall alone the middle one takes a half of each: two panels as well.
        let panels = if reach == OffcutReach::NextWall { 2 } else { panels };
        assert_eq!(got.panels, panels, "{reach:?}");
    }
}

#[test]
fn the_order_is_taken_in_which_fewest_panels_are_cut() {
    // One piece of 70 on the first wall and on the last; between them a wall whose piece of 140 takes a panel by
    // itself. Offcuts go to the next wall alone: the two short pieces share a panel where their walls follow
    // one another, else each takes its own.
    let mut p = walls(&[1, 1, 1], Some(8), OffcutReach::NextWall);
    p.elevations[1].courses[0].runs[0].x1 = 140.5;
    assert_eq!(plan(&p, &mut |_| {}).panels, 3);
    p.waiting.orders = vec![vec![0, 1, 2], vec![1, 0, 2]];
    let got = plan(&p, &mut |_| {});
    assert_eq!((got.panels, got.order.clone()), (2, vec![1, 0, 2]));
    assert_eq!(check(&p, &got).broken, Vec::<String>::new());
}

#[test]
fn random_houses_replayed_keep_what_is_promised() {
    let (mut most_seen, mut shared) = (0, 0);
    for seed in 0..120 {
        let house = made::random(seed);
        let most = seed as usize % 5;
        let mut asked = waiting(Some(most), house.elevations.len());
        asked.reach = [OffcutReach::House, OffcutReach::NextWall][seed as usize / 5 % 2];
        let effort = if seed % 3 == 0 { Effort::Crew } else { Effort::Brief };
        let p = SeamProblem {
            rules: rules(150.0, 1.0, 24.0, effort),
            elevations: house.elevations,
            waiting: asked,
        };
        let got = plan(&p, &mut |_| {});
        let found = check(&p, &got);
        let promised = |b: &&String| b.contains("wait") || b.contains("walls on");
        assert_eq!(found.broken.iter().find(promised), None, "{seed}");
        let order: BTreeSet<usize> = got.order.iter().copied().collect();
        assert_eq!((order.len(), got.order.len()), (p.elevations.len(), p.elevations.len()));
        most_seen = most_seen.max(found.waiting.iter().copied().max().unwrap_or(0));
        shared += found.shared;
    }
    // The bound is used to the full, so that it is put to the test.
    assert_eq!(most_seen, 4);
    assert!(shared > 50, "{shared}");
}

/// Walks a layout's order of walls, opens panels and cuts them: lengths that wait after each wall.
fn replayed(l: &Layout) -> Vec<usize> {
    let turn = |wall: &str| l.order.iter().position(|w| w == wall).unwrap();
    let mut panels: BTreeMap<&str, Vec<(f64, usize)>> = BTreeMap::new();
    for (w, .., p) in l.pieces() {
        panels.entry(&p.panel).or_default().push((p.start, turn(&w.id)));
    }
    let mut out = vec![0; l.order.len()];
    for cuts in panels.values_mut() {
        cuts.sort_by(|a, b| a.0.total_cmp(&b.0));
        let opened = cuts.iter().map(|c| c.1).min().unwrap();
        for (end, n) in out.iter_mut().enumerate().skip(opened) {
            let mut before = false;
            for cut in cuts.iter() {
                *n += usize::from(cut.1 > end && !before);
                before = cut.1 > end;
            }
        }
    }
    out
}

#[test]
fn the_sample_house_keeps_eight_waiting_and_says_so() {
    let l = laid("curlew-cottage");
    let plan = &l.work.offcuts;
    assert_eq!((plan.most, plan.reach, l.order.len()), (Some(8), OffcutReach::House, 6));
    let told: Vec<usize> = plan.at_ends.iter().map(|w| w.waiting).collect();
    assert_eq!(told, replayed(&l));
    assert!(told.iter().all(|n| *n <= 8) && plan.most_waiting() > 4, "{told:?}");
    // With any number 85 panels of 201 were shared between walls and 59 offcuts waited.
    assert!(plan.between_walls < 45, "{}", plan.between_walls);
    assert!(l.panels.len() <= 203, "{}", l.panels.len());
    // Round the house from a corner of its back: the rear comes first or last, walls of a side together.
    let sides: Vec<&str> = l.order.iter().map(|w| w.split('-').next().unwrap()).collect();
    assert!(sides[0] == "rear" || sides[5] == "rear", "{sides:?}");
    let mut once = sides.clone();
    once.dedup();
    assert_eq!(once.len(), 4, "{sides:?}");
    // Panels are numbered as they are opened.
    let first = &l.work.walls[0].saw.opened;
    assert_eq!(first[0], "P1");
    let opened: usize = l.work.walls.iter().map(|w| w.saw.opened.len()).sum();
    assert_eq!(opened, l.panels.len());
    assert!(l.bound.excludes.contains(&Exclusion::OffcutsWaiting));
    let words = offcuts::waiting(plan, SidingPiece::Panel).unwrap();
    assert!(words.starts_with("At most 8 offcuts may wait at the end of a wall"), "{words}");
    assert_eq!(broken(&l), Vec::<String>::new());
}

#[test]
fn equal_cuts_stand_together_on_the_saw_list_longest_first() {
    // A wall 100 by 32: four courses of 8, each one piece of 100 less a gap of 1/4 at both ends, each from a
    // panel of its own.
    let wall = dxf(&[("A-WALL-OTLN", &rect(0.0, 0.0, 100.0, 32.0))]);
    let mut job = inches();
    job.courses.datum = Some(0.0);
    let l = lay(wall.as_bytes(), &job);
    let saw = &l.work.walls[0].saw;
    assert_eq!((saw.batches.len(), saw.opened.len(), saw.laid_aside.len()), (1, 4, 0));
    assert_eq!((saw.batches[0].length, saw.batches[0].pieces.len()), (99.5, 4));
    let words = offcuts::saw(saw, SidingPiece::Panel, LengthStyle::Feet);
    assert_eq!(words, ["Open 4 panels: P1 to P4.", "4 at 8'-3 1/2\", from P1 to P4."]);
    // The sample: every piece once, lengths falling, pieces of a batch alike to a sixteenth.
    let l = laid("curlew-cottage");
    let mut seen = BTreeSet::new();
    let pieces: BTreeMap<&str, f64> = l.pieces().map(|(.., p)| (&*p.mark, p.length)).collect();
    for w in &l.work.walls {
        let lengths: Vec<f64> = w.saw.batches.iter().map(|b| b.length).collect();
        assert!(lengths.windows(2).all(|p| p[0] >= p[1] - 1.0 / 16.0), "{lengths:?}");
        for b in &w.saw.batches {
            for p in &b.pieces {
                assert!(seen.insert(p.mark.clone()));
                assert!((pieces[&*p.mark] - b.length).abs() <= 1.0 / 16.0);
            }
        }
    }
    assert_eq!(seen.len(), pieces.len());
    // Far fewer settings than pieces.
    let batches: usize = l.work.walls.iter().map(|w| w.saw.batches.len()).sum();
    assert!(batches < pieces.len() * 9 / 10, "{batches} of {}", pieces.len());
}

#[test]
fn the_job_says_what_may_wait_and_in_which_order() {
    let of = |text: &str| job_file::parse(text, "job");
    let seams = |text: &str| of(&format!("[seams]\n{text}\n")).unwrap().seams;
    assert_eq!(seams("").waiting, WaitingLimit::at_most(8));
    assert_eq!(seams("waiting = 3").waiting.most(), Some(3));
    assert_eq!(seams("waiting = \"any\"").waiting, WaitingLimit::ANY);
    assert_eq!(seams("offcuts = \"next wall\"").offcuts, OffcutReach::NextWall);
    assert_eq!(seams("offcuts = \"wall\"").offcuts, OffcutReach::Wall);
    for wrong in ["waiting = -1", "waiting = \"some\"", "waiting = 2.5", "offcuts = \"street\""] {
        assert!(of(&format!("[seams]\n{wrong}\n")).is_err(), "{wrong}");
    }
    // Two walls apart on one sheet; the second is sided first.
    let two = dxf(&[
        ("A-WALL-OTLN", &rect(0.0, 0.0, 70.0, 24.0)),
        ("A-WALL-OTLN", &rect(400.0, 0.0, 470.0, 24.0)),
    ]);
    let mut job = inches();
    job.courses.datum = Some(0.0);
    let as_drawn = lay(two.as_bytes(), &job);
    let ids: Vec<String> = as_drawn.walls().map(|(_, w)| w.id.to_string()).collect();
    assert_eq!(ids.len(), 2);
    job.work.walls = vec![ids[1].to_uppercase()];
    let l = lay(two.as_bytes(), &job);
    assert_eq!((l.order[0].as_str(), l.order[1].as_str()), (&*ids[1], &*ids[0]));
    assert_eq!(l.work.walls[0].wall.as_str(), ids[1]);
    // Three courses of one piece each, 69 1/2 long: two a panel. What fewer waiting cost, as a table.
    let table = waiting_prices(&job, |job| Ok(lay_sets(two.as_bytes(), job))).unwrap();
    let of = |most: Option<usize>| table.iter().find(|l| l.waiting == most).unwrap();
    assert_eq!((of(Some(0)).panels, of(Some(0)).shared, of(Some(0)).most), (4, 0, 0));
    assert_eq!((of(None).panels, of(None).shared, of(None).most), (3, 1, 1));
    assert!(of(Some(8)).in_force && !of(None).in_force);
    let words = offcuts::prices(&table);
    assert!(words.contains("  8 (in force)") && words.lines().all(|l| l.len() <= 80), "{words}");
}
