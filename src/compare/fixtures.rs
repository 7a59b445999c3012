//! What else stands on a wall and before it: fixtures, bands, joints of the building, roofs and stone.

use super::changed::{On, Told};
use super::pairing::pairs;
use super::shape::{Box4, Shift, around, box_of, differs, same_box, same_size, size, unlike};
use crate::geom::boolean::{even_odd, intersection};
use crate::geom::polygon::{Polygon, total_area};
use crate::geom::vocabulary::{Point, Xy};
use crate::layout::wall::{LaidObstacle, LaidWall};
use crate::model::change::{How, Subject};
use crate::model::house::HiddenBy;

/// A wall of the old layout and the same of the new, with how places go over.
#[derive(Clone, Copy)]
pub(super) struct Both<'a> {
    pub(super) old: &'a LaidWall,
    pub(super) new: &'a LaidWall,
    pub(super) shift: Shift,
    pub(super) by: [f64; 2],
}

impl Both<'_> {
    /// A box of the old wall on the new one.
    fn there(&self, b: Box4) -> Box4 {
        let b = self.shift.bounds(b);
        [b[0] + self.by[0], b[1] + self.by[1], b[2] + self.by[0], b[3] + self.by[1]]
    }

    fn ring(&self, ring: &[Xy]) -> Vec<Xy> {
        let there = self.shift.ring(ring).into_iter();
        there.map(|p| [p[0] + self.by[0], p[1] + self.by[1]]).collect()
    }
}

/// Tells what became of all of it.
pub(super) fn of_wall(both: Both, on: &On, told: &mut Told) {
    fixtures(both, on, told);
    bands(both, on, told);
    joints(both, on, told);
    in_front(both, on, told);
}

fn fixtures(both: Both, on: &On, told: &mut Told) {
    let drawn = |o: &LaidObstacle| {
        let b = box_of(&o.outline);
        let by = o.moved.unwrap_or(0.0);
        [b[0], b[1] - by, b[2], b[3] - by]
    };
    let (old, new) = (&both.old.obstacles, &both.new.obstacles);
    let was: Vec<Box4> = old.iter().map(|o| both.there(drawn(o))).collect();
    let is: Vec<Box4> = new.iter().map(drawn).collect();
    let found = pairs(&was, &is, &|_, _| true);
    for (i, j) in found.both {
        let names = (Some(old[i].id.as_str()), Some(new[j].id.as_str()));
        let place = vec![around(was[i], is[j])];
        if let Some(how) = between(was[i], is[j]) {
            told.tell(on, Subject::Fixture, names, how, place.clone());
        }
        if old[i].mounting_block != new[j].mounting_block {
            let how = How::Block { now: new[j].mounting_block };
            told.tell(on, Subject::Fixture, names, how, place);
        }
    }
    for i in found.gone {
        let how = How::Removed { size: Some(size(was[i])), openings: 0 };
        told.tell(on, Subject::Fixture, (Some(&old[i].id), None), how, vec![was[i]]);
        told.gone(ring_of(was[i]));
    }
    for j in found.added {
        let how = How::Added { size: Some(size(is[j])), openings: 0 };
        told.tell(on, Subject::Fixture, (None, Some(&new[j].id)), how, vec![is[j]]);
    }
}

/// How a thing in a box differs.
fn between(a: Box4, b: Box4) -> Option<How> {
    if same_box(a, b) {
        return None;
    }
    if same_size(a, b) {
        return Some(How::Moved { right: b[0] - a[0], up: b[1] - a[1] });
    }
    let sides = [b[0] - a[0], b[1] - a[1], b[2] - a[2], b[3] - a[3]];
    Some(How::Resized { from: size(a), to: size(b), sides })
}

fn ring_of(b: Box4) -> Vec<Xy> {
    vec![[b[0], b[1]], [b[2], b[1]], [b[2], b[3]], [b[0], b[3]]]
}

/// Bands by the heights they run between: where they end depends on openings and on the wall.
fn bands(both: Both, on: &On, told: &mut Told) {
    let heights = |boxes: Vec<Box4>| {
        let mut out: Vec<Box4> = Vec::new();
        for b in boxes {
            match out.iter_mut().find(|o| !differs(o[1], b[1]) && !differs(o[3], b[3])) {
                Some(one) => *one = around(*one, b),
                None => out.push(b),
            }
        }
        out
    };
    let was = heights(both.old.bands.iter().map(|r| both.there(box_of(r))).collect());
    let is = heights(both.new.bands.iter().map(|r| box_of(r)).collect());
    // As wide as one another, so that heights alone count.
    let wide = |b: &Box4| [0.0, b[1], 1.0, b[3]];
    let level = |all: &[Box4]| all.iter().map(wide).collect::<Vec<_>>();
    let found = pairs(&level(&was), &level(&is), &|_, _| true);
    for (i, j) in found.both {
        if let Some(how) = between(wide(&was[i]), wide(&is[j])) {
            told.tell(on, Subject::Band, (None, None), how, vec![around(was[i], is[j])]);
        }
    }
    for b in found.gone.into_iter().map(|i| was[i]) {
        let how = How::Removed { size: Some(size(b)), openings: 0 };
        told.tell(on, Subject::Band, (None, None), how, vec![b]);
        told.gone(ring_of(b));
    }
    for b in found.added.into_iter().map(|j| is[j]) {
        let how = How::Added { size: Some(size(b)), openings: 0 };
        told.tell(on, Subject::Band, (None, None), how, vec![b]);
    }
}

fn joints(both: Both, on: &On, told: &mut Told) {
    let wall = box_of(both.new.drawn());
    let line = |x: f64| [x, wall[1], x, wall[3]];
    let was: Vec<Box4> =
        both.old.joints.iter().map(|x| line(both.shift.x(*x) + both.by[0])).collect();
    let is: Vec<Box4> = both.new.joints.iter().map(|x| line(*x)).collect();
    let found = pairs(&was, &is, &|_, _| true);
    for (i, j) in found.both {
        let right = is[j][0] - was[i][0];
        if differs(right, 0.0) {
            let how = How::Moved { right, up: 0.0 };
            told.tell(on, Subject::MovementJoint, (None, None), how, vec![around(was[i], is[j])]);
        }
    }
    for b in found.gone.into_iter().map(|i| was[i]) {
        let how = How::Removed { size: None, openings: 0 };
        told.tell(on, Subject::MovementJoint, (None, None), how, vec![b]);
    }
    for b in found.added.into_iter().map(|j| is[j]) {
        let how = How::Added { size: None, openings: 0 };
        told.tell(on, Subject::MovementJoint, (None, None), how, vec![b]);
    }
}

/// What hides parts of a wall, within what is wall in both layouts; bands and joints are told by themselves.
fn in_front(both: Both, on: &On, told: &mut Told) {
    for by in [HiddenBy::Roof, HiddenBy::NotSided, HiddenBy::OtherZone] {
        let of = |w: &LaidWall| {
            let all = w.hidden.iter().filter(|h| h.by == by);
            all.flat_map(|h| h.outline.clone()).collect::<Vec<_>>()
        };
        let was: Vec<Vec<Xy>> = of(both.old).iter().map(|r| both.ring(r)).collect();
        let is = of(both.new);
        if was.is_empty() && is.is_empty() {
            continue;
        }
        let walls = [both.ring(both.old.drawn()), both.new.drawn().to_vec()];
        let (was, is) = (within(&was, &walls), within(&is, &walls));
        let places = unlike(&rings(&was), &rings(&is), 36.0);
        if !places.is_empty() {
            let feet = |p: &[Polygon]| total_area(p) / 144.0;
            let how = How::Reshaped { from: feet(&was), to: feet(&is), by: Some(by) };
            told.tell(on, Subject::InFront, (None, None), how, places);
        }
    }
}

/// The part of a shape within both walls.
fn within(shape: &[Vec<Xy>], walls: &[Vec<Xy>; 2]) -> Vec<Polygon> {
    let point = |p: &Xy| Point::new(p[0], p[1]);
    let whole = |rings: &[Vec<Xy>]| {
        even_odd(&rings.iter().map(|r| r.iter().map(point).collect()).collect::<Vec<_>>())
    };
    let both = intersection(&whole(&walls[..1]), &whole(&walls[1..]));
    intersection(&whole(shape), &both)
}

fn rings(shapes: &[Polygon]) -> Vec<Vec<Xy>> {
    let all = shapes.iter().flat_map(Polygon::rings);
    all.map(|r| r.iter().map(|p| [p.x, p.y]).collect()).collect()
}
