//! Which walls are held, with the plans of their runs and what their panels have left.

use std::collections::{BTreeMap, BTreeSet};

use super::asked::{Asked, Keep};
use crate::compare::SameWall;
use crate::course::held::{is_alike, plan as held_plan, runs as same_runs};
use crate::course::panel_names::HeldNames;
use crate::course::problem::make;
use crate::layout::kept::KeptPiece;
use crate::model::ids::{PanelId, PieceMark};
use crate::model::seam::{RunPlan, SeamPlan};
use crate::seam::at_hand::Room;

/// Walls that are held: fields with the plans of their runs.
#[derive(Default)]
pub(super) struct Found {
    /// By field: the wall of before.
    pub(super) walls: BTreeMap<usize, SameWall>,
    pub(super) runs: Vec<RunPlan>,
    pub(super) names: BTreeMap<usize, usize>,
    /// The part of a panel that lay on the site as an offcut, by panel.
    pub(super) at_hand: BTreeMap<usize, [f64; 2]>,
    /// Pieces that are held, as the earlier layout has them.
    pub(super) pieces: Vec<KeptPiece>,
    /// Marks of the pieces of runs that are held by themselves.
    pub(super) marks: BTreeMap<String, Vec<PieceMark>>,
}

/// The walls whose runs and pieces are those of before, no rule of seams being broken there.
pub(super) fn held_walls(keep: &Keep, asked: &Asked, marks: &[String]) -> Found {
    let broken: BTreeSet<&str> = {
        let conflicts = &keep.old.bound.conflicts;
        conflicts.iter().flat_map(|c| &c.runs).map(|r| r.as_str()).collect()
    };
    let mut numbers: BTreeMap<PanelId, usize> = BTreeMap::new();
    let mut all: Vec<(usize, SameWall, Vec<RunPlan>)> = Vec::new();
    for (i, f) in asked.fields.iter().enumerate() {
        let Some(s) = keep.same.iter().find(|s| s.new == (f.elevation, f.wall)) else { continue };
        let Some(was) = keep.wall(s) else { continue };
        let Some(runs) = same_runs(was, &asked.planned[i], s.by) else { continue };
        if runs.is_empty() || runs.iter().any(|(r, _)| broken.contains(r.id.as_str())) {
            continue;
        }
        let mut number = |id: &PanelId| {
            let next = numbers.len();
            *numbers.entry(id.clone()).or_insert(next)
        };
        let plans =
            runs.into_iter().map(|r| held_plan(r, s.by[0], asked.job, &mut number)).collect();
        all.push((i, *s, plans));
    }
    // Made once, to see whether their pieces are the same: a sill may have moved within a course.
    let trial = SeamPlan {
        runs: all.iter().flat_map(|a| a.2.clone()).collect(),
        order: (0..asked.fields.len()).collect(),
        ..SeamPlan::default()
    };
    let made = make(asked.walls, asked.planned, marks, &trial, &HeldNames::default(), asked.job);
    all.retain(|(i, s, _)| {
        let Some(was) = keep.wall(s) else { return false };
        let both = was.courses.iter().zip(&made.courses[*i]);
        was.courses.len() == made.courses[*i].len()
            && both.into_iter().all(|(a, b)| is_alike(a, b, s.by))
    });
    compact(keep, all, &numbers)
}

/// The walls with what is held of them.
fn compact(
    keep: &Keep,
    all: Vec<(usize, SameWall, Vec<RunPlan>)>,
    numbers: &BTreeMap<PanelId, usize>,
) -> Found {
    let runs: Vec<RunPlan> = all.iter().flat_map(|a| a.2.clone()).collect();
    let mut pieces = Vec::new();
    for (_, s, _) in &all {
        let Some(was) = keep.wall(s) else { continue };
        for (bottom, run) in was.courses.iter().flat_map(|c| c.runs.iter().map(|r| (c.bottom, r))) {
            pieces.extend(run.pieces.iter().map(|p| KeptPiece {
                mark: p.mark.clone(),
                wall: was.id.clone(),
                panel: p.panel.clone(),
                cut: [p.start, p.end],
                at_hand: keep.at_hand(&p.panel),
                x: [p.x0 + s.by[0], p.x1 + s.by[0]],
                bottom: bottom + s.by[1],
            }));
        }
    }
    let walls = all.iter().map(|a| (a.0, a.1)).collect();
    Found { walls, pieces, ..numbered(keep, runs, (numbers, usize::MAX)) }
}

/// Runs with their panels numbered from 0, in the order of their names; numbers from `loose` on stay.
pub(super) fn numbered(
    keep: &Keep,
    mut runs: Vec<RunPlan>,
    (numbers, loose): (&BTreeMap<PanelId, usize>, usize),
) -> Found {
    let cuts = runs.iter().flat_map(|r| &r.pieces);
    let used: BTreeSet<usize> = cuts.map(|c| c.panel).filter(|p| *p < loose).collect();
    let figure = |id: &PanelId| {
        let digits = id.trim_start_matches(|c: char| !c.is_ascii_digit());
        digits.parse::<usize>().unwrap_or(0)
    };
    let mut named: Vec<(usize, &PanelId, usize)> = numbers
        .iter()
        .filter(|(_, n)| used.contains(n))
        .map(|(id, n)| (figure(id), id, *n))
        .collect();
    named.sort();
    let to: BTreeMap<usize, usize> = named.iter().enumerate().map(|(k, n)| (n.2, k)).collect();
    for cut in runs.iter_mut().flat_map(|r| &mut r.pieces) {
        cut.panel = to.get(&cut.panel).copied().unwrap_or(cut.panel);
    }
    Found {
        runs,
        names: named.iter().enumerate().map(|(k, n)| (k, n.0)).collect(),
        at_hand: named
            .iter()
            .enumerate()
            .filter_map(|(k, n)| Some((k, keep.at_hand(n.1)?)))
            .collect(),
        ..Found::default()
    }
}

/// What panels have left, by what the runs take of them: those of which `has` tells from where to where they go.
pub(super) fn rooms(
    runs: &[RunPlan],
    asked: &Asked,
    has: &dyn Fn(usize) -> Option<[f64; 2]>,
) -> Vec<Room> {
    let kerf = asked.problem.rules.kerf;
    let mut cuts: BTreeMap<usize, Vec<(f64, f64)>> = BTreeMap::new();
    for c in runs.iter().flat_map(|r| &r.pieces) {
        cuts.entry(c.panel).or_default().push((c.start, c.end));
    }
    let mut out = Vec::new();
    for (panel, mut list) in cuts {
        let Some([begins, ends]) = has(panel) else { continue };
        list.sort_by(|a, b| a.0.total_cmp(&b.0));
        let mut from = begins;
        for (start, end) in list {
            let to = if start > begins { start - kerf } else { start };
            if to - from > kerf {
                out.push(Room { panel, from, to });
            }
            from = from.max(end + kerf);
        }
        if ends - from > kerf {
            out.push(Room { panel, from, to: ends });
        }
    }
    out
}
