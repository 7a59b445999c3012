//! The panel bound worked out again, from the runs alone and without any search: the same function,
//! evaluated in whole numbers of 1/16 in.

use std::collections::BTreeMap;

use super::claims::Claims;
use super::dual::{PanelFrame, covers, dual_feasible, whole, worth};
use super::rule::{Cases, count, found};
use crate::layout::breach::count::{CountBreach, Counted};
use crate::layout::course::LaidRun;
use crate::layout::rule::Rule;
use crate::layout::verified::RuleCheck;
use crate::layout::violation::Figure::Count;
use crate::layout::violation::Subject;
use crate::model::seam::Dual;

pub(super) fn check(layout: &Claims, runs: &[&LaidRun], frame: PanelFrame) -> RuleCheck {
    let mut rule = Cases::new(Rule::PanelBound);
    let c = &layout.bound.certificate;
    let feasible = dual_feasible(c.function, frame.panel + frame.kerf);
    rule.case(feasible, || {
        let stock = layout.job.product.length;
        found(Subject::House, CountBreach::Function { function: c.function, stock })
    });
    if !feasible {
        return rule.done();
    }
    let one = worth(c.function, frame.panel + frame.kerf, &frame).1;
    let mut counts: BTreeMap<i128, i128> = BTreeMap::new();
    for cover in runs.iter().flat_map(|r| covers(r, &frame)) {
        *counts.entry(cover).or_default() += 1;
    }
    let sum: i128 = counts.iter().map(|(cover, n)| n * least(*cover, c.function, &frame)).sum();
    let bound = (sum + one - 1) / one.max(1);
    rule.case(
        c.steps == frame.steps && sum == i128::from(c.sum) && one == i128::from(c.scale),
        || {
            let of_runs = [whole(sum), whole(one)];
            let breach = CountBreach::Sum { said: [c.sum, c.scale], found: of_runs };
            found(Subject::House, breach)
        },
    );
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
