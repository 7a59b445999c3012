//! What an entity's group pairs make.

use super::expand::Body;
use super::number::NumberFault;
use crate::model::drawing::Shape;
use crate::origin::EntityKind;

/// What became of an entity.
pub(super) enum Made<'a> {
    /// Shapes or insertions; none where a valid entity shows no line of its own.
    Bodies(Vec<Body>),
    /// A surface rather than lines: it is named as a type that is not read.
    Surface(&'static [u8]),
    /// It lacks a value that it needs.
    Broken,
    /// A value that should be a number is none.
    Unreadable(EntityKind, NumberFault<'a>),
}

impl Made<'_> {
    /// Of the shapes that could be made, or not.
    pub(super) fn of(shapes: Option<Vec<Shape>>) -> Self {
        shapes
            .map_or(Made::Broken, |list| Made::Bodies(list.into_iter().map(Body::Shape).collect()))
    }
}
