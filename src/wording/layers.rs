//! Guesses at layers in words.

use crate::model::guess::GuessReason;
use crate::model::trial::Reached;
use crate::units::counted;

/// Over a fragment of guesses.
pub const GUESSES: &str = "Guesses, each tried by reading the drawing with it, the best first: to be checked and edited. A role named here replaces its agreed layer names.";
/// Where there are none.
pub const NO_GUESS: &str = "No guess leads to a layout better than that. Give walls as [[wall]], or name the siding's layer as siding_layer under [[elevation]].";

/// What the drawing comes to without a job.
pub fn without(plain: &Reached) -> String {
    format!("Without a job: {}.", said(plain))
}

/// What the drawing comes to with a guess.
pub fn reached(number: usize, with: &Reached) -> String {
    format!("Guess {number}: {}.", said(with))
}

/// What a reading comes to: `4 walls in 2 elevations, 812 sq ft less 6 openings, 62 percent of ..`.
pub fn said(r: &Reached) -> String {
    let found = [(r.errors, "error"), (r.warnings, "warning"), (r.remarks, "remark")];
    let found: Vec<String> = found.iter().map(|(n, word)| counted(*n, word)).collect();
    let found = found.join(", ");
    if r.walls == 0 {
        return format!("no walls; {found}");
    }
    let layout = if r.usable { "" } else { ", no layout" };
    format!(
        "{} in {}, {:.0} sq ft less {}, {:.0} percent of what is drawn of the facades; {found}{layout}",
        counted(r.walls, "wall"),
        counted(r.elevations, "elevation"),
        r.area,
        counted(r.openings, "opening"),
        r.percent
    )
}

/// What a guess at a layer's role rests on: `its name holds "fenst"`.
pub fn guess_reason(reason: &GuessReason) -> String {
    match reason {
        GuessReason::NameHolds { word } => format!("its name holds \"{word}\""),
        GuessReason::Agreed => "an agreed name, kept".to_owned(),
        GuessReason::SidingHatches { hatches } => {
            format!("{} with level lines on it", counted(*hatches, "hatch"))
        }
        GuessReason::LevelLines { heights } => format!("level lines at {heights} heights on it"),
        GuessReason::LargestOutline => "it holds the largest closed outline".to_owned(),
        GuessReason::InsideWalls { outlines } => {
            format!("{outlines} of its closed outlines lie inside those of the wall layer")
        }
    }
}
