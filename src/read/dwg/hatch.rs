//! A hatch: its loops, and the line families of its pattern.

use opendwg::object::entities::hatch::PATH_POLYLINE;
use opendwg::object::{
    Entity, Hatch, HatchEdge, HatchPattern, HatchSpline, PathEdges, PolylinePath,
};

use super::pairs::Pairs;

/// The pairs of a hatch; none for another entity.
pub(super) fn groups(pairs: &mut Pairs, entity: &Entity) {
    let Entity::Hatch(hatch) = entity else { return };
    pairs.point(10, [0.0, 0.0, hatch.elevation]);
    pairs.extrusion(hatch.extrusion);
    pairs.text(2, &hatch.pattern_name);
    pairs.int(70, i64::from(hatch.pattern.is_none()));
    loops(pairs, hatch);
    pairs.int(75, hatch.style);
    pairs.int(76, hatch.pattern_type);
    if let Some(pattern) = &hatch.pattern {
        families(pairs, pattern);
    }
}

fn loops(pairs: &mut Pairs, hatch: &Hatch) {
    pairs.count(91, hatch.paths.len());
    for path in &hatch.paths {
        match &path.edges {
            PathEdges::Polyline(line) => {
                pairs.int(92, path.flags | PATH_POLYLINE);
                polyline(pairs, line);
            }
            PathEdges::Edges(edges) => {
                pairs.int(92, path.flags & !PATH_POLYLINE);
                pairs.count(93, edges.len());
                edges.iter().for_each(|e| edge(pairs, e));
            }
        }
    }
}

fn polyline(pairs: &mut Pairs, line: &PolylinePath) {
    pairs.int(72, i64::from(line.has_bulges));
    pairs.int(73, i64::from(line.closed));
    pairs.count(93, line.vertices.len());
    for vertex in &line.vertices {
        pairs.flat(10, vertex.point);
        if line.has_bulges {
            pairs.float(42, vertex.bulge);
        }
    }
}

/// Sorts of edges in group 72 (DXF reference): 1 line, 2 arc, 3 part of an ellipse, 4 spline.
fn edge(pairs: &mut Pairs, edge: &HatchEdge) {
    match edge {
        HatchEdge::Line { start, end } => {
            pairs.int(72, 1);
            pairs.flat(10, *start);
            pairs.flat(11, *end);
        }
        HatchEdge::CircularArc { center, radius, start_angle, end_angle, ccw } => {
            pairs.int(72, 2);
            pairs.flat(10, *center);
            pairs.float(40, *radius);
            swept(pairs, *start_angle, *end_angle, *ccw);
        }
        HatchEdge::EllipticArc { center, major_end, ratio, start_angle, end_angle, ccw } => {
            pairs.int(72, 3);
            pairs.flat(10, *center);
            pairs.flat(11, *major_end);
            pairs.float(40, *ratio);
            swept(pairs, *start_angle, *end_angle, *ccw);
        }
        HatchEdge::Spline(s) => spline(pairs, s),
    }
}

fn swept(pairs: &mut Pairs, start: f64, end: f64, ccw: bool) {
    pairs.angle(50, start);
    pairs.angle(51, end);
    pairs.int(73, i64::from(ccw));
}

fn spline(pairs: &mut Pairs, spline: &HatchSpline) {
    pairs.int(72, 4);
    pairs.int(94, spline.degree);
    pairs.int(73, i64::from(spline.rational));
    pairs.int(74, i64::from(spline.periodic));
    pairs.count(95, spline.knots.len());
    pairs.count(96, spline.control_points.len());
    spline.knots.iter().for_each(|k| pairs.float(40, *k));
    for (at, weight) in &spline.control_points {
        pairs.flat(10, *at);
        if spline.rational {
            pairs.float(42, *weight);
        }
    }
}

fn families(pairs: &mut Pairs, pattern: &HatchPattern) {
    pairs.angle(52, pattern.angle);
    pairs.float(41, pattern.scale);
    pairs.int(77, i64::from(pattern.double));
    pairs.count(78, pattern.lines.len());
    for line in &pattern.lines {
        pairs.angle(53, line.angle);
        pairs.float(43, line.base[0]);
        pairs.float(44, line.base[1]);
        pairs.float(45, line.offset[0]);
        pairs.float(46, line.offset[1]);
        pairs.count(79, line.dashes.len());
        line.dashes.iter().for_each(|d| pairs.float(49, *d));
    }
}
