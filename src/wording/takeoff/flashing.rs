//! How flashing is counted.

use super::items::{flashed, item};
use crate::language::Language;
use crate::model::basis::Basis;
use crate::model::flashed_run::{FlashedLength, FlashedRun};
use crate::model::item::Item;
use crate::model::quantity::TakeoffLine;
use crate::sources::trim::TrimFact;
use crate::units::{LengthStyle, counted};
use crate::wording::lists::commas;
use crate::wording::sources::in_brackets;

/// Strips round openings and behind corners.
pub(super) fn strips(basis: &Basis, style: LengthStyle, boards: bool) -> String {
    match basis {
        Basis::OpeningStrips { length, roll, past_jamb, over_head } => format!(
            "{} overall: sills {} past each jamb, jambs {} over the head, heads as sills (head: common practice); rolls of {}, strips uncut where a roll holds them",
            style.length(*length),
            style.short(*past_jamb),
            style.short(*over_head),
            style.length(*roll)
        ),
        Basis::CornerStrips { length, roll, each_side, strips, least } => format!(
            "{} overall in {}: behind every corner {}, {} to each side; rolls of {}; {}",
            style.length(*length),
            counted(*strips, "strip"),
            if boards { "board" } else { "post" },
            style.short(*each_side),
            style.length(*roll),
            fewest(*least)
        ),
        _ => String::new(),
    }
}

/// That no fewer rolls will do.
fn fewest(least: usize) -> String {
    format!(
        "strips whole where a roll holds them: no plan takes fewer than {}",
        counted(least, "roll")
    )
}

/// Step flashing along slopes.
pub(super) fn slopes(
    (pieces, exposure): (usize, f64),
    (turned, turn): (usize, f64),
    style: LengthStyle,
) -> String {
    let round = match turned {
        0 => String::new(),
        1 => format!(", and one bent {} round the corner at its end", style.short(turn)),
        _ => format!(
            ", and one bent {} round each of {turned} corners at their ends",
            style.short(turn)
        ),
    };
    format!(
        "where a lower roof slopes along a wall, at least 4 x 4 in{}: {} at {} to a course of roofing, one more a slope{round}",
        in_brackets(&[TrimFact::StepFlashing.record()]),
        counted(pieces, "piece"),
        style.short(exposure)
    )
}

/// Flashing along level runs and under doors.
pub(super) fn level(line: &TakeoffLine, style: LengthStyle) -> String {
    match &line.basis {
        Basis::LevelRun => {
            let over = match &line.item {
                Item::FlashedLength { over } => along(*over),
                other => return item(Language::English, other, style),
            };
            format!("{over}, as drawn, laps left out; bought with the flashing along level runs")
        }
        Basis::RunStrips { runs, strips, lap, length, roll, least } => {
            let each =
                |r: &FlashedLength| format!("{} {}", flashed(r.over).en, style.length(r.length));
            format!(
                "{} overall in {}, laps of {} and as much turned round each corner in: {}; rolls of {}; {}{}",
                style.length(*length),
                counted(*strips, "strip"),
                style.short(*lap),
                commas(&runs.iter().map(each).collect::<Vec<_>>()),
                style.length(*roll),
                fewest(*least),
                in_brackets(&[TrimFact::FlashingPlaces.record()])
            )
        }
        Basis::DoorPans { turned_up, length } => format!(
            "one under each door that is walked through, as wide as the door and turned up {} at both jambs, {} overall (common practice, no source)",
            style.short(*turned_up),
            style.length(*length)
        ),
        _ => String::new(),
    }
}

fn along(over: FlashedRun) -> &'static str {
    match over {
        FlashedRun::Roof => "where a lower roof ends level against a wall",
        FlashedRun::Deck => "where a deck meets a wall: a level side that a door stands on",
        FlashedRun::Ledge => "over ledges of stone that siding starts on",
        FlashedRun::Cladding => "where one cladding stands over another",
        FlashedRun::Band => "over bands that siding stands on, behind it and over the cap",
    }
}
