//! What siding stands on and what takes its ends: sheathing, framing, channels, boards.

use super::section::{Section, corners};
use super::siding::Depths;
use crate::annotate::style::Ink;
use crate::geom::vocabulary::{Point, Rect};
use crate::job::Job;

/// How far a nail flange reaches, inches: for the look alone.
const FLANGE: f64 = 1.4;
/// Thickness of a trim board, inches: a nominal inch, for the look alone.
pub(super) const BOARD: f64 = 0.75;

/// A wall cut across between two heights: framing, sheathing, barrier, other layers. Returns a point of
/// the weather barrier to point at.
pub(super) fn upright(s: &mut Section, job: &Job, (low, high): (f64, f64)) -> Point {
    let t = job.fasteners.sheathing;
    let (f, back) = (s.frame, Depths::of(job).back);
    s.block(Ink::Ground, Ink::Opening, Rect::new(f.x0 - 1.0, low, -t, high));
    s.block(Ink::Offcut, Ink::Opening, Rect::new(-t, low, 0.0, high));
    s.line(Ink::Barrier, [Point::new(0.03, low), Point::new(0.03, high)]);
    if back > 0.0 {
        s.block(Ink::Ground, Ink::Face, Rect::new(0.0, low, back, high));
    }
    Point::new(0.03, low.max(f.y0) * 0.5 + high.min(f.y1) * 0.5)
}

/// The same cut along, from one place to another; `at` puts (along, out) into the section.
pub(super) fn level(
    s: &mut Section,
    job: &Job,
    (start, end): (f64, f64),
    at: &impl Fn(f64, f64) -> Point,
) {
    let (t, back) = (job.fasteners.sheathing, Depths::of(job).back);
    s.area(Ink::Offcut, Ink::Opening, &[at(start, -t), at(end, -t), at(end, 0.0), at(start, 0.0)]);
    s.line(Ink::Barrier, [at(start, 0.03), at(end, 0.03)]);
    if back > 0.0 {
        let ring = [at(start, 0.0), at(end, 0.0), at(end, back), at(start, back)];
        s.area(Ink::Ground, Ink::Face, &ring);
    }
}

/// A channel whose pocket's bottom stands at `bottom` and that opens along the siding; `face` is what
/// shows of it. Returns a point of it.
pub(super) fn channel(
    s: &mut Section,
    d: Depths,
    bottom: f64,
    face: f64,
    at: &impl Fn(f64, f64) -> Point,
) -> Point {
    let path = [
        at(bottom + FLANGE.max(face + 0.4), d.back + 0.05),
        at(bottom, d.back + 0.05),
        at(bottom, d.trim),
        at(bottom + face, d.trim),
        at(bottom + face, d.trim - 0.1),
    ];
    s.line(Ink::Profile, path);
    at(bottom + face / 2.0, d.trim)
}

/// Finish trim about the plane of a cut edge: its pocket's bottom at `bottom`, opening along the siding.
pub(super) fn finish(
    s: &mut Section,
    d: Depths,
    bottom: f64,
    at: &impl Fn(f64, f64) -> Point,
) -> Point {
    let (inner, outer) = (d.middle() - 0.13, d.middle() + 0.09);
    let path = [
        at(bottom + 1.1, d.back + 0.09),
        at(bottom + 0.06, d.back + 0.09),
        at(bottom + 0.06, outer),
        at(bottom + 0.5, outer),
        at(bottom + 0.42, outer - 0.05),
    ];
    s.line(Ink::Profile, path);
    s.line(Ink::Profile, [at(bottom + 0.06, inner), at(bottom + 0.5, inner)]);
    at(bottom + 0.3, outer)
}

/// A trim board cut across, from one place to another along the wall.
pub(super) fn trim_board(
    s: &mut Section,
    d: Depths,
    (start, end): (f64, f64),
    at: &impl Fn(f64, f64) -> Point,
) -> Point {
    let (a, b) = (d.back, (d.back + BOARD).max(d.trim));
    s.area(Ink::Ground, Ink::Profile, &[at(start, a), at(end, a), at(end, b), at(start, b)]);
    at((start + end) / 2.0, b)
}

/// The frame of a window or door, its sides at the given places.
pub(super) fn unit(s: &mut Section, r: Rect) {
    s.block(Ink::Ground, Ink::Opening, r);
    let inner = Rect::new(r.x0 + 0.35, r.y0 + 0.35, r.x1 - 0.35, r.y1 - 0.35);
    if inner.x1 > inner.x0 && inner.y1 > inner.y0 {
        s.line(Ink::Face, corners(inner).into_iter().chain([corners(inner)[0]]));
    }
}
