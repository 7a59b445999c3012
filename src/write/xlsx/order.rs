//! What to order, with room for prices.

use super::grid::{Grid, Look, alarm_rows};
use crate::language::Language;
use crate::layout::Layout;
use crate::model::quantity::TakeoffLine;
use crate::model::takeoff::{Priced, Takeoff};
use crate::wording::lists::ranges;
use crate::wording::takeoff::basis::basis;
use crate::wording::takeoff::checks::rule;
use crate::wording::takeoff::items;
use crate::wording::{report, tables};
use crate::write::tables::{unpriced, unused};

/// Row of the column headings, 0-based; the summary points at the rows under it.
fn head(layout: &Layout) -> u32 {
    alarm_rows(layout.verify.places()) + 2
}

/// Row of a line in formulas, 1-based.
pub(super) fn row_of(layout: &Layout, takeoff: &Takeoff, id: &str) -> Option<u32> {
    takeoff.lines.iter().position(|l| l.id == id).map(|i| head(layout) + 2 + i as u32)
}

/// Row of the total, 1-based.
pub(super) fn total_row(layout: &Layout, takeoff: &Takeoff) -> u32 {
    head(layout) + 2 + takeoff.lines.len() as u32
}

pub(super) fn sheet(layout: &Layout, takeoff: &Takeoff) -> Grid {
    let mut g = Grid::new(
        layout,
        "Order",
        &[
            25.0, 11.0, 11.0, 9.0, 8.0, 8.0, 10.0, 10.0, 11.0, 8.0, 11.0, 171.0, 14.0, 13.0, 13.0,
            70.0,
        ],
    );
    // What each line counts one by one is for whoever reads the file.
    g.print_columns(15);
    g.texts(&["Order"], Look::Title);
    let currency = takeoff.cost.as_ref().map(|c| c.currency.as_str()).unwrap_or_default();
    let (price, extended) = match currency {
        "" => ("Price".to_owned(), "Extended".to_owned()),
        c => (format!("Price, {c}"), format!("Extended, {c}")),
    };
    g.texts(&[tables::PRICES], Look::Text);
    g.head(
        &[
            "Item",
            "Color",
            "Unit",
            "Needed",
            "To order",
            "Not used",
            tables::BY_RULE,
            &price,
            tables::SOLD_IN,
            tables::UNITS_TO_BUY,
            &extended,
            tables::BASIS,
            tables::ITEM_NUMBER,
            "Stock length",
            "Length used",
            "Counts",
        ],
        &[3, 4, 5, 6, 7, 8, 9, 10],
    );
    let first = g.row + 1;
    for line in &takeoff.lines {
        row(&mut g, layout, takeoff, line);
    }
    g.filter(head(layout), 16);
    let total = takeoff.cost.as_ref().map_or(0.0, |c| c.total as f64 / 100.0);
    g.text(0, tables::PRICED_TOTAL, Look::TotalText);
    for col in 1..10 {
        g.text(col, "", Look::TotalText);
    }
    g.subtotal(10, first, total, Look::TotalMoney);
    g.row += 2;
    taxed(&mut g, takeoff, total);
    unmatched(&mut g, takeoff);
    g
}

/// Lines without a price, and prices without a line.
fn unmatched(g: &mut Grid, takeoff: &Takeoff) {
    if let Some(cost) = &takeoff.cost {
        for (what, list) in
            [(report::WITHOUT_PRICE, unpriced(cost)), (report::PRICES_NOT_USED, unused(cost))]
        {
            if !list.is_empty() {
                g.texts(&[what, &list.join(", ")], Look::Text);
            }
        }
    }
}

/// Tax on priced materials under the total, where the job gives one.
fn taxed(g: &mut Grid, takeoff: &Takeoff, total: f64) {
    let tax = takeoff.cost.as_ref().and_then(|c| c.tax_percent.zip(c.tax));
    let Some((percent, tax)) = tax else { return };
    let tax = tax as f64 / 100.0;
    for (what, value) in [(report::tax(percent).as_str(), tax), (report::WITH_TAX, total + tax)] {
        g.text(0, what, Look::Text);
        g.number(10, value, Look::Money);
        g.next();
    }
    g.row += 1;
}

fn row(g: &mut Grid, layout: &Layout, takeoff: &Takeoff, line: &TakeoffLine) {
    let excel = g.row + 1;
    g.text(0, &items::item(Language::English, &line.item, layout.job.sheet.lengths), Look::Wrapped);
    g.text(1, &line.color, Look::Text);
    g.text(2, items::unit(line.unit).en, Look::Text);
    g.number(3, line.net, Look::Two);
    if line.order > 0.0 {
        let whole = line.order.fract() == 0.0;
        g.number(4, line.order, if whole { Look::Count } else { Look::Two });
        g.number(5, line.waste / 100.0, Look::Percent);
    }
    let check =
        takeoff.checks.iter().find(|c| c.item.as_ref() == Some(&line.id) && c.unit == line.unit);
    if let Some(c) = check {
        g.number(6, c.rule, Look::Count);
    }
    if takeoff.buys(line) {
        let priced = takeoff.cost.iter().flat_map(|c| &c.lines).find(|p| p.item == line.id);
        // Spare ones without a price of their own are rounded up together with the others.
        let others = line.item.spared().and_then(|i| {
            let others = takeoff.line(&i.id())?;
            let bought = takeoff.cost.as_ref()?.lines.iter().find(|p| p.item == others.id)?;
            let multiple = f64::from(bought.multiple);
            let all = ((others.order + line.order) / multiple - 1e-9).ceil() * multiple;
            (priced?.quantity as f64 == all - bought.quantity as f64).then_some(others)
        });
        let others = others.and_then(|l| row_of(layout, takeoff, &l.id));
        price(g, (excel, others), line, priced);
    }
    let rule = check.map(|c| rule(&c.counting_rule));
    g.text(11, &how(layout, takeoff, line, rule), Look::Wrapped);
    g.text(12, &line.item_number, Look::Text);
    for (col, length) in [(13, line.stock), (14, line.length)] {
        if let Some(l) = length {
            g.text(col, &layout.job.sheet.lengths.length(l), Look::Text);
        }
    }
    g.text(15, &ranges(&line.counts), Look::Text);
    g.next();
}

/// Price, multiple, units to buy and extended cost; the last two are formulas.
fn price(
    g: &mut Grid,
    (excel, others): (u32, Option<u32>),
    line: &TakeoffLine,
    priced: Option<&Priced>,
) {
    match priced {
        Some(p) => {
            g.number(7, p.price as f64 / 10_000.0, Look::Entry);
            g.number(8, f64::from(p.multiple), Look::EntryCount);
        }
        None => {
            g.blank(7, Look::Entry);
            g.number(8, 1.0, Look::EntryCount);
        }
    }
    let units = priced.map_or(line.order.ceil(), |p| p.quantity as f64);
    let formula = match others {
        Some(o) => format!("=ROUNDUP((E{o}+E{excel})/I{excel},0)*I{excel}-J{o}"),
        None => format!("=ROUNDUP(E{excel}/I{excel},0)*I{excel}"),
    };
    g.sum(9, &formula, units, Look::Count);
    let result = priced.map_or(0.0, |p| p.extended as f64 / 100.0);
    g.sum(10, &format!("=ROUND(J{excel}*H{excel},2)"), result, Look::Money);
}

fn how(layout: &Layout, takeoff: &Takeoff, line: &TakeoffLine, rule: Option<String>) -> String {
    let mut out = basis(line, &layout.job, &layout.bound);
    if line.order > 0.0 && !takeoff.buys(line) {
        out.push_str(&format!(
            "; bought as {}",
            items::panel_unit(takeoff.panels_by, layout.job.product.kind.piece()).en
        ));
    }
    if let Some(o) = takeoff.offcuts.iter().find(|o| o.item == line.id) {
        let style = layout.job.sheet.lengths;
        out.push_str(&tables::left_over(&style.length(o.usable), &style.length(o.scrap)));
    }
    if let Some(rule) = rule {
        out.push_str(&format!("; published rule: {rule}"));
    }
    out
}
