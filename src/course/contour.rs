//! How a piece differs from the straight strip it is cut from: what its ends, notches and cut-outs
//! are, read off its outline.
//!
//! The strip is the box between the piece's ends and its rips. Going round the outline
//! counter-clockwise, every chain of sides that leaves the strip's sides cuts something off: at a
//! foot or head a notch, at an end a slot, round a corner of the strip an end that is not square.

use crate::geom::polygon::Polygon;
use crate::geom::tol::{CUT, MARK, SAME};
use crate::geom::vocabulary::{Point, Rect};
use crate::model::notch::Contour;

/// Distance at which a corner of a contour is one with the line past it, inches: the accuracy of
/// flattened curves, far under the 1/16 in of a saw.
const STRAIGHT: f64 = 1.0 / 256.0;
/// What a bite's box must have more of to be cut, square inches: drawing noise, no source.
const LEAST_AREA: f64 = 0.01;
/// Most slanted sides of a contour whose corners are told one by one; more are chords of a curve.
const MOST_SLANTED: usize = 3;

/// What one chain cuts off, its points on the wall: left to right at a foot or head, else bottom up.
#[derive(Clone, Debug)]
pub(super) struct Bite {
    pub side: BiteSide,
    pub points: Vec<Point>,
}

/// Where a chain leaves the strip.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum BiteSide {
    Bottom,
    Top,
    /// Leaves and comes back to one end.
    Left,
    Right,
    /// Round a corner of the strip, bottom or top, left or right.
    Corner {
        top: bool,
        right: bool,
    },
    /// From foot to head: the whole end.
    Whole {
        right: bool,
    },
    /// A ring within the piece.
    Hole,
}

/// Everything cut off the strip `frame` to leave `shape`.
pub(super) fn bites(shape: &Polygon, frame: Rect) -> Vec<Bite> {
    let mut out: Vec<Bite> = chains(&shape.outer, frame)
        .into_iter()
        .filter_map(|(from, to, points)| bite(from, to, points))
        .collect();
    out.extend(shape.holes.iter().map(|h| {
        let mut ring = h.clone();
        ring.extend(h.first().copied());
        Bite { side: BiteSide::Hole, points: simplified(&ring) }
    }));
    out
}

/// Place on the strip's border, counter-clockwise: foot 0 to 1, right end to 2, head to 3, left end
/// to 4. `None` off it.
fn border(p: Point, f: Rect) -> Option<f64> {
    let near = |a: f64, b: f64| (a - b).abs() <= SAME;
    let share = |a: f64, b: f64| if b > 0.0 { (a / b).clamp(0.0, 1.0) } else { 0.0 };
    let (left, right) = (near(p.x, f.x0), near(p.x, f.x1));
    let (foot, head) = (near(p.y, f.y0), near(p.y, f.y1));
    match (foot, right, head, left) {
        (true, true, ..) => Some(1.0),
        (_, true, true, _) => Some(2.0),
        (_, _, true, true) => Some(3.0),
        (true, _, _, true) => Some(0.0),
        (true, ..) => Some(share(p.x - f.x0, f.width())),
        (_, true, ..) => Some(1.0 + share(p.y - f.y0, f.height())),
        (_, _, true, _) => Some(2.0 + share(f.x1 - p.x, f.width())),
        (_, _, _, true) => Some(3.0 + share(f.y1 - p.y, f.height())),
        _ => None,
    }
}

/// Whether two places on the border are on one side of the strip.
fn together(a: f64, b: f64) -> bool {
    let sides = |t: f64| {
        let k = t.floor() as i64;
        let corner = t.fract() == 0.0;
        (k.rem_euclid(4), if corner { (k - 1).rem_euclid(4) } else { k.rem_euclid(4) })
    };
    let (a, b) = (sides(a), sides(b));
    a.0 == b.0 || a.0 == b.1 || a.1 == b.0 || a.1 == b.1
}

/// Chains of sides that run off the strip's border, each from border to border with its points.
fn chains(ring: &[Point], frame: Rect) -> Vec<(f64, f64, Vec<Point>)> {
    let n = ring.len();
    let on: Vec<Option<f64>> = ring.iter().map(|p| border(*p, frame)).collect();
    let Some(start) = on.iter().position(Option::is_some) else { return Vec::new() };
    let mut out = Vec::new();
    let (mut from, mut points) = (on[start].unwrap_or(0.0), vec![ring[start]]);
    for k in 1..=n {
        let i = (start + k) % n;
        points.push(ring[i]);
        let Some(to) = on[i] else { continue };
        // A side along the border cuts nothing off.
        if points.len() > 2 || !together(from, to) {
            out.push((from, to, std::mem::take(&mut points)));
        }
        (from, points) = (to, vec![ring[i]]);
    }
    out
}

fn bite(from: f64, to: f64, points: Vec<Point>) -> Option<Bite> {
    let mut points = simplified(&points);
    let to = if to <= from { to + 4.0 } else { to };
    // Corners of the strip that are cut off.
    let cut: Vec<i64> =
        (1..8).filter(|c| (*c as f64) > from && (*c as f64) < to).map(|c| c % 4).collect();
    let whole_right = from <= 1.0 && (2.0..=3.0).contains(&to);
    let whole_left = (2.0..=3.0).contains(&from) && to >= 4.0;
    let side = match cut.as_slice() {
        _ if whole_right && from.max(1.0) < to => BiteSide::Whole { right: true },
        _ if whole_left => BiteSide::Whole { right: false },
        [] => match from.floor() as i64 {
            0 => BiteSide::Bottom,
            1 => BiteSide::Right,
            2 => BiteSide::Top,
            _ => BiteSide::Left,
        },
        [1] => BiteSide::Corner { top: false, right: true },
        [2] => BiteSide::Corner { top: true, right: true },
        [3] => BiteSide::Corner { top: true, right: false },
        [0] => BiteSide::Corner { top: false, right: false },
        // More corners than two are left by no course: the end they hang on is told.
        [first, ..] => BiteSide::Whole { right: *first == 1 },
    };
    // Counter-clockwise the head runs to the left and the left end down.
    if matches!(
        side,
        BiteSide::Top
            | BiteSide::Left
            | BiteSide::Corner { right: false, .. }
            | BiteSide::Whole { right: false }
    ) {
        points.reverse();
    }
    let (a, b) = extent(&points);
    // Thinner than drawing noise.
    let (wide, high) = (b.x - a.x, b.y - a.y);
    (wide.max(high) > CUT && wide * high > LEAST_AREA).then_some(Bite { side, points })
}

/// Lower left and upper right of some points.
pub(super) fn extent(points: &[Point]) -> (Point, Point) {
    let none = (
        Point::new(f64::INFINITY, f64::INFINITY),
        Point::new(f64::NEG_INFINITY, f64::NEG_INFINITY),
    );
    points.iter().fold(none, |(a, b), p| {
        (Point::new(a.x.min(p.x), a.y.min(p.y)), Point::new(b.x.max(p.x), b.y.max(p.y)))
    })
}

/// The chain with corners nearer than [`STRAIGHT`] to the line past them left out (Douglas and
/// Peucker, 1973).
pub(super) fn simplified(points: &[Point]) -> Vec<Point> {
    let mut keep = vec![false; points.len()];
    let mut work = vec![(0, points.len().saturating_sub(1))];
    while let Some((a, b)) = work.pop() {
        keep[a] = true;
        keep[b] = true;
        let far = (a + 1..b)
            .map(|i| (i, off_line(points[i], points[a], points[b])))
            .max_by(|p, q| p.1.total_cmp(&q.1));
        if let Some((i, d)) = far
            && d > STRAIGHT
        {
            work.push((a, i));
            work.push((i, b));
        }
    }
    points.iter().zip(keep).filter(|(_, k)| *k).map(|(p, _)| *p).collect()
}

/// Distance of a point from a segment.
fn off_line(p: Point, a: Point, b: Point) -> f64 {
    let v = b - a;
    let along = if v.hypot2() > 0.0 { ((p - a).dot(v) / v.hypot2()).clamp(0.0, 1.0) } else { 0.0 };
    p.distance(a + v * along)
}

/// Whether every side is level or plumb.
pub(super) fn stepped(points: &[Point]) -> bool {
    points.windows(2).all(|w| {
        let v = w[1] - w[0];
        v.x.abs() <= CUT || v.y.abs() <= CUT
    })
}

/// Sides that are neither level nor plumb.
pub(super) fn slanted(points: &[Point]) -> Vec<(Point, Point)> {
    points
        .windows(2)
        .filter(|w| !stepped(w))
        .map(|w| if w[0].y < w[1].y { (w[0], w[1]) } else { (w[1], w[0]) })
        .collect()
}

/// A chain as a cutter marks it: corner by corner, or where it is curved point by point at the
/// widest even spacing that keeps to it, along where it is flat and up where it is steep.
/// `origin` is the piece's left end at its butt line; `spacings` widest first.
pub(super) fn contour(points: &[Point], origin: Point, spacings: &[f64]) -> Contour {
    let own = |list: &[Point]| list.iter().map(|p| [p.x - origin.x, p.y - origin.y]).collect();
    if slanted(points).len() <= MOST_SLANTED {
        return Contour { points: own(points), spacing: None };
    }
    let tried = spacings.iter().map(|s| (*s, spaced(points, origin, *s)));
    let mut last = None;
    for (s, (list, off)) in tried {
        let fits = off <= MARK;
        last = Some(Contour { points: own(&list), spacing: Some(s) });
        if fits {
            break;
        }
    }
    last.unwrap_or_else(|| Contour { points: own(points), spacing: None })
}

/// The points of a chain on lines `s` apart: plumb ones from its first point where it is flatter than
/// 45 degrees, level ones from the butt line where it is steeper; its ends and turns too. With the
/// farthest the chain goes from the straight lines between them.
fn spaced(points: &[Point], origin: Point, s: f64) -> (Vec<Point>, f64) {
    let mut out: Vec<Point> = Vec::new();
    let (mut worst, mut since): (f64, Vec<Point>) = (0.0, Vec::new());
    let first = points.first().copied().unwrap_or(origin);
    let mut take = |p: Point, corner: bool, since: &mut Vec<Point>| {
        // A line through a point of the chain is met by both chords there; a corner stays itself.
        if out.last().is_some_and(|q| q.distance(p) <= STRAIGHT) {
            if let Some(q) = out.last_mut().filter(|_| corner) {
                *q = p;
            }
            return;
        }
        if let Some(q) = out.last() {
            worst = since.iter().map(|r| off_line(*r, *q, p)).fold(worst, f64::max);
        }
        since.clear();
        out.push(p);
    };
    take(first, true, &mut since);
    for (i, w) in points.windows(2).enumerate() {
        let v = w[1] - w[0];
        let flat = v.x.abs() >= v.y.abs();
        let (a, b, zero) =
            if flat { (w[0].x, w[1].x, first.x) } else { (w[0].y, w[1].y, origin.y) };
        let (low, high) = (a.min(b), a.max(b));
        let count = (((low - zero) / s).floor() as i64, ((high - zero) / s).ceil() as i64);
        let mut shares: Vec<f64> = (count.0..=count.1)
            .map(|k| zero + k as f64 * s)
            .filter(|x| *x >= low && *x <= high && high > low)
            .map(|x| (x - a) / (b - a))
            .collect();
        shares.sort_by(f64::total_cmp);
        shares.into_iter().for_each(|t| take(w[0] + v * t, false, &mut since));
        let turn = points.get(i + 2).is_none_or(|next| {
            let u = *next - w[1];
            // A sharp turn is a corner of its own; so is where the chain turns back.
            u.dot(v) < 0.87 * u.hypot() * v.hypot() || u.x * v.x < 0.0 || u.y * v.y < 0.0
        });
        if turn { take(w[1], true, &mut since) } else { since.push(w[1]) }
    }
    (out, worst)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::real::Real;

    fn p(x: f64, y: f64) -> Point {
        Point::new(x, y)
    }

    fn of(outer: Vec<Point>) -> Vec<Bite> {
        let shape = Polygon::simple(outer).wound();
        let b = shape.bounds();
        bites(&shape, b)
    }

    #[test]
    fn a_window_bites_a_notch_and_a_rake_an_end() {
        // A notch 36 wide and 3 deep from the top, 20 from the left; the right end a rake that
        // moves 16 in 8.
        let found = of(vec![
            p(0.0, 0.0),
            p(100.0, 0.0),
            p(84.0, 8.0),
            p(56.0, 8.0),
            p(56.0, 5.0),
            p(20.0, 5.0),
            p(20.0, 8.0),
            p(0.0, 8.0),
        ]);
        assert_eq!(found.len(), 2, "{found:?}");
        assert_eq!(found[0].side, BiteSide::Whole { right: true });
        assert_eq!(found[0].points, [p(100.0, 0.0), p(84.0, 8.0)]);
        assert_eq!(found[1].side, BiteSide::Top);
        assert_eq!(found[1].points, [p(20.0, 8.0), p(20.0, 5.0), p(56.0, 5.0), p(56.0, 8.0)]);
    }

    #[test]
    fn a_peak_has_two_ends_and_nothing_else() {
        // Example::GableOfFour: the top piece of a 4 in 12 gable, 48 wide and 8 high.
        let found = of(vec![p(0.0, 0.0), p(48.0, 0.0), p(24.0, 8.0)]);
        let sides: Vec<BiteSide> = found.iter().map(|b| b.side).collect();
        assert_eq!(sides, [BiteSide::Whole { right: true }, BiteSide::Whole { right: false }]);
        assert_eq!(found[1].points, [p(0.0, 0.0), p(24.0, 8.0)]);
    }

    #[test]
    fn corners_and_slots_are_told_apart() {
        // Lower left corner out 10 by 3; a slot 2 high and 1 deep from the right end; the upper
        // right corner cut by a slope.
        let found = of(vec![
            p(10.0, 0.0),
            p(60.0, 0.0),
            p(60.0, 2.0),
            p(59.0, 2.0),
            p(59.0, 4.0),
            p(60.0, 4.0),
            p(60.0, 5.0),
            p(54.0, 8.0),
            p(0.0, 8.0),
            p(0.0, 3.0),
            p(10.0, 3.0),
        ]);
        let sides: Vec<BiteSide> = found.iter().map(|b| b.side).collect();
        assert_eq!(
            sides,
            [
                BiteSide::Right,
                BiteSide::Corner { top: true, right: true },
                BiteSide::Corner { top: false, right: false },
            ]
        );
    }

    #[test]
    fn a_half_circle_is_marked_within_a_thirty_second() {
        // Radius 9 in, flattened to 64 chords, a course from 1 in over its middle: the mouth is
        // 2 sqrt(81 - 1) wide, the depth 8.
        let arc: Vec<Point> = (0..=64)
            .map(|i| {
                let least = (1.0_f64 / 9.0).arc_sine();
                let a = least + (std::f64::consts::PI - 2.0 * least) * (1.0 - f64::from(i) / 64.0);
                p(40.0 + 9.0 * a.cosine(), 9.0 * a.sine() - 1.0)
            })
            .collect();
        let c = contour(&arc, p(0.0, 0.0), &[4.0, 2.0, 1.0, 0.5, 0.25]);
        assert_eq!(c.spacing, Some(1.0));
        // Sagitta of a chord over one step: every chord's middle lies within 1/32 of the circle.
        for w in c.points.windows(2) {
            let middle = ((w[0][0] + w[1][0]) / 2.0 - 40.0, (w[0][1] + w[1][1]) / 2.0 + 1.0);
            let off = 9.0 - middle.0.hypotenuse(middle.1);
            assert!(off.abs() < 1.0 / 32.0 + 1.0 / 128.0, "{off} at {middle:?}");
        }
        let mouth = c.points[c.points.len() - 1][0] - c.points[0][0];
        assert!((mouth - 2.0 * 80.0_f64.sqrt()).abs() < 1e-9);
    }
}
