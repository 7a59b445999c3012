//! Lengths to tape, in words.

use crate::language::{Said, said};
use crate::model::measure::{Measure, MeasureKind, Spoils};
use crate::units::counted;

/// Columns of the table, as it goes out and comes back.
pub const COLUMNS: [&str; 8] = [
    "elevation",
    "wall",
    "measure",
    "what",
    "drawn",
    "taped",
    "pieces cut wrong by 1/2 in",
    "their length (ft)",
];
/// Heads of the table on a sheet.
pub const HEADS: [&str; 5] = ["No.", "Tape", "Drawn", "Taped", "1/2 in wrong spoils"];
/// Under the title of a sheet.
pub const HOW: &str = "Tape each length to 1/16 in and write it in the blank; the worst come first. Leave blank what you cannot reach. Levels are over the floor line, drawn dashed; places are from the left side, level at the sill.";
/// At the foot of a sheet.
// SafetyFact::PowerLines.
pub const CAUTION: Said = said(
    "Ladders and scaffolds by the rules on site; keep 10 ft from power lines.",
    "Escaleras y andamios según las reglas de la obra; a 10 pies de las líneas eléctricas.",
);
/// What a sheet is, for whoever cannot see it.
pub const DESCRIPTION: &str =
    "Outline of a wall with the lengths to tape, numbered, and a table of them with blanks.";

/// Title of a wall's sheet.
pub fn sheet_title(elevation: &str, wall: &str) -> String {
    format!("TAPE {wall} ({elevation})")
}

/// Title of a sheet that goes on.
pub fn goes_on(title: &str) -> String {
    format!("{title}, CONTINUED")
}

/// What is taped.
pub fn what(m: &Measure) -> String {
    let said = match m.kind {
        MeasureKind::FootWidth => "width at the foot",
        MeasureKind::TopWidth => "width at the top",
        MeasureKind::LeftLean => "out of plumb, left side (+ to the right)",
        MeasureKind::RightLean => "out of plumb, right side (+ to the right)",
        MeasureKind::LeftFoot => "level of the start, left corner",
        MeasureKind::RightFoot => "level of the start, right corner",
        MeasureKind::LeftHeight => "start to soffit, left corner",
        MeasureKind::RightHeight => "start to soffit, right corner",
        MeasureKind::PeakPlace => "peak from the left corner",
        MeasureKind::PeakLevel => "level of the peak",
        MeasureKind::Place => "from the left side to the jamb",
        MeasureKind::Width => "width",
        MeasureKind::Height => "height",
        MeasureKind::Sill => "level of the sill or foot",
    };
    if m.thing == m.wall { said.to_owned() } else { format!("{}: {said}", m.thing) }
}

/// What an error spoils.
pub fn spoils(s: &Spoils) -> String {
    match s.pieces {
        0 => "no piece".to_owned(),
        n => format!("{}, {:.0} ft", counted(n, "piece"), s.length / 12.0),
    }
}
