//! Panels and what is cut from them, for the whole house, with the state of every part.

use super::hit_sum::{HitCosts, Hits};
use super::options::Way;
use super::panel::Panel;
use super::part::{Digest, hits_at};
use super::placed::Placed;
use super::pool_kind::{OfKind, scale_of_leftovers};
use super::rules::UNIT;
use super::shelf::Shelves;
use super::waits::{Hand, Waits};

/// Weights of costs, in millionths of a panel.
mod weight {
    /// A seam: enough to prefer fewer, never worth a panel.
    pub(super) const SEAM: i64 = 12_000;
    /// A leftover, by the square of its share of a panel: few long ones beat many short ones.
    pub(super) const LEFTOVER: i64 = 800_000;
    /// A leftover of a panel that holds both end pieces.
    pub(super) const LOCKED: i64 = 150_000;
}

/// All panels and placings.
#[derive(Clone, Debug)]
pub(super) struct Pool {
    pub panels: Vec<Panel>,
    kinds: Vec<OfKind>,
    /// Cut panels without a left-hand piece, without a right-hand one, and all, by room.
    pub no_left: Shelves,
    pub no_right: Shelves,
    pub any: Shelves,
    /// Worth of all leftovers, in [`UNIT`]s.
    leftover: i64,
    /// Seams of all parts, and where they hit openings.
    pub seams: i64,
    pub hits: Hits,
    pub placed: Vec<Option<Placed>>,
    /// What waits at the ends of walls; none where offcuts may travel as they like.
    pub waits: Option<Waits>,
    /// Worth of a leftover by its length, of an open and of a locked panel.
    worths: [Vec<i64>; 2],
    /// The most that a panel of any kind holds.
    most_room: i64,
    kerf: i64,
    hit_costs: HitCosts,
}

impl Pool {
    pub(super) fn new(digest: &Digest) -> Self {
        let rules = &digest.rules;
        let kinds: Vec<OfKind> = rules.kinds().map(|kind| OfKind::new(rules, kind)).collect();
        let room = rules.longest() + rules.kerf;
        let (unit, whole) = scale_of_leftovers(&kinds);
        let worths = [weight::LEFTOVER, weight::LOCKED].map(|w| {
            let w = w * unit / UNIT;
            // Squares of fine steps times a dear panel outgrow 64 bits.
            let (w, of) = (i128::from(w), i128::from(whole) * i128::from(whole));
            let worth = |free: i64| (w * i128::from(free) * i128::from(free) / of) as i64;
            (0..=room).map(worth).collect::<Vec<i64>>()
        });
        Pool {
            panels: Vec::new(),
            kinds,
            no_left: Shelves::new(room),
            no_right: Shelves::new(room),
            any: Shelves::new(room),
            leftover: 0,
            seams: 0,
            hits: Hits::NONE,
            waits: Waits::new(digest),
            placed: vec![None; digest.parts.len()],
            worths,
            most_room: room,
            kerf: rules.kerf,
            hit_costs: rules.hit_costs,
        }
    }

    /// A pool with these placings, which must fit, on panels of these kinds.
    pub(super) fn of(digest: &Digest, placed: &[Option<Placed>], kinds: &[usize]) -> Self {
        let mut pool = Pool::new(digest);
        for (part, how) in placed.iter().enumerate().filter_map(|(i, p)| Some((i, (*p)?))) {
            let most = match how {
                Placed::One { panel } => panel,
                Placed::Seamed { first, last, .. } => first.max(last),
            };
            while pool.panels.len() <= most {
                pool.open_panel(kinds.get(pool.panels.len()).copied().unwrap_or(0));
            }
            pool.place(digest, part, how);
        }
        pool
    }

    /// Panels used.
    pub(super) fn panels(&self) -> usize {
        self.kinds.iter().map(OfKind::used).sum()
    }

    /// Panels used of a kind.
    pub(super) fn used(&self, kind: usize) -> usize {
        self.kinds[kind].used()
    }

    /// What they weigh together: their number where there is one kind. For each offcut that waits too many
    /// a panel is opened anew.
    pub(super) fn bought(&self) -> usize {
        let heaviest = || self.kinds.iter().map(|k| k.weight).max().unwrap_or(1);
        let opened = self.waits.as_ref().map_or(0, |w| w.excess() as usize * heaviest());
        self.kinds.iter().map(|k| k.used() * k.weight).sum::<usize>() + opened
    }

    /// What it costs in waiting that a panel gives these pieces to a part.
    #[inline]
    pub(super) fn waiting(&self, panel: usize, hands: &[Hand], part: usize) -> i64 {
        let Some(waits) = &self.waits else { return 0 };
        waits.added(panel, hands, waits.wall(part))
    }

    /// The kind of each panel, by number.
    pub(super) fn kinds(&self) -> Vec<usize> {
        self.panels.iter().map(|p| p.kind).collect()
    }

    /// Panels that are cut, with their numbers.
    pub(super) fn cut(&self) -> impl Iterator<Item = (usize, &Panel)> {
        self.panels.iter().enumerate().filter(|(_, p)| !p.empty())
    }

    /// The state cost that the search minimises: panels less the worth of leftovers, plus seams and
    /// their hits. Whole numbers, so that taking a part up restores it exactly.
    pub(super) fn cost(&self) -> i64 {
        self.kinds.iter().map(|k| k.used() as i64 * k.unit).sum::<i64>() - self.leftover
            + self.seams * weight::SEAM
            + self.hits.cost(self.hit_costs)
            + self.waits.as_ref().map_or(0, Waits::cost)
    }

    /// Worth of all that is left on cut panels.
    pub(super) fn leftover(&self) -> i64 {
        self.leftover
    }

    /// Worth of what is left on a cut panel.
    #[inline]
    pub(super) fn worth(&self, p: &Panel) -> i64 {
        if p.empty() { 0 } else { self.worth_of(p.free, p.locked()) }
    }

    /// Worth of a leftover, `locked` if the panel holds both end pieces.
    #[inline]
    pub(super) fn worth_of(&self, free: i64, locked: bool) -> i64 {
        self.worths[usize::from(locked)][free.clamp(0, self.most_room) as usize]
    }

    /// What a length costs that is taken off what is free on a panel, which is `locked` or stays open; the more
    /// is free, the more.
    #[inline]
    pub(super) fn used_up(&self, free: i64, length: i64, locked: bool) -> i64 {
        self.worth_of(free, locked) - self.worth_of(free - length, locked)
    }

    /// Least that laying a part can add to [`Pool::cost`]: whole panels and seams, and end pieces that
    /// just fill what is left of two panels. A leftover's worth grows with its square, so nothing
    /// uses a length up for less than what leaves none.
    pub(super) fn floor(&self, digest: &Digest, part: usize) -> i64 {
        let p = &digest.parts[part];
        let one = p.one_piece.then(|| self.worth_of(p.cover + self.kerf, true));
        let seamed = p.ways.iter().map(|w| {
            let ends = self.worth_of(w.sum / 2 + self.kerf, false)
                + self.worth_of(w.sum - w.sum / 2 + self.kerf, false);
            (w.k - 2) * self.kinds[w.whole].unit + (w.k - 1) * weight::SEAM + ends
        });
        one.into_iter().chain(seamed).min().unwrap_or(0)
    }

    #[inline]
    fn count(&mut self, digest: &Digest, part: usize, how: &Placed, sign: i64) {
        if let Placed::Seamed { way, a, .. } = how {
            let p = &digest.parts[part];
            self.seams += sign * (p.ways[*way].k - 1);
            self.hits = self.hits + hits_at(p, *way, *a).times(sign);
        }
    }

    #[inline]
    fn leave(&mut self, i: usize) {
        let p = &self.panels[i];
        if p.empty() {
            // A panel about to be cut is among the last made spare.
            let spare = &mut self.kinds[p.kind].spare;
            if let Some(at) = spare.iter().rposition(|s| *s == i) {
                spare.remove(at);
            }
            return;
        }
        self.leftover -= self.worth(p);
        if let Some(waits) = &mut self.waits {
            waits.leave(i);
        }
        if p.left_hand.is_none() {
            self.no_left.remove(p.free, i);
        }
        if p.right_hand.is_none() {
            self.no_right.remove(p.free, i);
        }
        self.any.remove(p.free, i);
    }

    #[inline]
    fn enter(&mut self, i: usize) {
        let p = &self.panels[i];
        if p.empty() {
            self.kinds[p.kind].spare.push(i);
            return;
        }
        self.leftover += self.worth(p);
        if let Some(waits) = &mut self.waits {
            waits.enter(i, p);
        }
        if p.left_hand.is_none() {
            self.no_left.insert(p.free, i);
        }
        if p.right_hand.is_none() {
            self.no_right.insert(p.free, i);
        }
        self.any.insert(p.free, i);
    }

    fn open_panel(&mut self, kind: usize) {
        let own = &mut self.kinds[kind];
        own.spare.push(self.panels.len());
        own.made += 1;
        self.panels.push(Panel { kind, free: own.room, ..Default::default() });
        self.no_left.grow();
        self.no_right.grow();
        self.any.grow();
        if let Some(waits) = &mut self.waits {
            waits.grow();
        }
    }

    /// Two panels of a kind, not yet cut.
    pub(super) fn fresh(&mut self, kind: usize) -> (usize, usize) {
        while self.kinds[kind].spare.len() < 2 {
            self.open_panel(kind);
        }
        self.spares(kind)
    }

    /// The same two once more: only after [`Pool::fresh`].
    #[inline]
    pub(super) fn spares(&self, kind: usize) -> (usize, usize) {
        let spare = &self.kinds[kind].spare;
        (spare[spare.len() - 1], spare[spare.len() - 2])
    }

    /// Lays a part. Its panels must have room.
    #[inline]
    pub(super) fn place(&mut self, digest: &Digest, part: usize, how: Placed) {
        let kerf = self.kerf;
        match how {
            Placed::One { panel } => {
                self.leave(panel);
                self.panels[panel].ones.push(part);
                self.panels[panel].free -= digest.parts[part].cover + kerf;
                self.enter(panel);
            }
            Placed::Seamed { way, a, first, last } => {
                let way: Way = digest.parts[part].ways[way];
                self.leave(first);
                self.panels[first].left_hand = Some(part);
                self.panels[first].free -= a + kerf;
                self.enter(first);
                self.leave(last);
                self.panels[last].right_hand = Some(part);
                self.panels[last].free -= way.sum - a + kerf;
                self.enter(last);
                self.kinds[way.whole].wholes += way.k - 2;
            }
        }
        self.count(digest, part, &how, 1);
        self.placed[part] = Some(how);
    }

    /// Takes a part up again: the exact inverse of [`Pool::place`].
    #[inline]
    pub(super) fn take(&mut self, digest: &Digest, part: usize) -> Option<Placed> {
        let how = self.placed[part].take()?;
        let kerf = self.kerf;
        self.count(digest, part, &how, -1);
        match how {
            Placed::One { panel } => {
                self.leave(panel);
                self.panels[panel].ones.retain(|p| *p != part);
                self.panels[panel].free += digest.parts[part].cover + kerf;
                self.enter(panel);
            }
            Placed::Seamed { way, a, first, last } => {
                let way: Way = digest.parts[part].ways[way];
                self.leave(first);
                self.panels[first].left_hand = None;
                self.panels[first].free += a + kerf;
                self.enter(first);
                self.leave(last);
                self.panels[last].right_hand = None;
                self.panels[last].free += way.sum - a + kerf;
                self.enter(last);
                self.kinds[way.whole].wholes -= way.k - 2;
            }
        }
        Some(how)
    }
}

/// Cost of a part's seams and of where they hit openings.
#[inline]
pub(super) fn soft(digest: &Digest, part: usize, way: usize, a: i64) -> i64 {
    let p = &digest.parts[part];
    weight::SEAM * (p.ways[way].k - 1) + hits_at(p, way, a).cost(digest.rules.hit_costs)
}
