//! How many rounds a search goes on for: some for every part, by the effort asked for.

use super::part::Digest;
use crate::model::seam::Effort;

/// Parts beyond this many get an eighth of the rounds, and one chain: large houses even chance out
/// by themselves.
pub(super) const LARGE: u64 = 1000;
/// Rounds for every part of each of two chains side by side.
const TWIN: u64 = 125;

/// Rounds of the first chain, and of each of some more that go on from the best: some for every
/// part, so that small houses end soon and large ones are searched as long in proportion.
pub(super) fn rounds(digest: &Digest) -> (u64, Vec<u64>) {
    let parts = counted(digest);
    let large = digest.parts.len() as u64 > LARGE;
    match digest.rules.effort {
        Effort::Crew => (0, Vec::new()),
        Effort::Brief if large => (14 * parts, Vec::new()),
        Effort::Brief if digest.rules.mixed() => (300 + 80 * parts, Vec::new()),
        Effort::Brief => (300 + 20 * parts, Vec::new()),
        Effort::Usual if large => (550 * parts, Vec::new()),
        Effort::Long if large => (5500 * parts, Vec::new()),
        // Finer steps give each part more places to try, as several lengths do.
        Effort::Usual if !digest.rules.steps.is_tape() => (300 + 50 * parts, vec![350 * parts; 6]),
        // Where few offcuts may wait, a second stage does as well as three, and two chains as well as one twice
        // as long: 36 houses took 7,604 panels for 7,600, on two cores in half the time.
        Effort::Usual if side_by_side(digest) => (300 + 50 * parts, vec![TWIN * parts]),
        Effort::Usual => (300 + 50 * parts, vec![350 * parts; 3]),
        Effort::Long => (300 + 50 * parts, vec![2500 * parts; 4]),
    }
}

/// Whether two chains go on side by side, by other chances.
pub(super) fn side_by_side(digest: &Digest) -> bool {
    digest.rules.travel.is_some() && digest.rules.effort == Effort::Usual
}

/// Parts as budgets count them.
pub(super) fn counted(digest: &Digest) -> u64 {
    let parts = digest.parts.len() as u64;
    parts.min(LARGE) + parts.saturating_sub(LARGE) / 8
}
