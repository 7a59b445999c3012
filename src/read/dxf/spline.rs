//! SPLINE: rational and plain B-splines by knot insertion's end result, de Boor evaluation
//! (L. Piegl, W. Tiller, The NURBS Book, 1997, A4.1), sampled as chords.

use super::groups::Groups;
use crate::geom::vocabulary::Point;
use crate::model::drawing::{Polyline, Shape};

/// Highest degree taken; the format's own writers stay below it.
const MOST_DEGREE: usize = 25;
/// Chords a knot span is cut into: a cubic span of a drawn curve is then within 1/64 of a
/// thousandth of its size.
const CHORDS: usize = 16;

/// Steps that sampling a spline takes: each point takes as many as its degree, squared.
pub(super) fn steps(groups: &Groups) -> usize {
    let degree = usize::try_from(groups.int(71)).unwrap_or(0).min(MOST_DEGREE);
    let control = groups.tags.iter().filter(|t| t.code == 10).count();
    control * CHORDS * degree * degree
}

pub(super) fn shape(groups: &Groups) -> Option<Shape> {
    let list = |code: i32| -> Vec<f64> {
        groups.tags.iter().filter(|t| t.code == code).filter_map(|t| t.float()).collect()
    };
    let points = |x: i32| -> Vec<Point> {
        list(x).into_iter().zip(list(x + 10)).map(|(x, y)| Point::new(x, y)).collect()
    };
    let (control, knots, weights) = (points(10), list(40), list(41));
    let degree = usize::try_from(groups.int(71)).ok()?;
    let sampled = if control.is_empty() {
        // Only fit points: the curve passes through them; chords between are the honest reading.
        points(11)
    } else {
        sample(&control, &knots, &weights, degree)?
    };
    if sampled.is_empty() {
        return None;
    }
    // Chords are kept as vertices: a part of a path takes more than twice the room, and a drawing may
    // hold a hundred thousand splines.
    let closed = groups.int(70) & 1 == 1;
    Some(Shape::Polyline(Polyline { closed, ..Polyline::open(sampled) }))
}

/// Points of a B-spline; `None` where knots, weights or degree do not fit together.
pub(super) fn sample(
    control: &[Point],
    knots: &[f64],
    weights: &[f64],
    degree: usize,
) -> Option<Vec<Point>> {
    let n = control.len();
    if degree == 0 || degree > MOST_DEGREE || n <= degree || knots.len() != n + degree + 1 {
        return None;
    }
    if knots.windows(2).any(|w| w[1] < w[0]) || (!weights.is_empty() && weights.len() != n) {
        return None;
    }
    let weight = |i: usize| weights.get(i).copied().unwrap_or(1.0);
    let mut out = vec![];
    for k in degree..n {
        let (a, b) = (knots[k], knots[k + 1]);
        if b - a <= 0.0 {
            continue;
        }
        let first = usize::from(!out.is_empty());
        for i in first..=CHORDS {
            let u = a + (b - a) * i as f64 / CHORDS as f64;
            out.push(at(control, knots, &weight, degree, k, u)?);
        }
    }
    (!out.is_empty()).then_some(out)
}

fn at(
    control: &[Point],
    knots: &[f64],
    weight: &impl Fn(usize) -> f64,
    p: usize,
    k: usize,
    u: f64,
) -> Option<Point> {
    let mut d = [[0.0; 3]; MOST_DEGREE + 1];
    for (to, i) in d.iter_mut().zip(k - p..=k) {
        *to = [control[i].x * weight(i), control[i].y * weight(i), weight(i)];
    }
    for r in 1..=p {
        for j in (r..=p).rev() {
            let (low, high) = (knots[j + k - p], knots[j + 1 + k - r]);
            let t = if high > low { (u - low) / (high - low) } else { 0.0 };
            let before = d[j - 1];
            for (c, b) in d[j].iter_mut().zip(before) {
                *c = (1.0 - t) * b + t * *c;
            }
        }
    }
    let [x, y, w] = d[p];
    (w.abs() > 1e-12).then(|| Point::new(x / w, y / w))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_rational_quadratic_is_a_quarter_circle() {
        // The standard quarter circle: weights 1, sqrt(1/2), 1 (The NURBS Book, example 7.1).
        let control = [Point::new(1.0, 0.0), Point::new(1.0, 1.0), Point::new(0.0, 1.0)];
        let points =
            sample(&control, &[0., 0., 0., 1., 1., 1.], &[1.0, 0.5f64.sqrt(), 1.0], 2).unwrap();
        assert!(points.iter().all(|p| (p.to_vec2().hypot() - 1.0).abs() < 1e-12));
    }

    #[test]
    fn counts_that_do_not_fit_give_none() {
        let control = [Point::ZERO, Point::new(1.0, 1.0)];
        assert!(sample(&control, &[0.0, 1.0], &[], 3).is_none());
        assert!(sample(&control, &[1.0, 0.0, 0.0, 1.0], &[], 1).is_none());
    }
}
