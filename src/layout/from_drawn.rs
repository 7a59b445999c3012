//! From walls as drawn to walls as laid.

use super::wall::LaidOpening;
use crate::model::house::DrawnOpening;

/// An opening with the sides it was drawn with: left, right, sill and head.
pub(crate) fn opening(
    drawn: &DrawnOpening,
    (left, right, sill, head): (f64, f64, f64, f64),
) -> LaidOpening {
    LaidOpening {
        id: drawn.id.clone(),
        kind: drawn.kind,
        outline: drawn.outline.iter().map(|p| [p.x, p.y]).collect(),
        left,
        right,
        sill,
        head,
        cut: drawn.cut.clone(),
    }
}
