//! Corners of the house as a part of the report.

use super::report::{WIDTH, fitted};
use crate::model::corner::{Corner, CornerKind, Pairing};
use crate::model::layout::Layout;

/// Each corner with the walls that meet in it and how they were brought together.
pub(super) fn text(layout: &Layout) -> String {
    let style = layout.job.sheet.lengths;
    let row = |c: &Corner| {
        let round: Vec<&str> =
            c.sides.iter().skip(1).map(|s| s.wall.as_str()).filter(|w| !w.is_empty()).collect();
        let by = match c.by {
            Pairing::Tag => "by its tag",
            Pairing::Wrap => "by the way round",
            Pairing::WrapAlone => "by the way round, heights differ",
            Pairing::Height => "by height",
            Pairing::Job => "given by the job",
            Pairing::Bare => "nothing sided round it",
            Pairing::Open => "WIDTH OF RETURN?",
        };
        let kind = if c.kind == CornerKind::Inside { "inside" } else { "outside" };
        let words = format!(
            "  {:<18} {kind:<7} {:>10} to {:<10} {:<14} {by}",
            fitted(&c.id, 18),
            style.length(c.low),
            style.length(c.high),
            fitted(&round.join(", "), 14)
        );
        format!("{}\n", fitted(&words, WIDTH))
    };
    if layout.corners.is_empty() {
        return String::new();
    }
    let rows: String = layout.corners.iter().map(row).collect();
    format!("CORNERS (name, kind, heights, wall round it)\n{rows}")
}
