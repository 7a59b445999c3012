//! An opening's outline as what trim goes along: straight parts, each under, beside or over the
//! opening, and curves, found from the outline's points alone.

use super::along::reach;
use super::scan::{Spans, joined};
use super::tolerance::NEAR;
use crate::geom::tol::SAME;
use crate::geom::vocabulary::Xy;
use crate::layout::wall::LaidEdge;
use crate::model::house::EdgeKind;
use crate::real::Real;

/// Greatest turn from chord to chord of a curve, degrees; sides that turn more meet in a corner.
const CHORDS_TURN: f64 = 40.0;
/// Chords of one curve that meet differ in length by less than this.
const CHORDS_RATIO: f64 = 3.0;
/// Rise over run from which a side is steep: 45.1 degrees.
const STEEP: f64 = 1.0035;
/// How far a corner may lie off the line past it that makes one side of two, inches.
const STRAIGHT: f64 = 1.0 / 64.0;
/// Parts shorter than this take no trim of their own, inches.
pub(super) const LEAST: f64 = 1.0;

/// One straight part or one curve of an outline, the opening on its left hand.
#[derive(Clone, Debug)]
pub(super) struct Part {
    /// Its ends, and of a curve the points between.
    pub(super) points: Vec<Xy>,
    /// Whether it is a curve.
    pub(super) is_curved: bool,
    /// Where siding meets it, inches from its first point along it.
    pub(super) met: Spans,
}

impl Part {
    /// First and last point.
    pub(super) fn ends(&self) -> (Xy, Xy) {
        let first = self.points.first().copied().unwrap_or_default();
        (first, self.points.last().copied().unwrap_or(first))
    }

    /// How long it is.
    pub(super) fn length(&self) -> f64 {
        self.points.windows(2).map(|w| reach(w[0], w[1])).sum()
    }

    /// What it is to the siding: the opening lies on the left hand, so a sill runs to the right.
    pub(super) fn kind(&self) -> EdgeKind {
        let (a, b) = self.ends();
        kind(a, b)
    }

    /// Whether siding meets it at its first end, at its last one.
    pub(super) fn is_met(&self, at_end: bool) -> bool {
        let whole = self.length();
        self.met.iter().any(|s| if at_end { s.1 > whole - NEAR } else { s.0 < NEAR })
    }

    /// The place at a distance along it.
    pub(super) fn place(&self, along: f64) -> Xy {
        let mut left = along;
        for w in self.points.windows(2) {
            let long = reach(w[0], w[1]);
            if left <= long && long > 0.0 {
                let k = left / long;
                return [w[0][0] + (w[1][0] - w[0][0]) * k, w[0][1] + (w[1][1] - w[0][1]) * k];
            }
            left -= long;
        }
        self.ends().1
    }

    /// The place so far past one of its ends.
    pub(super) fn place_past(&self, at_end: bool, by: f64) -> Xy {
        let angle = self.heading(at_end);
        let (p, by) = if at_end { (self.ends().1, by) } else { (self.ends().0, -by) };
        [p[0] + by * angle.cosine(), p[1] + by * angle.sine()]
    }

    /// Direction at one end in the part's own sense, of a curve by the circle through three points: the
    /// angle between chord and tangent is that over the chord.
    pub(super) fn heading(&self, at_end: bool) -> f64 {
        let p = &self.points;
        let n = p.len();
        let angle = |a: Xy, b: Xy| (b[1] - a[1]).angle_over(b[0] - a[0]);
        if !self.is_curved || n < 3 {
            return angle(p[0], p[n - 1]);
        }
        let (a, b, c) = if at_end { (p[n - 1], p[n - 2], p[n - 3]) } else { (p[0], p[1], p[2]) };
        let over = turn(angle(c, b), angle(c, a));
        if at_end { angle(b, a) + over } else { angle(a, b) + over }
    }
}

/// What a side with the opening on its left hand is.
pub(super) fn kind(a: Xy, b: Xy) -> EdgeKind {
    let (dx, dy) = (b[0] - a[0], b[1] - a[1]);
    if dx.abs() <= SAME || dy.abs() > STEEP * dx.abs() {
        EdgeKind::Jamb
    } else if dx > 0.0 {
        EdgeKind::Sill
    } else {
        EdgeKind::Head
    }
}

/// From one direction to another, radians, to the left.
pub(super) fn turn(from: f64, to: f64) -> f64 {
    let d = to - from;
    d.sine().angle_over(d.cosine())
}

/// From one side's direction to the next one's, radians, to the left. Where they go back along one another,
/// within a degree, a short side stands between them and goes from one end to the other's start: it tells the
/// hand.
pub(super) fn turn_over(from: f64, to: f64, (end, start): (Xy, Xy)) -> f64 {
    let direct = turn(from, to);
    let (dx, dy) = (start[0] - end[0], start[1] - end[1]);
    if direct.abs().to_degrees() <= 179.0 || dx.hypotenuse(dy) <= SAME {
        return direct;
    }
    let left = from.cosine() * dy - from.sine() * dx;
    if left > 0.0 { direct.abs() } else { -direct.abs() }
}

/// Whether a ring is a level rectangle: all it has is on its box, and nothing of the box is missing.
pub(super) fn is_rectangle(ring: &[Xy]) -> bool {
    let b = super::named::bounds(ring);
    let near = |u: f64, v: f64| (u - v).abs() <= SAME;
    let on = |p: &Xy| near(p[0], b[0]) || near(p[0], b[2]) || near(p[1], b[1]) || near(p[1], b[3]);
    let (wide, high) = (b[2] - b[0], b[3] - b[1]);
    let next = ring.iter().cycle().skip(1);
    // Each side runs along one side of the box.
    let along = ring
        .iter()
        .zip(next)
        .all(|(p, q)| (0..4).any(|k| near(p[k % 2], b[k]) && near(q[k % 2], b[k])));
    let missing = (area(ring).abs() - wide * high).abs();
    ring.iter().all(on) && along && missing <= SAME * (wide + high)
}

fn area(ring: &[Xy]) -> f64 {
    let next = ring.iter().cycle().skip(1);
    ring.iter().zip(next).map(|(p, q)| p[0] * q[1] - q[0] * p[1]).sum::<f64>() / 2.0
}

/// A ring counter-clockwise, without points that stand twice.
fn settled(ring: &[Xy]) -> Vec<Xy> {
    let mut out: Vec<Xy> = Vec::new();
    for p in ring {
        if out.last().is_none_or(|q| reach(*q, *p) > SAME) {
            out.push(*p);
        }
    }
    while out.len() > 1 && reach(out[0], out[out.len() - 1]) <= SAME {
        out.pop();
    }
    if area(&out) < 0.0 {
        out.reverse();
    }
    out
}

/// Which sides of a settled ring are chords of a curve: those with three turns in a row to one hand, as
/// small and as even as chords have them.
fn chords(ring: &[Xy]) -> Vec<bool> {
    let n = ring.len();
    let at = |i: usize| ring[i % n];
    let long = |i: usize| reach(at(i), at(i + 1));
    let heading = |i: usize| (at(i + 1)[1] - at(i)[1]).angle_over(at(i + 1)[0] - at(i)[0]);
    // The turn at the end of each side.
    let turns: Vec<f64> = (0..n).map(|i| turn(heading(i), heading(i + 1)).to_degrees()).collect();
    let smooth = |i: usize| {
        let (a, b) = (long(i), long(i + 1));
        turns[i % n].abs() <= CHORDS_TURN && a.max(b) <= CHORDS_RATIO * a.min(b)
    };
    // A straight side goes on into a curve with half a chord's turn.
    let straight = |side: f64, chord: f64, turn: f64, next: f64| {
        side > 1.3 * chord && turn.abs() < 0.65 * next.abs()
    };
    let mut out = vec![false; n];
    for s in (0..n).filter(|_| n > 3) {
        let t = [turns[s], turns[(s + 1) % n], turns[(s + 2) % n]];
        let curve = (0..3).all(|k| smooth(s + k))
            && (t.iter().all(|a| *a > 0.0) || t.iter().all(|a| *a < 0.0))
            && !straight(long(s), long(s + 1), t[0], t[1])
            && !straight(long(s + 3), long(s + 2), t[2], t[1]);
        if curve {
            (s..s + 4).for_each(|i| out[i % n] = true);
        }
    }
    // A piece of a chord, where something cuts the outline off.
    for i in 0..n {
        let (before, after) = ((i + n - 1) % n, (i + 1) % n);
        let goes_on =
            |chord: usize, t: f64| out[chord] && t.abs() <= CHORDS_TURN && long(i) < long(chord);
        if goes_on(before, turns[before]) || goes_on(after, turns[i]) {
            out[i] = true;
        }
    }
    out
}

/// The parts of an outline that are no drawn dirt, in order; `sides` are those of the field that border
/// the opening.
pub(super) fn parts(outline: &[Xy], sides: &[&LaidEdge]) -> Vec<Part> {
    let ring = settled(outline);
    let n = ring.len();
    if n < 3 {
        return Vec::new();
    }
    let curved = chords(&ring);
    let heading = |i: usize| {
        let (a, b) = (ring[i % n], ring[(i + 1) % n]);
        (b[1] - a[1]).angle_over(b[0] - a[0])
    };
    // Whether a part begins at a point.
    let corner = |i: usize| {
        let (before, after) = ((i + n - 1) % n, i % n);
        let t = turn(heading(before), heading(after)).to_degrees().abs();
        match (curved[before], curved[after]) {
            (true, true) => t > CHORDS_TURN,
            (false, false) => {
                let (a, p, b) = (ring[before], ring[after], ring[(after + 1) % n]);
                t > 90.0 || off(p, a, b) > STRAIGHT
            }
            _ => true,
        }
    };
    let begins: Vec<usize> = (0..n).filter(|i| corner(*i)).collect();
    if begins.is_empty() {
        let points = (0..=n).map(|i| ring[i % n]).collect();
        return vec![met(Part { points, is_curved: true, met: Spans::new() }, sides)];
    }
    let next = |k: usize| if k + 1 < begins.len() { begins[k + 1] } else { begins[0] + n };
    (0..begins.len())
        .map(|k| {
            let is_curved = curved[begins[k]];
            let all: Vec<Xy> = (begins[k]..=next(k)).map(|i| ring[i % n]).collect();
            let ends = vec![all[0], all[all.len() - 1]];
            Part { points: if is_curved { all } else { ends }, is_curved, met: Spans::new() }
        })
        .filter(|p| p.length() >= LEAST)
        .map(|p| met(p, sides))
        .collect()
}

/// Distance of a place from the line through two others.
fn off(p: Xy, a: Xy, b: Xy) -> f64 {
    let long = reach(a, b).max(SAME);
    ((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0])).abs() / long
}

/// The part with where sides of the field run along it.
fn met(mut part: Part, sides: &[&LaidEdge]) -> Part {
    let mut found = Spans::new();
    let mut done = 0.0;
    for w in part.points.windows(2) {
        let long = reach(w[0], w[1]).max(SAME);
        let along = |p: Xy| {
            ((p[0] - w[0][0]) * (w[1][0] - w[0][0]) + (p[1] - w[0][1]) * (w[1][1] - w[0][1])) / long
        };
        for s in sides {
            if off(s.from, w[0], w[1]) < NEAR && off(s.to, w[0], w[1]) < NEAR {
                let (a, b) = (along(s.from), along(s.to));
                let (low, high) = (a.min(b).max(0.0), a.max(b).min(long));
                if high - low > SAME {
                    // Noise of the grid parts nothing.
                    found.push((done + low - SAME, done + high + SAME));
                }
            }
        }
        done += long;
    }
    part.met = joined(found).into_iter().map(|s| (s.0.max(0.0), s.1.min(done))).collect();
    // Where less than that of it is met, no trim is cut.
    part.met.retain(|s| s.1 - s.0 >= LEAST);
    part
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_arched_window_has_three_straight_parts_and_a_curve() {
        for chords in [6, 8, 24, 60] {
            let mut ring: Vec<Xy> = vec![[-18.0, -20.0], [18.0, -20.0]];
            ring.extend((0..=chords).map(|i| {
                let (y, x) =
                    (std::f64::consts::PI * f64::from(i) / f64::from(chords)).sine_cosine();
                [18.0 * x, 18.0 * y]
            }));
            let found = parts(&ring, &[]);
            let curved: Vec<bool> = found.iter().map(|p| p.is_curved).collect();
            assert_eq!(curved, [false, false, true, false], "{chords}");
            let up = std::f64::consts::FRAC_PI_2;
            assert!(turn(found[2].heading(false), up).abs() < 1e-9);
            assert!(turn(found[2].heading(true), -up).abs() < 1e-9);
        }
    }

    #[test]
    fn sills_run_to_the_right_within_45_degrees() {
        assert_eq!(kind([0.0, 0.0], [20.0, 20.0]), EdgeKind::Sill);
        assert_eq!(kind([0.0, 0.0], [20.0, 21.0]), EdgeKind::Jamb);
        assert_eq!(kind([20.0, 8.0], [0.0, 0.0]), EdgeKind::Head);
        assert!(is_rectangle(&[[0.0, 0.0], [9.0, 0.0], [36.0, 0.0], [36.0, 9.0], [0.0, 9.0]]));
        assert!(!is_rectangle(&[[0.0, 0.0], [36.0, 1.0], [36.0, 9.0], [0.0, 9.0]]));
    }
}
