//! What it costs that fewer offcuts wait: the house laid out for several numbers of them.

use crate::finding::Refusal;
use crate::job::{Job, WaitingLimit};
use crate::layout::set::LaidSets;
use crate::model::saw::WaitingPrice;

/// How many offcuts are let wait, rising; last any number.
const TRIED: [WaitingLimit; 7] = [
    WaitingLimit::at_most(0),
    WaitingLimit::at_most(2),
    WaitingLimit::at_most(4),
    WaitingLimit::at_most(8),
    WaitingLimit::at_most(16),
    WaitingLimit::at_most(32),
    WaitingLimit::ANY,
];

/// The table, with a line of its own for what the job asks for; `lay` lays the drawing out by a job.
///
/// # Errors
/// As `lay`.
pub fn waiting_prices(
    job: &Job,
    mut lay: impl FnMut(&Job) -> Result<LaidSets, Refusal>,
) -> Result<Vec<WaitingPrice>, Refusal> {
    let asked = job.seams.waiting;
    let mut tried = TRIED.to_vec();
    if !tried.contains(&asked) {
        tried.push(asked);
    }
    tried.sort_by_key(|w| w.most().unwrap_or(usize::MAX));
    let mut out = Vec::new();
    for waiting in tried {
        let mut own = job.clone();
        own.seams.waiting = waiting;
        let sets = lay(&own)?;
        let plans = || sets.iter().map(|s| &s.layout.work.offcuts);
        out.push(WaitingPrice {
            waiting: waiting.most(),
            panels: sets.iter().map(|s| s.layout.panels.len()).sum(),
            shared: plans().map(|p| p.between_walls).sum(),
            most: plans().map(|p| p.most_waiting()).max().unwrap_or(0),
            in_force: waiting == asked,
        });
    }
    Ok(out)
}
