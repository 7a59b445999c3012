//! The unit of a drawing, and what it was taken by.

use crate::language::{Language, Said, said};
use crate::model::source::{Source, UnitBasis};
use crate::units::Unit;

/// What a unit was taken by.
pub fn unit_basis(basis: UnitBasis) -> Said {
    match basis {
        UnitBasis::Job => said("the job", "el trabajo"),
        UnitBasis::KnownDistance => {
            said("the known distance that the job gives", "la distancia conocida que da el trabajo")
        }
        UnitBasis::Header => said("the drawing's header", "el encabezado del plano"),
        UnitBasis::WallAndDoorSizes => {
            said("the size of walls and doors", "el tamaño de paredes y puertas")
        }
        UnitBasis::Dimensions => said("what dimensions state", "lo que dicen las cotas"),
        UnitBasis::Custom => said(
            "custom, since nothing drawn on wall or opening layers speaks for another",
            "costumbre, pues nada dibujado en las capas de paredes o aberturas indica otra",
        ),
    }
}

/// A unit of drawings.
fn unit_word(lang: Language, unit: Unit) -> &'static str {
    match unit {
        Unit::Inch => said("inch", "pulgada"),
        Unit::Foot => said("foot", "pie"),
        Unit::Mm => said("mm", "mm"),
        Unit::Cm => said("cm", "cm"),
        Unit::M => said("m", "m"),
    }
    .of(lang)
}

/// The unit's word; `scaled` where a known distance set the scale.
pub fn unit(lang: Language, source: &Source) -> &'static str {
    source.unit.map_or(said("scaled", "a escala").of(lang), |u| unit_word(lang, u))
}
