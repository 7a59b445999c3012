//! Panels and what is cut from them, for the whole house, with the state of every part.

use std::collections::BTreeSet;

use super::digest::{Digest, Option_};

/// One panel, in the whole numbers that costs are counted in.
pub(super) const UNIT: i64 = 1_000_000;

/// Weights of costs, in millionths of a panel.
mod weight {
    /// A seam: enough to prefer fewer, never worth a panel.
    pub(super) const SEAM: i64 = 12_000;
    /// A seam nearer to a jamb line than wished.
    pub(super) const JAMB: i64 = 20_000;
    /// A leftover, by the square of its share of a panel: few long ones beat many short ones.
    pub(super) const LEFTOVER: i64 = 800_000;
    /// A leftover of a panel that holds both end pieces.
    pub(super) const LOCKED: i64 = 150_000;
}

/// How one part is laid.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Placed {
    /// One piece, from this panel.
    One { panel: usize },
    /// `way.k` pieces: the first of length `a` from `first`, the last from `last`; whole panels
    /// between.
    Seamed { way: Option_, a: i64, first: usize, last: usize },
}

/// A stock panel that is cut.
#[derive(Clone, Debug, Default)]
pub(super) struct Panel {
    /// The part whose run begins with a piece from its right end.
    pub left_hand: Option<usize>,
    /// The part whose run ends with a piece from its left end.
    pub right_hand: Option<usize>,
    /// Parts that are one piece from its middle.
    pub ones: Vec<usize>,
    /// Room left, each piece charged one kerf.
    pub free: i64,
}

impl Panel {
    /// Whether it holds both end pieces: only a run of one piece can use what is left.
    pub(super) fn locked(&self) -> bool {
        self.left_hand.is_some() && self.right_hand.is_some()
    }

    pub(super) fn empty(&self) -> bool {
        self.left_hand.is_none() && self.right_hand.is_none() && self.ones.is_empty()
    }
}

/// Which end piece is looked for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Hand {
    Left,
    Right,
    Any,
}

/// All panels and placings.
#[derive(Clone, Debug)]
pub(super) struct Pool {
    pub panels: Vec<Panel>,
    spare: BTreeSet<usize>,
    no_left: BTreeSet<(i64, usize)>,
    no_right: BTreeSet<(i64, usize)>,
    any: BTreeSet<(i64, usize)>,
    /// Whole panels between end pieces.
    pub wholes: i64,
    /// Worth of all leftovers, in [`UNIT`]s.
    leftover: i64,
    /// Seams and jamb hits of all parts.
    pub seams: i64,
    pub hits: i64,
    pub placed: Vec<Option<Placed>>,
    room: i64,
    kerf: i64,
}

impl Pool {
    pub(super) fn new(digest: &Digest) -> Self {
        Pool {
            panels: Vec::new(),
            spare: BTreeSet::new(),
            no_left: BTreeSet::new(),
            no_right: BTreeSet::new(),
            any: BTreeSet::new(),
            wholes: 0,
            leftover: 0,
            seams: 0,
            hits: 0,
            placed: vec![None; digest.parts.len()],
            room: digest.rules.room(),
            kerf: digest.rules.kerf,
        }
    }

    /// Panels used.
    pub(super) fn panels(&self) -> usize {
        self.panels.len() - self.spare.len() + usize::try_from(self.wholes).unwrap_or(0)
    }

    /// Panels that are cut, with their numbers.
    pub(super) fn cut(&self) -> impl Iterator<Item = (usize, &Panel)> {
        self.panels.iter().enumerate().filter(|(_, p)| !p.empty())
    }

    /// The state cost that the search minimises: panels less the worth of leftovers, plus seams and
    /// jamb hits. Whole numbers, so that taking a part up restores it exactly.
    pub(super) fn cost(&self) -> i64 {
        self.panels() as i64 * UNIT - self.leftover
            + self.seams * weight::SEAM
            + self.hits * weight::JAMB
    }

    /// Worth of what is left on a cut panel.
    pub(super) fn worth(&self, p: &Panel) -> i64 {
        if p.empty() { 0 } else { self.worth_of(p.free, p.locked()) }
    }

    /// Worth of a leftover, `locked` if the panel holds both end pieces.
    pub(super) fn worth_of(&self, free: i64, locked: bool) -> i64 {
        let w = if locked { weight::LOCKED } else { weight::LEFTOVER };
        let free = free.max(0);
        w * free * free / (self.room * self.room)
    }

    fn count(&mut self, digest: &Digest, part: usize, how: &Placed, sign: i64) {
        if let Placed::Seamed { way, a, .. } = how {
            self.seams += sign * (way.k - 1);
            self.hits += sign * hits(digest, part, *way, *a);
        }
    }

    fn leave(&mut self, i: usize) {
        self.leftover -= self.worth(&self.panels[i]);
        let key = (self.panels[i].free, i);
        self.no_left.remove(&key);
        self.no_right.remove(&key);
        self.any.remove(&key);
    }

    fn enter(&mut self, i: usize) {
        let p = &self.panels[i];
        if p.empty() {
            self.spare.insert(i);
            return;
        }
        self.leftover += self.worth(&self.panels[i]);
        let p = &self.panels[i];
        self.spare.remove(&i);
        let key = (p.free, i);
        if p.left_hand.is_none() {
            self.no_left.insert(key);
        }
        if p.right_hand.is_none() {
            self.no_right.insert(key);
        }
        self.any.insert(key);
    }

    /// A panel not yet cut.
    pub(super) fn fresh(&mut self) -> usize {
        if let Some(i) = self.spare.first() {
            return *i;
        }
        self.panels.push(Panel { free: self.room, ..Default::default() });
        self.spare.insert(self.panels.len() - 1);
        self.panels.len() - 1
    }

    /// A second panel not yet cut, when the first is about to be.
    pub(super) fn fresh_but(&mut self, other: usize) -> usize {
        if let Some(i) = self.spare.iter().find(|i| **i != other) {
            return *i;
        }
        self.panels.push(Panel { free: self.room, ..Default::default() });
        self.spare.insert(self.panels.len() - 1);
        self.panels.len() - 1
    }

    /// The fullest cut panel that still takes a piece of `length` on that hand.
    pub(super) fn tightest(&self, hand: Hand, length: i64) -> Option<usize> {
        let need = length + self.kerf;
        self.set(hand).range((need, 0)..).next().map(|k| k.1)
    }

    /// Cut panels that could take `least` or more on that hand, fullest first.
    pub(super) fn open(&self, hand: Hand, least: i64) -> impl Iterator<Item = (i64, usize)> + '_ {
        self.set(hand).range((least + self.kerf, 0)..).map(|(free, i)| (free - self.kerf, *i))
    }

    fn set(&self, hand: Hand) -> &BTreeSet<(i64, usize)> {
        match hand {
            Hand::Left => &self.no_left,
            Hand::Right => &self.no_right,
            Hand::Any => &self.any,
        }
    }

    /// Lays a part. Its panels must have room.
    pub(super) fn place(&mut self, digest: &Digest, part: usize, how: Placed) {
        match how {
            Placed::One { panel } => {
                self.leave(panel);
                self.panels[panel].ones.push(part);
                self.panels[panel].free -= digest.parts[part].cover + self.kerf;
                self.enter(panel);
            }
            Placed::Seamed { way, a, first, last } => {
                self.leave(first);
                self.panels[first].left_hand = Some(part);
                self.panels[first].free -= a + self.kerf;
                self.enter(first);
                self.leave(last);
                self.panels[last].right_hand = Some(part);
                self.panels[last].free -= way.sum - a + self.kerf;
                self.enter(last);
                self.wholes += way.k - 2;
            }
        }
        self.count(digest, part, &how, 1);
        self.placed[part] = Some(how);
    }

    /// Takes a part up again: the exact inverse of [`Pool::place`].
    pub(super) fn take(&mut self, digest: &Digest, part: usize) -> Option<Placed> {
        let how = self.placed[part].take()?;
        self.count(digest, part, &how, -1);
        match how {
            Placed::One { panel } => {
                self.leave(panel);
                self.panels[panel].ones.retain(|p| *p != part);
                self.panels[panel].free += digest.parts[part].cover + self.kerf;
                self.enter(panel);
            }
            Placed::Seamed { way, a, first, last } => {
                self.leave(first);
                self.panels[first].left_hand = None;
                self.panels[first].free += a + self.kerf;
                self.enter(first);
                self.leave(last);
                self.panels[last].right_hand = None;
                self.panels[last].free += way.sum - a + self.kerf;
                self.enter(last);
                self.wholes -= way.k - 2;
            }
        }
        Some(how)
    }
}

/// How many of the part's seams stand nearer to a jamb line than wished.
fn hits(digest: &Digest, part: usize, way: Option_, a: i64) -> i64 {
    let avoid = &digest.parts[part].avoid;
    if avoid.is_empty() {
        return 0;
    }
    let d = digest.rules.jamb;
    seams(digest, part, way, a)
        .map(|x| avoid.iter().filter(|v| (x - **v).abs() < d).count() as i64)
        .sum()
}

/// Cost of a placing's seams and jamb hits.
pub(super) fn soft(digest: &Digest, part: usize, how: &Placed) -> i64 {
    match how {
        Placed::Seamed { way, a, .. } => {
            weight::SEAM * (way.k - 1) + weight::JAMB * hits(digest, part, *way, *a)
        }
        Placed::One { .. } => 0,
    }
}

/// Seams of a part laid with first piece `a`: middles of its laps.
pub(super) fn seams(
    digest: &Digest,
    part: usize,
    way: Option_,
    a: i64,
) -> impl Iterator<Item = i64> {
    let (left, pitch) = (digest.parts[part].left, digest.rules.pitch());
    // An odd lap's middle is counted at the whole sixteenth; `answer` states it exactly.
    let first = left + a - digest.rules.lap / 2;
    (0..way.k - 1).map(move |j| first + j * pitch)
}
