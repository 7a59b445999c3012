//! Where seams hit openings, counted: in a notch over a head or under a sill, on a jamb line, near one. The
//! three weigh in this order, and any number of one weighs less than one of that before it.

use std::ops::Add;

/// Bits that count each sort: a house of a million seams goes in.
const BITS: u32 = 20;

/// Hits of three sorts in one whole number, so that sums and comparisons are those of numbers.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Hits(i64);

/// What hits cost in the search, each sort by itself, in millionths of a panel: never worth one.
pub(super) type HitCosts = [i64; 3];

/// In the first search.
pub(super) const LIGHTLY_WEIGHED: HitCosts = [40_000, 30_000, 20_000];

/// In one that keeps off openings from the start.
pub(super) const OPENINGS_WEIGHED: HitCosts = [400_000, 200_000, 60_000];

/// What it costs beside looks of other sorts while parts are laid again.
const LOOKS: [i64; 3] = [150, 130, 100];

impl Hits {
    pub(super) const NONE: Hits = Hits(0);
    pub(super) const IN_NOTCH: Hits = Hits(1 << (2 * BITS));
    pub(super) const ON_JAMB: Hits = Hits(1 << BITS);
    pub(super) const NEAR_JAMB: Hits = Hits(1);

    /// How many of each sort: in notches, on jamb lines, near them.
    #[inline]
    pub(super) fn each(self) -> [i64; 3] {
        let of = |shift: u32| (self.0 >> (shift * BITS)) & ((1 << BITS) - 1);
        [of(2), of(1), of(0)]
    }

    #[inline]
    fn weighed(self, by: [i64; 3]) -> i64 {
        if self == Hits::NONE {
            return 0;
        }
        let [notches, on, near] = self.each();
        notches * by[0] + on * by[1] + near * by[2]
    }

    /// Its cost in the search.
    #[inline]
    pub(super) fn cost(self, costs: HitCosts) -> i64 {
        self.weighed(costs)
    }

    /// Its cost beside looks of other sorts.
    pub(super) fn look(self) -> i64 {
        self.weighed(LOOKS)
    }

    /// Whether a seam stands in a notch or on a jamb line.
    pub(super) fn is_bad(self) -> bool {
        self >= Hits::ON_JAMB
    }

    /// The same, added or taken away.
    #[inline]
    pub(super) fn times(self, sign: i64) -> Hits {
        Hits(self.0 * sign)
    }
}

impl Add for Hits {
    type Output = Hits;

    #[inline]
    fn add(self, other: Hits) -> Hits {
        Hits(self.0 + other.0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn one_seam_in_a_notch_outweighs_all_others_near_jambs() {
        let many = (0..1000).fold(Hits::NONE, |sum, _| sum + Hits::NEAR_JAMB);
        assert!(Hits::IN_NOTCH > many && Hits::IN_NOTCH > Hits::ON_JAMB && Hits::ON_JAMB > many);
        let sum = many + Hits::IN_NOTCH + Hits::ON_JAMB.times(3);
        assert_eq!(sum.each(), [1, 3, 1000]);
        assert_eq!(
            (sum + sum.times(-1), sum.cost(LIGHTLY_WEIGHED)),
            (Hits::NONE, 40_000 + 90_000 + 20_000_000)
        );
    }
}
