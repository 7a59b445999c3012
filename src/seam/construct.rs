//! Inserting a part where it costs least, and a first whole layout by inserting all.

use std::collections::{BTreeSet, VecDeque};

use super::digest::{Digest, Option_};
use super::pool::{Hand, Placed, Pool, UNIT, seams};
use super::random::Random;

/// Pool panels tried for an exact fill of each hand.
const TRIES: usize = 6;

/// Intervals of first-piece lengths that keep every hard rule, given what is laid.
pub(super) fn allowed(digest: &Digest, pool: &Pool, part: usize, way: Option_) -> Vec<(i64, i64)> {
    let p = &digest.parts[part];
    let r = &digest.rules;
    let base = p.left - r.lap / 2;
    let mut off: Vec<(i64, i64)> = Vec::new();
    // A seam at `x` forbids every `a` that would bring one of this part's seams nearer than the
    // stagger.
    let mut forbid = |low: i64, high: i64| {
        for j in 0..way.k - 1 {
            let shift = base + j * r.pitch();
            let (a, b) = (low - shift, high - shift);
            if b > way.least && a < way.most {
                off.push((a, b));
            }
        }
    };
    for &q in &p.near {
        if let Some(Placed::Seamed { way: w, a, .. }) = pool.placed[q] {
            seams(digest, q, w, a).for_each(|x| forbid(x - r.stagger, x + r.stagger));
        }
    }
    p.fixed_near.iter().for_each(|x| forbid(x - r.stagger, x + r.stagger));
    p.barred.iter().for_each(|(a, b)| forbid(*a, *b));
    off.sort_unstable();
    let mut out = Vec::new();
    let mut at = way.least;
    for (low, high) in off {
        // The bounds themselves are allowed: exactly the stagger apart is far enough.
        if low >= at {
            out.push((at, low.min(way.most)));
        }
        at = at.max(high);
    }
    if at <= way.most {
        out.push((at, way.most));
    }
    out
}

/// The allowed length nearest to `wish` from below, else from above.
fn nearest(spans: &[(i64, i64)], wish: i64) -> Option<i64> {
    let below = spans.iter().rev().find(|s| s.0 <= wish).map(|s| s.1.min(wish));
    below.or_else(|| spans.first().map(|s| s.0))
}

/// A trial placing with what it costs.
type Trial = (i64, Placed);

/// Inserts parts at least cost, with a share of `noise` panels of chance in each comparison.
pub(super) struct Inserter<'a> {
    pub digest: &'a Digest,
    pub random: Random,
    /// Most chance added, in [`UNIT`]s.
    pub noise: i64,
}

impl Inserter<'_> {
    /// The cheapest placing that keeps every hard rule; `None` if there is none.
    pub(super) fn best(&mut self, pool: &mut Pool, part: usize) -> Option<Placed> {
        let p = &self.digest.parts[part];
        let mut best: Option<Trial> = None;
        if p.one_piece {
            let cover = p.cover;
            let panel = pool.tightest(Hand::Any, cover).unwrap_or_else(|| pool.fresh());
            self.weigh(pool, part, Placed::One { panel }, &mut best);
        }
        for i in 0..p.ways.len() {
            let way = self.digest.parts[part].ways[i];
            let spans = allowed(self.digest, pool, part, way);
            if spans.is_empty() {
                continue;
            }
            for a in self.lengths(pool, way, &spans) {
                self.ends(pool, part, way, a, &mut best);
            }
        }
        best.map(|b| b.1)
    }

    /// First-piece lengths worth trying: those that fill a cut panel exactly on either hand, both
    /// extremes, and one by chance.
    fn lengths(&mut self, pool: &Pool, way: Option_, spans: &[(i64, i64)]) -> Vec<i64> {
        let mut wishes: Vec<i64> =
            pool.open(Hand::Left, way.least).take(TRIES).map(|(free, _)| free).collect();
        wishes.extend(
            pool.open(Hand::Right, way.sum - way.most).take(TRIES).map(|(free, _)| way.sum - free),
        );
        wishes.extend([way.most, way.least, way.sum - way.most]);
        let span = spans[self.random.below(spans.len())];
        wishes.push(span.0 + self.random.below((span.1 - span.0 + 1) as usize) as i64);
        let mut out: Vec<i64> = wishes.iter().filter_map(|w| nearest(spans, *w)).collect();
        // From the right hand the nearest longer first piece leaves the fill possible.
        out.extend(
            wishes.iter().filter_map(|w| spans.iter().find(|s| s.1 >= *w).map(|s| s.0.max(*w))),
        );
        out.sort_unstable();
        out.dedup();
        out
    }

    /// Tries the panels for both end pieces.
    fn ends(
        &mut self,
        pool: &mut Pool,
        part: usize,
        way: Option_,
        a: i64,
        best: &mut Option<Trial>,
    ) {
        let b = way.sum - a;
        let kerf = self.digest.rules.kerf;
        let first = pool.tightest(Hand::Left, a);
        let last = pool.tightest(Hand::Right, b);
        let fresh = pool.fresh();
        let mut firsts = vec![fresh];
        firsts.extend(first);
        for f in firsts {
            let mut lasts = Vec::new();
            match last {
                Some(l) if l != f => lasts.push(l),
                _ => {}
            }
            lasts.push(if f == fresh { pool.fresh_but(f) } else { fresh });
            let panel = &pool.panels[f];
            if panel.right_hand.is_none() && panel.free >= a + b + 2 * kerf {
                lasts.push(f);
            }
            for l in lasts {
                self.weigh(pool, part, Placed::Seamed { way, a, first: f, last: l }, best);
            }
        }
    }

    fn weigh(&mut self, pool: &Pool, part: usize, how: Placed, best: &mut Option<Trial>) {
        let chance = self.random.below(self.noise as usize) as i64;
        let c = self.price(pool, part, how) + chance;
        if best.as_ref().is_none_or(|b| c < b.0) {
            *best = Some((c, how));
        }
    }

    /// What a placing adds to the state cost.
    fn price(&self, pool: &Pool, part: usize, how: Placed) -> i64 {
        let kerf = self.digest.rules.kerf;
        let opened = |i: usize| if pool.panels[i].empty() { UNIT } else { 0 };
        match how {
            Placed::One { panel } => {
                let p = &pool.panels[panel];
                let left = p.free - self.digest.parts[part].cover - kerf;
                opened(panel) + pool.worth(p) - pool.worth_of(left, p.locked())
            }
            Placed::Seamed { way, a, first, last } => {
                let own = super::pool::soft(self.digest, part, &how) + (way.k - 2) * UNIT;
                let pf = &pool.panels[first];
                let before = opened(first) + pool.worth(pf);
                if first == last {
                    return own + before - pool.worth_of(pf.free - way.sum - 2 * kerf, true);
                }
                let pl = &pool.panels[last];
                own + before + opened(last) + pool.worth(pl)
                    - pool.worth_of(pf.free - a - kerf, pf.right_hand.is_some())
                    - pool.worth_of(pl.free - (way.sum - a) - kerf, pl.left_hand.is_some())
            }
        }
    }
}

/// A first whole layout: seamed runs bottom up, then runs of one piece by falling length.
pub(super) fn lay(digest: &Digest) -> Pool {
    let mut pool = Pool::new(digest);
    let mut inserter = Inserter { digest, random: Random::new(digest.rules.seed), noise: 0 };
    let mut order: Vec<usize> = (0..digest.parts.len()).collect();
    order.sort_by_key(|i| {
        let p = &digest.parts[*i];
        let seamed = !p.ways.is_empty() && !p.one_piece;
        if seamed { (0, p.from.0 as i64, i64::from(p.level), p.left) } else { (1, -p.cover, 0, 0) }
    });
    insert_all(&mut inserter, &mut pool, order);
    pool
}

/// Inserts parts in order; where rules leave no place, the neighbours in the way are taken up and
/// tried again, and after too many such turns the part is laid with the fewest rules broken.
pub(super) fn insert_all(inserter: &mut Inserter, pool: &mut Pool, order: Vec<usize>) {
    let digest = inserter.digest;
    let mut queue: VecDeque<usize> = order.into();
    let mut ejected = vec![0u32; digest.parts.len()];
    let mut turns = 40 * digest.parts.len().max(10);
    while let Some(part) = queue.pop_front() {
        if let Some(how) = inserter.best(pool, part) {
            pool.place(digest, part, how);
            continue;
        }
        ejected[part] += 1;
        turns = turns.saturating_sub(1);
        let Some((way, a, blockers)) = least_blocked(digest, pool, part, &ejected) else {
            // No way to part it at all: the run is shorter than two least pieces allow, and longer
            // than a panel.
            forced(inserter, pool, part);
            continue;
        };
        if turns == 0 || ejected[part] > 60 {
            let (first, last) = two_fresh(pool);
            pool.place(digest, part, Placed::Seamed { way, a, first, last });
            continue;
        }
        for q in &blockers {
            pool.take(digest, *q);
        }
        match inserter.best(pool, part) {
            Some(how) => pool.place(digest, part, how),
            None => {
                let (first, last) = two_fresh(pool);
                pool.place(digest, part, Placed::Seamed { way, a, first, last });
            }
        }
        blockers.into_iter().rev().for_each(|q| queue.push_front(q));
    }
}

fn two_fresh(pool: &mut Pool) -> (usize, usize) {
    let first = pool.fresh();
    (first, pool.fresh_but(first))
}

/// The first-piece length that the lightest set of neighbours blocks, and that set. Weights grow
/// each time a part is ejected, so that the search does not turn in circles.
fn least_blocked(
    digest: &Digest,
    pool: &Pool,
    part: usize,
    ejected: &[u32],
) -> Option<(Option_, i64, Vec<usize>)> {
    let p = &digest.parts[part];
    let r = &digest.rules;
    let mut best: Option<(u64, Option_, i64, Vec<usize>)> = None;
    for way in &p.ways {
        // Eighths of the span, on a grid fine against the stagger.
        let step = (r.stagger / 8).max(1);
        let mut a = way.least;
        while a <= way.most {
            let mine: Vec<i64> = seams(digest, part, *way, a).collect();
            let blocked: BTreeSet<usize> = p
                .near
                .iter()
                .copied()
                .filter(|q| match pool.placed[*q] {
                    Some(Placed::Seamed { way: w, a: b, .. }) => seams(digest, *q, w, b)
                        .any(|x| mine.iter().any(|y| (x - y).abs() < r.stagger)),
                    _ => false,
                })
                .collect();
            let stuck = p
                .fixed_near
                .iter()
                .filter(|x| mine.iter().any(|y| (*x - y).abs() < r.stagger))
                .count()
                + p.barred
                    .iter()
                    .filter(|(low, high)| mine.iter().any(|y| y > low && y < high))
                    .count();
            let weight: u64 = blocked.iter().map(|q| 1 + u64::from(ejected[*q])).sum::<u64>()
                + 1000 * stuck as u64;
            if best.as_ref().is_none_or(|b| weight < b.0) {
                best = Some((weight, *way, a, blocked.into_iter().collect()));
            }
            a += step;
        }
    }
    best.map(|(_, way, a, blocked)| (way, a, blocked))
}

/// A run that no legal parting covers: it gets the least pieces with equal ends, whatever rule that
/// breaks; `verify` tells.
fn forced(inserter: &mut Inserter, pool: &mut Pool, part: usize) {
    let digest = inserter.digest;
    let r = &digest.rules;
    let cover = digest.parts[part].cover;
    let k = super::options::least_pieces(cover, r.panel, r.lap).max(2);
    let sum = cover + (k - 1) * r.lap - (k - 2) * r.panel;
    let a = (sum / 2).clamp(1, r.panel);
    let (first, last) = two_fresh(pool);
    pool.place(
        digest,
        part,
        Placed::Seamed { way: Option_ { k, sum, least: a, most: a }, a, first, last },
    );
}
