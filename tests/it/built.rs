//! `[[built]]`: what hangs is kept as it hangs, the rest is laid anew from what lies on the site.

use std::collections::{BTreeMap, BTreeSet};

use lapwright::finding::files::{FileFinding, KeepFault, TicksFault};
use lapwright::finding::{FindingKind, Findings, Refusal};
use lapwright::job::built::Built;
use lapwright::job::{Job, file as job_file};
use lapwright::layout::Layout;
use lapwright::layout::at_hand::{AtHand, FactoryEnd};
use lapwright::layout::rule::Rule;
use lapwright::layout::set::LaidSets;
use lapwright::pipeline::{Earlier, compared, layout_keeping};
use lapwright::read::ticks_json;
use lapwright::verify;

use crate::revisions::{Dice, Drawn, house};
use crate::support::{bare_corners, broken, broken_rules, dxf, inches, lay_sets, rect};

fn job() -> Job {
    let mut job = inches();
    job.seams.effort = lapwright::model::seam::Effort::Crew;
    job
}

fn hangs(wall: &str, courses: &[i32]) -> Built {
    Built { wall: wall.to_owned(), courses: courses.to_vec(), ..Built::default() }
}

fn go_on(
    d: &Drawn,
    built: Vec<Built>,
    old: &LaidSets,
    stock: Option<Vec<AtHand>>,
) -> Result<Layout, Refusal> {
    let job = Job { built, ..job() };
    let earlier = Earlier { sets: old, ticked: Vec::new(), stock };
    let (bytes, found) = (d.dxf(false), &mut Findings::default());
    layout_keeping(&bytes, "b.dxf", (&job, Some(&earlier)), found, &mut |_| {})
        .map(|s| s.house.layout)
}

type Cut = (String, [i64; 4], i32);

/// Pieces of a layout by their marks: panel, place on it, place on the wall, course.
fn pieces(l: &Layout) -> BTreeMap<String, Cut> {
    let n = |v: f64| (v * 1024.0).round() as i64;
    let all = l.pieces();
    all.map(|(_, c, _, p)| {
        (p.mark.to_string(), (p.panel.to_string(), [p.start, p.end, p.x0, p.x1].map(n), c.index))
    })
    .collect()
}

fn of(length: f64, count: usize, end: FactoryEnd) -> AtHand {
    AtHand { length, count, end }
}

#[test]
fn what_hangs_stays_and_the_rest_comes_from_the_site() {
    for seed in 0..8 {
        let d = house(&mut Dice(seed));
        let old = lay_sets(&d.dxf(false), &job());
        let was = pieces(&old.house.layout);
        // The front hangs up to its fifth course, the right wall whole; the rear's height has changed since.
        let front = old.house.layout.walls().find(|(_, w)| *w.id == *"front-1").unwrap().1;
        let first = front.courses[0].index + 1;
        let mut new = d.clone();
        new.faces[2].wall.iter_mut().skip(2).for_each(|p| p.1 += 9.0);
        let built = vec![hangs("front-1", &[first, first + 4]), hangs("right-1", &[])];
        let stock = vec![
            of(150.0, 31, FactoryEnd::Both),
            of(70.0, 3, FactoryEnd::Right),
            of(55.0, 2, FactoryEnd::Left),
            of(40.0, 2, FactoryEnd::None),
        ];
        let laid = go_on(&d, built.clone(), &old, Some(stock.clone())).unwrap();
        let anew = go_on(&new, built, &old, Some(stock.clone())).unwrap();
        for l in [&laid, &anew] {
            assert_eq!(broken(l), Vec::<String>::new(), "seed {seed}");
            let is = pieces(l);
            let hung = old.house.layout.pieces().filter(|(w, c, ..)| {
                *w.id == *"right-1"
                    || (*w.id == *"front-1" && (first..=first + 4).contains(&(c.index + 1)))
            });
            let hung: BTreeSet<String> = hung.map(|(.., p)| p.mark.to_string()).collect();
            for mark in &hung {
                assert_eq!(is[mark], was[mark], "seed {seed} {mark}");
            }
            let kept = l.kept.as_ref().unwrap();
            let so_far = kept.built.as_ref().unwrap();
            // Figures counted from the pieces.
            assert_eq!(so_far.hung, hung.len(), "seed {seed}");
            let panels: BTreeSet<&str> = hung.iter().map(|m| was[m].0.as_str()).collect();
            assert_eq!(so_far.hung_panels, panels.len());
            let fresh =
                l.panels.iter().filter(|p| p.at_hand.is_none() && !panels.contains(p.id.as_str()));
            let more = fresh.count();
            assert_eq!(
                (so_far.more, so_far.on_site, so_far.order),
                (more, 31, more.saturating_sub(31))
            );
            assert!(so_far.at_least <= more && so_far.at_least > 0, "seed {seed}: {so_far:?}");
            // No new piece is cut from a panel of what hangs: what that has left is not on the list.
            let others = is.iter().filter(|(m, _)| !hung.contains(*m));
            assert!(
                others.clone().all(|(_, (panel, ..))| !panels.contains(panel.as_str())),
                "seed {seed}"
            );
            assert!(so_far.offcuts_used <= 7, "seed {seed}");
        }
    }
}

/// A wall 200 in high, with vinyl of its own from 104 in up; both sets call it the same.
fn of_two_sets() -> (Vec<u8>, Job, LaidSets) {
    let zone = "[drawing]\nunit = \"inch\"\n[seams]\neffort = \"crew\"\n[[zone]]\nname = \"Upper\"\n\
        [[zone.region]]\nbottom = 104\n[zone.product]\nkind = \"vinyl\"\n";
    let job = bare_corners(job_file::parse(zone, "job").unwrap());
    let drawing = dxf(&[("A-WALL-OTLN", &rect(0.0, 0.0, 360.0, 200.0))]).into_bytes();
    let old = lay_sets(&drawing, &job);
    (drawing, job, old)
}

#[test]
fn a_wall_with_siding_of_two_sets_hangs_whole_in_both() {
    let (drawing, job, old) = of_two_sets();
    let wall = old.house.layout.walls().next().unwrap().1.id.to_string();
    assert_eq!(old.zones[0].layout.walls().next().unwrap().1.id, *wall);
    let lay = |built: Built| {
        let job = Job { built: vec![built], ..job.clone() };
        let earlier = Earlier { sets: &old, ticked: Vec::new(), stock: None };
        let told = &mut Findings::default();
        layout_keeping(&drawing, "b.dxf", (&job, Some(&earlier)), told, &mut |_| {})
    };
    let sets = lay(hangs(&wall, &[])).unwrap();
    for (was, is) in old.iter().zip(sets.iter()) {
        let hung = &is.layout.kept.as_ref().unwrap().pieces;
        assert_eq!(hung.len(), was.layout.pieces().count());
        assert_eq!(pieces(&is.layout), pieces(&was.layout));
        assert_eq!(broken(&is.layout), Vec::<String>::new());
    }
    // Each set numbers its courses from its own foot: whose are meant is not said.
    match lay(hangs(&wall, &[1, 2])).unwrap_err().0.kind {
        FindingKind::Files(FileFinding::LayoutNotKept { fault }) => {
            assert_eq!(fault, KeepFault::WallOfSeveral { wall });
        }
        other => panic!("{other:?}"),
    }
    // Marks say whose piece they are of.
    let mark = old.zones[0].layout.pieces().next().unwrap().3.mark.to_string();
    let sets = lay(Built { pieces: vec![mark], ..Built::default() }).unwrap();
    let hung = sets.iter().map(|s| s.layout.kept.as_ref().unwrap().pieces.len());
    assert_eq!(hung.collect::<Vec<_>>(), [0, 1]);
}

#[test]
fn a_comparison_tells_that_the_check_failed_in_a_zone() {
    let (.., old) = of_two_sets();
    let mut new = old.clone();
    assert_eq!(compared(&old, &new, None).check_failed, [false, false]);
    // A panel of the zone that is in its proof and not on its wall.
    let zone = &mut new.zones[0].layout;
    zone.panels.pop();
    zone.verify = verify::check(&*zone);
    assert!(!zone.verify.passes() && new.house.layout.verify.passes());
    assert_eq!(compared(&old, &new, None).check_failed, [false, true]);
}

#[test]
fn an_offcut_of_the_site_stays_one_when_its_layout_is_held_again() {
    let d = house(&mut Dice(3));
    let first = lay_sets(&d.dxf(false), &job());
    // A little of the right wall hangs; the rest takes offcuts of 120 in where panels are 150 in.
    let stock = vec![of(120.0, 12, FactoryEnd::Right), of(120.0, 12, FactoryEnd::Left)];
    let built = Job { built: vec![hangs("right-1", &[])], ..job() };
    let lay = |d: &Drawn, job: &Job, old: &LaidSets, stock: Option<Vec<AtHand>>| {
        let earlier = Earlier { sets: old, ticked: Vec::new(), stock };
        let told = &mut Findings::default();
        layout_keeping(&d.dxf(false), "b.dxf", (job, Some(&earlier)), told, &mut |_| {}).unwrap()
    };
    let second = lay(&d, &built, &first, Some(stock));
    let offcuts = |l: &Layout| -> BTreeMap<String, [f64; 2]> {
        l.panels.iter().filter_map(|p| Some((p.id.to_string(), p.at_hand?))).collect()
    };
    let was = offcuts(&second.house.layout);
    assert!(!was.is_empty());
    // The front changes: what the other walls have is held, and what an offcut has not is not cut from it.
    let mut new = d.clone();
    let b = &mut new.faces[0].windows[1];
    *b = [b[0] + 9.0, b[1], b[2] + 9.0, b[3]];
    let third = lay(&new, &job(), &second, None).house.layout;
    assert_eq!(broken(&third), Vec::<String>::new());
    let held: BTreeSet<String> =
        third.kept.as_ref().unwrap().pieces.iter().map(|k| k.panel.to_string()).collect();
    let is = offcuts(&third);
    assert!(held.iter().any(|p| was.contains_key(p)), "no held piece is of an offcut");
    for panel in &held {
        assert_eq!(is.get(panel), was.get(panel), "{panel}");
    }
    for p in third.pieces().map(|(.., p)| p) {
        if let Some([from, to]) = is.get(p.panel.as_str()) {
            assert!(p.start >= from - 0.01 && p.end <= to + 0.01, "{} of {}", p.mark, p.panel);
        }
    }
    // All of it hangs now, with another list: those offcuts are gone, and none of that list is used.
    let walls = ["front-1", "right-1", "rear-1", "left-1"];
    let all = Job { built: walls.iter().map(|w| hangs(w, &[])).collect(), ..job() };
    let list = vec![of(60.0, 1, FactoryEnd::None)];
    let fourth = lay(&d, &all, &second, Some(list)).house.layout;
    assert_eq!(broken(&fourth), Vec::<String>::new());
    assert_eq!(offcuts(&fourth), was);
    let built = fourth.kept.as_ref().unwrap().built.clone().unwrap();
    assert_eq!((built.more, built.offcuts_used), (0, 0));
}

#[test]
fn offcuts_on_the_site_spare_panels() {
    let d = house(&mut Dice(3));
    let old = lay_sets(&d.dxf(false), &job());
    let built = || vec![hangs("right-1", &[])];
    let more = |stock: Vec<AtHand>| {
        let l = go_on(&d, built(), &old, Some(stock)).unwrap();
        assert_eq!(broken(&l), Vec::<String>::new());
        let b = l.kept.clone().unwrap().built.unwrap();
        (b.more, b.offcuts_used)
    };
    let (without, none) = more(vec![of(150.0, 5, FactoryEnd::Both)]);
    assert_eq!(none, 0);
    // Nearly whole lengths of both hands: each may take the place of a panel.
    let long = vec![of(148.0, 4, FactoryEnd::Right), of(148.0, 4, FactoryEnd::Left)];
    let (with, used) = more(long);
    assert!(with < without && used > 0, "{with} of {without}, {used} offcuts");
    assert!(without - with <= 8, "{with} of {without}");
}

#[test]
fn what_hangs_and_fits_no_more_fails_the_check() {
    let d = house(&mut Dice(5));
    let old = lay_sets(&d.dxf(false), &job());
    // The rear hangs whole, and is drawn 30 in wider now.
    let mut new = d.clone();
    let f = &mut new.faces[2];
    f.wall[1].0 += 30.0;
    f.wall[2].0 += 30.0;
    let l = go_on(&new, vec![hangs("rear-1", &[])], &old, None).unwrap();
    assert!(broken_rules(&l).contains(&Rule::KeptPieces), "{:?}", broken_rules(&l));
}

#[test]
fn what_the_earlier_layout_has_not_is_refused_by_name() {
    let d = house(&mut Dice(1));
    let old = lay_sets(&d.dxf(false), &job());
    let fault = |built: Vec<Built>, stock: Option<Vec<AtHand>>| match go_on(&d, built, &old, stock)
        .unwrap_err()
        .0
        .kind
    {
        FindingKind::Files(FileFinding::LayoutNotKept { fault }) => fault,
        other => panic!("{other:?}"),
    };
    assert!(
        matches!(fault(vec![hangs("porch-1", &[])], None), KeepFault::NoWall { walls, .. } if walls.len() == 4)
    );
    assert!(matches!(fault(vec![hangs("front-1", &[1, 99])], None), KeepFault::NoCourses { .. }));
    let piece = Built { pieces: vec!["F1-99-1".to_owned()], ..Built::default() };
    assert_eq!(fault(vec![piece], None), KeepFault::NoPiece { piece: "F1-99-1".to_owned() });
    assert_eq!(fault(Vec::new(), Some(Vec::new())), KeepFault::StockAlone);
    // Without an earlier layout there is nothing that hangs.
    let job = Job { built: vec![hangs("front-1", &[])], ..job() };
    let refused =
        layout_keeping(&d.dxf(false), "b.dxf", (&job, None), &mut Findings::default(), &mut |_| {});
    let kind = refused.unwrap_err().0.kind;
    let expected = FileFinding::LayoutNotKept { fault: KeepFault::BuiltOfNothing };
    assert_eq!(kind, FindingKind::Files(expected));
}

#[test]
fn ticks_of_another_house_are_refused() {
    let ours = "a".repeat(64);
    let file = |drawing: &str| {
        format!(
            "{{\"format\":\"lapwright-ticks/1\",\"drawing\":\"{drawing}\",\"cut\":[],\"hung\":[\"F1-1-1\"]}}"
        )
    };
    let read = |text: &str| ticks_json::parse(text.as_bytes(), "t.json", &ours);
    assert_eq!(read(&file(&ours)).unwrap().hung, ["F1-1-1"]);
    let fault = |text: &str| match read(text).unwrap_err().0.kind {
        FindingKind::Files(FileFinding::TicksUnreadable { fault, .. }) => fault,
        other => panic!("{other:?}"),
    };
    assert_eq!(fault(&file(&"b".repeat(64))), TicksFault::OtherDrawing);
    assert!(matches!(fault("{}"), TicksFault::NoTicks { .. }));
    let older = file(&ours).replace("ticks/1", "ticks/0");
    assert!(matches!(fault(&older), TicksFault::OtherFormat { .. }));
}
