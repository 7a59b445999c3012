//! The bound where two stock lengths are mixed, worked out again from the runs alone: every split of
//! every run, every sixteenth of its first piece.

use std::collections::{BTreeMap, BTreeSet};

use super::dual::{PanelFrame, covers, dual_feasible, sixteenths, whole, worth};
use super::rule::{Cases, found};
use super::tolerance::same;
use crate::layout::Layout;
use crate::layout::breach::count::{CountBreach, Counted};
use crate::layout::course::LaidRun;
use crate::layout::rule::Rule;
use crate::layout::verified::RuleCheck;
use crate::layout::violation::Figure::Count;
use crate::layout::violation::Subject;
use crate::model::half::Half;
use crate::model::seam::MixedProof;

/// `frame` is that of the first length.
pub(super) fn check(layout: &Layout, runs: &[&LaidRun], frame: PanelFrame) -> RuleCheck {
    let mut rule = Cases::new(Rule::PanelBound);
    let c = &layout.bound.certificate;
    let (Some(length), Some(proof)) = (layout.job.product.second_length, &c.mixed) else {
        rule.case(false, || found(Subject::House, CountBreach::StocksMissing));
        return rule.done();
    };
    let frames = [frame, PanelFrame { panel: sixteenths(length), ..frame }];
    let duals = [c.function, proof.second_function];
    let fault = (0..2).find(|k| !dual_feasible(duals[*k], frames[*k].panel + frames[*k].kerf));
    rule.case(fault.is_none(), || {
        let k = fault.unwrap_or_default();
        let stock = [layout.job.product.length, length][k];
        found(Subject::House, CountBreach::Function { function: duals[k], stock })
    });
    let weighed = weights(layout, proof, length);
    rule.case(weighed.is_some(), || {
        let weights = proof.stocks.iter().map(|s| s.weight).collect();
        found(Subject::House, CountBreach::Weights { weights })
    });
    let (None, Some(weights)) = (fault, weighed) else { return rule.done() };

    // A panel of either length is worth its weight times this.
    let full = [0, 1].map(|k| worth(duals[k], frames[k].panel + frames[k].kerf, &frames[k]).1);
    let one = full[0] * full[1];
    let longest = frames[0].panel.max(frames[1].panel);
    let price = |piece: i128| -> i128 {
        let fits = (0..2).filter(|k| piece <= frames[*k].panel);
        let of =
            |k: usize| weights[k] * full[1 - k] * worth(duals[k], piece + frame.kerf, &frames[k]).0;
        fits.map(of).min().unwrap_or(0)
    };
    let prices: Vec<i128> = (0..=longest).map(price).collect();
    let mut sums: BTreeMap<i128, i128> = BTreeMap::new();
    for cover in runs.iter().flat_map(|r| covers(r, &frame)) {
        *sums.entry(cover).or_default() += 1;
    }
    let each = |(cover, n): (i128, i128)| n * least(cover, &frames, weights, &prices, one);
    let sum: i128 = sums.into_iter().map(each).sum();
    rule.case(sum == i128::from(c.sum) && one == i128::from(c.scale), || {
        let of_runs = [whole(sum), whole(one)];
        let breach = CountBreach::Sum { said: [c.sum, c.scale], found: of_runs };
        found(Subject::House, breach)
    });
    concluded(&mut rule, layout, proof, (length, weights), (sum, one));
    rule.done()
}

/// What is cut, what it weighs, and the bound that follows from the sum over the runs.
fn concluded(
    rule: &mut Cases,
    layout: &Layout,
    proof: &MixedProof,
    (length, weights): (f64, [i128; 2]),
    (sum, one): (i128, i128),
) {
    let c = &layout.bound.certificate;
    // It counts a panel of which both halves serve as two.
    let upper: BTreeSet<&str> = layout
        .pieces()
        .filter(|(.., p)| p.half == Some(Half::Upper))
        .map(|(.., p)| p.panel.as_str())
        .collect();
    let counts = [false, true].map(|second| {
        let of = layout.panels.iter().filter(|p| same(p.stock, length) == second);
        of.map(|p| if upper.contains(p.id.as_str()) { 2 } else { 1 }).sum::<i128>()
    });
    let said = [0, 1].map(|k| proof.stocks[k].panels as i128);
    let weight = counts[0] * weights[0] + counts[1] * weights[1];
    rule.case(said == counts && i128::from(proof.weight) == weight, || {
        let of_each = |n: [i128; 2]| n.map(whole).to_vec();
        let breach = CountBreach::Weight { said: of_each(said), cut: of_each(counts) };
        let v = found(Subject::House, breach).measured(Count(proof.weight));
        v.exactly(Count(whole(weight)))
    });
    // What is cut is whole panels, so this ends there at the latest.
    let in_panels = |v: &i128| (0..=v / weights[0]).any(|n| (v - n * weights[0]) % weights[1] == 0);
    let least = (sum + one - 1) / one;
    let bound = (least..=weight).find(in_panels);
    rule.case(bound == Some(i128::from(proof.bound)), || {
        let v = found(Subject::House, CountBreach::WeightBound).measured(Count(proof.bound));
        v.exactly(Count(whole(bound.unwrap_or(least))))
    });
    let heaviest = weights[0].max(weights[1]);
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

/// What panels of each length weigh, if the certificate has it as the job wants it: whole numbers in
/// proportion to length, or to cost in thousandths, without a common divisor.
fn weights(layout: &Layout, proof: &MixedProof, length: f64) -> Option<[i128; 2]> {
    let product = &layout.job.product;
    let lengths = [product.length, length];
    let listed = proof.stocks.iter().zip(lengths).all(|(s, l)| same(s.length, l));
    let wanted = match product.second_cost {
        Some(cost) => [1000, (1000.0 * cost).round() as i128],
        None => lengths.map(sixteenths),
    };
    let [a, b] = [0, 1].map(|k| i128::from(proof.stocks[k].weight));
    let common = (2..=a.min(b)).any(|d| a % d == 0 && b % d == 0);
    let holds = listed && a > 0 && b > 0 && a * wanted[1] == b * wanted[0] && !common;
    holds.then_some([a, b])
}

/// The least a run can be worth: over one piece, and over every number of whole panels of each length
/// with every first piece.
fn least(cover: i128, f: &[PanelFrame; 2], weights: [i128; 2], prices: &[i128], one: i128) -> i128 {
    let (lap, shortest) = (f[0].lap, f[0].shortest);
    let longest = prices.len() as i128 - 1;
    let mut best = (cover <= longest).then(|| prices[cover as usize]);
    if cover > f[0].panel.min(f[1].panel) || f[0].short_seams {
        let most = |k: usize| (cover + lap) / (f[k].panel - lap).max(1);
        for n in 0..=most(0) {
            for m in 0..=most(1) {
                let sum = cover + lap - n * (f[0].panel - lap) - m * (f[1].panel - lap);
                for a in shortest.max(sum - longest)..=longest.min(sum - shortest) {
                    let ends = prices[a as usize] + prices[(sum - a) as usize];
                    let v = (n * weights[0] + m * weights[1]) * one + ends;
                    best = Some(best.map_or(v, |b| b.min(v)));
                }
            }
        }
    }
    best.unwrap_or(0)
}
