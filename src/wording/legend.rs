//! The key of an elevation sheet, and what is written beside things on it.

use crate::job::Job;
use crate::language::{Language, Said, said};
use crate::layout::wall::LaidZone;
use crate::model::corner::{CornerKind, Hand};
use crate::units::LengthStyle;
use crate::wording::sheet_lengths::area;
use crate::wording::{corners, siding};

/// Where siding goes.
pub const LIMIT_OF_SIDING: Said = said("limit of siding", "límite del siding");
/// Butt edge of a panel.
pub const PANEL_EDGE: Said = said("panel edge", "borde de panel");
/// A seam.
pub const SEAM: Said = said("seam", "unión");
/// Which panel laps.
pub const LAP: Said = said(
    "lap: exposed edge faces away from the entry",
    "traslape: el borde visible no da hacia la entrada",
);
/// Corner posts.
pub const CORNER_POSTS: Said =
    said("corner post OP outside, IP inside", "esquinero OP exterior, IP interior");
/// Starter strip.
pub const STARTER: Said = said("starter ST", "tira de inicio ST");
/// Channels.
pub const CHANNELS: Said = said(
    "J-channel JH head, JJ jamb, JS sill, JW wall, JR rake, JL lower roof",
    "canal J: JH cabezal, JJ jamba, JS repisa, JW pared, JR inclinación, JL techo bajo",
);
/// Channels round curves.
pub const BENT_CHANNEL: Said = said(
    "JB flexible J-channel, bent along the curve",
    "JB canal J flexible, doblado por la curva",
);
/// Drip cap.
pub const DRIP_CAP: Said = said("drip cap DC", "goterón DC");
/// Undersill trim.
pub const UNDERSILL: Said = said("undersill (finish) trim FT", "moldura de remate FT");
/// Casings, bands, filler boards.
pub const TRIM_BOARDS: Said = said("trim board", "tabla de moldura");
/// The level line of the house.
pub const FLOOR_REFERENCE: Said = said("floor reference line", "línea de referencia del piso");
/// Finished grade.
pub const GRADE: Said = said("grade", "terreno");
/// Lines of the source.
pub const SOURCE: Said = said("source drawing", "plano original");
/// The frame of a mark.
pub const TRIM_MARK: Said = said("trim mark", "marca de moldura");
/// Where the next sheet goes on.
pub const MATCH_LINE: Said = said("match line", "línea de empalme");
/// Butt edge of a board.
pub const BOARD_EDGE: Said = said("board edge", "borde de tabla");
/// Where boards meet.
pub const JOINT: Said = said("joint, on a stud", "junta, sobre montante");
/// Corner boards.
pub const CORNER_BOARDS: Said =
    said("corner boards OP outside, IP inside", "tablas de esquina OP exterior, IP interior");
/// Starter piece of boards.
pub const STARTER_PIECE: Said = said("starter piece ST", "pieza de inicio ST");
/// The figure of a rip.
pub const RIP: Said =
    said("rip to: height of the piece", "alto: altura a la que se corta la pieza a lo largo");
/// How high a ripped piece is.
pub fn rip(lang: Language, height: &str) -> String {
    say!(lang, "rip {height}", "alto {height}")
}

/// The marks of broken seam rules.
pub const BREAKS: Said = said(
    "X1 and on, at diamonds: a seam rule fails, see the report",
    "X1 y siguientes, en los rombos: falla una regla de uniones, vea el reporte",
);
/// The marks of places that break a rule of the check.
pub const FAILED: Said = said(
    "FAIL 1 and on, at heavy circles: the check failed here, see the cover",
    "FALLA 1 y siguientes, en los círculos gruesos: aquí falló la revisión, vea la portada",
);
/// The mark of a level check.
pub const LEVEL_CHECK: Said = said(
    "wedge at a butt line: check level there, and against the next wall",
    "cuña en un borde inferior: revise ahí el nivel, y contra la pared vecina",
);
/// Flashing along sloped roofs.
pub const STEP_FLASHING: Said = said(
    "step flashing: 4 x 4 in or more, one to each course of roofing (R905.2.8.3)",
    "tapajuntas escalonado: 4 x 4 pulg. o más, uno por cada hilera de tejas del techo (R905.2.8.3)",
);
/// Flashing where a roof ends above wall that goes on.
pub const KICK_OUT: Said =
    said("kick-out: large, into the gutter", "desviador: grande, hacia la canaleta");
/// The same on the drawing.
pub const STEP_AT: Said = said("step flashing", "tapajuntas escalonado");
/// The same over a level roof.
pub const FLASHING_AT: Said = said("flashing", "tapajuntas");
/// Where a roof ends.
pub const KICK_OUT_AT: Said = said("kick-out", "desviador");
/// A kind of opening.
pub const WINDOW: Said = said("window", "ventana");
/// A kind of opening.
pub const DOOR: Said = said("door", "puerta");
/// A kind of opening.
pub const OVERHEAD_DOOR: Said = said("overhead door", "puerta de garaje");
/// A kind of opening.
pub const VENT: Said = said("vent", "respiradero");
/// At the corner of a wall that no elevation shows.
pub const RETURN_WIDTH: Said = said("return: confirm width", "retorno: confirmar ancho");

/// Room over roofs and decks.
pub fn clear_of_roof(lang: Language, job: &Job) -> String {
    say!(
        lang,
        "siding {} clear of roofs and decks ({}); flashing behind it, 26 gauge or more (R903.2.1)",
        "siding a {} de techos y terrazas ({}); tapajuntas detrás, calibre 26 o más grueso (R903.2.1)",
        job.sheet.lengths.short(job.clearances().roof),
        siding::roof_source(lang, job.siding())
    )
}

/// Room over grade.
pub fn above_grade(lang: Language, clear: f64, style: LengthStyle) -> String {
    say!(lang, "{} min. above grade", "{} mín. sobre el terreno", style.short(clear))
}

/// Which boards the thin lines are, each with its letters.
pub fn boards(lang: Language, list: &[String]) -> String {
    say!(
        lang,
        "thin solid lines are boards: {}",
        "las líneas finas continuas son tablas: {}",
        list.join(", ")
    )
}

/// At a corner that is not square.
pub fn post_angle(lang: Language, degrees: f64) -> String {
    say!(lang, "post for {degrees:.0} degrees", "esquinero para {degrees:.0} grados")
}

/// How far from drawn corners siding is reckoned, by sorts of corners, and the gap on top.
pub fn set_backs(lang: Language, backs: &[(CornerKind, Option<f64>, String)], gap: &str) -> String {
    let each = |(kind, angle, back): &(CornerKind, Option<f64>, String)| {
        let at =
            angle.map(|a| say!(lang, " at {a:.0} degrees", " a {a:.0} grados")).unwrap_or_default();
        format!("{back} {}{at}", corners::kind(*kind).of(lang))
    };
    let each: Vec<String> = backs.iter().map(each).collect();
    say!(
        lang,
        "set-back from drawn corners: {}; end gap {gap} more",
        "retiro desde las esquinas dibujadas: {}; espacio de extremo, {gap} más",
        each.join(", ")
    )
}

/// Corners that are out of plumb as taped, each with its wall where several are shown, and how far it leans to the
/// right from foot to top.
pub fn leaning(lang: Language, all: &[(Option<String>, Hand, f64)], style: LengthStyle) -> String {
    let each = |(wall, hand, lean): &(Option<String>, Hand, f64)| {
        let wall = wall.as_ref().map(|w| format!("{w} ")).unwrap_or_default();
        let corner = match hand {
            Hand::Left => said("left corner", "esquina izquierda"),
            Hand::Right => said("right corner", "esquina derecha"),
        };
        let way = if *lean > 0.0 {
            said("to the right", "a la derecha")
        } else {
            said("to the left", "a la izquierda")
        };
        format!("{wall}{} {} {}", corner.of(lang), style.short(lean.abs()), way.of(lang))
    };
    let each: Vec<String> = all.iter().map(each).collect();
    say!(
        lang,
        "posts stand along corners that lean as taped, foot to top: {}",
        "los esquineros siguen las esquinas, que según lo medido se inclinan, del pie a lo alto: {}",
        each.join(", ")
    )
}

/// Where the next part of an elevation is.
pub fn match_line(lang: Language, part: usize) -> String {
    say!(lang, "match line: see part {part}", "línea de empalme: vea la parte {part}")
}

/// The length of a scale bar.
pub fn scale_bar(lang: Language, length: &str, unit_proved: bool) -> String {
    if unit_proved {
        length.to_owned()
    } else {
        say!(
            lang,
            "{length}  DO NOT SCALE: the unit is not proved",
            "{length}  NO MEDIR EN EL PLANO: la unidad no está probada"
        )
    }
}

/// Other cladding, named and measured.
pub fn zone(lang: Language, z: &LaidZone, style: LengthStyle) -> String {
    let net = area(lang, z.net_area, style);
    if z.laid_out {
        say!(
            lang,
            "{}: see the set of {}, {net} net",
            "{}: vea el juego de {}, {net} netos",
            siding::cladding(lang, z),
            z.zone
        )
    } else {
        say!(
            lang,
            "{}: not laid out, {net} net",
            "{}: sin detallar, {net} netos",
            siding::cladding(lang, z)
        )
    }
}

/// The same in the overlay.
pub fn overlay_zone(z: &LaidZone, style: LengthStyle) -> String {
    let how = if z.laid_out { "A SET OF ITS OWN" } else { "NOT LAID OUT" };
    format!(
        "{}: {}, {how}, {} NET",
        z.id,
        siding::cladding(Language::English, z),
        area(Language::English, z.net_area, style)
    )
}

/// What the overlay says under an elevation.
pub fn overlay_notice(elevation: &str) -> String {
    format!("{elevation}: SIDING LAYOUT. MANUFACTURER'S INSTRUCTIONS AND LOCAL CODE GOVERN.")
}
