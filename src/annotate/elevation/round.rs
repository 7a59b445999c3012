//! Room that a drawing takes on paper round its walls: left, below, right, above.

use super::dims::{BESIDE, HEIGHTS, ROW, UPRIGHT, levels, strings};
use crate::annotate::style::TEXT;
use crate::geom::vocabulary::Rect;
use crate::layout::wall::LaidElevation;
use crate::typeface;
use crate::units::LengthStyle;
use crate::wording::sheet_lengths::{length, string};

/// Over walls, for marks of the highest courses and of what stands at the top.
const OVER_WALL: f64 = 0.38;
/// Over an elevation, for names of its walls.
const OVER_HOUSE: f64 = 0.32;
/// Right of an elevation, for grade.
const GRADE: f64 = 0.12;
/// Under the lowest string, whose words stand over it.
const FOOT: f64 = 0.08;
/// Least room for words at either side.
const WORDS: f64 = 0.4;
/// Beyond words.
const OFF: f64 = 0.03;

/// Round one wall: course numbers and heights on the left, the upright string of dimensions on the right, widths below.
pub(in crate::annotate) fn wall(e: &LaidElevation, house: Rect, style: LengthStyle) -> Rect {
    let beside = widest(string(style, &levels(e, house)).into_iter());
    Rect { x1: UPRIGHT + BESIDE + beside + 2.0 * OFF, y1: OVER_WALL, ..overview(e, house, style) }
}

/// Round an elevation of the overview, which has no upright string.
pub(in crate::annotate) fn overview(e: &LaidElevation, house: Rect, style: LengthStyle) -> Rect {
    let heights = e.walls.iter().flat_map(|w| &w.courses).map(|k| length(style, k.bottom));
    let rows = strings(e, house).len() as f64;
    Rect { x0: HEIGHTS + widest(heights) + OFF, y0: rows * ROW + FOOT, x1: GRADE, y1: OVER_HOUSE }
}

fn widest(words: impl Iterator<Item = String>) -> f64 {
    words.map(|w| typeface::width(&w, TEXT, false)).fold(WORDS, f64::max)
}
