//! Areas summed slab by slab, and the connected parts of what is bare.

use std::collections::BTreeMap;

use super::scan::{Spans, length, widest, without};
use super::sweep::Slab;
use crate::geom::vocabulary::Xy;

/// A part of a course no larger than a postage stamp, square inches, is left bare: no piece is cut for it.
/// What is reckoned of its area is off by noise, so that one a hair over it may be bare too.
const STAMP: f64 = 0.5 + NOISE;
/// Area that counts as none, square inches, beside a millionth of the wall: noise of boolean results over a
/// wall.
pub(super) const NOISE: f64 = 0.01;
/// What is narrower at its top is a peak, inches.
const POINT: f64 = 0.1;
/// Length of a border at which two parts of a course are one part, inches.
const JOINED: f64 = 1e-4;

/// An area, square inches, with the middle of its largest part.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Area {
    pub(super) sum: f64,
    largest: f64,
    pub(super) at: Option<Xy>,
}

impl Area {
    /// Adds what is `sum` of `spans` in a slab.
    pub(super) fn add(&mut self, slab: &Slab, sum: f64, spans: &Spans) {
        self.sum += sum;
        if let Some((low, high)) = widest(spans).filter(|_| sum > self.largest) {
            self.largest = sum;
            self.at = Some([(low + high) / 2.0, (slab.low + slab.high) / 2.0]);
        }
    }

    /// Adds another area; the middle is that of the larger part.
    pub(super) fn join(&mut self, more: &Area) {
        self.sum += more.sum;
        if more.largest > self.largest {
            (self.largest, self.at) = (more.largest, more.at);
        }
    }
}

/// A connected part of what may be covered of a course.
#[derive(Clone, Copy, Debug, Default)]
struct Stamp {
    /// The part it was joined to.
    joined: usize,
    area: f64,
    bare: Area,
    /// From where to where it goes, and how wide it is at its top.
    heights: [f64; 2],
    tip: f64,
}

/// Connected parts of what may be covered of a course, each with its area and what is bare of it.
#[derive(Debug, Default)]
pub(super) struct Stamps {
    parts: Vec<Stamp>,
    /// Spans just under the top of the slab below, with their parts.
    below: Vec<((f64, f64), usize)>,
}

impl Stamps {
    fn root(&self, mut i: usize) -> usize {
        while self.parts[i].joined != i {
            i = self.parts[i].joined;
        }
        i
    }

    pub(super) fn slab(&mut self, slab: &Slab, may: &Spans, ends: &[Spans; 2], laid: &Spans) {
        // Spans keep their number from bottom to top of a slab, unless one is thinner than noise.
        let alike = ends[0].len() == may.len() && ends[1].len() == may.len();
        let mut above = Vec::new();
        for (n, span) in may.iter().enumerate() {
            let id = self.parts.len();
            let open = without(&vec![*span], laid);
            let mut bare = Area::default();
            bare.add(slab, slab.rise() * length(&open), &open);
            let head = if alike { ends[1][n] } else { *span };
            self.parts.push(Stamp {
                joined: id,
                area: slab.rise() * (span.1 - span.0),
                bare,
                heights: [slab.low, slab.high],
                tip: head.1 - head.0,
            });
            let foot = if alike { ends[0][n] } else { *span };
            for (other, part) in self.below.clone() {
                if other.1.min(foot.1) - other.0.max(foot.0) > JOINED {
                    let (a, b) = (self.root(part), self.root(id));
                    self.parts[a].joined = b;
                }
            }
            above.push((if alike { ends[1][n] } else { *span }, id));
        }
        self.below = above;
    }

    /// Bare area, less that of parts too small for a piece, and of peaks lower than `least`.
    pub(super) fn uncovered(&self, least: f64) -> Area {
        let mut sums: BTreeMap<usize, Stamp> = BTreeMap::new();
        for (i, part) in self.parts.iter().enumerate() {
            let none = Stamp { heights: [f64::MAX, f64::MIN], ..Stamp::default() };
            let sum = sums.entry(self.root(i)).or_insert(none);
            sum.area += part.area;
            sum.bare.join(&part.bare);
            if part.heights[1] > sum.heights[1] {
                (sum.heights[1], sum.tip) = (part.heights[1], part.tip);
            }
            sum.heights[0] = sum.heights[0].min(part.heights[0]);
        }
        let left = |s: &&Stamp| {
            let peak = s.heights[1] - s.heights[0] < least && s.tip < POINT;
            (s.area < STAMP || peak) && s.bare.sum > s.area - 1e-3
        };
        let mut out = Area::default();
        sums.values().filter(|s| !left(s)).for_each(|s| out.join(&s.bare));
        out
    }
}
