//! Level lines that hang together, with the area they show.

use super::pieces::Key;
use crate::geom::boolean::{intersection, union_all};
use crate::geom::polygon::{Polygon, total_area};
use crate::geom::vocabulary::{Point, Rect};

/// Lines of one layer and ink at one pitch; the pitch by its bits.
pub(super) type Family = (Key, u64);

/// Patches that lie over one another share more than this of the smaller: those that stand side by side under a
/// slope may share the tip of a course.
const OVER: f64 = 0.1;

/// Level lines that hang together, with the area they show.
#[derive(Clone, Debug)]
pub(super) struct Patch {
    pub(super) key: Key,
    pub(super) pitch: f64,
    /// A point of the line in its middle.
    pub(super) level: Point,
    /// Levels of lines that are drawn over its own, a hair or half a course apart: a wall printed twice.
    pub(super) also: Vec<f64>,
    /// Index of that line's stroke.
    pub(super) stroke: usize,
    /// Course lines.
    pub(super) lines: usize,
    /// Length of all its lines, inches.
    pub(super) length: f64,
    /// Length of other level lines of its layer and ink inside it, inches.
    pub(super) alien: f64,
    /// The share of its lines in all level lines of its layer and ink.
    pub(super) share: f64,
    /// By what share of the pitch half of its lines stand off it.
    pub(super) uneven: f64,
    /// Over what length its ends are not drawn, inches.
    pub(super) open: f64,
    pub(super) areas: Vec<Polygon>,
}

impl Patch {
    pub(super) fn area(&self) -> f64 {
        self.areas.iter().map(Polygon::area).sum()
    }

    pub(super) fn frame(&self) -> Rect {
        self.areas.iter().map(Polygon::bounds).reduce(|a, b| a.union(b)).unwrap_or_default()
    }

    pub(super) fn family(&self) -> Family {
        (self.key, self.pitch.to_bits())
    }

    /// By what share of the pitch, at least, a level stands off its lines.
    pub(super) fn off_levels(&self, y: f64) -> f64 {
        let off = |level: &f64| {
            let steps = (y - level) / self.pitch;
            (steps - steps.round()).abs()
        };
        self.also.iter().map(off).fold(off(&self.level.y), f64::min)
    }

    /// What two patches of a family show together.
    fn take(&mut self, other: Patch) {
        self.also.push(other.level.y);
        self.also.extend(other.also);
        self.areas.extend(other.areas);
        self.areas = union_all(&self.areas);
        self.lines = self.lines.max(other.lines);
        self.length += other.length;
        self.alien += other.alien;
        self.share += other.share;
        self.open = self.open.max(other.open);
    }
}

/// Patches of one family that lie over one another made one: lines drawn twice, a hair apart.
pub(super) fn merged(all: Vec<Patch>) -> Vec<Patch> {
    let mut out: Vec<Patch> = Vec::new();
    for p in all {
        let frame = p.frame();
        let over = |q: &Patch| {
            q.family() == p.family()
                && q.frame().overlaps(frame)
                && total_area(&intersection(&q.areas, &p.areas)) > OVER * q.area().min(p.area())
        };
        match out.iter().position(over) {
            Some(at) => out[at].take(p),
            None => out.push(p),
        }
    }
    out
}
