//! The panel bound worked out again, from the runs alone and without any search: the same function or
//! the same prices, evaluated in whole numbers of 1/16 in.

use std::collections::BTreeMap;

use super::claims::Claims;
use super::dual::{PanelFrame, covers, dual_feasible, whole, worth};
use super::prices::Priced;
use super::rule::{Cases, count, found};
use crate::layout::breach::count::{CountBreach, Counted};
use crate::layout::course::LaidRun;
use crate::layout::rule::Rule;
use crate::layout::verified::RuleCheck;
use crate::layout::violation::Figure::Count;
use crate::layout::violation::Subject;
use crate::model::price_list::PriceList;
use crate::model::seam::{Certificate, Dual};

pub(super) fn check(layout: &Claims, runs: &[&LaidRun], frame: PanelFrame) -> RuleCheck {
    let mut rule = Cases::new(Rule::PanelBound);
    let c = &layout.bound.certificate;
    let mut counts: BTreeMap<i128, i128> = BTreeMap::new();
    for cover in runs.iter().flat_map(|r| covers(r, &frame)) {
        *counts.entry(cover).or_default() += 1;
    }
    let worth = match &c.prices {
        Some(list) => priced(&mut rule, c, list, &counts, &frame),
        None => valued(&mut rule, layout, &counts, &frame),
    };
    let Some((sum, one)) = worth else { return rule.done() };
    let bound = (sum + one - 1) / one.max(1);
    let agrees = c.steps == frame.steps && sum == i128::from(c.sum) && one == i128::from(c.scale);
    rule.case(agrees, || {
        let breach = CountBreach::Sum { said: [c.sum, c.scale], found: [whole(sum), whole(one)] };
        found(Subject::House, breach)
    });
    rule.case(bound == layout.bound.panels as i128, || {
        let v = found(Subject::House, CountBreach::Bound).measured(count(layout.bound.panels));
        v.exactly(Count(whole(bound)))
    });
    // It counts a panel of which both halves serve as two.
    let panels = layout.panels.len() + layout.halved();
    let said = Counted::new(c.bound, c.panels, c.proven);
    let has = Counted::new(layout.bound.panels, panels, bound == panels as i128);
    rule.case(said == has && layout.bound.proven == c.proven, || {
        found(Subject::House, CountBreach::Certificate { said, found: has })
    });
    rule.done()
}

/// What all runs are worth at least by the certificate's function, and what a panel is; none where the
/// function proves nothing.
fn valued(
    rule: &mut Cases,
    layout: &Claims,
    counts: &BTreeMap<i128, i128>,
    frame: &PanelFrame,
) -> Option<(i128, i128)> {
    let function = layout.bound.certificate.function;
    let room = frame.panel + frame.kerf;
    let feasible = dual_feasible(function, room);
    rule.case(feasible, || {
        let stock = layout.job.product.length;
        found(Subject::House, CountBreach::Function { function, stock })
    });
    let sum = || counts.iter().map(|(cover, n)| n * least(*cover, function, frame)).sum();
    feasible.then(|| (sum(), worth(function, room, frame).1))
}

/// The same by its prices; none where they are no list, or a panel can give more than it is worth.
fn priced(
    rule: &mut Cases,
    c: &Certificate,
    list: &PriceList,
    counts: &BTreeMap<i128, i128>,
    frame: &PanelFrame,
) -> Option<(i128, i128)> {
    // No function stands beside them.
    let prices = Priced::new(list, frame).filter(|_| c.function == Dual::Length && c.scale > 0);
    rule.case(prices.is_some(), || found(Subject::House, CountBreach::Prices));
    let prices = prices?;
    let (dearest, one) = (prices.dearest(frame, counts), i128::from(c.scale));
    rule.case(dearest <= one, || {
        let v = found(Subject::House, CountBreach::DearPanel).measured(Count(whole(dearest)));
        v.at_most(Count(c.scale))
    });
    let sum = counts.iter().map(|(cover, n)| n * prices.least(*cover, one, frame)).sum();
    (dearest <= one).then_some((sum, one))
}

/// The least a run can be worth: over one piece, and over the two numbers of pieces that can occur.
fn least(cover: i128, dual: Dual, f: &PanelFrame) -> i128 {
    let piece = |l: i128| worth(dual, l + f.kerf, f).0;
    let whole = worth(dual, f.panel + f.kerf, f).1;
    let mut best: Option<i128> = (cover <= f.panel).then(|| piece(cover));
    if cover > f.panel || f.short_seams {
        let first = ((cover - f.lap + f.panel - f.lap - 1) / (f.panel - f.lap)).max(2);
        for k in [first, first + 1] {
            let sum = cover + (k - 1) * f.lap - (k - 2) * f.panel;
            let (low, high) = (f.shortest.max(sum - f.panel), f.panel.min(sum - f.shortest));
            for a in low..=high {
                let v = (k - 2) * whole + piece(a) + piece(sum - a);
                best = Some(best.map_or(v, |b| b.min(v)));
            }
        }
    }
    best.unwrap_or(0)
}
