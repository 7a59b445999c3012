//! Shapes moved by a map, and arcs as paths.

use crate::geom::flatten::{SAGITTA, transformed};
use crate::geom::vocabulary::{Affine, Arc, BezPath, Point, Vec2};
use crate::model::drawing::{Polyline, Shape};
use crate::real::Real;

/// A shape moved by an affine map. Arcs stay arcs under turns, mirrors and even scales; under
/// others they become chords.
pub(super) fn moved(shape: Shape, map: Affine) -> Shape {
    if map == Affine::IDENTITY {
        return shape;
    }
    let [a, b, c, d, ..] = map.as_coeffs();
    let turn = Vec2::new(a, b);
    let scale = turn.hypot();
    match shape {
        Shape::Polyline(p) => {
            let even = (scale - Vec2::new(c, d).hypot()).abs() < 1e-9 * scale
                && (a * c + b * d).abs() < 1e-9 * scale * scale;
            let bulged = p.vertices.iter().any(|v| v.bulge != 0.0);
            if bulged && !even {
                let size = map.determinant().abs().sqrt().max(1e-9);
                let points = p.points(SAGITTA / size).into_iter().map(|q| map * q);
                let mut chords = Polyline::open(points);
                chords.closed = p.closed;
                return Shape::Polyline(chords);
            }
            let sign = if map.determinant() < 0.0 { -1.0 } else { 1.0 };
            let mut p = p;
            for v in &mut p.vertices {
                v.at = map * v.at;
                v.bulge *= sign;
            }
            Shape::Polyline(p)
        }
        Shape::Curve(path) => Shape::Curve(transformed(&path, map)),
        Shape::Hatch(h) => Shape::Hatch(h.moved(map)),
        Shape::Text(t) => Shape::Text(t.moved(map)),
        Shape::Dimension(mut m) => {
            m.from = map * m.from;
            m.to = map * m.to;
            m.line = map * m.line;
            m.angle = m.angle.map(|g| g + turn.atan2().to_degrees());
            m.measured = m.measured.map(|v| v * scale);
            Shape::Dimension(m)
        }
        Shape::Point(p) => Shape::Point(map * p),
    }
}

/// A part of an ellipse: `major` is its half axis, `ratio` the other one's share of it, angles are
/// parameters in radians.
pub(super) fn arc_path(
    center: Point,
    major: Vec2,
    ratio: f64,
    start: f64,
    sweep: f64,
) -> Option<BezPath> {
    let radius = major.hypot();
    if !(radius > 0.0 && ratio != 0.0) {
        return None;
    }
    let sweep = if sweep.abs() < 1e-9 { std::f64::consts::TAU } else { sweep };
    let arc = Arc {
        center,
        radii: Vec2::new(radius, radius * ratio),
        start_angle: start,
        sweep_angle: sweep,
        x_rotation: major.atan2(),
    };
    let mut path = BezPath::new();
    let whole = (sweep.abs() - std::f64::consts::TAU).abs() < 1e-9;
    let first = Affine::translate(center.to_vec2())
        * Affine::rotate(arc.x_rotation)
        * Point::new(radius * start.cosine(), radius * ratio * start.sine());
    path.move_to(first);
    arc.to_cubic_beziers(SAGITTA / 16.0, |a, b, c| path.curve_to(a, b, c));
    if whole {
        path.close_path();
    }
    Some(path)
}
