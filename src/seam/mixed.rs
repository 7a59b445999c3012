//! Two lengths of one panel mixed: the house is solved with either alone, and the lighter answer is
//! improved on with both. So the mixed answer is never heavier than the better of the two.

use super::conflicts::Pins;
use super::digest::Digest;
use super::improve::{improve, key};
use super::looks::Looks;
use super::pool::{Placed, Pool};
use super::{Solved, answer, conflicts, construct, mixed_bound, one_length, polish};
use crate::model::progress::Progress;
use crate::model::seam::{Conflict, Effort, SeamPlan, SeamProblem, SecondStock, StockShare};

/// A layout to start from.
struct Start {
    pool: Pool,
    pins: Pins,
    conflicts: Vec<Conflict>,
}

/// Places the seams of a house with panels of two lengths.
pub(super) fn plan(
    problem: &SeamProblem,
    second: SecondStock,
    watch: &mut dyn FnMut(Progress),
) -> SeamPlan {
    let digest = Digest::new(problem);
    let alone = [problem.rules.stock, second.length].map(|stock| {
        let mut one = problem.clone();
        one.rules.stock = stock;
        one.rules.second = None;
        one_length(&one, watch)
    });
    let mut certificate = mixed_bound::bound(&digest);
    let proof = certificate.mixed.get_or_insert_default();
    let bound = usize::try_from(proof.bound).unwrap_or(0);
    let mut starts: Vec<Start> =
        alone.iter().enumerate().filter_map(|(kind, s)| taken_over(&digest, s, kind)).collect();
    // Fewest broken rules, then the lightest.
    starts.sort_by_key(|s| (s.conflicts.len(), key(&s.pool)));
    let fewest = starts.first().map_or(usize::MAX, |s| s.conflicts.len());
    starts.truncate(1);
    if problem.rules.effort != Effort::Crew || starts.is_empty() {
        let own = Pins::from(vec![None; digest.parts.len()]);
        let first = construct::lay(&digest);
        let lawful = conflicts::broken(&digest, &first).is_empty();
        if lawful && fewest > 0 {
            starts.clear();
        }
        if lawful || starts.is_empty() {
            starts.push(Start { pool: first, pins: own, conflicts: Vec::new() });
        }
    }
    let looks = Looks::new(problem, &digest);
    let mut best: Option<Start> = None;
    for start in starts {
        let better = match problem.rules.effort {
            Effort::Crew => start.pool,
            _ => improve(&digest, &start.pool, &start.pins, bound, watch),
        };
        let mut pool = cut_down(&digest, &better);
        polish::polish(&digest, &looks, &mut pool, start.pins.clone());
        if best.as_ref().is_none_or(|b| key(&pool) < key(&b.pool)) {
            best = Some(Start { pool, ..start });
        }
    }
    let Some(best) = best else { return SeamPlan::default() };
    proof.weight = i64::try_from(best.pool.bought()).unwrap_or(i64::MAX);
    proof.stocks = [0, 1].map(|kind| StockShare {
        length: [problem.rules.stock, second.length][kind],
        weight: digest.rules.weight(kind),
        panels: best.pool.used(kind),
        alone: alone[kind].conflicts.is_empty().then(|| alone[kind].pool.panels()),
        crew: alone[kind].crew,
    });
    let proven = proof.weight <= proof.bound;
    let mut plan = answer::plan(problem, &digest, &best.pool, certificate);
    plan.certificate.proven = proven;
    plan.conflicts = best.conflicts;
    conflicts::number(&mut plan.conflicts);
    // A crew takes one length: the one with which it buys less.
    let crews = alone
        .iter()
        .enumerate()
        .map(|(kind, s)| (s.crew as i64 * digest.rules.weight(kind), s.crew));
    plan.crew_panels = crews.min().map_or(0, |c| c.1);
    plan
}

/// An answer with panels of one kind, as a layout with two; `None` where it stands as no layout
/// with two can be told to.
fn taken_over(digest: &Digest, solved: &Solved, kind: usize) -> Option<Start> {
    let as_mixed = |part: usize, way: usize, a: i64| {
        let old = solved.digest.parts.get(part)?.ways.get(way)?;
        digest.parts.get(part)?.ways.iter().position(|w| {
            let same_wholes = old.k == 2 || w.whole == kind;
            w.k == old.k && w.sum == old.sum && same_wholes && w.least <= a && a <= w.most
        })
    };
    let mut placed = Vec::new();
    for (part, how) in solved.pool.placed.iter().enumerate() {
        placed.push(match *how {
            Some(Placed::Seamed { way, a, first, last }) => {
                Some(Placed::Seamed { way: as_mixed(part, way, a)?, a, first, last })
            }
            other => other,
        });
    }
    let pins = solved.pins.iter().enumerate().map(|(part, pin)| match pin {
        None => Some(None),
        Some((way, a)) => Some(Some((as_mixed(part, *way, *a)?, *a))),
    });
    let pins = pins.collect::<Option<Vec<_>>>()?;
    let kinds = vec![kind; solved.pool.panels.len()];
    let pool = Pool::of(digest, &placed, &kinds);
    Some(Start { pool, pins, conflicts: solved.conflicts.clone() })
}

/// The same layout with each cut panel of the lightest kind that holds what is cut from it.
fn cut_down(digest: &Digest, pool: &Pool) -> Pool {
    let rules = &digest.rules;
    let kinds: Vec<usize> = pool
        .panels
        .iter()
        .map(|p| {
            let other = 1 - p.kind;
            let fits = p.free + rules.panel_of(other) >= rules.panel_of(p.kind);
            if fits && rules.weight(other) < rules.weight(p.kind) { other } else { p.kind }
        })
        .collect();
    Pool::of(digest, &pool.placed, &kinds)
}
