//! Inserting one part where it costs least.

use super::fills::{OwnWall, SEEN, TRIES, fills, tightest};
use super::hit_sum::Hits;
use super::looks::{Looks, Round};
use super::options::Way;
use super::part::Digest;
use super::placed::Placed;
use super::pool::{Pool, soft};
use super::random::Random;
use super::rules::UNIT;
use super::shelf::Shelves;
use super::stagger::AllowedSpans;
use super::waits::Hand;

/// What looks are worth when they are asked for, in [`UNIT`]s: a jamb hit less than a panel.
const LOOK: i64 = UNIT / 200;

/// Inserts parts at least cost, with a share of `noise` panels of chance in each comparison.
pub(super) struct Inserter<'a> {
    pub digest: &'a Digest,
    pub random: Random,
    /// Most chance added, in [`UNIT`]s.
    pub noise: i64,
    /// Parts whose way and first piece stand already, whatever rule they break.
    pub pinned: Vec<Option<(usize, i64)>>,
    /// Counts how seams look as well, when asked.
    pub looks: Option<&'a Looks>,
    round: Round,
    allowed: AllowedSpans,
    wishes: Vec<i64>,
    best: Option<(i64, Placed)>,
}

impl<'a> Inserter<'a> {
    pub(super) fn new(digest: &'a Digest, random: Random, noise: i64) -> Self {
        Inserter {
            digest,
            random,
            noise,
            pinned: vec![None; digest.parts.len()],
            looks: None,
            round: Round::default(),
            allowed: AllowedSpans::default(),
            wishes: Vec::new(),
            best: None,
        }
    }

    /// The cheapest placing that keeps every hard rule; `None` if there is none.
    pub(super) fn best(&mut self, pool: &mut Pool, part: usize) -> Option<Placed> {
        self.best = None;
        let p = &self.digest.parts[part];
        if p.one_piece {
            self.one_piece(pool, part);
        }
        if let Some(looks) = self.looks.filter(|_| !p.ways.is_empty()) {
            looks.look_round(self.digest, &pool.placed, part, &mut self.round);
        }
        if let Some((way, a)) = self.pinned[part] {
            self.ends(pool, part, way, a);
            return self.best.map(|b| b.1);
        }
        for way in 0..p.lawful {
            self.allowed.find(self.digest, &pool.placed, part, way);
            if self.allowed.spans.is_empty() {
                continue;
            }
            self.lengths(pool, (part, p.ways[way]));
            if self.looks.is_some() {
                self.turns(&p.hits[way]);
            }
            let wishes = std::mem::take(&mut self.wishes);
            wishes.iter().for_each(|a| self.ends(pool, part, way, *a));
            self.wishes = wishes;
        }
        self.best.map(|b| b.1)
    }

    fn one_piece(&mut self, pool: &mut Pool, part: usize) {
        let kerf = self.digest.rules.kerf;
        let need = self.digest.parts[part].cover + kerf;
        let mut shelf = pool.any.shelf(need);
        // What is left elsewhere may not wait: a new panel is tried as well.
        if shelf.is_none() || pool.waits.is_some() {
            let rules = &self.digest.rules;
            for kind in rules.kinds() {
                let left = rules.panel_of(kind) + kerf - need;
                if left < 0 {
                    continue;
                }
                let panel = pool.fresh(kind).0;
                self.weigh(rules.unit(kind) - pool.worth_of(left, false), Placed::One { panel });
            }
        }
        // The tightest panel, and the next: chance may prefer it.
        for _ in 0..2 {
            let Some(panel) = shelf.and_then(|s| pool.any.on(s)) else { break };
            let p = &pool.panels[panel];
            let c = pool.worth(p) - pool.worth_of(p.free - need, p.locked());
            let waiting = pool.waiting(panel, &[Hand::Middle], part);
            self.weigh(c + waiting, Placed::One { panel });
            shelf = shelf.and_then(|s| pool.any.shelf(s + 1));
        }
        let Some(waits) = &pool.waits else { return };
        let wall = waits.wall(part);
        let beaten = self.best.map_or(i64::MAX, |b| b.0);
        let rising = pool.any.rising(need).take(SEEN);
        let rising = rising.take_while(|p| pool.used_up(pool.panels[*p].free, need, true) < beaten);
        for panel in rising.filter(|p| waits.serves(*p, wall)).take(2) {
            let p = &pool.panels[panel];
            let c = pool.worth(p) - pool.worth_of(p.free - need, p.locked());
            let waiting = pool.waiting(panel, &[Hand::Middle], part);
            self.weigh(c + waiting, Placed::One { panel });
        }
    }

    /// First-piece lengths worth trying: those that fill a cut panel exactly on either hand or on
    /// both, the ends of spans, and one by chance.
    fn lengths(&mut self, pool: &Pool, (part, way): (usize, Way)) {
        let kerf = self.digest.rules.kerf;
        let spans = &self.allowed.spans;
        let inside = |a: i64| spans.iter().any(|s| s.0 <= a && a <= s.1);
        let out = &mut self.wishes;
        out.clear();
        let total: i64 = spans.iter().map(|s| s.1 - s.0 + 1).sum();
        let mut pick = self.random.below(total as usize) as i64;
        let mut chance = spans[0].0;
        for s in spans {
            if pick <= s.1 - s.0 {
                chance = s.0 + pick;
                break;
            }
            pick -= s.1 - s.0 + 1;
        }
        // Left-hand fills, in rising order from a place by chance, then round again.
        let (low, high) = (spans[0].0, spans[spans.len() - 1].1);
        let first = |free: i64| Some(free - kerf).filter(|a| inside(*a));
        let last = |free: i64| Some(way.sum + kerf - free).filter(|a| inside(*a));
        let firsts = ((low + kerf, high + kerf), chance + kerf);
        let lasts = ((way.sum - high + kerf, way.sum - low + kerf), way.sum - chance + kerf);
        let own = OwnWall::of(pool, part);
        fills(&pool.no_left, firsts, &own, |free| out.extend(first(free)));
        fills(&pool.no_right, lasts, &own, |free| out.extend(last(free)));
        out.push(chance);
        for s in [spans[0], spans[spans.len() - 1]] {
            out.extend([s.0, s.1]);
        }
        out.sort_unstable();
        out.dedup();
    }

    /// First-piece lengths at which hits at openings change: the first with fewer, the last before more.
    fn turns(&mut self, steps: &[(i64, Hits)]) {
        let spans = &self.allowed.spans;
        let inside = |a: &i64| spans.iter().any(|s| s.0 <= *a && *a <= s.1);
        let less = steps.windows(2).map(|w| if w[1].1 < w[0].1 { w[1].0 } else { w[1].0 - 1 });
        self.wishes.extend(less.filter(inside));
        self.wishes.sort_unstable();
        self.wishes.dedup();
    }

    /// What a way and a first piece cost besides the panels for both end pieces; none where they cannot be the best.
    #[inline]
    fn own_cost(&self, pool: &Pool, part: usize, way: usize, a: i64) -> Option<i64> {
        let (w, rules) = (self.digest.parts[part].ways[way], &self.digest.rules);
        let own = soft(self.digest, part, way, a) + (w.k - 2) * rules.unit(w.whole);
        // No panel gives a piece for less than one that it uses up.
        let used_up = |length: i64| pool.worth_of(length + rules.kerf, false);
        let least = used_up(a) + used_up(w.sum - a);
        if self.is_beaten(own + least) {
            return None;
        }
        let Some(looks) = self.looks else { return Some(own) };
        let own = own + LOOK * looks.cost(self.digest, &self.round, part, way, a).weight();
        (!self.is_beaten(own + least)).then_some(own)
    }

    /// Tries the panels for both end pieces.
    fn ends(&mut self, pool: &mut Pool, part: usize, way: usize, a: i64) {
        let w = self.digest.parts[part].ways[way];
        let b = w.sum - a;
        let rules = &self.digest.rules;
        let kerf = rules.kerf;
        let Some(own) = self.own_cost(pool, part, way, a) else { return };
        for kind in rules.kinds() {
            pool.fresh(kind);
        }
        let pool = &*pool;
        let fresh = |kind: usize| pool.spares(kind);
        // A new panel of a kind, less the worth of what is left of it; none if it is too short.
        let new = |length: i64, kind: usize| {
            let left = rules.panel_of(kind) - length;
            (left >= 0).then(|| rules.unit(kind) - pool.worth_of(left, false))
        };
        let fill = |panel: usize, length: i64| {
            let p = &pool.panels[panel];
            let locks = p.left_hand.is_some() || p.right_hand.is_some();
            pool.worth(p) - pool.worth_of(p.free - length - kerf, locks)
        };
        let own_wall = OwnWall::of(pool, part);
        let most = self.noise;
        let from_cut = |shelves: &Shelves, length: i64, hand: Hand| {
            let cost = |p: usize| fill(p, length) + pool.waiting(p, &[hand], part);
            let least = |p: usize| pool.used_up(pool.panels[p].free, length + kerf, false);
            tightest(shelves, &own_wall, length + kerf, (&cost, &least, most))
        };
        let fill_a = from_cut(&pool.no_left, a, Hand::Left);
        let fill_b = from_cut(&pool.no_right, b, Hand::Right);
        let new_a = |kind: usize| Some((new(a, kind)?, kind));
        let new_b = |kind: usize| Some((new(b, kind)?, kind));
        for (one, i) in rules.kinds().filter_map(new_a) {
            for (two, j) in rules.kinds().filter_map(new_b) {
                let last = if i == j { fresh(j).1 } else { fresh(j).0 };
                self.weigh(own + one + two, Placed::Seamed { way, a, first: fresh(i).0, last });
            }
        }
        for (c, f) in fill_a.into_iter().flatten() {
            for (two, j) in rules.kinds().filter_map(new_b) {
                self.weigh(own + c + two, Placed::Seamed { way, a, first: f, last: fresh(j).0 });
            }
        }
        for (c, l) in fill_b.into_iter().flatten() {
            for (one, i) in rules.kinds().filter_map(new_a) {
                self.weigh(own + one + c, Placed::Seamed { way, a, first: fresh(i).0, last: l });
            }
        }
        for (c, f) in fill_a.into_iter().flatten() {
            for (d, l) in fill_b.into_iter().flatten().filter(|(_, l)| *l != f) {
                self.weigh(own + c + d, Placed::Seamed { way, a, first: f, last: l });
            }
        }
        self.both_ends(pool, (part, way), (own, a));
    }

    /// Tries one panel for both end pieces, the first `a` long, at a cost of `own` besides.
    fn both_ends(&mut self, pool: &Pool, (part, way): (usize, usize), (own, a): (i64, i64)) {
        let rules = &self.digest.rules;
        let both = self.digest.parts[part].ways[way].sum + 2 * rules.kerf;
        // A new panel of a kind, less the worth of what is left of it; none if it is too short.
        let new_both = |kind: usize| {
            let left = rules.panel_of(kind) - (both - rules.kerf);
            (left >= 0).then(|| (rules.unit(kind) - pool.worth_of(left, true), kind))
        };
        if rules.kinds().all(|kind| new_both(kind).is_none()) {
            return;
        }
        let open = pool.no_left.tightest(a + rules.kerf).filter(|f| {
            let p = &pool.panels[*f];
            p.right_hand.is_none() && p.free >= both
        });
        let open = open.or_else(|| without_ends(pool, both));
        let own_wall = pool.waits.as_ref().and_then(|w| {
            let wall = w.wall(part);
            let mut rising = pool.no_left.rising(both).take(SEEN);
            rising.find(|f| pool.panels[*f].right_hand.is_none() && w.serves(*f, wall))
        });
        for f in open.into_iter().chain(own_wall.filter(|f| open != Some(*f))) {
            let p = &pool.panels[f];
            let c = pool.worth(p) - pool.worth_of(p.free - both, true);
            let waiting = pool.waiting(f, &[Hand::Left, Hand::Right], part);
            self.weigh(own + c + waiting, Placed::Seamed { way, a, first: f, last: f });
        }
        for (c, kind) in rules.kinds().filter_map(new_both) {
            let one = pool.spares(kind).0;
            self.weigh(own + c, Placed::Seamed { way, a, first: one, last: one });
        }
    }

    /// Whether something found before is better than all that costs so much, whatever chance adds.
    #[inline]
    fn is_beaten(&self, cost: i64) -> bool {
        self.best.is_some_and(|b| b.0 <= cost)
    }

    #[inline]
    fn weigh(&mut self, cost: i64, how: Placed) {
        if self.is_beaten(cost) {
            return;
        }
        let cost = cost + self.random.below(self.noise as usize) as i64;
        if self.best.is_none_or(|b| cost < b.0) {
            self.best = Some((cost, how));
        }
    }
}

/// A panel without end pieces, among the tightest that have the room.
fn without_ends(pool: &Pool, room: i64) -> Option<usize> {
    let mut shelf = pool.no_left.shelf(room);
    for _ in 0..TRIES {
        let s = shelf?;
        let found = pool.no_left.all_on(s).take(2).find(|p| pool.panels[*p].right_hand.is_none());
        if found.is_some() {
            return found;
        }
        shelf = pool.no_left.shelf(s + 1);
    }
    None
}
