//! Bands across a wall, frieze, belly and skirt boards, by the levels of their edges where siding ends at them.

use std::collections::BTreeMap;

use crate::geom::polygon::{Polygon, bounds, sides};
use crate::geom::tol::{LEVEL, level};
use crate::geom::vocabulary::Rect;
use crate::model::house::{DrawnWall, HiddenBy};
use crate::model::measure::MeasureKind as What;

/// Boards whose level edges are shorter are no bands, inches. Of our own choosing, no source.
const LONG: f64 = 12.0;

/// A band, inches of its elevation.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct BandShape {
    pub(super) id: String,
    pub(super) left: f64,
    pub(super) right: f64,
    pub(super) bottom: f64,
    pub(super) top: f64,
    /// Whether siding ends there, so that its level is worth taping: bottom, top.
    pub(super) sided: [bool; 2],
    /// Whether its level is known by the tape: bottom, top.
    pub(super) taped: [bool; 2],
}

impl BandShape {
    fn place(&self) -> Rect {
        Rect::new(self.left, self.bottom, self.right, self.top)
    }

    /// How far its edges go that are taped, each with its drawn level.
    pub(super) fn shifts(&self, drawn: &BandShape) -> Vec<(f64, f64)> {
        let both = [(drawn.bottom, self.bottom), (drawn.top, self.top)];
        let known = both.into_iter().zip(self.taped).filter(|(_, taped)| *taped);
        known.map(|((from, to), _)| (from, to - from)).collect()
    }

    /// The same as it was taped. Where one edge is blank the board is as wide as drawn; one that no siding ends at
    /// goes with the wall.
    pub(super) fn as_taped(&self, taped: &BTreeMap<String, f64>) -> BandShape {
        let said = [What::BandBottom, What::BandTop].map(|k| taped.get(&k.of(&self.id)).copied());
        let off = match said {
            [None, None] => return self.clone(),
            [bottom, top] => [bottom.map(|v| v - self.bottom), top.map(|v| v - self.top)],
        };
        let [low, high] = [off[0].or(off[1]), off[1].or(off[0])].map(Option::unwrap_or_default);
        let at = |drawn: f64, off: f64, sided: bool| if sided { drawn + off } else { drawn };
        BandShape {
            bottom: at(self.bottom, low, self.sided[0]),
            top: at(self.top, high, self.sided[1]),
            taped: self.sided,
            ..self.clone()
        }
    }

    /// By how much it lies over another, or is under nothing wide; none where it has its place.
    pub(super) fn clash(&self, others: &[BandShape]) -> Option<f64> {
        let thin = (self.top - self.bottom <= LEVEL).then_some(self.bottom - self.top);
        let over = others.iter().find_map(|o| {
            let both = self.place().intersect(o.place());
            (both.width() > LEVEL && both.height() > LEVEL).then_some(both.height())
        });
        thin.or(over)
    }
}

/// The bands of a wall, from the lowest, that siding ends at. Boards that stand on one another are one band, and so
/// are the parts of one that windows interrupt.
pub(super) fn bands_of(wall: &DrawnWall) -> Vec<BandShape> {
    let drawn = wall.hidden.iter().filter(|h| h.by == HiddenBy::Band);
    let mut all: Vec<Rect> = drawn.filter_map(|h| across(&h.shape)).collect();
    all.sort_by(|a, b| a.y0.total_cmp(&b.y0).then(a.x0.total_cmp(&b.x0)));
    let near = |a: f64, b: f64| (a - b).abs() <= LEVEL;
    let one = |a: &Rect, b: &Rect| {
        let stacked = near(a.y1, b.y0) && a.x0 < b.x1 && b.x0 < a.x1;
        stacked || near(a.y0, b.y0) && near(a.y1, b.y1)
    };
    let mut bands: Vec<Rect> = Vec::new();
    for r in all {
        match bands.iter_mut().find(|b| one(b, &r)) {
            Some(b) => *b = b.union(r),
            None => bands.push(r),
        }
    }
    let shape = |b: Rect| {
        let sided = [ends_at(wall, b, b.y0, false), ends_at(wall, b, b.y1, true)];
        let (left, right, bottom, top) = (b.x0, b.x1, b.y0, b.y1);
        let id = String::new();
        BandShape { id, left, right, bottom, top, sided, taped: [false; 2] }
    };
    let mut out: Vec<BandShape> = bands.into_iter().map(shape).collect();
    out.retain(|b| b.sided != [false; 2]);
    out.iter_mut().zip(1..).for_each(|(b, n): (_, usize)| b.id = format!("{}-B{n}", wall.id));
    out
}

/// The box of a board that lies across its wall, with a level edge under it and over it.
fn across(shape: &Polygon) -> Option<Rect> {
    let b = bounds(&shape.outer)?;
    let has = |y: f64| {
        sides(&shape.outer).any(|(p, q)| {
            (p.y - y).abs() <= LEVEL && (q.y - y).abs() <= LEVEL && (p.x - q.x).abs() >= LONG
        })
    };
    (b.width() > b.height() && has(b.y0) && has(b.y1)).then_some(b)
}

/// Whether siding ends at an edge of a band: siding over it where its side runs to the right.
fn ends_at(wall: &DrawnWall, band: Rect, y: f64, over: bool) -> bool {
    wall.edges.iter().any(|e| {
        let (left, right) = (e.from.x.min(e.to.x), e.from.x.max(e.to.x));
        let on = level(e.to.y - e.from.y) && (e.from.y - y).abs() <= LEVEL;
        on && (e.to.x > e.from.x) == over && left < band.x1 && right > band.x0
    })
}
