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
mod methods;
mod money;

use self::list::refused;
pub use self::list::{Price, PriceList, parse};
use self::money::{in_multiples, money};
use crate::finding::Refusal;
use crate::finding::prices::PriceFault;
use crate::model::basis::{Basis, SpareCover};
use crate::model::ids::ItemId;
use crate::model::item::{CountUnit, Item, id_as_written};
use crate::model::quantity::TakeoffLine;
use crate::model::takeoff::{Cost, PanelUnit, Priced, Takeoff, UnusedPrice};

/// What a price list may call a line besides its short name: the item and the unit in words.
pub type LineWords<'a> = &'a dyn Fn(&TakeoffLine) -> [String; 2];

/// The takeoff with costs. Panels are bought by the carton
/// where cartons are priced, else by the piece, else by the square.
///
/// # Errors
/// `prices-unreadable` when a price is by another unit than its line is counted in.
pub fn applied(
    mut takeoff: Takeoff,
    list: &PriceList,
    name: &str,
    words: LineWords,
) -> Result<Takeoff, Refusal> {
    let matched = matched(&takeoff.lines, list, name, words)?;
    let of = |line: &TakeoffLine| matched.iter().find(|(l, _)| l.id == line.id).map(|(_, p)| *p);
    let panels_by = PanelUnit::ALL
        .into_iter()
        .find(|unit| matched.iter().any(|(line, _)| counts_panels_by(line) == Some(*unit)))
        .unwrap_or_default();
    let mut cost = Cost { currency: list.currency.clone(), ..Cost::default() };
    spares_by_multiple(&mut takeoff.lines, panels_by, &matched);
    for line in takeoff.lines.iter().filter(|l| panels_by.buys(l)) {
        // Spare pieces cost what the others do, unless the user prices them apart: then both are
        // rounded up to the multiple together.
        let as_others = || {
            let others = takeoff.line(&line.item.spared()?.id())?;
            let price = of(others)?;
            Some(more(extended(&line.id, others.order + line.order, price), others.order, price))
        };
        match of(line).map(|p| extended(&line.id, line.order, p)).or_else(as_others) {
            Some(priced) => cost.lines.push(priced),
            None => cost.unpriced.push(line.id.clone()),
        }
    }
    cost.total = cost.lines.iter().map(|p| p.extended).sum();
    let unused = list.prices.iter().filter(|p| !matched.iter().any(|(_, q)| q.line == p.line));
    cost.unused = unused.map(|p| UnusedPrice { item: p.item.clone(), line: p.line }).collect();
    takeoff.panels_by = panels_by;
    methods::price(&mut takeoff, list, &cost);
    takeoff.cost = Some(cost);
    Ok(takeoff)
}

/// The takeoff with the job's sales tax on its priced materials; labor bears none.
pub fn taxed(mut takeoff: Takeoff, percent: f64) -> Takeoff {
    let labor = Item::Labor.id();
    if let Some(cost) = takeoff.cost.as_mut().filter(|_| percent > 0.0) {
        let materials: i64 =
            cost.lines.iter().filter(|p| p.item != labor).map(|p| p.extended).sum();
        cost.tax_percent = Some(percent);
        // Hundredths, half and over up.
        cost.tax = Some((materials as f64 * percent / 100.0 + 0.5 - 1e-9).floor() as i64);
    }
    takeoff
}

/// The lines that a price is given for, each with its price.
fn matched<'a>(
    lines: &[TakeoffLine],
    list: &'a PriceList,
    name: &str,
    words: LineWords,
) -> Result<Vec<(TakeoffLine, &'a Price)>, Refusal> {
    let mut out = Vec::new();
    for line in lines {
        let [item, unit] = words(line);
        let Some(price) = list.prices.iter().find(|p| p.is_of(line, &item)) else { continue };
        if !price.counts_by(line.unit, &unit) {
            let (item, unit) = (price.item.clone(), price.unit.clone());
            let fault = PriceFault::OtherUnit { item, unit, counted_by: line.unit };
            return Err(refused(name, price.line, price.unit_column, fault));
        }
        out.push((line.clone(), price));
    }
    Ok(out)
}

/// Whether spare pieces are added: panels bought one by one are not covered by cartons, and what is sold
/// in multiples may leave enough.
fn spares_by_multiple(
    lines: &mut [TakeoffLine],
    panels_by: PanelUnit,
    matched: &[(TakeoffLine, &Price)],
) {
    let orders: Vec<(ItemId, f64)> = lines.iter().map(|l| (l.id.clone(), l.order)).collect();
    for line in lines {
        let panels = matches!(line.item, Item::SparePanels { .. });
        let Some(others) = line.item.spared().map(|i| i.id()) else { continue };
        let Basis::Spare { covered, .. } = &mut line.basis else { continue };
        if panels && panels_by != PanelUnit::Panels {
            continue;
        }
        (line.order, *covered) = (line.net, None);
        let own = matched.iter().any(|(l, _)| l.id == line.id);
        let price = matched.iter().find(|(l, _)| l.id == others).map(|(_, p)| *p);
        let Some(price) = price.filter(|_| !own) else { continue };
        let order = orders.iter().find(|(id, _)| *id == others).map_or(0.0, |(_, order)| *order);
        let over = in_multiples(order, price.multiple) as f64 - order;
        if over >= line.net {
            line.order = 0.0;
            *covered = Some(SpareCover::Multiple { of: price.multiple, over });
        }
    }
}

/// Of what is bought of spare pieces and others together, the part beyond the others.
fn more(all: Priced, others: f64, price: &Price) -> Priced {
    let quantity = all.quantity - in_multiples(others, price.multiple);
    Priced { quantity, extended: money(quantity, price.price), ..all }
}

/// The unit that a line counts panels by; spare ones are told apart.
fn counts_panels_by(line: &TakeoffLine) -> Option<PanelUnit> {
    match line.item {
        Item::Panels { .. } => Some(PanelUnit::Panels),
        Item::Cartons { .. } => Some(PanelUnit::Cartons),
        Item::Squares => Some(PanelUnit::Squares),
        _ => None,
    }
}

impl Price {
    /// Whether it is the price of this line: by its short name, with blanks for hyphens too, or by
    /// its words.
    fn is_of(&self, line: &TakeoffLine, called: &str) -> bool {
        line.id == id_as_written(&self.item) || self.item.to_lowercase() == called.to_lowercase()
    }

    /// Whether it is by this unit; squares went by another name once.
    fn counts_by(&self, unit: CountUnit, called: &str) -> bool {
        self.unit.eq_ignore_ascii_case(called)
            || (unit == CountUnit::Square && self.unit.eq_ignore_ascii_case("100 sq ft"))
    }
}

fn extended(item: &ItemId, order: f64, price: &Price) -> Priced {
    let quantity = in_multiples(order, price.multiple);
    Priced {
        item: item.clone(),
        price: price.price,
        multiple: price.multiple,
        quantity,
        extended: money(quantity, price.price),
    }
}
