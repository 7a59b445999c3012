//! Offcuts that wait, counted at the ends of walls: a panel of which pieces are on walls 1, 3 and 4 waits
//! after walls 1, 2 and 3. Where a piece from its middle is used before both end pieces, two offcuts of it
//! wait, until one of these is used.

use super::panel::Panel;
use super::part::Digest;
use super::rack::{Rack, Racks};
use super::rules::{Travel, UNIT};

/// One offcut too many costs as much as the panel that is opened instead.
const TOO_MANY: i64 = UNIT;
/// What an offcut costs that waits at the end of a wall, so that of two layouts the one of which fewer wait is
/// taken: far less than a seam.
const WAITING: i64 = UNIT / 400;

/// On which walls, by their place in the order, pieces of one panel are.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Stay {
    /// That of the left-hand and of the right-hand piece.
    ends: [Option<usize>; 2],
    /// The first and last of those of its middle; none where the first is over the last.
    ones: (usize, usize),
}

/// Which piece of a panel.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Hand {
    Left,
    Right,
    Middle,
}

impl Stay {
    const NONE: Stay = Stay { ends: [None; 2], ones: (usize::MAX, 0) };

    #[inline]
    fn with(mut self, hand: Hand, wall: usize) -> Stay {
        match hand {
            Hand::Left => self.ends[0] = Some(wall),
            Hand::Right => self.ends[1] = Some(wall),
            Hand::Middle => self.ones = (self.ones.0.min(wall), self.ones.1.max(wall)),
        }
        self
    }

    /// The first and the last wall; the first over the last where there is no piece.
    #[inline]
    pub(super) fn span(&self) -> (usize, usize) {
        self.ends.iter().flatten().fold(self.ones, |(a, b), wall| (a.min(*wall), b.max(*wall)))
    }

    /// At the ends of which walls a second offcut waits: from the first of these to before the last.
    #[inline]
    fn second(&self) -> (usize, usize) {
        match self.ends {
            [Some(left), Some(right)] => (self.ones.0, left.min(right)),
            _ => (usize::MAX, 0),
        }
    }

    /// How many wait at the end of a wall.
    #[inline]
    fn at(&self, wall: usize) -> i64 {
        let within = |(a, b): (usize, usize)| i64::from(a <= wall && wall < b);
        within(self.span()) + within(self.second())
    }
}

/// What waits, for the whole house.
#[derive(Clone, Debug)]
pub(super) struct Waits {
    travel: Travel,
    /// The place in the order of the wall of each part.
    walls: Vec<usize>,
    /// How many wait at the end of each wall.
    counts: Vec<i64>,
    /// How many wait too many at the ends of walls, and walls that panels go too far.
    excess: i64,
    /// How many wait at the ends of all walls together.
    total: i64,
    /// Panels by the walls they may serve without another offcut waiting.
    pub racks: Vec<Racks>,
}

impl Waits {
    /// None where offcuts may travel as they like.
    pub(super) fn new(digest: &Digest) -> Option<Self> {
        let travel = digest.rules.travel?;
        Some(Waits {
            travel,
            walls: digest.parts.iter().map(|p| p.wall).collect(),
            counts: vec![0; travel.walls],
            excess: 0,
            total: 0,
            racks: vec![Racks::default(); travel.walls],
        })
    }

    /// The place in the order of a part's wall.
    #[inline]
    pub(super) fn wall(&self, part: usize) -> usize {
        self.walls[part]
    }

    pub(super) fn excess(&self) -> i64 {
        self.excess
    }

    /// What all that waits costs.
    #[inline]
    pub(super) fn cost(&self) -> i64 {
        self.excess * TOO_MANY + self.total * WAITING
    }

    /// Where the pieces of a panel go.
    #[inline]
    pub(super) fn stay(&self, panel: &Panel) -> Stay {
        let mut stay = Stay::NONE;
        for part in &panel.ones {
            stay = stay.with(Hand::Middle, self.walls[*part]);
        }
        stay.ends = [panel.left_hand, panel.right_hand].map(|p| p.map(|p| self.walls[p]));
        stay
    }

    /// Counts a cut panel in or out.
    pub(super) fn count(&mut self, number: usize, panel: &Panel, sign: i64) {
        let stay = self.stay(panel);
        let (first, last) = stay.span();
        for wall in first..last {
            let n = stay.at(wall);
            let before = (self.counts[wall] - self.travel.most).max(0);
            self.counts[wall] += sign * n;
            self.excess += (self.counts[wall] - self.travel.most).max(0) - before;
            self.total += sign * n;
        }
        self.excess += sign * self.too_far((first, last));
        let Some(racks) = self.racks.get_mut(first..=last) else { return };
        for racks in racks {
            let put = |rack: &mut Rack| {
                if sign > 0 {
                    rack.insert(panel.free, number)
                } else {
                    rack.remove(panel.free, number)
                }
            };
            put(&mut racks.any);
            if panel.left_hand.is_none() {
                put(&mut racks.no_left);
            }
            if panel.right_hand.is_none() {
                put(&mut racks.no_right);
            }
        }
    }

    #[inline]
    fn too_far(&self, (first, last): (usize, usize)) -> i64 {
        let over = last.saturating_sub(first).saturating_sub(self.travel.reach);
        i64::try_from(over).unwrap_or(i64::MAX)
    }

    /// What it costs that a cut panel gives these pieces to a wall as well.
    #[inline]
    pub(super) fn added(&self, panel: &Panel, hands: &[Hand], wall: usize) -> i64 {
        let before = self.stay(panel);
        let after = hands.iter().fold(before, |s, h| s.with(*h, wall));
        if before == after {
            return 0;
        }
        let (old, new) = (before.span(), after.span());
        if old.0 > old.1 {
            return 0;
        }
        let mut cost = (self.too_far(new) - self.too_far(old)) * TOO_MANY;
        for i in new.0..new.1 {
            let more = after.at(i) - before.at(i);
            let over = |n: i64| (n - self.travel.most).max(0);
            cost +=
                (over(self.counts[i] + more) - over(self.counts[i])) * TOO_MANY + more * WAITING;
        }
        cost
    }

    /// The end of a wall where too many wait.
    pub(super) fn crowded(&self) -> Option<usize> {
        self.counts.iter().position(|n| *n > self.travel.most)
    }

    /// At how many ends of walls where too many wait fewer do, once a panel's pieces on walls after this one
    /// come from another panel.
    pub(super) fn gain(&self, panel: &Panel, after: usize) -> i64 {
        let stay = self.stay(panel);
        let whole = stay.span();
        if !(whole.0 <= after && after < whole.1) {
            return 0;
        }
        let parts = panel.ones.iter().map(|p| (Hand::Middle, *p));
        let left = panel.left_hand.map(|p| (Hand::Left, p));
        let right = panel.right_hand.map(|p| (Hand::Right, p));
        let (mut before, mut later) = (Stay::NONE, Stay::NONE);
        for (hand, part) in parts.chain(left).chain(right) {
            let wall = self.walls[part];
            let side = if wall <= after { &mut before } else { &mut later };
            *side = side.with(hand, wall);
        }
        let relieved = |i: &usize| {
            self.counts[*i] > self.travel.most && stay.at(*i) > before.at(*i) + later.at(*i)
        };
        (whole.0..whole.1).filter(relieved).count() as i64
    }

    /// Whether a panel goes too far, and the wall after which it does.
    pub(super) fn far(&self, panel: &Panel) -> Option<usize> {
        let span = self.stay(panel).span();
        (self.too_far(span) > 0).then(|| span.0 + self.travel.reach)
    }
}
