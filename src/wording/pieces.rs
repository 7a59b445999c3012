//! Ends and notches of pieces as tables write them, with their units.

use crate::geom::vocabulary::Xy;
use crate::language::{Language, Said, said};
use crate::layout::piece::{EndCut, Piece};
use crate::model::notch::{Contour, Notch, NotchSide};
use crate::units::LengthStyle;

/// How an end is cut.
pub fn end(end: EndCut) -> Said {
    match end {
        EndCut::Factory => said("factory", "de fábrica"),
        EndCut::Square => said("square", "a escuadra"),
        EndCut::Angled => said("angled", "en ángulo"),
        EndCut::Shaped => said("to contour", "con contorno"),
    }
}

/// The notches of a piece in one line.
pub fn notches(lang: Language, piece: &Piece, style: LengthStyle) -> String {
    let each = piece.notches.iter().map(|n| notch(lang, n, style));
    each.collect::<Vec<_>>().join("; ")
}

fn notch(lang: Language, n: &Notch, style: LengthStyle) -> String {
    let side = match n.side {
        NotchSide::Top => said("top", "por arriba"),
        NotchSide::Bottom => said("bottom", "por abajo"),
        NotchSide::Left => said("slot from the left end", "ranura desde el extremo izquierdo"),
        NotchSide::Right => said("slot from the right end", "ranura desde el extremo derecho"),
        NotchSide::Hole => said("hole", "hueco"),
    };
    let side = side.of(lang);
    let up = n.foot.map_or(String::new(), |f| {
        say!(lang, " {} from bottom", " a {} desde abajo", style.short(f))
    });
    let around: Vec<&str> = n.around.iter().map(|id| id.as_str()).collect();
    let around = if around.is_empty() {
        said("the wall's own edge", "el borde mismo de la pared").of(lang).to_owned()
    } else {
        around.join(said(" and ", " y ").of(lang))
    };
    let points =
        n.contour.as_ref().map_or(String::new(), |c| format!(", {}", contour(lang, c, style)));
    say!(
        lang,
        "{side} {} wide {} deep {} from left{up} ({around}){points}",
        "{side} {} de ancho {} de fondo a {} desde la izquierda{up} ({around}){points}",
        style.short(n.told_width()),
        style.short(n.depth),
        style.short(n.left),
    )
}

/// The points of a contour, from the left end / from the butt line.
pub fn contour(lang: Language, c: &Contour, style: LengthStyle) -> String {
    let one = |q: &Xy| format!("{} / {}", style.short(q[0]), style.short(q[1]));
    let list = c.points.iter().map(one).collect::<Vec<_>>().join(", ");
    match c.spacing {
        Some(s) => say!(
            lang,
            "points every {}, from left / from bottom: {list}",
            "puntos cada {}, desde la izquierda / desde abajo: {list}",
            style.short(s)
        ),
        None => say!(
            lang,
            "from left / from bottom: {list}",
            "desde la izquierda / desde abajo: {list}"
        ),
    }
}
