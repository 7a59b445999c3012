//! A wall by the places that are taped.

use super::bands::{BandShape, bands_of};
use crate::geom::polygon::is_level_rectangle;
use crate::geom::tol::{LEVEL, SAME, level, plumb};
use crate::geom::vocabulary::{Point, Ring, Vec2};
use crate::model::house::{DrawnWall, OpeningSide};

/// Vertices within this of the outermost one are on that side, inches: no side leans more in a drawing that is
/// built from. Of our own choosing, no source.
pub(super) const SIDE: f64 = 3.0;
/// A side lower than this is a point, as the foot of a rake, inches. Of our own choosing, no source.
const LOW: f64 = 6.0;

/// The places of a wall, inches of its elevation.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct WallShape {
    pub(super) left: Side,
    pub(super) right: Side,
    pub(super) peak: Option<Point>,
    pub(super) openings: Vec<OpeningShape>,
    pub(super) bands: Vec<BandShape>,
}

/// One side of a wall.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Side {
    pub(super) foot: Point,
    pub(super) top: Point,
    /// Whether it runs from foot to top in one line: no plumb line is held to one that steps.
    pub(super) straight: bool,
}

/// The box of an opening.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct OpeningShape {
    pub(super) id: String,
    pub(super) left: f64,
    pub(super) right: f64,
    pub(super) sill: f64,
    pub(super) head: f64,
    /// Whether an area without siding cuts it there: left, right, sill, head.
    pub(super) cut: [bool; 4],
    /// Whether it is a rectangle: any other keeps its shape, and goes as a whole.
    pub(super) square: bool,
}

impl Side {
    /// Whether it is a side rather than a point.
    pub(super) fn is_high(&self) -> bool {
        self.top.y - self.foot.y >= LOW
    }

    /// Where it is at a height.
    pub(super) fn at(&self, y: f64) -> f64 {
        if !self.is_high() {
            return self.foot.x;
        }
        let t = ((y - self.foot.y) / (self.top.y - self.foot.y)).clamp(0.0, 1.0);
        self.foot.x + t * (self.top.x - self.foot.x)
    }
}

/// The outline of a wall without places in the midst of a slope, which go with it: one near the foot of a rake is not
/// the top of the wall's side.
pub(super) fn outline_of(wall: &DrawnWall) -> Ring {
    let (ring, n) = (&wall.outline, wall.outline.len());
    let slopes = |v: Vec2| !level(v.y) && !plumb(v.x);
    let stays = |i: &usize| {
        let (before, at, after) = (ring[(i + n - 1) % n], ring[*i], ring[(i + 1) % n]);
        let (u, v, chord) = (at - before, after - at, after - before);
        let goes_on = u.cross(chord).abs() <= SAME * chord.hypot() && u.dot(v) > 0.0;
        !(goes_on && (slopes(u) || slopes(v)))
    };
    (0..n).filter(stays).map(|i| ring[i]).collect()
}

impl WallShape {
    /// The places of a drawn wall; none of one without width.
    pub(super) fn of(wall: &DrawnWall) -> Option<Self> {
        let outline = outline_of(wall);
        let xs = || outline.iter().map(|p| p.x);
        let (x0, x1) = (xs().reduce(f64::min)?, xs().reduce(f64::max)?);
        let side = |x: f64| -> Option<Side> {
            let on = || outline.iter().filter(|p| (p.x - x).abs() <= SIDE).copied();
            let foot = on().reduce(|a, b| if b.y < a.y { b } else { a })?;
            let top = on().reduce(|a, b| if b.y > a.y { b } else { a })?;
            let off = |p: Point| (top - foot).cross(p - foot).abs() / foot.distance(top).max(SIDE);
            Some(Side { foot, top, straight: on().all(|p| off(p) <= LEVEL) })
        };
        let (left, right) = (side(x0)?, side(x1)?);
        if x1 - x0 <= 2.0 * SIDE {
            return None;
        }
        let peak = outline.iter().copied().reduce(|a, b| if b.y > a.y { b } else { a })?;
        let peak = (peak.y > left.top.y.max(right.top.y) + LOW).then_some(peak);
        let openings = wall.openings.iter().filter_map(|o| {
            let b = crate::geom::polygon::bounds(&o.outline)?;
            Some(OpeningShape {
                id: o.id.to_string(),
                left: b.x0,
                right: b.x1,
                sill: b.y0,
                head: b.y1,
                cut: [OpeningSide::Left, OpeningSide::Right, OpeningSide::Sill, OpeningSide::Head]
                    .map(|side| !o.ends_at(side)),
                square: is_level_rectangle(&o.outline),
            })
        });
        let mut openings: Vec<OpeningShape> = openings.collect();
        openings.sort_by(|a, b| a.left.total_cmp(&b.left).then(a.sill.total_cmp(&b.sill)));
        Some(WallShape { left, right, peak, openings, bands: bands_of(wall) })
    }
}
