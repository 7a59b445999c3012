//! Finished grade of a view as one line from left to right: lines may be drawn either way, in parts,
//! over one another or leaning back, and where several lie over a place the highest is what siding keeps
//! clear of.

use crate::geom::tol::snap;
use crate::geom::vocabulary::Point;

/// A part of a line that goes to the right.
#[derive(Clone, Copy, Debug)]
struct Side {
    a: Point,
    b: Point,
}

impl Side {
    fn at(&self, x: f64) -> f64 {
        if x >= self.b.x {
            return self.b.y;
        }
        self.a.y + (x - self.a.x) / (self.b.x - self.a.x) * (self.b.y - self.a.y)
    }
}

/// The points of finished grade, left to right; plumb steps have two at one place.
pub(super) fn profile(strokes: &[Vec<Point>]) -> Vec<Point> {
    let mut chains: Vec<Vec<Point>> = strokes.iter().flat_map(|s| rising(s)).collect();
    chains.sort_by(|a, b| a[0].x.total_cmp(&b[0].x));
    if chains.windows(2).all(|p| p[0].last().is_some_and(|end| end.x <= p[1][0].x)) {
        return chains.concat();
    }
    let sides = |chain: &Vec<Point>| -> Vec<Side> {
        let all = chain.windows(2).map(|w| Side { a: w[0], b: w[1] });
        all.filter(|s| s.b.x > s.a.x).collect()
    };
    let mut layers: Vec<Vec<Side>> = chains.iter().map(sides).collect();
    // Two by two, so that many parts are not gone through once for each.
    while layers.len() > 1 {
        layers = layers.chunks(2).map(|c| c[1..].iter().fold(c[0].clone(), highest)).collect();
    }
    let mut out: Vec<Point> = Vec::new();
    for s in layers.into_iter().flatten() {
        for p in [s.a, s.b] {
            let p = Point::new(snap(p.x), snap(p.y));
            if out.last() != Some(&p) {
                out.push(p);
            }
        }
    }
    out
}

/// A line in parts that each go to the right throughout. A part to the left ends and begins where those
/// beside it do.
fn rising(stroke: &[Point]) -> Vec<Vec<Point>> {
    let mut points = stroke.to_vec();
    if let (Some(a), Some(b)) = (points.first(), points.last())
        && b.x < a.x
    {
        points.reverse();
    }
    let mut out: Vec<Vec<Point>> = Vec::new();
    let mut back = false;
    for pair in points.windows(2) {
        let turns = pair[1].x != pair[0].x && (pair[1].x < pair[0].x) != back;
        match out.last_mut().filter(|_| !turns) {
            Some(part) => part.push(pair[1]),
            None => out.push(pair.to_vec()),
        }
        back ^= turns;
    }
    for part in &mut out {
        if part.last().is_some_and(|end| end.x < part[0].x) {
            part.reverse();
        }
    }
    if out.is_empty() { vec![points].into_iter().filter(|p| !p.is_empty()).collect() } else { out }
}

/// The higher of two lines at every place.
fn highest(one: Vec<Side>, other: &Vec<Side>) -> Vec<Side> {
    let mut xs: Vec<f64> = one.iter().chain(other).flat_map(|s| [s.a.x, s.b.x]).collect();
    xs.sort_by(f64::total_cmp);
    xs.dedup();
    let mut out = Vec::new();
    let (mut i, mut j) = (0, 0);
    for w in xs.windows(2) {
        let over = |all: &[Side], at: &mut usize| {
            while all.get(*at).is_some_and(|s| s.b.x <= w[0]) {
                *at += 1;
            }
            let side = all.get(*at).filter(|s| s.a.x <= w[0])?;
            Some(Side { a: Point::new(w[0], side.at(w[0])), b: Point::new(w[1], side.at(w[1])) })
        };
        let (a, b) = (over(&one, &mut i), over(other, &mut j));
        match (a, b) {
            (Some(a), Some(b)) => out.extend(upper(a, b)),
            (a, b) => out.extend(a.or(b)),
        }
    }
    out
}

/// The upper of two sides over one span, in two where they cross.
fn upper(a: Side, b: Side) -> Vec<Side> {
    let (left, right) = (a.a.y - b.a.y, a.b.y - b.b.y);
    if left * right >= 0.0 {
        return vec![if left + right >= 0.0 { a } else { b }];
    }
    let x = a.a.x + left / (left - right) * (a.b.x - a.a.x);
    let cross = Point::new(x, a.at(x));
    let (first, then) = if left > 0.0 { (a, b) } else { (b, a) };
    vec![Side { a: first.a, b: cross }, Side { a: cross, b: then.b }]
}

#[cfg(test)]
mod tests {
    use super::*;

    fn points(all: &[(f64, f64)]) -> Vec<Point> {
        all.iter().map(|p| Point::new(p.0, p.1)).collect()
    }

    #[test]
    fn a_line_drawn_either_way_is_the_same_line() {
        let there = points(&[(0.0, -20.0), (100.0, -20.0), (100.0, -8.0), (300.0, -8.0)]);
        let back: Vec<Point> = there.iter().rev().copied().collect();
        assert_eq!(profile(std::slice::from_ref(&there)), there);
        assert_eq!(profile(&[back]), there);
        // In two parts.
        assert_eq!(profile(&[there[2..].to_vec(), there[..2].to_vec()]), there);
    }

    #[test]
    fn of_lines_over_one_another_the_highest_is_grade() {
        let old = points(&[(0.0, -20.0), (300.0, -20.0)]);
        let new = points(&[(50.0, -30.0), (150.0, -10.0), (250.0, -10.0)]);
        let grade = points(&[
            (0.0, -20.0),
            (50.0, -20.0),
            (100.0, -20.0),
            (150.0, -10.0),
            (250.0, -10.0),
            (250.0, -20.0),
            (300.0, -20.0),
        ]);
        assert_eq!(profile(&[old.clone(), new]), grade);
        assert_eq!(profile(&[old.clone(), old.clone()]), old);
    }

    #[test]
    fn a_bank_that_leans_back_is_as_high_as_its_top() {
        // Up to x 60, back to 40 where it is 12 higher, and on.
        let bank = points(&[(0.0, -20.0), (60.0, -20.0), (40.0, -8.0), (200.0, -8.0)]);
        let grade =
            points(&[(0.0, -20.0), (40.0, -20.0), (40.0, -8.0), (60.0, -8.0), (200.0, -8.0)]);
        assert_eq!(profile(&[bank]), grade);
    }
}
