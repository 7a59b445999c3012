//! A wall as drawn and as taped, and where a place of it goes.

use super::shape::{Side, WallShape};
use crate::geom::tol::ROUNDING;
use crate::geom::vocabulary::{Point, Rect};

/// What is drawn within this of an opening is its frame, inches. Of our own choosing, no source.
const FRAME: f64 = 6.0;
/// A stretch that is shorter is not stretched: there is nothing on it, inches. Of our own choosing, no source.
const SHORT: f64 = 1.0;

/// A wall as drawn and as taped.
pub(super) struct Wall {
    pub(super) drawn: WallShape,
    pub(super) taped: WallShape,
    /// Round what is drawn of it, inches of its elevation.
    pub(super) frame: Rect,
}

impl Wall {
    /// Where a place of the wall goes; beside the wall all goes as its side does.
    pub(super) fn moved(&self, p: Point) -> Point {
        let (d, t) = (&self.drawn, &self.taped);
        let share = |x: f64, a: f64, b: f64| (x - a) / (b - a).max(SHORT);
        let soffit = d.soffit(p.x);
        let (a, b) = (d.left.at(p.y), d.right.at(p.y));
        // The heights of the two sides that this one corresponds to.
        let on = |from: Side, to: Side| {
            if !from.is_high() {
                return to.foot.x;
            }
            let t = ((p.y - from.foot.y) / (from.top.y - from.foot.y)).clamp(0.0, 1.0);
            to.foot.x + t * (to.top.x - to.foot.x)
        };
        let (a2, b2) = (on(d.left, t.left), on(d.right, t.right));
        let x = match (d.peak, t.peak) {
            (Some(from), Some(to)) if p.y > soffit => {
                if p.x <= from.x {
                    a2 + share(p.x, a, from.x) * (to.x - a2)
                } else {
                    to.x + share(p.x, from.x, b) * (b2 - to.x)
                }
            }
            _ if p.x < a => p.x - a + a2,
            _ if p.x > b => p.x - b + b2,
            _ => a2 + share(p.x, a, b) * (b2 - a2),
        };
        let foot = d.foot(p.x);
        let (foot2, soffit2) = (t.foot(x), t.soffit(x));
        let y = match (d.peak, t.peak) {
            (Some(from), Some(to)) if p.y > soffit => {
                let (rise, rise2) = (from.y - d.soffit(from.x), to.y - t.soffit(to.x));
                soffit2 + (p.y - soffit) * rise2 / rise
            }
            _ if soffit - foot < SHORT || p.y > soffit => p.y - soffit + soffit2,
            _ if p.y < foot => p.y - foot + foot2,
            _ => foot2 + (p.y - foot) * (soffit2 - foot2) / (soffit - foot),
        };
        Point::new(x, y)
    }

    /// Where a place at an opening goes, which has the place and the size that were taped.
    pub(super) fn at_opening(&self, i: usize, p: Point) -> Point {
        let (d, t) = (&self.drawn.openings[i], &self.taped.openings[i]);
        let along = |v: f64, (a, b): (f64, f64), (a2, b2): (f64, f64)| match v {
            v if v < a => v - a + a2,
            v if v > b => v - b + b2,
            v => a2 + (v - a) / (b - a).max(ROUNDING) * (b2 - a2),
        };
        Point::new(
            along(p.x, (d.left, d.right), (t.left, t.right)),
            along(p.y, (d.sill, d.head), (t.sill, t.head)),
        )
    }

    /// The opening whose frame holds a box.
    pub(super) fn opening_of(&self, b: Rect) -> Option<usize> {
        self.drawn.openings.iter().position(|o| {
            let frame = Rect::new(o.left, o.sill, o.right, o.head).inflate(FRAME, FRAME);
            frame.contains(Point::new(b.x0, b.y0)) && frame.contains(Point::new(b.x1, b.y1))
        })
    }
}
