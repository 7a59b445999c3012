//! Union, difference and intersection of polygons, by `geo`, which is named here alone.
//!
//! Coordinates must be finite: `read` refuses the rest, since the engine returns plausible wrong
//! areas for them.

use geo::{BooleanOps, Coord, LineString, MultiPolygon};

use super::polygon::Polygon;
use super::tol::SAME;
use super::vocabulary::{Point, Ring};

fn line_string(ring: &Ring) -> LineString<f64> {
    let mut out: Vec<Coord<f64>> = ring.iter().map(|p| Coord { x: p.x, y: p.y }).collect();
    out.extend(out.first().copied());
    LineString(out)
}

fn to_geo(polygons: &[Polygon]) -> MultiPolygon<f64> {
    MultiPolygon(
        polygons
            .iter()
            .filter(|p| p.outer.len() >= 3)
            .map(|p| {
                geo::Polygon::new(line_string(&p.outer), p.holes.iter().map(line_string).collect())
            })
            .collect(),
    )
}

fn ring(line: &LineString<f64>) -> Ring {
    let mut points: Ring = line.0.iter().map(|c| Point::new(c.x, c.y)).collect();
    if points.len() > 1 && points.first() == points.last() {
        points.pop();
    }
    points
}

fn from_geo(shapes: &MultiPolygon<f64>) -> Vec<Polygon> {
    let mut out: Vec<Polygon> = shapes
        .0
        .iter()
        .map(|p| {
            Polygon {
                outer: ring(p.exterior()),
                holes: p.interiors().iter().map(ring).filter(|h| h.len() >= 3).collect(),
            }
            .wound()
        })
        // Slivers thinner than drawing noise are the engine's, not the house's.
        .filter(|p| p.outer.len() >= 3 && p.area() > SAME * SAME)
        .collect();
    // The engine's order is its own; ours is left to right, then bottom to top.
    out.sort_by(|a, b| {
        let (a, b) = (a.bounds(), b.bounds());
        a.x0.total_cmp(&b.x0).then(a.y0.total_cmp(&b.y0))
    });
    out
}

/// What is in `a` or in `b`.
pub fn union(a: &[Polygon], b: &[Polygon]) -> Vec<Polygon> {
    from_geo(&to_geo(a).union(&to_geo(b)))
}

/// What is in `a` and in `b`.
pub fn intersection(a: &[Polygon], b: &[Polygon]) -> Vec<Polygon> {
    from_geo(&to_geo(a).intersection(&to_geo(b)))
}

/// What is in `a` and not in `b`.
pub fn difference(a: &[Polygon], b: &[Polygon]) -> Vec<Polygon> {
    if b.is_empty() {
        return from_geo(&to_geo(a).union(&MultiPolygon(Vec::new())));
    }
    from_geo(&to_geo(a).difference(&to_geo(b)))
}

/// All of them as one set without overlaps, in one pass.
pub fn union_all(polygons: &[Polygon]) -> Vec<Polygon> {
    if polygons.is_empty() {
        return Vec::new();
    }
    // The engine tells inside from outside by the first ring's turn: all must turn one way.
    let wound: Vec<Polygon> = polygons.iter().map(|p| p.clone().wound()).collect();
    from_geo(&geo::unary_union(&to_geo(&wound).0))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geom::polygon::total_area;

    #[test]
    fn overlapping_shapes_count_once_whichever_way_they_turn() {
        let mut back = Polygon::rect(5.0, 0.0, 15.0, 10.0);
        back.outer.reverse();
        let all = [Polygon::rect(0.0, 0.0, 10.0, 10.0), back, Polygon::rect(20.0, 0.0, 21.0, 1.0)];
        assert_eq!(total_area(&union_all(&all)), 151.0);
    }

    #[test]
    fn a_wall_less_its_window_keeps_exact_area_and_vertices() {
        let wall = [Polygon::rect(0.0, 0.0, 300.0, 96.0)];
        let window = [Polygon::rect(100.0, 36.0, 136.0, 84.0)];
        let field = difference(&wall, &window);
        assert_eq!(field.len(), 1);
        assert_eq!(total_area(&field), 300.0 * 96.0 - 36.0 * 48.0);
        assert_eq!(field[0].holes.len(), 1);
    }
}
