//! The outside of a wall as it is found, and places of the drawing.

use super::patch::Patch;
use crate::geom::polygon::{Polygon, bounds};
use crate::geom::vocabulary::{Point, Rect, Ring};
use crate::model::house::{DrawnOpening, WallWay};
use crate::model::linework::{Linework, Stroke};
use crate::origin::{EntityKind, Origin};

/// The outside of one wall, however found.
#[derive(Clone, Debug, Default)]
pub(crate) struct Outline {
    /// Inches of the whole drawing.
    pub(crate) ring: Ring,
    /// How it was found.
    pub(crate) way: WallWay,
    /// Index of its layer.
    pub(crate) layer: usize,
    /// Place in the source.
    pub(crate) origin: Origin,
    /// Exposure of the courses drawn on it, inches: told, never laid out from
    /// (`LayoutFact::HatchIsNoLayout`).
    pub(crate) exposure: Option<f64>,
    /// Openings that its way found with it, inches of the whole drawing.
    pub(crate) openings: Vec<DrawnOpening>,
    /// The patches of drawn siding it was taken from; none where an outline is drawn.
    pub(crate) patches: Vec<Patch>,
    /// What parts the siding of its plane.
    pub(crate) trimmings: Trimmings,
    /// What of the job gives it; none where it is drawn.
    pub(crate) given: Option<GivenBy>,
}

/// What parts the siding of a plane, read from the gaps between its patches; inches as the outline's.
#[derive(Clone, Debug, Default)]
pub(crate) struct Trimmings {
    /// Bands, corner boards and other boards.
    pub(crate) boards: Vec<Polygon>,
    /// Roofs, decks and posts that stand before it.
    pub(crate) bare: Vec<Polygon>,
    /// Upright sides that are no corners of the house.
    pub(crate) channels: Vec<(Point, Point)>,
}

impl Trimmings {
    /// With every place moved.
    pub(crate) fn moved(&self, place: impl Fn(Point) -> Point) -> Self {
        let all = |shapes: &[Polygon]| shapes.iter().map(|p| p.map(&place)).collect();
        let side = |s: &(Point, Point)| (place(s.0), place(s.1));
        Trimmings {
            boards: all(&self.boards),
            bare: all(&self.bare),
            channels: self.channels.iter().map(side).collect(),
        }
    }
}

/// What of the job gives a wall outright.
#[derive(Clone, Debug)]
pub(crate) struct GivenBy {
    /// Which `[[wall]]` it is, from 1.
    pub(crate) number: usize,
    /// The elevation that it names.
    pub(crate) elevation: Option<String>,
    /// Boxes of drawn walls that give way to it, inches of the whole drawing.
    pub(crate) replaced: Vec<Rect>,
}

impl Outline {
    /// The box round it.
    pub(crate) fn frame(&self) -> Rect {
        bounds(&self.ring).unwrap_or(Rect::ZERO)
    }

    /// Whether it was taken from lines, one by one.
    pub(crate) fn is_of_lines(&self) -> bool {
        self.origin.entity != EntityKind::Hatch
    }

    /// As a polygon.
    pub(crate) fn polygon(&self) -> Polygon {
        Polygon::simple(self.ring.clone()).wound()
    }
}

/// Box of a stroke.
pub(crate) fn stroke_box(s: &Stroke) -> Rect {
    bounds(&s.points).unwrap_or(Rect::ZERO)
}

/// A place of the drawing in source units.
pub(super) fn source(lines: &Linework, p: Point) -> Point {
    lines.source(p)
}
