//! Titles, descriptions and headings of sheets.

use super::nouns::{self, Noun, counted};
use super::patterns::PATTERN_NAMES;
use super::sheet_lengths::{length, unit_note};
use crate::language::{Language, Said, said};
use crate::units::LengthStyle;

/// Scale of a sheet that has none.
pub const NTS: Said = said("NTS", "sin escala");
/// Scale of a sheet whose unit nothing proves.
pub const DO_NOT_SCALE: Said = said("  DO NOT SCALE", "  NO MEDIR EN EL PLANO");

/// Wall that gets no siding.
pub const NO_SIDING: Said = said("no siding", "sin siding");

/// A height from the lowest to the highest line of a dimension string.
pub fn overall(lang: Language, length: &str) -> String {
    say!(lang, "{length} overall", "{length} en total")
}

/// A title, or what it is from the second sheet on.
pub fn title(lang: Language, title: &str, first: bool) -> String {
    if first {
        title.to_owned()
    } else {
        say!(lang, "{title}, continued", "{title}, continuación")
    }
}

/// A title as the index of sheets names it: parts and pages of one thing are one.
pub fn in_index(lang: Language, title: &str) -> &str {
    let first = title.strip_suffix(CONTINUED.of(lang)).unwrap_or(title);
    if PATTERN_NAMES.iter().any(|name| first.starts_with(name.of(lang))) {
        return PATTERNS.of(lang);
    }
    let cut = [PART, PAGE].into_iter().filter_map(|s| first.find(s.of(lang))).min();
    let whole = cut.map_or(first, |at| &first[..at]);
    let lists = [STORY_POLE, CUT_LIST, CUTTING, ELEVATIONS, super::details::DETAILS];
    let lists = lists.map(|list| list.of(lang));
    lists.into_iter().find(|list| whole.starts_with(list)).unwrap_or(whole)
}

/// What titles of further sheets, of parts and of pages have behind their name.
const CONTINUED: Said = said(", continued", ", continuación");
const PART: Said = said(", part ", ", parte ");
const PAGE: Said = said(", page ", ", página ");

/// Full-size patterns in the index of sheets.
const PATTERNS: Said = said("Patterns, full size", "Plantillas, tamaño real");

/// The cover.
pub const COVER: Said = said("Cover", "Portada");

/// Its further sheets.
pub const COVER_CONTINUED: Said = said("Cover, continued", "Portada, continuación");

/// What the cover holds.
pub fn cover_description(lang: Language, drawing: &str) -> String {
    say!(
        lang,
        "Totals, proof, assumptions, questions and cautions of the siding layout of {drawing}",
        "Totales, comprobación, supuestos, preguntas y advertencias del plano de siding de {drawing}"
    )
}

/// What the cover is of.
pub fn cover_subtitle(lang: Language, drawing: &str, zone: Option<&str>) -> String {
    let zone = zone.map_or(String::new(), |z| say!(lang, ", zone {z}", ", zona {z}"));
    say!(lang, "Siding layout of {drawing}{zone}", "Plano de siding de {drawing}{zone}")
}

/// The elevations of the house on one sheet.
pub const ELEVATIONS: Said = said("Elevations", "Elevaciones");

/// The same on several.
pub fn elevations(lang: Language, number: usize, count: usize) -> String {
    say!(lang, "Elevations, {number} of {count}", "Elevaciones, {number} de {count}")
}

/// A page of a list that takes several.
pub fn numbered(lang: Language, title: &str, number: usize, count: usize) -> String {
    say!(lang, "{}, {} of {}", "{}, {} de {}", title, number, count)
}

/// What a sheet of elevations holds.
pub fn elevations_description(
    lang: Language,
    title: &str,
    elevations: usize,
    scale: &str,
) -> String {
    let count = counted(lang, elevations, nouns::ELEVATION);
    say!(
        lang,
        "{title}: {count} with names of walls and openings, courses and seams, at {scale}",
        "{title}: {count} con nombres de paredes y aberturas, hileras y uniones, a {scale}"
    )
}

/// The name of a wall.
pub fn wall(lang: Language, prefix: &str) -> String {
    say!(lang, "wall {prefix}", "pared {prefix}")
}

/// Marks that were left off an elevation sheet.
pub fn marks_left_off(lang: Language, count: usize) -> String {
    say!(
        lang,
        "{} found no room: see the cut list and the trim list.",
        "{} sin lugar en el dibujo: vea la lista de cortes y la de molduras.",
        counted(lang, count, nouns::MARK)
    )
}

/// Places that break a rule whose names were left off an elevation sheet.
pub fn failed_left_off(lang: Language, count: usize) -> String {
    let places = nouns::counted(lang, count, nouns::PLACE);
    if count == 1 {
        say!(
            lang,
            "{places} of the failed check found no room for its number: see the cover.",
            "{places} de la revisión fallida no tiene su número en el dibujo: vea la portada."
        )
    } else {
        say!(
            lang,
            "{places} of the failed check found no room for their numbers: see the cover.",
            "{places} de la revisión fallida no tienen su número en el dibujo: vea la portada."
        )
    }
}

/// The cut list.
pub const CUT_LIST: Said = said("Cut list", "Lista de cortes");
/// What it holds.
pub fn cut_list_description(lang: Language, piece: &str) -> String {
    say!(
        lang,
        "Stock {piece}s with the pieces cut from each",
        "Por {piece}: las piezas que se cortan"
    )
}

/// Panels of a cut list.
#[derive(Clone, Copy, Debug)]
pub struct CutCount {
    /// All.
    pub all: usize,
    /// Those that are cut.
    pub cut: usize,
    /// Those laid whole.
    pub whole: usize,
}

/// What the cut list's heading says. `piece` is a stock length, `lengths` what the letters of
/// stock lengths mean, with a space behind it, or nothing.
pub fn cut_list(
    lang: Language,
    count: CutCount,
    piece: Noun,
    lengths: &str,
    style: LengthStyle,
) -> String {
    say!(
        lang,
        "{} of {} are cut, {} are laid whole. {lengths}Gray is left over; rip to: height of the piece, n: notches. {}",
        "Con cortes: {} de {}; sin cortes: {}. {lengths}Lo gris sobra; alto: altura a la que se corta a lo largo, n: muescas. {}",
        count.cut,
        nouns::counted(lang, count.all, piece),
        count.whole,
        unit_note(style).of(lang)
    )
}

/// Cutting sheets.
pub const CUTTING: Said = said("Cutting sheet", "Hoja de cortes");
/// What they hold.
pub const CUTTING_DESCRIPTION: Said = said(
    "Each distinct cut with its dimensions and the marks of its pieces",
    "Cada corte distinto con sus medidas y las marcas de sus piezas",
);
/// A cut whose words go on elsewhere.
pub const CONTINUED_AFTER_COLUMN: Said =
    said("continued after this column", "sigue después de esta columna");

/// A cutting sheet's title: from which cut to which it shows.
pub fn cutting_title(lang: Language, (first, last): (usize, usize)) -> String {
    if first == last {
        say!(lang, "Cutting sheet, cut {first}", "Hoja de cortes, corte {first}")
    } else {
        say!(
            lang,
            "Cutting sheet, cuts {first} to {last}",
            "Hoja de cortes, cortes {first} a {last}"
        )
    }
}

/// A cut's name, before the pieces it makes.
pub fn cut(lang: Language, number: usize, marks: &str) -> String {
    say!(lang, "cut {number}: {marks}", "corte {number}: {marks}")
}

/// A cut that goes on in another column.
pub fn cut_continued(lang: Language, number: usize) -> String {
    say!(lang, "cut {number}, continued", "corte {number}, continuación")
}

/// In place of a length, where pieces of several lengths are cut alike.
pub const LENGTHS_ABOVE: Said = said("lengths: see above", "largos: vea arriba");

/// Pieces that are a cut's mirror image.
pub fn mirrored(lang: Language, marks: &str) -> String {
    say!(lang, "mirrored: {marks}", "al revés: {marks}")
}

/// What the heading of cutting sheets says: slots punched, and what else holds cut edges; `over` is what a
/// panel has over its face.
pub fn cutting(
    lang: Language,
    cuts: usize,
    slots: u32,
    (held, held_by): (u32, Noun),
    (over, hem): (Said, bool),
    style: LengthStyle,
) -> String {
    let over = over.of(lang);
    // Boards have neither.
    let hem = if hem {
        say!(
            lang,
            "; {over} above and lock below where they stay",
            "; {over} arriba y traba abajo donde quedan"
        )
    } else {
        String::new()
    };
    let slots = (slots > 0).then(|| counted(lang, slots as usize, nouns::NAIL_SLOT));
    let held = (held > 0).then(|| counted(lang, held as usize, held_by));
    let punched = match (slots, held) {
        (None, None) => String::new(),
        (Some(one), None) | (None, Some(one)) => {
            say!(lang, "{one} overall. ", "En total {one}. ")
        }
        (Some(slots), Some(held)) => {
            say!(lang, "{slots} and {held} overall. ", "En total {slots} y {held}. ")
        }
    };
    let note = unit_note(style).of(lang);
    let count = counted(lang, cuts, nouns::SHAPED_CUT);
    // One thing is seen, or several are.
    if cuts == 1 {
        say!(
            lang,
            "{count}, seen from the face, NTS{hem}. Heights are over the butt edge, clearances are in the figures. {punched}{note}",
            "{count}, visto por la cara, sin escala{hem}. Alturas sobre el borde inferior, holguras incluidas. {punched}{note}"
        )
    } else {
        say!(
            lang,
            "{count}, seen from the face, NTS{hem}. Heights are over the butt edge, clearances are in the figures. {punched}{note}",
            "{count}, vistos por la cara, sin escala{hem}. Alturas sobre el borde inferior, holguras incluidas. {punched}{note}"
        )
    }
}

/// The trim list.
pub const TRIM_LIST: Said = said("Trim list", "Lista de molduras");
/// The order of work.
pub const ORDER_OF_WORK: Said = said("Order of work", "Orden de trabajo");
/// Heads of its parts.
pub const ON_EVERY_WALL: Said = said("On every wall", "En todas las paredes");
/// The same of nails and weather.
pub const FASTENERS_AND_MOVEMENT: Said = said("Fasteners and movement", "Clavos y dilatación");
/// The same of safety.
pub const BEFORE_YOU_CLIMB: Said = said("Before you climb", "Antes de subir");

/// The story pole.
pub const STORY_POLE: Said = said("Story pole", "Vara de alturas");
/// What it holds.
pub const STORY_POLE_DESCRIPTION: Said = said(
    "Butt lines, sills, heads and tops of the whole house with their heights, and what holds on every wall",
    "Bordes inferiores, repisas, cabezales y remates de toda la casa con sus alturas, y lo que vale en todas las paredes",
);
/// What the story pole's heading says.
pub fn story_pole(lang: Language, datum: f64, style: LengthStyle) -> String {
    say!(
        lang,
        "Heights over the floor reference line; butt lines on the stick. Course 1 begins at {}. {}",
        "Alturas sobre la línea de referencia del piso; bordes inferiores en la vara. La hilera 1 empieza en {}. {}",
        length(style, datum),
        unit_note(style).of(lang)
    )
}

/// Head of the datum.
pub const DATUM: Said = said("Datum", "Altura de arranque");
/// Columns of its lines.
pub const LINE_HEADS: [Said; 4] = [
    said("height", "altura"),
    said("course", "hilera"),
    said("over butt", "al borde"),
    said("what", "qué es"),
];
/// Head of its lines.
pub const LINES_TOP_DOWN: Said = said("Lines, top down", "Líneas, de arriba abajo");
/// Field of the title block.
pub const PROJECT: Said = said("project", "proyecto");
/// Field of the title block.
pub const ADDRESS: Said = said("address", "dirección");
/// Field of the title block.
pub const CLIENT: Said = said("client", "cliente");
/// Field of the title block.
pub const NUMBER: Said = said("number", "número");
/// Field of the title block.
pub const SHEET_TITLE: Said = said("title", "título");
/// Field of the title block.
pub const DRAWN_BY: Said = said("drawn by", "dibujó");
/// Field of the title block.
pub const APPROVED_BY: Said = said("approved by", "aprobó");
/// Field of the title block.
pub const DATE_AND_REVISION: Said = said("date, revision", "fecha, revisión");
/// Field of the title block.
pub const SHEET: Said = said("sheet", "hoja");
/// What it says.
pub fn sheet_of(lang: Language, number: usize, count: usize) -> String {
    say!(lang, "{} of {}", "{} de {}", number, count)
}
/// Columns of the table of revisions.
pub const REVISION_HEADS: [Said; 3] =
    [said("rev.", "rev."), said("date", "fecha"), said("what changed", "qué cambió")];
/// What the document is.
pub const SIDING_LAYOUT: Said = said("siding layout", "plano de siding");
/// Field of the title block.
pub const TYPE_AND_SCALE: Said = said("document type, scale", "tipo de plano, escala");
