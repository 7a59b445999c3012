//! What places for a text stood on that were tried of late.

use super::meeting::{clipped, overlaps};
use crate::geom::vocabulary::{Point, Rect};

/// What a text keeps off in a square.
pub(super) struct KeptOff<'a> {
    pub(super) texts: &'a [Rect],
    pub(super) lines: [&'a [(Point, Point)]; 2],
}

/// What places tried of late stood on: the next ones mostly stand on the same.
#[derive(Default)]
pub(super) struct Stood {
    texts: Late<Rect>,
    lines: Late<(Point, Point)>,
}

impl Stood {
    /// Whether a box stands on any of them.
    pub(super) fn on(&self, r: &Rect) -> bool {
        self.texts.all().any(|t| overlaps(t, r))
            || self.lines.all().any(|(a, b)| clipped(*a, *b, r).is_some())
    }

    /// Whether a box stands on any of these texts and lines; what that is is kept.
    #[inline]
    pub(super) fn is_met(&mut self, KeptOff { texts, lines }: &KeptOff<'_>, r: &Rect) -> bool {
        if let Some(t) = texts.iter().find(|t| overlaps(t, r)) {
            self.texts.keep(*t);
            return true;
        }
        let met = lines.iter().copied().flatten().find(|(a, b)| clipped(*a, *b, r).is_some());
        met.inspect(|l| self.lines.keep(**l)).is_some()
    }
}

/// The last few of what was kept.
struct Late<T> {
    kept: [Option<T>; 4],
    next: usize,
}

impl<T> Default for Late<T> {
    fn default() -> Self {
        Late { kept: [None, None, None, None], next: 0 }
    }
}

impl<T> Late<T> {
    fn all(&self) -> impl Iterator<Item = &T> {
        self.kept.iter().flatten()
    }

    fn keep(&mut self, one: T) {
        if let Some(place) = self.kept.get_mut(self.next) {
            *place = Some(one);
        }
        self.next = (self.next + 1) % self.kept.len();
    }
}
