//! A gable above drawn courses: the wall goes on up to its rake, which of several parallel slopes
//! is the lowest.

use crate::geom::boolean::union_all;
use crate::geom::polygon::{Polygon, bounds, sides};
use crate::geom::segment::Segment;
use crate::geom::tol::snap;
use crate::geom::vocabulary::{Point, Ring};

/// Slopes of roofs, rise over run: 1/2 in 12 to 24 in 12 (common practice, no source).
const SLOPES: std::ops::RangeInclusive<f64> = 0.04..=2.0;
/// How far the rake may stand under the wall's top or break, inches.
const NEAR: f64 = 1.0;
/// Most sloped lines that are looked at: the search is cubic.
const MOST: usize = 120;

/// The wall's ring with what lies between its level top and the lowest slopes above it, where these
/// span the whole top; else the ring as it is.
pub(crate) fn with_gable(ring: Ring, segments: &[Segment]) -> Ring {
    let Some((x0, x1, top)) = level_top(&ring) else { return ring };
    let mut slopes: Vec<Segment> = segments
        .iter()
        .map(|(a, b)| if a.x <= b.x { (*a, *b) } else { (*b, *a) })
        .filter(|(a, b)| b.x - a.x > 6.0 && SLOPES.contains(&((b.y - a.y) / (b.x - a.x)).abs()))
        .filter(|(a, b)| b.x > x0 && a.x < x1 && a.y.max(b.y) > top)
        .collect();
    slopes.sort_by(|s, t| s.0.x.total_cmp(&t.0.x).then(s.0.y.total_cmp(&t.0.y)));
    slopes.truncate(MOST);
    let Some(rake) = lowest(&slopes, x0, x1, top) else { return ring };
    let mut gable: Ring = vec![Point::new(x0, top), Point::new(x1, top)];
    gable.extend(rake.iter().rev().map(|p| Point::new(snap(p.x), snap(p.y.max(top)))));
    gable.dedup();
    let parts = [Polygon::simple(ring.clone()).wound(), Polygon::simple(gable).wound()];
    if parts[1].area() < 1.0 {
        return ring;
    }
    match &union_all(&parts)[..] {
        [one] if one.holes.is_empty() => crate::geom::arrangement::straight(one.outer.clone()),
        _ => ring,
    }
}

/// The wall's top if it is one level side as long as the wall is wide.
fn level_top(ring: &[Point]) -> Option<(f64, f64, f64)> {
    let b = bounds(ring)?;
    let whole = sides(ring)
        .any(|(p, q)| p.y == q.y && p.y == b.y1 && (p.x - q.x).abs() >= b.width() - NEAR);
    whole.then_some((b.x0, b.x1, b.y1))
}

fn height((a, b): &Segment, x: f64) -> f64 {
    a.y + (x - a.x) / (b.x - a.x) * (b.y - a.y)
}

/// The lowest line that the slopes make over the whole of `x0..x1`, left to right.
fn lowest(slopes: &[Segment], x0: f64, x1: f64, top: f64) -> Option<Vec<Point>> {
    let mut xs = vec![x0, x1];
    for (i, s) in slopes.iter().enumerate() {
        xs.extend([s.0.x, s.1.x]);
        for t in &slopes[i + 1..] {
            let (d0, d1) = (height(s, x0) - height(t, x0), height(s, x1) - height(t, x1));
            if d0 * d1 < 0.0 {
                xs.push(x0 + (x1 - x0) * d0 / (d0 - d1));
            }
        }
    }
    xs.retain(|x| *x >= x0 && *x <= x1);
    xs.sort_by(f64::total_cmp);
    xs.dedup_by(|b, a| *b - *a < 1e-6);
    let mut out: Vec<Point> = Vec::new();
    for w in xs.windows(2) {
        let middle = (w[0] + w[1]) / 2.0;
        let over = slopes.iter().filter(|s| s.0.x <= middle && s.1.x >= middle);
        let low = over
            .filter(|s| height(s, middle) >= top - NEAR)
            .min_by(|s, t| height(s, middle).total_cmp(&height(t, middle)))?;
        let (from, to) = (Point::new(w[0], height(low, w[0])), Point::new(w[1], height(low, w[1])));
        match out.last() {
            Some(last) if (last.y - from.y).abs() > NEAR => return None,
            Some(_) => out.push(to),
            None => out.extend([from, to]),
        }
    }
    Some(out)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn seg(x0: f64, y0: f64, x1: f64, y1: f64) -> Segment {
        ((x0, y0).into(), (x1, y1).into())
    }

    #[test]
    fn the_lowest_of_parallel_slopes_is_the_rake() {
        let wall = Polygon::rect(0.0, 0.0, 120.0, 100.0).outer;
        // 6 in 12 both ways with an overhang, drawn three times 4 in apart.
        let mut lines = Vec::new();
        for k in 0..3 {
            let up = 4.0 * f64::from(k);
            lines.push(seg(-12.0, 94.0 + up, 60.0, 130.0 + up));
            lines.push(seg(132.0, 94.0 + up, 60.0, 130.0 + up));
        }
        let ring = with_gable(wall.clone(), &lines);
        // By hand: 120 wide, rise 30: 12000 + 1800.
        assert_eq!(Polygon::simple(ring.clone()).wound().area(), 13_800.0, "{ring:?}");
        // A slope over half of the wall only is no rake.
        assert_eq!(with_gable(wall.clone(), &lines[..1]), wall);
    }
}
