//! Other cladding: its area, and nothing to order.

use std::collections::BTreeMap;

use crate::layout::Layout;
use crate::model::quantity::{Group, TakeoffLine};

/// A line a zone of the job that any elevation shows.
pub(super) fn lines(layout: &Layout) -> Vec<TakeoffLine> {
    let mut all: BTreeMap<(&str, &str), (f64, Vec<String>)> = BTreeMap::new();
    for z in layout.elevations.iter().flat_map(|e| &e.zones).filter(|z| !z.laid_out) {
        let entry = all.entry((&z.zone, &z.cladding)).or_default();
        entry.0 += z.net_area;
        entry.1.push(z.id.to_string());
    }
    all.into_iter()
        .map(|((zone, cladding), (net, counts))| TakeoffLine {
            item: format!("{cladding}, not laid out"),
            id: format!("zone-{}", zone.to_lowercase().replace(' ', "-")),
            unit: "100 sq ft".into(),
            group: Group::Measured,
            net: net / 100.0,
            how: format!("not ordered: the net area of {zone}, measured; its pieces, trim and waste are not counted here"),
            counts,
            ..Default::default()
        })
        .collect()
}
