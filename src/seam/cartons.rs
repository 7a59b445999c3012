//! What is bought: whole cartons of each length. The lightest panels need not be the cheapest cartons: one
//! panel of a second length buys a carton of it. So of the answers with all lengths and with each alone,
//! each moved into cartons that are bought anyway, the one that buys least stands.

use super::part::Digest;
use super::pool::Pool;
use crate::model::seam::StockWeight;

/// Weight of the whole cartons that hold so many panels of each kind.
fn cost(stocks: &[StockWeight], used: &[usize]) -> i64 {
    stocks.iter().zip(used).map(|(s, n)| s.bought(*n)).fold(0, i64::saturating_add)
}

/// Weight of the whole cartons that hold the panels of a layout.
pub(super) fn bought(stocks: &[StockWeight], pool: &Pool) -> i64 {
    let used: Vec<usize> = (0..stocks.len()).map(|kind| pool.used(kind)).collect();
    cost(stocks, &used)
}

/// The same layout with cut panels of kinds by which fewer cartons are bought: what is cut from a panel may
/// come from any other that holds it. Whole panels between the ends of a run stay, since seams hang on
/// their length.
pub(super) fn moved(digest: &Digest, stocks: &[StockWeight], pool: Pool) -> Pool {
    let mut kinds = pool.kinds();
    let mut used: Vec<usize> = (0..stocks.len()).map(|kind| pool.used(kind)).collect();
    let mut now = cost(stocks, &used);
    let mut any = false;
    while let Some((least, from, to, panels)) = best(digest, stocks, &pool, (&kinds, &used)) {
        if least >= now {
            break;
        }
        used[from] -= panels.len();
        used[to] += panels.len();
        panels.into_iter().for_each(|p| kinds[p] = to);
        (now, any) = (least, true);
    }
    if any { Pool::of(digest, &pool.placed, &kinds) } else { pool }
}

/// A move: what is bought after it, from which kind, to which, and the panels.
type Move = (i64, usize, usize, Vec<usize>);

/// The move after which least is bought; of equal ones the first that moves fewest.
fn best(
    digest: &Digest,
    stocks: &[StockWeight],
    pool: &Pool,
    (kinds, used): (&[usize], &[usize]),
) -> Option<Move> {
    let mut best: Option<Move> = None;
    for from in 0..stocks.len() {
        for to in (0..stocks.len()).filter(|to| *to != from) {
            let fit = fitting(digest, pool, kinds, (from, to));
            for n in 1..=fit.len() {
                let mut after = used.to_vec();
                after[from] -= n;
                after[to] += n;
                let cost = cost(stocks, &after);
                if best.as_ref().is_none_or(|b| (cost, n) < (b.0, b.3.len())) {
                    best = Some((cost, from, to, fit[..n].to_vec()));
                }
            }
        }
    }
    best
}

/// Cut panels of one kind whose pieces fit another.
fn fitting(
    digest: &Digest,
    pool: &Pool,
    kinds: &[usize],
    (from, to): (usize, usize),
) -> Vec<usize> {
    let rules = &digest.rules;
    let holds = |i: usize| {
        let p = &pool.panels[i];
        !p.empty() && p.free + rules.panel_of(to) >= rules.panel_of(p.kind)
    };
    (0..pool.panels.len()).filter(|i| kinds[*i] == from && holds(*i)).collect()
}
