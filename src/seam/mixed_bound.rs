//! The lower bound where several kinds of panels are mixed: no layout under the rules weighs less.
//!
//! Let each kind `k` of panel weigh `w(k)` and have a dual-feasible function `f(k)`: the pieces cut from
//! one of its panels sum to 1 at most under it. A piece of length `x` is priced at the least of
//! `w(k) f(k)(x)` over all kinds it fits. Proof that no panel holds pieces priced over what it weighs: a
//! piece cut from a panel of kind `k` fits `k`, so its price is `w(k) f(k)(x)` at most, and over the
//! panel's pieces these sum to `w(k)` at most. It holds for any number of kinds. So the sum over all runs
//! of the least price that the run's pieces can have bounds the weight from below. A run's whole panels
//! are panels by themselves and count as what they weigh; here they may be of several kinds in one run,
//! which is more than the search tries. All arithmetic is in whole numbers; prices are rounded down where
//! no common scale is small enough, which keeps the proof.

use std::collections::{BTreeMap, BTreeSet};

use super::certificate::{excludes, kinks, scale, value};
use super::part::Digest;
use super::rules::Rules;
use super::sums::{common_multiple, whole_panels, wholes};
use crate::model::seam::{Certificate, Dual, MixedProof, StockShare};

/// Steps of the functions tried, inches: coarser than for one kind, since they are tried together.
const STEP: i64 = 6;
/// Times that the function of each kind is looked for beside the others.
const TURNS: usize = 2;
/// What a whole panel is worth under every function where more than two kinds are mixed: the least
/// common scale may grow beyond any whole number. A multiple of all numbers to 20, so that most values
/// stay exact.
const SCALE: i64 = 232_792_560;
/// Steps of reckoning spent on the search for functions, about: some tenths of a second.
const BUDGET: usize = 300_000_000;

/// Runs that are alike to the bound.
struct Alike {
    cover: i64,
    count: i64,
    /// Whether it may have seams.
    seamed: bool,
}

/// What the bound looks at, whatever the functions.
struct Runs {
    rules: Rules,
    longest: i64,
    alike: Vec<Alike>,
    /// What whole panels between the ends can advance a run by, rising, with the least that they weigh.
    wholes: Vec<(i64, i64)>,
    /// What the two end pieces of some run can sum to, rising.
    sums: Vec<i64>,
}

/// A function of one kind of panel with its values by length.
struct Priced {
    dual: Dual,
    scale: i64,
    values: Vec<i64>,
    kinks: Vec<i64>,
}

/// A sum over all runs, and what one unit of weight is in it.
#[derive(Clone, Copy)]
struct Sum {
    sum: i128,
    one: i128,
}

impl Sum {
    /// The weight it proves: up to a whole number.
    fn weight(self) -> i64 {
        i64::try_from((self.sum + self.one - 1) / self.one.max(1)).unwrap_or(0)
    }

    /// Nearer to the next whole weight counts too, on the way to it.
    fn over(self, other: Sum) -> bool {
        (self.weight(), self.sum * other.one) > (other.weight(), other.sum * self.one)
    }
}

impl Runs {
    fn new(digest: &Digest) -> Self {
        let rules = &digest.rules;
        let mut counts: BTreeMap<i64, i64> = BTreeMap::new();
        for p in &digest.parts {
            *counts.entry(p.cover).or_default() += 1;
        }
        let seamed = |cover: i64| cover > rules.shorter() || rules.seam_short;
        let alike: Vec<Alike> = counts
            .into_iter()
            .map(|(cover, count)| Alike { cover, count, seamed: seamed(cover) })
            .collect();
        let most = alike.iter().map(|a| a.cover).max().unwrap_or(0);
        let wholes = wholes(most + rules.lap - 2 * rules.shortest, rules);
        let mut runs = Runs {
            rules: rules.clone(),
            longest: rules.longest(),
            alike,
            wholes,
            sums: Vec::new(),
        };
        let splits =
            |a: &Alike| runs.splits(a).iter().map(|w| runs.ends(a, w.0)).collect::<Vec<_>>();
        let sums: BTreeSet<i64> = runs.alike.iter().flat_map(splits).collect();
        runs.sums = sums.into_iter().collect();
        runs
    }

    /// What the end pieces sum to beside whole panels that advance the run by so much.
    fn ends(&self, run: &Alike, advance: i64) -> i64 {
        run.cover + self.rules.lap - advance
    }

    /// The whole panels that a run may have between two lawful ends.
    fn splits(&self, run: &Alike) -> &[(i64, i64)] {
        let (shortest, longest) = (self.rules.shortest, self.longest);
        if !run.seamed || shortest > longest {
            return &[];
        }
        let at = |advance: i64| self.wholes.partition_point(|w| w.0 < advance);
        let from = at(self.ends(run, 2 * longest));
        let to = at(self.ends(run, 2 * shortest) + 1);
        &self.wholes[from.min(to)..to]
    }

    /// The least and greatest first piece of two that sum to this.
    fn first(&self, sum: i64) -> (i64, i64) {
        let (shortest, longest) = (self.rules.shortest, self.longest);
        (shortest.max(sum - longest), longest.min(sum - shortest))
    }

    /// Prices by length under a function a kind, and what one unit of weight is in them.
    fn prices(&self, functions: &[&Priced]) -> (Vec<i64>, i64) {
        let one = functions.iter().fold(1, |all, f| common_multiple(all, f.scale));
        let mut prices = vec![i64::MAX; usize::try_from(self.longest).unwrap_or(0) + 1];
        for (kind, f) in functions.iter().enumerate() {
            let factor = self.rules.weight_of(kind) * (one / f.scale);
            for (price, value) in prices.iter_mut().zip(&f.values) {
                *price = (*price).min(factor * value);
            }
        }
        (prices, one)
    }

    /// The sum over all runs where two ends that sum to `sums[i]` cost `ends[i]`.
    fn sum(&self, prices: &[i64], one: i64, ends: &[i64]) -> Sum {
        let end = |sum: i64| self.sums.binary_search(&sum).ok().map_or(0, |i| ends[i]);
        let least = |run: &Alike| {
            let whole = usize::try_from(run.cover).ok().and_then(|l| prices.get(l)).copied();
            let seamed = self.splits(run).iter().map(|(advance, weight)| {
                i128::from(*weight) * i128::from(one) + i128::from(end(self.ends(run, *advance)))
            });
            whole.map(i128::from).into_iter().chain(seamed).min().unwrap_or(0)
        };
        let sum = self.alike.iter().map(|r| i128::from(r.count) * least(r)).sum();
        Sum { sum, one: i128::from(one) }
    }

    /// The sum under a function a kind. Between kinks the least of several straight lines bends down
    /// only, so two ends together are least at one.
    fn tried(&self, functions: &[&Priced]) -> Sum {
        let (prices, one) = self.prices(functions);
        let mut kinks: Vec<i64> = functions.iter().flat_map(|f| f.kinks.iter().copied()).collect();
        kinks.extend(
            self.rules.kinds().map(|kind| self.rules.panel_of(kind)).flat_map(|l| [l, l + 1]),
        );
        kinks.sort_unstable();
        kinks.dedup();
        let ends = |sum: &i64| {
            let (low, high) = self.first(*sum);
            let mirrored = kinks.iter().map(|l| sum - l);
            let inside = kinks.iter().copied().chain(mirrored).filter(|a| *a > low && *a < high);
            let at = [low, high].into_iter().chain(inside);
            at.map(|a| prices[a as usize] + prices[(sum - a) as usize]).min().unwrap_or(0)
        };
        let ends: Vec<i64> = self.sums.iter().map(ends).collect();
        self.sum(&prices, one, &ends)
    }

    /// The same with every step tried, for the certificate: where prices are rounded down they do
    /// not bend as they should by the last unit.
    fn settled(&self, functions: &[&Priced]) -> Sum {
        let (prices, one) = self.prices(functions);
        let ends = |sum: &i64| {
            let (low, high) = self.first(*sum);
            (low..=high.min(sum / 2).max(low))
                .map(|a| prices[a as usize] + prices[(sum - a) as usize])
                .min()
                .unwrap_or(0)
        };
        let ends: Vec<i64> = self.sums.iter().map(ends).collect();
        self.sum(&prices, one, &ends)
    }
}

/// The functions tried for one kind.
fn functions(rules: &Rules, kind: usize) -> Vec<Priced> {
    let own = rules.alone(kind);
    let mut duals = vec![Dual::Length];
    duals.extend((1..=6).map(Dual::Rounded));
    let steps = (1..).map(|i| rules.steps.of(STEP * i)).take_while(|e| 2 * e <= own.room());
    duals.extend(steps.clone().map(Dual::Clipped));
    duals.extend(steps.map(Dual::Counted));
    let priced = |dual: Dual| {
        let full = scale(dual, &own);
        let scale = if rules.kinds().len() > 2 { SCALE } else { full };
        let part = |v: i64| (i128::from(v) * i128::from(scale) / i128::from(full.max(1))) as i64;
        Priced {
            dual,
            scale,
            values: (0..=own.panel).map(|l| part(value(dual, l, &own))).collect(),
            kinks: kinks(dual, &own),
        }
    };
    duals.into_iter().map(priced).collect()
}

/// Functions for every kind, so few that all that is tried keeps within the budget.
fn all_functions(runs: &Runs) -> Vec<Vec<Priced>> {
    let rules = &runs.rules;
    let mut all: Vec<Vec<Priced>> = rules.kinds().map(|kind| functions(rules, kind)).collect();
    if all.len() > 2 {
        let tries = TURNS * all.iter().map(Vec::len).sum::<usize>();
        let bends: usize = all.iter().flatten().map(|f| f.kinks.len()).sum();
        let kinks = bends * all.len() / all.iter().map(Vec::len).sum::<usize>().max(1);
        let splits: usize = runs.alike.iter().map(|a| runs.splits(a).len()).sum();
        let each = runs.sums.len() * 2 * kinks + splits + all.len() * runs.longest as usize;
        let step = (tries * each).div_ceil(BUDGET).max(1);
        all = all.into_iter().map(|f| f.into_iter().step_by(step).collect()).collect();
    }
    all
}

/// The best bound over the functions tried. Shares of the kinds are filled in later.
pub(super) fn bound(digest: &Digest) -> Certificate {
    let rules = &digest.rules;
    let runs = Runs::new(digest);
    let all = all_functions(&runs);
    let at = best_functions(&runs, &all);
    let chosen: Vec<&Priced> = all.iter().zip(&at).filter_map(|(own, i)| own.get(*i)).collect();
    let found = runs.settled(&chosen);
    let weights: Vec<i64> = rules.kinds().map(|kind| rules.weight_of(kind)).collect();
    let weight = whole_panels(found.weight(), &weights);
    let heaviest = weights.iter().copied().max().unwrap_or(1).max(1);
    let narrow = |v: i128| i64::try_from(v).unwrap_or(i64::MAX);
    let share = |f: &&Priced| StockShare { function: f.dual, ..Default::default() };
    Certificate {
        bound: usize::try_from((weight + heaviest - 1) / heaviest).unwrap_or(0),
        function: chosen.first().map_or(Dual::Length, |f| f.dual),
        steps: rules.steps.0,
        sum: narrow(found.sum),
        scale: narrow(found.one),
        excludes: excludes(),
        mixed: Some(MixedProof {
            stocks: chosen.iter().map(share).collect(),
            bound: weight,
            ..Default::default()
        }),
        ..Default::default()
    }
}

/// Which function of each kind to take: each is looked for in turn beside the others.
fn best_functions(runs: &Runs, all: &[Vec<Priced>]) -> Vec<usize> {
    let tried = |at: &[usize]| {
        let functions: Vec<&Priced> =
            all.iter().zip(at).filter_map(|(own, i)| own.get(*i)).collect();
        runs.tried(&functions)
    };
    let kinds = all.len().max(1);
    let mut at = vec![0; all.len()];
    let mut best = tried(&at);
    // Turns since one led on.
    let mut idle = 0;
    for turn in 0..kinds * TURNS {
        let kind = turn % kinds;
        idle += 1;
        for i in 0..all.get(kind).map_or(0, Vec::len) {
            let mut other = at.clone();
            other[kind] = i;
            let found = tried(&other);
            if found.over(best) {
                (best, at, idle) = (found, other, 0);
            }
        }
        if turn + 1 >= kinds && idle + 1 >= kinds {
            break;
        }
    }
    at
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Greatest price of pieces that fit a room: an unbounded knapsack, every length in tens and some
    /// between, each charged a saw cut of 2.
    fn fullest(room: usize, longest: usize, price: &dyn Fn(usize) -> i128) -> i128 {
        let lengths: Vec<usize> =
            (1..=longest / 10).map(|i| 10 * i).chain([3, 131, 199, 259]).collect();
        let mut most = vec![0i128; room + 1];
        for r in 1..=room {
            for l in lengths.iter().filter(|l| **l + 2 <= r) {
                most[r] = most[r].max(most[r - l - 2] + price(*l));
            }
        }
        most[room]
    }

    fn runs_of(rules: Rules) -> Runs {
        Runs::new(&Digest { rules, parts: Vec::new() })
    }

    #[test]
    fn no_panel_of_two_kinds_holds_more_than_it_weighs() {
        let rules = Rules { weight: 3, more: vec![(520, 4)], ..Rules::plain(400, 2) };
        let all = [0, 1].map(|kind| functions(&rules, kind));
        let runs = runs_of(rules);
        for f in &all[0] {
            for g in &all[1] {
                let (prices, one) = runs.prices(&[f, g]);
                let price = |l: usize| i128::from(prices[l]);
                for (room, weight) in [(402, 3), (522, 4)] {
                    let most = fullest(room, 520, &price);
                    assert!(most <= weight * i128::from(one), "{:?} {:?} {room}", f.dual, g.dual);
                }
            }
        }
    }

    #[test]
    fn no_panel_of_three_kinds_holds_more_than_it_weighs() {
        let rules = Rules { weight: 30, more: vec![(520, 41), (290, 20)], ..Rules::plain(400, 2) };
        let all = [0, 1, 2].map(|kind| functions(&rules, kind));
        let runs = runs_of(rules);
        let mut n = 0;
        for f in &all[0] {
            for g in all[1].iter().step_by(2) {
                let h = &all[2][n % all[2].len()];
                n += 1;
                let (prices, one) = runs.prices(&[f, g, h]);
                let price = |l: usize| i128::from(prices[l]);
                for (room, weight) in [(402, 30), (522, 41), (292, 20)] {
                    let most = fullest(room, 520, &price);
                    assert!(
                        most <= weight * i128::from(one),
                        "{:?} {:?} {:?} {room}",
                        f.dual,
                        g.dual,
                        h.dual
                    );
                }
            }
        }
        assert!(n > 40, "{n}");
    }
}
