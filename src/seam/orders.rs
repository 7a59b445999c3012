//! The order of walls: of those asked for, the one in which the house takes least.

use std::collections::BTreeSet;

use super::conflicts::{self, Pins};
use super::construct;
use super::improve::{again, key};
use super::part::Digest;
use super::pool::Pool;
use crate::cores;
use crate::model::conflict::Conflict;
use crate::model::seam::SeamProblem;

/// Most orders that are tried.
const TRIED: usize = 16;

/// The first of the orders asked for, walls that it leaves out after it, each wall once.
pub(super) fn first(problem: &SeamProblem) -> Vec<usize> {
    whole(problem, problem.waiting.orders.first().map_or(&[], Vec::as_slice))
}

/// An order with all walls of the problem that have runs, and no other.
fn whole(problem: &SeamProblem, order: &[usize]) -> Vec<usize> {
    let runs = problem.elevations.iter().flat_map(|e| &e.courses).flat_map(|c| &c.runs);
    let mut left: BTreeSet<usize> = runs.map(|r| r.wall).collect();
    let mut out: Vec<usize> = order.iter().copied().filter(|w| left.remove(w)).collect();
    out.extend(left);
    out
}

/// A house with one order of walls alone, and a layout to start from.
pub(super) struct Settled {
    pub(super) problem: SeamProblem,
    pub(super) digest: Digest,
    pub(super) pool: Pool,
    pub(super) pins: Pins,
    pub(super) conflicts: Vec<Conflict>,
}

impl Settled {
    /// A first whole layout.
    pub(super) fn laid(problem: SeamProblem, digest: Digest) -> Self {
        let mut pool = construct::lay(&digest);
        let (pins, conflicts) = conflicts::settle(&problem, &digest, &mut pool);
        Settled { problem, digest, pool, pins, conflicts }
    }

    /// The same after a short search.
    fn searched(self, bound: usize) -> Self {
        let pool = again(&self.digest, self.pool, &self.pins, bound);
        Settled { pool, ..self }
    }

    /// Whether no order takes less.
    fn is_least(&self, bound: usize) -> bool {
        self.pool.bought() <= bound && self.pool.hits <= self.digest.unavoidable()
    }
}

/// The order of those asked for in which a short search takes least, the first where the order counts for
/// nothing; `bound` is what no layout is under.
pub(super) fn settled(first: Settled, bound: usize) -> Settled {
    if first.digest.rules.travel.is_none() {
        return first;
    }
    let problem = &first.problem;
    // Walls sided the other way round meet at the same corners: as much waits between them.
    let mut seen: BTreeSet<Vec<usize>> = BTreeSet::new();
    let mut new = |order: &Vec<usize>| {
        let back: Vec<usize> = order.iter().rev().copied().collect();
        seen.insert(back.min(order.clone()))
    };
    new(&self::first(problem));
    let orders = problem.waiting.orders.iter().take(TRIED).map(|o| whole(problem, o));
    let others: Vec<Vec<usize>> = orders.filter(new).collect();
    if others.is_empty() {
        return first;
    }
    let problem = first.problem.clone();
    let mut best = first.searched(bound);
    if best.is_least(bound) {
        return best;
    }
    let searched = |order: &Vec<usize>| {
        let mut problem = problem.clone();
        problem.waiting.orders = vec![order.clone()];
        let digest = Digest::new(&problem);
        Settled::laid(problem, digest).searched(bound)
    };
    for other in cores::each(&others, searched) {
        if best.is_least(bound) {
            break;
        }
        if key(&other.pool) < key(&best.pool) {
            best = other;
        }
    }
    best
}
