//! Several lengths of one panel mixed: the house is solved with each alone, and the lightest answer is
//! improved on with all; of these, the one stands for which least is bought in whole cartons. So no more is
//! bought than with the best of one length.

use super::conflicts::Pins;
use super::improve::key;
use super::keep::keep;
use super::least::Least;
use super::looks::Looks;
use super::one_length::{Asked, Solved, one_length};
use super::panel::Panel;
use super::part::Digest;
use super::placed::Placed;
use super::pool::Pool;
use super::search::search;
use super::{answer, cartons, conflicts, construct, mixed_bound, orders, polish};
use crate::model::conflict::Conflict;
use crate::model::progress::Progress;
use crate::model::seam::{Effort, MOST_STOCKS, SeamPlan, SeamProblem, StockWeight};

/// A layout to start from.
struct Start {
    pool: Pool,
    pins: Pins,
    conflicts: Vec<Conflict>,
}

/// Places the seams of a house with panels of several lengths.
pub(super) fn plan(problem: &SeamProblem, watch: &mut dyn FnMut(Progress)) -> SeamPlan {
    let alone: Vec<Solved> = problem
        .rules
        .stocks
        .iter()
        .take(MOST_STOCKS)
        .map(|s| SeamProblem { rules: problem.rules.with_one(s.length), ..problem.clone() })
        .map(|one| one_length(&one, Asked::Layout, watch))
        .collect();
    let problem = &in_order(problem, &alone);
    let digest = Digest::new(problem);
    let mut certificate = mixed_bound::bound(&digest);
    let proof = certificate.mixed.get_or_insert_default();
    let starts = starts(problem, &digest, &alone);
    let Some(best) = best_of(problem, &digest, starts, proof.bound, watch) else {
        return SeamPlan::default();
    };
    let stocks = &problem.rules.stocks[..alone.len()];
    let mut best = least_bought(&digest, stocks, best, &alone);
    keep(&digest, &mut best.pool);
    proof.bought = cartons::bought(stocks, &best.pool);
    proof.weight = i64::try_from(best.pool.bought()).unwrap_or(i64::MAX);
    for (kind, (share, solved)) in proof.stocks.iter_mut().zip(&alone).enumerate() {
        share.length = problem.rules.stocks[kind].length;
        share.weight = digest.rules.weight_of(kind);
        share.panels = best.pool.used(kind);
        share.alone = solved.conflicts.is_empty().then(|| solved.pool.panels());
        share.alone_bought = share.alone.map(|n| problem.rules.stocks[kind].bought(n));
        share.crew = solved.crew;
    }
    let proven = proof.weight <= proof.bound;
    let mut plan = answer::plan(problem, &digest, &best.pool, certificate);
    plan.order = orders::first(problem);
    plan.certificate.proven = proven;
    plan.conflicts = best.conflicts;
    conflicts::number(&mut plan.conflicts);
    // A crew takes one length: the one with which it buys least.
    let crews = alone
        .iter()
        .enumerate()
        .map(|(kind, s)| (s.crew as i64 * digest.rules.weight_of(kind), s.crew));
    plan.crew_panels = crews.min().map_or(0, |c| c.1);
    plan
}

/// The problem with the order of walls of the answer with one length that buys least: it is then one with
/// all lengths too, with no more offcuts waiting.
fn in_order(problem: &SeamProblem, alone: &[Solved]) -> SeamProblem {
    let bought =
        |(stock, s): &(&StockWeight, &Solved)| (s.conflicts.len(), stock.bought(s.pool.panels()));
    let best = problem.rules.stocks.iter().zip(alone).min_by_key(bought);
    let mut one = problem.clone();
    one.waiting.orders = best.map(|(_, s)| s.order.clone()).into_iter().collect();
    one
}

/// The best answer with one length, and a first layout with all where that breaks no rule.
fn starts(problem: &SeamProblem, digest: &Digest, alone: &[Solved]) -> Vec<Start> {
    let mut starts: Vec<Start> =
        alone.iter().enumerate().filter_map(|(kind, s)| taken_over(digest, s, kind)).collect();
    // Fewest broken rules, then the lightest.
    starts.sort_by_key(|s| (s.conflicts.len(), key(&s.pool)));
    let fewest = starts.first().map_or(usize::MAX, |s| s.conflicts.len());
    starts.truncate(1);
    if fewest > 0 {
        // What one length cannot keep, several may.
        let mut pool = construct::lay(digest);
        let (pins, conflicts) = conflicts::settle(problem, digest, &mut pool);
        return vec![Start { pool, pins, conflicts }];
    }
    if problem.rules.effort != Effort::Crew {
        let own = Pins::from(vec![None; digest.parts.len()]);
        let first = construct::lay(digest);
        if conflicts::broken(digest, &first).is_empty() {
            starts.push(Start { pool: first, pins: own, conflicts: Vec::new() });
        }
    }
    starts
}

/// The best that the search makes of these.
fn best_of(
    problem: &SeamProblem,
    digest: &Digest,
    starts: Vec<Start>,
    bound: i64,
    watch: &mut dyn FnMut(Progress),
) -> Option<Start> {
    let bound = usize::try_from(bound).unwrap_or(0);
    let looks = Looks::new(problem, digest);
    let mut best: Option<Start> = None;
    for start in starts {
        let better = match problem.rules.effort {
            Effort::Crew => start.pool,
            _ => search(digest, &start.pool, &start.pins, Least::by_functions(bound), watch),
        };
        let mut pool = cut_down(digest, &better);
        keep(digest, &mut pool);
        polish::polish(digest, &looks, &mut pool, start.pins.clone());
        keep(digest, &mut pool);
        if best.as_ref().is_none_or(|b| key(&pool) < key(&b.pool)) {
            best = Some(Start { pool, ..start });
        }
    }
    best
}

/// Of the best with all lengths and those with each alone, the one for which least is bought in whole
/// cartons; none that breaks more rules.
fn least_bought(digest: &Digest, stocks: &[StockWeight], best: Start, alone: &[Solved]) -> Start {
    let broken = best.conflicts.len();
    let into_cartons = |mut s: Start| {
        // In another order of walls than its own, more may wait than may.
        keep(digest, &mut s.pool);
        Start { pool: cartons::moved(digest, stocks, s.pool), ..s }
    };
    let order = |s: &Start| (s.conflicts.len(), cartons::bought(stocks, &s.pool), key(&s.pool));
    let others = alone.iter().enumerate().filter_map(|(kind, s)| taken_over(digest, s, kind));
    let mut least = into_cartons(best);
    for other in others.filter(|s| s.conflicts.len() <= broken).map(into_cartons) {
        if order(&other) < order(&least) {
            least = other;
        }
    }
    least
}

/// An answer with panels of one kind, as a layout with all; `None` where it stands as no layout with
/// all can.
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
    let lightest = |p: &Panel| {
        let holds = |kind: &usize| p.free + rules.panel_of(*kind) >= rules.panel_of(p.kind);
        let lighter = |kind: &usize| rules.weight_of(*kind) < rules.weight_of(p.kind);
        let others = rules.kinds().filter(lighter).filter(holds);
        others.min_by_key(|kind| rules.weight_of(*kind)).unwrap_or(p.kind)
    };
    let kinds: Vec<usize> = pool.panels.iter().map(lightest).collect();
    Pool::of(digest, &pool.placed, &kinds)
}
