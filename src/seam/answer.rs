//! From placings back to pieces, seams and panels in inches.

use std::collections::BTreeMap;

use super::hit_bound::least_at_openings;
use super::options::Way;
use super::panel::Panel;
use super::part::{Digest, Part};
use super::placed::Placed;
use super::pool::Pool;
use super::stagger::seams;
use crate::model::seam::{Certificate, Cut, RunPlan, SeamPlan, SeamProblem};

/// Panels as they are numbered, run by run.
struct PanelNumbers<'a> {
    digest: &'a Digest,
    pool: &'a Pool,
    /// Numbers of cut panels by their slots in the pool.
    cut: BTreeMap<usize, usize>,
    /// Lengths of whole panels by number.
    whole: BTreeMap<usize, f64>,
    next: usize,
}

impl PanelNumbers<'_> {
    fn length(&self, slot: usize) -> i64 {
        self.digest.rules.panel_of(self.pool.panels[slot].kind)
    }

    fn cut(&mut self, slot: usize) -> usize {
        *self.cut.entry(slot).or_insert_with(|| {
            self.next += 1;
            self.next - 1
        })
    }

    fn whole(&mut self, length: f64) -> usize {
        self.whole.insert(self.next, length);
        self.next += 1;
        self.next - 1
    }

    /// The length of each panel, by number; none where all are of one length.
    fn stocks(mut self) -> Vec<f64> {
        if !self.digest.rules.mixed() {
            return Vec::new();
        }
        let steps = self.digest.rules.steps;
        let cut: Vec<_> =
            self.cut.iter().map(|(s, n)| (*n, steps.inches(self.length(*s)))).collect();
        self.whole.extend(cut);
        self.whole.into_values().collect()
    }
}

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
    let (cut, whole) = (BTreeMap::new(), BTreeMap::new());
    let mut numbers = PanelNumbers { digest, pool, cut, whole, next: 0 };
    for (i, part) in digest.parts.iter().enumerate() {
        let Some(placed) = pool.placed[i] else { continue };
        let run = runs.entry(part.from).or_default();
        if !run.pieces.is_empty() {
            // A fixed seam joins this part to the one before: the lap's middle.
            let lap = digest.rules.lap;
            run.seams.push(steps.middle(part.left + lap - lap / 2, lap));
        }
        match placed {
            Placed::One { panel } => {
                let start = ones.get(&i).copied().unwrap_or(0);
                run.pieces.push(Cut {
                    panel: numbers.cut(panel),
                    start: inches(start),
                    end: inches(start + part.cover),
                });
            }
            Placed::Seamed { way, a, first, last } => {
                seamed(part, (part.ways[way], a), [first, last], &mut numbers, run);
            }
        }
    }
    let panels = numbers.next;
    certificate.panels = panels;
    certificate.proven = panels <= certificate.bound;
    SeamPlan {
        runs: in_order(problem, runs),
        panels,
        order: Vec::new(),
        stocks: numbers.stocks(),
        certificate,
        crew_panels: 0,
        other_policy_panels: None,
        conflicts: Vec::new(),
        least_at_openings: Some(least_at_openings(digest)),
    }
}

/// The pieces and seams of a part of several pieces: the first `a` long, the last from the panel at `last`.
fn seamed(
    part: &Part,
    (way, a): (Way, i64),
    [first, last]: [usize; 2],
    numbers: &mut PanelNumbers,
    run: &mut RunPlan,
) {
    let rules = &numbers.digest.rules;
    let inches = |n: i64| rules.steps.inches(n);
    let (whole, l) = (rules.panel_of(way.whole), numbers.length(first));
    run.pieces.push(Cut { panel: numbers.cut(first), start: inches(l - a), end: inches(l) });
    for _ in 0..way.k - 2 {
        let panel = numbers.whole(inches(whole));
        run.pieces.push(Cut { panel, start: 0.0, end: inches(whole) });
    }
    run.pieces.push(Cut { panel: numbers.cut(last), start: 0.0, end: inches(way.sum - a) });
    run.seams.extend(seams(part, way, a, rules).map(|x| rules.steps.middle(x, rules.lap)));
}

/// The runs in the problem's order, with their names.
fn in_order(
    problem: &SeamProblem,
    mut runs: BTreeMap<(usize, usize, usize), RunPlan>,
) -> Vec<RunPlan> {
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
    plans
}

/// The runs of one piece that a panel gives, from left to right. Where offcuts wait they are cut off in turn,
/// so that what is left stays in one length: from the side of the end piece that is used first, or towards
/// the only one.
fn in_turn(pool: &Pool, panel: &Panel) -> Vec<usize> {
    let mut ones = panel.ones.clone();
    let Some(waits) = &pool.waits else { return ones };
    ones.sort_by_key(|p| waits.wall(*p));
    let [left, right] = [panel.left_hand, panel.right_hand].map(|p| p.map(|p| waits.wall(p)));
    let from_right = match (left, right) {
        (Some(left), Some(right)) => left < right,
        (None, Some(_)) => true,
        _ => false,
    };
    if from_right {
        ones.reverse();
    }
    ones
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
        for p in &in_turn(pool, panel) {
            out.insert(*p, at);
            at += digest.parts[*p].cover + kerf;
        }
    }
    out
}
