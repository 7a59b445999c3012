//! The words of plane geometry, from `kurbo`, which is named in `geom` alone.
//!
//! A [`Point`] is a place, a [`Vec2`] a displacement. Model space has x to the right and **y up**;
//! only writers turn y over. Lengths are inches once `normalize` has run.

pub use kurbo::flatten as flatten_curve;
pub use kurbo::{Affine, Arc, BezPath, Ellipse, PathEl, Point, Rect, Shape as CurveShape, Vec2};

/// A closed ring of points; the last point joins the first and is not repeated.
pub type Ring = Vec<Point>;

/// A place as it is written to `layout.json`: `[x, y]`, elevation inches.
pub type Xy = [f64; 2];
