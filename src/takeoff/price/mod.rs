//! The user's own prices: a CSV of item, unit, price, order multiple and currency. No price is
//! ever made up: a line without one is listed as unpriced.
//!
//! ```text
//! item,unit,price,order multiple,currency
//! cartons,carton,412.00,1,USD
//! J-channel,piece,9.85,10,USD
//! ```
//! `item` is a line's short name or its words, in any case; columns may stand in any order, and
//! `order multiple` may be left out. Where a decimal comma is usual, spreadsheets part cells by
//! semicolons: a first line with semicolons and no comma says so, and prices may have either sign. Money is counted in whole ten-thousandths and hundredths.

mod list;

use self::list::refused;
pub use self::list::{Price, PriceList, parse};
use crate::finding::Refusal;
use crate::finding::prices::PriceFault;
use crate::model::quantity::TakeoffLine;
use crate::model::takeoff::{Cost, PanelUnit, Priced, Takeoff, of_any_stock};

/// The takeoff with costs. Panels are bought by the carton where cartons are priced, else by the
/// piece, else by the square.
///
/// # Errors
/// `prices-unreadable` when a price is by another unit than its line is counted in.
pub fn applied(mut takeoff: Takeoff, list: &PriceList, name: &str) -> Result<Takeoff, Refusal> {
    let mut matched: Vec<(&TakeoffLine, &Price)> = Vec::new();
    for line in &takeoff.lines {
        let Some(price) = list.prices.iter().find(|p| p.is_of(line)) else { continue };
        if !price.unit.eq_ignore_ascii_case(&line.unit) {
            let fault = PriceFault::OtherUnit {
                item: price.item.clone(),
                unit: price.unit.clone(),
                counted_by: line.unit.clone(),
            };
            return Err(refused(name, price.line, price.unit_column, fault));
        }
        matched.push((line, price));
    }
    let of = |id: &str| matched.iter().find(|(l, _)| l.id == id).map(|(_, p)| *p);
    let priced = |u: &PanelUnit| matched.iter().any(|(l, _)| of_any_stock(&l.id) == u.id());
    let panels_by = PanelUnit::ALL.into_iter().find(priced).unwrap_or_default();
    let buys = Takeoff { panels_by, lines: Vec::new(), ..Takeoff::default() };
    let mut cost = Cost { currency: list.currency.clone(), ..Cost::default() };
    for line in takeoff.lines.iter().filter(|l| buys.buys(l)) {
        // Spare pieces cost what the others do, unless the user prices them apart.
        let as_panels = || of(line.id.strip_prefix("spare-")?);
        match of(&line.id).or_else(as_panels) {
            Some(p) => cost.lines.push(extended(&line.id, line.order, p)),
            None => cost.unpriced.push(line.id.clone()),
        }
    }
    cost.total = cost.lines.iter().map(|p| p.extended).sum();
    let known = |p: &&Price| !matched.iter().any(|(_, q)| q.line == p.line);
    let unused = list.prices.iter().filter(known);
    cost.unused = unused.map(|p| format!("{} (line {})", p.item, p.line)).collect();
    takeoff.panels_by = panels_by;
    cost_of_ways(&mut takeoff, &cost);
    takeoff.cost = Some(cost);
    Ok(takeoff)
}

impl Price {
    /// Whether it is the price of this line.
    fn is_of(&self, line: &TakeoffLine) -> bool {
        let item = self.item.to_lowercase();
        item == line.id || item == line.item.to_lowercase()
    }
}

fn extended(item: &str, order: f64, price: &Price) -> Priced {
    let multiple = u64::from(price.multiple);
    let units = (order - 1e-9).ceil().max(0.0) as u64;
    let quantity = units.div_ceil(multiple) * multiple;
    Priced {
        item: item.to_owned(),
        price: price.price,
        multiple: price.multiple,
        quantity,
        extended: money(quantity, price.price),
    }
}

/// Hundredths, half and over up.
fn money(quantity: u64, price: i64) -> i64 {
    let exact = i128::from(quantity) * i128::from(price);
    i64::try_from((exact + 50).div_euclid(100)).unwrap_or(i64::MAX)
}

/// Panels of the other ways at the same price; by squares there is no such figure for pieces.
fn cost_of_ways(takeoff: &mut Takeoff, cost: &Cost) {
    // With several lengths no way but the layout's has them all.
    let of_further = |id: &str| of_any_stock(id) == "panels" && id != "panels";
    if takeoff.lines.iter().any(|l| of_further(&l.id)) {
        return;
    }
    let unit = takeoff.panels_by;
    let Some(p) = cost.lines.iter().find(|p| p.item == unit.id()) else { return };
    let multiple = u64::from(p.multiple);
    for way in &mut takeoff.ways {
        let units = match unit {
            PanelUnit::Cartons => way.cartons,
            PanelUnit::Panels => way.panels,
            PanelUnit::Squares => return,
        };
        way.cost = Some(money((units as u64).div_ceil(multiple) * multiple, p.price));
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn money_is_rounded_half_up() {
        assert_eq!(money(3, 15_050), 452); // 4.515
        assert_eq!(money(1, 49), 0);
        assert_eq!(money(1, 50), 1);
    }
}
