//! Notches, slots and holes of pieces in words.

use super::sheet_lengths::{hard, length, short};
use crate::geom::vocabulary::Xy;
use crate::language::{Language, Said, said};
use crate::layout::course::LaidCourse;
use crate::layout::piece::{Piece, Rip};
use crate::model::notch::{Contour, Notch, NotchSide};
use crate::real::Real;
use crate::units::LengthStyle;

/// What a length has over the face of its course.
pub(super) struct Above {
    pub(super) name: &'static str,
    pub(super) height: f64,
}

/// A curve, which no list of points tells as well as its pattern.
const CURVE: Said = said(
    "curve: by its full-size pattern at the end of the set",
    "curva: con su plantilla a tamaño real al final del juego",
);

/// Whether a notch is round, and so told by its size and middle.
pub fn is_round(n: &Notch) -> bool {
    Round::of(n).is_some()
}

/// Points from the left end and from the butt line.
pub(super) fn points(lang: Language, c: &Contour, style: LengthStyle) -> String {
    // Hard spaces: a point is not parted at the end of a line.
    let one =
        |q: &Xy| format!("{} / {}", short(style, q[0]), short(style, q[1])).replace(' ', "\u{a0}");
    let each = c.points.iter().map(one);
    let list = each.collect::<Vec<_>>().join(", ");
    match c.spacing {
        Some(_) => CURVE.of(lang).to_owned(),
        None => say!(
            lang,
            "corners, from left / from bottom: {list}",
            "esquinas, desde la izquierda / desde abajo: {list}"
        ),
    }
}

/// From where to where a notch goes up from the butt edge.
pub fn notch_span(n: &Notch, rip: &Option<Rip>, course: &LaidCourse) -> (f64, f64) {
    let face = course.top - course.bottom;
    let (low, high) = rip.as_ref().map_or((0.0, face), |r| (r.from, r.to));
    match n.side {
        NotchSide::Top => (high - n.depth, high),
        NotchSide::Bottom => (low, low + n.depth),
        NotchSide::Left | NotchSide::Right | NotchSide::Hole => {
            let foot = n.foot.unwrap_or(0.0);
            (foot, foot + n.depth)
        }
    }
}

/// A notch, a slot or a hole of a piece.
pub(super) fn notch(
    lang: Language,
    n: &Notch,
    (p, course): (&Piece, &LaidCourse),
    above: &Above,
    style: LengthStyle,
) -> String {
    let around = n.around.iter().map(|id| id.rsplit('-').next().unwrap_or(id));
    let around = around.collect::<Vec<_>>().join(said(" and ", " y ").of(lang));
    let at =
        if around.is_empty() { String::new() } else { say!(lang, " at {around}", " en {around}") };
    if let Some(round) = Round::of(n) {
        return round_hole(lang, &round, &at, p.length, style);
    }
    // Hard spaces: a length is not parted at the end of a line.
    let [left, width] = [n.left, n.told_width()].map(|v| hard(&length(style, v)));
    let (low, high) = notch_span(n, &p.rip, course);
    let [low, high, depth] = [low, high, n.depth].map(|v| hard(&short(style, style.to_mark(v))));
    let mut out = match n.side {
        NotchSide::Top => {
            let whole = if above.height > 0.0 {
                let all = hard(&short(style, style.to_mark(n.depth + above.height)));
                say!(
                    lang,
                    "{depth} of the face, {all} with the {}",
                    "{depth} de la cara, {all} contando {}",
                    above.name
                )
            } else {
                say!(lang, "{depth} deep", "{depth} de fondo")
            };
            say!(
                lang,
                "notch{at}: {left} from the left end, {width} wide, from {low} over the butt edge up; {whole}",
                "muesca por arriba{at}: a {left} del extremo izquierdo, {width} de ancho, desde {low} sobre el borde inferior hasta el borde superior; quite {whole}"
            )
        }
        NotchSide::Bottom => say!(
            lang,
            "notch{at}: {left} from the left end, {width} wide, up to {high} over the butt edge",
            "muesca por abajo{at}: a {left} del extremo izquierdo, {width} de ancho, desde el borde inferior hasta {high} de alto"
        ),
        NotchSide::Left | NotchSide::Right => say!(
            lang,
            "slot{at}: {left} from the left end, {width} long, from {low} to {high} over the butt edge",
            "ranura{at}: a {left} del extremo izquierdo, {width} de largo, de {low} a {high} sobre el borde inferior"
        ),
        NotchSide::Hole => say!(
            lang,
            "hole{at}: {left} from the left end, {width} long, from {low} to {high} over the butt edge",
            "hueco{at}: a {left} del extremo izquierdo, {width} de largo, de {low} a {high} sobre el borde inferior"
        ),
    };
    if let Some(c) = &n.contour {
        out.push_str(&say!(lang, "; {}", "; {}", points(lang, c, style)));
    }
    out
}

/// A hole round a pipe or another round fixture, whole or as far as the piece reaches.
struct Round {
    across: f64,
    /// Its middle: from the left end, over the butt edge.
    at: Xy,
}

/// How far the points of a hole may lie off its circle, inches: clearance is kept aside and up or down, which
/// makes it a hair more than round.
const OUT_OF_ROUND: f64 = 3.0 / 16.0;

impl Round {
    fn of(n: &Notch) -> Option<Self> {
        let c = n.contour.as_ref().filter(|c| c.spacing.is_some())?;
        let foot = n.foot?;
        let r = n.depth / 2.0;
        let x = match n.side {
            NotchSide::Hole if (n.width - n.depth).abs() < OUT_OF_ROUND => n.left + n.width / 2.0,
            NotchSide::Right => n.left + r,
            NotchSide::Left => n.left + n.width - r,
            _ => return None,
        };
        let at = [x, foot + r];
        let straight = |q: &Xy| match n.side {
            NotchSide::Right => q[0] > x,
            NotchSide::Left => q[0] < x,
            _ => false,
        };
        let on = |q: &Xy| {
            let level = straight(q) && ((q[1] - at[1]).abs() - r).abs() < OUT_OF_ROUND;
            level || ((q[0] - at[0]).hypotenuse(q[1] - at[1]) - r).abs() < OUT_OF_ROUND
        };
        c.points.iter().all(on).then_some(Round { across: n.depth, at })
    }
}

fn round_hole(lang: Language, round: &Round, at: &str, whole: f64, style: LengthStyle) -> String {
    let up = hard(&short(style, style.to_mark(round.at[1])));
    let across = hard(&short(style, round.across));
    let x = round.at[0];
    let from = if x < 0.0 {
        say!(
            lang,
            "{} beyond the left end",
            "{} fuera del extremo izquierdo",
            hard(&short(style, style.to_mark(-x)))
        )
    } else if x > whole {
        say!(
            lang,
            "{} beyond the right end",
            "{} fuera del extremo derecho",
            hard(&short(style, style.to_mark(x - whole)))
        )
    } else {
        say!(
            lang,
            "{} from the left end",
            "a {} del extremo izquierdo",
            hard(&length(style, style.to_mark(x)))
        )
    };
    say!(
        lang,
        "round hole{at}: {across} across, its middle {from}, {up} over the butt edge",
        "hueco redondo{at}: {across} de diámetro, su centro {from}, {up} sobre el borde inferior"
    )
}
