//! One view with its own coordinates: what the steps of a view share.

use super::views::View;
use crate::geom::vocabulary::{Affine, Point, Rect};
use crate::job::Job;
use crate::model::drawing::{Across, Text, Up};
use crate::model::linework::{Linework, Measured, Role, Stroke};
use crate::typeface;

/// Height of a dimension's text, inches of the house: 3/32 in at 1/4 in to the foot, and some more.
const DIMENSION_TEXT: f64 = 6.0;
/// Letters of a dimension that says what it measures: `12'-6 1/2"`.
const DIMENSION_LETTERS: usize = 10;

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
    /// What the names of its walls begin with.
    pub(crate) slug: &'a str,
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

    /// Where its texts stand, elevation inches.
    pub(crate) fn texts(&self) -> Vec<Rect> {
        let here = self.view.labels(self.lines).map(|l| &l.text);
        let texts = here.map(|t| text_box(t) + self.place(t.at).to_vec2());
        let dimensions = self.view.dimensions(self.lines);
        texts.chain(dimensions.map(|d| self.dimension_text(d))).collect()
    }

    /// About where the text of a dimension stands: over its line or in it, as its style has it. Nothing is
    /// known of its height here.
    fn dimension_text(&self, d: &Measured) -> Rect {
        let letters = d.text.as_ref().map_or(DIMENSION_LETTERS, |t| t.chars().count().min(40));
        let width = 0.7 * DIMENSION_TEXT * letters as f64;
        let upright = (d.to.y - d.from.y).abs() > (d.to.x - d.from.x).abs();
        let across = 4.0 * DIMENSION_TEXT;
        let size = if upright { (across, width) } else { (width, across) };
        Rect::from_center_size(self.place(d.middle), size)
    }

    pub(crate) fn ring(&self, s: &Stroke) -> Vec<Point> {
        s.points.iter().map(|p| self.place(*p)).collect()
    }
}

/// Box of a text about its anchor: about as wide as a plain typeface sets it.
fn text_box(t: &Text) -> Rect {
    let width = typeface::width(&t.content, t.height, true);
    let left = match t.across {
        Across::Left => 0.0,
        Across::Center => -width / 2.0,
        Across::Right => -width,
    };
    let low = match t.up {
        Up::Baseline => 0.0,
        Up::Middle => -t.height / 2.0,
        Up::Top => -t.height,
    };
    // Letters with tails and accents reach beyond the capitals.
    let (foot, top) = (low - 0.3 * t.height, low + 1.3 * t.height);
    // Seen in a mirror, tops lie to the right of the direction of reading.
    let (foot, top) = if t.mirrored { (-top, -foot) } else { (foot, top) };
    let about = Rect::new(left, foot, left + width, top);
    Affine::rotate(t.angle.to_radians()).transform_rect_bbox(about)
}
