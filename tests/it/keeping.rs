//! `layout --keep`: walls that did not change keep seams, panels and marks; names go by place.

use std::collections::{BTreeMap, BTreeSet};

use lapwright::finding::files::{FileFinding, KeepFault};
use lapwright::finding::{FindingKind, Findings};
use lapwright::job::Job;
use lapwright::layout::Layout;
use lapwright::layout::set::LaidSets;
use lapwright::pipeline::{Earlier, layout_keeping};

use crate::revisions::{Dice, Drawn, house};
use crate::support::{broken, inches, lay_sets};

fn job() -> Job {
    let mut job = inches();
    job.seams.effort = lapwright::model::seam::Effort::Crew;
    job
}

fn keep(d: &Drawn, job: &Job, old: &LaidSets) -> Layout {
    let bytes = d.dxf(false);
    let old = Earlier { sets: old, ticked: Vec::new(), stock: None };
    layout_keeping(&bytes, "b.dxf", (job, Some(&old)), &mut Findings::default(), &mut |_| {})
        .unwrap()
        .house
        .layout
}

/// Every piece of a wall by its mark: panel, place on it and on the wall.
fn pieces(l: &Layout, wall: &str) -> BTreeMap<String, (String, [i64; 4])> {
    let n = |v: f64| (v * 1024.0).round() as i64;
    let on = l.pieces().filter(|(w, ..)| *w.id == *wall);
    on.map(|(_, _, _, p)| {
        (p.mark.to_string(), (p.panel.to_string(), [p.start, p.end, p.x0, p.x1].map(n)))
    })
    .collect()
}

#[test]
fn the_same_house_is_held_whole() {
    let d = house(&mut Dice(6));
    let old = lay_sets(&d.dxf(false), &job());
    let new = keep(&d, &job(), &old);
    for (_, w) in old.house.layout.walls() {
        assert_eq!(pieces(&new, &w.id), pieces(&old.house.layout, &w.id), "{}", w.id);
    }
    let kept = new.kept.as_ref().unwrap();
    assert_eq!((kept.walls.len(), kept.anew.len()), (4, 0));
    assert_eq!(
        (kept.panels, new.panels.len()),
        (old.house.layout.panels.len(), old.house.layout.panels.len())
    );
    assert_eq!(broken(&new), Vec::<String>::new());
}

#[test]
fn course_lines_stay_where_most_walls_have_them() {
    let d = house(&mut Dice(6));
    let old = lay_sets(&d.dxf(false), &job());
    // The floor line of the front alone, whose wall comes first, is drawn 3 in lower: of the front the course lines
    // would lie 3 in higher over the floor line, of the three other walls where they did.
    let mut new = d.clone();
    new.faces[0].floor -= 3.0;
    let laid = keep(&new, &job(), &old);
    assert_eq!(laid.datum, old.house.layout.datum);
    let kept = laid.kept.clone().unwrap();
    let names: BTreeSet<String> = kept.walls.iter().map(|w| w.to_string()).collect();
    assert_eq!(names, ["left-1", "rear-1", "right-1"].map(str::to_owned).into());
    assert_eq!(broken(&laid), Vec::<String>::new());
    // Of all four: the wall of each stands as much higher over it.
    new.faces[1..].iter_mut().for_each(|f| f.floor -= 3.0);
    let laid = keep(&new, &job(), &old);
    assert_eq!(laid.datum, old.house.layout.datum + 3.0);
    assert_eq!(laid.kept.as_ref().unwrap().walls.len(), 4);
}

#[test]
fn walls_that_did_not_change_are_held_and_the_others_laid_anew() {
    let mut from_offcuts = 0;
    for seed in 0..12 {
        let d = house(&mut Dice(seed));
        let old = lay_sets(&d.dxf(false), &job());
        let mut new = d.clone();
        // A window of the front and the height of the rear.
        let b = &mut new.faces[0].windows[1];
        *b = [b[0] + 9.0, b[1], b[2] + 9.0, b[3]];
        new.faces[2].wall.iter_mut().skip(2).for_each(|p| p.1 += 11.0);
        let laid = keep(&new, &job(), &old);
        let kept = laid.kept.clone().unwrap();
        from_offcuts += kept.from_offcuts;
        let names = |l: &[lapwright::model::ids::WallId]| {
            l.iter().map(|w| w.to_string()).collect::<BTreeSet<_>>()
        };
        assert_eq!(
            names(&kept.walls),
            ["left-1", "right-1"].map(str::to_owned).into(),
            "seed {seed}"
        );
        assert_eq!(
            names(&kept.anew),
            ["front-1", "rear-1"].map(str::to_owned).into(),
            "seed {seed}"
        );
        for wall in ["left-1", "right-1"] {
            assert_eq!(pieces(&laid, wall), pieces(&old.house.layout, wall), "seed {seed} {wall}");
        }
        // A panel that is held gives to other walls only what the held pieces leave of it: the check sees that.
        assert_eq!(broken(&laid), Vec::<String>::new(), "seed {seed}");
        // Panels counted from the pieces alone.
        let used: BTreeSet<&str> = laid.pieces().map(|(.., p)| p.panel.as_str()).collect();
        assert_eq!(used.len(), laid.panels.len(), "seed {seed}");
        let held: BTreeSet<&str> = kept.pieces.iter().map(|p| p.panel.as_str()).collect();
        assert_eq!(held.len(), kept.panels, "seed {seed}");
        assert!(laid.bound.panels <= laid.panels.len(), "seed {seed}");
    }
    assert!(from_offcuts > 0, "what held panels have left was never used");
}

#[test]
fn names_go_by_place() {
    let d = house(&mut Dice(9));
    let old = lay_sets(&d.dxf(false), &job());
    let mut new = d.clone();
    // A window to the left of the others, one gone from their middle.
    new.faces[0].windows.remove(1);
    new.faces[0].windows.insert(0, [110.0, 80.0, 126.0, 98.0]);
    let laid = keep(&new, &job(), &old);
    let named = |l: &Layout| -> BTreeMap<String, [i64; 2]> {
        let front = l.elevations.iter().find(|e| e.name.contains("FRONT")).unwrap();
        let all = front.walls.iter().flat_map(|w| &w.openings);
        all.map(|o| (o.id.to_string(), [o.left, o.sill].map(|v| v.round() as i64))).collect()
    };
    let (was, is) = (named(&old.house.layout), named(&laid));
    // The first, the third and the door are where they were, under their names; the second is gone, with its.
    for name in ["front-W1", "front-W3", "front-D1"] {
        assert_eq!(is.get(name), was.get(name), "{name}");
    }
    assert!(was.contains_key("front-W2") && !is.contains_key("front-W2"), "{is:?}");
    // What is new has a name that nothing had before.
    let new_names: Vec<&String> = is.keys().filter(|n| !was.contains_key(*n)).collect();
    assert_eq!(new_names, ["front-W4"], "{is:?}");
}

#[test]
fn what_cannot_be_held_is_refused() {
    let d = house(&mut Dice(1));
    let old = lay_sets(&d.dxf(false), &job());
    let bytes = d.dxf(false);
    let fault = |bytes: &[u8], job: &Job| {
        let found = &mut Findings::default();
        let old = Earlier { sets: &old, ticked: Vec::new(), stock: None };
        let refused = layout_keeping(bytes, "b.dxf", (job, Some(&old)), found, &mut |_| {});
        match refused.unwrap_err().0.kind {
            FindingKind::Files(FileFinding::LayoutNotKept { fault }) => fault,
            other => panic!("{other:?}"),
        }
    };
    let mut other = job();
    other.seams.stagger = 36.0;
    assert_eq!(
        fault(&bytes, &other),
        KeepFault::Settings { keys: vec!["seams.stagger".to_owned()] }
    );
    let mut halves = job();
    halves.seams.reuse_halves = true;
    assert_eq!(fault(&bytes, &halves), KeepFault::Halves);
    assert_eq!(fault(&d.dxf(true), &job()), KeepFault::OtherHand);
}
