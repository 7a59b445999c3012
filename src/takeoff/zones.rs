//! Other cladding: its area, and nothing to order.

use std::collections::BTreeMap;

use crate::layout::laid::LaidHouse;
use crate::model::basis::Basis;
use crate::model::ids::CountedName;
use crate::model::item::{CountUnit, Item};
use crate::model::quantity::{Group, TakeoffLine};

/// A line a zone of the job that any elevation shows.
pub(super) fn lines(layout: &LaidHouse) -> Vec<TakeoffLine> {
    let mut all: BTreeMap<(&str, &str), (f64, Vec<CountedName>)> = BTreeMap::new();
    for z in layout.elevations.iter().flat_map(|e| &e.zones).filter(|z| !z.laid_out) {
        let entry = all.entry((&z.zone, &z.cladding)).or_default();
        entry.0 += z.net_area;
        entry.1.push(z.id.as_str().into());
    }
    let line = |((zone, cladding), (net, counts)): ((&str, &str), (f64, Vec<CountedName>))| {
        let item = Item::OtherCladding { zone: zone.to_owned(), cladding: cladding.to_owned() };
        TakeoffLine {
            net: net / 100.0,
            counts,
            ..TakeoffLine::new(item, CountUnit::Square, Group::Measured, Basis::ZoneArea)
        }
    };
    all.into_iter().map(line).collect()
}
