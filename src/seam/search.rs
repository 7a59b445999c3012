//! The search for fewer panels, gone on with for a little where it leaves seams at openings that no run by
//! itself needs: then each hit weighs more. Panels come first in what is taken.

use super::conflicts::Pins;
use super::hit_sum::OPENINGS_WEIGHED;
use super::improve::{again, improve, key};
use super::least::Least;
use super::part::Digest;
use super::pool::Pool;
use super::rules::Rules;
use crate::model::progress::Progress;
use crate::model::seam::Effort;

/// Runs of a large house. With more of them the search with weights was seen to find no better.
const HOUSE: usize = 450;

/// Whether there are no more runs than a house has.
pub(super) fn is_house(digest: &Digest) -> bool {
    digest.parts.len() <= HOUSE
}

/// The better of both searches. The second begins where the first ends: on 48 houses as many seams stayed at
/// openings as where it began anew, in an eighth less time.
pub(super) fn search(
    digest: &Digest,
    first: &Pool,
    pins: &Pins,
    least: Least,
    watch: &mut dyn FnMut(Progress),
) -> Pool {
    let found = improve(digest, first, pins, least, watch);
    let thorough = matches!(digest.rules.effort, Effort::Usual | Effort::Long);
    if !thorough || !is_house(digest) || found.hits <= digest.unavoidable() {
        return found;
    }
    let rules = Rules { hit_costs: OPENINGS_WEIGHED, ..digest.rules.clone() };
    let weighed = Digest { rules, parts: digest.parts.clone() };
    let from = Pool::of(&weighed, &found.placed, &found.kinds());
    let other = again(&weighed, from, pins, least.panels);
    if key(&other) < key(&found) { Pool::of(digest, &other.placed, &other.kinds()) } else { found }
}
