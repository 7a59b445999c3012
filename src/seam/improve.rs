//! Ruin and recreate: the emptiest panels and what stands near are taken up and laid again; a
//! result that is not much worse is kept, less and less so as the search cools. The budget counts
//! rounds.

use std::collections::BTreeSet;

use super::Progress;
use super::construct::Inserter;
use super::digest::Digest;
use super::pool::{Placed, Pool, UNIT};
use super::random::Random;
use crate::model::seam::Effort;

/// Chance in comparisons while recreating: 0.03 panels.
const NOISE: i64 = 3 * UNIT / 100;
/// Worsening kept at the start and at the end of the search: 0.05 and 0.001 panels.
const HEAT: (i64, i64) = (5 * UNIT / 100, UNIT / 1000);
/// Most parts taken up in a round.
const MOST_TAKEN: usize = 24;

/// Rounds of a search: some for every part, so that small houses end soon and large ones are
/// searched as long in proportion.
fn rounds(digest: &Digest) -> u64 {
    let parts = digest.parts.len() as u64;
    match digest.rules.effort {
        Effort::Crew => 0,
        Effort::Brief => 200 + parts,
        Effort::Usual => 600 + 3 * parts,
        Effort::Long => 20_000 + 300 * parts,
    }
}

/// Improves a layout until it meets `bound` with no avoidable jamb hit, or the budget is spent.
pub(super) fn improve(
    digest: &Digest,
    first: Pool,
    bound: usize,
    watch: &mut dyn FnMut(Progress),
) -> Pool {
    let total = rounds(digest);
    // Lawful insertions never break a rule; only a first layout that did is watched.
    let watched = broken(digest, &first) > 0;
    let (mut now, mut now_cost) = (first.clone(), first.cost());
    let (mut best, mut best_key) = (first.clone(), key(digest, &first, watched));
    let mut inserter =
        Inserter { digest, random: Random::new(digest.rules.seed ^ 0x5eed), noise: NOISE };
    let mut stale = 0u64;
    for round in 0..total {
        if best.panels() <= bound && stale > 200 + total / 20 {
            break;
        }
        if round % 256 == 0 {
            watch(Progress { done: round, of: total, panels: best.panels(), bound });
        }
        let taken = ruin(digest, &now, &mut inserter.random);
        if taken.is_empty() {
            break;
        }
        let before: Vec<(usize, Placed)> =
            taken.iter().filter_map(|p| Some((*p, now.take(digest, *p)?))).collect();
        let order = shuffled(digest, &taken, &mut inserter.random);
        let laid = recreate(&mut inserter, &mut now, &order);
        let heat = HEAT.0 + (HEAT.1 - HEAT.0) * round as i64 / total as i64;
        let worse = inserter.random.below(heat.max(1) as usize) as i64;
        let keep = laid && now.cost() < now_cost + worse;
        if !keep {
            order.iter().for_each(|p| {
                now.take(digest, *p);
            });
            before.into_iter().for_each(|(p, how)| now.place(digest, p, how));
            stale += 1;
            continue;
        }
        now_cost = now.cost();
        let k = key(digest, &now, watched);
        if k < best_key {
            best_key = k;
            best = now.clone();
            stale = 0;
        } else {
            stale += 1;
        }
    }
    watch(Progress { done: total, of: total, panels: best.panels(), bound });
    best
}

/// What is best: rules kept, then panels, then jamb hits, then seams.
fn key(digest: &Digest, pool: &Pool, watched: bool) -> (usize, usize, i64, i64) {
    let broken = if watched { broken(digest, pool) } else { 0 };
    (broken, pool.panels(), pool.hits, pool.seams)
}

/// Parts with a seam that breaks a hard rule.
pub(super) fn broken(digest: &Digest, pool: &Pool) -> usize {
    (0..digest.parts.len())
        .filter(|i| match pool.placed[*i] {
            Some(Placed::Seamed { way, a, .. }) => {
                let lawful = digest.parts[*i].ways.iter().any(|w| w.k == way.k);
                let spans = super::construct::allowed(digest, pool, *i, way);
                !lawful || !spans.iter().any(|s| s.0 <= a && a <= s.1)
            }
            _ => false,
        })
        .count()
}

/// One to three of the emptier panels, and a few parts near what stands in them.
fn ruin(digest: &Digest, pool: &Pool, random: &mut Random) -> Vec<usize> {
    if digest.parts.is_empty() || pool.panels.is_empty() {
        return Vec::new();
    }
    let mut taken = BTreeSet::new();
    for _ in 0..1 + random.below(3) {
        // The emptier a panel the likelier: the emptiest of a few drawn.
        let drawn = (0..4).map(|_| random.below(pool.panels.len()));
        let chosen =
            drawn.filter(|i| !pool.panels[*i].empty()).max_by_key(|i| pool.panels[*i].free);
        let Some(p) = chosen.map(|i| &pool.panels[i]) else { continue };
        taken.extend(p.left_hand.iter().chain(&p.right_hand).chain(&p.ones).copied());
    }
    let seeds: Vec<usize> = taken.iter().copied().collect();
    for s in seeds {
        let near = &digest.parts[s].near;
        for _ in 0..2.min(near.len()) {
            taken.insert(near[random.below(near.len())]);
        }
    }
    // One part from anywhere lets offcuts travel.
    taken.insert(random.below(digest.parts.len()));
    taken.into_iter().take(MOST_TAKEN).collect()
}

/// Longest first, with some disorder.
fn shuffled(digest: &Digest, taken: &[usize], random: &mut Random) -> Vec<usize> {
    let mut keyed: Vec<(i64, usize)> = taken
        .iter()
        .map(|p| {
            let part = &digest.parts[*p];
            let chance = random.below(digest.rules.panel as usize) as i64;
            let first = if part.ways.is_empty() { 0 } else { 4 * digest.rules.panel };
            (-(part.cover.min(2 * digest.rules.panel) + first + chance), *p)
        })
        .collect();
    keyed.sort_unstable();
    keyed.into_iter().map(|k| k.1).collect()
}

/// Lays parts again; false if one found no lawful place (then all of them are to be taken up).
fn recreate(inserter: &mut Inserter, pool: &mut Pool, order: &[usize]) -> bool {
    for part in order {
        match inserter.best(pool, *part) {
            Some(how) => pool.place(inserter.digest, *part, how),
            None => return false,
        }
    }
    true
}
