//! The house folded up: every wall on the plan, stood round the corners that were found. Walls that no corner
//! joins to the rest stand in the plane of their elevation's first one that is.

use std::collections::BTreeMap;

use serde::Serialize;

use super::html::n;
use crate::layout::Layout;
use crate::layout::wall::LaidWall;
use crate::model::corner::{Corner, CornerKind, CornerSide, Hand};
use crate::real::Real;

/// A right angle, degrees.
const SQUARE: f64 = 90.0;

/// A wall stood up: its place and direction on the plan, and what is on it in inches along it and up.
#[derive(Debug, PartialEq, Serialize)]
pub(super) struct Stood {
    /// Its name.
    pub(super) wall: String,
    /// Where its elevation's zero stands on the plan.
    pub(super) from: [f64; 2],
    /// Which way it runs on from there, seen from outside to the right: degrees, counter-clockwise.
    pub(super) turn: f64,
    /// Whether a corner joins it to the rest.
    pub(super) joined: bool,
    /// Its outline.
    outline: Vec<[f64; 2]>,
    /// Openings.
    openings: Vec<Vec<[f64; 2]>>,
    /// Butt lines of its courses: left end, right end, height.
    courses: Vec<[f64; 3]>,
}

/// Where a wall stands: its zero on the plan, and its direction in degrees.
type Place = ([f64; 2], f64);

/// Every wall, stood up.
pub(super) fn stood(layout: &Layout) -> Vec<Stood> {
    let places = places(layout);
    let mut out = Vec::new();
    for e in &layout.elevations {
        let of_face = e.walls.iter().find_map(|w| places.get(w.id.as_str()).copied());
        for w in &e.walls {
            let own = places.get(w.id.as_str()).copied();
            let (from, turn) = own.or(of_face).unwrap_or_default();
            out.push(Stood {
                wall: w.id.to_string(),
                from: from.map(n),
                turn: n(turn),
                joined: own.is_some(),
                outline: rounded(&w.outline),
                openings: w.openings.iter().map(|o| rounded(&o.outline)).collect(),
                courses: courses(w),
            });
        }
    }
    out
}

fn rounded(ring: &[[f64; 2]]) -> Vec<[f64; 2]> {
    ring.iter().map(|p| p.map(n)).collect()
}

fn courses(w: &LaidWall) -> Vec<[f64; 3]> {
    let runs = |c: &crate::layout::course::LaidCourse| {
        let low = c.bottom;
        c.runs.iter().map(move |r| [n(r.x0), n(r.x1), n(low)]).collect::<Vec<_>>()
    };
    w.courses.iter().flat_map(runs).collect()
}

/// Places of the walls that corners join, from the first wall with a corner on.
fn places(layout: &Layout) -> BTreeMap<&str, Place> {
    let mut out: BTreeMap<&str, Place> = BTreeMap::new();
    let joined = |c: &&Corner| c.sides.len() > 1;
    let first = layout.elevations.iter().flat_map(|e| &e.walls).find(|w| {
        layout.corners.iter().filter(joined).any(|c| c.sides.iter().any(|s| s.wall == w.id))
    });
    if let Some(w) = first {
        out.insert(w.id.as_str(), ([0.0, 0.0], 0.0));
    }
    // Each round places at least one wall more.
    loop {
        let before = out.len();
        for c in layout.corners.iter().filter(joined) {
            round_corner(c, &mut out);
        }
        if out.len() == before {
            return out;
        }
    }
}

/// Places the walls of a corner one of whose walls is placed.
fn round_corner<'a>(c: &'a Corner, out: &mut BTreeMap<&'a str, Place>) {
    let known = |s: &&CornerSide| out.contains_key(s.wall.as_str());
    let Some(a) = c.sides.iter().find(known) else { return };
    let (from, turn) = out[a.wall.as_str()];
    let at = along(from, turn, a.x);
    // From one wall to the other the direction turns by what the angle between them leaves of 180 degrees.
    let by = c.angle.map_or(SQUARE, |between| (180.0 - between).abs());
    for b in c.sides.iter().filter(|b| b.wall != a.wall) {
        if out.contains_key(b.wall.as_str()) {
            continue;
        }
        let turned = match (c.kind, a.side) {
            _ if a.side == b.side => 0.0,
            (CornerKind::Outside, Hand::Right) | (CornerKind::Inside, Hand::Left) => by,
            (CornerKind::Outside, Hand::Left) | (CornerKind::Inside, Hand::Right) => -by,
        };
        let turn = (turn + turned).rem_euclid(360.0);
        out.insert(b.wall.as_str(), (along(at, turn, -b.x), turn));
    }
}

/// The place so far along a direction.
fn along([x, y]: [f64; 2], turn: f64, by: f64) -> [f64; 2] {
    let (sine, cosine) = turn.to_radians().sine_cosine();
    [x + by * cosine, y + by * sine]
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::model::corner::Pairing;

    fn corner(kind: CornerKind, angle: Option<f64>, sides: [(&str, Hand, f64); 2]) -> Corner {
        let side = |(wall, side, x): (&str, Hand, f64)| CornerSide {
            elevation: wall.into(),
            wall: wall.into(),
            side,
            x,
            lean: 0.0,
            low: 0.0,
            high: 96.0,
        };
        let sides = sides.map(side).into();
        Corner {
            id: "c".into(),
            kind,
            tag: None,
            by: Pairing::Tag,
            angle,
            low: 0.0,
            high: 96.0,
            sides,
        }
    }

    fn near(a: Place, b: Place) -> bool {
        let off = [a.0[0] - b.0[0], a.0[1] - b.0[1], a.1 - b.1];
        off.iter().all(|v| v.abs() < 1e-9)
    }

    #[test]
    fn walls_stand_round_their_corners() {
        use CornerKind::{Inside, Outside};
        use Hand::{Left, Right};
        // A front of 240 from 0, its right side to the left of a wall whose drawing begins at 10 with that
        // corner: that wall goes back from (240, 0), to the north as the front goes east.
        let mut out = BTreeMap::from([("front", ([0.0, 0.0], 0.0))]);
        let right = corner(Outside, None, [("front", Right, 240.0), ("right", Left, 10.0)]);
        round_corner(&right, &mut out);
        assert!(near(out["right"], ([240.0, -10.0], 90.0)), "{out:?}");
        // At the left an inside corner: the wing before it comes from the south up to (0, 0), seen from the east;
        // there one turns right to go on along the front.
        let left = corner(Inside, None, [("wing", Right, 60.0), ("front", Left, 0.0)]);
        round_corner(&left, &mut out);
        assert!(near(out["wing"], ([0.0, -60.0], 90.0)), "{out:?}");
        // A bay's cheek at 135 degrees turns by 45.
        let bay = corner(Outside, Some(135.0), [("front", Right, 100.0), ("cheek", Left, 0.0)]);
        round_corner(&bay, &mut out);
        assert!(near(out["cheek"], ([100.0, 0.0], 45.0)), "{out:?}");
    }
}
