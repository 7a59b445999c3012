//! Sentences of the cover, and of what report and terminal say likewise.

use super::source as words;
use crate::model::source::Source;
use crate::units::LengthStyle;

/// Heading over other cladding.
pub const OTHER_CLADDING: &str = "Other cladding";
/// Heading over what is bought.
pub const TO_ORDER: &str = "To order";
/// Heading over what was taken for granted.
pub const ASSUMED: &str = "Assumed in reading";
/// Heading over what only an architect answers.
pub const OPEN_QUESTIONS: &str = "Open questions for the architect";
/// Heading over what the office settles.
pub const FOR_OFFICE: &str = "Before ordering, for the office";
/// Heading over what the crew minds.
pub const FOR_CREW: &str = "Before cutting, for the crew";
/// Where there are no questions.
pub const NO_QUESTIONS: &str = "None: the drawing answered everything the layout asks.";
/// Heading over the cautions.
pub const CAUTIONS: &str = "Cautions";
/// What counts mean.
pub fn counts(sold_singly: bool) -> &'static str {
    if sold_singly {
        "Counts are whole stock lengths, rolls and boxes; what is in brackets is not ordered."
    } else {
        "Counts are whole stock lengths, boxes and cartons; what is in brackets is not ordered."
    }
}

/// How wide walls are.
pub const WIDTHS: &str = "Widths are as the elevations show them: a wall that stands at an angle to its elevation is longer.";

/// The unit, and whether anything proves it.
pub fn unit(source: &Source) -> String {
    let proved = if source.unit_proved { "" } else { " Nothing in the drawing proves it." };
    format!("Unit {}: by {}.{proved}", words::unit(source), words::unit_basis(source.unit_basis))
}

/// Other cladding with its net area.
pub fn zone(
    name: &str,
    cladding: &str,
    laid_out: bool,
    square_feet: f64,
    style: LengthStyle,
) -> String {
    let how = if laid_out { "Laid out as a set of its own" } else { "Measured, not laid out here" };
    let area = format!("{:.1} {}", style.area(square_feet), style.area_unit());
    format!("{name}: {cladding}, {area} net. {how}.")
}

/// Head of the sheet index.
pub const SHEETS: &str = "Sheets";
/// Head of the revisions.
pub const REVISIONS: &str = "Revisions";
/// What the key plan is.
pub const KEY_PLAN: &str = "Key plan: walls in the order of work, from the corners that elevations share; not to scale, north not given";
/// What the profile is.
pub const PROFILE: &str = "Siding, typical section, NTS";

/// Numbers of sheets.
pub fn sheet_numbers(from: usize, to: usize) -> String {
    if from == to { from.to_string() } else { format!("{from} to {to}") }
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
pub fn exposure(length: &str) -> String {
    format!("{length} exposure")
}

/// What a length has over its face, in the profile.
pub fn over_face(name: &str, length: &str) -> String {
    format!("{length} {name}")
}
