//! A second stock length of the same panel, mixed with the first.

use super::Product;
use super::fault::Fault;
use crate::finding::job_value::ValueFault;
use crate::model::seam::SecondStock;

impl Product {
    /// The second length with what panels of both weigh: sixteenths of their lengths, or thousandths of
    /// the first one's cost, without a common divisor.
    pub fn second(&self) -> Option<SecondStock> {
        let length = self.second_length?;
        let whole = |v: f64| (v.round() as i64).max(1);
        let [a, b] = match self.second_cost {
            Some(cost) => [1000, whole(1000.0 * cost)],
            None => [self.length, length].map(|l| whole(16.0 * l)),
        };
        let (mut divisor, mut left) = (a, b);
        while left != 0 {
            (divisor, left) = (left, divisor % left);
        }
        Some(SecondStock { length, weights: [a / divisor, b / divisor] })
    }

    /// The stock lengths panels come in, `length` first.
    pub fn stocks(&self) -> Vec<f64> {
        std::iter::once(self.length).chain(self.second_length).collect()
    }

    /// Whether a stock panel of this length is one of the second length.
    pub fn is_second(&self, stock: f64) -> bool {
        self.second_length.is_some_and(|l| (l - stock).abs() < (self.length - stock).abs())
    }

    /// Panels in a carton, of the second length or the first.
    pub fn in_carton(&self, second: bool) -> u32 {
        self.second_carton.filter(|_| second).unwrap_or(self.carton).max(1)
    }
}

/// A second length that is none, and what goes with one where there is none.
pub(super) fn faults(p: &Product) -> Vec<Fault> {
    let given = [
        ("product.second_cost", p.second_cost.is_some()),
        ("product.second_carton", p.second_carton.is_some()),
    ];
    let second = "product.second_length";
    let Some(length) = p.second_length else {
        let alone = |key: &str| {
            let (key, other) = (key.to_owned(), second.to_owned());
            Fault::new([key.clone(), other.clone()], ValueFault::NeedsOther { key, other })
        };
        return given.into_iter().filter(|(_, given)| *given).map(|(key, _)| alone(key)).collect();
    };
    if p.system().joints.is_on_studs() {
        return vec![Fault::of_other_siding(p.kind, second)];
    }
    if (length - p.length).abs() >= 1.0 {
        return Vec::new();
    }
    let fault =
        ValueFault::LengthsAlike { key: second.to_owned(), second: length, first: p.length };
    vec![Fault::new([second, "product.length"], fault)]
}
