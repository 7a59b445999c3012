//! How a strip of wall ends on the left and on the right: plumb in a channel or post, or sloped
//! along a rake.

use crate::geom::polygon::{Polygon, sides};
use crate::geom::strip::intervals_at;
use crate::geom::tol::{BESIDE, LEVEL, SAME, same, upright};
use crate::geom::vocabulary::{Point, Vec2};
use crate::model::course::RunEnd;
use crate::model::receiver::{Field, Receiver};

/// Which end of a run.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Side {
    /// At its lower x.
    Left,
    /// At its higher x.
    Right,
}

/// The sides of a shape that bound it on the left or right: no part of the shape lies beyond
/// them at their mid height. Bottom up.
pub(super) fn chain(shape: &Polygon, side: Side) -> Vec<(Point, Point)> {
    let mut out: Vec<(Point, Point)> = sides(&shape.outer)
        .filter(|(a, b)| match side {
            // Counter-clockwise: the left side runs down, the right side up.
            Side::Left => b.y < a.y - SAME,
            Side::Right => b.y > a.y + SAME,
        })
        .map(|(a, b)| if a.y < b.y { (a, b) } else { (b, a) })
        .filter(|(a, b)| {
            let middle = a.midpoint(*b);
            let spans = intervals_at(std::slice::from_ref(shape), middle.y);
            match side {
                Side::Left => spans.first().is_some_and(|s| same(s.0, middle.x)),
                Side::Right => spans.last().is_some_and(|s| same(s.1, middle.x)),
            }
        })
        .collect();
    out.sort_by(|a, b| a.0.y.total_cmp(&b.0.y));
    out
}

/// The sloped part of an end: its rise and its signed sideways move; `None` for a plumb end.
fn lean(shape: &Polygon, side: Side) -> Option<Vec2> {
    let sloped: Vec<Vec2> = chain(shape, side)
        .into_iter()
        .map(|(a, b)| b - a)
        .filter(|v| v.x.abs() > LEVEL / 4.0 && v.x.abs() > v.y.abs() / 200.0)
        .collect();
    let sum = sloped.iter().fold(Vec2::ZERO, |s, v| s + *v);
    (!sloped.is_empty() && sum.y > SAME).then_some(sum)
}

/// Receiver and slope of one end of a run, from the field's sides one gap beyond it, or over or under it
/// by the notch clearance where an opening's side is flatter than 45 degrees.
pub(super) fn end_of(
    clear: &Polygon,
    side: Side,
    field: &Field,
    (gap, notch): (f64, f64),
) -> RunEnd {
    let slope = lean(clear, side).map_or(0.0, |v| v.x / v.y);
    let out = if side == Side::Left { -gap } else { gap };
    let mut parts = chain(clear, side);
    // The side that reaches farthest names the receiver; a sloped end is named by its slope.
    parts.sort_by(|a, b| {
        let key =
            |s: &(Point, Point)| if slope != 0.0 { -(s.1 - s.0).x.abs() } else { -(s.1.y - s.0.y) };
        key(a).total_cmp(&key(b))
    });
    let receiver = parts
        .iter()
        .find_map(|(a, b)| {
            let middle = a.midpoint(*b);
            beside(field, middle + Vec2::new(out, 0.0), (b.y - a.y) / 2.0).or_else(|| {
                // Under what leans away over the end, over what leans under it.
                let is_under = (side == Side::Left) == (b.x > a.x);
                let shift = Vec2::new(0.0, if is_under { notch } else { -notch });
                let is_flat = (b.y - a.y).abs() <= (b.x - a.x).abs();
                if is_flat { of_opening(field, middle + shift) } else { None }
            })
        })
        .unwrap_or(Receiver::JChannel);
    RunEnd { receiver, slope }
}

/// The receiver of the flat side of an opening over or under `p`.
fn of_opening(field: &Field, p: Point) -> Option<Receiver> {
    let flat = field.edges.iter().filter(|e| e.opening.is_some()).filter(|e| {
        let (run, rise) = ((e.from.x - e.to.x).abs(), (e.from.y - e.to.y).abs());
        rise > SAME && rise <= run
    });
    flat.filter(|e| {
        let (low, high) = (e.from.x.min(e.to.x), e.from.x.max(e.to.x));
        let y = e.from.y + (p.x - e.from.x) / (e.to.x - e.from.x) * (e.to.y - e.from.y);
        p.x >= low - SAME && p.x <= high + SAME && (y - p.y).abs() < BESIDE
    })
    .map(|e| e.receiver)
    .next()
}

/// The receiver of the plumb or sloped field side through `p`, or past it by as much as one leans that panels
/// are cut square at in `half` of what ends there.
fn beside(field: &Field, p: Point, half: f64) -> Option<Receiver> {
    field
        .edges
        .iter()
        .filter(|e| (e.from.y - e.to.y).abs() > SAME)
        .find(|e| {
            let (low, high) = if e.from.y < e.to.y { (e.from, e.to) } else { (e.to, e.from) };
            p.y >= low.y - SAME && p.y <= high.y + SAME && {
                let lean = (high.x - low.x) / (high.y - low.y);
                let x = low.x + (p.y - low.y) * lean;
                let stands = upright(high.x - low.x, high.y - low.y);
                let stepped = if stands { lean.abs() * half } else { 0.0 };
                (x - p.x).abs() < BESIDE + stepped
            }
        })
        .map(|e| e.receiver)
}
