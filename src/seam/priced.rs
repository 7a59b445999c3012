//! Prices of pieces, and the panel full of pieces that they make dearest.
//!
//! A panel gives at most one end piece for the left and one for the right end of a run, and pieces from
//! between them. The runs seen in a mirror ask for the same panels, so that both hands have one price.

use std::collections::BTreeMap;

use crate::knapsack::Knapsack;

/// Prices of the pieces of a panel. Whole numbers are exact in them.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Prices {
    /// Of end pieces from this length on, rising: added to what is before. The first length is the
    /// shortest that an end piece may have.
    pub(super) steps: Vec<(i64, f64)>,
    /// Added for each step of length beyond the first.
    pub(super) slope: f64,
    /// Of runs of one piece, in the order of their lengths.
    pub(super) ones: Vec<f64>,
}

/// A panel, and what can be cut from it.
#[derive(Clone, Debug, Default)]
pub(super) struct Stock {
    pub(super) panel: i64,
    pub(super) kerf: i64,
    /// Lengths of runs of one piece, rising, and how many runs there are of each.
    pub(super) ones: Vec<(i64, usize)>,
}

/// Pieces of one panel and what they are worth.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Pattern {
    pub(super) worth: f64,
    /// Lengths of the end pieces.
    pub(super) ends: Vec<i64>,
    /// How many runs of one piece, by their place in the list.
    pub(super) ones: BTreeMap<usize, usize>,
}

impl Prices {
    /// Price of an end piece.
    pub(super) fn end(&self, length: i64) -> f64 {
        let shortest = self.shortest();
        if length < shortest {
            return 0.0;
        }
        let steps = self.steps.iter().take_while(|s| s.0 <= length).map(|s| s.1);
        steps.sum::<f64>() + self.slope * (length - shortest) as f64
    }

    fn shortest(&self) -> i64 {
        self.steps.first().map_or(i64::MAX, |s| s.0)
    }

    /// The first pieces of two ends that sum to `sum` at which both are worth least, within limits.
    pub(super) fn cheapest(&self, sum: i64, least: i64, most: i64) -> (f64, i64) {
        let below = self.steps.iter().map(|s| s.0 - 1);
        let tried = below.clone().chain(below.map(|a| sum - a)).filter(|a| *a > least && *a < most);
        let worth = |a: i64| (self.end(a) + self.end(sum - a), a);
        let first = worth(least);
        let better = |best: (f64, i64), a: (f64, i64)| if a.0 < best.0 { a } else { best };
        tried.chain([most]).map(worth).fold(first, better)
    }
}

impl Stock {
    /// What a panel holds when each piece is charged one kerf.
    fn room(&self) -> i64 {
        self.panel + self.kerf
    }

    /// The most that the ends of a panel are worth in each room, from 0 on, and their lengths.
    fn ends(&self, prices: &Prices) -> Vec<(f64, [i64; 2])> {
        let (shortest, kerf) = (prices.shortest(), self.kerf);
        let worth: Vec<f64> = (0..=self.panel).map(|l| prices.end(l)).collect();
        let at = |l: i64| worth[usize::try_from(l).unwrap_or(0)];
        let of_room = |room: i64| {
            let one = (room - kerf).min(self.panel);
            let mut best = (0.0, [0, 0]);
            if one < shortest {
                return best;
            }
            best = (at(one), [one, 0]);
            let both = room - 2 * kerf;
            // One of both is no longer than its price asks for.
            for (a, _) in &prices.steps {
                let b = (both - a).min(self.panel);
                if b < *a {
                    break;
                }
                let sum = at(*a) + at(b);
                if sum > best.0 {
                    best = (sum, [*a, b]);
                }
            }
            best
        };
        (0..=self.room()).map(of_room).collect()
    }

    /// The dearest panels: one for each room that runs of one piece leave for end pieces, the dearest
    /// first, those alone that are worth more than `over`, and always the dearest. Counts what it did.
    pub(super) fn dearest(&self, prices: &Prices, over: f64, effort: &mut u64) -> Vec<Pattern> {
        let room = usize::try_from(self.room()).unwrap_or(0);
        let ends = self.ends(prices);
        // Every run of one piece that is worth something, and which of them the best for each room holds.
        let mut items: Vec<usize> = Vec::new();
        for (i, (length, runs)) in self.ones.iter().enumerate() {
            let fit = usize::try_from(self.room() / (length + self.kerf)).unwrap_or(0);
            if prices.ones[i] > 0.0 {
                items.extend(std::iter::repeat_n(i, fit.min(*runs)));
            }
        }
        let each: Vec<(usize, f64)> = items
            .iter()
            .map(|i| ((self.ones[*i].0 + self.kerf) as usize, prices.ones[*i]))
            .collect();
        let cut = Knapsack::of(&each, room);
        let most = &cut.most;
        *effort += (room * (items.len() + prices.steps.len() + 1)) as u64;
        // With as little room as they need.
        let tight = (0..=room).filter(|w| *w == 0 || most[*w] > most[*w - 1]);
        let mut found: Vec<(f64, usize)> = tight.map(|w| (most[w] + ends[room - w].0, w)).collect();
        found.sort_by(|a, b| b.0.total_cmp(&a.0).then(a.1.cmp(&b.1)));
        let kept = found.iter().enumerate().take_while(|(i, f)| *i == 0 || f.0 > over);
        let pattern = |(_, (worth, width)): (usize, &(f64, usize))| {
            let ends = ends[room - width].1.into_iter().filter(|l| *l > 0).collect();
            let mut ones = BTreeMap::new();
            for k in cut.items(*width) {
                *ones.entry(items[k]).or_insert(0) += 1;
            }
            Pattern { worth: *worth, ends, ones }
        };
        kept.take(MOST).map(pattern).collect()
    }
}

/// Most panels told at a time.
const MOST: usize = 40;

#[cfg(test)]
mod tests {
    use super::*;

    /// Panels of 40 with a saw cut of 2, runs of one piece of 9 (at most two of them) and 14.
    fn stock() -> Stock {
        Stock { panel: 40, kerf: 2, ones: vec![(9, 2), (14, 9)] }
    }

    #[test]
    fn the_dearest_panel_is_that_of_every_way_to_cut_one() {
        let mut s = 3u64;
        for _ in 0..40 {
            let mut next = |n: u64| {
                s = s.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1);
                ((s >> 33) % n) as i64
            };
            let mut steps = vec![(5, next(9) as f64)];
            steps.extend((0..3).map(|i| (8 + 9 * i + next(9), next(9) as f64)));
            let ones = vec![next(30) as f64, next(30) as f64];
            let prices = Prices { steps, slope: next(3) as f64, ones };
            // Every number of runs of one piece, every pair of end pieces or one or none.
            let mut most = 0.0f64;
            for (n, m) in (0..=2).flat_map(|n| (0..=2).map(move |m| (n, m))) {
                let room = 42 - 11 * n - 16 * m;
                let between = n as f64 * prices.ones[0] + m as f64 * prices.ones[1];
                let ends = |a: i64, b: i64| {
                    let taken: i64 = [a, b].into_iter().filter(|l| *l > 0).map(|l| l + 2).sum();
                    (taken <= room).then(|| prices.end(a) + prices.end(b))
                };
                let all = (0..=40).flat_map(|a| (0..=40).filter_map(move |b| ends(a, b)));
                most = all.map(|e| e + between).fold(most, f64::max);
            }
            let found = stock().dearest(&prices, f64::INFINITY, &mut 0);
            assert_eq!(found[0].worth, most, "{prices:?}");
            // It is worth what its pieces are, and they fit.
            let p = &found[0];
            let ends: f64 = p.ends.iter().map(|l| prices.end(*l)).sum();
            let ones: f64 = p.ones.iter().map(|(i, n)| *n as f64 * prices.ones[*i]).sum();
            assert_eq!(p.worth, ends + ones);
            let ones = p.ones.iter().map(|(i, n)| *n as i64 * (stock().ones[*i].0 + 2));
            assert!(p.ends.iter().map(|l| l + 2).sum::<i64>() + ones.sum::<i64>() <= 42);
            assert!(p.ends.len() <= 2 && p.ones.get(&0).is_none_or(|n| *n <= 2));
        }
    }

    #[test]
    fn two_ends_are_cheapest_at_a_length_under_a_step() {
        let steps = vec![(5, 2.0), (11, 3.0), (19, 1.0), (20, 4.0)];
        let prices = Prices { steps, slope: 0.5, ones: Vec::new() };
        for sum in 10..=60 {
            let (least, most) = (5.max(sum - 40), 40.min(sum - 5));
            let all = (least..=most).map(|a| prices.end(a) + prices.end(sum - a));
            let (worth, a) = prices.cheapest(sum, least, most);
            assert_eq!(Some(worth), all.reduce(f64::min), "{sum}");
            assert_eq!(worth, prices.end(a) + prices.end(sum - a));
        }
    }
}
