//! Tables of many houses as CSV: `houses.csv`, `purchase.csv`, `purchase-by-house.csv`.

use super::csv_cell::{Cell, count, money, number, table, text};
use crate::language::Language;
use crate::layout::houses::{HouseTold, HowItWent, Purchase, houses_of};
use crate::model::takeoff::OrderLine;
use crate::units::LengthStyle;
use crate::wording::houses as words;
use crate::wording::takeoff::items;

fn owned(names: &[&str]) -> Vec<String> {
    names.iter().map(|n| (*n).to_owned()).collect()
}

/// The houses, a row each. Areas in square feet.
pub fn houses(houses: &[HouseTold]) -> Vec<u8> {
    let rows = houses.iter().map(|h| {
        let mut row = vec![
            text(h.name.as_str()),
            text(h.drawing.as_str()),
            text(h.job.as_str()),
            text(h.folder.as_str()),
            text(words::state(&h.how)),
        ];
        row.extend(match &h.figures {
            Some(f) => {
                let counts = [f.panels, f.least, f.trims, f.warnings, f.remarks, f.broken];
                let counts = counts.map(|n| count(n as i128));
                [number(f.gross), number(f.net)].into_iter().chain(counts).collect()
            }
            None => vec![Cell::BLANK; 8],
        });
        let (seconds, code, why) = match &h.how {
            HowItWent::Laid { seconds } => (number((seconds * 100.0).round() / 100.0), "", ""),
            HowItWent::Before => (Cell::BLANK, "", ""),
            HowItWent::Refused { code, message } => (Cell::BLANK, code.as_str(), message.as_str()),
        };
        row.extend([seconds, text(code), text(why)]);
        row
    });
    table(&owned(&words::HOUSES), rows)
}

/// The purchase, a row a line; panels first, whatever they are bought in.
pub fn purchase(purchase: &Purchase, style: LengthStyle) -> Vec<u8> {
    let rows = rows(purchase).map(|(line, cost)| {
        let apart: f64 = line.sets.iter().map(|s| s.order).sum();
        vec![
            text(items::item(Language::English, &line.item, style)),
            text(items::unit(line.unit).en),
            text(line.color.as_str()),
            text(line.stock.map_or(String::new(), |s| style.length(s))),
            count(houses_of(line) as i128),
            number(line.net),
            number(apart),
            number(line.order),
            match cost {
                Bought::Costs(cost) => money(cost),
                Bought::Unpriced => Cell::BLANK,
                Bought::Counted => text(words::IN_CARTONS),
            },
        ]
    });
    table(&owned(&words::PURCHASE), rows)
}

/// How a line of the purchase is paid for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Bought {
    /// For so many hundredths.
    Costs(i64),
    /// No price is given.
    Unpriced,
    /// Another line says it over again and is bought.
    Counted,
}

/// Every line, panels first.
pub(super) fn rows(purchase: &Purchase) -> impl Iterator<Item = (&OrderLine, Bought)> {
    let bought = |p: &&OrderLine| purchase.lines.iter().any(|l| l.id == p.id);
    let counted = purchase.panels.iter().filter(move |p| !bought(p)).map(|l| (l, Bought::Counted));
    let lines = purchase.lines.iter().enumerate().map(|(i, l)| {
        let cost = purchase.costs.get(i).copied().flatten();
        (l, cost.map_or(Bought::Unpriced, Bought::Costs))
    });
    counted.chain(lines)
}

/// What each house takes of each line.
pub fn by_house(purchase: &Purchase, style: LengthStyle) -> Vec<u8> {
    let rows = rows(purchase).flat_map(|(line, _)| {
        line.sets.iter().map(move |s| {
            vec![
                text(items::item(Language::English, &line.item, style)),
                text(items::unit(line.unit).en),
                text(line.color.as_str()),
                text(words::taker(s)),
                number(s.net),
                number(s.order),
            ]
        })
    });
    table(&owned(&words::BY_HOUSE), rows)
}
