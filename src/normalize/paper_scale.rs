//! Scales of paper: a print is measured in points, which say nothing of the house.

use crate::model::drawing::{Drawing, Shape};

/// Format of drawings in points of paper.
const PDF: &str = "PDF";
/// Most scales that are told.
const MOST: usize = 4;
/// Letters of a text that states one.
const LETTERS: usize = 60;

/// Whether lengths of a drawing are points of paper.
pub(super) fn is_paper(drawing: &Drawing) -> bool {
    drawing.dialect.format == PDF
}

/// Scales that a sheet states, as written, the first few of them.
pub(super) fn written(drawing: &Drawing) -> Vec<String> {
    let mut out: Vec<String> = Vec::new();
    for item in &drawing.items {
        let Shape::Text(text) = &item.shape else { continue };
        let words = text.content.trim();
        if out.len() < MOST && states_scale(words) && !out.iter().any(|w| w == words) {
            out.push(words.to_owned());
        }
    }
    out
}

/// Whether a text states a scale: `1/4" = 1'-0"`, `1:50`.
fn states_scale(text: &str) -> bool {
    let of_inches = text.contains('=') && text.contains(['"', '\u{2033}', '\u{201d}']);
    let ratio = text.split(' ').any(|word| {
        word.split_once(':').is_some_and(|(a, b)| a == "1" && b.parse::<u32>().is_ok())
    });
    text.chars().count() < LETTERS && (of_inches || ratio)
}
