//! The bound where several stock lengths are mixed, worked out again from the runs alone: every split of
//! every run, every sixteenth of its first piece.

use std::collections::{BTreeMap, BTreeSet};

use super::claims::Claims;
use super::dual::{PanelFrame, covers, down, dual_feasible, whole, worth};
use super::rule::{Cases, found};
use super::tolerance::same;
use crate::job::Stock;
use crate::layout::breach::count::{CountBreach, Counted};
use crate::layout::course::LaidRun;
use crate::layout::rule::Rule;
use crate::layout::verified::RuleCheck;
use crate::layout::violation::Figure::Count;
use crate::layout::violation::Subject;
use crate::model::half::Half;
use crate::model::seam::{Dual, MixedProof};

/// One stock: a panel of it, what it weighs, and its function.
struct Weighed {
    frame: PanelFrame,
    weight: i128,
    dual: Dual,
}

/// `frame` is that of the first length.
pub(super) fn check(layout: &Claims, runs: &[&LaidRun], frame: PanelFrame) -> RuleCheck {
    let mut rule = Cases::new(Rule::PanelBound);
    let c = &layout.bound.certificate;
    let several = layout.stocks.len() > 1;
    let (true, Some(proof)) = (several, &c.mixed) else {
        rule.case(false, || found(Subject::House, CountBreach::StocksMissing));
        return rule.done();
    };
    let weighed = weighed(layout, proof, frame);
    rule.case(weighed.is_some(), || {
        let weights = proof.stocks.iter().map(|s| s.weight).collect();
        found(Subject::House, CountBreach::Weights { weights })
    });
    let Some(stocks) = weighed else { return rule.done() };
    let proves_nothing = |s: &&Weighed| !dual_feasible(s.dual, s.frame.panel + s.frame.kerf);
    let fault = stocks.iter().find(proves_nothing);
    rule.case(fault.is_none(), || {
        let (function, panel) = fault.map_or((c.function, 0), |s| (s.dual, s.frame.panel));
        let stock = panel as f64 / frame.steps as f64;
        found(Subject::House, CountBreach::Function { function, stock })
    });
    if fault.is_some() {
        return rule.done();
    }
    // A panel of any length is worth its weight times this.
    let one = i128::from(c.scale.max(1));
    let sum = sum(runs, &frame, &stocks, one);
    let agrees = c.steps == frame.steps && sum == i128::from(c.sum) && one == i128::from(c.scale);
    let first = proof.stocks.first().is_some_and(|s| s.function == c.function);
    rule.case(agrees && first, || {
        let breach = CountBreach::Sum { said: [c.sum, c.scale], found: [whole(sum), whole(one)] };
        found(Subject::House, breach)
    });
    concluded(&mut rule, layout, proof, &stocks, (sum, one));
    rule.done()
}

/// What is cut, what it weighs, and the bound that follows from the sum over the runs.
fn concluded(
    rule: &mut Cases,
    layout: &Claims,
    proof: &MixedProof,
    stocks: &[Weighed],
    (sum, one): (i128, i128),
) {
    let c = &layout.bound.certificate;
    // It counts a panel of which both halves serve as two.
    let upper: BTreeSet<&str> = layout
        .pieces()
        .filter(|(.., p)| p.half == Some(Half::Upper))
        .map(|(.., p)| p.panel.as_str())
        .collect();
    let count = |length: f64| {
        let of_length = layout.panels.iter().filter(|p| same(p.stock, length));
        of_length.map(|p| if upper.contains(p.id.as_str()) { 2 } else { 1 }).sum::<i128>()
    };
    let counts: Vec<i128> = layout.stocks.iter().map(|s| count(s.length)).collect();
    let said: Vec<i128> = proof.stocks.iter().map(|s| s.panels as i128).collect();
    let weight: i128 = counts.iter().zip(stocks).map(|(n, s)| n * s.weight).sum();
    rule.case(said == counts && i128::from(proof.weight) == weight, || {
        let of_each = |n: &[i128]| n.iter().copied().map(whole).collect();
        let breach = CountBreach::Weight { said: of_each(&said), cut: of_each(&counts) };
        let v = found(Subject::House, breach).measured(Count(proof.weight));
        v.exactly(Count(whole(weight)))
    });
    bought(rule, layout, proof, (&counts, stocks));
    let weights: Vec<i128> = stocks.iter().map(|s| s.weight).collect();
    let bound = whole_panels((sum + one - 1) / one, &weights);
    rule.case(bound == i128::from(proof.bound), || {
        let v = found(Subject::House, CountBreach::WeightBound).measured(Count(proof.bound));
        v.exactly(Count(whole(bound)))
    });
    let heaviest = weights.iter().copied().max().unwrap_or(1);
    let panels = (i128::from(proof.bound) + heaviest - 1) / heaviest;
    let proven = i128::from(proof.bound) == weight;
    let cut = layout.panels.len() + upper.len();
    let counted = |bound: i128, panels: usize, proven: bool| Counted {
        bound: whole(bound),
        panels: whole(panels as i128),
        proven,
    };
    let said = counted(c.bound as i128, c.panels, c.proven);
    let has = counted(panels, cut, proven);
    let of_layout = counted(layout.bound.panels as i128, cut, layout.bound.proven);
    rule.case(said == has && of_layout == has, || {
        let said = if said == has { of_layout } else { said };
        found(Subject::House, CountBreach::Certificate { said, found: has })
    });
}

/// The whole cartons that hold what is cut.
fn bought(
    rule: &mut Cases,
    layout: &Claims,
    proof: &MixedProof,
    (counts, stocks): (&[i128], &[Weighed]),
) {
    let each = layout.stocks.iter().zip(counts).zip(stocks);
    let bought: i128 = each.map(|((s, n), w)| in_cartons(layout, s, *n) * w.weight).sum();
    rule.case(bought == i128::from(proof.bought), || {
        let v = found(Subject::House, CountBreach::WeightBought).measured(Count(proof.bought));
        v.exactly(Count(whole(bought)))
    });
}

/// Panels bought: as many whole cartons as it takes to hold those cut and the job's percentage of spare
/// ones.
fn in_cartons(layout: &Claims, stock: &Stock, cut: i128) -> i128 {
    let hundredths = cut as f64 * layout.job.takeoff.spare;
    let (carton, mut held) = (i128::from(stock.carton.max(1)), 0);
    while ((held - cut) as f64) * 100.0 < hundredths - 1e-6 || held < cut {
        held += carton;
    }
    held
}

/// The stocks with what panels weigh, if the certificate has it as the job wants it: whole numbers in
/// proportion to length, or to cost in thousandths, without a common divisor.
fn weighed(layout: &Claims, proof: &MixedProof, frame: PanelFrame) -> Option<Vec<Weighed>> {
    let stocks = &layout.stocks;
    let costs: Vec<f64> = stocks.iter().filter_map(|s| s.cost).collect();
    let wanted: Vec<i128> = if costs.len() == stocks.len() {
        costs.iter().map(|cost| (1000.0 * cost).round() as i128).collect()
    } else {
        stocks.iter().map(|s| (s.length * 16.0).round() as i128).collect()
    };
    let weights: Vec<i128> = proof.stocks.iter().map(|s| i128::from(s.weight)).collect();
    let lengths = proof.stocks.iter().zip(stocks).all(|(s, of_job)| same(s.length, of_job.length));
    let whole = wanted.len() == weights.len()
        && weights.iter().chain(&wanted).all(|w| *w > 0)
        && weights.iter().zip(&wanted).all(|(w, v)| w * wanted[0] == v * weights[0]);
    let least = weights.iter().copied().min()?;
    let common = |d: i128| weights.iter().all(|w| w % d == 0);
    if !lengths || !whole || (2..=least).any(common) {
        return None;
    }
    let each = stocks.iter().zip(&proof.stocks).map(|(of_job, s)| Weighed {
        frame: PanelFrame { panel: down(of_job.length, frame.steps), ..frame },
        weight: i128::from(s.weight),
        dual: s.function,
    });
    Some(each.collect())
}

/// What all runs are worth at least.
fn sum(runs: &[&LaidRun], frame: &PanelFrame, stocks: &[Weighed], one: i128) -> i128 {
    let longest = stocks.iter().map(|s| s.frame.panel).max().unwrap_or(0);
    // Rounded down to whole parts of a panel, as the certificate counts.
    let priced = |piece: i128, s: &Weighed| {
        let (value, full) = worth(s.dual, piece + s.frame.kerf, &s.frame);
        s.weight * (value * one).div_euclid(full.max(1))
    };
    let price = |piece: i128| {
        let fits = stocks.iter().filter(|s| piece <= s.frame.panel);
        fits.map(|s| priced(piece, s)).min().unwrap_or(0)
    };
    let prices: Vec<i128> = (0..=longest).map(price).collect();
    let mut counts: BTreeMap<i128, i128> = BTreeMap::new();
    for cover in runs.iter().flat_map(|r| covers(r, frame)) {
        *counts.entry(cover).or_default() += 1;
    }
    let most = counts.keys().last().copied().unwrap_or(0) + frame.lap;
    let steps = steps(most, stocks);
    // Runs of different covers leave the same for their ends again and again.
    let mut ends: BTreeMap<i128, Option<i128>> = BTreeMap::new();
    let mut total = 0;
    for (cover, n) in counts {
        let mut best = (cover <= longest).then(|| prices[cover as usize]);
        let shortest_panel = stocks.iter().map(|s| s.frame.panel).min().unwrap_or(0);
        if cover > shortest_panel || frame.short_seams {
            for (step, weight) in steps.iter().enumerate() {
                let left = cover + frame.lap - step as i128;
                if left < 2 * frame.shortest {
                    break;
                }
                let Some(weight) = weight.filter(|_| left <= 2 * longest) else { continue };
                let both =
                    ends.entry(left).or_insert_with(|| two_ends(left, frame.shortest, &prices));
                let with = both.map(|v| weight * one + v);
                best = [best, with].into_iter().flatten().min();
            }
        }
        total += n * best.unwrap_or(0);
    }
    total
}

/// The least that whole panels weigh which carry a run on by so many steps, each less its lap.
fn steps(most: i128, stocks: &[Weighed]) -> Vec<Option<i128>> {
    let mut out: Vec<Option<i128>> = vec![None; usize::try_from(most).unwrap_or(0) + 1];
    out[0] = Some(0);
    for at in 1..out.len() {
        let before = stocks.iter().filter_map(|s| {
            let pitch = usize::try_from((s.frame.panel - s.frame.lap).max(1)).ok()?;
            Some(out[at.checked_sub(pitch)?]? + s.weight)
        });
        out[at] = before.min();
    }
    out
}

/// The least that two end pieces of a sum are worth, over every first piece; none if none is lawful.
fn two_ends(sum: i128, shortest: i128, prices: &[i128]) -> Option<i128> {
    let longest = prices.len() as i128 - 1;
    let lawful = shortest.max(sum - longest)..=longest.min(sum - shortest);
    lawful.map(|a| prices[a as usize] + prices[(sum - a) as usize]).min()
}

/// The least weight from `least` on that whole panels can have.
fn whole_panels(least: i128, weights: &[i128]) -> i128 {
    let Some(first) = weights.iter().copied().min() else { return least };
    // By the rest of a division by the lightest: the least weight with it that panels have, found from
    // small to large.
    let mut known: BTreeMap<i128, i128> = BTreeMap::new();
    let mut open: BTreeSet<(i128, i128)> = BTreeSet::from([(0, 0)]);
    while let Some((weight, rest)) = open.pop_first() {
        if known.contains_key(&rest) {
            continue;
        }
        known.insert(rest, weight);
        open.extend(weights.iter().map(|w| (weight + w, (weight + w) % first)));
    }
    let up = |(rest, weight): (&i128, &i128)| {
        let from = least.max(*weight);
        from + (rest - from).rem_euclid(first)
    };
    known.iter().map(up).min().unwrap_or(least)
}

#[cfg(test)]
mod tests {
    use super::whole_panels;

    #[test]
    fn the_next_weight_of_whole_panels() {
        // Panels of 6, 10 and 15: 6 10 12 15 16 18 20 21 22 24 25 26 27 28 30, and everything after.
        let can = [0, 6, 10, 12, 15, 16, 18, 20, 21, 22, 24, 25, 26, 27, 28, 30];
        for least in 0..=30 {
            let next = can.iter().copied().find(|w| *w >= least);
            assert_eq!(Some(whole_panels(least, &[6, 10, 15])), next);
        }
        assert_eq!(whole_panels(1000, &[6, 10, 15]), 1000);
    }
}
