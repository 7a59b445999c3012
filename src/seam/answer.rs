//! From placings back to pieces, seams and panels in inches.

use std::collections::BTreeMap;

use super::part::Digest;
use super::placed::Placed;
use super::pool::Pool;
use super::stagger::seams;
use crate::model::seam::{Certificate, Cut, RunPlan, SeamPlan, SeamProblem};

/// The plan of the whole house.
pub(super) fn plan(
    problem: &SeamProblem,
    digest: &Digest,
    pool: &Pool,
    mut certificate: Certificate,
) -> SeamPlan {
    let ones = offsets(digest, pool);
    let steps = digest.rules.steps;
    let inches = |n: i64| steps.inches(n);
    let mut runs: BTreeMap<(usize, usize, usize), RunPlan> = BTreeMap::new();
    let mut numbers: BTreeMap<usize, usize> = BTreeMap::new();
    // Lengths of whole panels by number; of cut ones by their slots' kinds.
    let mut stocks: BTreeMap<usize, f64> = BTreeMap::new();
    let mut next = 0;
    for (i, part) in digest.parts.iter().enumerate() {
        let Some(placed) = pool.placed[i] else { continue };
        let run = runs.entry(part.from).or_default();
        if !run.pieces.is_empty() {
            // A fixed seam joins this part to the one before: the lap's middle.
            run.seams.push(inches(part.left + digest.rules.lap - digest.rules.lap / 2));
        }
        let mut number = |slot: usize, next: &mut usize| {
            *numbers.entry(slot).or_insert_with(|| {
                *next += 1;
                *next - 1
            })
        };
        match placed {
            Placed::One { panel } => {
                let start = ones.get(&i).copied().unwrap_or(0);
                let panel = number(panel, &mut next);
                run.pieces.push(Cut {
                    panel,
                    start: inches(start),
                    end: inches(start + part.cover),
                });
            }
            Placed::Seamed { way, a, first, last } => {
                let way = part.ways[way];
                let length = |slot: usize| digest.rules.panel_of(pool.panels[slot].kind);
                let (whole, l) = (digest.rules.panel_of(way.whole), length(first));
                let panel = number(first, &mut next);
                run.pieces.push(Cut { panel, start: inches(l - a), end: inches(l) });
                for _ in 0..way.k - 2 {
                    run.pieces.push(Cut { panel: next, start: 0.0, end: inches(whole) });
                    stocks.insert(next, inches(whole));
                    next += 1;
                }
                let panel = number(last, &mut next);
                run.pieces.push(Cut { panel, start: 0.0, end: inches(way.sum - a) });
                let middles = seams(part, way, a, &digest.rules);
                run.seams.extend(middles.map(|x| steps.middle(x, digest.rules.lap)));
            }
        }
    }
    let mut plans = Vec::new();
    for (e, elevation) in problem.elevations.iter().enumerate() {
        for (c, course) in elevation.courses.iter().enumerate() {
            for (i, run) in course.runs.iter().enumerate() {
                let mut plan = runs.remove(&(e, c, i)).unwrap_or_default();
                plan.id = run.id.clone();
                plans.push(plan);
            }
        }
    }
    certificate.panels = next;
    certificate.proven = next <= certificate.bound;
    if digest.rules.mixed() {
        let kind = |slot: &usize| digest.rules.panel_of(pool.panels[*slot].kind);
        stocks.extend(numbers.iter().map(|(slot, n)| (*n, inches(kind(slot)))));
    } else {
        stocks.clear();
    }
    SeamPlan {
        runs: plans,
        panels: next,
        stocks: stocks.into_values().collect(),
        certificate,
        crew_panels: 0,
        other_policy_panels: None,
        conflicts: Vec::new(),
    }
}

/// Where each one-piece part begins on its panel: after the right-hand piece, in order.
fn offsets(digest: &Digest, pool: &Pool) -> BTreeMap<usize, i64> {
    let kerf = digest.rules.kerf;
    let mut out = BTreeMap::new();
    for (_, panel) in pool.cut() {
        let right_hand = panel.right_hand.and_then(|p| match pool.placed[p] {
            Some(Placed::Seamed { way, a, .. }) => Some(digest.parts[p].ways[way].sum - a),
            _ => None,
        });
        let mut at = right_hand.map_or(0, |b| b + kerf);
        for p in &panel.ones {
            out.insert(*p, at);
            at += digest.parts[*p].cover + kerf;
        }
    }
    out
}
