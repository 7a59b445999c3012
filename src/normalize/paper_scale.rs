//! Scales of paper: a print is measured in points, which say nothing of the house. A known distance sets
//! the scale, else dimensions that agree; what is written on the sheet is what it was made for, not what
//! it was printed at.

use super::dimension_texts::{Agreed, agreed};
use crate::finding::lines::{LineFinding, PaperScaleBy, WrittenScale};
use crate::finding::{Finding, Findings};
use crate::model::drawing::{Drawing, Shape};
use crate::model::linework::Linework;
use crate::units::{Unit, parse_length};

/// Format of drawings in points of paper.
const PDF: &str = "PDF";
/// Points to the inch of paper.
const POINTS: f64 = 72.0;
/// Most scales that are told.
const MOST: usize = 4;
/// Letters of a text that states one.
const LETTERS: usize = 60;
/// Fewest dimensions that settle a scale where nothing else does.
pub(super) const LEAST: usize = 3;
/// Scales farther from one another than this share differ: a known distance is picked by eye.
const DIFFER: f64 = 0.03;

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

/// How many times as large as on paper things are, by a written scale.
pub(super) fn times(text: &str) -> Option<f64> {
    let low = text.to_ascii_lowercase();
    let plain = low.trim_start_matches("scale").trim_start_matches([':', ' ']);
    let times = match plain.split_once('=') {
        Some((paper, house)) => {
            let of = |t: &str| parse_length(t.trim(), Unit::Inch).filter(|l| *l > 0.0);
            of(house)? / of(paper)?
        }
        None => plain.split(' ').find_map(|w| w.strip_prefix("1:"))?.parse().ok()?,
    };
    (1.0..=5000.0).contains(&times).then_some(times)
}

/// The scale that dimensions of a print agree on, inches to a point.
pub(super) fn by_dimensions(lines: &Linework) -> Option<f64> {
    let found = agreed(lines, LEAST);
    // Where views are of several scales the others are measured against the first.
    found.first().map(|a| a.inches)
}

/// Says what scale a print is taken in and what else on it speaks for another, and where views are of
/// several. `inches` is that of a point, none where it is not known.
pub(super) fn tell(
    drawing: &Drawing,
    lines: &Linework,
    inches: Option<(f64, PaperScaleBy)>,
    findings: &mut Findings,
) {
    let found = agreed(lines, LEAST);
    let said: Vec<(String, f64)> = written(drawing)
        .into_iter()
        .filter_map(|t| Some((t.clone(), times(&t)? / POINTS)))
        .collect();
    let mut scales: Vec<f64> = said.iter().map(|s| s.1).collect();
    scales.sort_by(f64::total_cmp);
    scales.dedup_by(|b, a| !differ(*a, *b));
    if scales.len() > 1 || found.len() > 1 {
        let written = said.iter().map(|s| s.0.clone()).collect();
        let by_dimensions = found.iter().map(|a| a.inches).collect();
        let kind = LineFinding::ScalesOnPage { written, by_dimensions };
        findings.push(Finding::new(kind));
    }
    let Some((taken, by)) = inches else { return };
    let written: Vec<WrittenScale> = said
        .into_iter()
        .map(|(text, own)| WrittenScale { text, percent: 100.0 * own / taken })
        .collect();
    let first: Option<&Agreed> = found.first();
    let others = first.filter(|_| by != PaperScaleBy::Dimensions);
    let agrees = others.is_none_or(|a| !differ(a.inches, taken))
        && !written.iter().any(|w| differ(w.percent, 100.0));
    let kind = LineFinding::ScaleOfPaper {
        inches: taken,
        by,
        written,
        dimensions: first.map_or(0, |a| a.texts),
        by_dimensions: first.map(|a| a.inches),
        agrees,
    };
    findings.push(Finding::new(kind));
}

pub(super) fn differ(a: f64, b: f64) -> bool {
    (a - b).abs() > DIFFER * a.max(b)
}

#[cfg(test)]
mod tests {
    use super::times;

    #[test]
    fn written_scales_say_how_many_times_as_large_things_are() {
        for (text, is) in [
            ("1/4\" = 1'-0\"", 48.0),
            ("SCALE: 1/8\" = 1'-0\"", 96.0),
            ("1\" = 10'", 120.0),
            ("1:50", 50.0),
            ("Scale 1:100", 100.0),
        ] {
            assert_eq!(times(text), Some(is), "{text}");
        }
        for text in ["AS NOTED = \"", "A = \"B\"", "1:0", "12:30"] {
            assert_eq!(times(text), None, "{text}");
        }
    }
}
