//! How lengths change with the weather, in sentences.

use crate::language::{Language, Said, said};
use crate::model::fastening::{Movement, MovementRoom, MovingPiece, PieceMovement};
use crate::units::{LengthStyle, MM_PER_INCH};

/// The temperatures, then each kind of piece; nothing for boards.
pub fn sentences(lang: Language, m: &Movement, style: LengthStyle) -> Vec<String> {
    if m.rows.is_empty() {
        return Vec::new();
    }
    let mut out = vec![say!(
        lang,
        "Siding put up at {}, coldest {}, hottest {}; growth {:.6} of its length for each F, by setting: the manufacturer's own figure takes precedence.",
        "Siding puesto a {}, lo más frío {}, lo más caliente {}; dilatación {:.6} de su largo por cada F, según el ajuste: primero vale el dato del fabricante.",
        degrees(m.installed),
        degrees(m.lowest),
        degrees(m.highest),
        m.expansion
    )];
    out.extend(m.rows.iter().map(|r| row(lang, r, style)));
    out
}

fn row(lang: Language, r: &PieceMovement, style: LengthStyle) -> String {
    let verdict = match r.room {
        None => said("room enough", "holgura suficiente").of(lang).to_owned(),
        Some(room) if r.covered => {
            say!(
                lang,
                "{} of {} are used",
                "se usan {} de {}",
                whole(lang, style, r.needed, f64::ceil),
                whole(lang, style, room, f64::floor)
            )
        }
        Some(room) => {
            let (needed, room) =
                (whole(lang, style, r.needed, f64::ceil), whole(lang, style, room, f64::floor));
            say!(lang, "NOT COVERED, {needed} of {room}", "NO ALCANZA, {needed} de {room}")
        }
    };
    // The period of a unit that is shortened is the sentence's too.
    let verdict = verdict.trim_end_matches('.');
    say!(
        lang,
        "{} of {}: {} longer when hottest, {} shorter when coldest; {}: {verdict}.",
        "{} de {}: {} más largo con el mayor calor, {} más corto con el mayor frío; {}: {verdict}.",
        piece(r.piece).of(lang),
        style.length(r.length),
        fine(lang, style, r.longer),
        fine(lang, style, r.shorter),
        room(r.room_at).of(lang)
    )
}

/// A kind of piece.
pub fn piece(piece: MovingPiece) -> Said {
    match piece {
        MovingPiece::Panel => said("panel", "panel"),
        MovingPiece::OutsidePost => said("outside corner post", "esquinero exterior"),
        MovingPiece::SplicedOutsidePost => {
            said("outside corner post, spliced", "esquinero exterior, empalmado")
        }
        MovingPiece::InsidePost => said("inside corner post", "esquinero interior"),
        MovingPiece::SplicedInsidePost => {
            said("inside corner post, spliced", "esquinero interior, empalmado")
        }
        MovingPiece::JChannel => said("J-channel", "canal J"),
    }
}

/// Where it has room.
pub fn room(at: MovementRoom) -> Said {
    match at {
        MovementRoom::EndGaps => said(
            "gap at each end, held at its middle",
            "espacio en cada extremo, sujeto a la mitad",
        ),
        MovementRoom::SpliceBelow => said(
            "hung from its top, room left in the lap below",
            "colgado de arriba, con holgura en el traslape de abajo",
        ),
        MovementRoom::FreeBelow => {
            said("hung from its top, free below", "colgado de arriba, libre abajo")
        }
        MovementRoom::LapOverNext => {
            said("lap of one length over the next", "traslape de un tramo sobre el otro")
        }
    }
}

/// A temperature in both scales.
fn degrees(f: f64) -> String {
    format!("{f} F ({:.0} C)", (f - 32.0) / 1.8)
}

/// A small length to the hundredth; in whole millimeters what is needed is rounded up and room down, so that
/// what is not covered never reads as if it were.
fn whole(lang: Language, style: LengthStyle, inches: f64, round: fn(f64) -> f64) -> String {
    match style {
        LengthStyle::Feet => fine(lang, style, inches),
        LengthStyle::Mm => format!("{} mm", round((inches * MM_PER_INCH * 1e6).round() / 1e6)),
    }
}

/// A small length to the hundredth.
pub fn fine(lang: Language, style: LengthStyle, inches: f64) -> String {
    match style {
        LengthStyle::Feet => say!(lang, "{inches:.2} in", "{inches:.2} pulg."),
        LengthStyle::Mm => style.short(inches),
    }
}
