//! How far from its drawn corners siding ends on one wall.

use crate::geom::tol::LEVEL;
use crate::job::set_backs::SetBacks;
use crate::model::corner::{Corner, CornerKind, Hand};
use crate::model::house::{DrawnEdge, DrawnWall, EdgeKind, House};

/// The corners of a wall.
pub(super) struct WallCorners<'a> {
    wall: &'a DrawnWall,
    corners: &'a [Corner],
    set_backs: SetBacks,
}

impl<'a> WallCorners<'a> {
    /// Of a wall of the house.
    pub(super) fn of(house: &'a House, wall: &'a DrawnWall, set_backs: SetBacks) -> Self {
        WallCorners { wall, corners: &house.corners, set_backs }
    }

    /// How far siding stands back from a side that is a corner; 0 from any other.
    pub(super) fn set_back(&self, e: &DrawnEdge) -> f64 {
        let kind = match e.kind {
            EdgeKind::OutsideCorner => CornerKind::Outside,
            EdgeKind::InsideCorner => CornerKind::Inside,
            _ => return 0.0,
        };
        match self.corner(kind, e) {
            Some(corner) => self.set_backs.at(corner, &self.wall.id),
            None => self.set_backs.square(kind, false),
        }
    }

    /// The corner of the house that a side is.
    fn corner(&self, kind: CornerKind, e: &DrawnEdge) -> Option<&Corner> {
        let hand = if e.to.y > e.from.y { Hand::Right } else { Hand::Left };
        let x = (e.from.x + e.to.x) / 2.0;
        let (low, high) = (e.from.y.min(e.to.y), e.from.y.max(e.to.y));
        let y = (low + high) / 2.0;
        let here = |c: &&Corner| {
            c.kind == kind
                && c.sides.iter().any(|s| {
                    s.wall == self.wall.id
                        && s.side == hand
                        && (s.at(y) - x).abs() <= LEVEL
                        && s.low < high
                        && s.high > low
                })
        };
        self.corners.iter().find(here)
    }
}
