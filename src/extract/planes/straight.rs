//! Small steps along the sides of drawn siding: a pane seen edge on, a rounded figure.

use crate::geom::polygon::{Polygon, sides};
use crate::geom::tol::{level, plumb, snap};
use crate::geom::vocabulary::{Point, Ring};

/// Steps smaller than this are no steps of a wall, inches (common practice, no source).
const STEP: f64 = 1.0;

/// A shape without such steps: of two sides that a step joins the shorter one moves into line.
pub(super) fn straight(p: &Polygon) -> Polygon {
    let holes = p.holes.iter().map(|h| ring(h)).filter(|h| h.len() >= 3).collect();
    Polygon { outer: ring(&p.outer), holes }
}

/// Sides this near to one line stand in it, inches.
const IN_LINE: f64 = 0.125;

/// Shapes of one plane with their plumb sides in line where they stand a hair apart.
pub(super) fn aligned(shapes: Vec<Polygon>) -> Vec<Polygon> {
    let upright = |p: &Polygon| -> Vec<(f64, f64)> {
        let all = p.rings().flat_map(|r| sides(r)).filter(|(a, b)| a.x == b.x);
        all.map(|(a, b)| (a.x, (b.y - a.y).abs())).collect()
    };
    let mut places: Vec<(f64, f64)> = shapes.iter().flat_map(upright).collect();
    places.sort_by(|a, b| a.0.total_cmp(&b.0));
    // The longest first: what stands near it moves onto it.
    let mut lines: Vec<(f64, f64)> = Vec::new();
    for (x, length) in places {
        match lines.last_mut().filter(|l| l.0 == x) {
            Some(l) => l.1 += length,
            None => lines.push((x, length)),
        }
    }
    lines.sort_by(|a, b| b.1.total_cmp(&a.1).then(a.0.total_cmp(&b.0)));
    let mut kept: Vec<f64> = Vec::new();
    for (x, _) in &lines {
        if kept.iter().all(|k| (k - x).abs() > IN_LINE) {
            kept.push(*x);
        }
    }
    let onto = |q: Point| {
        let on_side = lines.iter().any(|l| l.0 == q.x);
        let line = kept.iter().find(|k| (*k - q.x).abs() <= IN_LINE).filter(|_| on_side);
        Point::new(line.copied().unwrap_or(q.x), q.y)
    };
    shapes.iter().map(|p| p.map(onto)).collect()
}

/// How often a ring is gone round: what one step's closing leaves may be another.
const ROUNDS: usize = 3;

fn ring(drawn: &[Point]) -> Ring {
    let mut out: Ring = drawn.to_vec();
    for _ in 0..ROUNDS {
        let mut i = 0;
        while i < out.len() {
            if is_step(&out, i) {
                close(&mut out, i);
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
    fn sides_a_hair_apart_come_into_line() {
        let two =
            vec![Polygon::rect(0.0, 0.0, 50.0, 80.0), Polygon::rect(0.0625, 90.0, 50.0, 100.0)];
        let found = aligned(two);
        assert_eq!(found[1].bounds(), Rect::new(0.0, 90.0, 50.0, 100.0));
        let apart =
            vec![Polygon::rect(0.0, 0.0, 50.0, 80.0), Polygon::rect(0.5, 90.0, 50.0, 100.0)];
        assert_eq!(aligned(apart.clone()), apart);
    }

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
}
