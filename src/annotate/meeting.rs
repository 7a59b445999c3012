//! Whether boxes and lines on paper meet.

use crate::geom::vocabulary::{Point, Rect};

/// Whether two boxes have more than an edge in common.
pub(super) fn overlaps(a: &Rect, b: &Rect) -> bool {
    a.x0 < b.x1 && b.x0 < a.x1 && a.y0 < b.y1 && b.y0 < a.y1
}

/// The part of a segment inside a rectangle (Liang and Barsky 1984).
pub(super) fn clipped(a: Point, b: Point, r: &Rect) -> Option<(Point, Point)> {
    // Most lie on one side of it altogether.
    if a.x.max(b.x) < r.x0 || a.x.min(b.x) > r.x1 || a.y.max(b.y) < r.y0 || a.y.min(b.y) > r.y1 {
        return None;
    }
    let d = b - a;
    let (mut t0, mut t1) = (0.0_f64, 1.0_f64);
    for (p, q) in [(-d.x, a.x - r.x0), (d.x, r.x1 - a.x), (-d.y, a.y - r.y0), (d.y, r.y1 - a.y)] {
        if p == 0.0 {
            if q < 0.0 {
                return None;
            }
        } else if p < 0.0 {
            t0 = t0.max(q / p);
        } else {
            t1 = t1.min(q / p);
        }
    }
    (t0 <= t1).then(|| (a + d * t0, a + d * t1))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn segments_are_cut_at_a_window() {
        let r = Rect::new(0.0, 0.0, 2.0, 1.0);
        let (a, b) = clipped(Point::new(-1.0, 0.5), Point::new(3.0, 0.5), &r).unwrap();
        assert_eq!((a, b), (Point::new(0.0, 0.5), Point::new(2.0, 0.5)));
        assert!(clipped(Point::new(-1.0, 2.0), Point::new(3.0, 2.0), &r).is_none());
    }
}
