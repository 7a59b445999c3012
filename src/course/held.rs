//! Runs of an earlier layout that are held: where they are planned as they were, their seams and cuts are those
//! of before.

use super::problem::spare;
use crate::geom::tol::CUT;
use crate::job::Job;
use crate::layout::course::{LaidCourse, LaidRun};
use crate::layout::piece::Piece;
use crate::layout::wall::LaidWall;
use crate::model::course::{PlannedCourse, PlannedRun};
use crate::model::ids::PanelId;
use crate::model::seam::{Cut, RunPlan};

/// A run of before with the run that is planned in its place.
pub type SameRun<'a> = (&'a LaidRun, &'a PlannedRun);

/// The runs of a wall of before, each with its like among those planned, `by` being how far places go over; `None`
/// where any of either has none.
pub fn runs<'a>(
    was: &'a LaidWall,
    planned: &'a [PlannedCourse],
    by: [f64; 2],
) -> Option<Vec<SameRun<'a>>> {
    let laid: Vec<&LaidCourse> = was.courses.iter().collect();
    if laid.len() != planned.len() {
        return None;
    }
    let mut out = Vec::new();
    for (a, b) in laid.into_iter().zip(planned) {
        let level = near(a.bottom + by[1], b.bottom) && near(a.top + by[1], b.top);
        if !level || a.index != b.index || a.runs.len() != b.runs.len() {
            return None;
        }
        for (r, p) in a.runs.iter().zip(&b.runs) {
            let there = near(r.x0 + by[0], p.x0) && near(r.x1 + by[0], p.x1);
            if !there || r.ends != p.ends || !near(r.gap, p.gap) || r.pieces.is_empty() {
                return None;
            }
            out.push((r, p));
        }
    }
    Some(out)
}

fn near(a: f64, b: f64) -> bool {
    (a - b).abs() <= CUT
}

/// The plan of a run as it was laid; `number` gives panels their numbers.
pub fn plan(
    (was, planned): SameRun,
    by: f64,
    job: &Job,
    number: &mut dyn FnMut(&PanelId) -> usize,
) -> RunPlan {
    let [left, right] = spare(planned, job.steps());
    let last = was.pieces.len().saturating_sub(1);
    let cut = |(i, p): (usize, &Piece)| Cut {
        panel: number(&p.panel),
        start: p.start - if i == 0 { left } else { 0.0 },
        end: p.end + if i == last { right } else { 0.0 },
    };
    RunPlan {
        id: planned.id.clone(),
        pieces: was.pieces.iter().enumerate().map(cut).collect(),
        seams: was.seams.iter().map(|s| s + by).collect(),
    }
}

/// Whether a course as made now has the pieces it had: their shapes, cuts and notches.
pub fn is_alike(was: &LaidCourse, is: &LaidCourse, by: [f64; 2]) -> bool {
    let pieces =
        |c: &LaidCourse| -> Vec<Piece> { c.runs.iter().flat_map(|r| r.pieces.clone()).collect() };
    let (a, b) = (pieces(was), pieces(is));
    a.len() == b.len() && a.iter().zip(&b).all(|(a, b)| same_piece(a, b, by))
}

fn same_piece(a: &Piece, b: &Piece, by: [f64; 2]) -> bool {
    let ring = |a: &[[f64; 2]], b: &[[f64; 2]]| {
        a.len() == b.len()
            && a.iter().zip(b).all(|(p, q)| near(p[0] + by[0], q[0]) && near(p[1] + by[1], q[1]))
    };
    let rings = |a: &[Vec<[f64; 2]>], b: &[Vec<[f64; 2]>]| {
        a.len() == b.len() && a.iter().zip(b).all(|(a, b)| ring(a, b))
    };
    near(a.start, b.start)
        && near(a.end, b.end)
        && a.rip.is_some() == b.rip.is_some()
        && a.notches.len() == b.notches.len()
        && ring(&a.outline, &b.outline)
        && rings(&a.holes, &b.holes)
        && rings(&a.more, &b.more)
}

/// The run that is planned where one was laid.
pub fn run_like<'a>(
    course: &LaidCourse,
    was: &LaidRun,
    planned: &'a [PlannedCourse],
    by: [f64; 2],
) -> Option<&'a PlannedRun> {
    let level = |p: &&PlannedCourse| {
        p.index == course.index
            && near(course.bottom + by[1], p.bottom)
            && near(course.top + by[1], p.top)
    };
    let runs = &planned.iter().find(level)?.runs;
    let there = |p: &&PlannedRun| near(was.x0 + by[0], p.x0) && near(was.x1 + by[0], p.x1);
    runs.iter().find(there).filter(|p| p.ends == was.ends && near(p.gap, was.gap))
}
