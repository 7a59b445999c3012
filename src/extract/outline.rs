//! The outside of a wall as it is found, and places of the drawing.

use crate::geom::polygon::{Polygon, bounds};
use crate::geom::vocabulary::{Point, Rect, Ring};
use crate::model::house::{DrawnOpening, WallWay};
use crate::model::linework::{Linework, Stroke};
use crate::origin::{EntityKind, Origin};

/// The outside of one wall, however found.
#[derive(Clone, Debug)]
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
