//! The lengths of a house that are worth taping.

use super::bands::BandShape;
use super::shape::{OpeningShape, WallShape};
use crate::geom::vocabulary::{Point, Xy};
use crate::model::house::{DrawnElevation, House};
use crate::model::ids::WallId;
use crate::model::measure::{Measure, MeasureKind as What, Spoils};

/// Every length, wall by wall, whatever a wall is read from.
pub(super) fn of_house(house: &House) -> Vec<Measure> {
    let mut out = Vec::new();
    for e in &house.elevations {
        for wall in &e.walls {
            let Some(shape) = WallShape::of(wall) else { continue };
            Of { elevation: e, wall: wall.id.as_str(), out: &mut out }.wall(&shape);
        }
    }
    out
}

/// Names of the walls that are not taped: too narrow for two sides of their own.
pub(super) fn left_out(house: &House) -> Vec<WallId> {
    let walls = house.elevations.iter().flat_map(|e| &e.walls);
    walls.filter(|w| WallShape::of(w).is_none()).map(|w| w.id.clone()).collect()
}

struct Of<'a> {
    elevation: &'a DrawnElevation,
    wall: &'a str,
    out: &'a mut Vec<Measure>,
}

impl Of<'_> {
    fn add(&mut self, thing: &str, kind: What, drawn: f64, ends: [Point; 2]) {
        let xy = |p: Point| -> Xy { [p.x, p.y] };
        self.out.push(Measure {
            name: kind.of(thing),
            elevation: self.elevation.name.to_string(),
            wall: self.wall.to_owned(),
            thing: thing.to_owned(),
            kind,
            drawn,
            ends: ends.map(xy),
            spoils: Spoils::default(),
        });
    }

    fn wall(&mut self, s: &WallShape) {
        let wall = self.wall.to_owned();
        let (l, r) = (s.left, s.right);
        let floor = |p: Point| Point::new(p.x, 0.0);
        // Corners may stand at other heights: a width is level.
        let level = |a: Point, b: Point| [a, Point::new(b.x, a.y)];
        self.add(&wall, What::FootWidth, r.foot.x - l.foot.x, level(l.foot, r.foot));
        self.add(&wall, What::LeftFoot, l.foot.y, [floor(l.foot), l.foot]);
        self.add(&wall, What::RightFoot, r.foot.y, [floor(r.foot), r.foot]);
        if l.is_high() && r.is_high() {
            self.add(&wall, What::TopWidth, r.top.x - l.top.x, level(l.top, r.top));
            for (side, kind) in [(l, What::LeftLean), (r, What::RightLean)] {
                if side.straight {
                    self.add(&wall, kind, side.top.x - side.foot.x, [side.foot, side.top]);
                }
            }
        }
        for (side, kind) in [(l, What::LeftHeight), (r, What::RightHeight)] {
            if side.is_high() {
                self.add(&wall, kind, side.top.y - side.foot.y, [side.foot, side.top]);
            }
        }
        if let Some(peak) = s.peak {
            let level = Point::new(peak.x, l.foot.y);
            self.add(&wall, What::PeakPlace, peak.x - l.foot.x, [l.foot, level]);
            self.add(&wall, What::PeakLevel, peak.y, [floor(peak), peak]);
        }
        s.openings.iter().for_each(|o| self.opening(s, o));
        s.bands.iter().for_each(|b| self.band(b));
    }

    /// Levels of a band's edges, taped near its right end.
    fn band(&mut self, b: &BandShape) {
        let at = |share: f64| b.right - share * (b.right - b.left);
        let edges = [(What::BandBottom, b.bottom, at(0.04)), (What::BandTop, b.top, at(0.08))];
        for ((kind, y, x), sided) in edges.into_iter().zip(b.sided) {
            if sided {
                self.add(&b.id, kind, y, [Point::new(x, 0.0), Point::new(x, y)]);
            }
        }
    }

    fn opening(&mut self, s: &WallShape, o: &OpeningShape) {
        let edge = s.left.at(o.sill);
        let at = |x: f64, y: f64| Point::new(x, y);
        let middle = (o.left + o.right) / 2.0;
        // Where stone or a roof cuts an opening nothing of its own is there to be taped, and an arch keeps its shape.
        let [left, right, sill, head] = o.cut.map(|cut| !cut);
        if left {
            self.add(&o.id, What::Place, o.left - edge, [at(edge, o.sill), at(o.left, o.sill)]);
        }
        if right && o.square {
            let ends = [at(o.left, o.sill), at(o.right, o.sill)];
            self.add(&o.id, What::Width, o.right - o.left, ends);
        }
        if head && o.square {
            let ends = [at(middle, o.sill), at(middle, o.head)];
            self.add(&o.id, What::Height, o.head - o.sill, ends);
        }
        if sill {
            self.add(&o.id, What::Sill, o.sill, [at(o.left, 0.0), at(o.left, o.sill)]);
        }
    }
}
