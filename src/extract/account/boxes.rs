//! Boxes in boxes.

use crate::geom::polygon::Polygon;
use crate::geom::vocabulary::{Point, Rect};

fn holds(outer: Rect, b: Rect) -> bool {
    b.x0 >= outer.x0 && b.x1 <= outer.x1 && b.y0 >= outer.y0 && b.y1 <= outer.y1
}

/// Boxes left to right.
pub(super) struct Sorted {
    boxes: Vec<Rect>,
    widest: f64,
}

impl Sorted {
    pub(super) fn of(mut boxes: Vec<Rect>) -> Self {
        boxes.sort_by(|a, b| a.x0.total_cmp(&b.x0));
        let widest = boxes.iter().map(Rect::width).fold(0.0, f64::max);
        Sorted { boxes, widest }
    }

    /// Whether a box lies within one of them, or no farther out than `reach`.
    pub(super) fn any_holds(&self, b: Rect, reach: f64) -> bool {
        let from = self.boxes.partition_point(|o| o.x0 < b.x1 - self.widest - 2.0 * reach);
        let near = self.boxes[from..].iter().take_while(|o| o.x0 <= b.x0 + reach);
        near.into_iter().any(|o| holds(o.inflate(reach, reach), b))
    }
}

/// Whether one of some shapes holds a box, or nearly.
pub(super) fn within_one(all: &[(Rect, Polygon)], b: Rect, reach: f64) -> bool {
    all.iter().any(|(o, _)| holds(o.inflate(reach, reach), b))
}

/// The corners of a box.
pub(super) fn corners(b: Rect) -> Vec<Point> {
    Polygon::rect(b.x0, b.y0, b.x1, b.y1).outer
}
