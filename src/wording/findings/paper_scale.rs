//! Scales of paper in words.

use super::finding_words::FindingWords;
use crate::finding::lines::{PaperScaleBy, WrittenScale};
use crate::units::counted;

/// Points to the inch of paper.
const POINTS: f64 = 72.0;

/// The scale that is taken, and what else speaks of one.
pub(super) fn taken(
    (inches, by): (f64, PaperScaleBy),
    written: &[WrittenScale],
    (dimensions, by_dimensions): (usize, Option<f64>),
) -> FindingWords {
    let times = |inches: f64| format!("1:{:.1}", inches * POINTS);
    let mut says = format!("the page shows the house at {}, by ", times(inches));
    says += &match by {
        PaperScaleBy::Known => "the known distance".to_owned(),
        PaperScaleBy::Dimensions => {
            format!("{} beside their lines", counted(dimensions, "dimension"))
        }
    };
    for w in written {
        says +=
            &format!("; it says {}, and is printed at {:.0} percent of that", w.text, w.percent);
    }
    if let Some(other) = by_dimensions.filter(|_| by == PaperScaleBy::Known) {
        says += &format!(
            "; {} beside their lines make it {}",
            counted(dimensions, "dimension"),
            times(other)
        );
    }
    FindingWords::new(
        says,
        "Compare one long length on the sheets with the drawing. If it is off, give the longest length you know: `known` under [drawing], or `--known`.",
    )
}

/// Views of several scales.
pub(super) fn several(written: &[String], by_dimensions: &[f64]) -> FindingWords {
    let mut says = Vec::new();
    if written.len() > 1 {
        says.push(format!("it says {}", written.join(", ")));
    }
    if by_dimensions.len() > 1 {
        let all: Vec<String> =
            by_dimensions.iter().map(|k| format!("1:{:.1}", k * POINTS)).collect();
        says.push(format!("dimensions beside their lines make it {}", all.join(", ")));
    }
    FindingWords::new(
        format!("the page shows views in several scales: {}", says.join("; ")),
        "Each view is taken at its own scale where dimensions, a written scale or a known distance in it tell one. Give a distance you know of a view: `known` under its [[elevation]].",
    )
}
