//! What `check` shows on the drawing.

use crate::annotate;
use crate::finding::Findings;
use crate::model::drawing::Drawing;
use crate::model::linework::Linework;
use crate::units::LengthStyle;
use crate::write::svg;

/// The drawing with its findings circled, as SVG; what is read of it is drawn though its layer be off.
pub fn problems(
    drawing: &Drawing,
    lines: &Linework,
    findings: &Findings,
    style: LengthStyle,
) -> Vec<u8> {
    let read = lines.layers_read();
    svg::document(&annotate::problems(drawing, &read, findings.all(), style)).into_bytes()
}
