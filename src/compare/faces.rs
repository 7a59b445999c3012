//! Elevations against one another: titles, the floor line, walls and all that stands on them.

use super::align::{Face, Paired};
use super::changed::{On, Told};
use super::fixtures::{self, Both};
use super::grade;
use super::openings::{self, Hole};
use super::shape::{Shift, around, box_of, differs, moved, size};
use super::sides;
use super::walls::{self, WallPair};
use crate::layout::Layout;
use crate::layout::wall::{LaidElevation, LaidWall};
use crate::model::change::{How, Subject};

/// The walls of two layouts that are one.
pub(super) fn pairs_of_walls(old: &Layout, new: &Layout, pairs: &Paired) -> Vec<WallPair> {
    let of = |f: &Face| {
        let both = (&old.elevations[f.old], &new.elevations[f.new]);
        walls::pairs(both, (f.old, f.new), f.shift)
    };
    pairs.faces.iter().flat_map(of).collect()
}

/// Tells what became of every elevation.
pub(super) fn faces(old: &Layout, new: &Layout, pairs: &Paired, told: &mut Told) {
    for f in &pairs.faces {
        face((&old.elevations[f.old], &new.elevations[f.new]), f, told);
    }
    for (i, e) in old.elevations.iter().enumerate() {
        if !pairs.faces.iter().any(|f| f.old == i) {
            let how = How::Removed { size: extent(e), openings: openings_of(&e.walls) };
            told.tell(&on(e), Subject::Elevation, (Some(&e.name), None), how, Vec::new());
        }
    }
    for (j, e) in new.elevations.iter().enumerate() {
        if !pairs.faces.iter().any(|f| f.new == j) {
            let how = How::Added { size: extent(e), openings: openings_of(&e.walls) };
            let places = e.walls.iter().map(|w| box_of(w.drawn())).reduce(around);
            let places = places.into_iter().collect();
            told.tell(&on(e), Subject::Elevation, (None, Some(&e.name)), how, places);
        }
    }
}

fn on(e: &LaidElevation) -> On {
    On { elevation: e.name.clone(), wall: None }
}

fn on_wall(on: &On, w: &LaidWall) -> On {
    On { wall: Some(w.id.clone()), ..on.clone() }
}

/// Width and height of an elevation's walls together.
fn extent(e: &LaidElevation) -> Option<[f64; 2]> {
    e.walls.iter().map(|w| box_of(w.drawn())).reduce(around).map(size)
}

fn openings_of(walls: &[LaidWall]) -> usize {
    walls.iter().map(|w| w.openings.len()).sum()
}

/// Tells what became of one elevation.
fn face((old, new): (&LaidElevation, &LaidElevation), f: &Face, told: &mut Told) {
    let here = on(new);
    let wide = new.walls.iter().map(|w| box_of(w.drawn())).reduce(around).unwrap_or_default();
    // A house drawn the other hand has its sides the other way round.
    let titles = [&old.name, &new.name].map(|n| n.trim().to_uppercase());
    if titles[0] != titles[1] && !f.shift.mirror {
        let how = How::Renamed { from: old.name.to_string(), to: new.name.to_string() };
        told.tell(&here, Subject::Elevation, (Some(&old.name), Some(&new.name)), how, Vec::new());
    }
    // Where no floor line is drawn, heights are counted from what is lowest, and tell nothing.
    if differs(f.shift.up, 0.0) && !old.level_assumed && !new.level_assumed {
        let how = How::Raised { up: -f.shift.up };
        told.tell(&here, Subject::FloorLine, (None, None), how, vec![[wide[0], 0.0, wide[2], 0.0]]);
    }
    let pairs = walls::pairs((old, new), (f.old, f.new), f.shift);
    walls_of((old, new), (f.shift, &pairs), &here, told);
    holes((old, new), (f.shift, &pairs), &here, told);
    for p in &pairs {
        let (was, is) = (&old.walls[p.old.1], &new.walls[p.new.1]);
        let both = Both { old: was, new: is, shift: f.shift, by: p.by };
        fixtures::of_wall(both, &on_wall(&here, is), told);
    }
    grade::grade((old, new), f.shift, (wide[0], wide[2]), &here, told);
}

/// Tells what became of the walls of an elevation.
fn walls_of(
    (old, new): (&LaidElevation, &LaidElevation),
    (shift, pairs): (Shift, &[WallPair]),
    here: &On,
    told: &mut Told,
) {
    for (_, w) in old.walls.iter().enumerate().filter(|(i, _)| !pairs.iter().any(|p| p.old.1 == *i))
    {
        let ring = shift.ring(w.drawn());
        let place = box_of(&ring);
        let how = How::Removed { size: Some(size(place)), openings: w.openings.len() };
        told.tell(&on_wall(here, w), Subject::Wall, (Some(&w.id), None), how, vec![place]);
        told.gone(ring);
    }
    for (j, w) in new.walls.iter().enumerate() {
        let on = on_wall(here, w);
        let place = box_of(w.drawn());
        let Some(p) = pairs.iter().find(|p| p.new.1 == j) else {
            let how = How::Added { size: Some(size(place)), openings: w.openings.len() };
            told.tell(&on, Subject::Wall, (None, Some(&w.id)), how, vec![place]);
            continue;
        };
        let was = &old.walls[p.old.1];
        let names = (Some(was.id.as_str()), Some(w.id.as_str()));
        if p.by.iter().any(|v| differs(*v, 0.0)) {
            let [right, up] = p.by;
            told.tell(&on, Subject::Wall, names, How::Moved { right, up }, vec![place]);
            continue;
        }
        let ring = shift.ring(was.drawn());
        if moved(&ring, w.drawn()).is_none_or(|by| by.iter().any(|v| differs(*v, 0.0))) {
            for (how, places) in sides::changes(&ring, w.drawn()) {
                told.tell(&on, Subject::Wall, names, how, places);
            }
        }
    }
}

/// Tells what became of the openings of walls that stand in both layouts.
fn holes(
    (old, new): (&LaidElevation, &LaidElevation),
    (shift, pairs): (Shift, &[WallPair]),
    here: &On,
    told: &mut Told,
) {
    let mut was = Vec::new();
    let mut is = Vec::new();
    for p in pairs {
        let (a, b) = (&old.walls[p.old.1], &new.walls[p.new.1]);
        was.extend(a.openings.iter().map(|o| Hole::was(o, &a.id, shift, p.by)));
        is.extend(b.openings.iter().map(|o| Hole::is(o, &b.id)));
    }
    openings::openings(&was, &is, here, told);
}
