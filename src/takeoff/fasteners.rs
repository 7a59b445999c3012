//! Nails and mounting blocks.

use crate::model::layout::{Layout, TakeoffLine};
use crate::model::trim::{TrimKind, TrimPiece};

/// Nails of one piece: at most `spacing` apart and one more (FACTS SD-20, TK-18).
pub(super) fn nails(length: f64, spacing: f64) -> f64 {
    (length / spacing).ceil() + 1.0
}

/// Penetration into nailable material (FACTS SD-29, VSI-H).
const PENETRATION: f64 = 1.25;
/// Gap under the nail's head (FACTS SD-25, VSI-H).
const HEAD_GAP: f64 = 1.0 / 32.0;
/// Shortest nail for foam-backed siding (FACTS PR-06, common practice, no source).
const SHORTEST: f64 = 2.5;

/// Nail length in the next half inch: stand-off, penetration and head gap (FACTS SD-37).
pub(super) fn nail_length(stand_off: f64) -> f64 {
    let needed: f64 = stand_off + PENETRATION + HEAD_GAP;
    // The head gap alone does not call for the next size.
    (((needed - HEAD_GAP) * 2.0).ceil() / 2.0).max(SHORTEST)
}

fn trim_nails(t: &TrimPiece, spacing: f64) -> f64 {
    // A post has a flange on both walls.
    let flanges =
        if matches!(t.kind, TrimKind::OutsidePost | TrimKind::InsidePost) { 2.0 } else { 1.0 };
    flanges * nails(t.length, spacing)
}

pub(super) fn lines(layout: &Layout) -> Vec<TakeoffLine> {
    let rules = &layout.job.takeoff;
    let panels: f64 = layout.pieces().map(|(.., p)| nails(p.length, rules.nail_spacing)).sum();
    let trim: f64 = layout.trims.iter().map(|t| trim_nails(t, rules.trim_nail_spacing)).sum();
    let boxed = f64::from(rules.nail_box.max(1));
    let length = crate::units::inches_fraction(nail_length(rules.stand_off));
    let line = |item: String, count: f64, how: String| TakeoffLine {
        item,
        unit: "box".into(),
        net: count / boxed,
        order: (count / boxed).ceil(),
        waste: super::waste(count / boxed, (count / boxed).ceil()),
        how,
    };
    let mut out = vec![
        line(
            format!("nails for panels, {length}"),
            panels,
            format!(
                "{panels} nails at most {} apart and one more a piece; {} to a box; length by stand-off {} and 1 1/4\" into nailable material",
                crate::units::inches_fraction(rules.nail_spacing),
                rules.nail_box,
                crate::units::inches_fraction(rules.stand_off)
            ),
        ),
        line(
            "nails for trim".into(),
            trim,
            format!(
                "{trim} nails {} apart and one more a piece, posts on both flanges; {} to a box",
                crate::units::inches_fraction(rules.trim_nail_spacing),
                rules.nail_box
            ),
        ),
    ];
    let blocks =
        layout.walls().flat_map(|(_, w)| &w.obstacles).filter(|o| o.mounting_block).count() as f64;
    if blocks > 0.0 {
        out.push(TakeoffLine {
            item: "mounting blocks".into(),
            unit: "piece".into(),
            net: blocks,
            order: blocks,
            waste: 0.0,
            how: "fixtures drawn with a mounting block".into(),
        });
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn nail_length_of_the_worked_example() {
        // FACTS SD-37: 3/4 hem stand-off and 1/2 foam board: 3/4 + 1/2 + 1 1/4 = 2 1/2.
        assert_eq!(nail_length(1.25), 2.5);
        assert_eq!(nail_length(0.75), 2.5); // PR-06
    }

    #[test]
    fn nails_of_a_square_of_double_four() {
        // FACTS TK-18: about 125 a square for D4 at 16 in: 12 pieces of 12 ft 6 in, 150/16 + 1 each.
        let exact: f64 = 12.0 * (150.0 / 16.0 + 1.0);
        assert!((exact - 125.0).abs() < 1.0);
        assert_eq!(12.0 * nails(150.0, 16.0), 132.0); // whole nails a piece
    }
}
