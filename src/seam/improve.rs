//! Ruin and recreate: the emptiest panels and what stands near are taken up and laid again; a
//! result that is not much worse is kept, less and less so as the search cools. The budget counts
//! rounds.

use super::Progress;
use super::conflicts::Pins;
use super::digest::Digest;
use super::insert::Inserter;
use super::pool::{Placed, Pool, UNIT};
use super::random::Random;
use crate::model::seam::Effort;

/// Chance in comparisons while recreating: 0.03 panels.
const NOISE: i64 = 3 * UNIT / 100;
/// Worsening kept at the start and at the end of the search: 0.016 and 0.001 panels.
const HEAT: (i64, i64) = (16 * UNIT / 1000, UNIT / 1000);
/// Share of panels, of 100, drawn from the emptiest ones; the others are the emptiest of [`DRAWN`].
const EMPTIEST: usize = 45;
const DRAWN: usize = 8;
/// Most parts taken up in a round.
const MOST_TAKEN: usize = 24;

/// Rounds that jamb hits are still worked at when panels meet the bound.
const PATIENCE: u64 = 1000;
/// Parts beyond this many get an eighth of the rounds.
const LARGE: u64 = 1000;

/// Rounds of a search: some for every part, so that small houses end soon and large ones are
/// searched as long in proportion.
fn rounds(digest: &Digest) -> u64 {
    let parts = counted(digest);
    match digest.rules.effort {
        Effort::Crew => 0,
        Effort::Brief => 300 + 20 * parts,
        Effort::Usual => 3000 + 1000 * parts,
        Effort::Long => 20_000 + 10_000 * parts,
    }
}

/// Parts as budgets count them.
pub(super) fn counted(digest: &Digest) -> u64 {
    let parts = digest.parts.len() as u64;
    parts.min(LARGE) + parts.saturating_sub(LARGE) / 8
}

/// Chains that the rounds are shared among: a few short ones from the same first layout are less
/// at chance's mercy than a long one. Large houses even chance out by themselves.
fn chains(digest: &Digest) -> u64 {
    match digest.rules.effort {
        Effort::Crew | Effort::Brief => 1,
        _ if digest.parts.len() as u64 > LARGE => 1,
        Effort::Usual => 3,
        Effort::Long => 6,
    }
}

/// Improves a layout until it meets `bound` with no avoidable jamb hit, or a `share`th of the budget
/// is spent.
pub(super) fn improve(
    digest: &Digest,
    first: Pool,
    pins: Pins,
    bound: usize,
    share: u64,
    watch: &mut dyn FnMut(Progress),
) -> Pool {
    let total = rounds(digest) / share;
    let chains = if share == 1 { chains(digest) } else { 1 };
    let least = (bound, digest.unavoidable());
    let mut best: Option<Best> = None;
    for chain in 0..chains {
        let span =
            Span { from: chain * (total / chains), rounds: total / chains, of: total, chain };
        let found = one_chain(digest, first.clone(), &pins, least, &span, watch);
        if best.as_ref().is_none_or(|b| found.key < b.key) {
            best = Some(found);
        }
        if best.as_ref().is_some_and(|b| b.key.0 <= bound) {
            break;
        }
    }
    let panels = best.as_ref().map_or(0, |b| b.key.0);
    watch(Progress { done: total, of: total, panels, bound });
    best.map_or(first, |b| Pool::of(digest, &b.placed))
}

/// The rounds of one chain among all.
struct Span {
    from: u64,
    rounds: u64,
    of: u64,
    chain: u64,
}

fn one_chain(
    digest: &Digest,
    first: Pool,
    pins: &Pins,
    least: (usize, i64),
    span: &Span,
    watch: &mut dyn FnMut(Progress),
) -> Best {
    let (total, bound) = (span.rounds, least.0);
    let seed = digest.rules.seed ^ 0x5eed ^ (span.chain << 32);
    let mut now = first;
    let mut best = Best { placed: now.placed.clone(), key: key(&now), stale: Vec::new(), round: 0 };
    let mut search = Search {
        inserter: Inserter::new(digest, Random::new(seed), NOISE),
        taken: Vec::new(),
        is_taken: vec![false; digest.parts.len()],
    };
    search.inserter.pinned = pins.clone();
    for round in 0..total {
        // Some hits may be unavoidable together though each run alone could do without.
        let stale = round - best.round > PATIENCE + total / 50;
        if (best.key.0, best.key.1) <= least || best.key.0 <= bound && stale {
            break;
        }
        if round % 256 == 0 {
            let done = span.from + round;
            watch(Progress { done, of: span.of, panels: best.key.0, bound });
        }
        if !search.ruin(digest, &now) {
            break;
        }
        let cost = now.cost();
        let before: Vec<(usize, Placed)> =
            search.taken.iter().filter_map(|p| Some((*p, now.take(digest, *p)?))).collect();
        search.shuffle(digest);
        let laid = search.recreate(&mut now);
        let heat = HEAT.0 + (HEAT.1 - HEAT.0) * round as i64 / total as i64;
        let worse = search.inserter.random.below(heat.max(1) as usize) as i64;
        if !laid || now.cost() >= cost + worse {
            for p in &search.taken {
                now.take(digest, *p);
            }
            before.into_iter().for_each(|(p, how)| now.place(digest, p, how));
            continue;
        }
        best.stale.extend(&search.taken);
        let k = key(&now);
        if k < best.key {
            best.key = k;
            best.round = round;
            best.stale.drain(..).for_each(|p| best.placed[p] = now.placed[p]);
        } else if best.stale.len() > 4 * digest.parts.len() + 100 {
            best.stale.sort_unstable();
            best.stale.dedup();
        }
    }
    best
}

/// The best layout so far, the parts that may stand otherwise by now, and when it was found.
struct Best {
    placed: Vec<Option<Placed>>,
    key: (usize, i64, i64),
    stale: Vec<usize>,
    round: u64,
}

/// What is best: panels, then jamb hits, then seams.
fn key(pool: &Pool) -> (usize, i64, i64) {
    (pool.panels(), pool.hits, pool.seams)
}

struct Search<'a> {
    inserter: Inserter<'a>,
    taken: Vec<usize>,
    is_taken: Vec<bool>,
}

impl Search<'_> {
    /// Chooses one or two of the emptier panels, and a few parts near what stands in them; false
    /// if there is nothing.
    fn ruin(&mut self, digest: &Digest, pool: &Pool) -> bool {
        self.taken.iter().for_each(|p| self.is_taken[*p] = false);
        self.taken.clear();
        if digest.parts.is_empty() || pool.panels.is_empty() {
            return false;
        }
        for _ in 0..1 + self.inserter.random.below(2) {
            if let Some(p) = self.emptier(pool) {
                let parts: Vec<usize> = pool.panels[p].parts().collect();
                parts.into_iter().for_each(|p| self.add(p));
            }
        }
        for i in 0..self.taken.len() {
            let near = &digest.parts[self.taken[i]].near;
            if !near.is_empty() {
                let q = near[self.inserter.random.below(near.len())];
                self.add(q);
            }
        }
        // One part from anywhere lets offcuts travel.
        let any = self.inserter.random.below(digest.parts.len());
        self.add(any);
        true
    }

    fn add(&mut self, part: usize) {
        if !self.is_taken[part] && self.taken.len() < MOST_TAKEN {
            self.is_taken[part] = true;
            self.taken.push(part);
        }
    }

    /// A panel, the likelier the more room it has.
    fn emptier(&mut self, pool: &Pool) -> Option<usize> {
        let random = &mut self.inserter.random;
        if random.below(100) < EMPTIEST {
            // Low ranks are likelier than high ones.
            let mut rank = random.below(4) * random.below(4);
            let mut shelf = pool.any.under(i64::MAX);
            while let Some(s) = shelf {
                for panel in pool.any.all_on(s) {
                    if rank == 0 {
                        return Some(panel);
                    }
                    rank -= 1;
                }
                shelf = pool.any.under(s - 1);
            }
        }
        let drawn = (0..DRAWN).map(|_| random.below(pool.panels.len()));
        drawn.filter(|i| !pool.panels[*i].empty()).max_by_key(|i| pool.panels[*i].free)
    }

    /// Seamed and longest first, with some disorder.
    fn shuffle(&mut self, digest: &Digest) {
        let panel = digest.rules.panel;
        let mut keyed: Vec<(i64, usize)> = self
            .taken
            .iter()
            .map(|p| {
                let part = &digest.parts[*p];
                let chance = self.inserter.random.below(panel as usize) as i64;
                let first = if part.ways.is_empty() { 0 } else { 4 * panel };
                (-(part.cover.min(2 * panel) + first + chance), *p)
            })
            .collect();
        keyed.sort_unstable();
        self.taken.clear();
        self.taken.extend(keyed.into_iter().map(|k| k.1));
    }

    /// Lays parts again; false if one found no lawful place (then all of them are to be taken up).
    fn recreate(&mut self, pool: &mut Pool) -> bool {
        for part in &self.taken {
            match self.inserter.best(pool, *part) {
                Some(how) => pool.place(self.inserter.digest, *part, how),
                None => return false,
            }
        }
        true
    }
}
