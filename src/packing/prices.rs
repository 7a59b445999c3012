//! The bound by prices: prices of pieces under which no filling of a stock piece is worth more than one
//! make what all pieces are worth a bound (Gilmore and Gomory 1961); where the dearest filling is worth
//! more, all is divided by that (Farley 1990). What is concluded is worked out from whole numbers.
//!
//! Widths are rounded down to about a thousand parts of the room: whatever fits, fits then too, so that the
//! bound stays one.

use crate::knapsack::Knapsack;
use crate::master::Master;

/// Parts of the room that widths are counted in.
const PARTS: u64 = 1024;
/// Parts of a stock piece that prices are counted in.
const PRICE: f64 = 1e6;
/// Differences in prices that are none.
const ALIKE: f64 = 1e-7;
/// Times that fillings are sought for new prices.
const ROUNDS: usize = 60;
/// Fillings taken in at a time.
const TAKEN: usize = 12;
/// Numbers looked at in all.
const EFFORT: u64 = 6_000_000;
/// Exchanges of columns at a time.
const EXCHANGES: usize = 400;

/// Stock pieces that no plan can undercut, `wanted` at most being asked for. `kinds` holds the weight of
/// each kind of piece and how many there are.
pub(super) fn bound(kinds: &[(u64, usize)], room: u64, wanted: usize) -> usize {
    let part = room.div_ceil(PARTS).max(1);
    let width = |w: u64| usize::try_from(w / part).unwrap_or(usize::MAX);
    let kinds: Vec<(usize, usize)> = kinds.iter().map(|(w, n)| (width(*w), *n)).collect();
    let room = width(room);
    let mut master = Master::default();
    for (_, n) in &kinds {
        master.row(*n as f64, 1.0, &[]);
    }
    let (mut best, mut effort) = (0, 0);
    for _ in 0..ROUNDS {
        master.settle(EXCHANGES);
        let items = items(&kinds, room, &master.prices);
        let each: Vec<(usize, f64)> = items.iter().map(|(_, w, price)| (*w, *price)).collect();
        let found = Knapsack::of(&each, room);
        let dearest = found.most.last().copied().unwrap_or(0.0).max(1.0);
        let worth: f64 =
            kinds.iter().zip(&master.prices).map(|(k, p)| k.1 as f64 * whole(*p)).sum();
        best = best.max((worth / dearest - ALIKE).ceil() as usize);
        effort += (items.len() * room) as u64;
        if best >= wanted || dearest <= PRICE * (1.0 + ALIKE) || effort + master.effort > EFFORT {
            break;
        }
        for counts in fillings(&found, &items, room) {
            master.column(1.0, counts);
        }
    }
    best
}

fn whole(price: f64) -> f64 {
    (price.max(0.0) * PRICE).floor()
}

/// Pieces worth something, each as often as it may be in one filling: kind, width, price.
fn items(kinds: &[(usize, usize)], room: usize, prices: &[f64]) -> Vec<(usize, usize, f64)> {
    let mut out = Vec::new();
    for (i, ((width, n), price)) in kinds.iter().zip(prices).enumerate() {
        let price = whole(*price);
        let most = room.checked_div(*width).unwrap_or(*n).min(*n);
        if price > 0.0 {
            out.extend(std::iter::repeat_n((i, *width, price), most));
        }
    }
    out
}

/// The dearest fillings, one for each width that holds more than those under it: how many of each kind.
fn fillings(
    found: &Knapsack,
    items: &[(usize, usize, f64)],
    room: usize,
) -> Vec<Vec<(usize, f64)>> {
    let most = &found.most;
    let mut widths: Vec<usize> = (1..=room)
        .filter(|w| most[*w] > most[*w - 1] && most[*w] > PRICE * (1.0 + ALIKE))
        .collect();
    widths.reverse();
    widths.sort_by(|a, b| most[*b].total_cmp(&most[*a]));
    widths.truncate(TAKEN);
    let counted = |width: usize| {
        let mut counts: Vec<(usize, f64)> = Vec::new();
        for i in found.items(width).into_iter().rev() {
            match counts.last_mut() {
                Some((kind, n)) if *kind == items[i].0 => *n += 1.0,
                _ => counts.push((items[i].0, 1.0)),
            }
        }
        counts
    };
    widths.into_iter().map(counted).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Whether pieces go into so many stock pieces, by trying every one of them in each.
    fn fits(weights: &[u64], free: &mut [u64]) -> bool {
        let Some((w, rest)) = weights.split_first() else { return true };
        for i in 0..free.len() {
            let alike = free[..i].contains(&free[i]);
            if free[i] >= *w && !alike {
                free[i] -= w;
                if fits(rest, free) {
                    return true;
                }
                free[i] += w;
            }
        }
        false
    }

    #[test]
    fn no_plan_is_under_the_bound_and_most_meet_it() {
        let mut s = 11u64;
        let mut next = |n: u64| {
            s = s.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1);
            (s >> 33) % n
        };
        let mut met = 0;
        for _ in 0..200 {
            let mut weights: Vec<u64> = (0..10).map(|_| 900 + next(5000)).collect();
            weights.sort_unstable_by(|a, b| b.cmp(a));
            let fewest = (1..=10).find(|n| fits(&weights, &mut vec![10_000; *n])).unwrap();
            let kinds: Vec<(u64, usize)> = weights.iter().map(|w| (*w, 1)).collect();
            let bound = bound(&kinds, 10_000, fewest);
            assert!(bound <= fewest, "{weights:?}: {bound} for {fewest}");
            met += usize::from(bound == fewest);
        }
        // Of such cases the mix of fillings, rounded up, is nearly always the fewest (Scheithauer and Terno 1995).
        assert!(met >= 195, "{met}");
    }

    #[test]
    fn prices_tell_what_no_length_tells() {
        // Room of 20; four of 9 and four of 6, 60 in all: three by length. A filling is two of 9, or one of
        // each, or three of 6: at 1/2 for a 9 and 1/3 for a 6 none is worth more than one, and all are worth
        // 4/2 + 4/3, more than three.
        assert_eq!(bound(&[(9, 4), (6, 4)], 20, 9), 4);
    }
}
