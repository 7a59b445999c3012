//! Small steps along the sides of drawn siding, and tabs and slits as narrow: a pane seen edge on, a rounded
//! figure.

use crate::geom::polygon::Polygon;
use crate::geom::tol::{level, plumb, snap};
use crate::geom::vocabulary::{Point, Ring};

/// Steps smaller than this are no steps of a wall, inches (common practice, no source).
const STEP: f64 = 1.0;

/// A shape without such steps and tabs: of two sides that a step joins the shorter one moves into line.
pub(super) fn straight(p: &Polygon) -> Polygon {
    let holes = p.holes.iter().map(|h| ring(h)).filter(|h| h.len() >= 3).collect();
    Polygon { outer: ring(&p.outer), holes }
}

/// How often a ring is gone round: what one step's closing leaves may be another.
const ROUNDS: usize = 3;

fn ring(drawn: &[Point]) -> Ring {
    let mut out: Ring = drawn.to_vec();
    tidy(&mut out);
    for _ in 0..ROUNDS {
        let mut i = 0;
        while i < out.len() {
            if is_step(&out, i) {
                close(&mut out, i);
                tidy(&mut out);
            } else if is_tab(&out, i) {
                cut(&mut out, i);
                tidy(&mut out);
            }
            i += 1;
        }
    }
    if out.len() >= 3 { out } else { drawn.to_vec() }
}

/// Takes out places that stand twice, and those in the midst of a straight side.
fn tidy(ring: &mut Ring) {
    ring.dedup();
    while ring.len() > 1 && ring.first() == ring.last() {
        ring.pop();
    }
    let n = ring.len();
    if n > 3 {
        let turns = |i: usize| {
            let (a, b, c) = (ring[(i + n - 1) % n], ring[i], ring[(i + 1) % n]);
            !((a.x == b.x && b.x == c.x) || (a.y == b.y && b.y == c.y))
        };
        let kept: Ring = (0..n).filter(|i| turns(*i)).map(|i| ring[i]).collect();
        if kept.len() >= 3 {
            *ring = kept;
        }
    }
}

fn at(ring: &[Point], i: usize, by: isize) -> usize {
    (i as isize + by).rem_euclid(ring.len() as isize) as usize
}

/// Whether the side after place `i` is the end of a tab or the bottom of a slit, as narrow as a step.
fn is_tab(ring: &[Point], i: usize) -> bool {
    if ring.len() < 6 {
        return false;
    }
    let [before, a, b, after] = [-1, 0, 1, 2].map(|by| ring[at(ring, i, by)]);
    let (u, s, v) = (a - before, b - a, after - b);
    let square =
        (plumb(u.x) && plumb(v.x) && level(s.y)) || (level(u.y) && level(v.y) && plumb(s.x));
    square && s.hypot() <= STEP && u.dot(v) < 0.0
}

/// Takes a tab off, or closes a slit, as far as its shorter side goes.
fn cut(ring: &mut Ring, i: usize) {
    let [before, a, b, after] = [-1, 0, 1, 2].map(|by| at(ring, i, by));
    let (s, short) = (ring[b] - ring[a], ring[a] - ring[before]);
    if short.hypot() <= (ring[after] - ring[b]).hypot() {
        ring[b] = ring[before] + s;
        ring.remove(a);
    } else {
        ring[a] = ring[after] - s;
        ring.remove(b);
    }
}

/// Whether the side after place `i` is a small step between two sides that go one way.
fn is_step(ring: &[Point], i: usize) -> bool {
    if ring.len() < 6 {
        return false;
    }
    let [before, a, b, after] = [-1, 0, 1, 2].map(|by| ring[at(ring, i, by)]);
    let (u, s, v) = (a - before, b - a, after - b);
    let square =
        (plumb(u.x) && plumb(v.x) && level(s.y)) || (level(u.y) && level(v.y) && plumb(s.x));
    square && s.hypot() <= STEP && u.dot(v) > 0.0
}

fn close(ring: &mut [Point], i: usize) {
    let [before, a, b, after] = [-1, 0, 1, 2].map(|by| at(ring, i, by));
    let (u, v) = (ring[a] - ring[before], ring[after] - ring[b]);
    let upright = plumb(u.x);
    let (moved, onto) = if u.hypot() < v.hypot() { ([before, a], b) } else { ([b, after], a) };
    let to = ring[onto];
    for k in moved {
        let p = ring[k];
        let q = if upright { Point::new(to.x, p.y) } else { Point::new(p.x, to.y) };
        ring[k] = Point::new(snap(q.x), snap(q.y));
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geom::vocabulary::Rect;

    #[test]
    fn a_small_step_goes_and_a_large_one_stays() {
        // 100 x 80; its right side stands 3/8 in inside from 30 to 50 up, and 6 in inside over 60.
        let ring = [
            (0.0, 0.0),
            (100.0, 0.0),
            (100.0, 30.0),
            (99.625, 30.0),
            (99.625, 50.0),
            (100.0, 50.0),
            (100.0, 60.0),
            (94.0, 60.0),
            (94.0, 80.0),
            (0.0, 80.0),
        ];
        let drawn = Polygon::simple(ring.into_iter().map(Point::from).collect());
        let found = straight(&drawn);
        assert_eq!(found.bounds(), Rect::new(0.0, 0.0, 100.0, 80.0));
        assert_eq!(found.area(), 100.0 * 60.0 + 94.0 * 20.0);
        assert_eq!(straight(&Polygon::rect(0.0, 0.0, 9.0, 0.5)).area(), 4.5);
    }

    #[test]
    fn a_narrow_tab_goes() {
        // 100 x 80, and a tab 5/8 in wide and 12 in high on its head.
        let ring =
            [(0.0, 0.0), (100.0, 0.0), (100.0, 80.0), (0.625, 80.0), (0.625, 92.0), (0.0, 92.0)];
        let drawn = Polygon::simple(ring.into_iter().map(Point::from).collect());
        assert_eq!(straight(&drawn).bounds(), Rect::new(0.0, 0.0, 100.0, 80.0));
    }
}
