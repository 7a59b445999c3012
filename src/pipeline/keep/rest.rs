//! What is not held: the order of walls, the problem that is left, and how many offcuts wait.

use std::collections::BTreeMap;

use super::asked::{Asked, Keep};
use super::found::Found;
use crate::model::seam::{RunPlan, SeamPlan, SeamProblem, SeamRun};
use crate::model::waiting::OffcutReach;

/// The order of walls: that of the earlier layout, new walls after those that come before them anew.
pub(super) fn order(keep: &Keep, asked: &Asked, all: &SeamPlan) -> Vec<usize> {
    let was = |i: usize| {
        let id = &asked.walls.get(i)?.id;
        keep.old.order.iter().position(|w| w == id)
    };
    let mut out: Vec<usize> = Vec::new();
    let mut known: Vec<usize> = all.order.iter().copied().filter(|i| was(*i).is_some()).collect();
    known.sort_by_key(|i| was(*i));
    out.extend(known);
    for (k, i) in all.order.iter().enumerate().filter(|(_, i)| was(**i).is_none()) {
        let before = all.order[..k].iter().rev().find_map(|b| out.iter().position(|o| o == b));
        out.insert(before.map_or(0, |b| b + 1), *i);
    }
    out
}

/// The problem of what is not held: no seam near those that are, and as many offcuts waiting as those leave.
pub(super) fn rest(asked: &Asked, found: &Found, order: &[usize]) -> SeamProblem {
    let mut out = asked.problem.clone();
    let rules = &out.rules;
    let (steps, stagger) = (rules.steps as f64, rules.stagger);
    let clear = i32::try_from(rules.clear_courses).unwrap_or(i32::MAX);
    let held: BTreeMap<&str, &RunPlan> = found.runs.iter().map(|r| (r.id.as_str(), r)).collect();
    for e in &mut out.elevations {
        let standing: Vec<(i32, f64)> = e
            .courses
            .iter()
            .flat_map(|c| c.runs.iter().map(move |r| (c.index, r)))
            .filter_map(|(index, r)| Some((index, held.get(r.id.as_str())?)))
            .flat_map(|(index, r)| r.seams.iter().map(move |s| (index, *s)))
            .collect();
        for c in &mut e.courses {
            c.runs.retain(|r| !held.contains_key(r.id.as_str()));
            let near = standing.iter().filter(|(i, _)| (i - c.index).abs() <= clear);
            let off: Vec<(f64, f64)> = near
                .map(|(_, s)| {
                    let (low, high) = (s - stagger, s + stagger);
                    ((low * steps).floor() / steps, (high * steps).ceil() / steps)
                })
                .collect();
            c.runs.iter_mut().for_each(|r: &mut SeamRun| r.barred.extend(&off));
        }
        e.courses.retain(|c| !c.runs.is_empty());
    }
    let waiting = &mut out.waiting;
    waiting.orders = vec![order.iter().copied().filter(|i| !found.walls.contains_key(i)).collect()];
    waiting.most =
        waiting.most.map(|most| most.saturating_sub(most_waiting(&found.runs, asked, order)));
    // The next wall that is laid anew need not be the next one.
    if waiting.reach == OffcutReach::NextWall && !found.walls.is_empty() {
        waiting.reach = OffcutReach::Wall;
    }
    out
}

/// Places in the order of walls of the pieces of each panel, along the panel.
fn panel_walls(runs: &[RunPlan], asked: &Asked, order: &[usize]) -> Vec<Vec<usize>> {
    let all = asked.problem.elevations.iter().flat_map(|e| &e.courses).flat_map(|c| &c.runs);
    let wall: BTreeMap<&str, usize> = all.map(|r| (r.id.as_str(), r.wall)).collect();
    let place = |id: &str| order.iter().position(|w| wall.get(id) == Some(w));
    let mut out: BTreeMap<usize, Vec<(f64, usize)>> = BTreeMap::new();
    for r in runs {
        let Some(at) = place(&r.id) else { continue };
        r.pieces.iter().for_each(|c| out.entry(c.panel).or_default().push((c.start, at)));
    }
    out.values_mut().for_each(|list| list.sort_by(|a, b| a.0.total_cmp(&b.0)));
    out.into_values().map(|list| list.into_iter().map(|p| p.1).collect()).collect()
}

/// The most offcuts that wait at the end of any wall.
fn most_waiting(runs: &[RunPlan], asked: &Asked, order: &[usize]) -> usize {
    let panels = panel_walls(runs, asked, order);
    // Lengths of an opened panel that lie between pieces which are gone: each waits by itself.
    let waits = |panel: &Vec<usize>, k: usize| {
        if panel.iter().all(|at| *at > k) {
            return 0;
        }
        let begins = |i: usize| panel[i] > k && (i == 0 || panel[i - 1] <= k);
        (0..panel.len()).filter(|i| begins(*i)).count()
    };
    let all = (0..order.len()).map(|k| panels.iter().map(|p| waits(p, k)).sum());
    all.max().unwrap_or(0)
}

/// Whether no more offcuts wait than may, and none goes farther.
pub(super) fn waits(runs: &[RunPlan], order: &[usize], asked: &Asked) -> bool {
    let waiting = &asked.problem.waiting;
    let few = waiting.most.is_none_or(|most| most_waiting(runs, asked, order) <= most);
    let reach = waiting.reach.walls();
    let far = panel_walls(runs, asked, order).iter().any(|at| {
        let (a, b) = (at.iter().min().copied().unwrap_or(0), at.iter().max().copied().unwrap_or(0));
        b - a > reach
    });
    few && !far
}
