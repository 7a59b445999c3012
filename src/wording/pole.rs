//! The story pole: how the datum was chosen, and what a datum does.

pub use super::datum_effects::effects;
use super::lists::commas;
use super::nouns::{self, counted};
use super::sheet_lengths::area;
use crate::language::{Language, Said, said};
use crate::model::pole::{
    DatumChoice, DatumReason, DatumTerm, DatumWeight, EvenedCourses, LineKind, PoleTable, WeighedIn,
};
use crate::real::Total;
use crate::units::LengthStyle;

/// What stands at a height of the pole.
pub fn line(kind: LineKind) -> Said {
    match kind {
        LineKind::Butt => said("butt line", "borde inferior"),
        LineKind::Start => said("start", "arranque"),
        LineKind::StoneTop => said("top of base", "alto de la base"),
        LineKind::RoofFoot => said("lower roof", "techo bajo"),
        LineKind::Sill => said("sill", "repisa"),
        LineKind::Head => said("head", "cabezal"),
        LineKind::Band => said("band", "faja"),
        LineKind::Eave => said("eave", "alero"),
        LineKind::Peak => said("peak", "punta"),
    }
}

/// How the datum was chosen, and how boards were evened.
pub fn reason(
    lang: Language,
    reason: &DatumReason,
    divisions: &[EvenedCourses],
    style: LengthStyle,
) -> String {
    let why = chosen_by(lang, reason, style);
    let evened: Vec<String> = divisions
        .iter()
        .map(|d| {
            say!(
                lang,
                "{} of {} to {}",
                "{} de {} hasta {}",
                d.courses,
                style.short(d.exposure),
                style.length(d.up_to)
            )
        })
        .collect();
    if evened.is_empty() {
        why
    } else {
        say!(lang, "{why}; boards evened: {}", "{why}; tablas emparejadas: {}", commas(&evened))
    }
}

/// Where the datum is, and why.
pub fn datum(
    lang: Language,
    height: f64,
    why: &DatumReason,
    divisions: &[EvenedCourses],
    style: LengthStyle,
) -> String {
    say!(
        lang,
        "Datum: {}; {}.",
        "Altura de arranque: {}; {}.",
        datum_height(lang, height, style),
        reason(lang, why, divisions, style)
    )
}

/// Where the datum is.
pub fn datum_height(lang: Language, height: f64, style: LengthStyle) -> String {
    let side = if height < 0.0 {
        said("below", "debajo de").of(lang)
    } else {
        said("above", "encima de").of(lang)
    };
    say!(
        lang,
        "butt line of course 1 at {} {side} the floor reference line",
        "borde inferior de la hilera 1 a {} {side} la línea de referencia del piso",
        style.length(height.abs())
    )
}

fn chosen_by(lang: Language, reason: &DatumReason, style: LengthStyle) -> String {
    match reason {
        DatumReason::FloorReference => {
            said("the floor reference line", "la línea de referencia del piso").of(lang).to_owned()
        }
        DatumReason::FixedByJob => {
            said("fixed by the job", "fijada por el trabajo").of(lang).to_owned()
        }
        DatumReason::OfTheHouse => said("that of the house", "la de la casa").of(lang).to_owned(),
        DatumReason::LowestStart => said(
            "the lowest start on the house that keeps clear of grade",
            "el arranque más bajo de la casa que libra el terreno",
        )
        .of(lang)
        .to_owned(),
        DatumReason::Searched { below: 0.0, tried } => say!(
            lang,
            "the lowest start on the house that keeps clear of grade, and the best of {tried} heights tried",
            "el arranque más bajo de la casa que libra el terreno, y la mejor de {tried} alturas probadas"
        ),
        DatumReason::Searched { below, tried } => say!(
            lang,
            "{} {} the lowest start on the house, the best of {tried} heights tried",
            "{} {}l arranque más bajo de la casa, la mejor de {tried} alturas probadas",
            style.short(below.abs()),
            if *below > 0.0 {
                said("below", "debajo de").of(lang)
            } else {
                said("above", "encima de").of(lang)
            },
        ),
    }
}

/// What the section of datums is called.
pub fn heading(pole: &PoleTable) -> String {
    format!("Datum, {} heights tried (penalty points, lower is better)", pole.tried)
}

/// How the datum was searched for.
pub fn search(lang: Language, pole: &PoleTable) -> String {
    say!(
        lang,
        "{} heights of the first course were tried. Penalty points, lower is better; weights are in the job, common practice.",
        "Se probaron {} alturas de la primera hilera. Puntos en contra, menos es mejor; los pesos están en el trabajo, práctica común.",
        pole.tried
    )
}

/// How the stick is used.
pub const STRIKE: Said = said(
    "Strike one level line all the way around the house and mark this stick once for all walls. The siding manufacturer's instructions and the local code take precedence.",
    "Marque una sola línea a nivel alrededor de toda la casa y marque esta vara una vez para todas las paredes. Primero valen las instrucciones del fabricante del siding y el código local.",
);

/// One choice of a datum, its height written as the sheet writes heights; `laid` pieces of the layout are
/// ripped or notched.
pub fn choice(
    lang: Language,
    c: &DatumChoice,
    height: &str,
    laid: usize,
    style: LengthStyle,
) -> String {
    let what =
        if c.chosen { said("In force", "En uso").of(lang) } else { said("Or", "O bien").of(lang) };
    say!(
        lang,
        "{what}: {height}, {:.1} points: {}. {}",
        "{what}: {height}, {:.1} puntos: {}. {}",
        total(c),
        effects(lang, &c.effects, c.chosen.then_some(laid), style),
        points(lang, c, style)
    )
}

/// Points of a datum as told: its terms rounded to a tenth each, as they stand beside it, so that a reader's sum agrees.
pub fn total(c: &DatumChoice) -> f64 {
    // The sum of nothing has a sign.
    c.terms.iter().map(|t| tenth(t.points)).total()
}

fn tenth(points: f64) -> f64 {
    format!("{points:.1}").parse().unwrap_or(points)
}

/// How the points of a datum add up.
pub fn points(lang: Language, c: &DatumChoice, style: LengthStyle) -> String {
    let terms: Vec<String> = c.terms.iter().map(|t| term(lang, t, style)).collect();
    if terms.is_empty() {
        return said("Nothing counts against it.", "Nada en contra.").of(lang).to_owned();
    }
    say!(lang, "Points: {}.", "Puntos: {}.", terms.join("; "))
}

/// One amount times its weight.
fn term(lang: Language, t: &DatumTerm, style: LengthStyle) -> String {
    let weight = t.points / t.amount;
    let amount = match t.unit {
        WeighedIn::Feet => along(lang, t.amount, style),
        WeighedIn::SquareFeet => areas(lang, t.amount, style),
        WeighedIn::Steps => counted(lang, t.amount as usize, nouns::STEP),
        WeighedIn::Panels => say!(lang, "about {:.1} panels", "unos {:.1} paneles", t.amount),
    };
    let of = match t.unit {
        WeighedIn::Feet => said(" a foot", " por pie").of(lang),
        WeighedIn::SquareFeet => said(" a sq ft", " por pie cuad.").of(lang),
        WeighedIn::Steps | WeighedIn::Panels => "",
    };
    let weight = (weight * 1000.0).round() / 1000.0;
    format!("{} {amount} x {weight}{of} = {:.1}", weighed(t.weight).of(lang), t.points)
}

/// Feet to a tenth, after meters where the job is in these: a weight counts by the foot.
fn along(lang: Language, feet: f64, style: LengthStyle) -> String {
    match style {
        LengthStyle::Feet => say!(lang, "{feet:.1} ft", "{feet:.1} pies"),
        LengthStyle::Mm => {
            say!(
                lang,
                "{:.2} m ({feet:.1} ft)",
                "{:.2} m ({feet:.1} pies)",
                style.number(feet * 12.0) / 1000.0
            )
        }
    }
}

/// Square feet to a tenth, likewise.
fn areas(lang: Language, square_feet: f64, style: LengthStyle) -> String {
    match style {
        LengthStyle::Feet => area(lang, square_feet, style),
        LengthStyle::Mm => format!(
            "{:.2} {} ({})",
            style.area(square_feet),
            style.area_unit(),
            area(lang, square_feet, LengthStyle::Feet)
        ),
    }
}

/// What a weight of the search counts.
fn weighed(weight: DatumWeight) -> Said {
    match weight {
        DatumWeight::StripOverHead => {
            said("thin strips over heads", "tiras angostas sobre cabezales")
        }
        DatumWeight::StripUnderSill => {
            said("thin strips under sills", "tiras angostas bajo repisas")
        }
        DatumWeight::StripAtTop => said("thin strips at tops", "tiras angostas en remates"),
        DatumWeight::StripAtStart => said("thin strips at starts", "tiras angostas en arranques"),
        DatumWeight::MainHead => said(
            "main heads off the course lines",
            "cabezales principales fuera de las líneas de hilera",
        ),
        DatumWeight::OtherLine => said(
            "other heads off the course lines",
            "otros cabezales fuera de las líneas de hilera",
        ),
        DatumWeight::ShortTop => said(
            "short top courses, by what they lack,",
            "últimas hileras cortas, por lo que les falta,",
        ),
        DatumWeight::CutStart => said("first course cut", "primera hilera cortada"),
        DatumWeight::Step => said("steps at grade", "escalones en el terreno"),
        DatumWeight::LeftBare => said(
            "wall that steps leave bare above the clearance",
            "pared que los escalones dejan sin cubrir sobre la holgura",
        ),
        DatumWeight::CutPanel => said(
            "panels to rip or notch, reckoned by the lines before seams,",
            "paneles por cortar a lo largo o con muesca, contados por las líneas antes de las uniones,",
        ),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_datum_is_told_by_how_it_was_chosen() {
        let said = |r: DatumReason| reason(Language::English, &r, &[], LengthStyle::Feet);
        assert_eq!(said(DatumReason::OfTheHouse), "that of the house");
        assert!(said(DatumReason::Searched { below: 0.0, tried: 7 }).contains("best of 7 heights"));
        let below = said(DatumReason::Searched { below: 4.0, tried: 7 });
        assert!(below.starts_with("4\" below the lowest start"), "{below}");
        let above = said(DatumReason::Searched { below: -4.0, tried: 7 });
        assert!(above.starts_with("4\" above the lowest start"), "{above}");
        let evened = [EvenedCourses { courses: 6, exposure: 10.5, up_to: 63.0 }];
        let boards =
            reason(Language::English, &DatumReason::FixedByJob, &evened, LengthStyle::Feet);
        assert_eq!(boards, "fixed by the job; boards evened: 6 of 10 1/2\" to 5'-3\"");
    }
}
