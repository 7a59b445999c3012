//! Lines, arcs, polylines, splines, filled corners and faces.

use opendwg::object::entities::poly::LWPOLYLINE_CLOSED;
use opendwg::object::{
    Circle, Entity, LwPolyline, Polyline2d, Polyline3d, Solid, Spline, SplineForm,
};

use super::fit;
use super::pairs::Pairs;

/// The pairs of such an entity; none for another.
pub(super) fn groups(pairs: &mut Pairs, entity: &Entity) {
    match entity {
        Entity::Line(line) => {
            pairs.point(10, line.start);
            pairs.point(11, line.end);
            pairs.extrusion(line.extrusion);
        }
        Entity::Point(point) => pairs.point(10, point.position),
        Entity::Circle(circle) => round(pairs, circle),
        Entity::Arc(arc) => {
            round(pairs, &arc.circle);
            pairs.angle(50, arc.start_angle);
            pairs.angle(51, arc.end_angle);
        }
        Entity::Ellipse(e) => {
            pairs.point(10, e.center);
            pairs.point(11, e.major_axis);
            pairs.float(40, e.axis_ratio);
            pairs.float(41, e.start_angle);
            pairs.float(42, e.end_angle);
            pairs.extrusion(e.extrusion);
        }
        Entity::Solid(solid) | Entity::Trace(solid) => filled(pairs, solid),
        Entity::Face3d(face) => {
            (10..).zip(face.corners).for_each(|(code, corner)| pairs.point(code, corner));
        }
        Entity::LwPolyline(line) => lwpolyline(pairs, line),
        Entity::Polyline2d(line) => polyline(pairs, line),
        Entity::Polyline3d(line) => in_space(pairs, line),
        Entity::PolygonMesh(mesh) => pairs.int(70, mesh.flags | 16),
        Entity::PolyfaceMesh(_) => pairs.int(70, 64),
        Entity::Spline(spline) => self::spline(pairs, spline),
        // Of what is not read, only where it stands is told.
        Entity::Ray(ray) | Entity::Xline(ray) => pairs.point(10, ray.point),
        Entity::Shape(shape) => pairs.point(10, shape.insertion),
        Entity::MLine(line) => pairs.point(10, line.base_point),
        Entity::Image(image) | Entity::Wipeout(image) => pairs.point(10, image.insertion),
        _ => {}
    }
}

fn round(pairs: &mut Pairs, circle: &Circle) {
    pairs.point(10, circle.center);
    pairs.float(40, circle.radius);
    pairs.extrusion(circle.extrusion);
}

fn filled(pairs: &mut Pairs, solid: &Solid) {
    for (code, [x, y]) in (10..).zip(solid.corners) {
        pairs.point(code, [x, y, solid.elevation]);
    }
    pairs.extrusion(solid.extrusion);
}

fn lwpolyline(pairs: &mut Pairs, line: &LwPolyline) {
    pairs.count(90, line.points.len());
    pairs.int(70, i64::from(line.flags & LWPOLYLINE_CLOSED != 0));
    pairs.float(38, line.elevation);
    for (i, at) in line.points.iter().enumerate() {
        pairs.flat(10, *at);
        if let Some(bulge) = line.bulges.get(i).filter(|b| **b != 0.0) {
            pairs.float(42, *bulge);
        }
    }
    pairs.extrusion(line.extrusion);
}

fn polyline(pairs: &mut Pairs, line: &Polyline2d) {
    pairs.int(66, 1);
    pairs.int(70, line.flags);
    pairs.point(10, [0.0, 0.0, line.elevation]);
    pairs.extrusion(line.extrusion);
}

/// Flags of group 70: closed 1, with a curve through it 4, in space 8 (DXF reference).
fn in_space(pairs: &mut Pairs, line: &Polyline3d) {
    pairs.int(66, 1);
    let splined = if line.spline_flags & 3 != 0 { 4 } else { 0 };
    pairs.int(70, i64::from(line.closed_flags & 1) | 8 | splined);
}

/// A vertex of a polyline; its point and flags.
pub(super) fn vertex(pairs: &mut Pairs, entity: &Entity) {
    match entity {
        Entity::Vertex2d(v) => {
            pairs.point(10, v.point);
            pairs.float(42, v.bulge);
            pairs.int(70, i64::from(v.flags));
        }
        Entity::Vertex3d(v) | Entity::VertexMesh(v) | Entity::VertexPface(v) => {
            pairs.point(10, v.point);
            pairs.int(70, i64::from(v.flags));
        }
        _ => pairs.int(70, 128),
    }
}

/// Flags of group 70: closed 1, periodic 2, rational 4, flat 8 (DXF reference).
fn spline(pairs: &mut Pairs, spline: &Spline) {
    match &spline.form {
        SplineForm::Control(form) => {
            pairs.int(71, spline.degree);
            let weights = form.weights.as_deref().unwrap_or_default();
            let flags = i64::from(form.closed)
                | i64::from(form.periodic) << 1
                | i64::from(!weights.is_empty()) << 2;
            pairs.int(70, flags);
            form.knots.iter().for_each(|k| pairs.float(40, *k));
            weights.iter().for_each(|w| pairs.float(41, *w));
            form.points.iter().for_each(|p| pairs.point(10, *p));
        }
        SplineForm::Fit(form) => match fit::cubic(form, spline.knot_parameter) {
            Some(curve) => {
                pairs.int(71, 3);
                curve.knots.iter().for_each(|k| pairs.float(40, *k));
                curve.points.iter().for_each(|p| pairs.point(10, *p));
            }
            None => form.points.iter().for_each(|p| pairs.point(11, *p)),
        },
    }
}
