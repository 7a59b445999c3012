//! Labor by the office's own hours for one unit of a line.

use crate::layout::laid::LaidHouse;
use crate::model::basis::Basis;
use crate::model::item::{CountUnit, Item};
use crate::model::labor::LaborPart;
use crate::model::quantity::{Group, TakeoffLine};
use crate::takeoff::lines::{waste, whole};

/// Hours for what the other lines order, or count where nothing of them is ordered.
pub(in crate::takeoff) fn line(layout: &LaidHouse, lines: &[TakeoffLine]) -> Option<TakeoffLine> {
    let hours = &layout.job.estimate.hours;
    let part = |l: &TakeoffLine| {
        let each = *hours.get(l.id.as_str())?;
        let units = if l.order > 0.0 { l.order } else { l.net };
        Some(LaborPart { line: l.id.clone(), units, hours: each })
    };
    let parts: Vec<LaborPart> = lines.iter().filter_map(part).collect();
    let net: f64 = parts.iter().map(|p| p.units * p.hours).sum();
    (net > 0.0).then(|| TakeoffLine {
        net,
        order: whole(net),
        waste: waste(net, whole(net)),
        ..TakeoffLine::new(Item::Labor, CountUnit::Hour, Group::Labor, Basis::Hours { parts })
    })
}
