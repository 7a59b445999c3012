//! Counts agree with pieces: panels, cartons, mounting blocks.

use super::claims::Claims;
use super::named;
use super::rule::{Cases, count, found};
use super::tolerance::same;
use crate::job::Stock;
use crate::job::siding::system::SoldBy;
use crate::layout::breach::count::{CountBreach, Counted};
use crate::layout::rule::Rule;
use crate::layout::verified::RuleCheck;
use crate::layout::violation::Figure::Quantity;
use crate::layout::violation::Subject;

pub(super) fn check(layout: &Claims) -> RuleCheck {
    let mut rule = Cases::new(Rule::PieceCounts);
    let (bound, panels) = (&layout.bound, layout.panels.len());
    rule.case(bound.best == panels, || {
        let v = found(Subject::House, CountBreach::Panels);
        v.measured(count(bound.best)).exactly(count(panels))
    });
    // The bound counts a panel of which both halves serve as two.
    let whole = bound.best + layout.halved();
    rule.case(bound.panels <= whole, || {
        let v = found(Subject::House, CountBreach::BoundOver);
        v.measured(count(bound.panels)).at_most(count(whole))
    });
    rule.case(has_stocks_of_job(layout), || found(Subject::House, CountBreach::Stocks));
    match layout.stocks.as_slice() {
        [one] => of_one_length(layout, one, whole, &mut rule),
        // What is proven is a weight: its own rule looks at it.
        _ => by_length(layout, &mut rule),
    }
    let blocks = layout.walls().flat_map(|(_, w)| &w.obstacles).filter(|o| o.mounting_block);
    ordered(&mut rule, layout, "mounting-blocks", blocks.count() as f64);
    rule.done()
}

/// What the takeoff orders of a line; none if there is no such line.
fn order(layout: &Claims, id: &str) -> Option<f64> {
    layout.takeoff.iter().find(|l| l.id == id).map(|l| l.order)
}

/// A line orders what is needed; a line that is missing orders nothing.
fn ordered(rule: &mut Cases, layout: &Claims, id: &str, needed: f64) {
    let has = order(layout, id).unwrap_or(0.0);
    rule.case(has == needed, || {
        let v = found(named::takeoff_line(id), CountBreach::Ordered);
        v.measured(Quantity(has)).exactly(Quantity(needed))
    });
}

/// The list of the job, or the one length of its product.
fn has_stocks_of_job(layout: &Claims) -> bool {
    let product = &layout.job.product;
    match (layout.job.stocks.as_slice(), layout.stocks.as_slice()) {
        ([], [one]) => one.length == product.length && one.carton == product.carton,
        ([], _) => false,
        (listed, stocks) => listed == stocks,
    }
}

fn of_one_length(layout: &Claims, stock: &Stock, whole: usize, rule: &mut Cases) {
    let (bound, proven) = (layout.bound.panels, layout.bound.proven);
    rule.case(proven == (bound == whole), || {
        let said = Counted::new(bound, whole, proven);
        found(Subject::House, CountBreach::Proven { said })
    });
    let panels = layout.panels.len() as f64;
    let has = order(layout, "panels");
    rule.case(has == Some(panels), || {
        let v = found(named::takeoff_line("panels"), CountBreach::Ordered);
        v.measured(Quantity(has.unwrap_or(0.0))).exactly(Quantity(panels))
    });
    let spare = spare(layout, panels, stock);
    ordered(rule, layout, "spare-panels", spare);
    let cartons = ((panels + spare) / f64::from(stock.carton.max(1))).ceil();
    let singly = layout.job.siding().sold_by == SoldBy::Piece && stock.carton == 1;
    let has = order(layout, "cartons");
    rule.case(has == Some(cartons) || singly, || {
        let v = found(named::takeoff_line("cartons"), CountBreach::Ordered);
        v.measured(Quantity(has.unwrap_or(0.0))).exactly(Quantity(cartons))
    });
}

/// Spare panels: the job's percentage, a part of one as a whole one, unless full cartons of those laid
/// leave as many.
fn spare(layout: &Claims, panels: f64, stock: &Stock) -> f64 {
    let percent = panels * layout.job.takeoff.spare;
    let wanted = ((percent - 1e-6) / 100.0).ceil().max(0.0);
    let carton = f64::from(stock.carton.max(1));
    let in_last = panels % carton;
    let left = if in_last > 0.0 { carton - in_last } else { 0.0 };
    if left >= wanted { 0.0 } else { wanted }
}

/// Panels and cartons of each of several lengths, a line each for what there is.
fn by_length(layout: &Claims, rule: &mut Cases) {
    for (place, stock) in layout.stocks.iter().enumerate() {
        let suffix = match place {
            0 => String::new(),
            1 => "-second".to_owned(),
            _ => format!("-{}", place + 1),
        };
        let panels = layout.panels.iter().filter(|p| same(p.stock, stock.length)).count() as f64;
        ordered(rule, layout, &format!("panels{suffix}"), panels);
        let spare = spare(layout, panels, stock);
        ordered(rule, layout, &format!("spare-panels{suffix}"), spare);
        let cartons = ((panels + spare) / f64::from(stock.carton.max(1))).ceil();
        ordered(rule, layout, &format!("cartons{suffix}"), cartons);
    }
}
