//! What `check` shows on the drawing.

use crate::annotate;
use crate::diag::Notes;
use crate::model::drawing::Drawing;
use crate::write::svg;

/// The drawing with its findings circled, as SVG.
pub fn problems(drawing: &Drawing, notes: &Notes) -> Vec<u8> {
    svg::document(&annotate::problems(drawing, notes.all())).into_bytes()
}
