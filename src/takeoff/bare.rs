//! Wall that gets no siding: measured, never ordered, and no part of net area.

use super::lines::Shares;
use crate::layout::laid::LaidHouse;
use crate::model::basis::Basis;
use crate::model::item::{CountUnit, Item};
use crate::model::quantity::{Group, TakeoffLine};
use crate::model::receiver::BareBy;
use crate::real::Total;

/// One line for the house; none where every wall is sided all over.
pub(super) fn line(layout: &LaidHouse) -> Option<TakeoffLine> {
    let mut shares = Shares::default();
    for (e, w) in layout.walls() {
        for b in &w.bare {
            let lowest = b.outline.iter().flatten().map(|p| p[1]).fold(f64::INFINITY, f64::min);
            shares.add((&e.name, &w.id), w.part_at(lowest), 1, b.area / 100.0);
        }
    }
    let by = |by: BareBy| -> f64 {
        let all = layout.walls().flat_map(|(_, w)| &w.bare);
        all.filter(|b| b.by == by).map(|b| b.area).total()
    };
    let basis = Basis::BareWall {
        near_grade: by(BareBy::NearGrade),
        above_grade: above_grade(layout),
        over_roofs: by(BareBy::OverRoof),
        behind_roofs: by(BareBy::BehindRoof),
        fillers: by(BareBy::Filler),
        stops_short: by(BareBy::StopsShort),
    };
    (shares.net() > 0.0).then(|| TakeoffLine {
        net: shares.net(),
        shares: shares.done(layout),
        ..TakeoffLine::new(Item::BareWall, CountUnit::Square, Group::Measured, basis)
    })
}

/// Of wall too near to grade, what lies over it: to be covered by other than siding.
fn above_grade(layout: &LaidHouse) -> f64 {
    let near = layout.walls().flat_map(|(e, w)| w.bare.iter().map(move |b| (e, b)));
    let near = near.filter(|(_, b)| b.by == BareBy::NearGrade);
    near.map(|(e, b)| b.above_grade(&e.grade)).total()
}
