//! Openings of an elevation, paired by place and size.

use std::slice::from_ref;

use super::changed::{On, Told};
use super::pairing::pairs;
use super::shape::{
    Box4, Shift, around, differs, plain, same_box, same_size, size, square_feet, unlike,
};
use crate::geom::vocabulary::Xy;
use crate::layout::wall::LaidOpening;
use crate::model::change::{How, Subject};
use crate::model::house::OpeningKind;
use crate::model::ids::WallId;

/// An opening as the new elevation shows it.
pub(super) struct Hole<'a> {
    opening: &'a LaidOpening,
    wall: WallId,
    at: Box4,
    outline: Vec<Xy>,
}

impl<'a> Hole<'a> {
    /// An opening of the old layout where it would stand in the new one.
    pub(super) fn was(o: &'a LaidOpening, wall: &WallId, shift: Shift, by: [f64; 2]) -> Self {
        let there = |b: Box4| [b[0] + by[0], b[1] + by[1], b[2] + by[0], b[3] + by[1]];
        let outline = shift.ring(&o.outline);
        Hole {
            opening: o,
            wall: wall.clone(),
            at: there(shift.bounds([o.left, o.sill, o.right, o.head])),
            outline: outline.iter().map(|p| [p[0] + by[0], p[1] + by[1]]).collect(),
        }
    }

    /// An opening of the new layout.
    pub(super) fn is(o: &'a LaidOpening, wall: &WallId) -> Self {
        let (at, outline) = ([o.left, o.sill, o.right, o.head], o.outline.clone());
        Hole { opening: o, wall: wall.clone(), at, outline }
    }
}

/// Whether two kinds are of one sort: a door of any width.
fn sort(kind: OpeningKind) -> u8 {
    match kind {
        OpeningKind::Window => 0,
        OpeningKind::Door | OpeningKind::OverheadDoor => 1,
        _ => 2,
    }
}

/// Tells what became of the openings of one elevation.
pub(super) fn openings(old: &[Hole], new: &[Hole], on: &On, told: &mut Told) {
    let boxes = |all: &[Hole]| all.iter().map(|h| h.at).collect::<Vec<_>>();
    let like = |i: usize, j: usize| sort(old[i].opening.kind) == sort(new[j].opening.kind);
    let found = pairs(&boxes(old), &boxes(new), &like);
    let on_wall = |h: &Hole| On { wall: Some(h.wall.clone()), ..on.clone() };
    for (i, j) in found.both {
        let (was, is) = (&old[i], &new[j]);
        let names = (Some(was.opening.id.as_str()), Some(is.opening.id.as_str()));
        let place = vec![around(was.at, is.at)];
        for how in between(was, is) {
            told.tell(&on_wall(is), Subject::Opening, names, how, place.clone());
            told.opening(is.opening.kind);
        }
    }
    for h in found.gone.into_iter().map(|i| &old[i]) {
        let size = Some(size(h.at));
        let how = How::Removed { size, openings: 0 };
        let names = (Some(h.opening.id.as_str()), None);
        told.tell(&on_wall(h), Subject::Opening, names, how, vec![h.at]);
        told.opening(h.opening.kind);
        told.gone(h.outline.clone());
    }
    for h in found.added.into_iter().map(|j| &new[j]) {
        let size = Some(size(h.at));
        let how = How::Added { size, openings: 0 };
        let names = (None, Some(h.opening.id.as_str()));
        told.tell(&on_wall(h), Subject::Opening, names, how, vec![h.at]);
        told.opening(h.opening.kind);
    }
}

/// How an opening differs from what it was.
fn between(was: &Hole, is: &Hole) -> Vec<How> {
    let mut out = Vec::new();
    let (a, b) = (was.at, is.at);
    let (from, to) = (was.opening.kind, is.opening.kind);
    if !same_size(a, b) {
        let sides = [b[0] - a[0], b[1] - a[1], b[2] - a[2], b[3] - a[3]];
        out.push(How::Resized { from: size(a), to: size(b), sides: sides.map(told_side) });
    } else if !same_box(a, b) {
        out.push(How::Moved { right: told_side(b[0] - a[0]), up: told_side(b[1] - a[1]) });
    } else if is_shaped(was) || is_shaped(is) {
        let (old, new) = (from_ref(&was.outline), from_ref(&is.outline));
        if !unlike(old, new, 4.0).is_empty() {
            let (from, to) = (square_feet(&was.outline), square_feet(&is.outline));
            out.push(How::Reshaped { from, to, by: None });
        }
    }
    // A door that grew into an overhead door is told by its size.
    let same_size = out.iter().all(|h| !matches!(h, How::Resized { .. }));
    if from != to && (same_size || sort(from) != sort(to)) {
        out.push(How::Kind { from, to });
    }
    out
}

fn is_shaped(h: &Hole) -> bool {
    plain(&h.outline).len() != 4
}

/// Noise is no move.
fn told_side(by: f64) -> f64 {
    if differs(by, 0.0) { by } else { 0.0 }
}
