//! Which walls are held, with the plans of their runs and what their panels have left.

use std::collections::{BTreeMap, BTreeSet};

use super::asked::{Asked, Keep};
use crate::compare::SameWall;
use crate::course::held::{is_alike, plan as held_plan, runs as same_runs};
use crate::course::problem::make;
use crate::model::ids::PanelId;
use crate::model::seam::{RunPlan, SeamPlan};
use crate::seam::at_hand::Room;

/// Walls that are held: fields with the plans of their runs.
pub(super) struct Found {
    /// By field: the wall of before.
    pub(super) walls: BTreeMap<usize, SameWall>,
    pub(super) runs: Vec<RunPlan>,
    pub(super) names: BTreeMap<usize, usize>,
    pub(super) numbers: BTreeMap<PanelId, usize>,
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
    let made = make(asked.walls, asked.planned, marks, &trial, &BTreeMap::new(), asked.job);
    all.retain(|(i, s, _)| {
        let Some(was) = keep.wall(s) else { return false };
        let both = was.courses.iter().zip(&made.courses[*i]);
        was.courses.len() == made.courses[*i].len()
            && both.into_iter().all(|(a, b)| is_alike(a, b, s.by))
    });
    compact(all, &numbers)
}

/// The walls with their panels numbered from 0, in the order of their names.
fn compact(all: Vec<(usize, SameWall, Vec<RunPlan>)>, numbers: &BTreeMap<PanelId, usize>) -> Found {
    let used: BTreeSet<usize> =
        all.iter().flat_map(|a| &a.2).flat_map(|r| &r.pieces).map(|c| c.panel).collect();
    let mut named: Vec<(usize, PanelId, usize)> = numbers
        .iter()
        .filter(|(_, n)| used.contains(n))
        .map(|(id, n)| (id[1..].parse().unwrap_or(0), id.clone(), *n))
        .collect();
    named.sort();
    let to: BTreeMap<usize, usize> = named.iter().enumerate().map(|(k, n)| (n.2, k)).collect();
    let mut runs: Vec<RunPlan> = all.iter().flat_map(|a| a.2.clone()).collect();
    for cut in runs.iter_mut().flat_map(|r| &mut r.pieces) {
        cut.panel = to[&cut.panel];
    }
    Found {
        walls: all.iter().map(|a| (a.0, a.1)).collect(),
        runs,
        names: named.iter().enumerate().map(|(k, n)| (k, n.0)).collect(),
        numbers: named.iter().enumerate().map(|(k, n)| (n.1.clone(), k)).collect(),
    }
}

/// What the panels that are held have left.
pub(super) fn rooms(found: &Found, asked: &Asked) -> Vec<Room> {
    let rules = &asked.problem.rules;
    let mut cuts: BTreeMap<usize, Vec<(f64, f64)>> = BTreeMap::new();
    for c in found.runs.iter().flat_map(|r| &r.pieces) {
        cuts.entry(c.panel).or_default().push((c.start, c.end));
    }
    let mut out = Vec::new();
    for (panel, mut list) in cuts {
        list.sort_by(|a, b| a.0.total_cmp(&b.0));
        let mut from: f64 = 0.0;
        for (start, end) in list {
            let to = if start > 0.0 { start - rules.kerf } else { start };
            if to - from > rules.kerf {
                out.push(Room { panel, from, to });
            }
            from = from.max(end + rules.kerf);
        }
        if rules.stock() - from > rules.kerf {
            out.push(Room { panel, from, to: rules.stock() });
        }
    }
    out
}
