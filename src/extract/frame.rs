//! One view with its own coordinates: what the steps of a view share.

use super::views::View;
use crate::geom::vocabulary::{Affine, Point};
use crate::job::Job;
use crate::model::linework::{Linework, Role, Stroke};

/// One view with its own coordinates.
pub(crate) struct ViewFrame<'a> {
    pub(crate) lines: &'a Linework,
    pub(crate) view: &'a View,
    /// Origin of the elevation, inches of the whole drawing.
    pub(crate) origin: Point,
    pub(crate) to_source: Affine,
    pub(crate) job: &'a Job,
    /// The zone that is laid out; the house where none is named.
    pub(crate) part: Option<usize>,
}

impl<'a> ViewFrame<'a> {
    /// A place of the whole drawing in elevation inches.
    pub(crate) fn place(&self, p: Point) -> Point {
        p - self.origin.to_vec2()
    }

    /// An elevation place in source coordinates.
    pub(crate) fn source(&self, p: Point) -> Point {
        self.to_source * p
    }

    pub(crate) fn strokes(&self, role: Role) -> impl Iterator<Item = &'a Stroke> + use<'a> {
        self.view.strokes(self.lines).filter(move |s| s.role == Some(role))
    }

    pub(crate) fn ring(&self, s: &Stroke) -> Vec<Point> {
        s.points.iter().map(|p| self.place(*p)).collect()
    }
}
