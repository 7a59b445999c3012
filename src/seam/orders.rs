//! The order of walls: of those asked for, the one in which the house takes least.

use std::collections::BTreeSet;

use super::conflicts::{self, Pins};
use super::construct;
use super::improve::{Key, again, key};
use super::part::Digest;
use super::pool::Pool;
use crate::model::seam::{Effort, SeamProblem};

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

/// The problem with one order alone, that in which a short search takes least; none where that is the first, of
/// which a first layout is given, or where the order counts for nothing.
pub(super) fn settled(
    problem: &SeamProblem,
    (digest, laid, pins): (&Digest, &Pool, &Pins),
) -> Option<SeamProblem> {
    digest.rules.travel?;
    let mut seen = BTreeSet::from([first(problem)]);
    let orders = problem.waiting.orders.iter().take(TRIED).map(|o| whole(problem, o));
    let others: Vec<Vec<usize>> = orders.filter(|o| seen.insert(o.clone())).collect();
    if others.is_empty() {
        return None;
    }
    let mut best: Option<(Key, SeamProblem)> = None;
    let mut least = key(&again(digest, laid.clone(), pins, 0));
    for order in others {
        let mut one = problem.clone();
        one.waiting.orders = vec![order];
        let found = key(&tried(&one));
        if found < least {
            least = found;
            best = Some((found, one));
        }
    }
    best.map(|b| b.1)
}

/// As [`settled`], without a first layout: the problem with the order that is taken.
pub(super) fn one_order(problem: &SeamProblem) -> SeamProblem {
    let mut one = problem.clone();
    one.waiting.orders = vec![first(problem)];
    if problem.waiting.is_free() || problem.rules.effort == Effort::Crew {
        return one;
    }
    // What one length takes tells which order is good for several.
    let alone =
        SeamProblem { rules: problem.rules.with_one(problem.rules.stock()), ..problem.clone() };
    let digest = Digest::new(&alone);
    let mut laid = construct::lay(&digest);
    let pins = conflicts::settle(&alone, &digest, &mut laid).0;
    if let Some(settled) = settled(&alone, (&digest, &laid, &pins)) {
        one.waiting.orders = settled.waiting.orders;
    }
    one
}

/// A layout after a short search.
fn tried(problem: &SeamProblem) -> Pool {
    let digest = Digest::new(problem);
    let mut first = construct::lay(&digest);
    let pins: Pins = conflicts::settle(problem, &digest, &mut first).0;
    again(&digest, first, &pins, 0)
}
