//! Offcuts that wait, counted at the ends of walls: a panel of which pieces are on walls 1, 3 and 4 waits
//! after walls 1, 2 and 3. Where a piece from its middle is used before both end pieces, two offcuts of it
//! wait, until one of these is used.

use super::panel::Panel;
use super::part::Digest;
use super::rules::{Travel, UNIT};

/// One offcut too many costs as much as the panel that is opened instead.
const TOO_MANY: i64 = UNIT;
/// What an offcut costs that waits at the end of a wall, so that of two layouts the one of which fewer wait is
/// taken: far less than a seam.
const WAITING: i64 = UNIT / 400;

/// Which piece of a panel.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Hand {
    Left,
    Right,
    Middle,
}

/// On which walls, by their place in the order, pieces of one panel are.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Stay {
    /// That of the left-hand and of the right-hand piece; [`NO_WALL`] where there is none.
    ends: [u32; 2],
    /// The first and last of those of its middle; none where the first is over the last.
    ones: (u32, u32),
    /// The first and the last of all; the first over the last where there is no piece.
    span: (u32, u32),
}

const NO_WALL: u32 = u32::MAX;

impl Stay {
    const NONE: Stay = Stay { ends: [NO_WALL; 2], ones: (NO_WALL, 0), span: (NO_WALL, 0) };

    #[inline]
    fn with(mut self, hand: Hand, wall: u32) -> Stay {
        match hand {
            Hand::Left => self.ends[0] = wall,
            Hand::Right => self.ends[1] = wall,
            Hand::Middle => self.ones = (self.ones.0.min(wall), self.ones.1.max(wall)),
        }
        self.span = (self.span.0.min(wall), self.span.1.max(wall));
        self
    }

    #[inline]
    fn serves(&self, wall: u32) -> bool {
        self.span.0 <= wall && wall <= self.span.1
    }

    /// At the ends of which walls a second offcut waits: from the first of these to before the last.
    #[inline]
    fn second(&self) -> (u32, u32) {
        match self.ends {
            [left, right] if left != NO_WALL && right != NO_WALL => (self.ones.0, left.min(right)),
            _ => (NO_WALL, 0),
        }
    }

    /// How many wait at the end of a wall.
    #[inline]
    fn at(&self, wall: u32) -> i64 {
        let within = |(a, b): (u32, u32)| i64::from(a <= wall && wall < b);
        within(self.span) + within(self.second())
    }
}

/// What waits, for the whole house.
#[derive(Clone, Debug)]
pub(super) struct Waits {
    travel: Travel,
    /// The place in the order of the wall of each part.
    walls: Vec<u32>,
    /// Where the pieces of each panel go, by number: kept, since it is asked for with every piece that is tried.
    stays: Vec<Stay>,
    /// How many wait at the end of each wall.
    counts: Vec<i64>,
    /// How many wait too many at the ends of walls, and walls that panels go too far.
    excess: i64,
    /// How many wait at the ends of all walls together.
    total: i64,
}

impl Waits {
    /// None where offcuts may travel as they like.
    pub(super) fn new(digest: &Digest) -> Option<Self> {
        let travel = digest.rules.travel?;
        Some(Waits {
            travel,
            walls: digest.parts.iter().map(|p| u32::try_from(p.wall).unwrap_or(0)).collect(),
            stays: Vec::new(),
            counts: vec![0; travel.walls],
            excess: 0,
            total: 0,
        })
    }

    /// The place in the order of a part's wall.
    #[inline]
    pub(super) fn wall(&self, part: usize) -> u32 {
        self.walls[part]
    }

    /// Makes place for one more panel's number.
    pub(super) fn grow(&mut self) {
        self.stays.push(Stay::NONE);
    }

    /// Whether a cut panel may serve a wall without another offcut waiting.
    #[inline]
    pub(super) fn serves(&self, panel: usize, wall: u32) -> bool {
        self.stays[panel].serves(wall)
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
    fn stay(&self, panel: &Panel) -> Stay {
        let mut stay = Stay::NONE;
        for part in &panel.ones {
            stay = stay.with(Hand::Middle, self.walls[*part]);
        }
        for (part, hand) in [(panel.left_hand, Hand::Left), (panel.right_hand, Hand::Right)] {
            stay = part.map_or(stay, |p| stay.with(hand, self.walls[p]));
        }
        stay
    }

    /// Counts a panel in that has been cut.
    #[inline]
    pub(super) fn enter(&mut self, number: usize, panel: &Panel) {
        let stay = self.stay(panel);
        self.stays[number] = stay;
        self.count(&stay, 1);
    }

    /// Counts a cut panel out.
    #[inline]
    pub(super) fn leave(&mut self, number: usize) {
        let stay = std::mem::replace(&mut self.stays[number], Stay::NONE);
        self.count(&stay, -1);
    }

    #[inline]
    fn count(&mut self, stay: &Stay, sign: i64) {
        let (first, last) = stay.span;
        for wall in first..last {
            let n = sign * stay.at(wall);
            let count = &mut self.counts[wall as usize];
            let before = (*count - self.travel.most).max(0);
            *count += n;
            self.excess += (*count - self.travel.most).max(0) - before;
            self.total += n;
        }
        self.excess += sign * self.too_far(stay.span);
    }

    #[inline]
    fn too_far(&self, (first, last): (u32, u32)) -> i64 {
        let over = (last.saturating_sub(first) as usize).saturating_sub(self.travel.reach);
        i64::try_from(over).unwrap_or(i64::MAX)
    }

    /// What it costs that a cut panel gives these pieces to a wall as well.
    #[inline]
    pub(super) fn added(&self, panel: usize, hands: &[Hand], wall: u32) -> i64 {
        let before = &self.stays[panel];
        let after = hands.iter().fold(*before, |s, h| s.with(*h, wall));
        // Nothing waits longer, as with most pieces that are tried.
        if before.span == after.span && after.second() == before.second() {
            return 0;
        }
        if before.span.0 > before.span.1 {
            return 0;
        }
        self.longer(before, &after)
    }

    fn longer(&self, before: &Stay, after: &Stay) -> i64 {
        let mut cost = (self.too_far(after.span) - self.too_far(before.span)) * TOO_MANY;
        for i in after.span.0..after.span.1 {
            let more = after.at(i) - before.at(i);
            let count = self.counts[i as usize];
            let over = |n: i64| (n - self.travel.most).max(0);
            cost += (over(count + more) - over(count)) * TOO_MANY + more * WAITING;
        }
        cost
    }

    /// The end of a wall where too many wait.
    pub(super) fn crowded(&self) -> Option<u32> {
        self.counts.iter().position(|n| *n > self.travel.most).and_then(|i| u32::try_from(i).ok())
    }

    /// At how many ends of walls where too many wait fewer do, once a panel's pieces on walls after this one
    /// come from another panel.
    pub(super) fn gain(&self, panel: &Panel, after: u32) -> i64 {
        let stay = self.stay(panel);
        let whole = stay.span;
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
        let relieved = |i: &u32| {
            self.counts[*i as usize] > self.travel.most
                && stay.at(*i) > before.at(*i) + later.at(*i)
        };
        (whole.0..whole.1).filter(relieved).count() as i64
    }

    /// Whether a panel goes too far, and the wall after which it does.
    pub(super) fn far(&self, panel: &Panel) -> Option<u32> {
        let span = self.stay(panel).span;
        let reach = || u32::try_from(self.travel.reach).unwrap_or(u32::MAX);
        (self.too_far(span) > 0).then(|| span.0.saturating_add(reach()))
    }
}
