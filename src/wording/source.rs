//! The unit of a drawing, and what it was taken by.

use crate::model::source::{Source, UnitBasis};

/// What a unit was taken by.
pub fn unit_basis(basis: UnitBasis) -> &'static str {
    match basis {
        UnitBasis::Job => "the job",
        UnitBasis::KnownDistance => "the known distance that the job gives",
        UnitBasis::Header => "the drawing's header",
        UnitBasis::WallAndDoorSizes => "the size of walls and doors",
        UnitBasis::Dimensions => "what dimensions state",
        UnitBasis::Custom => {
            "custom, since nothing drawn on wall or opening layers speaks for another"
        }
    }
}

/// The unit's word; `scaled` where a known distance set the scale.
pub fn unit(source: &Source) -> &'static str {
    source.unit.map_or("scaled", |u| u.word())
}
