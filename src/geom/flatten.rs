//! Curves to points. A bulge is the tangent of a quarter of the included angle, positive
//! counter-clockwise (`DrawingFact::Bulge`).

use super::vocabulary::{Affine, BezPath, Point, Ring};
use crate::real::Real;

/// Greatest distance between a curve and the chord that stands for it, by default: 1/64 in, a
/// quarter of the finest mark on a tape.
pub const SAGITTA: f64 = 1.0 / 64.0;

/// Most chords one arc is cut into, so that a huge radius cannot fill the memory.
const MOST_CHORDS: f64 = 1024.0;

/// Share of its size that a chord may always stand off a curve: 1/64 in of 1,300 ft, where no house is
/// finer; without it a curve as wide as the limit of coordinates takes a hundred thousand chords.
const FINEST: f64 = 1.0 / (1 << 20) as f64;

/// Most points that one path is flattened to: what follows is left out, and whoever asks can see that
/// there are as many.
pub const MOST_POINTS: usize = 2_000_000;

/// Center, radius, start angle and signed sweep (radians) of a bulged segment; `None` if straight.
pub fn arc_of(a: Point, b: Point, bulge: f64) -> Option<(Point, f64, f64, f64)> {
    let chord = b - a;
    let length = chord.hypot();
    if bulge.abs() < 1e-12 || length == 0.0 {
        return None;
    }
    // DrawingFact::Sagitta: radius = c (1 + b^2) / (4 |b|); the center lies off the chord by the
    // apothem.
    let radius = length * (1.0 + bulge * bulge) / (4.0 * bulge.abs());
    let apothem = length * (1.0 - bulge * bulge) / (4.0 * bulge);
    let normal = chord.turn_90() / length;
    let center = a.midpoint(b) + normal * apothem;
    let start = (a - center).atan2();
    Some((center, radius, start, 4.0 * bulge.arc_tangent()))
}

/// Points of a bulged segment after `a`, up to and including `b`.
pub fn bulge_points(a: Point, b: Point, bulge: f64, sagitta: f64) -> Vec<Point> {
    let Some((center, radius, start, sweep)) = arc_of(a, b, bulge) else { return vec![b] };
    let step = 2.0 * (1.0 - (sagitta / radius).min(1.0)).arc_cosine();
    let chords = (sweep.abs() / step.max(1e-6)).ceil().clamp(1.0, MOST_CHORDS);
    // An even count puts a vertex on the crown, so that the head height is exact.
    let chords = (chords / 2.0).ceil() * 2.0;
    let mut out: Vec<Point> = (1..chords as usize)
        .map(|i| {
            let angle = start + sweep * i as f64 / chords;
            center + radius * super::vocabulary::Vec2::from_angle(angle)
        })
        .collect();
    out.push(b);
    out
}

/// Each subpath of a Bezier path as points, with whether it closes. Not more than `sagitta` off, but for
/// one larger than any drawing of a house; not more than [`MOST_POINTS`].
pub fn path_points(path: &BezPath, sagitta: f64) -> Vec<(Ring, bool)> {
    use super::vocabulary::PathEl;
    let mut out: Vec<(Ring, bool)> = Vec::new();
    let mut points = 0;
    // A box round the control points: curves lie within it, and it takes no roots.
    let size = path.control_box();
    let sagitta = sagitta.max(FINEST * size.width().max(size.height()));
    super::vocabulary::flatten_curve(path, sagitta, |el| match el {
        PathEl::MoveTo(p) => out.push((vec![p], false)),
        PathEl::LineTo(p) if points < MOST_POINTS => {
            points += 1;
            if let Some((ring, _)) = out.last_mut() {
                ring.push(p);
            }
        }
        PathEl::LineTo(_) => {}
        PathEl::ClosePath => {
            if let Some((ring, closed)) = out.last_mut() {
                *closed = true;
                if ring.len() > 1 && ring.first() == ring.last() {
                    ring.pop();
                }
            }
        }
        PathEl::QuadTo(..) | PathEl::CurveTo(..) => {}
    });
    out
}

/// The path with every point moved by `map`.
pub fn transformed(path: &BezPath, map: Affine) -> BezPath {
    map * path.clone()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geom::polygon::signed_area;

    #[test]
    fn quarter_bulge_on_a_ten_inch_chord() {
        // Example::ArchedTops, DrawingFact::Bulge, DrawingFact::Sagitta: bulge tan(90/4 deg), radius 7.0711, sagitta
        // 2.0711.
        let (a, b) = (Point::new(0.0, 0.0), Point::new(10.0, 0.0));
        let (_, radius, _, sweep) = arc_of(a, b, 0.414213562).unwrap();
        assert!((radius - 7.0711).abs() < 1e-4);
        assert!((sweep.to_degrees() - 90.0).abs() < 1e-6);
        let low = bulge_points(a, b, 0.414213562, 1e-4).iter().map(|p| p.y).fold(0.0, f64::min);
        // Counter-clockwise from left to right passes below the chord.
        assert!((low + 2.0711).abs() < 1e-3);
    }

    #[test]
    fn half_circle_over_a_three_foot_window() {
        // Example::ArchedTops: 36 wide, bulge 1: radius 18, 508.94 sq in.
        let (a, b) = (Point::new(36.0, 0.0), Point::new(0.0, 0.0));
        let mut ring = vec![a];
        ring.extend(bulge_points(a, b, 1.0, 1e-4));
        assert!((signed_area(&ring) - 508.94).abs() < 0.05);
        let crown = ring.iter().map(|p| p.y).fold(0.0, f64::max);
        assert!((crown - 18.0).abs() < 1e-9);
    }
}
