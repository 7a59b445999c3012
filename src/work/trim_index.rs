//! Trim and corners by the wall they are at.

use std::collections::BTreeMap;

use crate::geom::tol::SAME;
use crate::layout::by_wall::ByWall;
use crate::layout::laid::LaidHouse;
use crate::layout::wall::LaidWall;
use crate::model::corner::CornerSide;
use crate::model::ids::TrimMark;
use crate::model::trim::{TrimKind, TrimPiece};
use crate::model::work::{SharedTrim, TrimOfKind};

/// Trim of a house, looked up once.
pub(super) struct TrimIndex<'a> {
    by_wall: ByWall<'a>,
    /// Trim by the other elevation that shows it.
    shared: BTreeMap<&'a str, Vec<&'a TrimPiece>>,
}

impl<'a> TrimIndex<'a> {
    pub(super) fn new(layout: &'a LaidHouse) -> Self {
        let mut shared: BTreeMap<&'a str, Vec<&'a TrimPiece>> = BTreeMap::new();
        for t in &layout.trims {
            if let Some(e) = &t.shared_with {
                shared.entry(e).or_default().push(t);
            }
        }
        TrimIndex { by_wall: ByWall::of(layout), shared }
    }

    /// Trim on a wall.
    pub(super) fn on_wall(&self, w: &LaidWall) -> impl Iterator<Item = &'a TrimPiece> + '_ {
        self.by_wall.trims(&w.id).iter().copied()
    }

    /// Marks of trim of these kinds on a wall, openings' left out; posts that another elevation counts
    /// stand there.
    pub(super) fn marks(&self, w: &LaidWall, kinds: &[TrimKind]) -> Vec<TrimMark> {
        let mine = |t: &&TrimPiece| t.opening.is_none() && kinds.contains(&t.kind);
        self.on_wall(w).filter(mine).map(mark).collect()
    }

    /// The same kind by kind, kinds without a piece left out.
    pub(super) fn by_kind(&self, w: &LaidWall, kinds: &[TrimKind]) -> Vec<TrimOfKind> {
        let each = kinds.iter().map(|k| TrimOfKind { kind: *k, marks: self.marks(w, &[*k]) });
        each.filter(|t| !t.marks.is_empty()).collect()
    }

    /// Posts at a wall's corners that other elevations count.
    pub(super) fn counted_elsewhere(&self, elevation: &str, w: &LaidWall) -> Vec<SharedTrim> {
        let shared = self.shared.get(elevation).into_iter().flatten();
        let mine = shared.filter(|t| self.stands_at_corner_of(t, w));
        mine.map(|t| SharedTrim { mark: mark(t), elevation: t.elevation.clone() }).collect()
    }

    /// Whether a post of another wall stands at a corner of this one.
    fn stands_at_corner_of(&self, t: &TrimPiece, w: &LaidWall) -> bool {
        let off = |k: &CornerSide| (k.at(t.from[1]) - t.from[0]).abs();
        let sides = self.by_wall.sides(&t.wall);
        let theirs = || sides.iter().filter(|(_, k)| k.elevation == t.elevation);
        let nearest = theirs().map(|(_, k)| off(k)).fold(f64::INFINITY, f64::min);
        let mut at = theirs().filter(|(_, k)| off(k) <= nearest + SAME);
        at.any(|(c, _)| c.sides.iter().any(|k| k.wall == w.id))
    }
}

/// The mark of a piece.
pub(super) fn mark(t: &TrimPiece) -> TrimMark {
    t.mark.clone()
}
