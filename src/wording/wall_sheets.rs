//! Words of a wall's own sheet.

use crate::language::{Language, Said, said};

/// Head of what is cut for the wall.
pub const SAW_LIST: Said = said("Saw list", "Cortes de esta pared");
/// What the two boxes of a row are for.
pub const CUT_AND_HUNG: Said = said("boxes: cut, hung", "casillas: cortado, puesto");
/// What the box of a row is for.
pub const DONE: Said = said("box: done", "casilla: hecho");
/// Panels to open.
pub const OPEN: Said = said("Open:", "Abrir:");
/// Offcuts of other walls' panels.
pub const OFFCUTS_FROM: Said = said("Offcuts that wait:", "Sobrantes guardados:");
/// Offcuts for later walls.
pub const LAY_ASIDE: Said = said("Lay aside:", "Guardar:");
/// Head of the table of rakes.
pub const RAKES: Said = said("Rakes, by course", "Inclinaciones, por hilera");
/// Its columns.
pub const RAKE_HEADS: [Said; 6] = [
    said("piece", "pieza"),
    said("bottom", "abajo"),
    said("top", "arriba"),
    said("left", "izq."),
    said("right", "der."),
    said("from", "de"),
];
/// What its figures are.
pub const RAKES_ARE: Said = said(
    "Bottom (butt) edge, top edge, and the angle of each end with the long edge. The pattern of the slope is at the end of the set.",
    "Borde inferior, borde superior y ángulo de cada extremo con el borde largo. La plantilla de la inclinación está al final del juego.",
);
/// A raked piece where its figures stand one after the other: its mark, and its bottom edge.
pub fn raked(mark: &str, bottom: &str) -> String {
    format!("{mark} {bottom}")
}

/// What follows: its top edge, both ends, its panel.
pub fn raked_ends(top: &str, [left, right]: [&str; 2], panel: &str) -> String {
    format!("{top}, {left}/{right}, {panel}").replace(' ', "\u{a0}").replace(",\u{a0}", ", ")
}

/// An edge without length.
pub const A_POINT: Said = said("point", "punta");
/// An end cut square.
pub const SQUARE: &str = "90°";
/// Head of the notes.
pub const ON_THIS_SHEET: Said = said("On this sheet", "En esta hoja");
/// The heading of a view of trim alone.
pub fn trim_view(lang: Language, title: &str) -> String {
    say!(lang, "{title}: marks of trim", "{title}: marcas de molduras")
}

/// The name of a wall's sheet.
pub fn title(lang: Language, prefix: &str, elevation: &str) -> String {
    say!(lang, "Wall {prefix}, {elevation}", "Pared {prefix}, {elevation}")
}

/// The same where a wall takes several sheets.
pub fn part(lang: Language, title: &str, part: usize, count: usize) -> String {
    if count == 1 {
        title.to_owned()
    } else {
        say!(lang, "{title}, part {part} of {count}", "{title}, parte {part} de {count}")
    }
}

/// What a wall's sheet holds.
pub fn description(lang: Language, title: &str, pieces: usize, scale: &str) -> String {
    let pieces = super::nouns::counted(lang, pieces, super::nouns::PIECE);
    say!(
        lang,
        "{title}: {pieces} with marks and lengths at {scale}, saw list, trim, order of work",
        "{title}: {pieces} con marcas y largos a {scale}, cortes, molduras, orden de trabajo"
    )
}

/// How marks on the sheet read.
pub fn marks_read(lang: Language, prefix: &str) -> String {
    say!(
        lang,
        "Marks read {prefix}-course-piece, on the drawing and in these lists without {prefix}; with each its length, and in the lists what it is cut from. Lines and signs: see the overview.",
        "Las marcas dicen {prefix}-hilera-pieza; en el dibujo y en estas listas van sin {prefix}; cada una con su largo, y en las listas de qué se corta. Líneas y signos: vea la hoja de elevaciones."
    )
}

/// A batch: how many, how long.
pub fn batch(lang: Language, count: usize, length: &str) -> String {
    say!(lang, "{count} at {length}", "{count} a {length}")
}

/// Panels with a wall.
pub fn panels_of(lang: Language, panels: &str, wall: &str) -> String {
    say!(lang, "{panels} (wall {wall})", "{panels} (pared {wall})")
}

/// A piece with its panel.
pub fn from_panel(mark: &str, panel: &str) -> String {
    // A hard space: both stay on one line.
    format!("{mark}\u{a0}{panel}")
}

/// A trim with the number of the stock length it is cut from.
pub fn from_stock(mark: &str, number: u32) -> String {
    format!("{mark}\u{a0}({number})")
}

/// Which stock lengths a wall's trim is cut from: those to open, those that wait, those to lay aside.
pub fn sticks(lang: Language, opened: &str, taken: &[String], aside: &[String]) -> String {
    let mut out = Vec::new();
    if !opened.is_empty() {
        out.push(say!(lang, "open {opened}", "abrir {opened}"));
    }
    if !taken.is_empty() {
        out.push(say!(lang, "offcuts of {}", "sobrantes de {}", super::lists::commas(taken)));
    }
    if !aside.is_empty() {
        out.push(say!(lang, "lay aside {}", "guardar {}", super::lists::commas(aside)));
    }
    out.join("; ")
}

/// Which cut of the cutting sheets the pieces of a batch are, or that they are whole; nothing of plain ones.
pub fn cut(lang: Language, whole: bool, cut: Option<(usize, bool)>) -> String {
    match cut {
        Some((n, false)) => say!(lang, "cut {n}", "corte {n}"),
        Some((n, true)) => say!(lang, "cut {n}, mirrored", "corte {n}, al revés"),
        None if whole => said("whole", "sin cortar").of(lang).to_owned(),
        None => String::new(),
    }
}

/// The pieces of a batch behind it.
pub fn marks(cut: &str, marks: &str) -> String {
    if cut.is_empty() {
        return marks.to_owned();
    }
    // Hard spaces: it stays on one line.
    format!("{}: {marks}", cut.replace(' ', "\u{a0}"))
}

/// An angle with the long edge.
pub fn degrees(angle: f64) -> String {
    format!("{:.1}°", angle.abs())
}

/// A trim's length with its ends, where they are not square.
pub fn trim_cut(lang: Language, length: &str, ends: &[String; 2], bent: bool) -> String {
    let length = if bent { super::trim::along_the_curve(lang, length) } else { length.to_owned() };
    match ends {
        [a, b] if a.is_empty() && b.is_empty() => length,
        [a, b] if a == b => say!(lang, "{length} both {a}", "{length} {a} en ambos extremos"),
        [a, b] if b.is_empty() => format!("{length} {a}"),
        [a, b] if a.is_empty() => format!("{length} {b}"),
        [a, b] => format!("{length} {a}, {b}"),
    }
}
