//! Polygons with holes.

use super::tol::{SAME, same};
use super::vocabulary::{Point, Rect, Ring};
use crate::real::Total;

/// One face: an outer ring and the rings of its holes. Outer rings run counter-clockwise, holes
/// clockwise, once [`Polygon::wound`] has been called; boolean results are wound.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Polygon {
    /// The outside.
    pub outer: Ring,
    /// What is cut out of it.
    pub holes: Vec<Ring>,
}

/// Signed area of a ring by the shoelace rule, square inches; counter-clockwise is positive.
pub fn signed_area(ring: &[Point]) -> f64 {
    let Some(&origin) = ring.first() else { return 0.0 };
    // Taken about the first point: far from zero the products would lose digits.
    sides(ring).map(|(a, b)| (a - origin).cross(b - origin)).sum::<f64>() / 2.0
}

/// The sides of a ring, each as (from, to), the closing side last.
pub fn sides(ring: &[Point]) -> impl Iterator<Item = (Point, Point)> + '_ {
    ring.iter().copied().zip(ring.iter().copied().cycle().skip(1)).take(ring.len())
}

/// The bounding box of some points, or `None` where there are none.
pub fn bounds<'a>(points: impl IntoIterator<Item = &'a Point>) -> Option<Rect> {
    points.into_iter().fold(None, |acc: Option<Rect>, p| {
        let here = Rect::from_points(*p, *p);
        Some(acc.map_or(here, |r| r.union(here)))
    })
}

/// Whether `p` lies inside `ring` (even-odd). Points on a side may fall either way.
pub fn ring_contains(ring: &[Point], p: Point) -> bool {
    sides(ring)
        .filter(|(a, b)| (a.y > p.y) != (b.y > p.y))
        .filter(|(a, b)| p.x < a.x + (p.y - a.y) / (b.y - a.y) * (b.x - a.x))
        .count()
        % 2
        == 1
}

/// Whether a ring is a level rectangle but for drawing noise, whatever points stand along its sides.
pub fn is_level_rectangle(ring: &[Point]) -> bool {
    let Some(b) = bounds(ring) else { return false };
    let on = |p: &Point| same(p.x, b.x0) || same(p.x, b.x1) || same(p.y, b.y0) || same(p.y, b.y1);
    let missing = (b.area() - signed_area(ring).abs()).abs();
    // A sloped sill that a wall's foot cuts off leaves little missing, and is no corner.
    let along = |(p, q): (Point, Point)| {
        let both = |u: f64, v: f64, line: f64| same(u, line) && same(v, line);
        let upright = both(p.x, q.x, b.x0) || both(p.x, q.x, b.x1);
        upright || both(p.y, q.y, b.y0) || both(p.y, q.y, b.y1)
    };
    let round = missing <= SAME * (b.width() + b.height());
    ring.iter().all(on) && round && sides(ring).all(along)
}

impl Polygon {
    /// A polygon without holes.
    pub fn simple(outer: Ring) -> Self {
        Polygon { outer, holes: Vec::new() }
    }

    /// An axis-aligned rectangle, counter-clockwise from its lower left corner.
    pub fn rect(x0: f64, y0: f64, x1: f64, y1: f64) -> Self {
        Self::simple(vec![
            Point::new(x0, y0),
            Point::new(x1, y0),
            Point::new(x1, y1),
            Point::new(x0, y1),
        ])
    }

    /// Area less holes, square inches.
    pub fn area(&self) -> f64 {
        signed_area(&self.outer).abs()
            - self.holes.iter().map(|h| signed_area(h).abs()).sum::<f64>()
    }

    /// The box round the outer ring; a zero box at the origin for an empty polygon.
    pub fn bounds(&self) -> Rect {
        bounds(&self.outer).unwrap_or(Rect::ZERO)
    }

    /// Whether `p` is inside the outer ring and in no hole.
    pub fn contains(&self, p: Point) -> bool {
        ring_contains(&self.outer, p) && !self.holes.iter().any(|h| ring_contains(h, p))
    }

    /// Outer ring then holes.
    pub fn rings(&self) -> impl Iterator<Item = &Ring> {
        std::iter::once(&self.outer).chain(&self.holes)
    }

    /// The same polygon, outer ring counter-clockwise and holes clockwise.
    pub fn wound(mut self) -> Self {
        if signed_area(&self.outer) < 0.0 {
            self.outer.reverse();
        }
        for hole in &mut self.holes {
            if signed_area(hole) > 0.0 {
                hole.reverse();
            }
        }
        self
    }

    /// The polygon with each point passed through `f`.
    pub fn map(&self, f: impl Fn(Point) -> Point) -> Self {
        let ring = |r: &Ring| r.iter().map(|p| f(*p)).collect();
        Polygon { outer: ring(&self.outer), holes: self.holes.iter().map(ring).collect() }
    }
}

/// Sum of areas, square inches.
pub fn total_area(polygons: &[Polygon]) -> f64 {
    // An empty sum is -0 in Rust.
    polygons.iter().map(Polygon::area).total()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn area_of_a_gable_is_half_base_times_height() {
        // Example::GableOfFour: span 24 ft, 4 in 12, 48 sq ft.
        let gable = Polygon::simple(vec![
            Point::new(0.0, 0.0),
            Point::new(288.0, 0.0),
            Point::new(144.0, 48.0),
        ]);
        assert_eq!(gable.area() / 144.0, 48.0);
    }

    #[test]
    fn a_level_rectangle_is_told_from_what_has_its_box() {
        let ring = |points: &[(f64, f64)]| -> Vec<Point> {
            points.iter().map(|p| Point::new(p.0, p.1)).collect()
        };
        let with_a_point =
            ring(&[(0.0, 0.0), (5.0, 0.0), (36.0, 0.002), (36.0, 48.0), (0.0, 48.0)]);
        assert!(is_level_rectangle(&with_a_point));
        assert!(!is_level_rectangle(&ring(&[(0.0, 0.0), (36.0, 0.5), (36.0, 48.0), (0.0, 48.0)])));
        assert!(!is_level_rectangle(&ring(&[(6.0, 0.0), (36.0, 0.0), (30.0, 48.0), (0.0, 48.0)])));
    }

    #[test]
    fn holes_count_against_the_area_and_are_not_inside() {
        let mut p = Polygon::rect(0.0, 0.0, 10.0, 10.0);
        p.holes.push(Polygon::rect(2.0, 2.0, 4.0, 4.0).outer);
        let p = p.wound();
        assert_eq!(p.area(), 96.0);
        assert!(!p.contains(Point::new(3.0, 3.0)));
        assert!(p.contains(Point::new(5.0, 5.0)));
        assert!(signed_area(&p.holes[0]) < 0.0);
    }
}
