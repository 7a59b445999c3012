//! What a datum does, in sentences.

use super::lists::commas;
use super::nouns::{self, counted};
use crate::language::{Language, Said, said};
use crate::model::pole::{DatumEffects, FirstCourse, MainLine, StripPlace, ThinStrips};
use crate::units::LengthStyle;

/// What a datum does, in words an installer would use; of the one laid, how many pieces are ripped or
/// notched.
pub fn effects(
    lang: Language,
    e: &DatumEffects,
    laid: Option<usize>,
    style: LengthStyle,
) -> String {
    let mut out = vec![first_course(lang, &e.first_course, style)];
    if let Some(hung) = &e.hung {
        out.push(say!(
            lang,
            "it hangs up to {} below the drawn bottom along {}",
            "cuelga hasta {} debajo del pie dibujado a lo largo de {}",
            style.short(hung.most),
            about(hung.along, style)
        ));
    }
    out.extend(e.main_heads.as_ref().map(|l| {
        main_line(
            lang,
            said("heads", "cabezales").of(lang),
            said("over", "sobre").of(lang),
            l,
            style,
        )
    }));
    out.extend(e.main_sills.as_ref().map(|l| {
        main_line(lang, said("sills", "repisas").of(lang), said("under", "bajo").of(lang), l, style)
    }));
    out.extend(strips(lang, e, style));
    out.push(match e.least_top {
        Some(top) => {
            say!(lang, "least top course {}", "última hilera de {} como mínimo", style.short(top))
        }
        None => said("top courses whole", "últimas hileras enteras").of(lang).to_owned(),
    });
    if e.grade_steps > 0 {
        out.push(say!(
            lang,
            "steps at grade: {}, each a whole course",
            "escalones en el terreno: {}, cada uno una hilera entera",
            e.grade_steps
        ));
    }
    out.push(match laid {
        Some(n) => say!(
            lang,
            "{} ripped or notched in the cut list",
            "{} por cortar a lo largo o con muesca en la lista de cortes",
            counted(lang, n, nouns::PIECE)
        ),
        None => say!(
            lang,
            "about {} panels to rip or notch",
            "unos {} paneles por cortar a lo largo o con muesca",
            e.cut_panels.round()
        ),
    });
    out.join("; ")
}

/// What is said of thin strips, and of skirt boards in their place.
fn strips(lang: Language, e: &DatumEffects, style: LengthStyle) -> Vec<String> {
    let mut out = Vec::new();
    let least = style.short(e.least_strip);
    let strips = |t: &ThinStrips| {
        let least = t.least.map(|l| say!(lang, " (least {})", " (mínimo {})", style.short(l)));
        let along = about(t.along, style);
        format!("{along} {}{}", strip_place(t.place).of(lang), least.unwrap_or_default())
    };
    let thin: Vec<String> = e.thin_strips.iter().map(strips).collect();
    let skirted: Vec<String> = e.skirted.iter().map(strips).collect();
    if !skirted.is_empty() {
        out.push(say!(
            lang,
            "skirt boards in place of strips under {least}: {}",
            "tablas de faldón en lugar de tiras de menos de {least}: {}",
            commas(&skirted)
        ));
    }
    out.push(if thin.is_empty() {
        say!(lang, "no strip under {least}", "ninguna tira de menos de {least}")
    } else {
        say!(lang, "strips under {least}: {}", "tiras de menos de {least}: {}", commas(&thin))
    });
    out
}

/// A length to the next half foot.
fn about(inches: f64, style: LengthStyle) -> String {
    style.length((inches / 6.0).ceil() * 6.0)
}

fn first_course(lang: Language, first: &FirstCourse, style: LengthStyle) -> String {
    match first {
        FirstCourse::Whole => said(
            "the first course is whole on every wall bottom",
            "la primera hilera va entera en el pie de todas las paredes",
        )
        .of(lang)
        .to_owned(),
        FirstCourse::Cut { along, least, whole_if_hung } => {
            let whole = if *whole_if_hung > 0.0 {
                say!(
                    lang,
                    "; to keep it whole it would hang up to {} below the drawn bottom (`courses.hang_below`)",
                    "; para ir entera colgaría hasta {} debajo del pie dibujado (`courses.hang_below`)",
                    style.short(*whole_if_hung)
                )
            } else {
                String::new()
            };
            say!(
                lang,
                "the first course is cut along {} of wall bottom, least height {}, held in undersill (finish) trim instead of a starter{whole}",
                "la primera hilera se corta a lo largo de {} del pie de pared, altura mínima {}, sujeta en moldura de remate en lugar de tira de inicio{whole}",
                about(*along, style),
                style.short(*least)
            )
        }
    }
}

fn main_line(
    lang: Language,
    what: &str,
    side: &str,
    line: &MainLine,
    style: LengthStyle,
) -> String {
    let at = style.length(line.height);
    match line.kept {
        None => say!(
            lang,
            "main {what} at {at} on a course line",
            "{what} principales a {at} en una línea de hilera"
        ),
        Some(kept) => {
            say!(
                lang,
                "main {what} at {at} cut a course, {} of it {side} them",
                "{what} principales a {at} cortan una hilera, {} de ella {side} la línea",
                style.short(kept)
            )
        }
    }
}

fn strip_place(place: StripPlace) -> Said {
    match place {
        StripPlace::OverHeads => said("over heads", "sobre cabezales"),
        StripPlace::UnderSills => said("under sills", "bajo repisas"),
        StripPlace::AtTops => said("at tops", "en remates"),
        StripPlace::AtStarts => said("at starts", "en arranques"),
        StripPlace::AtFixtures => said("at fixtures", "en accesorios"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lengths_along_walls_go_up_to_half_a_foot() {
        assert_eq!(about(240.0, LengthStyle::Feet), "20'-0\"");
        assert_eq!(about(240.1, LengthStyle::Feet), "20'-6\"");
    }
}
