//! Where panels end: seams of every run, and the cutting of panels to pieces, for the whole house.
//!
//! Words: a run's **cover** is what its panels must span; with `k` pieces the two end pieces sum to
//! `S(k) = cover + (k-1) lap - (k-2) panel`, the `k-2` between are whole panels. The length `a` of
//! the first piece is the one free number of a run. A **left-hand** piece begins a run (its right
//! end is the factory's), a **right-hand** piece ends one, a **seamless** piece is a run by itself.
//! Everything is counted in whole steps: sixteenths of an inch, or finer ones where
//! a length of the job lies between those.
//!
//! Where the job mixes panels of several lengths, whole and end pieces may be of any **kind**, and what
//! is kept least is their **weight**: length, or cost (`mixed`, `mixed_bound`).
//!
//! The simple strategy ([`Effort::Crew`]) works as a careful crew does; the strong one constructs
//! greedily, then ruins and recreates. Both answer the same problem in the same form.

mod answer;
pub mod at_hand;
mod budget;
mod cartons;
pub mod certificate;
mod conflicts;
mod construct;
mod crew;
mod differences;
mod digest;
mod emptier;
mod fills;
mod hit_bound;
mod hit_sum;
mod hits;
mod improve;
mod insert;
mod keep;
mod least;
mod looks;
mod mixed;
mod mixed_bound;
mod one_length;
mod options;
mod orders;
mod panel;
mod part;
mod pattern_bound;
mod placed;
mod polish;
mod pool;
mod pool_kind;
mod priced;
mod random;
mod rules;
mod search;
mod shelf;
mod slide;
mod stagger;
mod sums;
mod waits;
mod wall;

use self::one_length::{Asked, Solved, one_length};
use crate::model::progress::Progress;
use crate::model::seam::{SeamPlan, SeamProblem};

/// Places the seams of a house. Total, and the same for the same problem on every machine: budgets
/// count rounds, not time.
pub fn plan(problem: &SeamProblem, watch: &mut dyn FnMut(Progress)) -> SeamPlan {
    solved(problem, Asked::All, watch)
}

/// The same for its number of panels: what the policy for short runs costs is not reckoned.
pub fn count(problem: &SeamProblem) -> SeamPlan {
    solved(problem, Asked::Layout, &mut |_| {})
}

fn solved(problem: &SeamProblem, asked: Asked, watch: &mut dyn FnMut(Progress)) -> SeamPlan {
    if problem.rules.stocks.len() > 1 {
        return mixed::plan(problem, watch);
    }
    let solved = one_length(problem, asked, watch);
    let Solved { digest, pool, certificate, order, .. } = &solved;
    let mut settled = problem.clone();
    settled.waiting.orders = vec![order.clone()];
    let mut plan = answer::plan(&settled, digest, pool, certificate.clone());
    plan.order.clone_from(order);
    plan.crew_panels = solved.crew;
    plan.other_policy_panels = solved.other_policy;
    plan.conflicts = solved.conflicts;
    conflicts::number(&mut plan.conflicts);
    plan
}
