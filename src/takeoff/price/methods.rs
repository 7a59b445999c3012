//! Panels of every way of counting at the user's prices.

use super::list::PriceList;
use super::money::{in_multiples, money};
use crate::model::basis::Basis;
use crate::model::counting::CountingMethod;
use crate::model::item::{Item, MixedStock, id_as_written};
use crate::model::quantity::TakeoffLine;
use crate::model::takeoff::{Comparison, Cost, PanelUnit, Takeoff};

/// Prices the ways of counting; by squares there is no such figure for pieces.
pub(super) fn price(takeoff: &mut Takeoff, list: &PriceList, cost: &Cost) {
    let unit = takeoff.panels_by;
    let mixed = takeoff.lines.iter().any(|l| l.item.mixed_stock().is_some());
    let all = std::mem::take(&mut takeoff.comparison);
    let priced = |c: Comparison| {
        let cost = if mixed { of_lengths(takeoff, list, &c) } else { of_one(&c, unit, cost) };
        Comparison { cost, ..c }
    };
    takeoff.comparison = all.into_iter().map(priced).collect();
}

/// Units of a way of counting.
fn units(c: &Comparison, unit: PanelUnit) -> Option<usize> {
    match unit {
        PanelUnit::Cartons => Some(c.cartons),
        PanelUnit::Panels => Some(c.panels),
        PanelUnit::Squares => None,
    }
}

/// Their price, sold in multiples.
fn at(price: i64, multiple: u32, units: usize) -> i64 {
    money(in_multiples(units as f64, multiple), price)
}

/// Panels of one length at the price of this layout's.
fn of_one(c: &Comparison, unit: PanelUnit, cost: &Cost) -> Option<i64> {
    let p = cost.lines.iter().find(|p| p.item == unit.id())?;
    Some(at(p.price, p.multiple, units(c, unit)?))
}

/// With several lengths no way but the layout's has them all; each alone is at its own price.
fn of_lengths(takeoff: &Takeoff, list: &PriceList, c: &Comparison) -> Option<i64> {
    let unit = takeoff.panels_by;
    match &c.method {
        CountingMethod::OneLength { place, length } => {
            let stock = Some(MixedStock { place: *place, length: *length });
            let item = match unit {
                PanelUnit::Cartons => Item::Cartons { stock },
                PanelUnit::Panels => Item::Panels { piece: Default::default(), stock },
                PanelUnit::Squares => return None,
            };
            let price = list.prices.iter().find(|p| id_as_written(&p.item) == item.id())?;
            Some(at(price.price, price.multiple, units(c, unit)?))
        }
        CountingMethod::ThisLayout { .. } => {
            let laid = takeoff.lines.iter().filter_map(|l| laid(takeoff, l, unit));
            let each = laid.map(|(line, units)| {
                let price = list.prices.iter().find(|p| id_as_written(&p.item) == line.id)?;
                Some(at(price.price, price.multiple, units))
            });
            each.sum()
        }
        _ => None,
    }
}

/// A line that panels are bought by, with what it takes of them, none spare.
fn laid<'a>(
    takeoff: &Takeoff,
    line: &'a TakeoffLine,
    unit: PanelUnit,
) -> Option<(&'a TakeoffLine, usize)> {
    match (&line.item, unit, &line.basis) {
        (Item::Panels { .. }, PanelUnit::Panels, _) => Some((line, line.order as usize)),
        (Item::Cartons { stock }, PanelUnit::Cartons, Basis::Cartons { piece, in_carton, .. }) => {
            let panels = takeoff.line(&Item::Panels { piece: *piece, stock: *stock }.id())?.order;
            Some((line, (panels / in_carton.max(1.0) - 1e-9).ceil().max(0.0) as usize))
        }
        _ => None,
    }
}
