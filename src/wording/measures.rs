//! Lengths to tape, in words.

use super::nouns::{self, counted};
use crate::language::{Language, Said, said};
use crate::model::measure::{Measure, MeasureKind, Spoils};

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
pub const HEADS: [Said; 5] = [
    said("No.", "No."),
    said("Tape", "Medir"),
    said("Drawn", "Plano"),
    said("Taped", "Medido"),
    said("1/2 in wrong spoils", "1/2 pulg. mal daña"),
];
/// Lines of what stands under the title.
pub const HOW_LINES: usize = 2;
/// Under the title of a sheet.
pub const HOW: Said = said(
    "Tape to 1/16 in, the worst first; leave blank what you cannot reach. Levels are over the floor line, drawn dashed; widths are level; places are from the left side, at the sill; openings to where siding ends, over their casing.",
    "Mida a 1/16 de pulg., primero lo que más daña; deje en blanco lo que no alcance. Alturas sobre la línea del piso, a trazos; anchos a nivel; distancias desde la izquierda, en la repisa; vanos hasta el revestimiento, con su marco.",
);
/// At the foot of a sheet.
// SafetyFact::PowerLines.
pub const CAUTION: Said = said(
    "Ladders and scaffolds by the rules on site; keep 10 ft from power lines.",
    "Escaleras y andamios según las reglas de la obra; a 10 pies de las líneas eléctricas.",
);
/// What a sheet is, for whoever cannot see it.
pub const DESCRIPTION: Said = said(
    "Outline of a wall with the lengths to tape, numbered, and a table of them with blanks.",
    "Contorno de una pared con los largos por medir, numerados, y su tabla con espacios en blanco.",
);

/// Title of a wall's sheet.
pub fn sheet_title(lang: Language, elevation: &str, wall: &str) -> String {
    say!(lang, "TAPE {wall} ({elevation})", "MEDIR {wall} ({elevation})")
}

/// Title of a wall's sheets from the second on.
pub fn further_title(lang: Language, wall: &str, number: usize) -> String {
    say!(lang, "TAPE {wall}, SHEET {number}", "MEDIR {wall}, HOJA {number}")
}

/// What is taped.
pub fn what(lang: Language, m: &Measure) -> String {
    let said = match m.kind {
        MeasureKind::FootWidth => said("width at the foot", "ancho al pie"),
        MeasureKind::TopWidth => said("width at the top", "ancho arriba"),
        MeasureKind::LeftLean => said(
            "out of plumb, left side (+ to the right)",
            "desplome, lado izquierdo (+ a la derecha)",
        ),
        MeasureKind::RightLean => said(
            "out of plumb, right side (+ to the right)",
            "desplome, lado derecho (+ a la derecha)",
        ),
        MeasureKind::LeftFoot => {
            said("level of the start, left corner", "altura del arranque, esquina izquierda")
        }
        MeasureKind::RightFoot => {
            said("level of the start, right corner", "altura del arranque, esquina derecha")
        }
        MeasureKind::LeftHeight => {
            said("start to soffit, left corner", "arranque a sofito, esquina izquierda")
        }
        MeasureKind::RightHeight => {
            said("start to soffit, right corner", "arranque a sofito, esquina derecha")
        }
        MeasureKind::PeakPlace => {
            said("peak from the left corner", "punta desde la esquina izquierda")
        }
        MeasureKind::PeakLevel => said("level of the peak", "altura de la punta"),
        MeasureKind::Place => {
            said("from the left side to the jamb", "del lado izquierdo a la jamba")
        }
        MeasureKind::Width => said("width", "ancho"),
        MeasureKind::Height => said("height", "alto"),
        MeasureKind::Sill => said("level of the sill or foot", "altura de la repisa o del pie"),
        MeasureKind::BandBottom => {
            said("level of the band's bottom edge", "altura del canto inferior de la banda")
        }
        MeasureKind::BandTop => {
            said("level of the band's top edge", "altura del canto superior de la banda")
        }
    };
    let said = said.of(lang);
    if m.thing == m.wall { said.to_owned() } else { format!("{}: {said}", m.thing) }
}

/// What an error spoils.
pub fn spoils(lang: Language, s: &Spoils) -> String {
    match s.pieces {
        0 => said("no piece", "ninguna pieza").of(lang).to_owned(),
        n => say!(
            lang,
            "{}, {:.0} ft",
            "{}, {:.0} pies",
            counted(lang, n, nouns::PIECE),
            s.length / 12.0
        ),
    }
}
