//! Of earlier layouts, of what hangs and of what lies on the site.

use super::finding_words::FindingWords;
use crate::finding::files::{KeepFault, StockFault, TicksFault};
use crate::units::inches_fraction;

const ANEW: &str =
    "Lay the drawing out without --keep, and see with `lapwright compare` what differs.";

/// Why nothing can be held.
pub(super) fn not_kept(fault: &KeepFault) -> FindingWords {
    match fault {
        KeepFault::Boards => FindingWords::new(
            "boards are jointed on studs, and joints of an earlier layout are not held".to_owned(),
            ANEW,
        ),
        KeepFault::StockLengths => FindingWords::new(
            "an earlier layout is held where panels are of one stock length alone".to_owned(),
            ANEW,
        ),
        KeepFault::Halves => FindingWords::new(
            "an earlier layout is not held where both halves of ripped panels serve".to_owned(),
            "Leave `seams.reuse_halves` out, or lay the drawing out without --keep.",
        ),
        KeepFault::OtherHand => FindingWords::new(
            "the house is drawn the other hand: no piece of the earlier layout fits".to_owned(),
            ANEW,
        ),
        KeepFault::Settings { keys } => FindingWords::new(
            format!("the earlier layout was laid by other settings: {}", keys.join(", ")),
            "Give the job that it was laid by, or lay the drawing out without --keep.",
        ),
        _ => built(fault),
    }
}

/// Of what hangs.
fn built(fault: &KeepFault) -> FindingWords {
    match fault {
        KeepFault::NoWall { wall, walls } => {
            let names: Vec<&str> = walls.iter().map(|w| w.as_str()).collect();
            FindingWords::new(
                format!("`[[built]]` names wall {wall}, which the earlier layout has not"),
                format!("It has {}.", names.join(", ")),
            )
        }
        KeepFault::WallOfSeveral { wall } => FindingWords::new(
            format!(
                "`[[built]]` names courses of wall {wall}, which has siding of a zone too, with courses of its own"
            ),
            "Give the marks of the pieces that hang as `pieces`, or leave `courses` out where all of the wall hangs.",
        ),
        KeepFault::NoCourses { wall, courses: [first, last] } => FindingWords::new(
            format!("`[[built]]` names courses that wall {wall} has not"),
            format!("Give the first and the last course that hang, as [{first}, {last}]."),
        ),
        KeepFault::NoPiece { piece } => FindingWords::new(
            format!("{piece} is said to hang, and the earlier layout has no piece of that mark"),
            "Give marks as they stand on the sheets, and the layout that the crew works by as --keep.",
        ),
        KeepFault::ManyHouses => FindingWords::new(
            "an earlier layout is held of one house at a time".to_owned(),
            "Give one drawing with its own --keep.",
        ),
        KeepFault::StockAlone => FindingWords::new(
            "stock at hand is given, and nothing is said to hang".to_owned(),
            "Say under `[[built]]` in the job what hangs, and give the earlier layout with --keep.",
        ),
        _ => FindingWords::new(
            "the job says what hangs, and no earlier layout is given".to_owned(),
            "Give the folder of the layout that the crew works by with `lapwright layout --keep`.",
        ),
    }
}

/// Why a list of what lies on the site cannot be read.
pub(super) fn stock(file: &str, line: usize, column: usize, fault: &StockFault) -> FindingWords {
    let what = match fault {
        StockFault::NotUtf8 => "is not text in UTF-8".to_owned(),
        StockFault::Empty => "holds nothing".to_owned(),
        StockFault::ColumnMissing { column } => format!("has no column `{column}`"),
        StockFault::QuoteOpen => "a quotation mark stays open".to_owned(),
        StockFault::Length { text } => format!("`{text}` is no length"),
        StockFault::LongerThanPanel { length, panel } => format!(
            "{} is longer than a panel of {}",
            inches_fraction(*length),
            inches_fraction(*panel)
        ),
        StockFault::Count { text } => format!("`{text}` is no count"),
        StockFault::TooMany { most } => format!("there are more than {most} in all"),
        StockFault::EndOfWhole { text } => {
            format!("a whole panel has both factory ends, not `{text}`")
        }
        StockFault::End { text } => format!("`{text}` is no factory end of such a length"),
    };
    FindingWords::new(
        format!("{file}, line {line}, column {column}: {what}"),
        "The columns are length, count and, if you like, factory end: left, right, none, or both for whole panels.",
    )
}

/// Why saved ticks cannot be used.
pub(super) fn ticks(file: &str, fault: &TicksFault) -> FindingWords {
    let what = match fault {
        TicksFault::NoTicks { reader_says } => format!("is no file of ticks: {reader_says}"),
        TicksFault::OtherFormat { found } => format!("is of the format `{found}`"),
        TicksFault::OtherDrawing => "has ticks of another drawing".to_owned(),
    };
    FindingWords::new(
        format!("{file} {what}"),
        "Give the file that the page of the earlier layout saved, and that layout with --keep.",
    )
}
