//! The lengths of a house that are worth taping.

use super::shape::{OpeningShape, WallShape};
use crate::geom::vocabulary::{Point, Xy};
use crate::model::house::{DrawnElevation, House, WallWay};
use crate::model::measure::{Measure, MeasureKind as What, Spoils};

/// Every length, wall by wall; of walls that are read from closed
/// outlines, which can be moved.
pub(super) fn of_house(house: &House) -> Vec<Measure> {
    let mut out = Vec::new();
    for e in &house.elevations {
        for wall in e.walls.iter().filter(|w| w.way == WallWay::Outline) {
            let Some(shape) = WallShape::of(wall) else { continue };
            Of { elevation: e, wall: wall.id.as_str(), out: &mut out }.wall(&shape);
        }
    }
    out
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
        self.add(&wall, What::FootWidth, r.foot.x - l.foot.x, [l.foot, r.foot]);
        self.add(&wall, What::LeftFoot, l.foot.y, [floor(l.foot), l.foot]);
        self.add(&wall, What::RightFoot, r.foot.y, [floor(r.foot), r.foot]);
        if l.is_high() && r.is_high() {
            self.add(&wall, What::TopWidth, r.top.x - l.top.x, [l.top, r.top]);
            self.add(&wall, What::LeftLean, l.top.x - l.foot.x, [l.foot, l.top]);
            self.add(&wall, What::RightLean, r.top.x - r.foot.x, [r.foot, r.top]);
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
    }

    fn opening(&mut self, s: &WallShape, o: &OpeningShape) {
        let edge = s.left.at(o.sill);
        let at = |x: f64, y: f64| Point::new(x, y);
        let middle = (o.left + o.right) / 2.0;
        self.add(&o.id, What::Place, o.left - edge, [at(edge, o.sill), at(o.left, o.sill)]);
        self.add(&o.id, What::Width, o.right - o.left, [at(o.left, o.sill), at(o.right, o.sill)]);
        self.add(&o.id, What::Height, o.head - o.sill, [at(middle, o.sill), at(middle, o.head)]);
        self.add(&o.id, What::Sill, o.sill, [at(o.left, 0.0), at(o.left, o.sill)]);
    }
}
