//! Rings and boxes, moved from one layout's elevation to the other's and compared.

use crate::geom::boolean::{difference, even_odd, intersection, union};
use crate::geom::polygon::{Polygon, bounds, signed_area, total_area};
use crate::geom::tol::{CUT, ROUNDING};
use crate::geom::vocabulary::{Point, Rect, Xy};

/// Differences of a sixteenth of an inch and less are drawing noise, and pieces that differ by no more are cut alike:
/// no tape tells them. Of our own choosing, no source.
pub(super) const TOLD: f64 = 1.0 / 16.0 + ROUNDING;

/// A box: left, bottom, right, top.
pub(super) type Box4 = [f64; 4];

/// From an elevation of the old layout to the same one of the new.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Shift {
    /// Whether it is drawn the other hand.
    pub(super) mirror: bool,
    /// To the right, after that.
    pub(super) right: f64,
    /// Up.
    pub(super) up: f64,
}

impl Shift {
    pub(super) fn x(&self, x: f64) -> f64 {
        if self.mirror { self.right - x } else { self.right + x }
    }

    pub(super) fn xy(&self, p: &Xy) -> Xy {
        [self.x(p[0]), p[1] + self.up]
    }

    /// A ring that still runs the way it ran.
    pub(super) fn ring(&self, ring: &[Xy]) -> Vec<Xy> {
        let moved = ring.iter().map(|p| self.xy(p));
        if self.mirror { moved.rev().collect() } else { moved.collect() }
    }

    pub(super) fn bounds(&self, b: Box4) -> Box4 {
        let (x0, x1) = (self.x(b[0]), self.x(b[2]));
        [x0.min(x1), b[1] + self.up, x0.max(x1), b[3] + self.up]
    }
}

/// Whether two lengths are told apart.
pub(super) fn differs(a: f64, b: f64) -> bool {
    (a - b).abs() > TOLD
}

pub(super) fn points(ring: &[Xy]) -> Vec<Point> {
    ring.iter().map(|p| Point::new(p[0], p[1])).collect()
}

/// The box round a ring.
pub(super) fn box_of(ring: &[Xy]) -> Box4 {
    let points = points(ring);
    let r = bounds(&points).unwrap_or(Rect::ZERO);
    [r.x0, r.y0, r.x1, r.y1]
}

pub(super) fn size(b: Box4) -> [f64; 2] {
    [b[2] - b[0], b[3] - b[1]]
}

pub(super) fn same_box(a: Box4, b: Box4) -> bool {
    a.iter().zip(b).all(|(a, b)| !differs(*a, b))
}

pub(super) fn same_size(a: Box4, b: Box4) -> bool {
    size(a).iter().zip(size(b)).all(|(a, b)| !differs(*a, b))
}

/// How far the middle of one box stands from that of another, along both axes together.
pub(super) fn apart(a: Box4, b: Box4) -> f64 {
    let middle = |a: Box4, i: usize| f64::midpoint(a[i], a[i + 2]);
    (middle(a, 0) - middle(b, 0)).abs() + (middle(a, 1) - middle(b, 1)).abs()
}

/// What two boxes have in common, of what they cover together.
pub(super) fn common(a: Box4, b: Box4) -> f64 {
    let width = (a[2].min(b[2]) - a[0].max(b[0])).max(0.0);
    let height = (a[3].min(b[3]) - a[1].max(b[1])).max(0.0);
    let area = |b: Box4| size(b)[0] * size(b)[1];
    let (both, all) = (width * height, area(a) + area(b));
    if all - both > 0.0 { both / (all - both) } else { 0.0 }
}

/// The box round two boxes.
pub(super) fn around(a: Box4, b: Box4) -> Box4 {
    [a[0].min(b[0]), a[1].min(b[1]), a[2].max(b[2]), a[3].max(b[3])]
}

fn polygon(ring: &[Xy]) -> Vec<Polygon> {
    vec![Polygon::simple(points(ring)).wound()]
}

/// Area of a ring, square feet.
pub(super) fn square_feet(ring: &[Xy]) -> f64 {
    signed_area(&points(ring)).abs() / 144.0
}

/// What two rings have in common, of what they cover together.
pub(super) fn overlap(a: &[Xy], b: &[Xy]) -> f64 {
    if common(box_of(a), box_of(b)) <= 0.0 {
        return 0.0;
    }
    let (a, b) = (polygon(a), polygon(b));
    let all = total_area(&union(&a, &b));
    if all > 0.0 { total_area(&intersection(&a, &b)) / all } else { 0.0 }
}

/// The boxes of the places where two shapes differ by more than noise; each shape is rings, even-odd.
pub(super) fn unlike(a: &[Vec<Xy>], b: &[Vec<Xy>], least: f64) -> Vec<Box4> {
    let shape = |rings: &[Vec<Xy>]| even_odd(&rings.iter().map(|r| points(r)).collect::<Vec<_>>());
    let (a, b) = (shape(a), shape(b));
    let both = difference(&a, &b).into_iter().chain(difference(&b, &a));
    let wide = both.filter(|p| {
        let r = p.bounds();
        p.area() > least && r.width() > TOLD && r.height() > TOLD
    });
    wide.map(|p| p.bounds()).map(|r| [r.x0, r.y0, r.x1, r.y1]).collect()
}

/// A ring without points that stand on the line between their neighbors, counter-clockwise.
pub(super) fn plain(ring: &[Xy]) -> Vec<Xy> {
    let mut out: Vec<Xy> = Vec::new();
    let n = ring.len();
    for i in 0..n {
        let (a, p, b) = (ring[(i + n - 1) % n], ring[i], ring[(i + 1) % n]);
        let (u, v) = ([p[0] - a[0], p[1] - a[1]], [b[0] - a[0], b[1] - a[1]]);
        let long = v[0].abs().max(v[1].abs()).max(1e-9);
        if ((u[0] * v[1] - u[1] * v[0]) / long).abs() > CUT {
            out.push(p);
        }
    }
    if signed_area(&points(&out)) < 0.0 {
        out.reverse();
    }
    out
}

/// The points of the second ring as they follow those of the first: the turn at which corners lie nearest.
pub(super) fn turned(a: &[Xy], b: &[Xy]) -> Option<Vec<Xy>> {
    if a.len() != b.len() || a.is_empty() {
        return None;
    }
    let n = a.len();
    let off = |k: usize| -> f64 { (0..n).map(|i| apart_points(&a[i], &b[(i + k) % n])).sum() };
    let best = (0..n).min_by(|i, j| off(*i).total_cmp(&off(*j)))?;
    Some((0..n).map(|i| b[(i + best) % n]).collect())
}

fn apart_points(a: &Xy, b: &Xy) -> f64 {
    (a[0] - b[0]).abs() + (a[1] - b[1]).abs()
}

/// By how much a ring is moved as a whole: right and up; `None` where its shape is another one.
pub(super) fn moved(a: &[Xy], b: &[Xy]) -> Option<[f64; 2]> {
    let (ba, bb) = (box_of(a), box_of(b));
    let by = [bb[0] - ba[0], bb[1] - ba[1]];
    let there: Vec<Xy> = a.iter().map(|p| [p[0] + by[0], p[1] + by[1]]).collect();
    let b = turned(&there, b)?;
    let same = there.iter().zip(&b).all(|(p, q)| !differs(p[0], q[0]) && !differs(p[1], q[1]));
    same.then_some(by)
}
