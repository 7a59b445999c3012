//! The lower bound where two kinds of panels are mixed: no layout under the rules weighs less.
//!
//! A dual-feasible function of one kind's panel, times what such a panel weighs, prices its pieces so
//! that none of its panels holds more than its weight. The lesser of two such prices, one of each kind,
//! does so for both kinds at once: whichever panel a piece is cut from, it is not overpriced. So the sum
//! over all runs of the least price that the run's pieces can have bounds the weight from below. A run's
//! whole panels count as what they weigh, and may be of both kinds here, which is more than the search
//! tries. All arithmetic is in whole numbers.

use std::collections::BTreeMap;

use super::certificate::{excludes, kinks, scale, value};
use super::digest::{Digest, Rules};
use crate::model::seam::{Certificate, Dual, MixedProof};

/// Steps of the functions tried, sixteenths: coarser than for one kind, since they are tried in pairs.
const STEP: i64 = 6 * 16;
/// Times that either function is looked for beside the other.
const TURNS: usize = 2;

/// One way to part a run, whatever the order of its whole panels.
#[derive(Clone, Copy)]
struct Split {
    /// What the whole panels weigh.
    wholes: i64,
    sum: i64,
    least: i64,
    most: i64,
}

/// Runs that are alike to the bound.
struct Alike {
    count: i64,
    /// Length of the one piece that may cover it, else 0.
    one: i64,
    splits: Vec<Split>,
}

/// A function of one kind of panel with its values by length.
struct Priced {
    dual: Dual,
    scale: i128,
    values: Vec<i64>,
    kinks: Vec<i64>,
}

fn alone(rules: &Rules, kind: usize) -> Rules {
    Rules { panel: rules.panel_of(kind), second: None, ..rules.clone() }
}

fn functions(rules: &Rules, kind: usize) -> Vec<Priced> {
    let own = alone(rules, kind);
    let mut duals = vec![Dual::Length];
    duals.extend((1..=6).map(Dual::Rounded));
    let steps = (1..).map(|i| STEP * i).take_while(|e| 2 * e <= own.room());
    duals.extend(steps.clone().map(Dual::Clipped));
    duals.extend(steps.map(Dual::Counted));
    let priced = |dual: Dual| Priced {
        dual,
        scale: i128::from(scale(dual, &own)),
        values: (0..=own.panel).map(|l| value(dual, l, &own)).collect(),
        kinks: kinks(dual, &own),
    };
    duals.into_iter().map(priced).collect()
}

/// Every way to part a cover, its whole panels of both kinds.
fn splits(cover: i64, rules: &Rules) -> Vec<Split> {
    let longest = rules.longest();
    let [l0, l1] = [0, 1].map(|kind| rules.panel_of(kind));
    let mut out = Vec::new();
    for n1 in 0.. {
        let left = cover + rules.lap - n1 * (l1 - rules.lap);
        if left < 2 * rules.shortest {
            break;
        }
        for n0 in 0.. {
            let sum = left - n0 * (l0 - rules.lap);
            let least = rules.shortest.max(sum - longest);
            let most = longest.min(sum - rules.shortest);
            if sum < 2 * rules.shortest {
                break;
            }
            if least <= most {
                let wholes = n0 * rules.weight(0) + n1 * rules.weight(1);
                out.push(Split { wholes, sum, least, most });
            }
        }
    }
    out
}

fn alike(digest: &Digest) -> Vec<Alike> {
    let rules = &digest.rules;
    let mut kinds: BTreeMap<i64, i64> = BTreeMap::new();
    for p in &digest.parts {
        *kinds.entry(p.cover).or_default() += 1;
    }
    let one = |(cover, count): (i64, i64)| {
        let seamed = cover > rules.shorter() || rules.seam_short;
        Alike {
            count,
            one: if cover <= rules.longest() { cover } else { 0 },
            splits: if seamed { splits(cover, rules) } else { Vec::new() },
        }
    };
    kinds.into_iter().map(one).collect()
}

/// Sum over all runs of the least price under a pair of functions, and what one unit of weight is in it.
fn sum(runs: &[Alike], pair: [&Priced; 2], rules: &Rules) -> (i128, i128) {
    let whole = pair[0].scale * pair[1].scale;
    let factors = [0, 1].map(|kind| i128::from(rules.weight(kind)) * pair[1 - kind].scale);
    let price = |length: i64| -> i128 {
        let of = |kind: usize| {
            let value = pair[kind].values.get(usize::try_from(length).ok()?)?;
            Some(factors[kind] * i128::from(*value))
        };
        [of(0), of(1)].into_iter().flatten().min().unwrap_or(whole)
    };
    // Between these the lesser of two straight lines bends down only: least at an end.
    let mut kinks: Vec<i64> = pair.iter().flat_map(|p| p.kinks.iter().copied()).collect();
    kinks.extend([rules.shorter(), rules.shorter() + 1]);
    kinks.sort_unstable();
    kinks.dedup();
    let ends = |s: &Split| {
        let mirrored = kinks.iter().map(|l| s.sum - l);
        let inside = kinks.iter().copied().chain(mirrored).filter(|a| *a > s.least && *a < s.most);
        let tried = [s.least, s.most].into_iter().chain(inside);
        tried.map(|a| price(a) + price(s.sum - a)).min().unwrap_or(0)
    };
    let least = |run: &Alike| {
        let one = (run.one > 0).then(|| price(run.one));
        let seamed = run.splits.iter().map(|s| i128::from(s.wholes) * whole + ends(s));
        one.into_iter().chain(seamed).min().unwrap_or(0)
    };
    (runs.iter().map(|r| i128::from(r.count) * least(r)).sum(), whole)
}

/// The least weight of whole panels that is no less than this.
fn whole_panels(weight: i64, [first, second]: [i64; 2]) -> i64 {
    let most = (weight + first - 1) / first;
    let up = |left: i64| (left.max(0) + second - 1) / second * second;
    // As many of the first as the second weighs can be changed for as many of the second as the
    // first weighs.
    let few = 0..=most.min(second);
    few.map(|n| n * first + up(weight - n * first)).min().unwrap_or(weight)
}

/// The best bound over the pairs tried. Shares of the kinds are filled in later.
pub(super) fn bound(digest: &Digest) -> Certificate {
    let rules = &digest.rules;
    let runs = alike(digest);
    let all = [0, 1].map(|kind| functions(rules, kind));
    let mut at = [0, 0];
    let of = |at: [usize; 2]| {
        let (sum, whole) = sum(&runs, [&all[0][at[0]], &all[1][at[1]]], rules);
        let weight = (sum + whole - 1) / whole.max(1);
        (i64::try_from(weight).unwrap_or(0), sum, whole)
    };
    let mut best = of(at);
    for turn in 0..2 * TURNS {
        let kind = turn % 2;
        let mut moved = false;
        for i in 0..all[kind].len() {
            let mut tried = at;
            tried[kind] = i;
            let found = of(tried);
            // Nearer to the next whole weight counts too, on the way to it.
            let better = (found.0, found.1 * best.2) > (best.0, best.1 * found.2);
            if better {
                (best, at, moved) = (found, tried, true);
            }
        }
        if turn > 0 && !moved {
            break;
        }
    }
    let weights = [0, 1].map(|kind| rules.weight(kind));
    let weight = whole_panels(best.0, weights);
    let heaviest = weights[0].max(weights[1]).max(1);
    let duals = [all[0][at[0]].dual, all[1][at[1]].dual];
    let narrow = |v: i128| i64::try_from(v).unwrap_or(i64::MAX);
    Certificate {
        bound: usize::try_from((weight + heaviest - 1) / heaviest).unwrap_or(0),
        function: duals[0],
        sum: narrow(best.1),
        scale: narrow(best.2),
        excludes: excludes(),
        mixed: Some(MixedProof { second_function: duals[1], bound: weight, ..Default::default() }),
        ..Default::default()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn whole_panels_by_counting() {
        for (a, b) in [(3, 4), (5, 7), (25, 24), (1, 1), (10, 3), (9, 13)] {
            let can: Vec<i64> =
                (0..300).filter(|w| (0..=w / a).any(|n| (w - n * a) % b == 0)).collect();
            for w in 0..250 {
                let least = can.iter().find(|v| **v >= w);
                assert_eq!(Some(&whole_panels(w, [a, b])), least, "{w} of {a} and {b}");
            }
        }
    }

    #[test]
    fn no_panel_of_either_kind_holds_more_than_it_weighs() {
        let rules = Rules { second: Some((520, [3, 4])), ..Rules::plain(400, 2) };
        let all = [0, 1].map(|kind| functions(&rules, kind));
        for f in &all[0] {
            for g in &all[1] {
                let whole = f.scale * g.scale;
                let price = |l: usize| {
                    let first = f.values.get(l).map(|v| 3 * i128::from(*v) * g.scale);
                    let second = g.values.get(l).map(|v| 4 * i128::from(*v) * f.scale);
                    [first, second].into_iter().flatten().min().unwrap()
                };
                // Greatest price of pieces that fit a room: an unbounded knapsack, every length in
                // tens and some between.
                let lengths: Vec<usize> =
                    (1..52).map(|i| 10 * i).chain([3, 131, 199, 259]).collect();
                for (room, weight) in [(402, 3), (522, 4)] {
                    let mut most = vec![0i128; room + 1];
                    for r in 1..=room {
                        for l in lengths.iter().filter(|l| **l + 2 <= r) {
                            most[r] = most[r].max(most[r - l - 2] + price(*l));
                        }
                    }
                    assert!(most[room] <= weight * whole, "{:?} {:?} {room}", f.dual, g.dual);
                }
            }
        }
    }
}
