//! How lengths change with the weather, in sentences.

use crate::model::fastening::{Movement, MovementRoom, MovingPiece, PieceMovement};
use crate::units::{LengthStyle, MM_PER_INCH};

/// The temperatures, then each kind of piece; nothing for boards.
pub fn sentences(m: &Movement, style: LengthStyle) -> Vec<String> {
    if m.rows.is_empty() {
        return Vec::new();
    }
    let mut out = vec![format!(
        "Siding put up at {}, coldest {}, hottest {}; growth {:.6} of its length for each F, by setting: the manufacturer's own figure takes precedence.",
        degrees(m.installed),
        degrees(m.lowest),
        degrees(m.highest),
        m.expansion
    )];
    out.extend(m.rows.iter().map(|r| row(r, style)));
    out
}

fn row(r: &PieceMovement, style: LengthStyle) -> String {
    let verdict = match r.room {
        None => "room enough".to_owned(),
        Some(room) if r.covered => {
            format!(
                "{} of {} are used",
                whole(style, r.needed, f64::ceil),
                whole(style, room, f64::floor)
            )
        }
        Some(room) => {
            let (needed, room) =
                (whole(style, r.needed, f64::ceil), whole(style, room, f64::floor));
            format!("NOT COVERED, {needed} of {room}")
        }
    };
    format!(
        "{} of {}: {} longer when hottest, {} shorter when coldest; {}: {verdict}.",
        piece(r.piece),
        style.length(r.length),
        fine(style, r.longer),
        fine(style, r.shorter),
        room(r.room_at)
    )
}

/// A kind of piece.
pub fn piece(piece: MovingPiece) -> &'static str {
    match piece {
        MovingPiece::Panel => "panel",
        MovingPiece::OutsidePost => "outside corner post",
        MovingPiece::SplicedOutsidePost => "outside corner post, spliced",
        MovingPiece::InsidePost => "inside corner post",
        MovingPiece::SplicedInsidePost => "inside corner post, spliced",
        MovingPiece::JChannel => "J-channel",
    }
}

/// Where it has room.
pub fn room(at: MovementRoom) -> &'static str {
    match at {
        MovementRoom::EndGaps => "gap at each end, held at its middle",
        MovementRoom::SpliceBelow => "hung from its top, room left in the lap below",
        MovementRoom::FreeBelow => "hung from its top, free below",
        MovementRoom::LapOverNext => "lap of one length over the next",
    }
}

/// A temperature in both scales.
fn degrees(f: f64) -> String {
    format!("{f} F ({:.0} C)", (f - 32.0) / 1.8)
}

/// A small length to the hundredth; in whole millimeters what is needed is rounded up and room down, so that
/// what is not covered never reads as if it were.
fn whole(style: LengthStyle, inches: f64, round: fn(f64) -> f64) -> String {
    match style {
        LengthStyle::Feet => fine(style, inches),
        LengthStyle::Mm => format!("{} mm", round((inches * MM_PER_INCH * 1e6).round() / 1e6)),
    }
}

/// A small length to the hundredth.
pub fn fine(style: LengthStyle, inches: f64) -> String {
    match style {
        LengthStyle::Feet => format!("{inches:.2} in"),
        LengthStyle::Mm => style.short(inches),
    }
}
