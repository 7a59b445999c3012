//! Ruin and recreate: the emptiest panels and what stands near are taken up and laid again; a
//! result that is not much worse is kept, less and less so as the search cools. The budget counts
//! rounds.

use super::budget::{LARGE, rounds, side_by_side};
use super::conflicts::Pins;
use super::emptier::beside;
use super::hit_sum::{Hits, OPENINGS_WEIGHED};
use super::hits::hit_more;
use super::insert::Inserter;
use super::least::Least;
use super::part::Digest;
use super::placed::Placed;
use super::pool::Pool;
use super::random::Random;
use super::rules::UNIT;
use crate::cores;
use crate::model::progress::Progress;

/// Chance in comparisons while recreating: 0.03 panels.
const NOISE: i64 = 3 * UNIT / 100;
/// Worsening kept at the start of a short search of a first layout: 0.2 panels.
const HOT: i64 = UNIT / 5;
/// The same where the layout is good already: 0.03 panels.
const WARM: i64 = 3 * UNIT / 100;
/// The same where the rounds are too few, or the house too large, to cool from more: 0.016 panels.
const MILD: i64 = 16 * UNIT / 1000;
/// Worsening kept at the end: 0.001 panels.
const COLD: i64 = UNIT / 1000;
/// Most panels ruined in a round.
const RUINED: usize = 3;
/// Share of parts, of 100, that a neighbor is taken up with.
const BESIDE: usize = 50;
/// Most parts taken up in a round.
const MOST_TAKEN: usize = 24;

/// Sets the chances of a second chain apart from those of all first ones.
const SECOND: u64 = 100;

/// Rounds after which hits are looked for again, where they are worked at.
const LOOKED: u64 = 32;

/// Rounds that hits are still worked at when panels meet the bound.
const PATIENCE: u64 = 1000;
/// What leftovers must once have been worth, one panel over the bound, for more chains to be worth
/// while: with less, the room left is spread so thin that no search was seen to free a panel.
const HOPE: i64 = 2 * UNIT / 5;

/// Improves a layout until it meets `bound` with no avoidable hit at an opening, or the budget is spent, or
/// what is left of it gives no hope.
pub(super) fn improve(
    digest: &Digest,
    first: &Pool,
    pins: &Pins,
    least: Least,
    watch: &mut dyn FnMut(Progress),
) -> Pool {
    let bound = least.panels;
    let (lead, more) = rounds(digest);
    let of = lead + more.iter().sum::<u64>();
    let heat = if more.is_empty() { MILD } else { HOT };
    let mut span = Span { from: 0, rounds: lead, of, chain: 0, heat };
    let mut best = one_chain(digest, first.clone(), pins, least, &span, watch);
    for rounds in more {
        // Of several kinds of panels the least step is not one panel.
        let one_kind = !digest.rules.mixed();
        let hopeless = one_kind && best.key.0 == least.by_functions + 1 && best.leftover < HOPE;
        if best.key.0 <= bound || hopeless {
            break;
        }
        let (from, chain) = (span.from + span.rounds, span.chain + 1);
        span = Span { from, rounds, chain, heat: WARM, ..span };
        let from = Pool::of(digest, &best.placed, &best.kinds);
        let found = match side_by_side(digest) {
            true => twins(digest, from, pins, least, &span, watch),
            false => one_chain(digest, from, pins, least, &span, watch),
        };
        let leftover = best.leftover.max(found.leftover);
        // Where few offcuts may wait, a chain that frees no panel is seldom followed by one that does.
        let stuck = digest.rules.travel.is_some() && found.key.0 >= best.key.0;
        if found.key < best.key {
            best = found;
        }
        best.leftover = leftover;
        if stuck {
            break;
        }
    }
    watch(Progress { done: of, of, panels: best.panels, bound: bound_shown(digest, bound) });
    Pool::of(digest, &best.placed, &best.kinds)
}

/// The better of two chains by other chances, the first where both are alike.
fn twins(
    digest: &Digest,
    from: Pool,
    pins: &Pins,
    least: Least,
    span: &Span,
    watch: &mut dyn FnMut(Progress),
) -> Best {
    let (second, twin) = (from.clone(), Span { chain: span.chain + SECOND, ..*span });
    let (other, one) = cores::beside(
        || one_chain(digest, second, pins, least, &twin, &mut |_| {}),
        || one_chain(digest, from, pins, least, span, watch),
    );
    match other {
        Some(other) if other.key < one.key => other,
        _ => one,
    }
}

/// Improves a layout that is good already, in a quarter of the rounds of a first chain.
pub(super) fn again(digest: &Digest, first: Pool, pins: &Pins, bound: usize) -> Pool {
    let rounds = (rounds(digest).0 / 4).min(100 * LARGE);
    let span = Span { from: 0, rounds, of: rounds, chain: 0, heat: MILD };
    let least = Least::by_functions(bound);
    let best = one_chain(digest, first, pins, least, &span, &mut |_| {});
    Pool::of(digest, &best.placed, &best.kinds)
}

/// The bound as it is told on the way: panels, where there is one kind of them.
fn bound_shown(digest: &Digest, bound: usize) -> usize {
    if digest.rules.mixed() { 0 } else { bound }
}

/// The rounds of one chain among all.
struct Span {
    from: u64,
    rounds: u64,
    of: u64,
    chain: u64,
    heat: i64,
}

fn one_chain(
    digest: &Digest,
    first: Pool,
    pins: &Pins,
    bounds: Least,
    span: &Span,
    watch: &mut dyn FnMut(Progress),
) -> Best {
    let bound = bounds.panels;
    let (total, least) = (span.rounds, (bound, digest.unavoidable()));
    let seed = digest.rules.seed ^ 0x5eed ^ (span.chain << 32);
    let mut now = first;
    let mut best = Best {
        placed: now.placed.clone(),
        key: key(&now),
        panels: now.panels(),
        kinds: Vec::new(),
        stale: Vec::new(),
        round: 0,
        leftover: 0,
    };
    let mut search = Search::new(digest, &now, seed, pins);
    for round in 0..total {
        // Some hits may be unavoidable together though each run alone could do without.
        let stale = round - best.round > PATIENCE + total / 50;
        if (best.key.0, best.key.1) <= least || best.key.0 <= bound && stale {
            break;
        }
        if round % 256 == 0 {
            watch(Progress {
                done: span.from + round,
                of: span.of,
                panels: best.panels,
                bound: bound_shown(digest, bound),
            });
        }
        if round % LOOKED == 0 && digest.rules.hit_costs == OPENINGS_WEIGHED {
            search.hit = hit_more(digest, &now.placed);
        }
        if !search.ruin(digest, &now) {
            break;
        }
        let heat = span.heat + (COLD - span.heat) * round as i64 / total as i64;
        let worse = search.inserter.random.below(heat.max(1) as usize) as i64;
        let most = now.cost() + worse;
        search.take_up(digest, &mut now);
        search.shuffle(digest);
        if !search.recreate(&mut now, most) {
            search.put_back(digest, &mut now);
            continue;
        }
        if now.bought() == bounds.by_functions + 1 {
            best.leftover = best.leftover.max(now.leftover());
        }
        best.compare(&now, &search.taken, round);
    }
    best.kinds = now.kinds();
    best
}

impl Best {
    /// Takes over a placing where it is better; else remembers which parts differ from it.
    fn compare(&mut self, now: &Pool, changed: &[usize], round: u64) {
        self.stale.extend(changed);
        let k = key(now);
        if k < self.key {
            self.key = k;
            self.panels = now.panels();
            self.round = round;
            self.stale.drain(..).for_each(|p| self.placed[p] = now.placed[p]);
        } else if self.stale.len() > 4 * self.placed.len() + 100 {
            self.stale.sort_unstable();
            self.stale.dedup();
        }
    }
}

/// The best layout so far, the parts that may stand otherwise by now, and when it was found.
struct Best {
    placed: Vec<Option<Placed>>,
    key: Key,
    panels: usize,
    /// Kinds of all panels there are by now: what is placed names some of them.
    kinds: Vec<usize>,
    stale: Vec<usize>,
    round: u64,
    /// The most that leftovers were worth, one panel over the bound.
    leftover: i64,
}

/// Panels by weight, hits at openings, seams.
pub(super) type Key = (usize, Hits, i64);

/// What is best: panels by weight, then seams in notches, on jamb lines, near them, then seams.
pub(super) fn key(pool: &Pool) -> Key {
    (pool.bought(), pool.hits, pool.seams)
}

struct Search<'a> {
    inserter: Inserter<'a>,
    taken: Vec<usize>,
    is_taken: Vec<bool>,
    /// How the parts taken up stood.
    before: Vec<(usize, Placed)>,
    keyed: Vec<(i64, usize)>,
    /// Least that laying each part can cost.
    floors: Vec<i64>,
    /// Where hits are worked at, parts with more than they need: each round takes one of them up.
    hit: Vec<usize>,
}

impl<'a> Search<'a> {
    fn new(digest: &'a Digest, pool: &Pool, seed: u64, pins: &Pins) -> Self {
        let mut inserter = Inserter::new(digest, Random::new(seed), NOISE);
        inserter.pinned = pins.clone();
        Search {
            inserter,
            taken: Vec::new(),
            before: Vec::new(),
            keyed: Vec::new(),
            is_taken: vec![false; digest.parts.len()],
            floors: (0..digest.parts.len()).map(|p| pool.floor(digest, p)).collect(),
            hit: Vec::new(),
        }
    }

    /// Chooses some of the emptier panels, and a few parts near what stands in them; false
    /// if there is nothing.
    fn ruin(&mut self, digest: &Digest, pool: &Pool) -> bool {
        self.taken.iter().for_each(|p| self.is_taken[*p] = false);
        self.taken.clear();
        if digest.parts.is_empty() || pool.panels.is_empty() {
            return false;
        }
        if !self.hit.is_empty() {
            let one = self.inserter.random.below(self.hit.len());
            self.add(self.hit[one]);
        }
        let mut first = None;
        for _ in 0..1 + self.inserter.random.below(RUINED) {
            if let Some(p) = beside(pool, &mut self.inserter.random, first) {
                first = first.or(Some(p));
                pool.panels[p].parts().for_each(|p| self.add(p));
            }
        }
        for i in 0..self.taken.len() {
            let near = &digest.parts[self.taken[i]].near;
            if !near.is_empty() && self.inserter.random.below(100) < BESIDE {
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

    fn take_up(&mut self, digest: &Digest, pool: &mut Pool) {
        self.before.clear();
        let stood = self.taken.iter().filter_map(|p| Some((*p, pool.take(digest, *p)?)));
        self.before.extend(stood);
    }

    fn put_back(&mut self, digest: &Digest, pool: &mut Pool) {
        for p in &self.taken {
            pool.take(digest, *p);
        }
        self.before.iter().for_each(|(p, how)| pool.place(digest, *p, *how));
    }

    /// Seamed and longest first, with some disorder.
    fn shuffle(&mut self, digest: &Digest) {
        let panel = digest.rules.longest();
        self.keyed.clear();
        for p in &self.taken {
            let part = &digest.parts[*p];
            let chance = self.inserter.random.below(panel as usize) as i64;
            // What is pinned stands before the others look for a place.
            let first = match (self.inserter.pinned[*p], part.ways.is_empty()) {
                (Some(_), _) => 8 * panel,
                (None, false) => 4 * panel,
                (None, true) => 0,
            };
            self.keyed.push((-(part.cover.min(2 * panel) + first + chance), *p));
        }
        self.keyed.sort_unstable();
        self.taken.clear();
        self.taken.extend(self.keyed.iter().map(|k| k.1));
    }

    /// Lays parts again for less than `most`; false if one found no lawful place, or as soon as they
    /// cannot all be laid for so little (then all of them are to be taken up).
    fn recreate(&mut self, pool: &mut Pool, most: i64) -> bool {
        let mut left: i64 = self.taken.iter().map(|p| self.floors[*p]).sum();
        for part in &self.taken {
            left -= self.floors[*part];
            match self.inserter.best(pool, *part) {
                Some(how) => pool.place(self.inserter.digest, *part, how),
                None => return false,
            }
            if pool.cost() + left >= most {
                return false;
            }
        }
        true
    }
}
