//! Which sides of a closed ring are chords of a curve: curves are drawn and read as chords, and what
//! goes round one is bent, not cut.

use super::polygon::sides;
use super::tol::GRID;
use super::vocabulary::{Point, Vec2};
use crate::real::Real;

/// Greatest turn from a chord to the next, degrees: an oval of 24 chords four times as wide as high, the
/// coarsest that is drawn for one, turns by less, an octagon by 45; of our own choosing.
const MOST_TURN: f64 = 40.0;
/// How much longer a chord may be than the next: those of one curve differ by less, of our own choosing.
const MOST_RATIO: f64 = 3.0;
/// Fewest chords of a curve: three sides in a row that turn alike are a cut-off corner's, of our own
/// choosing.
const FEWEST: usize = 4;

/// Whether each side of a closed ring, from a point to the next, is a chord of a curve.
pub fn curved_sides(ring: &[Point]) -> Vec<bool> {
    let n = ring.len();
    let runs: Vec<Vec2> = sides(ring).map(|(a, b)| b - a).collect();
    let mut out = vec![false; n];
    if n < FEWEST {
        return out;
    }
    // The turn at the foot of each side, where it goes on as one curve with the side before.
    let turns: Vec<Option<f64>> = (0..n).map(|i| bend(runs[(i + n - 1) % n], runs[i])).collect();
    let same_hand = |i: usize| match (turns[i], turns[(i + 1) % n]) {
        (Some(a), Some(b)) => a * b > 0.0,
        _ => true,
    };
    let Some(start) = (0..n).find(|i| turns[*i].is_none() || !same_hand((*i + n - 1) % n)) else {
        return vec![true; n];
    };
    let mut k = 0;
    while k < n {
        let mut last = k;
        while last + 1 < n
            && turns[(start + last + 1) % n].is_some()
            && (last == k || same_hand((start + last) % n))
        {
            last += 1;
        }
        let (mut from, mut to) = (k, last);
        let at = |i: usize| (start + i) % n;
        let turn = |i: usize| turns[at(i)].map_or(0.0, f64::abs);
        let long = |i: usize| runs[at(i)].hypot();
        // A straight side that a curve springs from in its own line turns by half a step there.
        while to > from + 1
            && tangent((long(from), turn(from + 1)), (long(from + 1), turn(from + 2)))
        {
            from += 1;
        }
        while to > from + 1 && tangent((long(to), turn(to)), (long(to - 1), turn(to - 1))) {
            to -= 1;
        }
        if to + 1 - from >= FEWEST {
            (from..=to).for_each(|i| out[at(i)] = true);
        }
        k = last + 1;
    }
    // What cuts an outline off may leave a piece of a chord at the end of its curve.
    for i in 0..n {
        for (chord, turned) in [((i + n - 1) % n, i), ((i + 1) % n, (i + 1) % n)] {
            let (u, v) = (runs[(turned + n - 1) % n], runs[turned]);
            let turn = u.cross(v).angle_over(u.dot(v)).to_degrees().abs();
            if !out[i] && out[chord] && turn <= MOST_TURN && runs[i].hypot() < runs[chord].hypot() {
                out[i] = true;
                break;
            }
        }
    }
    out
}

/// Whether a side, with the turn at its inner end, is no chord of the curve whose first chord and turn
/// follow.
fn tangent((side, turn): (f64, f64), (chord, next): (f64, f64)) -> bool {
    side > 1.3 * chord && turn < 0.65 * next
}

/// Degrees from a chord to the next of its curve, positive to the left; none where it is a corner.
fn bend(u: Vec2, v: Vec2) -> Option<f64> {
    let (a, b) = (u.hypot(), v.hypot());
    if a.min(b) <= GRID || a.max(b) > MOST_RATIO * a.min(b) {
        return None;
    }
    let turn = u.cross(v).angle_over(u.dot(v)).to_degrees();
    (turn.abs() <= MOST_TURN && turn != 0.0).then_some(turn)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn polygon(n: u32, r: f64) -> Vec<Point> {
        let at = |i| {
            Point::ORIGIN
                + Vec2::from_angle(std::f64::consts::TAU * f64::from(i) / f64::from(n)) * r
        };
        (0..n).map(at).collect()
    }

    #[test]
    fn a_circle_is_one_curve_and_an_octagon_has_corners() {
        for n in [12, 16, 24, 36, 60, 150] {
            assert!(curved_sides(&polygon(n, 18.0)).iter().all(|c| *c), "{n}");
        }
        for n in [3, 4, 6, 8] {
            assert!(curved_sides(&polygon(n, 18.0)).iter().all(|c| !*c), "{n}");
        }
    }

    #[test]
    fn an_arch_is_curved_from_spring_to_spring_and_its_jambs_are_straight() {
        for (chords, jamb) in [(8, 12.0), (8, 60.0), (40, 12.0), (6, 20.0)] {
            let mut ring = vec![Point::new(-18.0, -jamb), Point::new(18.0, -jamb)];
            ring.extend((0..=chords).map(|i| {
                let a = std::f64::consts::PI * f64::from(i) / f64::from(chords);
                Point::ORIGIN + Vec2::from_angle(a) * 18.0
            }));
            let found = curved_sides(&ring);
            let straight: Vec<usize> = (0..found.len()).filter(|i| !found[*i]).collect();
            // Its sill and its right jamb come first, its left jamb last.
            assert_eq!(straight, [0, 1, found.len() - 1], "{chords} chords over {jamb}");
        }
    }

    #[test]
    fn corners_cut_off_flat_are_no_curve() {
        // An octagon 60 by 40 with corners of 12 by 6 cut off: turns of 26.6 and 63.4 degrees.
        let (w, h) = (60.0, 40.0);
        let ring = [
            (12.0, 0.0),
            (w - 12.0, 0.0),
            (w, 6.0),
            (w, h - 6.0),
            (w - 12.0, h),
            (12.0, h),
            (0.0, h - 6.0),
            (0.0, 6.0),
        ];
        let ring: Vec<Point> = ring.iter().map(|p| Point::new(p.0, p.1)).collect();
        assert!(curved_sides(&ring).iter().all(|c| !*c));
    }
}
