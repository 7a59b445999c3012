//! Cutting lengths from stock: the fewest stock pieces, with a bound under which none can go.
//!
//! One-dimensional bin packing. A weight is a length and one saw cut, the room a stock piece and
//! one saw cut, since the last piece of a stock needs no cut after it. First fit decreasing starts;
//! whole fillings then close the gap to the bound within a budget counted in steps, not in time.
//!
//! Bounds: total length; and the step functions of Fekete and Schepers (2001), which contain the
//! bound of Martello and Toth (1990). Search: Korf's filling by filling (2003), the largest piece
//! first, and only fillings that nothing more goes into.

use std::collections::BTreeSet;

/// Weights in 1/1024 in, so that sums are exact.
pub(crate) const STEPS: f64 = 1024.0;
/// A piece may be over its room by this much, steps: cut lengths are given to 1/16 in.
const PLAY: u64 = 1;
/// Steps of the search for each number of stock pieces aimed at: some 10 ms.
const BUDGET: u32 = 200_000;
/// Pieces searched as one; more are searched in windows of this many.
const WINDOW: usize = 120;
/// Windows searched at most.
const WINDOWS: usize = 40;
/// Steps of each: what a window has, it shows early or not at all.
const GLANCE: u32 = BUDGET / 4;
/// Fillings kept of one branching, fullest first; with more the search proves nothing.
const WIDTH: usize = 64;
/// Bad states remembered.
const MEMORY: usize = 20_000;

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

/// The number of stock pieces under which no plan of [`least`] can go, as [`plan`] has it.
pub fn bound(lengths: &[f64], stock: f64, kerf: f64) -> usize {
    if lengths.len() <= WINDOW {
        return plan(lengths, stock, kerf).bound;
    }
    // Of more pieces than are searched as one only the formulas tell.
    let room = room(stock, kerf);
    let weights: Vec<u64> = lengths.iter().map(|l| weight(*l, room, kerf)).collect();
    lower_bound(&weights, room)
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
    let mut bound = lower_bound(&weights, room);
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

enum Outcome {
    Found(Vec<Vec<usize>>),
    Impossible,
    Unknown,
}

/// Pieces of one weight.
struct Kind {
    weight: u64,
    at: Vec<usize>,
}

struct Search {
    kinds: Vec<Kind>,
    room: u64,
    left: u32,
    cut_short: bool,
    /// Counts that lead nowhere, as bytes, which compare fastest.
    dead: BTreeSet<Vec<u8>>,
    chosen: Vec<Vec<u16>>,
}

/// Tries to get everything into `aim` stock pieces within a budget of steps.
fn fill(weights: &[u64], room: u64, aim: usize, budget: u32) -> Outcome {
    let mut kinds: Vec<Kind> = Vec::new();
    for (i, w) in weights.iter().enumerate() {
        match kinds.last_mut() {
            Some(k) if k.weight == *w && k.at.len() < usize::from(u16::MAX) => k.at.push(i),
            _ => kinds.push(Kind { weight: *w, at: vec![i] }),
        }
    }
    let sum: u64 = weights.iter().sum();
    let Some(slack) = (room.saturating_mul(aim as u64)).checked_sub(sum) else {
        return Outcome::Impossible;
    };
    let counts: Vec<u16> = kinds.iter().map(|k| k.at.len() as u16).collect();
    let mut search = Search {
        kinds,
        room,
        left: budget,
        cut_short: false,
        dead: BTreeSet::new(),
        chosen: Vec::new(),
    };
    if search.go(counts, slack) {
        return Outcome::Found(search.positions());
    }
    if search.cut_short { Outcome::Unknown } else { Outcome::Impossible }
}

impl Search {
    /// Fills one stock after another; `slack` is the room that may yet stay empty.
    fn go(&mut self, counts: Vec<u16>, slack: u64) -> bool {
        let Some(first) = counts.iter().position(|c| *c > 0) else { return true };
        let key: Vec<u8> = counts.iter().flat_map(|c| c.to_be_bytes()).collect();
        if self.dead.contains(&key) {
            return false;
        }
        if self.left == 0 {
            self.cut_short = true;
            return false;
        }
        let mut one = vec![0u16; counts.len()];
        one[first] = 1;
        let mut found = Vec::new();
        let free = self.room - self.kinds[first].weight;
        self.fillings(&counts, first, free, slack, &mut one, &mut found);
        found.sort_by(|a: &(u64, Vec<u16>), b| a.0.cmp(&b.0).then_with(|| b.1.cmp(&a.1)));
        if found.len() > WIDTH {
            found.truncate(WIDTH);
            self.cut_short = true;
        }
        for (empty, filling) in found {
            let rest = counts.iter().zip(&filling).map(|(c, f)| c - f).collect();
            self.chosen.push(filling);
            if self.go(rest, slack - empty) {
                return true;
            }
            self.chosen.pop();
        }
        // Slack left over is the same for the same counts: what is dead stays dead.
        if self.dead.len() < MEMORY {
            self.dead.insert(key);
        }
        false
    }

    /// Every way to fill what is `free` with kinds from `from` on, so that nothing more goes in and
    /// no more than `slack` stays empty.
    fn fillings(
        &mut self,
        counts: &[u16],
        from: usize,
        free: u64,
        slack: u64,
        one: &mut Vec<u16>,
        found: &mut Vec<(u64, Vec<u16>)>,
    ) {
        // More than are kept, so that the fullest of many are kept.
        if found.len() >= 8 * WIDTH || self.left == 0 {
            self.cut_short = true;
            return;
        }
        self.left -= 1;
        // Weights fall: those that go in stand together at the end.
        let fits = self.kinds.partition_point(|k| k.weight > free);
        let next = (from.max(fits)..counts.len()).find(|k| counts[*k] > one[*k]);
        let Some(k) = next else {
            let full = (fits..counts.len()).all(|k| counts[k] == one[k]);
            if full && free <= slack {
                found.push((free, one.clone()));
            }
            return;
        };
        let most = (free / self.kinds[k].weight.max(1)).min(u64::from(counts[k] - one[k])) as u16;
        for n in (0..=most).rev() {
            one[k] += n;
            self.fillings(
                counts,
                k + 1,
                free - u64::from(n) * self.kinds[k].weight,
                slack,
                one,
                found,
            );
            one[k] -= n;
        }
    }

    /// Kinds back to positions.
    fn positions(&self) -> Vec<Vec<usize>> {
        let mut next = vec![0usize; self.kinds.len()];
        let mut out = Vec::new();
        for filling in &self.chosen {
            let mut stock = Vec::new();
            for (k, n) in filling.iter().enumerate() {
                let n = usize::from(*n);
                stock.extend(self.kinds[k].at.iter().skip(next[k]).take(n));
                next[k] += n;
            }
            out.push(stock);
        }
        out
    }
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
        assert_eq!(bound(lengths, stock, kerf), plan.bound);
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
