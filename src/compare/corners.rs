//! Corners that turn the other way or by another angle: another post.

use super::align::Paired;
use super::changed::{On, Told};
use super::shape::{Shift, differs};
use super::walls::WallPair;
use crate::layout::Layout;
use crate::model::change::{How, Subject};
use crate::model::corner::{Corner, CornerSide, Hand};

/// Tells of corners of walls that stand in both layouts; each once, at the first wall that shows it.
pub(super) fn corners(
    old: &Layout,
    new: &Layout,
    (pairs, walls): (&Paired, &[WallPair]),
    told: &mut Told,
) {
    for is in &new.corners {
        for side in &is.sides {
            let Some(p) = walls.iter().find(|p| {
                let w = &new.elevations[p.new.0].walls[p.new.1];
                w.id == side.wall
            }) else {
                continue;
            };
            let shift = pairs.faces.iter().find(|f| f.new == p.new.0).map(|f| f.shift);
            let was_wall = &old.elevations[p.old.0].walls[p.old.1];
            let Some(shift) = shift else { continue };
            let same = |k: &CornerSide| k.wall == was_wall.id && here(k, side, shift, p.by);
            let Some(was) = old.corners.iter().find(|c| c.sides.iter().any(same)) else { continue };
            if turned(was, is) {
                let on = On { elevation: side.elevation.clone(), wall: Some(side.wall.clone()) };
                let (from, to) = ((was.kind, was.angle), (is.kind, is.angle));
                let how = How::Turned { side: side.side, from, to };
                let names = (Some(was.id.as_str()), Some(is.id.as_str()));
                let place = [side.x, side.low, side.x, side.high];
                told.tell(&on, Subject::Corner, names, how, vec![place]);
                break;
            }
        }
    }
}

/// Whether a side of a corner is this one: the same side of its wall, at heights in common.
fn here(was: &CornerSide, is: &CornerSide, shift: Shift, by: [f64; 2]) -> bool {
    let hand = |h: Hand| if shift.mirror { h.other() } else { h };
    let up = shift.up + by[1];
    hand(was.side) == is.side && was.low + up < is.high && was.high + up > is.low
}

fn turned(was: &Corner, is: &Corner) -> bool {
    let angle = |c: &Corner| c.angle.unwrap_or(90.0);
    was.kind != is.kind || differs(angle(was), angle(is))
}
