//! Things whose count the job gives.

use crate::layout::laid::LaidHouse;
use crate::model::basis::Basis;
use crate::model::item::{CountUnit, GivenThings, Item};
use crate::model::quantity::{Group, TakeoffLine};

pub(super) fn lines(layout: &LaidHouse) -> Vec<TakeoffLine> {
    let rules = &layout.job.estimate;
    // A zone's set is part of the house: what the job counts is counted with the house.
    let of_house = layout.zone.is_none();
    [
        (GivenThings::Shutters, CountUnit::Pair, rules.shutters),
        (GivenThings::Vents, CountUnit::Piece, rules.vents),
        (GivenThings::Blocks, CountUnit::Piece, rules.blocks),
    ]
    .into_iter()
    .filter(|(.., count)| *count > 0 && of_house)
    .map(|(things, unit, count)| TakeoffLine {
        net: f64::from(count),
        order: f64::from(count),
        ..TakeoffLine::new(Item::Given { things }, unit, Group::Further, Basis::GivenByJob)
    })
    .collect()
}
