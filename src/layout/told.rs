//! The figures of a piece as drawings, lists and tables tell them: each rounded once, here.
//!
//! The length goes down to a mark of the tape, so that the piece fits (`TakeoffFact::RoundedForSafety`). A
//! place along the piece goes to the nearest mark from the end it is nearer to, so that a right end
//! is the mirror image of a left one; widths are the differences of such places, and sum to the length. A
//! height goes to the nearest mark over the butt line; depths are differences likewise.

use super::piece::{Piece, PieceEnd};
use crate::geom::vocabulary::Xy;
use crate::model::notch::{Contour, Notch, NotchSide};
use crate::units::LengthStyle;

/// A place along a piece so long, told.
fn along(style: LengthStyle, length: f64, x: f64) -> f64 {
    if x <= length / 2.0 {
        style.to_mark(x)
    } else {
        style.to_cut(length) - style.to_mark(length - x)
    }
}

/// A place along a piece from its left end, told.
pub fn place(p: &Piece, x: f64, style: LengthStyle) -> f64 {
    along(style, p.length, x)
}

/// From where to where the foot or the head of a piece goes, told; places from its left end. `None` where
/// it is a point.
pub fn edge(p: &Piece, top: bool, style: LengthStyle) -> Option<(f64, f64)> {
    let (a, b) = p.edge(top);
    let (a, b) = (along(style, p.length, a), along(style, p.length, b));
    (b > a).then_some((a, b))
}

/// The piece with its figures as they are told: those of its ends, rip and notches, and where it lies on its
/// panel. What is drawn stays as it is: outline, places on the wall.
pub fn piece(p: &Piece, style: LengthStyle) -> Piece {
    let length = style.to_cut(p.length);
    // Against the end of the stock length that it keeps, or as near as may be to where it lies.
    let keeps_right = p.ends[1].cut == super::piece::EndCut::Factory;
    let start = if keeps_right { p.end - length } else { style.to_mark(p.start) };
    let at = |x: f64| along(style, p.length, x);
    let end = |e: &PieceEnd| PieceEnd {
        long_point: at(e.long_point),
        short_point: at(e.short_point),
        contour: e.contour.as_ref().map(|c| contour(c, &at, style)),
        ..e.clone()
    };
    let rip = p
        .rip
        .as_ref()
        .map(|r| super::piece::Rip { from: style.to_mark(r.from), to: style.to_mark(r.to) });
    Piece {
        length,
        start,
        end: start + length,
        ends: [end(&p.ends[0]), end(&p.ends[1])],
        rip,
        notches: p.notches.iter().map(|n| notch(n, &at, style)).collect(),
        ..p.clone()
    }
}

fn contour(c: &Contour, at: &impl Fn(f64) -> f64, style: LengthStyle) -> Contour {
    let told = |q: &Xy| [at(q[0]), style.to_mark(q[1])];
    Contour { points: c.points.iter().map(told).collect(), spacing: c.spacing }
}

fn notch(n: &Notch, at: &impl Fn(f64) -> f64, style: LengthStyle) -> Notch {
    let left = at(n.left);
    let foot = n.foot.map(|f| style.to_mark(f));
    let depth = match (n.side, n.foot) {
        (NotchSide::Top | NotchSide::Bottom, _) | (_, None) => style.to_mark(n.depth),
        (_, Some(f)) => style.to_mark(f + n.depth) - style.to_mark(f),
    };
    Notch {
        left,
        width: at(n.left + n.width) - left,
        depth,
        foot,
        contour: n.contour.as_ref().map(|c| contour(c, at, style)),
        ..n.clone()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::layout::piece::EndCut;

    #[test]
    fn figures_of_a_raked_piece_are_those_of_its_mirror_image_and_close() {
        // 65.4998 in is 5'-5 1/2" less the grid's noise; 11.97 in of slope is nearest to 12.
        let mut left = Piece::plain(65.4998, vec![]);
        left.ends[0] = PieceEnd { cut: EndCut::Angled, short_point: 11.98, ..left.ends[0].clone() };
        let mut right = Piece::plain(65.4998, vec![]);
        let short = 65.4998 - 11.98;
        right.ends[1] =
            PieceEnd { cut: EndCut::Angled, short_point: short, ..right.ends[1].clone() };
        let (l, r) = (piece(&left, LengthStyle::Feet), piece(&right, LengthStyle::Feet));
        assert_eq!((l.length, r.length), (65.5, 65.5));
        assert_eq!((l.ends[0].set_back(), r.ends[1].set_back()), (12.0, 12.0));
        assert_eq!((l.ends[0].long_point, r.ends[1].long_point), (0.0, 65.5));
    }

    #[test]
    fn a_notch_leaves_what_the_length_lacks_of_it() {
        // 1060.05 mm is cut at 1060: 238.67, 582.93 and 238.45 are told as 239, 583 and 238.
        let mut p = Piece::plain(1060.05 / 25.4, vec![]);
        p.notches.push(Notch {
            side: NotchSide::Top,
            left: 238.67 / 25.4,
            width: 582.93 / 25.4,
            depth: 50.6 / 25.4,
            foot: None,
            around: vec![],
            contour: None,
        });
        let told = piece(&p, LengthStyle::Mm);
        let mm = |v: f64| (v * 25.4 * 1e6).round() / 1e6;
        let n = &told.notches[0];
        let right = told.length - n.left - n.width;
        assert_eq!([n.left, n.width, right, n.depth].map(mm), [239.0, 583.0, 238.0, 51.0]);
    }
}
