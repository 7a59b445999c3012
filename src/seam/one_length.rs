//! A house with panels of one length.

use super::conflicts::Pins;
use super::improve::again;
use super::keep::keep;
use super::least::Least;
use super::orders::{self, Settled};
use super::part::Digest;
use super::pattern_bound::{FIRST_LOOK, PatternBound, last_look};
use super::placed::Placed;
use super::pool::Pool;
use super::search::search;
use super::{certificate, conflicts, crew, looks, polish};
use crate::cores;
use crate::model::conflict::Conflict;
use crate::model::progress::Progress;
use crate::model::seam::{Certificate, Effort, SeamProblem};

/// A house solved with panels of one length.
pub(super) struct Solved {
    pub(super) digest: Digest,
    pub(super) pool: Pool,
    pub(super) pins: Pins,
    pub(super) conflicts: Vec<Conflict>,
    pub(super) certificate: Certificate,
    /// Panels that the careful crew takes.
    pub(super) crew: usize,
    /// Panels that it takes when runs that one panel covers may be seamed too.
    pub(super) other_policy: Option<usize>,
    /// The order of walls.
    pub(super) order: Vec<usize>,
}

/// What is asked of a layout.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Asked {
    /// What the policy for short runs costs as well.
    All,
    /// A layout alone.
    Layout,
}

/// Solves a house with the first length of its rules.
pub(super) fn one_length(
    problem: &SeamProblem,
    asked: Asked,
    watch: &mut dyn FnMut(Progress),
) -> Solved {
    let digest = Digest::new(problem);
    let certificate = certificate::bound(&digest);
    let bound = certificate.bound;
    watch(Progress { done: 0, of: 1, panels: 0, bound });
    let mut by_crew = crew::lay(&digest);
    let crew = by_crew.panels();
    if problem.rules.effort == Effort::Crew {
        // Where going on from offcut to offcut breaks a rule, courses are laid as the rules want.
        let (pins, conflicts) = conflicts::settle(problem, &digest, &mut by_crew);
        keep(&digest, &mut by_crew);
        let order = orders::first(problem);
        return Solved {
            digest,
            pool: by_crew,
            pins,
            conflicts,
            certificate,
            crew,
            other_policy: None,
            order,
        };
    }
    let first = Settled::laid(problem.clone(), digest);
    watch(Progress { done: 0, of: 1, panels: first.pool.bought(), bound });
    let mut prices = PatternBound::new(&first.digest, bound);
    let thorough = matches!(problem.rules.effort, Effort::Usual | Effort::Long);
    if thorough {
        prices.raise(first.pool.panels(), FIRST_LOOK);
    }
    let least = Least { panels: prices.bound(), by_functions: bound };
    let settled = orders::settled(first, least.panels);
    let Settled { problem, digest, pool: first, pins, conflicts } = settled;
    let problem = &problem;
    let mut pool = search(&digest, &first, &pins, least, watch);
    keep(&digest, &mut pool);
    let placed = pool.placed.clone();
    let aside =
        || (asked == Asked::All).then(|| with_short_runs_seamed(problem, &placed, &pins)).flatten();
    let (other_policy, ()) = cores::beside(aside, || {
        let looks = looks::Looks::new(problem, &digest);
        polish::polish(&digest, &looks, &mut pool, pins.clone());
        keep(&digest, &mut pool);
    });
    let other_policy = other_policy.flatten();
    if thorough {
        prices.raise(pool.panels(), last_look(&digest));
    }
    let (certificate, order) = (prices.certificate(certificate), orders::first(problem));
    Solved { digest, pool, pins, conflicts, certificate, crew, other_policy, order }
}

/// Panels when runs that one panel covers may be seamed too: what the default policy costs. The
/// search starts from the answer under the default policy and takes a quarter of a chain's rounds.
fn with_short_runs_seamed(
    problem: &SeamProblem,
    best: &[Option<Placed>],
    pins: &Pins,
) -> Option<usize> {
    if problem.rules.seam_short_runs {
        return None;
    }
    let mut other = problem.clone();
    other.rules.seam_short_runs = true;
    let digest = Digest::new(&other);
    let bound = certificate::bound(&digest).bound;
    // Parts and the ways of seamed ones are the same under both policies.
    let first = Pool::of(&digest, best, &[]);
    let mut found = again(&digest, first, pins, bound);
    keep(&digest, &mut found);
    Some(found.panels())
}
