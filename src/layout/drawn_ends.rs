//! Sides of a field up to the drawn corners: siding stops short of what stands there, flashing behind it
//! does not.

use super::laid::LaidHouse;
use super::wall::{LaidEdge, LaidFiller, LaidWall};
use crate::geom::tol::LEVEL;
use crate::geom::vocabulary::Xy;
use crate::model::corner::{Corner, CornerKind, Hand};
use crate::model::filler::FilledTo;
use crate::model::house::EdgeKind;
use crate::real::Real;

/// Both ends of a side, `from` and `to`, each run on along the side to the drawn corner where it ends at
/// what stands in one.
pub fn drawn_ends(house: &LaidHouse, wall: &LaidWall, side: &LaidEdge) -> [Xy; 2] {
    [(side.from, side.to), (side.to, side.from)].map(|(end, far)| {
        let Some(x) = corner_at(house, wall, end, far) else { return end };
        let rise = (end[1] - far[1]) / (end[0] - far[0]);
        [x, end[1] + (x - end[0]) * rise]
    })
}

/// The skirt board that a side stands on.
pub fn skirt_under<'a>(wall: &'a LaidWall, side: &LaidEdge) -> Option<&'a LaidFiller> {
    let skirts = wall.fillers.iter().filter(|f| f.between[1].to == FilledTo::Course);
    let (low, high) = (side.from[0].min(side.to[0]), side.from[0].max(side.to[0]));
    let level = (side.from[1] - side.to[1]).abs() <= LEVEL && side.kind == EdgeKind::BareTop;
    let on = |f: &&LaidFiller| {
        let [x0, _, x1, y1] = f.place;
        level && (side.from[1] - y1).abs() <= LEVEL && low >= x0 - LEVEL && high <= x1 + LEVEL
    };
    skirts.filter(|_| level).find(on)
}

/// At how many of its ends a side meets what stands in a corner.
pub fn corner_ends(house: &LaidHouse, wall: &LaidWall, side: &LaidEdge) -> usize {
    let ends = [(side.from, side.to), (side.to, side.from)];
    ends.into_iter().filter(|(end, far)| corner_at(house, wall, *end, *far).is_some()).count()
}

/// Where the drawn corner stands whose post or board a side ends at; none where it ends elsewhere.
fn corner_at(house: &LaidHouse, wall: &LaidWall, end: Xy, far: Xy) -> Option<f64> {
    let out = end[0] - far[0];
    if out.abs() <= LEVEL {
        return None;
    }
    let hand = if out > 0.0 { Hand::Right } else { Hand::Left };
    let meets = |p: Xy| (p[0] - end[0]).hypotenuse(p[1] - end[1]) <= LEVEL;
    let kind = wall.edges.iter().filter(|e| meets(e.from) || meets(e.to)).find_map(corner_kind)?;
    let set_backs = house.job.set_backs();
    let corners = house.corners.iter().filter(|c| c.kind == kind);
    let sides = corners.flat_map(|c| c.sides.iter().map(move |s| (c, s)));
    let sides = sides.filter(|(_, s)| s.wall == wall.id && s.side == hand);
    let past = |x: f64| (x - end[0]) * out.signum();
    let most = |c: &Corner| set_backs.at(c, &wall.id).max(set_backs.most(kind)) + LEVEL;
    let at = sides.map(|(c, s)| (c, s.at(end[1])));
    let near = at.filter(|(c, x)| (0.0..=most(c)).contains(&past(*x))).map(|(_, x)| x);
    near.min_by(|a, b| past(*a).total_cmp(&past(*b)))
}

fn corner_kind(side: &LaidEdge) -> Option<CornerKind> {
    match side.kind {
        EdgeKind::OutsideCorner => Some(CornerKind::Outside),
        EdgeKind::InsideCorner => Some(CornerKind::Inside),
        _ => None,
    }
}
