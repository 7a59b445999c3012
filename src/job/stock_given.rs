//! What `[product]` says of stock lengths, settled as stocks, or what in it contradicts itself.

use super::bounds::Bounds;
use super::fault::Fault;
use super::product::Product;
use super::stock::{GivenStocks, LEFT_OUT, Stock};
use crate::finding::job_value::ValueFault;

/// Bounds of the keys of a stock. The cost's keep its thousandths whole numbers that can be summed.
pub(super) const STOCK_BOUNDS: [Bounds; 3] = [
    Bounds { key: "length", least: 36.0, most: 600.0 },
    Bounds { key: "carton", least: 1.0, most: 1000.0 },
    Bounds { key: "cost", least: 0.05, most: 1000.0 },
];

/// Least difference of two lengths, inches: nearer ones would be taken for one another in a yard.
pub(super) const APART: f64 = 1.0;

/// Most that one cost is over another: beyond, they are hardly in the same terms.
pub(super) const COSTS_APART: f64 = 20.0;

/// Turns what `[product]` says of stock lengths into stocks, and has it say the first length where
/// `[[stock]]` does.
pub(super) fn settle_product(product: &mut Product, stocks: &mut Vec<Stock>) {
    for s in stocks.iter_mut().filter(|s| s.carton == LEFT_OUT) {
        s.carton = product.carton;
    }
    if !contradictions(product, stocks).is_empty() || !second_in_bounds(&product.given) {
        return;
    }
    let given = std::mem::take(&mut product.given);
    if let Some(length) = given.second_length {
        let carton = given.second_carton.unwrap_or(product.carton);
        let first_cost = given.second_cost.map(|_| 1.0);
        *stocks = vec![
            Stock { length: product.length, carton: product.carton, cost: first_cost },
            Stock { length, carton, cost: given.second_cost },
        ];
    }
    // A first stock out of bounds is refused by its own key alone.
    let in_bounds = |s: &&Stock| {
        let [length, carton, _] = STOCK_BOUNDS;
        length.out("", s.length).is_none() && carton.out("", f64::from(s.carton)).is_none()
    };
    if let Some(first) = stocks.first().filter(in_bounds) {
        (product.length, product.carton) = (first.length, first.carton);
    }
}

/// What is out of bounds is refused by its own key, so it must not become a stock.
fn second_in_bounds(given: &GivenStocks) -> bool {
    let [length, carton, cost] = STOCK_BOUNDS;
    let within = |v: Option<f64>, b: Bounds| v.is_none_or(|v| b.out("", v).is_none());
    within(given.second_length, length)
        && within(given.second_carton.map(f64::from), carton)
        && within(given.second_cost, Bounds { most: COSTS_APART, ..cost })
}

/// A second length that is none, what goes with one where there is none, and stock lengths said in
/// both ways at once.
pub(super) fn contradictions(p: &Product, stocks: &[Stock]) -> Vec<Fault> {
    let given = &p.given;
    let second_key = "product.second_length";
    let seconds = [
        (second_key, given.second_length.is_some()),
        ("product.second_cost", given.second_cost.is_some()),
        ("product.second_carton", given.second_carton.is_some()),
    ];
    let seconds = seconds.into_iter().filter(|(_, given)| *given).map(|(key, _)| key);
    let pair = |key: &str, other: &str| (key.to_owned(), other.to_owned());
    if let Some(first) = stocks.first() {
        let differs = given.length.is_some_and(|l| l != first.length);
        let both = |key: &str| {
            let (key, other) = pair(key, "stock");
            Fault::new([key.clone(), other.clone()], ValueFault::OneTooMany { key, other })
        };
        return seconds.chain(differs.then_some("product.length")).map(both).collect();
    }
    let Some(second) = given.second_length else {
        let alone = |key: &str| {
            let (key, other) = pair(key, second_key);
            Fault::new([key.clone(), other.clone()], ValueFault::NeedsOther { key, other })
        };
        return seconds.map(alone).collect();
    };
    if p.system().joints.is_on_studs() {
        return vec![Fault::of_other_siding(p.kind, second_key)];
    }
    if (second - p.length).abs() >= APART {
        return Vec::new();
    }
    let fault = ValueFault::LengthsAlike { key: second_key.to_owned(), second, first: p.length };
    vec![Fault::new([second_key, "product.length"], fault)]
}
