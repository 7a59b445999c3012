//! An opening with the sides of the field that border it and the trim that frames it.

use super::along::reach;
use super::contour::{self, Part};
use super::named;
use super::rule::{Found, found};
use crate::geom::vocabulary::Xy;
use crate::layout::breach::trim::OpeningBreach;
use crate::layout::by_wall::ByWall;
use crate::layout::wall::{LaidEdge, LaidElevation, LaidOpening, LaidWall};
use crate::model::house::EdgeKind;
use crate::model::trim::{TrimKind, TrimPiece};

/// An opening with its sides and its trim.
pub(super) struct Frame<'a> {
    pub(super) elevation: &'a LaidElevation,
    pub(super) wall: &'a LaidWall,
    pub(super) opening: &'a LaidOpening,
    pub(super) sides: Vec<&'a LaidEdge>,
    pub(super) trims: Vec<&'a TrimPiece>,
    /// Its outline is a level rectangle.
    pub(super) plain: bool,
}

impl<'a> Frame<'a> {
    pub(super) fn of(
        at: &ByWall<'a>,
        elevation: &'a LaidElevation,
        w: &'a LaidWall,
        o: &'a LaidOpening,
    ) -> Self {
        let mine = |e: &&LaidEdge| e.opening.as_deref() == Some(o.id.as_str());
        let sides: Vec<&LaidEdge> = w.edges.iter().filter(mine).collect();
        let trims = at.frame(&w.id, o).to_vec();
        let plain = contour::is_rectangle(&o.outline);
        Frame { elevation, wall: w, opening: o, sides, trims, plain }
    }

    /// The parts of its outline.
    pub(super) fn parts(&self) -> Vec<Part> {
        contour::parts(&self.opening.outline, &self.sides)
    }

    pub(super) fn of_kind(&self, kind: TrimKind) -> Vec<&'a TrimPiece> {
        self.trims.iter().copied().filter(|t| t.kind == kind).collect()
    }

    /// A violation of this opening, marked half way between two places.
    pub(super) fn broken(&self, breach: OpeningBreach, (a, b): (Xy, Xy)) -> Found {
        let at = named::place(&self.elevation.name, named::midway(a, b));
        found(named::opening(&self.wall.id, &self.opening.id), breach).at(at)
    }

    /// The two ends of its box at a height: sill or head.
    pub(super) fn across(&self, y: f64) -> (Xy, Xy) {
        ([self.opening.left, y], [self.opening.right, y])
    }

    /// Lower left and upper right of its box: half way between is its middle.
    pub(super) fn whole(&self) -> (Xy, Xy) {
        let o = self.opening;
        ([o.left, o.sill], [o.right, o.head])
    }

    pub(super) fn bordering(&self, kind: EdgeKind) -> f64 {
        self.sides.iter().filter(|e| e.kind == kind).map(|e| reach(e.from, e.to)).sum()
    }
}
