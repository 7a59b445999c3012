//! Words that several tables share.

use crate::layout::piece::{EndCut, Piece};
use crate::model::notch::{Contour, NotchSide};
use crate::model::trim::TrimEnd;
use crate::units::LengthStyle;

/// How an end is cut.
pub(super) fn end(end: EndCut) -> &'static str {
    match end {
        EndCut::Factory => "factory",
        EndCut::Square => "square",
        EndCut::Angled => "angled",
        EndCut::Shaped => "to contour",
    }
}

/// How trim ends.
pub(super) fn trim_end(end: &TrimEnd, style: LengthStyle) -> String {
    match end {
        TrimEnd::Square => "square".into(),
        TrimEnd::Mitre(a) => format!("mitre {}", (a * 100.0).round() / 100.0),
        TrimEnd::Tab(l) => format!("water tab {}", style.short(*l)),
        TrimEnd::MitreTab { angle, tab } => {
            format!("mitre {}, water tab {}", (angle * 100.0).round() / 100.0, style.short(*tab))
        }
        TrimEnd::Lap(l) => format!("lap {}", style.short(*l)),
        TrimEnd::Splice { lap, cut } => {
            format!("flange cut back {}, lap {}", style.short(*cut), style.short(*lap))
        }
        TrimEnd::Capped => "capped".into(),
    }
}

/// The notches of a piece in one line.
pub(super) fn notches(piece: &Piece, style: LengthStyle) -> String {
    let each = piece.notches.iter().map(|n| {
        let side = match n.side {
            NotchSide::Top => "top",
            NotchSide::Bottom => "bottom",
            NotchSide::Left => "slot from the left end",
            NotchSide::Right => "slot from the right end",
            NotchSide::Hole => "hole",
        };
        let foot = n.foot.map_or(String::new(), |f| format!(" {} up", style.short(f)));
        let around = match n.around.join(" and ") {
            none if none.is_empty() => "the wall's own edge".to_owned(),
            names => names,
        };
        let points =
            n.contour.as_ref().map_or(String::new(), |c| format!(", {}", contour(c, style)));
        format!(
            "{side} {} wide {} deep {} from left{foot} ({around}){points}",
            style.short(n.told_width()),
            style.short(n.depth),
            style.short(n.left),
        )
    });
    each.collect::<Vec<_>>().join("; ")
}

/// The points of a contour, along from the left end / up from the butt line.
pub(super) fn contour(c: &Contour, style: LengthStyle) -> String {
    let each = c.points.iter().map(|q| format!("{} / {}", style.short(q[0]), style.short(q[1])));
    let list = each.collect::<Vec<_>>().join(", ");
    match c.spacing {
        Some(s) => format!("points every {}, along / up: {list}", style.short(s)),
        None => format!("along / up: {list}"),
    }
}

/// A name before its last number, and that number.
fn split(name: &str) -> Option<(&str, u64)> {
    let digits = name.chars().rev().take_while(char::is_ascii_digit).count();
    let (head, tail) = name.split_at(name.len() - digits);
    tail.parse().ok().map(|k| (head, k))
}

/// Names in order, with the numbers that follow one another drawn together: `P1 to P7, P9`.
pub(super) fn ranges(names: &[String]) -> String {
    let mut names: Vec<&str> = names.iter().map(String::as_str).collect();
    names.sort_by_key(|n| split(n).map_or((*n, 0, *n), |(head, k)| (head, k, *n)));
    let mut out: Vec<String> = Vec::new();
    let mut first = 0;
    for i in 0..names.len() {
        let goes_on = names.get(i + 1).is_some_and(|next| match (split(names[i]), split(next)) {
            (Some((a, m)), Some((b, n))) => a == b && m.checked_add(1) == Some(n),
            _ => false,
        });
        if goes_on {
            continue;
        }
        out.push(match i - first {
            0 => names[i].to_owned(),
            1 => format!("{}, {}", names[first], names[i]),
            _ => format!("{} to {}", names[first], names[i]),
        });
        first = i + 1;
    }
    out.join(", ")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_in_a_row_are_drawn_together() {
        let names = |t: &str| t.split(' ').map(str::to_owned).collect::<Vec<_>>();
        assert_eq!(ranges(&names("P2 P1 P3 P6 Q7 P5 P10 x")), "P1 to P3, P5, P6, P10, Q7, x");
        assert_eq!(
            ranges(&names("P09 P10 P11 99999999999999999999999")),
            "99999999999999999999999, P09 to P11"
        );
        assert_eq!(ranges(&[]), "");
    }
}
