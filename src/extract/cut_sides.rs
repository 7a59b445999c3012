//! Where an opening was cut off: the sides at which what is left of it ends short of what was drawn.

use crate::geom::polygon::sides;
use crate::geom::tol::{SAME, same};
use crate::geom::vocabulary::Point;
use crate::model::house::{DrawnOpening, OpeningSide};

/// The sides at which a part of an opening ends short of the whole.
pub(super) fn cut_sides(whole: &DrawnOpening, part: &DrawnOpening) -> Vec<OpeningSide> {
    let ((left, right, sill, head), (l, r, s, h)) = (whole.sides(), part.sides());
    let short = [
        (OpeningSide::Left, l - left),
        (OpeningSide::Right, right - r),
        (OpeningSide::Sill, s - sill),
        (OpeningSide::Head, head - h),
    ];
    // An outline of another shape may end there by itself, where the rest of it is higher or wider.
    let drawn = |side: OpeningSide| {
        let on = |p: Point| match side {
            OpeningSide::Left => same(p.x, l),
            OpeningSide::Right => same(p.x, r),
            OpeningSide::Sill => same(p.y, s),
            OpeningSide::Head => same(p.y, h),
        };
        let lying: Vec<Point> = sides(&part.outline)
            .filter(|(a, b)| on(*a) && on(*b))
            .map(|(a, b)| a.midpoint(b))
            .collect();
        let points = part.outline.iter().copied().filter(|p| on(*p)).collect();
        // A point alone, as of a triangle, where no side lies.
        let ends = if lying.is_empty() { points } else { lying };
        ends.iter().all(|p| lies_on(&whole.outline, *p))
    };
    let short = short.into_iter().filter(|(_, by)| *by > SAME).map(|(side, _)| side);
    short.filter(|side| !drawn(*side)).collect()
}

/// Whether a place lies on a ring.
fn lies_on(ring: &[Point], p: Point) -> bool {
    sides(ring).any(|(a, b)| {
        let side = b - a;
        let t = ((p - a).dot(side) / side.hypot2().max(SAME * SAME)).clamp(0.0, 1.0);
        p.distance(a + side * t) <= SAME
    })
}
