//! Ends and notches of pieces as tables write them, with their units.

use crate::geom::vocabulary::Xy;
use crate::layout::piece::{EndCut, Piece};
use crate::model::notch::{Contour, Notch, NotchSide};
use crate::units::LengthStyle;

/// How an end is cut.
pub fn end(end: EndCut) -> &'static str {
    match end {
        EndCut::Factory => "factory",
        EndCut::Square => "square",
        EndCut::Angled => "angled",
        EndCut::Shaped => "to contour",
    }
}

/// The notches of a piece in one line.
pub fn notches(piece: &Piece, style: LengthStyle) -> String {
    let each = piece.notches.iter().map(|n| notch(n, style));
    each.collect::<Vec<_>>().join("; ")
}

fn notch(n: &Notch, style: LengthStyle) -> String {
    let side = match n.side {
        NotchSide::Top => "top",
        NotchSide::Bottom => "bottom",
        NotchSide::Left => "slot from the left end",
        NotchSide::Right => "slot from the right end",
        NotchSide::Hole => "hole",
    };
    let up = n.foot.map_or(String::new(), |f| format!(" {} from bottom", style.short(f)));
    let around: Vec<&str> = n.around.iter().map(|id| id.as_str()).collect();
    let around =
        if around.is_empty() { "the wall's own edge".to_owned() } else { around.join(" and ") };
    let points = n.contour.as_ref().map_or(String::new(), |c| format!(", {}", contour(c, style)));
    format!(
        "{side} {} wide {} deep {} from left{up} ({around}){points}",
        style.short(n.told_width()),
        style.short(n.depth),
        style.short(n.left),
    )
}

/// The points of a contour, from the left end / from the butt line.
pub fn contour(c: &Contour, style: LengthStyle) -> String {
    let one = |q: &Xy| format!("{} / {}", style.short(q[0]), style.short(q[1]));
    let list = c.points.iter().map(one).collect::<Vec<_>>().join(", ");
    match c.spacing {
        Some(s) => format!("points every {}, from left / from bottom: {list}", style.short(s)),
        None => format!("from left / from bottom: {list}"),
    }
}
