//! What stands on a course line: the nail hem of the panel under it (1 1/4 in) would be in the window,
//! soffit or band, so the panel is cut there as a hair lower (`TrimFact::UndersillLugs`).
//! Figures by hand: clearance over a cut 1/4 in, end gap 1/4 in, lugs 6 in apart, courses of 8 in from 0.

use lapwright::job::{Band, Job};
use lapwright::layout::Layout;
use lapwright::layout::piece::Piece;
use lapwright::layout::rule::Rule;
use lapwright::model::notch::NotchSide;
use lapwright::model::trim::TrimKind;

use crate::faults::{Break, each_is_caught};
use crate::support::{broken, dxf, inches, lay, rect};

/// The job: the datum at the drawn bottom, one panel a course.
fn job() -> Job {
    let mut job = inches();
    job.courses.datum = Some(0.0);
    job.product.length = 300.0;
    job.seams.effort = lapwright::model::seam::Effort::Crew;
    job
}

/// A wall 240 in wide with a window 36 in wide.
fn window(sill: f64) -> String {
    let (wall, glass) = (rect(0.0, 0.0, 240.0, 100.0), rect(90.0, sill, 126.0, 68.0));
    dxf(&[("A-WALL-OTLN", &wall), ("A-GLAZ", &glass)])
}

fn trim(l: &Layout, kind: TrimKind) -> Vec<(f64, f64)> {
    l.trims.iter().filter(|t| t.kind == kind).map(|t| (t.from[1], t.length)).collect()
}

#[test]
fn a_sill_on_a_course_line_is_notched_and_trimmed_as_a_sixteenth_lower() {
    // Three courses end at 24. The hem of the third stands in the window from 24 to 25 1/4.
    for (sill, depth) in [(24.0, 0.25), (24.0 - 0.0625, 0.3125), (24.125, 0.125)] {
        let l = lay(window(sill).as_bytes(), &job());
        let of_sill: Vec<_> = l
            .pieces()
            .flat_map(|(.., p)| p.notches.iter().map(move |n| (p, n)))
            .filter(|(_, n)| n.side == NotchSide::Top)
            .collect();
        let [(p, n)] = of_sill[..] else { panic!("{sill}: {of_sill:?}") };
        // From 1/4 in left of the window to 1/4 in right of it.
        assert_eq!((p.x0 + n.left, n.width, n.depth), (89.75, 36.5, depth), "{sill}");
        assert_eq!(n.around.len(), 1, "{sill}");
        // 36 1/2 in at 6 in: seven lugs in the cut. The top course, cut at 100, has its own.
        assert_eq!(p.edge_work.lugs, 7, "{sill}");
        let under: Vec<_> =
            trim(&l, TrimKind::FinishTrim).into_iter().filter(|t| t.0 < 90.0).collect();
        assert_eq!(under, [(sill, 36.0)]);
        assert_eq!(broken(&l), Vec::<String>::new());
    }
}

#[test]
fn without_clearance_the_hem_still_comes_off() {
    // A sixteenth, the finest mark of a tape, goes with it.
    let mut job = job();
    job.courses.notch_clearance = 0.0;
    let l = lay(window(24.0).as_bytes(), &job);
    let depths = l.pieces().flat_map(|(.., p)| &p.notches).filter(|n| n.side == NotchSide::Top);
    assert_eq!(depths.map(|n| n.depth).collect::<Vec<_>>(), [0.0625]);
    assert_eq!(broken(&l), Vec::<String>::new());
}

#[test]
fn an_eave_on_a_course_line_rips_the_course_under_it() {
    for (eave, kept) in [(96.0, 7.75), (96.0 - 0.0625, 7.6875)] {
        let l = lay(dxf(&[("A-WALL-OTLN", &rect(0.0, 0.0, 240.0, eave))]).as_bytes(), &job());
        let top = l.elevations[0].walls[0].courses.last().unwrap();
        assert_eq!(top.index, 11);
        for p in top.runs.iter().flat_map(|r| &r.pieces) {
            let rip = p.rip.as_ref().unwrap();
            assert_eq!((rip.from, rip.to), (0.0, kept));
            // At 6 in along what shows of it.
            assert_eq!(p.edge_work.lugs, ((p.x1 - p.x0) / 6.0).ceil() as u32);
        }
        assert_eq!(trim(&l, TrimKind::FinishTrim).len(), 2, "240 in of 150 in stock");
        assert_eq!(broken(&l), Vec::<String>::new());
    }
}

#[test]
fn under_a_band_a_frieze_and_a_lower_soffit_the_hem_is_cut_off_too() {
    // A band from 48 to 56: the sixth course ends under it. A frieze of 4 in under an eave at 100 ends
    // the twelfth. A wing of 100 in whose soffit is at 64 ends the eighth, which goes on beside it.
    let wing =
        [(0.0, 0.0), (240.0, 0.0), (240.0, 100.0), (100.0, 100.0), (100.0, 64.0), (0.0, 64.0)];
    let mut job = job();
    job.trim.frieze = 4.0;
    let band = Band { elevation: None, bottom: 48.0, top: 56.0, left: None, right: None };
    job.bands = vec![band];
    let l = lay(dxf(&[("A-WALL-OTLN", &wing)]).as_bytes(), &job);
    let w = &l.elevations[0].walls[0];
    let course = |i: i32| w.courses.iter().find(|c| c.index == i).unwrap();
    for i in [5, 11] {
        for p in course(i).runs.iter().flat_map(|r| &r.pieces) {
            assert_eq!(p.rip.as_ref().map(|r| r.to), Some(7.75), "course {i}");
            assert!(p.edge_work.lugs > 0);
        }
    }
    // The frieze ends the wing's siding at 60, in the midst of a course; so look at one without it.
    job.trim.frieze = 0.0;
    let l = lay(dxf(&[("A-WALL-OTLN", &wing)]).as_bytes(), &job);
    let w = &l.elevations[0].walls[0];
    let eighth = w.courses.iter().find(|c| c.index == 7).unwrap();
    let under = eighth.runs.iter().flat_map(|r| &r.pieces).filter(|p| p.x0 < 99.0);
    for p in under {
        assert!(p.rip.is_some() || p.notches.iter().any(|n| n.side == NotchSide::Top), "{p:?}");
        assert!(p.edge_work.lugs > 0);
    }
    assert_eq!(broken(&l), Vec::<String>::new());
}

#[test]
fn the_search_for_the_datum_has_no_reward_for_a_sill_on_a_line() {
    // A window from 24 in to the eave, and a first course that hangs as it must: with the datum at 0 the
    // sill is on a line, at -3 it is 3 in over one. Either way one panel is notched, 4 in and more are
    // left of every course, and the eave at 100 is ripped.
    let (wall, glass) = (rect(0.0, 0.0, 240.0, 100.0), rect(90.0, 24.0, 126.0, 100.0));
    let drawing = dxf(&[("A-WALL-OTLN", &wall), ("A-GLAZ", &glass)]);
    let score = |datum: f64| {
        let mut job = job();
        job.courses.hang_below = 8.0;
        job.courses.weights.short_top = 0.0;
        job.courses.datum = Some(datum);
        lay(drawing.as_bytes(), &job).story_pole.choices[0].score
    };
    assert_eq!(score(0.0), score(-3.0));
}

/// Faults of a house with a sill and an eave on a course line.
pub(crate) const HEMS: [(&str, Rule, Break); 2] = [
    ("a hem left in a window", Rule::HemsClear, |l| whole(l, |p| !p.notches.is_empty())),
    ("a top course that keeps its hem behind the soffit", Rule::HemsClear, |l| {
        whole(l, |p| p.rip.is_some())
    }),
];

/// Gives pieces the whole strip back.
fn whole(l: &mut Layout, keep: impl Fn(&Piece) -> bool) {
    let walls = l.elevations.iter_mut().flat_map(|e| &mut e.walls);
    for c in walls.flat_map(|w| &mut w.courses) {
        let (bottom, top) = (c.bottom, c.top);
        for p in c.runs.iter_mut().flat_map(|r| &mut r.pieces).filter(|p| keep(p)) {
            p.outline = rect(p.x0, bottom, p.x1, top).map(|(x, y)| [x, y]).to_vec();
            (p.rip, p.notches) = (None, Vec::new());
        }
    }
}

/// The house they are put into.
pub(crate) fn on_lines() -> Layout {
    let (wall, glass) = (rect(0.0, 0.0, 240.0, 96.0), rect(90.0, 24.0, 126.0, 68.0));
    lay(dxf(&[("A-WALL-OTLN", &wall), ("A-GLAZ", &glass)]).as_bytes(), &job())
}

#[test]
fn hems_in_the_way_are_caught() {
    each_is_caught(&on_lines(), &HEMS);
}
