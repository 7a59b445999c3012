//! Boxes that elements are clipped to.

use crate::geom::vocabulary::{Affine, Rect};

/// A box under a transform: the box round it.
pub(super) fn moved(b: Rect, by: usvg::Transform) -> Rect {
    let map = Affine::new([by.sx, by.ky, by.kx, by.sy, by.tx, by.ty].map(f64::from));
    map.transform_rect_bbox(b)
}

/// Whether a path's box lies outside of another.
pub(super) fn is_outside(b: usvg::tiny_skia_path::Rect, c: Rect) -> bool {
    let [x0, y0, x1, y1] = [b.left(), b.top(), b.right(), b.bottom()].map(f64::from);
    x1 <= c.x0 || x0 >= c.x1 || y1 <= c.y0 || y0 >= c.y1
}

/// What lies in both of two boxes.
pub(super) fn met(a: Option<Rect>, b: Option<Rect>) -> Option<Rect> {
    match (a, b) {
        (Some(a), Some(b)) => Some(a.intersect(b)),
        (a, b) => a.or(b),
    }
}
