//! How many columns an area holds, how wide they are, and where they begin beside a drawing.

use crate::geom::vocabulary::Rect;

/// Room between columns.
pub(super) const GAP: f64 = 0.22;
/// Least width of a column.
pub(super) const WIDTH: f64 = 3.6;
/// The same on small paper, which else held two: letter, A4, ARCH A.
const NARROW: f64 = 3.0;
/// Paper so wide at most is small, inches inside its border.
const SMALL: f64 = 11.0;

/// Height that the title of a further page takes.
pub(in crate::annotate) const NEXT: f64 = 0.3;

/// Whether an area is one of small paper.
pub(in crate::annotate) fn is_small(area: Rect) -> bool {
    area.width() < SMALL
}

/// Columns that an area holds.
pub(in crate::annotate) fn count(area: Rect) -> usize {
    let least = if is_small(area) { NARROW } else { WIDTH };
    (((area.width() + GAP) / (least + GAP)).floor() as usize).max(1)
}

/// The width of each.
pub(in crate::annotate) fn width(area: Rect) -> f64 {
    let n = count(area) as f64;
    (area.width() - GAP * (n - 1.0)) / n
}

/// How far right what stands beside columns may go, where it reaches so far: up to the next column.
pub(in crate::annotate) fn left_of_lists(area: Rect, right: f64) -> f64 {
    let each = width(area) + GAP;
    let columns = (0..count(area)).map(|i| area.x0 + i as f64 * each);
    columns.into_iter().find(|x| *x >= right + 0.05).map_or(area.x1, |x| (x - GAP).max(right))
}

/// Where they begin beside and under a drawing that reaches from the area's left to `right` and down to
/// `bottom`.
pub(in crate::annotate) fn tops_under(area: Rect, right: f64, bottom: f64) -> Vec<f64> {
    let each = width(area) + GAP;
    let left = |i: usize| area.x0 + i as f64 * each;
    let top = |i: usize| if left(i) < right + 0.05 { bottom } else { area.y1 - NEXT };
    (0..count(area)).map(top).collect()
}
