//! What the crew minds, in every language: the cover and the wall sheets tell it where siding is cut.

use super::parts::number;
use crate::finding::laying::{LayingFinding, MovedBlock, NotchPlace, ThinNotch};
use crate::language::{Language, Said, said};
use crate::model::fastening::PieceMovement;
use crate::model::ids::PieceMark;
use crate::model::item::SidingPiece;
use crate::units::LengthStyle;
use crate::wording::lists::{first_in, joined_in};
use crate::wording::movement;
use crate::wording::takeoff::items::siding_noun;

/// Most marks named in one finding.
const NAMED: usize = 6;

/// What a finding for the crew says; none of what others settle. `on` is the elevation with a comma, or nothing.
pub(super) fn told(
    lang: Language,
    found: &LayingFinding,
    on: &str,
    style: LengthStyle,
) -> Option<String> {
    use LayingFinding as F;
    Some(match found {
        F::BlockMoved { wall, blocks } => blocks_moved(lang, &format!("{on}{wall}"), blocks, style),
        F::PeakLeft { wall, height } => say!(
            lang,
            "{on}{wall}: the peak is {} over the last course line, too low for a piece, and is left to the trim along the rakes",
            "{on}{wall}: sobre la última línea de hilera queda una punta de {}, muy baja para una pieza; queda para las molduras de las inclinaciones.",
            style.short(*height)
        ),
        F::PanelShort { wall, pieces, stud_spacing, .. } => {
            short(lang, &format!("{on}{wall}"), pieces, &style.short(*stud_spacing))
        }
        F::NotchThin { wall, notches, least, piece } => {
            notches_thin(lang, &format!("{on}{wall}"), notches, *least, *piece, style)
        }
        F::MovementGap { row, installed, highest } => gap(lang, row, [*installed, *highest], style),
        F::SeamOnJamb { wall, courses, within, piece } => {
            seam_on_jamb(lang, &format!("{on}{wall}"), courses, &style.short(*within), *piece)
        }
        F::StripThin { .. }
        | F::WallBare { .. }
        | F::PostPastStone { .. }
        | F::RaggedFoot { .. }
        | F::FillerBoard { .. }
        | F::OpeningsJoined { .. }
        | F::SeamRulesConflict { .. }
        | F::CheckFailed { .. }
        | F::LongPanelGap { .. }
        | F::OneLot { .. }
        | F::CrewTakesMore { .. }
        | F::ZoneEmpty { .. } => return None,
    })
}

fn blocks_moved(lang: Language, wall: &str, blocks: &[MovedBlock], style: LengthStyle) -> String {
    let one = |b: &MovedBlock| {
        let (block, by) = (&b.block, style.short(b.by.abs()));
        if b.by > 0.0 {
            say!(lang, "{block} up {by}", "{block} sube {by}")
        } else {
            say!(lang, "{block} down {by}", "{block} baja {by}")
        }
    };
    let each: Vec<String> = blocks.iter().map(one).collect();
    let each = first_in(lang, &each, NAMED);
    if blocks.len() == 1 {
        say!(
            lang,
            "{wall}: a mounting block is moved so that it cuts one course less: {each}",
            "{wall}: un bloque de montaje se corre para cortar una hilera menos: {each}."
        )
    } else {
        say!(
            lang,
            "{wall}: each of these mounting blocks is moved so that it cuts one course less: {each}",
            "{wall}: estos bloques de montaje se corren, cada uno para cortar una hilera menos: {each}."
        )
    }
}

fn short(lang: Language, wall: &str, pieces: &[PieceMark], studs: &str) -> String {
    let marks: Vec<String> = pieces.iter().map(|p| p.to_string()).collect();
    let each = first_in(lang, &marks, NAMED);
    match marks.len() {
        1 => say!(
            lang,
            "{wall}: a piece is shorter than the {studs} between studs and cannot be nailed to two: {each}",
            "{wall}: una pieza es más corta que los {studs} entre montantes y no se puede clavar en dos: {each}. Vea con el fabricante cómo se clava."
        ),
        n => say!(
            lang,
            "{wall}: {n} pieces are shorter than the {studs} between studs and cannot be nailed to two: {each}",
            "{wall}: {n} piezas son más cortas que los {studs} entre montantes y no se pueden clavar en dos: {each}. Vea con el fabricante cómo se clavan."
        ),
    }
}

fn notches_thin(
    lang: Language,
    wall: &str,
    notches: &[ThinNotch],
    least: f64,
    of: SidingPiece,
    style: LengthStyle,
) -> String {
    let one = |n: &ThinNotch| {
        let board = n.board.as_ref().map_or(String::new(), |b| {
            let [high, long] = [b.high, b.long].map(|l| style.short(l));
            say!(
                lang,
                "; a board {high} high and {long} long at {} closes it",
                "; lo cierra una tabla de {high} de alto y {long} de largo en {}",
                b.opening
            )
        });
        format!("{} ({} {}{board})", n.piece, style.short(n.left), left_at(n.place).of(lang))
    };
    let each: Vec<String> = notches.iter().map(one).collect();
    let each = first_in(lang, &each, NAMED);
    say!(
        lang,
        "{wall}: notches leave less than {} of their {}: {each}",
        "{wall}: hay muescas que dejan menos de {} de sus {}: {each}. Corte y maneje con cuidado.",
        style.short(least),
        siding_noun(of).many.of(lang)
    )
}

/// Where a notch leaves little.
fn left_at(place: NotchPlace) -> Said {
    match place {
        NotchPlace::LeftEnd => said("at the left end", "en el extremo izquierdo"),
        NotchPlace::RightEnd => said("at the right end", "en el extremo derecho"),
        NotchPlace::Under => said("under it", "debajo de la muesca"),
        NotchPlace::Over => said("over it", "encima de la muesca"),
    }
}

fn gap(
    lang: Language,
    row: &PieceMovement,
    [installed, highest]: [f64; 2],
    style: LengthStyle,
) -> String {
    say!(
        lang,
        "{} of {}: {} longer at {} F than at {} F, {} of it to take up; the room is {} ({})",
        "{} de {}: {} más de largo a {} F que a {} F, {} por absorber; la holgura es de {} ({}). Siga al fabricante.",
        movement::piece(row.piece).of(lang),
        style.length(row.length),
        movement::fine(lang, style, row.longer),
        number(highest),
        number(installed),
        movement::fine(lang, style, row.needed),
        movement::fine(lang, style, row.room.unwrap_or(0.0)),
        movement::room(row.room_at).of(lang)
    )
}

fn seam_on_jamb(
    lang: Language,
    wall: &str,
    courses: &[i32],
    within: &str,
    of: SidingPiece,
) -> String {
    let one = courses.len() == 1;
    let word = if one { said("course", "la hilera") } else { said("courses", "las hileras") };
    say!(
        lang,
        "{wall}: within {within} of a jamb line over or under an opening is a seam of {} {}; no place was found for it with as few {}",
        "{wall}: a menos de {within} de una línea de jamba, arriba o abajo de una abertura, hay una unión en {} {}; no se halló otro lugar sin usar más {}.",
        word.of(lang),
        joined_in(lang, courses),
        siding_noun(of).many.of(lang)
    )
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeSet;

    use super::*;
    use crate::finding::Audience;
    use crate::finding::laying::{ClosingBoard, LayingCode};
    use crate::model::fastening::{MovementRoom, MovingPiece};

    fn mark(text: &str) -> PieceMark {
        serde_json::from_value(text.into()).unwrap()
    }

    /// One of each, and more of those that speak of one and of many.
    fn examples() -> Vec<LayingFinding> {
        use LayingFinding as F;
        let block = |id: &str, by: f64| MovedBlock { block: id.into(), by };
        let (wall, piece) = (|| "F1".into(), SidingPiece::Panel);
        let board = ClosingBoard { opening: "F-W2".into(), high: 0.75, long: 36.0 };
        let thin = ThinNotch {
            piece: mark("F1-3-2"),
            left: 0.5,
            place: NotchPlace::Under,
            board: Some(board),
        };
        vec![
            F::BlockMoved { wall: wall(), blocks: vec![block("F-B1", 1.25), block("F-B2", -0.5)] },
            F::BlockMoved { wall: wall(), blocks: vec![block("F-B1", 1.25)] },
            F::PeakLeft { wall: wall(), height: 0.5 },
            F::PanelShort { wall: wall(), pieces: vec![mark("F1-3-2")], stud_spacing: 16.0, piece },
            F::NotchThin { wall: wall(), notches: vec![thin], least: 1.0, piece },
            F::MovementGap {
                row: PieceMovement {
                    piece: MovingPiece::Panel,
                    length: 150.0,
                    longer: 0.4,
                    shorter: 0.3,
                    needed: 0.2,
                    room_at: MovementRoom::EndGaps,
                    room: Some(0.125),
                    covered: false,
                    rise_covered: None,
                },
                installed: 40.0,
                highest: 110.0,
            },
            F::SeamOnJamb { wall: wall(), courses: vec![3, 5], within: 1.0, piece },
        ]
    }

    #[test]
    fn all_that_the_crew_minds_is_said_in_spanish() {
        let examples = examples();
        let codes: BTreeSet<LayingCode> = examples.iter().map(LayingFinding::code).collect();
        let all = LayingCode::ALL.iter().copied().filter(|c| c.audience() == Audience::Crew);
        assert_eq!(codes, all.collect());
        let said = |lang| -> Vec<String> {
            examples.iter().map(|f| told(lang, f, "FRONT, ", LengthStyle::Feet).unwrap()).collect()
        };
        let (en, es) = (said(Language::English), said(Language::Spanish));
        assert_eq!(
            es[0],
            "FRONT, F1: estos bloques de montaje se corren, cada uno para cortar una hilera menos: F-B1 sube 1 1/4\", F-B2 baja 1/2\"."
        );
        assert_eq!(
            es[1],
            "FRONT, F1: un bloque de montaje se corre para cortar una hilera menos: F-B1 sube 1 1/4\"."
        );
        assert_eq!(
            es[4],
            "FRONT, F1: hay muescas que dejan menos de 1\" de sus paneles: F1-3-2 (1/2\" debajo de la muesca; lo cierra una tabla de 3/4\" de alto y 36\" de largo en F-W2). Corte y maneje con cuidado."
        );
        // Each figure of the one is told by the other.
        let figures = |t: &String| -> Vec<String> {
            let mut out: Vec<String> = t
                .split(|c: char| !c.is_ascii_digit())
                .filter(|d| !d.is_empty())
                .map(str::to_owned)
                .collect();
            out.sort();
            out
        };
        for (a, b) in en.iter().zip(&es) {
            assert_eq!(figures(a), figures(b), "{a}\n{b}");
        }
    }
}
