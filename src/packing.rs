//! Cutting lengths from stock: the fewest stock pieces, with a bound under which none can go.
//!
//! One-dimensional bin packing. A weight is a length and one saw cut, the room a stock piece and
//! one saw cut, since the last piece of a stock needs no cut after it. First fit decreasing starts;
//! whole fillings then close the gap to the bound within a budget counted in steps, not in time.
//!
//! Bounds: total length; the step functions of Fekete and Schepers (2001), which contain the bound of
//! Martello and Toth (1990); where a gap is left, prices. Search: Korf's filling by filling (2003).

mod fillings;
mod prices;

use std::collections::BTreeSet;

use fillings::{Outcome, fill};

/// Weights in 1/1024 in, so that sums are exact.
pub(crate) const STEPS: f64 = 1024.0;
/// A piece may be over its room by this much, steps: cut lengths are given to 1/16 in.
const PLAY: u64 = 1;
/// Steps of the search for each number of stock pieces aimed at: some milliseconds. On 236 lots of 40 houses
/// four times as many found no stock piece less, two fifths as many two more.
const BUDGET: u32 = 50_000;
/// Pieces searched as one; more are searched in windows of this many.
const WINDOW: usize = 120;
/// Lengths that prices are sought for at most.
const KINDS: usize = 150;
/// Windows searched at most.
const WINDOWS: usize = 40;
/// Steps of each: what a window has, it shows early or not at all.
const GLANCE: u32 = BUDGET;

/// A cutting plan.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Plan {
    /// Indices of the lengths cut from each stock piece, longest first.
    pub stocks: Vec<Vec<usize>>,
    /// No plan can do with fewer stock pieces.
    pub bound: usize,
}

/// The fewest stock pieces found: indices of `lengths` by stock piece. A length over `stock` gets
/// one of its own. Lengths, stock and saw cut in one unit.
pub fn least(lengths: &[f64], stock: f64, kerf: f64) -> Vec<Vec<usize>> {
    plan(lengths, stock, kerf).stocks
}

/// The number of stock pieces under which no plan of [`least`] can go, for a plan that takes `used` of them.
pub fn bound(lengths: &[f64], stock: f64, kerf: f64, used: usize) -> usize {
    let room = room(stock, kerf);
    let mut weights: Vec<u64> = lengths.iter().map(|l| weight(*l, room, kerf)).collect();
    weights.sort_unstable_by(|a, b| b.cmp(a));
    let bound = reckoned(&weights, room, used);
    // Of more pieces than are searched as one no search tells.
    if bound >= used || weights.len() > WINDOW {
        return bound.min(used);
    }
    plan(lengths, stock, kerf).bound
}

/// The bound that is reckoned, without a search, of weights that fall; prices are sought where `used` is more.
fn reckoned(weights: &[u64], room: u64, used: usize) -> usize {
    let bound = lower_bound(weights, room);
    if bound >= used {
        return bound;
    }
    let mut kinds: Vec<(u64, usize)> = Vec::new();
    for w in weights {
        match kinds.last_mut() {
            Some((weight, n)) if weight == w => *n += 1,
            _ => kinds.push((*w, 1)),
        }
    }
    if kinds.len() > KINDS {
        return bound;
    }
    bound.max(prices::bound(&kinds, room, used))
}

pub(crate) fn room(stock: f64, kerf: f64) -> u64 {
    steps(stock.max(0.0) + kerf) + PLAY
}

/// What a length with its saw cut takes of its stock's room, in the same steps.
pub(crate) fn weight(length: f64, room: u64, kerf: f64) -> u64 {
    steps(length.max(0.0) + kerf).min(room)
}

/// As [`least`], with the bound.
pub fn plan(lengths: &[f64], stock: f64, kerf: f64) -> Plan {
    let room = room(stock, kerf);
    let mut order: Vec<usize> = (0..lengths.len()).collect();
    order.sort_by(|a, b| lengths[*b].total_cmp(&lengths[*a]).then(a.cmp(b)));
    let weights: Vec<u64> = order.iter().map(|i| weight(lengths[*i], room, kerf)).collect();
    let mut best = first_fit(&weights, room);
    let mut bound = reckoned(&weights, room, best.len());
    if weights.len() > WINDOW {
        emptied(&weights, room, bound, &mut best);
        return Plan { stocks: back(&best, &order), bound };
    }
    let mut proved = true;
    let least = bound;
    for aim in least..best.len() {
        match fill(&weights, room, aim, BUDGET) {
            Outcome::Found(fillings) => {
                best = fillings;
                break;
            }
            Outcome::Impossible if proved => bound = aim + 1,
            _ => proved = false,
        }
    }
    Plan { stocks: back(&best, &order), bound }
}

/// Positions in decreasing order back to indices as given.
fn back(stocks: &[Vec<usize>], order: &[usize]) -> Vec<Vec<usize>> {
    stocks.iter().map(|s| s.iter().map(|k| order[*k]).collect()).collect()
}

/// Repacks the emptiest stocks with some of the others, one stock fewer, until that fails.
fn emptied(weights: &[u64], room: u64, bound: usize, best: &mut Vec<Vec<usize>>) {
    let filled = |s: &Vec<usize>| s.iter().map(|i| weights[*i]).sum::<u64>();
    for turn in 0..WINDOWS {
        if best.len() <= bound {
            return;
        }
        best.sort_by(|a, b| filled(a).cmp(&filled(b)).then_with(|| a.cmp(b)));
        // The emptiest, then others from a place that moves on with each turn.
        let n = best.len();
        let others = (0..n - n.min(4)).map(|k| 4 + (k + turn * 7) % (n - 4));
        let mut taken: Vec<usize> = Vec::new();
        let mut pieces: Vec<usize> = Vec::new();
        for s in (0..n.min(4)).chain(others) {
            if !taken.is_empty() && pieces.len() + best[s].len() > WINDOW {
                break;
            }
            taken.push(s);
            pieces.extend(&best[s]);
        }
        pieces.sort_unstable();
        let mine: Vec<u64> = pieces.iter().map(|i| weights[*i]).collect();
        let aim = taken.len().saturating_sub(1);
        if let Outcome::Found(found) = fill(&mine, room, aim, GLANCE) {
            taken.sort_unstable();
            for s in taken.iter().rev() {
                best.remove(*s);
            }
            best.extend(found.iter().map(|s| s.iter().map(|k| pieces[*k]).collect::<Vec<_>>()));
        }
    }
}

fn steps(length: f64) -> u64 {
    // A length no stock has room for, or that is no number, fills one.
    if length.is_finite() { (length * STEPS - 1e-6).ceil().max(0.0) as u64 } else { u64::MAX / 4 }
}

/// First fit, of weights that decrease: positions by stock piece.
fn first_fit(weights: &[u64], room: u64) -> Vec<Vec<usize>> {
    let mut stocks: Vec<Vec<usize>> = Vec::new();
    // A tree over as many stocks as there are pieces, none begun: node k has the most room of its two
    // below, 2k and 2k + 1, so that the first stock with room is found without looking at each.
    let leaves = weights.len().next_power_of_two();
    let mut most = vec![room; 2 * leaves];
    for (i, w) in weights.iter().enumerate() {
        let mut k = 1;
        while k < leaves {
            k = if most[2 * k] >= *w { 2 * k } else { 2 * k + 1 };
        }
        let stock = k - leaves;
        if stock >= stocks.len() {
            stocks.push(Vec::new());
        }
        if let Some(on) = stocks.get_mut(stock) {
            on.push(i);
        }
        most[k] = most[k].saturating_sub(*w);
        while k > 1 {
            k /= 2;
            most[k] = most[2 * k].max(most[2 * k + 1]);
        }
    }
    stocks
}

/// Stock pieces that no plan can undercut, for weights and their room.
fn lower_bound(weights: &[u64], room: u64) -> usize {
    if room == 0 {
        return weights.len();
    }
    let whole = |total: u128, one: u128| total.div_ceil(one.max(1)) as usize;
    let sum: u128 = weights.iter().map(|w| u128::from(*w)).sum();
    let mut best = whole(sum, u128::from(room));
    // Pieces over the room less `e` stand alone, those under `e` count nothing.
    let ends: BTreeSet<u64> =
        weights.iter().map(|w| (*w).min(room - *w)).filter(|e| *e > 0).chain([1]).collect();
    for e in ends {
        let total: u128 = weights
            .iter()
            .map(|w| {
                if *w > room - e.min(room) {
                    u128::from(room)
                } else if *w < e {
                    0
                } else {
                    u128::from(*w)
                }
            })
            .sum();
        best = best.max(whole(total, u128::from(room)));
    }
    // A piece over half of the room is worth k less what may share its stock, others whole shares.
    for k in 2..=12u128 {
        let r = u128::from(room);
        let total: u128 = weights
            .iter()
            .map(|w| {
                let w = u128::from(*w) * (k + 1);
                // Exactly a whole share stays itself, else it is rounded down to shares of 1/k.
                if w % r == 0 { w / r * k } else { w / r * (k + 1) }
            })
            .sum();
        best = best.max(whole(total, k * (k + 1)));
    }
    best
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Fewest stocks by trying every assignment.
    fn exhaustive(lengths: &[f64], stock: f64, kerf: f64) -> usize {
        fn go(i: usize, l: &[f64], room: f64, free: &mut Vec<f64>, best: &mut usize) {
            if free.len() >= *best {
                return;
            }
            let Some(w) = l.get(i) else {
                *best = free.len();
                return;
            };
            for b in 0..free.len() {
                if free[b] >= *w - 1e-9 {
                    free[b] -= w;
                    go(i + 1, l, room, free, best);
                    free[b] += w;
                }
            }
            free.push(room - w);
            go(i + 1, l, room, free, best);
            free.pop();
        }
        let weights: Vec<f64> = lengths.iter().map(|l| l + kerf).collect();
        let mut best = lengths.len() + 1;
        go(0, &weights, stock + kerf, &mut Vec::new(), &mut best);
        best
    }

    fn next(seed: &mut u64) -> u64 {
        *seed =
            seed.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        *seed >> 33
    }

    fn sound(plan: &Plan, lengths: &[f64], stock: f64, kerf: f64) {
        let mut seen: Vec<usize> = plan.stocks.iter().flatten().copied().collect();
        seen.sort_unstable();
        assert_eq!(seen, (0..lengths.len()).collect::<Vec<_>>());
        for s in &plan.stocks {
            let sum: f64 = s.iter().map(|i| lengths[*i]).sum();
            assert!(sum + (s.len() - 1) as f64 * kerf <= stock + 0.002, "{sum} from {stock}");
        }
        assert!(plan.bound <= plan.stocks.len());
        assert_eq!(bound(lengths, stock, kerf, plan.stocks.len()), plan.bound);
    }

    #[test]
    fn as_few_as_trying_everything() {
        let mut seed = 7;
        for round in 0..300 {
            let n = 1 + (next(&mut seed) % 9) as usize;
            let lengths: Vec<f64> =
                (0..n).map(|_| 10.0 + (next(&mut seed) % 1760) as f64 / 16.0).collect();
            let plan = plan(&lengths, 120.0, 0.125);
            sound(&plan, &lengths, 120.0, 0.125);
            let fewest = exhaustive(&lengths, 120.0, 0.125);
            assert_eq!(plan.stocks.len(), fewest, "round {round}: {lengths:?}");
            assert!(plan.bound <= fewest);
        }
    }

    #[test]
    fn fillings_found_where_first_fit_fails() {
        // Johnson's family (1974): first fit decreasing takes 11 where 9 do.
        let (a, b, c, d) = (51.0, 27.0, 26.0, 23.0);
        let mut lengths = Vec::new();
        for (w, n) in [(a, 6), (b, 6), (c, 6), (d, 12)] {
            lengths.extend(std::iter::repeat_n(w, n));
        }
        let weights: Vec<u64> = lengths.iter().map(|l| steps(*l)).collect();
        assert_eq!(first_fit(&weights, steps(100.0)).len(), 11);
        let plan = plan(&lengths, 100.0, 0.0);
        sound(&plan, &lengths, 100.0, 0.0);
        assert_eq!((plan.stocks.len(), plan.bound), (9, 9));
    }

    #[test]
    fn many_pieces_come_within_one_of_the_bound() {
        let mut seed = 3;
        let lengths: Vec<f64> =
            (0..600).map(|_| 12.0 + (next(&mut seed) % 1300) as f64 / 16.0).collect();
        let plan = plan(&lengths, 150.0, 0.125);
        sound(&plan, &lengths, 150.0, 0.125);
        assert!(plan.stocks.len() <= plan.bound + 1, "{} {}", plan.stocks.len(), plan.bound);
    }

    #[test]
    fn the_last_piece_needs_no_saw_cut_and_nothing_hangs() {
        assert_eq!(least(&[60.0, 60.0], 120.0, 0.0).len(), 1);
        assert_eq!(least(&[60.0, 59.875], 120.0, 0.125).len(), 1);
        assert_eq!(least(&[60.0, 60.0], 120.0, 0.125).len(), 2);
        assert_eq!(least(&[], 120.0, 0.125).len(), 0);
        assert_eq!(least(&[500.0, f64::NAN, f64::INFINITY], 120.0, 0.125).len(), 3);
        assert_eq!(least(&[0.0, 0.0], 0.0, 0.0).len(), 1);
    }
}
