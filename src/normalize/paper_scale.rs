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
    text.chars().count() < LETTERS && (is_of_inches(text) || ratio(text).is_some())
}

fn is_of_inches(text: &str) -> bool {
    text.contains('=') && text.contains(['"', '\u{2033}', '\u{201d}'])
}

fn ratio(text: &str) -> Option<u32> {
    let of = |word: &str| word.split_once(':').filter(|(a, _)| *a == "1")?.1.parse().ok();
    text.split(' ').find_map(of)
}

/// Scales of elevations in metric drawings (ISO 5455, from memory); those of feet and inches are 1:48, 1:96
/// and such, and 1:12 or 1:20 may be a slope.
const METRIC: [u32; 6] = [25, 50, 75, 100, 200, 250];

/// Whether a text states a scale of metric drawings, or one of feet and inches; none where neither.
pub(super) fn written_metric(text: &str) -> Option<bool> {
    let text = text.trim();
    if text.chars().count() >= LETTERS {
        return None;
    }
    if is_of_inches(text) {
        return Some(false);
    }
    ratio(text).filter(|n| METRIC.contains(n)).map(|_| true)
}
