//! Trim laid along a side: how much of the side it leaves bare.

use super::scan::{joined, length, without};
use super::tolerance::NEAR;
use crate::geom::vocabulary::Xy;
use crate::model::trim::TrimPiece;
use crate::real::Real;

/// Distance of two places.
pub(super) fn reach(a: Xy, b: Xy) -> f64 {
    (a[0] - b[0]).hypotenuse(a[1] - b[1])
}

/// Length of the side from `a` to `b` along which none of `pieces` lies.
pub(super) fn bare(a: Xy, b: Xy, pieces: &[&TrimPiece]) -> f64 {
    let whole = reach(a, b);
    if whole <= 0.0 {
        return 0.0;
    }
    let along = [(b[0] - a[0]) / whole, (b[1] - a[1]) / whole];
    let place = |p: Xy| {
        let d = [p[0] - a[0], p[1] - a[1]];
        (d[0] * along[0] + d[1] * along[1], d[0] * along[1] - d[1] * along[0])
    };
    let laid = pieces.iter().filter_map(|t| {
        let (p, q) = (place(t.from), place(t.to));
        let (p, q) = if p.0 <= q.0 { (p, q) } else { (q, p) };
        // A long piece may run on past a short side that leans a hair: what counts is where it lies beside.
        let off = |at: f64| {
            let share = if q.0 > p.0 { (at - p.0) / (q.0 - p.0) } else { 0.0 };
            p.1 + share * (q.1 - p.1)
        };
        let (from, to) = (p.0.max(0.0), q.0.min(whole));
        (from < to && off(from).abs() < NEAR && off(to).abs() < NEAR).then_some((p.0, q.0))
    });
    length(&without(&vec![(0.0, whole)], &joined(laid.collect())))
}
