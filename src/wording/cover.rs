//! Sentences of the cover, and of what report and terminal say likewise.

use super::sheet_lengths::area;
use super::source as words;
use crate::language::{Language, Said, said};
use crate::model::source::Source;
use crate::units::LengthStyle;

/// Heading over other cladding.
pub const OTHER_CLADDING: Said = said("Other cladding", "Otro revestimiento");
/// Heading over what is bought.
pub const TO_ORDER: Said = said("To order", "Para pedir");
/// Heading over what was taken for granted.
pub const ASSUMED: Said = said("Assumed in reading", "Supuesto al leer el plano");
/// Heading over what only an architect answers.
pub const OPEN_QUESTIONS: Said =
    said("Open questions for the architect", "Preguntas para el arquitecto");
/// Heading over what the office settles.
pub const FOR_OFFICE: Said =
    said("Before ordering, for the office", "Antes de pedir, para la oficina");
/// Heading over what the crew minds.
pub const FOR_CREW: Said =
    said("Before cutting, for the crew", "Antes de cortar, para la cuadrilla");
/// Where there are no questions.
pub const NO_QUESTIONS: Said = said(
    "None: the drawing answered everything the layout asks.",
    "Ninguna: el plano contestó todo lo que hacía falta.",
);
/// Heading over the cautions.
pub const CAUTIONS: Said = said("Cautions", "Advertencias");
/// What counts mean.
pub fn counts(sold_singly: bool) -> Said {
    if sold_singly {
        said(
            "Counts are whole stock lengths, rolls and boxes; what is in brackets is not ordered.",
            "Se cuentan tramos, rollos y cajas completos; lo que va entre paréntesis no se pide.",
        )
    } else {
        said(
            "Counts are whole stock lengths, boxes and cartons; what is in brackets is not ordered.",
            "Se cuentan tramos, cajas y cartones completos; lo que va entre paréntesis no se pide.",
        )
    }
}

/// How wide walls are.
pub const WIDTHS: Said = said(
    "Widths are as the elevations show them: a wall that stands at an angle to its elevation is longer.",
    "Los anchos son los que muestran las elevaciones: una pared en ángulo con su elevación es más larga.",
);

/// The unit, and whether anything proves it.
pub fn unit(lang: Language, source: &Source) -> String {
    let proved = if source.unit_proved {
        ""
    } else {
        said(" Nothing in the drawing proves it.", " Nada en el plano lo prueba.").of(lang)
    };
    say!(
        lang,
        "Unit {}: by {}.{proved}",
        "Unidad {}: por {}.{proved}",
        words::unit(lang, source),
        words::unit_basis(source.unit_basis).of(lang)
    )
}

/// Other cladding with its net area.
pub fn zone(
    lang: Language,
    name: &str,
    cladding: &str,
    laid_out: bool,
    square_feet: f64,
    style: LengthStyle,
) -> String {
    let how = if laid_out {
        said("Laid out as a set of its own", "Va en un juego de hojas aparte").of(lang)
    } else {
        said("Measured, not laid out here", "Medido, no se detalla aquí").of(lang)
    };
    let area = area(lang, square_feet, style);
    say!(lang, "{name}: {cladding}, {area} net. {how}.", "{name}: {cladding}, {area} netos. {how}.")
}

/// Head of the sheet index.
pub const SHEETS: Said = said("Sheets", "Hojas");
/// Head of the revisions.
pub const REVISIONS: Said = said("Revisions", "Revisiones");
/// What the key plan is.
pub const KEY_PLAN: Said = said(
    "Key plan: walls in the order of work, from the corners that elevations share; not to scale, north not given",
    "Plano guía: paredes en el orden de trabajo, según las esquinas que comparten las elevaciones; sin escala, sin norte",
);
/// What the profile is.
pub const PROFILE: Said = said("Siding, typical section, NTS", "Siding, corte típico, sin escala");

/// Numbers of sheets.
pub fn sheet_numbers(lang: Language, from: usize, to: usize) -> String {
    if from == to { from.to_string() } else { say!(lang, "{from} to {to}", "{from} a {to}") }
}

/// A revision with its date and who drew it.
pub fn revision(revision: &str, date: &str, by: &str) -> String {
    let parts = [revision, date, by].into_iter().filter(|s| !s.is_empty());
    parts.collect::<Vec<_>>().join(", ")
}

/// A wall of the key plan, with its place in the order of work.
pub fn wall_in_plan(number: Option<usize>, prefix: &str) -> String {
    number.map_or(prefix.to_owned(), |n| format!("{n}: {prefix}"))
}

/// An exposure in the profile.
pub fn exposure(lang: Language, length: &str) -> String {
    say!(lang, "{length} exposure", "{length} de exposición")
}

/// What a length has over its face, in the profile.
pub fn over_face(name: &str, length: &str) -> String {
    format!("{length} {name}")
}
