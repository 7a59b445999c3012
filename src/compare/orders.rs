//! What to order more and what is over, line by line, at the user's prices where they are given.

use std::collections::BTreeMap;

use crate::geom::tol::ROUNDING;
use crate::layout::set::LaidSets;
use crate::model::change::{Comparison, CostChange, OrderChange};
use crate::model::ids::ItemId;
use crate::model::item::{CountUnit, Item};
use crate::model::takeoff::Takeoff;

/// Hundredths in a unit of money.
const HUNDREDTHS: f64 = 100.0;

/// A line of an order.
#[derive(Clone)]
struct Line {
    item: Item,
    unit: CountUnit,
    stock: Option<f64>,
    net: f64,
    order: f64,
    /// Its cost in hundredths.
    cost: Option<i64>,
}

/// What is bought for all sets of a house, in the order of the takeoff.
fn order(sets: &LaidSets) -> Vec<(ItemId, Line)> {
    let mut out: Vec<(ItemId, Line)> = Vec::new();
    for takeoff in sets.iter().map(|s| &s.takeoff) {
        for l in takeoff.lines.iter().filter(|l| takeoff.buys(l)) {
            let priced =
                takeoff.cost.as_ref().and_then(|c| c.lines.iter().find(|p| p.item == l.id));
            let bought = priced.map_or(l.order, |p| p.quantity as f64);
            let cost = priced.map(|p| p.extended);
            let line = Line {
                item: l.item.clone(),
                unit: l.unit,
                stock: l.stock,
                net: l.net,
                order: bought,
                cost,
            };
            match out.iter_mut().find(|(id, _)| *id == l.id) {
                Some((_, one)) => {
                    one.net += line.net;
                    one.order += line.order;
                    one.cost = one.cost.zip(line.cost).map(|(a, b)| a + b);
                }
                None => out.push((l.id.clone(), line)),
            }
        }
    }
    as_one_order(&mut out, &sets.house.takeoff);
    out
}

/// What several sets take of a line is summed before it is rounded up.
fn as_one_order(lines: &mut [(ItemId, Line)], house: &Takeoff) {
    for one in &house.one_order {
        if let Some((_, line)) = lines.iter_mut().find(|(id, _)| *id == one.id) {
            line.net = one.net;
            // Multiples of a price list are the user's own, and stay.
            if line.cost.is_none() {
                line.order = one.order;
            }
        }
    }
}

/// Tells the order before and after.
pub(super) fn orders(old: &LaidSets, new: &LaidSets, out: &mut Comparison) {
    let (was, is) = (order(old), order(new));
    let of =
        |lines: &[(ItemId, Line)]| -> BTreeMap<ItemId, Line> { lines.iter().cloned().collect() };
    let (a, b) = (of(&was), of(&is));
    let mut ids: Vec<&ItemId> = is.iter().map(|l| &l.0).collect();
    ids.extend(was.iter().map(|l| &l.0).filter(|id| !b.contains_key(*id)));
    for id in ids {
        let (x, y) = (a.get(id), b.get(id));
        let Some(line) = y.or(x) else { continue };
        let pair = |of: fn(&Line) -> f64| [x.map_or(0.0, of), y.map_or(0.0, of)];
        let order = pair(|l| l.order);
        let more = order[1] - order[0];
        if more.abs() <= ROUNDING {
            out.orders_alike += 1;
            continue;
        }
        let priced = [x, y].into_iter().flatten().all(|l| l.cost.is_some());
        let cost = pair(|l| l.cost.unwrap_or(0) as f64 / HUNDREDTHS);
        out.orders.push(OrderChange {
            id: id.clone(),
            item: line.item.clone(),
            unit: line.unit,
            stock: line.stock,
            net: pair(|l| l.net),
            order,
            more,
            cost: priced.then(|| hundredths(cost[1] - cost[0])),
        });
    }
    out.cost = costs(old, new, &out.orders);
}

fn costs(old: &LaidSets, new: &LaidSets, orders: &[OrderChange]) -> Option<CostChange> {
    let sum = |sets: &LaidSets, tax: bool| -> f64 {
        let costs = sets.iter().filter_map(|s| s.takeoff.cost.as_ref());
        let each = costs.map(|c| if tax { c.tax.unwrap_or(0) } else { c.total });
        each.sum::<i64>() as f64 / HUNDREDTHS
    };
    let currency = new.house.takeoff.cost.as_ref()?.currency.clone();
    let part = |sign: f64| {
        let all = orders.iter().filter_map(|o| o.cost).filter(|c| c * sign > 0.0);
        hundredths(all.sum::<f64>().abs())
    };
    Some(CostChange {
        currency,
        total: [sum(old, false), sum(new, false)],
        tax: [sum(old, true), sum(new, true)],
        more: part(1.0),
        over: part(-1.0),
        unpriced: orders.iter().filter(|o| o.cost.is_none()).map(|o| o.id.clone()).collect(),
    })
}

fn hundredths(money: f64) -> f64 {
    (money * HUNDREDTHS).round() / HUNDREDTHS + 0.0
}
