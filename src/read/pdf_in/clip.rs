//! Lines cut at what they are clipped to.

use crate::geom::flatten::path_points;
use crate::geom::vocabulary::{BezPath, CurveShape, Point, Rect};

/// How far chords of a clipping curve may stand off it, points.
const SAGITTA: f64 = 0.05;

/// An area that what is drawn is cut to.
#[derive(Clone, Debug)]
pub(super) struct Clip {
    bounds: Rect,
    /// Its sides, where it is no upright rectangle.
    sides: Option<Vec<(Point, Point)>>,
}

impl Clip {
    /// Of a path, its parts closed; inside is where a ray crosses an odd number of sides.
    pub(super) fn of(path: &BezPath) -> Self {
        let bounds = path.bounding_box();
        let mut sides = Vec::new();
        for (points, _) in path_points(path, SAGITTA) {
            let next = points.iter().cycle().skip(1);
            sides.extend(points.iter().copied().zip(next.copied()));
        }
        sides.retain(|(a, b)| a != b);
        let edge = |(a, b): &(Point, Point)| {
            let upright = (a.x - b.x).abs() < 1e-6 && on(a.x, bounds.x0, bounds.x1);
            upright || ((a.y - b.y).abs() < 1e-6 && on(a.y, bounds.y0, bounds.y1))
        };
        let rectangle = sides.len() == 4 && sides.iter().all(edge);
        Clip { bounds, sides: (!rectangle).then_some(sides) }
    }

    /// Whether all of a box is inside, as far as its bounds and sides tell at once.
    pub(super) fn holds(&self, inner: Rect) -> bool {
        let b = self.bounds;
        let within = inner.x0 >= b.x0 && inner.x1 <= b.x1 && inner.y0 >= b.y0 && inner.y1 <= b.y1;
        within && self.sides.is_none()
    }

    /// Whether nothing of a box is inside, as far as its bounds tell.
    pub(super) fn misses(&self, outer: Rect) -> bool {
        let b = self.bounds;
        outer.x1 < b.x0 || outer.x0 > b.x1 || outer.y1 < b.y0 || outer.y0 > b.y1
    }

    /// The parts of a segment that are inside.
    pub(super) fn cut(&self, a: Point, b: Point) -> Vec<(Point, Point)> {
        let along = |t: f64| a.lerp(b, t);
        let mut at = vec![0.0, 1.0];
        match &self.sides {
            None => at.extend(crossings_of_box(a, b, self.bounds)),
            Some(sides) => at.extend(sides.iter().filter_map(|s| crossing((a, b), *s))),
        }
        at.retain(|t| (0.0..=1.0).contains(t));
        at.sort_by(f64::total_cmp);
        at.dedup();
        let mut out: Vec<(Point, Point)> = Vec::new();
        for w in at.windows(2).filter(|w| self.inside(along((w[0] + w[1]) / 2.0))) {
            let (from, to) = (along(w[0]), along(w[1]));
            match out.last_mut().filter(|last| last.1 == from) {
                Some(last) => last.1 = to,
                None => out.push((from, to)),
            }
        }
        out
    }

    fn inside(&self, p: Point) -> bool {
        let Some(sides) = &self.sides else { return self.bounds.inflate(1e-9, 1e-9).contains(p) };
        let crossed = sides.iter().filter(|(a, b)| {
            (a.y > p.y) != (b.y > p.y) && p.x < a.x + (p.y - a.y) / (b.y - a.y) * (b.x - a.x)
        });
        crossed.count() % 2 == 1
    }
}

fn on(v: f64, low: f64, high: f64) -> bool {
    (v - low).abs() < 1e-6 || (v - high).abs() < 1e-6
}

fn crossings_of_box(a: Point, b: Point, r: Rect) -> Vec<f64> {
    let (dx, dy) = (b.x - a.x, b.y - a.y);
    let mut out = Vec::new();
    if dx != 0.0 {
        out.extend([(r.x0 - a.x) / dx, (r.x1 - a.x) / dx]);
    }
    if dy != 0.0 {
        out.extend([(r.y0 - a.y) / dy, (r.y1 - a.y) / dy]);
    }
    out
}

/// Where along the first segment the second one crosses it.
fn crossing((a, b): (Point, Point), (c, d): (Point, Point)) -> Option<f64> {
    let (u, v) = (b - a, d - c);
    let area = u.cross(v);
    if area == 0.0 {
        return None;
    }
    let (t, s) = ((c - a).cross(v) / area, (c - a).cross(u) / area);
    (0.0..=1.0).contains(&s).then_some(t)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn path(points: &[(f64, f64)]) -> BezPath {
        let mut out = BezPath::new();
        out.move_to(points[0]);
        points[1..].iter().for_each(|p| out.line_to(*p));
        out.close_path();
        out
    }

    #[test]
    fn a_line_is_cut_at_a_box() {
        let clip = Clip::of(&path(&[(0.0, 0.0), (10.0, 0.0), (10.0, 5.0), (0.0, 5.0)]));
        assert!(clip.holds(Rect::new(1.0, 1.0, 9.0, 4.0)));
        let cut = clip.cut(Point::new(-5.0, 2.0), Point::new(15.0, 2.0));
        assert_eq!(cut, [(Point::new(0.0, 2.0), Point::new(10.0, 2.0))]);
        assert!(clip.cut(Point::new(-5.0, 6.0), Point::new(15.0, 6.0)).is_empty());
    }

    #[test]
    fn a_line_is_cut_at_a_notch() {
        // A square with a notch from 4 to 6 in its top: at y = 8 the line is in two parts.
        let notched = [
            (0.0, 0.0),
            (10.0, 0.0),
            (10.0, 10.0),
            (6.0, 10.0),
            (6.0, 5.0),
            (4.0, 5.0),
            (4.0, 10.0),
            (0.0, 10.0),
        ];
        let cut = Clip::of(&path(&notched)).cut(Point::new(-1.0, 8.0), Point::new(11.0, 8.0));
        assert_eq!(cut.len(), 2);
        assert!((cut[0].1.x - 4.0).abs() < 1e-9 && (cut[1].0.x - 6.0).abs() < 1e-9);
    }
}
