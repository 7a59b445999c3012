//! Heads of the workbook's sheets that a crew cuts and sets out by: panels, trim, story pole.

use crate::job::Job;
use crate::job::siding::kind::Siding;
use crate::language::{Language, Said, said};
use crate::model::item::SidingPiece;
use crate::units::LengthStyle;
use crate::wording::siding;

/// Sheet of trim.
pub const TRIM_TAB: Said = said("Trim", "Molduras");
/// Its title.
pub const TRIM: Said = said("Trim with cuts", "Molduras con sus cortes");
/// Under the rows.
pub const TOTAL: Said = said("Total", "Total");
/// Over pieces and length of each kind.
pub const BY_KIND: Said = said("By kind", "Por clase");
/// Where a datum is the one laid by.
pub const IN_FORCE: Said = said("in force", "en uso");
/// Where a shim goes behind.
pub const YES: Said = said("yes", "sí");

/// The title over panels.
pub fn panels_title(lang: Language, kind: Siding) -> String {
    let title = siding::pieces_heading(kind).of(lang);
    say!(lang, "{title} with cuts", "{title} con sus cortes")
}

/// How panels are listed.
pub fn cutting_order(lang: Language, kind: Siding) -> String {
    let its = match kind.piece() {
        SidingPiece::Panel => said("the panel's", "del panel"),
        SidingPiece::Board => said("the board's", "de la tabla"),
    };
    let its = its.of(lang);
    say!(
        lang,
        "In cutting order; lengths to cut are rounded down. Every cut is measured from {its} left end.",
        "En orden de corte; los largos por cortar se redondean hacia abajo. Todo corte se mide desde el extremo izquierdo {its}."
    )
}

/// What lengths are counted in.
fn unit(lang: Language, style: LengthStyle) -> &'static str {
    match style {
        LengthStyle::Feet => said("in", "pulg.").of(lang),
        LengthStyle::Mm => "mm",
    }
}

/// Columns of panels; `held` is what holds cut edges, many of it.
pub fn panel_heads(lang: Language, kind: Siding, style: LengthStyle, held: Said) -> Vec<String> {
    let of = |name: Said| format!("{} ({})", name.of(lang), unit(lang, style));
    let plain = |name: Said| name.of(lang).to_owned();
    let one = super::lists::capital(siding::piece(kind).of(lang));
    let [points_left, points_right] = [
        said("Left long to short point", "Izq., de punta larga a corta"),
        said("Right long to short point", "Der., de punta larga a corta"),
    ];
    vec![
        one,
        plain(siding::pieces_heading(kind)),
        plain(said("Piece", "Pieza")),
        of(said("From", "Desde")),
        of(said("To", "Hasta")),
        of(said("Length", "Largo")),
        plain(CUT_TO),
        plain(said("Left end", "Extremo izq.")),
        plain(said("Left angle", "Ángulo izq.")),
        plain(said("Right end", "Extremo der.")),
        plain(said("Right angle", "Ángulo der.")),
        of(said("Ripped from", "A lo largo desde")),
        of(said("Ripped to", "A lo largo hasta")),
        plain(ELEVATION),
        plain(WALL),
        plain(COURSE),
        plain(said("Notches", "Muescas")),
        of(said("Longest left over", "Sobrante más largo")),
        of(points_left),
        of(points_right),
        plain(said("Left from square", "Izq. desde la escuadra")),
        plain(said("Right from square", "Der. desde la escuadra")),
        plain(said("Left contour", "Contorno izq.")),
        plain(said("Right contour", "Contorno der.")),
        plain(said("Nail slots", "Ranuras para clavo")),
        super::lists::capital(held.of(lang)),
        plain(said("Shim", "Calza")),
        plain(said("Held without hem or lock", "Sujeto sin aleta o sin traba")),
    ]
}

const CUT_TO: Said = said("Cut to", "Cortar a");
const ELEVATION: Said = said("Elevation", "Elevación");
const WALL: Said = said("Wall", "Pared");
const COURSE: Said = said("Course", "Hilera");

/// Under the title of the list of trim.
pub fn trim_note(job: &Job) -> Said {
    if job.siding().receivers.has_pockets() {
        said(
            "Cut lengths hold tabs and laps, rounded down. A post that two elevations show is counted once.",
            "Los largos incluyen pestañas y traslapes, redondeados hacia abajo. Un esquinero que muestran dos elevaciones se cuenta una vez.",
        )
    } else {
        said(
            "Cut lengths hold laps, rounded down. Corner boards that two elevations show are counted once.",
            "Los largos incluyen traslapes, redondeados hacia abajo. Las tablas de esquina que muestran dos elevaciones se cuentan una vez.",
        )
    }
}

/// Columns of trim.
pub fn trim_heads(lang: Language, style: LengthStyle) -> Vec<String> {
    let of = |name: Said| format!("{} ({})", name.of(lang), unit(lang, style));
    let plain = |name: Said| name.of(lang).to_owned();
    vec![
        plain(said("Cut from", "Se corta de")),
        plain(said("Bought", "Compra")),
        of(said("Stock", "Tramo")),
        plain(said("Piece", "Pieza")),
        plain(KIND),
        of(LENGTH),
        plain(CUT_TO),
        plain(said("First end", "Extremo 1")),
        plain(said("Second end", "Extremo 2")),
        plain(ELEVATION),
        plain(WALL),
        plain(said("Opening", "Abertura")),
        plain(said("Also shown on", "También en")),
        of(said("Left over", "Sobrante")),
    ]
}

const KIND: Said = said("Kind", "Clase");
const LENGTH: Said = said("Length", "Largo");

/// Columns of the kinds of trim.
pub fn kind_heads(lang: Language, style: LengthStyle) -> Vec<String> {
    let length = format!("{} ({})", LENGTH.of(lang), unit(lang, style));
    vec![KIND.of(lang).to_owned(), said("Pieces", "Piezas").of(lang).to_owned(), length]
}

/// Columns of what the datum could be.
pub fn datum_heads(lang: Language, style: LengthStyle) -> Vec<String> {
    let (height, unit) = (HEIGHT.of(lang), unit(lang, style));
    let mut out = vec![format!("{height}, {unit}"), height.to_owned()];
    out.push(said("Points", "Puntos").of(lang).to_owned());
    out.extend([String::new(), String::new(), String::new()]);
    out.push(said("What it does", "Qué hace").of(lang).to_owned());
    out.push(said("How its points add up", "Cómo se suman sus puntos").of(lang).to_owned());
    out
}

const HEIGHT: Said = said("Height", "Altura");

/// Columns of the story pole's lines.
pub fn pole_heads(lang: Language, style: LengthStyle) -> Vec<String> {
    let (height, over) = (HEIGHT.of(lang), said("Over butt line", "Sobre borde inferior").of(lang));
    let (plain, unit) = (|name: Said| name.of(lang).to_owned(), unit(lang, style));
    vec![
        format!("{height}, {unit}"),
        height.to_owned(),
        plain(said("What", "Qué es")),
        plain(COURSE),
        format!("{over}, {unit}"),
        over.to_owned(),
        plain(said("Elevations", "Elevaciones")),
        plain(said("Belongs to", "De qué es")),
    ]
}
