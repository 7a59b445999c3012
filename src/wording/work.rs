//! The order of work in sentences to be read on a ladder.

use super::cuts;
use super::lists::{capital, commas, courses_in, joined_in};
use super::restricted;
use super::trim;
use crate::language::{Language, Said, said};
use crate::model::hold::HeldPieces;
use crate::model::work::{
    Begins, CoursesBegin, CutStart, FlashedPlace, SharedTrim, TrimOfKind, Viewpoint, WallWork,
    WorkRule, WorkStep,
};
use crate::units::LengthStyle;

/// What goes before the order of work.
pub const PRECEDENCE: Said = said(
    "Manufacturers' instructions, local code and licensed practice take precedence.",
    "Primero valen las instrucciones de los fabricantes, el código local y los profesionales con licencia.",
);

/// A rule that holds on every wall.
pub fn rule(lang: Language, rule: &WorkRule, style: LengthStyle) -> String {
    match rule {
        WorkRule::BarrierAndFlashing => said("Barrier and flashing before anything else, every joint lapped so that water runs over it: sill, then jambs, then head; keep to the manufacturers' instructions. Look behind for wiring, gas and water before you nail.", "Antes que nada la barrera y los tapajuntas, cada junta traslapada para que el agua corra por encima: repisa, después jambas, después cabezal; siga las instrucciones de los fabricantes. Revise detrás si hay cables, gas y agua antes de clavar.").of(lang).to_owned(),
        WorkRule::HangPosts { top_gap, under_head } => say!(lang, "Hang corner posts from a nail at the top of their top slots, {} below the soffit; every other nail goes in the middle of its slot, {} clear under its head.", "Cuelgue los esquineros de un clavo en lo alto de sus ranuras de arriba, {} debajo del sofito; todos los demás clavos van en medio de su ranura, con {} libres bajo la cabeza.",
            style.short(*top_gap),
            thin(*under_head, style)
        ),
        WorkRule::SpaceStarters { gap } => {
            say!(lang, "Starters: {} between lengths and to posts.", "Tiras de inicio: {} entre tramos y hasta los esquineros.", style.short(*gap))
        }
        WorkRule::FrameOpenings => said("Frames: sill, jambs, head, then the drip cap. The tabs of the head go down over the jambs, those of the jambs over the sill.", "Marcos: repisa, jambas, cabezal, después el goterón. Las pestañas del cabezal bajan sobre las jambas, las de las jambas sobre la repisa.").of(lang).to_owned(),
        WorkRule::PanelsFromBottom { gap } => say!(lang, "Panels from the bottom up: lock each fully, neither pull it up nor press it down; {} clear in every receiver. No caulk at receivers or laps.", "Paneles de abajo hacia arriba: trabe cada uno por completo, sin jalarlo hacia arriba ni empujarlo hacia abajo; {} libres en cada canal y esquinero. Sin sellador en canales, esquineros ni traslapes.",
            style.short(*gap)
        ),
        WorkRule::LapsFaceAway { foam } => {
            let hand = if *foam {
                said(" Where foam is set off to one side, ask the manufacturer which hand the panels run.", " Si la espuma está corrida a un lado, pregunte al fabricante hacia qué mano van los paneles.").of(lang)
            } else {
                ""
            };
            say!(lang, "Each next panel of a course laps over the last: the exposed edge of every lap faces away from the entry.{hand}", "Cada panel de una hilera traslapa sobre el anterior: el borde visible de cada traslape no da hacia la entrada.{hand}"
            )
        }
        WorkRule::HoldCutEdges { lug_spacing, slot_spacing } => say!(lang, "Cut edges go into undersill (finish) trim and are held by snap-lock lugs every {}; where a ripped top course goes under a face board, nail slots every {} take the place of its hem.", "Los bordes cortados van en moldura de remate y se sujetan con lengüetas cada {}; donde la última hilera cortada a lo largo va debajo de una tabla de frente, ranuras para clavo cada {} hacen las veces de su aleta.",
            style.short(*lug_spacing),
            style.short(*slot_spacing)
        ),
        WorkRule::NailCutEdges { spacing } => say!(lang, "Cut edges go into undersill (finish) trim, drilled and nailed through with trim nails of their color every {0}; where a ripped top course goes under a face board, nail slots every {0} take the place of its hem (common practice; the manufacturer's instructions take precedence).", "Los bordes cortados van en moldura de remate, taladrados y clavados con clavos de moldura de su color cada {0}; donde la última hilera cortada a lo largo va debajo de una tabla de frente, ranuras para clavo cada {0} hacen las veces de su aleta (práctica común; primero valen las instrucciones del fabricante).",
            style.short(*spacing)
        ),
        WorkRule::BoardTrimFirst => said("Corner boards and the boards around openings before the siding; the starter piece under the first board takes the place of the top edge of one below.", "Las tablas de esquina y las de alrededor de las aberturas antes del siding; la pieza de inicio debajo de la primera tabla hace las veces del borde superior de una de abajo.").of(lang).to_owned(),
        WorkRule::BoardsFromBottom { gap } => say!(lang, "Boards from the bottom up, each nailed to every stud it crosses; joints on studs, backed as the manufacturer says; {} clear at trim, caulked or left open as the manufacturer says.", "Tablas de abajo hacia arriba, cada una clavada a cada montante que cruza; juntas sobre montantes, con respaldo según diga el fabricante; {} libres contra las molduras, con sellador o abiertas según diga el fabricante.",
            style.short(*gap)
        ),
    }
}

/// A length finer than a sixteenth.
fn thin(inches: f64, style: LengthStyle) -> String {
    match style {
        LengthStyle::Feet => format!("1/{:.0}\"", 1.0 / inches),
        LengthStyle::Mm => style.short(inches),
    }
}

/// From where a wall is seen.
pub fn viewpoint(lang: Language, place: &Viewpoint) -> String {
    match place {
        Viewpoint::Door { opening } => say!(lang, "the door {opening}", "la puerta {opening}"),
        Viewpoint::LeftEnd => said("the left end", "el extremo izquierdo").of(lang).to_owned(),
        Viewpoint::Middle => said("the middle", "el centro").of(lang).to_owned(),
        Viewpoint::RightEnd => said("the right end", "el extremo derecho").of(lang).to_owned(),
    }
}

/// The steps of a wall, in order.
pub fn steps(lang: Language, wall: &WallWork, style: LengthStyle) -> Vec<String> {
    wall.steps.iter().map(|s| step(lang, s, wall, style)).collect()
}

/// One step of a wall's work.
pub fn step(lang: Language, step: &WorkStep, wall: &WallWork, style: LengthStyle) -> String {
    match step {
        WorkStep::Barrier { flashing } if flashing.is_empty() => said("Barrier.", "Barrera.").of(lang).to_owned(),
        WorkStep::Barrier { flashing } => {
            let places: Vec<String> = flashing.iter().map(|p| flashed(lang, p)).collect();
            say!(lang, "Barrier; flashing {}.", "Barrera; tapajuntas {}.", commas(&places))
        }
        WorkStep::Corners { boards, marks, counted_elsewhere } => {
            let what = if *boards { said("Corner boards", "Tablas de esquina").of(lang) } else { said("Corner posts", "Esquineros").of(lang) };
            say!(lang, "{what}: {}.", "{what}: {}.", corners(lang, marks, counted_elsewhere))
        }
        WorkStep::Start { marks, heights, snapped, cut } => {
            start(lang, marks, (heights, *snapped), cut.as_ref(), style)
        }
        WorkStep::Frames { openings } => {
            let frame = openings.iter().map(|f| format!("{} ({})", f.opening, commas(&f.marks)));
            say!(lang, "Frames: {}.", "Marcos: {}.", frame.collect::<Vec<_>>().join("; "))
        }
        WorkStep::Channels { marks } => say!(lang, "Channels at wall ends, in corners, over roofs and along rakes: {}.", "Canales en extremos de pared, en esquinas, sobre techos y en inclinaciones: {}.",
            joined_in(lang, marks)
        ),
        WorkStep::BeforeSiding { trim } => say!(lang, "Before the siding: {}.", "Antes del siding: {}.", by_kind(lang, trim)),
        WorkStep::RestrictedAccess { place } => match wall.restricted.get(*place) {
            Some(place) => {
                let how = capital(&restricted::sentence(lang, place, style));
                say!(lang, "Restricted access, how to install: {how}.", "Acceso restringido, cómo instalar: {how}.")
            }
            None => said("Restricted access, how to install: see the elevation.", "Acceso restringido, cómo instalar: vea la elevación.").of(lang).to_owned(),
        },
        WorkStep::Siding { boards, from_course, to_course } => {
            let piece = if *boards { said("boards", "tablas").of(lang) } else { said("panels", "paneles").of(lang) };
            if from_course == to_course {
                say!(lang, "Siding: {piece} of course {from_course}.", "Siding: {piece} de la hilera {from_course}.")
            } else {
                say!(lang, "Siding: {piece} of courses {from_course} to {to_course}.", "Siding: {piece} de las hileras {from_course} a {to_course}.")
            }
        }
        WorkStep::LapDirection { begins } => laps(lang, begins, &wall.viewpoint),
        WorkStep::CheckLevel => say!(lang, "Check level, and height against the next wall and the story pole, on top of {} {}.", "Revise el nivel, y la altura contra la pared vecina y la vara de alturas, encima de {} {}.",
            if wall.level_checks.len() == 1 { said("course", "hilera").of(lang) } else { said("courses", "hileras").of(lang) },
            joined_in(lang, &wall.level_checks)
        ),
        WorkStep::TrimUnderSills { trim } => {
            let each: Vec<String> =
                trim.iter().map(|t| say!(lang, "{} under {}", "{} bajo {}", t.mark, t.opening)).collect();
            say!(lang, "Before the course that meets the sill: undersill (finish) trim inside the channel, {}.", "Antes de la hilera que llega a la repisa: moldura de remate dentro del canal, {}.",
                joined_in(lang, &each)
            )
        }
        WorkStep::TrimAtTop { marks } => {
            say!(lang, "Before the top course: undersill (finish) trim {}.", "Antes de la última hilera: moldura de remate {}.", joined_in(lang, marks))
        }
        WorkStep::GablePattern => said("Gable: cut one pattern to the rake and copy it; only the last piece at the peak may take a small nail in its face.", "Hastial: corte una plantilla a la inclinación y cópiela; solo la última pieza de la punta puede llevar un clavo pequeño en su cara.").of(lang).to_owned(),
        WorkStep::HoldPieces { pieces } => held(lang, pieces),
        WorkStep::AfterSiding { trim } => say!(lang, "Last: {}.", "Al final: {}.", by_kind(lang, trim)),
    }
}

/// Pieces without hem or lock, and how they are held.
fn held(lang: Language, pieces: &[HeldPieces]) -> String {
    let each = pieces
        .iter()
        .map(|p| format!("{}: {}", joined_in(lang, &p.marks), cuts::hold(p.hold).of(lang)));
    say!(
        lang,
        "Pieces without their hem or lock. {}.",
        "Piezas sin su aleta o sin su traba. {}.",
        each.collect::<Vec<_>>().join(". ")
    )
}

fn flashed(lang: Language, place: &FlashedPlace) -> String {
    match place {
        FlashedPlace::Openings { openings } => {
            say!(lang, "around {}", "alrededor de {}", joined_in(lang, openings))
        }
        FlashedPlace::Corners => {
            said("around the corners", "alrededor de las esquinas").of(lang).to_owned()
        }
        FlashedPlace::SlopedRoof => said(
            "step flashing where the roof meets the wall",
            "escalonado donde el techo llega a la pared",
        )
        .of(lang)
        .to_owned(),
        FlashedPlace::KickOut => said(
            "a kick-out where the roof ends and the wall goes on",
            "un desviador donde termina el techo y sigue la pared",
        )
        .of(lang)
        .to_owned(),
        FlashedPlace::LevelRoof => said(
            "over the level roof or deck that meets the wall",
            "sobre el techo a nivel o la terraza que llega a la pared",
        )
        .of(lang)
        .to_owned(),
        FlashedPlace::Ledge => {
            said("over the ledge the siding starts on", "sobre el saliente donde arranca el siding")
                .of(lang)
                .to_owned()
        }
    }
}

fn corners<T: std::fmt::Display>(lang: Language, marks: &[T], elsewhere: &[SharedTrim]) -> String {
    let list = elsewhere.iter().map(|t| format!("{} ({})", t.mark, t.elevation));
    let next = say!(
        lang,
        "marked on the next elevations: {}",
        "con marca en las elevaciones vecinas: {}",
        list.collect::<Vec<_>>().join(", ")
    );
    match (marks.is_empty(), elsewhere.is_empty()) {
        (false, true) => joined_in(lang, marks),
        (false, false) => format!("{}; {next}", joined_in(lang, marks)),
        (true, false) => next,
        (true, true) => {
            said("those of the next elevations", "vea las elevaciones vecinas").of(lang).to_owned()
        }
    }
}

fn start<T: std::fmt::Display>(
    lang: Language,
    marks: &[T],
    (heights, snapped): (&[f64], Option<f64>),
    cut: Option<&CutStart>,
    style: LengthStyle,
) -> String {
    let cut = cut.map(|c| {
        let held = if c.held_in.is_empty() { String::new() } else { format!(" {}", joined_in(lang, &c.held_in)) };
        say!(lang, "where the bottom is on no course line, the first course is cut and its edge held in undersill (finish) trim{held}, not by a starter", "donde el pie no está en una línea de hilera, la primera hilera se corta y su borde se sujeta en moldura de remate{held}, no en tira de inicio"
        )
    });
    if marks.is_empty() {
        return say!(lang, "Start: {}.", "Arranque: {}.", cut.unwrap_or_default());
    }
    let at = |over: f64| {
        joined_in(lang, &heights.iter().map(|h| style.length(h + over)).collect::<Vec<String>>())
    };
    let cut = cut.map_or(String::new(), |c| format!("; {c}"));
    let snap = snapped.map_or(String::new(), |s| snap_line(lang, s, &at(s), style));
    say!(
        lang,
        "Starter {}: level, butt lines at {}{snap}{cut}.",
        "Tira de inicio {}: a nivel, bordes inferiores a {}{snap}{cut}.",
        joined_in(lang, marks),
        at(0.0)
    )
}

/// Where the line is snapped that the starter's top edge is set to.
fn snap_line(lang: Language, over: f64, at: &str, style: LengthStyle) -> String {
    let by = style.short(over.abs());
    match over.total_cmp(&0.0) {
        _ if over == 0.0 => said(
            "; snap them for the starter's top edge",
            "; márquelos con tiza para el borde superior de la tira",
        )
        .of(lang)
        .to_owned(),
        std::cmp::Ordering::Less => {
            say!(
                lang,
                "; snap the line for its top edge {by} below them, at {at}",
                "; marque con tiza la línea de su borde superior {by} debajo de ellos, a {at}"
            )
        }
        _ => say!(
            lang,
            "; snap the line for its top edge {by} above them, at {at}",
            "; marque con tiza la línea de su borde superior {by} encima de ellos, a {at}"
        ),
    }
}

fn by_kind(lang: Language, list: &[TrimOfKind]) -> String {
    let each = list
        .iter()
        .map(|t| format!("{} {}", trim::kind(t.kind).of(lang), joined_in(lang, &t.marks)));
    each.collect::<Vec<_>>().join("; ")
}

fn laps(lang: Language, begins: &[CoursesBegin], from: &Viewpoint) -> String {
    let each = begins.iter().map(|b| {
        let end = match b.begins {
            Begins::Left => {
                said("at the left, going right", "a la izquierda, hacia la derecha").of(lang)
            }
            Begins::Right => {
                said("at the right, going left", "a la derecha, hacia la izquierda").of(lang)
            }
            Begins::Both => said(
                "at both ends, the piece in front of the viewer last and over both",
                "por los dos extremos, la pieza frente a quien mira al último y encima de las dos",
            )
            .of(lang),
        };
        format!("{} {end}", courses_in(lang, &b.courses))
    });
    let each: Vec<String> = each.collect();
    say!(
        lang,
        "Laps face away from {}: begin seamed runs of {}.",
        "Los traslapes no dan hacia {}: empiece los tramos con uniones de {}.",
        viewpoint(lang, from),
        each.join("; ")
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    fn said(step: &WorkStep) -> String {
        super::step(Language::English, step, &WallWork::default(), LengthStyle::Feet)
    }

    #[test]
    fn posts_of_two_elevations_are_told_apart() {
        let other = SharedTrim { mark: "OP3".into(), elevation: "REAR".into() };
        let corners = |marks: &[&str], counted_elsewhere: Vec<SharedTrim>| {
            let marks = marks.iter().map(|m| (*m).into()).collect();
            said(&WorkStep::Corners { boards: false, marks, counted_elsewhere })
        };
        assert_eq!(corners(&["OP1", "OP2"], vec![]), "Corner posts: OP1 and OP2.");
        let both = corners(&["OP1"], vec![other]);
        assert_eq!(both, "Corner posts: OP1; marked on the next elevations: OP3 (REAR).");
        assert_eq!(corners(&[], vec![]), "Corner posts: those of the next elevations.");
    }

    #[test]
    fn a_start_says_what_holds_it() {
        let cut = Some(CutStart { held_in: vec!["FT1".into()] });
        let start = |marks: Vec<crate::model::ids::TrimMark>, heights, snapped, cut| {
            said(&WorkStep::Start { marks, heights, snapped, cut })
        };
        for (snapped, more) in [
            (None, ""),
            (Some(2.0), "; snap the line for its top edge 2\" above them, at 0'-2 1/2\""),
            (Some(-0.25), "; snap the line for its top edge 1/4\" below them, at 0'-0 1/4\""),
            (Some(0.0), "; snap them for the starter's top edge"),
        ] {
            assert_eq!(
                start(vec!["ST1".into()], vec![0.5], snapped, None),
                format!("Starter ST1: level, butt lines at 0'-0 1/2\"{more}.")
            );
        }
        assert!(
            start(vec![], vec![], None, cut)
                .starts_with("Start: where the bottom is on no course line")
        );
    }

    #[test]
    fn a_place_that_is_missing_is_no_panic() {
        assert!(said(&WorkStep::RestrictedAccess { place: 3 }).contains("see the elevation"));
        let posts = WorkRule::HangPosts { top_gap: 0.25, under_head: 1.0 / 32.0 };
        assert!(rule(Language::English, &posts, LengthStyle::Feet).contains("1/32\" clear"));
        assert!(rule(Language::English, &posts, LengthStyle::Mm).contains("0.8 mm clear"));
    }
}
