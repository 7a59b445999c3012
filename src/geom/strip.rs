//! Level strips of polygons: what a course sees of a wall.

use super::boolean::intersection;
use super::polygon::{Polygon, bounds, sides};
use super::vocabulary::{Point, Rect};

/// The parts of `shapes` between heights `y0` and `y1`, left to right.
pub fn clip_band(shapes: &[Polygon], y0: f64, y1: f64) -> Vec<Polygon> {
    clip(shapes, |b| Rect::new(b.x0 - 1.0, y0, b.x1 + 1.0, y1))
}

/// The parts of `shapes` between `x0` and `x1`.
pub fn clip_span(shapes: &[Polygon], x0: f64, x1: f64) -> Vec<Polygon> {
    clip(shapes, |b| Rect::new(x0, b.y0 - 1.0, x1, b.y1 + 1.0))
}

fn clip(shapes: &[Polygon], window: impl Fn(Rect) -> Rect) -> Vec<Polygon> {
    let Some(all) = bounds(shapes.iter().flat_map(|p| &p.outer)) else { return Vec::new() };
    let w = window(all);
    if w.x1 <= w.x0 || w.y1 <= w.y0 {
        return Vec::new();
    }
    // Whole shapes outside the window are dropped before the engine sees them.
    let near: Vec<Polygon> = shapes
        .iter()
        .filter(|p| {
            let b = p.bounds();
            b.x1 > w.x0 && b.x0 < w.x1 && b.y1 > w.y0 && b.y0 < w.y1
        })
        .cloned()
        .collect();
    intersection(&near, &[Polygon::rect(w.x0, w.y0, w.x1, w.y1)])
}

/// From where to where a ring reaches between heights `y0` and `y1`; none where it does not.
pub fn reach_in_band(ring: &[Point], y0: f64, y1: f64) -> Option<(f64, f64)> {
    let part = clip_band(&[Polygon::simple(ring.to_vec()).wound()], y0, y1);
    bounds(part.iter().flat_map(|p| &p.outer)).map(|r| (r.x0, r.x1))
}

/// The x intervals that `shapes` cover at height `y`, sorted; `y` should miss every vertex.
pub fn intervals_at(shapes: &[Polygon], y: f64) -> Vec<(f64, f64)> {
    let mut xs: Vec<f64> = shapes
        .iter()
        .flat_map(Polygon::rings)
        .flat_map(|ring| sides(ring))
        .filter(|(a, b)| (a.y > y) != (b.y > y))
        .map(|(a, b)| a.x + (y - a.y) / (b.y - a.y) * (b.x - a.x))
        .collect();
    xs.sort_by(f64::total_cmp);
    xs.chunks_exact(2).map(|c| (c[0], c[1])).filter(|(a, b)| b > a).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geom::polygon::total_area;

    #[test]
    fn six_strips_of_a_gable_sum_to_the_gable() {
        // Example::GableOfFour: 8 in courses of a 24 ft, 4 in 12 gable; bottom widths 288, 240 .. 48.
        let gable = [Polygon::simple(vec![
            Point::new(0.0, 0.0),
            Point::new(288.0, 0.0),
            Point::new(144.0, 48.0),
        ])];
        let mut sum = 0.0;
        for i in 0..6 {
            let strip = clip_band(&gable, 8.0 * f64::from(i), 8.0 * f64::from(i + 1));
            assert!((strip[0].bounds().width() - (288.0 - 48.0 * f64::from(i))).abs() < 1e-9);
            sum += total_area(&strip);
        }
        assert!((sum - 48.0 * 144.0).abs() < 1e-6);
        assert_eq!(intervals_at(&gable, 24.0), [(72.0, 216.0)]);
    }
}
