//! Whether what a cutter is told makes the piece: ends, notches and cut-outs taken off the strip
//! between a piece's ends and rips must leave what shows of it on the wall.

use super::named;
use super::rule::{Cases, found};
use super::scan::{length, without};
use super::sweep::{Height, Shapes};
use crate::geom::tol::GRID;
use crate::geom::vocabulary::Xy;
use crate::layout::breach::piece::PieceBreach;
use crate::layout::course::LaidCourse;
use crate::layout::laid::LaidHouse;
use crate::layout::piece::Piece;
use crate::layout::rule::Rule;
use crate::layout::verified::RuleCheck;
use crate::layout::violation::Figure::SquareInches;
use crate::model::notch::{Contour, Notch, NotchSide};
use crate::real::Real;

/// How far what is cut may lie off what shows, inches along the cut: points on a curve are told to
/// 1/32, places to noise.
const OFF: f64 = 1.0 / 32.0;
/// Area that counts as none, square inches.
const NOISE: f64 = 0.05;
/// How far an end that is told as square may lean, inches over its height: a quarter of the finest
/// mark on a tape.
const LEAN: f64 = 1.0 / 64.0;

pub(super) fn check(layout: &LaidHouse) -> RuleCheck {
    let mut rule = Cases::new(Rule::PieceCuts);
    // A piece that an opening parts is marked in place.
    for on in named::pieces(layout).filter(|on| on.piece.more.is_empty()) {
        let (c, p) = (on.run.course, on.piece);
        let (differ, contours) = compare(c, p);
        let limit = NOISE + leaning(c, p) + falling(c, p) + notches_fall(c, p) + OFF * contours;
        rule.case(differ <= limit, || {
            let v = found(on.subject(), PieceBreach::Cuts).at(on.middle());
            v.measured(SquareInches(differ)).at_most(SquareInches(limit))
        });
    }
    rule.done()
}

/// Area that ends told as square leave, as far as they lean and may.
fn leaning(c: &LaidCourse, p: &Piece) -> f64 {
    let ends = [(&p.ends[0].contour, p.x0), (&p.ends[1].contour, p.x1)];
    let lean = ends.into_iter().filter(|(contour, _)| contour.is_none()).map(|(_, end)| {
        let off = p.outline.iter().map(|q| (q[0] - end).abs());
        off.filter(|d| *d <= LEAN).fold(0.0, f64::max)
    });
    lean.sum::<f64>() * (c.top - c.bottom)
}

/// Area that rips leave, as far as the sides they follow fall: a triangle over each. Both ends of a
/// drawn level side are put on the grid, so it may fall by one step of it.
fn falling(c: &LaidCourse, p: &Piece) -> f64 {
    let Some(rip) = &p.rip else { return 0.0 };
    let lines = [rip.from, rip.to].map(|y| c.bottom + y);
    let fall = lines.map(|line| {
        let off = p.outline.iter().map(|q| (q[1] - line).abs());
        off.filter(|d| *d <= GRID).fold(0.0, f64::max)
    });
    fall.iter().sum::<f64>() * (p.x1 - p.x0) / 2.0
}

/// Area that notches told as level leave, as far as the sides they follow fall, and may as an end may lean: a
/// triangle under each.
fn notches_fall(c: &LaidCourse, p: &Piece) -> f64 {
    let (low, high) = bounds(c, p);
    let level = |n: &Notch| match n.side {
        NotchSide::Top => Some(high - n.depth),
        NotchSide::Bottom => Some(low + n.depth),
        NotchSide::Left | NotchSide::Right | NotchSide::Hole => None,
    };
    let told = p.notches.iter().filter(|n| n.contour.is_none());
    told.filter_map(|n| Some((n, level(n)?)))
        .map(|(n, y)| {
            let ends = [p.x0 + n.left - GRID, p.x0 + n.left + n.width + GRID];
            let along = p.outline.iter().filter(|q| q[0] >= ends[0] && q[0] <= ends[1]);
            let off = along.map(|q| (q[1] - y).abs()).filter(|d| *d <= LEAN);
            off.fold(0.0, f64::max) * n.width / 2.0
        })
        .sum()
}

/// From where to where a piece's strip goes up.
fn bounds(c: &LaidCourse, p: &Piece) -> (f64, f64) {
    p.rip.as_ref().map_or((c.bottom, c.top), |r| (c.bottom + r.from, c.bottom + r.to))
}

/// Area in which the piece as told and the piece as shown differ, and the length of its contours.
fn compare(c: &LaidCourse, p: &Piece) -> (f64, f64) {
    let (low, high) = bounds(c, p);
    let mut shapes = Shapes::default();
    let strip = shapes.add([&vec![[p.x0, low], [p.x1, low], [p.x1, high], [p.x0, high]]]);
    let shown = shapes.add(std::iter::once(&p.outline).chain(&p.holes));
    let mut contours = 0.0;
    for (contour, end) in [(&p.ends[0].contour, p.x0), (&p.ends[1].contour, p.x1)] {
        let Some(contour) = contour else { continue };
        contours += run(contour);
        let mut ring = placed(contour, c, p);
        let (foot, head) = (low.min(c.bottom) - 1.0, high.max(c.top) + 1.0);
        // Past the strip on all sides but the cut's.
        let out = if end == p.x0 { end - 1.0 } else { end + 1.0 };
        let (Some(first), Some(last)) = (ring.first().copied(), ring.last().copied()) else {
            continue;
        };
        ring.extend([[last[0], head], [out, head], [out, foot], [first[0], foot]]);
        shapes.add([&ring]);
    }
    for n in &p.notches {
        contours += n.contour.as_ref().map_or(0.0, run);
        shapes.add([&notch(n, c, p, (low, high))]);
    }
    let mut differ = 0.0;
    for slab in shapes.slabs(low.min(c.bottom), high.max(c.top)) {
        let off = slab.union(Height::Middle, |i| i > shown);
        let left = without(&slab.union(Height::Middle, |i| i == strip), &off);
        let shows = slab.union(Height::Middle, |i| i == shown);
        differ += slab.rise() * (length(&without(&left, &shows)) + length(&without(&shows, &left)));
    }
    (differ, contours)
}

fn run(c: &Contour) -> f64 {
    c.points.windows(2).map(|w| (w[0][0] - w[1][0]).hypotenuse(w[0][1] - w[1][1])).sum()
}

fn placed(contour: &Contour, c: &LaidCourse, p: &Piece) -> Vec<Xy> {
    contour.points.iter().map(|q| [p.x0 + q[0], c.bottom + q[1]]).collect()
}

fn notch(n: &Notch, c: &LaidCourse, p: &Piece, (low, high): (f64, f64)) -> Vec<Xy> {
    if let Some(contour) = &n.contour {
        let mut ring = placed(contour, c, p);
        let (first, last) = (ring.first().copied(), ring.last().copied());
        if let (Some(first), Some(last)) = (first, last) {
            match n.side {
                NotchSide::Top => ring.extend([[last[0], high + 1.0], [first[0], high + 1.0]]),
                NotchSide::Bottom => ring.extend([[last[0], low - 1.0], [first[0], low - 1.0]]),
                NotchSide::Left => ring.extend([[p.x0 - 1.0, last[1]], [p.x0 - 1.0, first[1]]]),
                NotchSide::Right => ring.extend([[p.x1 + 1.0, last[1]], [p.x1 + 1.0, first[1]]]),
                NotchSide::Hole => {}
            }
        }
        return ring;
    }
    let (x0, x1) = (p.x0 + n.left, p.x0 + n.left + n.width);
    let foot = c.bottom + n.foot.unwrap_or_default();
    let (y0, y1) = match n.side {
        NotchSide::Top => (high - n.depth, high),
        NotchSide::Bottom => (low, low + n.depth),
        _ => (foot, foot + n.depth),
    };
    vec![[x0, y0], [x1, y0], [x1, y1], [x0, y1]]
}

#[cfg(test)]
mod tests {
    use super::{LaidCourse, Notch, NotchSide, Piece, compare};

    #[test]
    fn a_notch_told_too_wide_differs_by_its_excess() {
        let c =
            LaidCourse { index: 0, bottom: 0.0, top: 8.0, rip: None, avoid: vec![], runs: vec![] };
        let mut p = Piece::plain(
            40.0,
            vec![
                [0.0, 0.0],
                [40.0, 0.0],
                [40.0, 8.0],
                [30.0, 8.0],
                [30.0, 5.0],
                [20.0, 5.0],
                [20.0, 8.0],
                [0.0, 8.0],
            ],
        );
        // Untold, the notch of 10 by 3 is what differs.
        assert!((compare(&c, &p).0 - 30.0).abs() < 1e-6);
        let around = vec!["front-W1".into()];
        let (left, width, depth) = (20.0, 12.0, 3.0);
        let n =
            Notch { side: NotchSide::Top, left, width, depth, foot: None, around, contour: None };
        p.notches.push(n);
        assert!((compare(&c, &p).0 - 6.0).abs() < 1e-6);
        p.notches[0].width = 10.0;
        assert!(compare(&c, &p).0 < 1e-6);
    }
}
