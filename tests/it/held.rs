//! What holds a cut edge, where it is cut (`TrimFact::UndersillLugs`, `TrimFact::RakeGap`): lugs in undersill
//! trim alone, and for a piece without hem or lock the way it is held, on the cut list, the cutting sheet and
//! in the order of work; room round pipes (`TrimFact::FixtureClearance`).

use lapwright::job::Job;
use lapwright::language::Language;
use lapwright::layout::Layout;
use lapwright::layout::piece::Piece;
use lapwright::layout::rule::Rule;
use lapwright::model::hold::Hold;
use lapwright::model::notch::NotchSide;
use lapwright::model::work::WorkStep;
use lapwright::units::LengthStyle;
use lapwright::wording;

use crate::faults::{Break, each_is_caught};
use crate::support::{broken, dxf, inches, lay, rect};

/// Courses of 8 in from 0, one panel a course.
fn job() -> Job {
    let mut job = inches();
    job.courses.datum = Some(0.0);
    job.product.length = 300.0;
    job.seams.effort = lapwright::model::seam::Effort::Crew;
    job
}

fn holds(l: &Layout) -> Vec<(i32, Vec<Hold>)> {
    let all = l.pieces().map(|(_, c, _, p)| (c.index, p.edge_work.holds.clone()));
    all.filter(|(_, h)| !h.is_empty()).collect()
}

/// A gable of 12 in 12 over a wall of 40 in: the peak at 88.
pub(crate) fn gable() -> Layout {
    let wall = [(0.0, 0.0), (96.0, 0.0), (96.0, 40.0), (48.0, 88.0), (0.0, 40.0)];
    lay(dxf(&[("A-WALL-OTLN", &wall)]).as_bytes(), &job())
}

#[test]
fn a_peak_in_rake_channels_has_no_lugs_and_one_nail_in_its_face() {
    // From 40 the wall narrows by 16 in a course: the course from 80 ends in the peak and keeps no hem.
    let l = gable();
    assert!(l.pieces().all(|(.., p)| p.edge_work.lugs == 0));
    assert_eq!(holds(&l), [(10, vec![Hold::FaceNail])]);
    let peak = l.pieces().find(|(_, c, ..)| c.index == 10).map(|(.., p)| p.mark.clone()).unwrap();
    // It is told in the order of work, and on the cut list.
    let steps = &l.work.walls[0].steps;
    let told = steps.iter().find_map(|s| match s {
        WorkStep::HoldPieces { pieces } => Some(pieces.clone()),
        _ => None,
    });
    let told = told.expect("no step tells it");
    assert_eq!((told[0].hold, &told[0].marks), (Hold::FaceNail, &vec![peak.clone()]));
    let words =
        wording::work::steps(Language::English, &l.work.walls[0], LengthStyle::Feet).join("\n");
    assert!(words.contains(&*peak) && words.contains("one small nail in its face"), "{words}");
    assert_eq!(broken(&l), Vec::<String>::new());
}

/// A wall with a lower roof along part of its foot, level at 19 in: siding begins 1/2 in over it.
fn over_a_roof() -> Layout {
    let wall = rect(0.0, 0.0, 240.0, 100.0);
    let roof = rect(-12.0, -6.0, 120.0, 19.0);
    lay(dxf(&[("A-WALL-OTLN", &wall), ("A-ROOF-OTLN", &roof)]).as_bytes(), &job())
}

#[test]
fn a_butt_cut_over_a_roof_is_told_to_stand_in_its_channel() {
    // The course from 16 to 24 is cut at its foot along the roof; beside it it keeps its lock.
    let l = over_a_roof();
    assert_eq!(holds(&l), [(2, vec![Hold::RoofChannel])]);
    let p = l.pieces().find(|(_, c, ..)| c.index == 2).map(|(.., p)| p.clone()).unwrap();
    assert_eq!(p.edge_work.lugs, 0);
    assert!(wording::cuts::holds(Language::English, &p.edge_work).contains("roof channel"));
    assert_eq!(broken(&l), Vec::<String>::new());
    let untold: [(&str, Rule, Break); 1] =
        [("a butt over a roof untold", Rule::CutEdgesHeld, |l| at_peak(l).edge_work.holds.clear())];
    each_is_caught(&l, &untold);
}

#[test]
fn room_is_kept_round_a_pipe() {
    // A pipe from 100 to 102 and from 51 to 53, in the course from 48 to 56, without a mounting block: cut
    // out with 1/4 in of room above, below and on its left; on its right the panel's seam.
    let (wall, pipe) = (rect(0.0, 0.0, 240.0, 100.0), rect(100.0, 51.0, 102.0, 53.0));
    let l = lay(dxf(&[("A-WALL-OTLN", &wall), ("A-ELEV-OBST", &pipe)]).as_bytes(), &job());
    let cut: Vec<&Piece> = l.pieces().map(|(.., p)| p).filter(|p| !p.notches.is_empty()).collect();
    assert!(!cut.is_empty());
    for p in &cut {
        let n = &p.notches[0];
        assert!(matches!(n.side, NotchSide::Left | NotchSide::Right | NotchSide::Hole), "{n:?}");
        assert_eq!((n.depth, n.foot), (2.5, Some(2.75)), "{n:?}");
        if n.side == NotchSide::Right {
            assert!((p.x0 + n.left - 99.75).abs() < 1e-6, "{n:?}");
        } else {
            assert!(p.x0 + n.left + n.width <= 102.25 + 1e-6, "{n:?}");
        }
    }
    assert_eq!(broken(&l), Vec::<String>::new());
}

#[test]
fn one_fixture_has_one_seam_and_no_short_piece_beside_it() {
    // A pipe from 100 to 102 and from 54 to 58: in the course from 48 to 56 and in that from 56 to 64. The
    // lower one has its seam, the upper one is cut round the pipe from its foot. Beside a pipe at 10 to 12
    // the first piece would be 13 in less the gap, under 24: cut round it too.
    let wall = rect(0.0, 0.0, 240.0, 100.0);
    for (x, seams) in [(100.0, 1), (10.0, 0)] {
        let pipe = rect(x, 54.0, x + 2.0, 58.0);
        let l = lay(dxf(&[("A-WALL-OTLN", &wall), ("A-ELEV-OBST", &pipe)]).as_bytes(), &job());
        let all: usize = l.elevations[0].walls[0]
            .courses
            .iter()
            .flat_map(|c| &c.runs)
            .map(|r| r.seams.len())
            .sum();
        assert_eq!(all, seams, "{x}");
        let upper = l.pieces().find(|(_, c, ..)| c.index == 7).map(|(.., p)| p.clone()).unwrap();
        assert_eq!((upper.notches[0].side, upper.notches[0].depth), (NotchSide::Bottom, 2.25));
        assert_eq!(broken(&l), Vec::<String>::new());
    }
}

/// Faults of what holds pieces of a gable.
pub(crate) const HELD: [(&str, Rule, Break); 2] = [
    ("lugs on a peak in rake channels", Rule::CutEdgesHeld, |l| at_peak(l).edge_work.lugs = 4),
    ("a peak that nothing is said to hold", Rule::CutEdgesHeld, |l| {
        at_peak(l).edge_work.holds.clear()
    }),
];

fn at_peak(l: &mut Layout) -> &mut Piece {
    let walls = l.elevations.iter_mut().flat_map(|e| &mut e.walls);
    let runs = walls.flat_map(|w| &mut w.courses).flat_map(|c| &mut c.runs);
    runs.flat_map(|r| &mut r.pieces).find(|p| !p.edge_work.holds.is_empty()).unwrap()
}

#[test]
fn pieces_that_nothing_holds_are_caught() {
    each_is_caught(&gable(), &HELD);
}
