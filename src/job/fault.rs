//! A value no layout can be made with: what every check of the job gives.

use super::siding::kind::Siding;
use crate::finding::job::{FilePlace, PlacedFault};
use crate::finding::job_value::ValueFault;

/// A value no layout can be made with.
#[derive(Clone, Debug, PartialEq)]
pub struct Fault {
    /// Keys it hangs on, dotted, tables of a list by number from 0; the likeliest first.
    pub keys: Vec<String>,
    /// The zone whose product it is about.
    pub zone: Option<usize>,
    /// What is wrong.
    pub fault: ValueFault,
}

impl Fault {
    /// A fault that hangs on these keys.
    pub(super) fn new<K: Into<String>>(
        keys: impl IntoIterator<Item = K>,
        fault: ValueFault,
    ) -> Self {
        Fault { keys: keys.into_iter().map(Into::into).collect(), zone: None, fault }
    }

    /// A number out of its range, if it is.
    pub(super) fn out_of_range(key: &str, value: f64, least: f64, most: f64) -> Option<Self> {
        let fits = value >= least && value <= most;
        (!fits).then(|| {
            let key = key.to_owned();
            let keys = [key.clone()];
            Fault::new(
                keys,
                if value.is_finite() {
                    ValueFault::OutOfRange { key, value, least, most }
                } else {
                    ValueFault::NotFinite { key }
                },
            )
        })
    }

    /// A number that is not over another, if both are numbers.
    pub(super) fn not_over((key, value): (&str, f64), (other, limit): (&str, f64)) -> Option<Self> {
        let is_over = value > limit || !value.is_finite() || !limit.is_finite();
        (!is_over).then(|| {
            let (key, other) = (key.to_owned(), other.to_owned());
            let keys = [key.clone(), other.clone()];
            Fault::new(keys, ValueFault::NotOver { key, value, other, limit })
        })
    }

    /// A key that says nothing about the siding picked.
    pub(super) fn of_other_siding(siding: Siding, key: &str) -> Self {
        let (key, siding) = (key.to_owned(), siding.key().to_owned());
        let keys = [key.clone(), "product.kind".to_owned()];
        Fault::new(keys, ValueFault::OfOtherSiding { key, siding })
    }

    /// Whether a key is of a product or its stocks, which a zone may have of its own.
    pub(super) fn is_of_product(key: &str) -> bool {
        key == "stock" || key.starts_with("product.") || key.starts_with("stock.")
    }

    /// A fault in the product of a zone.
    pub(super) fn in_zone(mut self, zone: usize) -> Self {
        for key in self.keys.iter_mut().filter(|k| Fault::is_of_product(k)) {
            *key = format!("zone.{zone}.{key}");
        }
        self.zone = Some(zone);
        self
    }

    /// As a finding has it.
    pub(super) fn placed(self, place: Option<FilePlace>) -> PlacedFault {
        PlacedFault { place, zone: self.zone, fault: self.fault }
    }
}
