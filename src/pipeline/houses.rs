//! One purchase for many houses.

use crate::finding::Refusal;
use crate::layout::Layout;
use crate::layout::houses::{HouseFigures, Purchase, SetTakes};
use crate::model::basis::Basis;
use crate::model::item::Item;
use crate::model::quantity::TakeoffLine;
use crate::model::takeoff::{OrderLine, PanelUnit, Takeoff};
use crate::read::layout_json;
use crate::takeoff;
use crate::takeoff::price::{self, LineWords, PriceList};

/// A price list, what errors call it, and the words for a line.
pub type Priced<'a> = (&'a PriceList, &'a str, LineWords<'a>);

/// The figures of a house that was laid out before, by the `layout.json` of each of its sets; none where one is no
/// layout of this version.
pub fn figures_again(name: &str, sets: &[Vec<u8>]) -> Option<HouseFigures> {
    let layouts: Result<Vec<Layout>, Refusal> =
        sets.iter().map(|bytes| layout_json::layout(bytes)).collect();
    Some(HouseFigures::of(name, layouts.ok().filter(|all| !all.is_empty())?))
}

/// What to buy for many houses at once: cartons, rolls, boxes and spare pieces are rounded up once; what is cut is
/// cut house by house, so that panels are the sum of the houses' panels.
///
/// # Errors
/// `prices-unreadable` when a price is by another unit than its line is counted in.
pub fn purchase(sets: &[&SetTakes], prices: Option<Priced>) -> Result<Purchase, Refusal> {
    let panels = panels(sets);
    let Some(prices) = prices else {
        let each: Vec<takeoff::NamedSet> =
            sets.iter().map(|s| (s.name.as_str(), (&s.house, &s.takeoff))).collect();
        return Ok(Purchase { panels, lines: takeoff::purchase(&each), ..Purchase::default() });
    };
    // What panels are bought by follows from the prices: the same for the whole as for each house.
    let mut apart = 0;
    let mut bought: Vec<Takeoff> = Vec::new();
    for set in sets {
        let (list, name, words) = prices;
        let one = price::applied(set.takeoff.clone(), list, name, words)?;
        apart += one.cost.as_ref().map_or(0, |c| c.total);
        bought.push(Takeoff { cost: None, ..one });
    }
    let each = named(sets, &bought);
    let lines = takeoff::purchase(&each);
    let (costs, currency) = costs(&lines, &bought, prices)?;
    let total = costs.iter().flatten().sum();
    Ok(Purchase { panels, lines, costs, currency, total, apart })
}

/// Each set with its house's name, and what it takes told by another takeoff.
fn named<'a>(sets: &[&'a SetTakes], takeoffs: &'a [Takeoff]) -> Vec<takeoff::NamedSet<'a>> {
    let with = |(s, t): (&&'a SetTakes, &'a Takeoff)| (s.name.as_str(), (&s.house, t));
    sets.iter().zip(takeoffs).map(with).collect()
}

/// Panels by stock length, one by one.
fn panels(sets: &[&SetTakes]) -> Vec<OrderLine> {
    let counted: Vec<Takeoff> = sets
        .iter()
        .map(|s| {
            let lines = s.takeoff.lines.iter().filter(|l| matches!(l.item, Item::Panels { .. }));
            let lines = lines.cloned().collect();
            Takeoff { lines, panels_by: PanelUnit::Panels, ..Takeoff::default() }
        })
        .collect();
    let each = named(sets, &counted);
    takeoff::purchase(&each)
}

/// The cost of each line of the purchase, hundredths, and the currency.
fn costs(
    lines: &[OrderLine],
    bought: &[Takeoff],
    (list, name, words): Priced,
) -> Result<(Vec<Option<i64>>, String), Refusal> {
    let panels_by = bought.first().map_or(PanelUnit::default(), |t| t.panels_by);
    let mut out = Vec::new();
    for line in lines {
        // Alone with what it is a spare of, so that lines of one name and several sidings stay apart.
        let mut alone: Vec<TakeoffLine> = as_line(line, bought).into_iter().collect();
        let others = line.item.spared().map(|i| i.id());
        let others = lines.iter().filter(|l| Some(&l.id) == others.as_ref());
        alone.extend(others.filter_map(|l| as_line(l, bought)));
        let takeoff = Takeoff { lines: alone, panels_by, ..Takeoff::default() };
        let cost = price::applied(takeoff, list, name, words)?.cost.unwrap_or_default();
        out.push(cost.lines.iter().find(|p| p.item == line.id).map(|p| p.extended));
    }
    Ok((out, list.currency.clone()))
}

/// A line of the purchase as one of a takeoff.
fn as_line(line: &OrderLine, bought: &[Takeoff]) -> Option<TakeoffLine> {
    let mut out = bought.iter().find_map(|t| t.line(&line.id))?.clone();
    (out.net, out.order) = (line.net, line.order);
    if let Basis::Spare { covered, .. } = &mut out.basis {
        *covered = None;
        // What is bought is spare: the multiple is reckoned anew over all.
        out.net = line.order;
    }
    Some(out)
}
