//! Lines that the sides of a plane stand in: what is drawn a little beside one moves onto it.

use crate::geom::polygon::{Polygon, sides};
use crate::geom::tol::{level, plumb, snap};
use crate::geom::vocabulary::{Point, Ring};

/// Sides this near to one line stand in it, inches: a pane seen edge on, the thickness of a board's
/// outline (common practice, no source).
const IN_LINE: f64 = 0.5;

/// Places of plumb lines across and of level lines up, the longest of each first.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Lines {
    plumb: Vec<f64>,
    level: Vec<f64>,
}

impl Lines {
    /// The lines that shapes of one plane end in.
    pub(super) fn of(shapes: &[Polygon]) -> Self {
        let all = || shapes.iter().flat_map(Polygon::rings).flat_map(|r| sides(r));
        let plumb_sides = all().filter(|(a, b)| plumb(b.x - a.x) && !level(b.y - a.y));
        let level_sides = all().filter(|(a, b)| level(b.y - a.y) && !plumb(b.x - a.x));
        Lines {
            plumb: longest(plumb_sides.map(|(a, b)| ((a.x + b.x) / 2.0, (b.y - a.y).abs()))),
            level: longest(level_sides.map(|(a, b)| ((a.y + b.y) / 2.0, (b.x - a.x).abs()))),
        }
    }

    /// A shape with its plumb and level sides in these lines.
    pub(super) fn onto(&self, shape: &Polygon) -> Polygon {
        let holes = shape.holes.iter().map(|h| self.ring(h)).collect();
        Polygon { outer: self.ring(&shape.outer), holes }
    }

    /// A ring with its plumb and level sides in these lines.
    pub(super) fn ring(&self, ring: &[Point]) -> Ring {
        let n = ring.len();
        let moved = |i: usize| {
            let (before, p, after) = (ring[(i + n - 1) % n], ring[i], ring[(i + 1) % n]);
            let arms = [before - p, after - p];
            let upright = arms.iter().any(|a| plumb(a.x) && !level(a.y));
            let flat = arms.iter().any(|a| level(a.y) && !plumb(a.x));
            let x = if upright { near(&self.plumb, p.x) } else { p.x };
            let y = if flat { near(&self.level, p.y) } else { p.y };
            // Along a slope that ends here, so that its pitch stays.
            let slope = arms.iter().find(|a| !plumb(a.x) && !level(a.y));
            let (x, y) = match slope {
                Some(s) if upright => (x, y + (x - p.x) * s.y / s.x),
                Some(s) if flat => (x + (y - p.y) * s.x / s.y, y),
                _ => (x, y),
            };
            Point::new(snap(x), snap(y))
        };
        let mut out: Ring = (0..n).map(moved).collect();
        out.dedup();
        if out.len() > 1 && out.first() == out.last() {
            out.pop();
        }
        if out.len() >= 3 { out } else { ring.to_vec() }
    }
}

/// Places that sides stand at, those left out that stand near one with more length in it.
fn longest(sides: impl Iterator<Item = (f64, f64)>) -> Vec<f64> {
    let mut all: Vec<(f64, f64)> = sides.collect();
    all.sort_by(|a, b| a.0.total_cmp(&b.0));
    let mut sums: Vec<(f64, f64)> = Vec::new();
    for (at, length) in all {
        match sums.last_mut().filter(|s| s.0 == at) {
            Some(s) => s.1 += length,
            None => sums.push((at, length)),
        }
    }
    sums.sort_by(|a, b| b.1.total_cmp(&a.1).then(a.0.total_cmp(&b.0)));
    let mut kept: Vec<f64> = Vec::new();
    for (at, _) in sums {
        if kept.iter().all(|k| (k - at).abs() > IN_LINE) {
            kept.push(at);
        }
    }
    kept
}

fn near(lines: &[f64], at: f64) -> f64 {
    let close = lines.iter().filter(|l| (*l - at).abs() <= IN_LINE);
    close.min_by(|a, b| (*a - at).abs().total_cmp(&(*b - at).abs())).copied().unwrap_or(at)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geom::vocabulary::Rect;

    #[test]
    fn sides_a_little_apart_come_into_line() {
        let two =
            vec![Polygon::rect(0.0, 0.0, 50.0, 80.0), Polygon::rect(0.375, 90.0, 50.25, 100.0)];
        let found = Lines::of(&two).onto(&two[1]);
        assert_eq!(found.bounds(), Rect::new(0.0, 90.0, 50.0, 100.0));
        let apart =
            vec![Polygon::rect(0.0, 0.0, 50.0, 80.0), Polygon::rect(0.75, 90.0, 50.0, 100.0)];
        assert_eq!(Lines::of(&apart).onto(&apart[1]), apart[1]);
    }

    #[test]
    fn a_side_under_a_slope_moves_along_it() {
        // A gable's left half: its foot stands 1/4 in off the line of the wall beneath it; 12 in 12 goes
        // on, so the eave comes down by as much.
        let wall = Polygon::rect(0.0, 0.0, 100.0, 80.0);
        let ring = [(0.25, 80.0), (100.0, 80.0), (100.0, 189.75), (0.25, 90.0)];
        let gable = Polygon::simple(ring.into_iter().map(Point::from).collect());
        let found = Lines::of(&[wall, gable.clone()]).onto(&gable);
        assert_eq!(found.outer[3], Point::new(0.0, 89.75));
        assert_eq!(found.outer[2], Point::new(100.0, 189.75));
    }
}
