//! Splines given by the points they pass through: the smooth cubic curve between them, as control points
//! and knots (G. Farin, Curves and Surfaces for CAGD, chapter on cubic spline interpolation).

use opendwg::object::SplineFit;

/// Control points and knots of a cubic B-spline, each span a Bezier curve of its own.
pub(super) struct Cubic {
    pub(super) points: Vec<[f64; 3]>,
    pub(super) knots: Vec<f64>,
}

/// The curve with continuous curvature through the points, with the tangents given at its ends; without a
/// tangent an end has no curvature. `spacing` says how far apart its parameters lie: by the distance of the
/// points (0), its square root (1), or evenly (2), as the format has it. `None` for fewer than two points.
pub(super) fn cubic(fit: &SplineFit, spacing: i32) -> Option<Cubic> {
    let mut points = fit.points.clone();
    points.dedup();
    if points.len() < 2 || points.iter().flatten().any(|v| !v.is_finite()) {
        return None;
    }
    let spans: Vec<f64> = points.windows(2).map(|w| span(w[0], w[1], spacing)).collect();
    let slopes = slopes(&points, &spans, [fit.begin_tangent, fit.end_tangent]);
    let mut out = Cubic { points: vec![points[0]], knots: vec![0.0; 4] };
    let mut at = 0.0;
    for (i, h) in spans.iter().enumerate() {
        let along = |p: [f64; 3], slope: [f64; 3], by: f64| sum(p, slope, by * h / 3.0);
        out.points.push(along(points[i], slopes[i], 1.0));
        out.points.push(along(points[i + 1], slopes[i + 1], -1.0));
        out.points.push(points[i + 1]);
        at += h;
        out.knots.extend([at; 3]);
    }
    out.knots.push(at);
    Some(out)
}

fn sum(a: [f64; 3], b: [f64; 3], times: f64) -> [f64; 3] {
    std::array::from_fn(|i| a[i] + times * b[i])
}

fn span(a: [f64; 3], b: [f64; 3], spacing: i32) -> f64 {
    let chord = sum(b, a, -1.0).iter().map(|d| d * d).sum::<f64>().sqrt();
    match spacing {
        1 => chord.sqrt(),
        2 => 1.0,
        _ => chord,
    }
}

/// Derivatives at the points, by elimination in the three bands of equal curvature.
fn slopes(points: &[[f64; 3]], spans: &[f64], ends: [[f64; 3]; 2]) -> Vec<[f64; 3]> {
    let last = points.len() - 1;
    let rise = |i: usize| sum(points[i + 1], points[i], -1.0).map(|d| d / spans[i]);
    // Each row: what stands before, on and behind the diagonal, and the right side.
    let row = |i: usize| -> (f64, f64, f64, [f64; 3]) {
        let given = |tangent: [f64; 3]| tangent != [0.0; 3];
        match i {
            0 if given(ends[0]) => (0.0, 1.0, 0.0, ends[0]),
            0 => (0.0, 2.0, 1.0, rise(0).map(|r| 3.0 * r)),
            i if i == last && given(ends[1]) => (0.0, 1.0, 0.0, ends[1]),
            i if i == last => (1.0, 2.0, 0.0, rise(i - 1).map(|r| 3.0 * r)),
            i => {
                let (before, behind) = (spans[i - 1], spans[i]);
                let (a, b) = (rise(i - 1), rise(i));
                let right = std::array::from_fn(|k| 3.0 * (behind * a[k] + before * b[k]));
                (behind, 2.0 * (before + behind), before, right)
            }
        }
    };
    let (mut above, mut out) = (Vec::new(), Vec::<[f64; 3]>::new());
    for i in 0..=last {
        let (before, on, behind, right) = row(i);
        let (carried, known) = match i.checked_sub(1) {
            Some(j) => (above[j], out[j]),
            None => (0.0, [0.0; 3]),
        };
        let pivot = on - before * carried;
        above.push(behind / pivot);
        out.push(sum(right, known, -before).map(|v| v / pivot));
    }
    for i in (0..last).rev() {
        out[i] = sum(out[i], out[i + 1], -above[i]);
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    fn fit(points: &[[f64; 2]], begin_tangent: [f64; 3], end_tangent: [f64; 3]) -> SplineFit {
        let points = points.iter().map(|[x, y]| [*x, *y, 0.0]).collect();
        SplineFit { fit_tol: 0.0, begin_tangent, end_tangent, points }
    }

    #[test]
    fn a_cubic_is_found_again_from_its_points_and_end_slopes() {
        // y = x^3 at 0, 1, 3, with its slopes 0 and 27: the curve with these is that cubic. Over x it has
        // the parameters x, so spans of 1 and 2; by Bezier's rule the first two control points of the
        // second span stand at x = 1 and 1 + 2/3, y = 1 and 1 + 3 * 2/3.
        let points = [[0.0, 0.0, 0.0], [1.0, 1.0, 0.0], [3.0, 27.0, 0.0]];
        let found = slopes(&points, &[1.0, 2.0], [[1.0, 0.0, 0.0], [1.0, 27.0, 0.0]]);
        assert!((found[1][0] - 1.0).abs() < 1e-12 && (found[1][1] - 3.0).abs() < 1e-12);
    }

    #[test]
    fn without_tangents_two_points_are_a_straight_line() {
        let curve = cubic(&fit(&[[0.0, 0.0], [3.0, 6.0]], [0.0; 3], [0.0; 3]), 0).unwrap();
        for (i, p) in curve.points.iter().enumerate() {
            assert!((p[0] - i as f64).abs() < 1e-12 && (p[1] - 2.0 * i as f64).abs() < 1e-12);
        }
        assert_eq!(curve.knots.len(), curve.points.len() + 4);
    }

    #[test]
    fn points_on_one_another_are_one() {
        assert!(cubic(&fit(&[[1.0, 1.0], [1.0, 1.0]], [0.0; 3], [0.0; 3]), 0).is_none());
    }
}
