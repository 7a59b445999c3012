//! Tables of the takeoff for the terminal, 80 columns wide.

use super::alarm::bar;
use super::text::{WIDTH, fitted, wrapped};
use crate::clean::terminal;
use crate::job::Job;
use crate::language::Language;
use crate::layout::Layout;
use crate::layout::verified::Verify;
use crate::model::ids::ItemId;
use crate::model::quantity::Group;
use crate::model::takeoff::{Cost, PartShare, Takeoff};
use crate::units::LengthStyle;
use crate::wording::report;
use crate::wording::takeoff::items;

/// The takeoff as a table of 80 columns.
pub fn terminal_table(takeoff: &Takeoff, style: LengthStyle) -> String {
    let mut out =
        format!("  {:<34} {:>10} {:>10} {:>8}  {}\n", "item", "net", "order", "waste", "unit");
    for l in &takeoff.lines {
        let order = if l.order > 0.0 { format!("{:.2}", l.order) } else { "-".to_owned() };
        let order = order.strip_suffix(".00").map(str::to_owned).unwrap_or(order);
        let waste = if matches!(l.group, Group::Comparison | Group::Measured) {
            "-".to_owned()
        } else {
            format!("{:.1} %", l.waste)
        };
        out.push_str(&format!(
            "  {:<34} {:>10.2} {order:>10} {waste:>8}  {}\n",
            fitted(&items::item(Language::English, &l.item, style), 34),
            l.net,
            fitted(items::unit(l.unit).en, 11)
        ));
    }
    out
}

/// One list to buy by for all sets of a house; empty for a house of one.
pub fn one_order(takeoff: &Takeoff, job: &Job) -> String {
    if takeoff.one_order.is_empty() {
        return String::new();
    }
    let mut out = format!("  {:<44} {:>6}  {:<11} {}\n", "item", "order", "unit", report::FOR_SETS);
    for l in &takeoff.one_order {
        let order = format!("{:.2}", l.order);
        let order = order.strip_suffix(".00").map(str::to_owned).unwrap_or(order);
        out.push_str(&format!(
            "  {:<44} {order:>6}  {:<11} {}\n",
            fitted(&terminal(&report::order_item(l, job)), 44),
            fitted(items::unit(l.unit).en, 11),
            fitted(&terminal(&report::order_sets(l)), 13)
        ));
    }
    out
}

/// The table, and under it the costs where there are prices; over and under those of a layout that
/// breaks rules of the check stands the bar that says so.
pub fn priced_table(layout: &Layout, takeoff: &Takeoff) -> String {
    let costs = costs(takeoff);
    let gap = if costs.is_empty() { "" } else { "\n" };
    let table = terminal_table(takeoff, layout.job.sheet.lengths) + gap + &costs;
    under_bar(&layout.verify, &table)
}

/// A text between two bars that say that the check failed; as it is where every rule is kept.
fn under_bar(verify: &Verify, text: &str) -> String {
    let bar = bar(verify);
    format!("{bar}{text}{bar}")
}

/// What each part of the house takes of each line, as tables of 80 columns.
pub fn shares_table(verify: &Verify, rows: &[PartShare], style: LengthStyle) -> String {
    let mut out = format!("  {:<42} {:>9} {:>10}  {}\n", "item", "pieces", "net", "unit");
    let mut last = None;
    for r in rows {
        let part = (&r.elevation, &r.wall, r.wall_part);
        if last.replace(part) != Some(part) {
            let wall_part = r.wall_part.map_or("", items::wall_part);
            let words = [r.elevation.as_str(), &r.wall, wall_part];
            let words: Vec<&str> = words.into_iter().filter(|w| !w.is_empty()).collect();
            out.push_str(&format!("{}\n", fitted(&words.join(", "), WIDTH)));
        }
        out.push_str(&format!(
            "  {:<42} {:>9} {:>10.2}  {}\n",
            fitted(&items::item(Language::English, &r.item, style), 42),
            r.pieces,
            r.net,
            fitted(items::unit(r.unit).en, 11)
        ));
    }
    under_bar(verify, &out)
}

/// Lines of an explanation wrapped, each at its own indent.
pub fn explained(verify: &Verify, text: &str) -> String {
    let one = |line: &str| {
        let indent: String = line.chars().take_while(|c| *c == ' ').collect();
        wrapped(&terminal(line), &indent) + "\n"
    };
    under_bar(verify, &text.lines().map(one).collect::<String>())
}

/// What the takeoff costs; empty without prices.
pub(super) fn costs(takeoff: &Takeoff) -> String {
    let Some(cost) = &takeoff.cost else { return String::new() };
    let currency = fitted(&cost.currency, 8);
    let mut out = format!(
        "{}\n  {:<30} {:>10} {:>14} {:>16}\n",
        report::cost_heading(&currency),
        "item",
        "units",
        "price",
        "extended"
    );
    for p in &cost.lines {
        let price = format!("{}.{:04}", p.price / 10_000, p.price % 10_000);
        out.push_str(&format!(
            "  {:<30} {:>10} {price:>14} {:>16}\n",
            fitted(&p.item, 30),
            p.quantity,
            hundredths(p.extended)
        ));
    }
    out.push_str(&format!("  {:<56} {:>16}\n", report::PRICED_TOTAL, hundredths(cost.total)));
    if let (Some(percent), Some(tax)) = (cost.tax_percent, cost.tax) {
        let what = report::tax(percent);
        out.push_str(&format!("  {:<56} {:>16}\n", fitted(&what, 56), hundredths(tax)));
        let with_tax = hundredths(cost.total + tax);
        out.push_str(&format!("  {:<56} {:>16}\n", report::WITH_TAX, with_tax));
    }
    for (what, list) in
        [(report::WITHOUT_PRICE, unpriced(cost)), (report::PRICES_NOT_USED, unused(cost))]
    {
        if !list.is_empty() {
            out.push_str(&wrapped(&format!("{what}: {}.", terminal(&list.join(", "))), "  "));
            out.push('\n');
        }
    }
    out
}

/// Lines to buy without a price.
pub(super) fn unpriced(cost: &Cost) -> Vec<String> {
    cost.unpriced.iter().map(ItemId::to_string).collect()
}

/// Prices that no line takes, each with its line in the price list.
pub(super) fn unused(cost: &Cost) -> Vec<String> {
    cost.unused.iter().map(|p| format!("{} (line {})", p.item, p.line)).collect()
}

fn hundredths(v: i64) -> String {
    format!("{}.{:02}", v / 100, v % 100)
}
