//! Union, difference and intersection of polygons, by `geo`, which is named here alone.
//!
//! Coordinates must be finite: `read` refuses the rest, since the engine returns plausible wrong
//! areas for them.

use geo::{BooleanOps, Coord, LineString, MultiPolygon};

use super::polygon::{Polygon, total_area};
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

/// The share of the largest shape that a union may lose to the grid, of 1.
const LOST: f64 = 0.01;

/// All of them as one set without overlaps, in one pass.
pub fn union_all(polygons: &[Polygon]) -> Vec<Polygon> {
    if polygons.is_empty() {
        return Vec::new();
    }
    // The engine tells inside from outside by the first ring's turn: all must turn one way.
    let wound: Vec<Polygon> = polygons.iter().map(|p| p.clone().wound()).collect();
    let whole = from_geo(&geo::unary_union(&to_geo(&wound).0));
    // Nothing together is smaller than the largest of it. A spike that rounding turns over itself makes it so in
    // the engine: without such, part by part.
    let (sum, most) = (total_area(&whole), wound.iter().map(Polygon::area).fold(0.0, f64::max));
    if sum >= most * (1.0 - LOST) {
        return whole;
    }
    let rings = |p: &Polygon| p.rings().cloned().collect::<Vec<Ring>>();
    let clean = wound.iter().map(|p| even_odd(&rings(p)));
    let again = clean.fold(Vec::new(), |all, p| union(&all, &p));
    if total_area(&again) > sum { again } else { whole }
}

/// The area that rings enclose an odd number of times, whichever way they turn.
pub fn even_odd(rings: &[Ring]) -> Vec<Polygon> {
    let all = rings.iter().filter(|r| r.len() >= 3);
    let shapes = MultiPolygon(all.map(|r| geo::Polygon::new(line_string(r), vec![])).collect());
    // The engine's own rule is even-odd.
    from_geo(&shapes.union(&MultiPolygon(Vec::new())))
}

/// Widest slit that is drawn only to join a hole to the outside, inches: a quarter of an inch.
const SLIT: f64 = 0.25;

/// The polygons with slits closed that lead from the outside to a hole.
pub fn without_slits(polygons: Vec<Polygon>) -> Vec<Polygon> {
    polygons.into_iter().flat_map(|p| if has_slit(&p) { closed(&p) } else { vec![p] }).collect()
}

/// Whether two long sides run against each other closer than a slit.
fn has_slit(p: &Polygon) -> bool {
    let sides: Vec<(Point, Point)> = super::polygon::sides(&p.outer).collect();
    if sides.len() > 2000 {
        return false;
    }
    let long: Vec<(Point, Point)> =
        sides.into_iter().filter(|(a, b)| a.distance(*b) > 4.0 * SLIT).collect();
    long.iter().enumerate().any(|(i, (a, b))| {
        let length = a.distance(*b);
        let u = (*b - *a) / length;
        long[i + 1..].iter().any(|(c, d)| {
            let against = u.dot((*d - *c) / c.distance(*d)) < -0.999;
            let (s, t) = ((*c - *a).dot(u), (*d - *a).dot(u));
            let over = s.max(t).min(length) - s.min(t).max(0.0);
            // The body lies to the left of a side: what lies between them on the right is the slit.
            let apart = -u.cross(*c - *a);
            against && over > 2.0 * SLIT && (-1e-9..=SLIT).contains(&apart)
        })
    })
}

/// Grown by half a slit and shrunk again: corners come back where they were.
fn closed(p: &Polygon) -> Vec<Polygon> {
    use geo::algorithm::buffer::{Buffer, BufferStyle, LineJoin};
    let style = |d: f64| BufferStyle::new(d).line_join(LineJoin::Miter(0.1));
    let by = SLIT / 2.0 + 2.0 * super::tol::GRID;
    let grown = to_geo(std::slice::from_ref(p)).buffer_with_style(style(by));
    let back = from_geo(&grown.buffer_with_style(style(-by)));
    let snapped = |q: Point| Point::new(super::tol::snap(q.x), super::tol::snap(q.y));
    back.iter().map(|q| q.map(snapped)).collect()
}

/// The parts of shapes that are narrower than `width`, inches.
pub fn thinner_than(shapes: &[Polygon], width: f64) -> Vec<Polygon> {
    use geo::algorithm::buffer::{Buffer, BufferStyle, LineJoin};
    let style = |d: f64| BufferStyle::new(d).line_join(LineJoin::Miter(0.1));
    let all = to_geo(shapes);
    let body = all.buffer_with_style(style(-width / 2.0));
    // A little wider, so that corners that come back are not taken for parts.
    let body = body.buffer_with_style(style(width / 2.0 + SAME));
    let snapped = |q: Point| Point::new(super::tol::snap(q.x), super::tol::snap(q.y));
    from_geo(&all.difference(&body)).iter().map(|p| p.map(snapped)).collect()
}

#[cfg(test)]
mod tests {
    #[test]
    fn a_keyhole_slit_is_closed_and_leaves_its_hole() {
        // A wall 100 x 50 with a hole 20 x 10 that a slit of 1/8 in joins to the foot.
        let p = |x: f64, y: f64| Point::new(x, y);
        let ring = vec![
            p(0.0, 0.0),
            p(30.0, 0.0),
            p(30.0, 20.0),
            p(20.0, 20.0),
            p(20.0, 30.0),
            p(40.0, 30.0),
            p(40.0, 20.0),
            p(30.125, 20.0),
            p(30.125, 0.0),
            p(100.0, 0.0),
            p(100.0, 50.0),
            p(0.0, 50.0),
        ];
        let whole = without_slits(even_odd(std::slice::from_ref(&ring)));
        assert_eq!(whole.len(), 1);
        assert_eq!(whole[0].holes.len(), 1);
        assert!((total_area(&whole) - 4800.0).abs() < 0.1, "{whole:?}");
        // Without width the engine closes it by itself.
        let thin: Ring =
            ring.iter().map(|q| if q.x == 30.125 { p(30.0, q.y) } else { *q }).collect();
        let whole = without_slits(even_odd(&[thin]));
        assert_eq!((whole.len(), whole[0].holes.len()), (1, 1));
        assert_eq!(total_area(&whole), 4800.0);
        // A band of 1/8 in is a body, not a slit.
        let band = vec![Polygon::rect(0.0, 0.0, 100.0, 0.125)];
        assert_eq!(without_slits(band.clone()), band);
    }

    #[test]
    fn islands_count_by_even_odd() {
        let ring = |a: f64, b: f64| Polygon::rect(a, a, b, b).outer;
        let mut middle = ring(10.0, 90.0);
        middle.reverse();
        let shape = even_odd(&[ring(0.0, 100.0), middle, ring(20.0, 80.0)]);
        assert_eq!(total_area(&shape), 10_000.0 - 6_400.0 + 3_600.0);
    }

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

    #[test]
    fn a_leg_is_thin_and_the_body_it_hangs_on_is_not() {
        use super::*;
        // A body of 20 x 10 with a leg 1 in wide, 8 long, at its foot.
        let ring = [(0, 0), (19, 0), (19, -8), (20, -8), (20, 10), (0, 10)];
        let ring = ring.map(|(x, y)| Point::new(f64::from(x), f64::from(y)));
        let thin = thinner_than(&[Polygon::simple(ring.to_vec())], 2.0);
        assert_eq!(thin.len(), 1);
        assert!((thin[0].area() - 8.0).abs() < 0.2, "{thin:?}");
        assert!(thinner_than(&[Polygon::rect(0.0, 0.0, 20.0, 10.0)], 2.0).is_empty());
    }
}
