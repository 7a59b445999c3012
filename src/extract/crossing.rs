//! Outlines that cross themselves.

use super::frame::ViewFrame;
use crate::finding::house::HouseFinding;
use crate::finding::{Finding, Findings};
use crate::geom::polygon::sides;
use crate::geom::vocabulary::Point;
use crate::origin::{Origin, round_place};

/// Two sides of a ring that cross, by their crossing's sides' middles: the first met from the left.
pub(super) fn crossing(ring: &[Point]) -> Option<(Point, Point)> {
    let all: Vec<(Point, Point)> = sides(ring).collect();
    let turn = |a: Point, b: Point, c: Point| (b - a).cross(c - a);
    let cross = |i: usize, j: usize| {
        let ((a, b), (c, d)) = (all[i], all[j]);
        let apart = a.y.max(b.y) < c.y.min(d.y) || c.y.max(d.y) < a.y.min(b.y);
        let near = i.abs_diff(j) < 2 || i.abs_diff(j) == all.len() - 1;
        !near
            && !apart
            && turn(a, b, c) * turn(a, b, d) < 0.0
            && turn(c, d, a) * turn(c, d, b) < 0.0
    };
    let (left, right) =
        (|i: usize| all[i].0.x.min(all[i].1.x), |i: usize| all[i].0.x.max(all[i].1.x));
    let mut order: Vec<usize> = (0..all.len()).collect();
    order.sort_by(|i, j| left(*i).total_cmp(&left(*j)).then(i.cmp(j)));
    let mut open: Vec<usize> = Vec::new();
    for i in order {
        open.retain(|j| right(*j) >= left(i));
        if let Some(&j) = open.iter().find(|j| cross(i, **j)) {
            let ((a, b), (c, d)) = (all[i.min(j)], all[i.max(j)]);
            return Some((a.midpoint(b), c.midpoint(d)));
        }
        open.push(i);
    }
    None
}

/// Tells of an outline that crosses itself.
pub(super) fn crossed(
    local: &ViewFrame,
    origin: &Origin,
    p: Point,
    q: Point,
    findings: &mut Findings,
) {
    let (p, q) = (local.source(p), local.source(q));
    // Both as they were drawn, without the grid's noise.
    let inches = local.lines.scale.inches;
    let (p, q) = (round_place(p, inches), round_place(q, inches));
    let kind = HouseFinding::WallCrosses { first: [p.x, p.y], second: [q.x, q.y] };
    findings.push(Finding::new(kind).about(origin).at(p).on(&local.view.name));
}
