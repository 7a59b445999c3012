//! What `check` shows on the drawing.

use crate::annotate;
use crate::finding::Findings;
use crate::model::drawing::Drawing;
use crate::units::LengthStyle;
use crate::write::svg;

/// The drawing with its findings circled, as SVG.
pub fn problems(drawing: &Drawing, findings: &Findings, style: LengthStyle) -> Vec<u8> {
    svg::document(&annotate::problems(drawing, findings.all(), style)).into_bytes()
}
