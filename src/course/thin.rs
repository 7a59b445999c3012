//! Thin strips of a course: over a head, under a sill, beside a rake. A seam there is two ends that
//! hardly hold, so none shall stand where another place is possible.

use crate::geom::polygon::{Polygon, sides};
use crate::geom::tol::SAME;
use crate::job::Job;

/// Intervals of x where a run is lower than the least strip, each half a lap wider at both sides;
/// none where keeping off them would leave less than a fifth of the places its seams could stand
/// with the fewest panels. `span` holds the panels' ends; `barred` is barred already.
pub(super) fn barred(
    clear: &Polygon,
    span: (f64, f64),
    barred: &[(f64, f64)],
    job: &Job,
) -> Vec<(f64, f64)> {
    // Joints on studs have rules of their own.
    if job.siding().joints.is_on_studs() || span.1 - span.0 <= job.longest_length() + SAME {
        return Vec::new();
    }
    let half = job.lap() / 2.0;
    let wide: Vec<(f64, f64)> = low(clear, job.least_strip() - SAME)
        .into_iter()
        .map(|(a, b)| (a - half, b + half))
        .collect();
    if wide.is_empty() {
        return wide;
    }
    let all: Vec<(f64, f64)> = barred.iter().chain(&wide).copied().collect();
    // Panels of every length must leave places enough.
    let enough = job.panel_stocks().iter().map(|s| s.length).all(|stock| {
        let (before, after) = (places(span, barred, stock, job), places(span, &all, stock, job));
        after > 0 && 5 * after >= before
    });
    if enough { wide } else { Vec::new() }
}

/// How many first pieces, inch by inch, leave every seam of the fewest panels out of `barred`.
fn places(span: (f64, f64), barred: &[(f64, f64)], stock: f64, job: &Job) -> usize {
    let (lap, shortest) = (job.lap(), job.shortest());
    let cover = span.1 - span.0;
    let pitch = stock - lap;
    if pitch <= 0.0 {
        return 0;
    }
    let seams = ((cover - lap) / pitch).ceil().max(2.0) as usize - 1;
    // What the last piece is longer than the first is shorter.
    let both = cover - (seams - 1) as f64 * pitch + lap;
    let (least, most) = ((both - stock).max(shortest), (both - shortest).min(stock));
    let free = |x: f64| !barred.iter().any(|(a, b)| *a < x && x < *b);
    let count = (most - least).floor().max(-1.0) as i64 + 1;
    (0..count)
        .map(|i| span.0 + least + i as f64 - lap / 2.0)
        .filter(|first| (0..seams).all(|k| free(first + k as f64 * pitch)))
        .count()
}

/// Intervals of x where a shape is lower than `least`, left to right.
fn low(shape: &Polygon, least: f64) -> Vec<(f64, f64)> {
    let mut xs: Vec<f64> = shape.rings().flat_map(|r| r.iter().map(|p| p.x)).collect();
    xs.sort_by(f64::total_cmp);
    xs.dedup_by(|a, b| (*a - *b).abs() <= SAME);
    let mut out: Vec<(f64, f64)> = Vec::new();
    for pair in xs.windows(2) {
        let (a, b) = (pair[0], pair[1]);
        // Sides are straight between corners, so heights are in proportion.
        let tiny = (b - a) * 1e-6;
        let (left, right) = (height(shape, a + tiny), height(shape, b - tiny));
        let at = |h: f64| a + (h - left) / (right - left) * (b - a);
        let part = match (left < least, right < least) {
            (true, true) => (a, b),
            (true, false) => (a, at(least)),
            (false, true) => (at(least), b),
            (false, false) => continue,
        };
        match out.last_mut() {
            Some(last) if part.0 <= last.1 + SAME => last.1 = part.1,
            _ => out.push(part),
        }
    }
    out
}

/// The highest unbroken part of a shape at `x`.
fn height(shape: &Polygon, x: f64) -> f64 {
    let mut ys: Vec<f64> = shape
        .rings()
        .flat_map(|ring| sides(ring))
        .filter(|(a, b)| (a.x > x) != (b.x > x))
        .map(|(a, b)| a.y + (x - a.x) / (b.x - a.x) * (b.y - a.y))
        .collect();
    ys.sort_by(f64::total_cmp);
    ys.chunks_exact(2).map(|c| c[1] - c[0]).fold(0.0, f64::max)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geom::vocabulary::Point;

    /// A course 8 in high from 0 to `width` with a notch that leaves `kept` from 100 to 140.
    fn notched(width: f64, kept: f64) -> Polygon {
        let at = |x: f64, y: f64| Point::new(x, y);
        Polygon::simple(vec![
            at(0.0, 0.0),
            at(100.0, 0.0),
            at(100.0, 8.0 - kept),
            at(140.0, 8.0 - kept),
            at(140.0, 0.0),
            at(width, 0.0),
            at(width, 8.0),
            at(0.0, 8.0),
        ])
    }

    #[test]
    fn a_strip_over_a_head_bars_its_width_and_half_a_lap() {
        let job = Job::default(); // least strip 2 in, lap 1 1/4
        let thin = barred(&notched(380.0, 1.5), (0.0, 380.0), &[], &job);
        assert_eq!(thin, [(100.0 - 0.625, 140.0 + 0.625)]);
        assert!(barred(&notched(380.0, 2.5), (0.0, 380.0), &[], &job).is_empty());
        // One panel covers the run: it has no seam.
        assert!(barred(&notched(150.0, 1.5), (0.0, 150.0), &[], &job).is_empty());
    }

    #[test]
    fn where_there_is_no_other_place_nothing_is_barred() {
        // Two panels cover 298 in only with a seam within an inch of 149.4 (150 - 5/8): barred from
        // 99 to 141 leaves it free, a notch there does not.
        let job = Job::default();
        assert!(!barred(&notched(298.0, 1.5), (0.0, 298.0), &[], &job).is_empty());
        let over: Polygon = notched(298.0, 1.5).map(|p| Point::new(298.0 - p.x, p.y)).wound();
        assert_eq!(low(&over, 2.0), [(158.0, 198.0)]);
        let middle = over.map(|p| {
            let x = if p.x > 0.0 && p.x < 298.0 { p.x - 30.0 } else { p.x };
            Point::new(x, p.y)
        });
        assert_eq!(low(&middle, 2.0), [(128.0, 168.0)]);
        assert!(barred(&middle, (0.0, 298.0), &[], &job).is_empty());
    }

    #[test]
    fn beside_a_rake_the_low_end_is_thin() {
        let rake = Polygon::simple(vec![
            Point::new(0.0, 0.0),
            Point::new(300.0, 0.0),
            Point::new(300.0, 8.0),
            Point::new(16.0, 8.0),
        ]);
        // 6 in 12: 2 in high 4 in along.
        let found = low(&rake, 2.0);
        assert_eq!(found.len(), 1);
        assert!((found[0].1 - 4.0).abs() < 1e-3, "{found:?}");
    }
}
