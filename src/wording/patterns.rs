//! Words of full-size patterns.

use super::sheet_lengths::short;
use crate::language::{Language, Said, said};
use crate::units::LengthStyle;

/// What a pattern is cut along.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub enum PatternPlace {
    /// A lower roof alone.
    #[default]
    LowerRoof,
    /// The rakes of a gable.
    Gable,
}

/// What a pattern is.
pub fn pattern_name(place: PatternPlace) -> Said {
    match place {
        PatternPlace::Gable => GABLE_PATTERN,
        PatternPlace::LowerRoof => ROOF_PATTERN,
    }
}

/// A pattern's title.
pub fn gable_title(lang: Language, place: PatternPlace, pitch: f64) -> String {
    say!(lang, "{}, {pitch} in 12", "{}, {pitch} en 12", pattern_name(place).of(lang))
}

/// What it holds.
pub fn gable_description(lang: Language, pitch: f64) -> String {
    say!(
        lang,
        "Pattern of the end cut at {pitch} in 12, with its step per course",
        "Plantilla del corte de extremo a {pitch} en 12, con su paso por hilera"
    )
}

/// The figures of a pattern: its pitch with the angle off the long edge, step and exposure.
pub fn gable(
    lang: Language,
    pitch: f64,
    angle: f64,
    step: f64,
    exposure: f64,
    style: LengthStyle,
) -> String {
    say!(
        lang,
        "{pitch} in 12: step {} in a course of {}; {angle:.1}° from the long edge, {:.1}° from square",
        "{pitch} en 12: paso de {} en una hilera de {}; {angle:.1}° desde el borde largo, {:.1}° desde la escuadra",
        short(style, step),
        short(style, exposure),
        90.0 - angle
    )
}

/// The scale of a pattern.
pub const FULL_SIZE: Said = said("full size", "tamaño real");
/// How a pattern is printed.
pub const FULL_SIZE_NOTE: Said = said(
    "FULL SIZE: print at 100 % and measure the bar before use; where it takes several pages, lay cross on cross and paste.",
    "TAMAÑO REAL: imprima al 100 % y mida la barra antes de usarla; si son varias hojas, ponga cruz sobre cruz y péguelas.",
);

/// A page of a pattern.
pub fn tile(lang: Language, title: &str, page: usize, pages: usize) -> String {
    if pages == 1 {
        title.to_owned()
    } else {
        say!(lang, "{title}, page {page} of {pages}", "{title}, página {page} de {pages}")
    }
}

/// A slope's step on its pattern.
pub fn step(lang: Language, length: &str) -> String {
    say!(lang, "step {length}", "paso {length}")
}

/// A slope's steps, so that errors of single ones do not add up: after each course, or where exposures differ by
/// exposure.
pub fn gable_steps(lang: Language, by_course: bool, rows: &[String]) -> String {
    let head = if by_course {
        said("Step after course", "Paso después de cada hilera").of(lang)
    } else {
        said("Step by exposure", "Paso por exposición").of(lang)
    };
    format!("{head} {}", rows.join(",  "))
}

/// The title of a curve's pattern.
pub fn curve_title(lang: Language, around: &str) -> String {
    say!(lang, "Curve pattern, {around}", "Plantilla de curva, {around}")
}

/// What it holds.
pub fn curve_description(lang: Language, around: &str) -> String {
    say!(
        lang,
        "Full-size pattern of the curved cuts at {around}, course by course",
        "Plantilla a tamaño real de los cortes curvos en {around}, hilera por hilera"
    )
}

/// How it is used.
pub const CURVE_USE: Said = said(
    "Thin level lines are butt lines: lay them on the butt edge of the piece and on the top of its face, and mark along the heavy curve. Clearances are in it.",
    "Las líneas finas a nivel son líneas de borde inferior: póngalas sobre el borde inferior de la pieza y sobre lo alto de su cara, y marque por la curva gruesa. Las holguras ya están incluidas.",
);

/// Walls a pattern is for.
pub fn gable_walls<T: std::fmt::Display>(lang: Language, walls: &[T]) -> String {
    say!(lang, "Used on {}.", "Se usa en {}.", super::lists::commas(walls))
}

/// How a pattern is used.
pub fn gable_use(lang: Language, place: PatternPlace, piece: &str, end_gap_place: &str) -> String {
    let turned = match place {
        PatternPlace::Gable => said(
            "Turn it over for the other rake; a peak takes both.",
            "Voltéela para la otra inclinación; la punta lleva las dos.",
        )
        .of(lang),
        PatternPlace::LowerRoof => said(
            "Turn it over for a roof that falls the other way.",
            "Voltéela para un techo que cae al otro lado.",
        )
        .of(lang),
    };
    say!(
        lang,
        "Mark it on a scrap of {piece} from butt line to butt line, cut it, try it on the wall, then copy it; keep the end gap {end_gap_place}. {turned}",
        "Márquela en un sobrante de {piece}, de línea a línea de borde inferior, córtela, pruébela en la pared y cópiela; deje el espacio de extremo {end_gap_place}. {turned}"
    )
}

/// The bar that proves a print.
pub fn print_bar(lang: Language, style: LengthStyle, pages: usize) -> String {
    let bar = match style {
        LengthStyle::Feet => said("4\" on paper", "4\" en el papel").of(lang),
        LengthStyle::Mm => said("100 mm on paper", "100 mm en el papel").of(lang),
    };
    if pages == 1 {
        bar.to_owned()
    } else {
        say!(lang, "{bar}; crosses: where pages meet", "{bar}; cruces: donde se juntan las hojas")
    }
}

/// What names of patterns begin with.
pub(super) const PATTERN_NAMES: [Said; 3] = [GABLE_PATTERN, ROOF_PATTERN, CURVE_PATTERN];
const GABLE_PATTERN: Said = said("Gable pattern", "Plantilla de hastial");
const ROOF_PATTERN: Said = said("Lower roof pattern", "Plantilla de techo bajo");
const CURVE_PATTERN: Said = said("Curve pattern", "Plantilla de curva");
