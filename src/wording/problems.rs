//! The sheet of a drawing's findings.

/// How findings are circled on the sheet of problems.
pub const KEY: &str = "Circles: errors heavy, warnings dashed, remarks dotted. Findings about one thing have one number, that of the list below; its kinds have letters. Rulers: drawing units, as places are told.";
/// What that sheet holds.
pub const DESCRIPTION: &str =
    "The drawing in gray; each finding is circled, numbered and listed below.";
/// A drawing without findings.
pub const NOTHING_TO_REPORT: &str = "Nothing to report.";

/// Further findings of a kind.
pub fn more_of_kind(count: usize) -> String {
    format!("and {count} more of the kind in check.txt")
}

/// Kinds of findings that the sheet of problems leaves to the list.
pub fn more_in_check(count: usize) -> String {
    format!("and {} more in check.txt", crate::units::counted(count, "kind"))
}

/// A place that the picture of findings does not hold.
pub fn outside_picture(x: f64, y: f64) -> String {
    format!(" at {x:.3}, {y:.3}, outside the picture")
}

/// Further places that a finding has.
pub fn more_places(more: usize) -> String {
    format!("; {more} more {} circled", if more == 1 { "place" } else { "places" })
}

/// A finding without one place.
pub const NO_ONE_PLACE: &str = " (no one place)";
