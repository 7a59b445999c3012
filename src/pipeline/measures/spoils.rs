//! What an error of a measure spoils: pieces of a layout that would be cut wrong.

use crate::geom::tol::LEVEL;
use crate::layout::Layout;
use crate::layout::course::LaidCourse;
use crate::layout::piece::Piece;
use crate::layout::wall::LaidWall;
use crate::model::house::HiddenBy;
use crate::model::measure::{Measure, MeasureKind as What, Spoils};
use crate::real::Total;

/// A piece that ends within this of a side ends at its trim, inches: wider than any post. Of our own choosing,
/// no source.
const NEAR: f64 = 8.0;

/// What an error of half an inch at a measure spoils in a layout.
pub(super) fn of(measure: &Measure, layout: &Layout) -> Spoils {
    let Some((_, wall)) = layout.walls().find(|(_, w)| w.id == *measure.wall) else {
        return Spoils::default();
    };
    let pieces: Vec<&Piece> = wall
        .courses
        .iter()
        .flat_map(|c| c.runs.iter().flat_map(move |r| r.pieces.iter().map(move |p| (c, p))))
        .filter(|(c, p)| is_spoiled(measure, wall, c, p))
        .map(|(_, p)| p)
        .collect();
    Spoils { pieces: pieces.len(), length: pieces.iter().map(|p| p.length).total() }
}

fn is_spoiled(m: &Measure, wall: &LaidWall, c: &LaidCourse, p: &Piece) -> bool {
    let xs = || wall.outline.iter().map(|q| q[0]);
    let (left, right) = (xs().fold(f64::MAX, f64::min), xs().fold(f64::MIN, f64::max));
    let (at_left, at_right) = (p.x0 - left < NEAR, right - p.x1 < NEAR);
    let ends = |courses: &[LaidCourse], first: bool| {
        let found = if first { courses.first() } else { courses.last() };
        found.is_some_and(|f| f.index == c.index)
    };
    let slanted = || p.ends.iter().any(|e| (e.angle - 90.0).abs() > 0.1);
    match m.kind {
        What::FootWidth | What::TopWidth | What::RightLean => at_right,
        What::LeftLean => at_left,
        What::LeftFoot => at_left && ends(&wall.courses, true),
        What::RightFoot => at_right && ends(&wall.courses, true),
        What::LeftHeight => at_left && (slanted() || ends(&wall.courses, false)),
        What::RightHeight => at_right && (slanted() || ends(&wall.courses, false)),
        What::PeakPlace | What::PeakLevel => slanted(),
        What::BandBottom | What::BandTop => at_band(m, wall, c, p),
        What::Place | What::Width | What::Height | What::Sill => at_opening(m, wall, c, p),
    }
}

/// Whether a piece is ripped to an edge of a band, or to another height where that is off.
fn at_band(m: &Measure, wall: &LaidWall, c: &LaidCourse, p: &Piece) -> bool {
    let (y, under) = (m.drawn, m.kind == What::BandBottom);
    let at = |v: f64| (v - y).abs() <= LEVEL;
    let beside = wall.hidden.iter().filter(|h| h.by == HiddenBy::Band).any(|h| {
        let ring = || h.outline.iter().flatten().filter(|q| at(q[1])).map(|q| q[0]);
        let (left, right) = (ring().fold(f64::MAX, f64::min), ring().fold(f64::MIN, f64::max));
        left < p.x1 && right > p.x0
    });
    let course = if under {
        c.bottom < y - LEVEL && y <= c.top + LEVEL
    } else {
        c.bottom <= y + LEVEL && y < c.top - LEVEL
    };
    let ys = || p.outline.iter().map(|q| q[1]);
    let middle = (ys().fold(f64::MAX, f64::min) + ys().fold(f64::MIN, f64::max)) / 2.0;
    beside && course && (middle < y) == under
}

fn at_opening(m: &Measure, wall: &LaidWall, c: &LaidCourse, p: &Piece) -> bool {
    let Some(o) = wall.openings.iter().find(|o| o.id == *m.thing) else { return false };
    let notched = p.notches.iter().any(|n| n.around.iter().any(|f| *f == *m.thing));
    let level = c.bottom < o.head && c.top > o.sill;
    let before = level && (o.left - p.x1).abs() < NEAR;
    let behind = level && (p.x0 - o.right).abs() < NEAR;
    match m.kind {
        What::Place => notched || before || behind,
        What::Width => notched || behind,
        _ => notched,
    }
}
