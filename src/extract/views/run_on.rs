//! Lines drawn once for several elevations: a grade or level line that runs on under the next view marks
//! each view that it runs across, cut where the view ends.

use crate::extract::outline::stroke_box;
use crate::geom::vocabulary::{Point, Rect, Ring};
use crate::model::linework::{Linework, Role, Stroke};

/// A line runs across a view if it lies over so much of the width of its walls: the end of a neighbor's
/// line does not (of our own choosing, no source).
const ACROSS: f64 = 0.5;

/// A view as such lines see it, inches of the whole drawing.
pub(super) struct Reach {
    pub(super) region: Rect,
    /// The box round its walls.
    pub(super) walls: Rect,
}

/// A part of a line within a view.
pub(super) struct Part {
    /// Index of the view.
    pub(super) view: usize,
    /// Index of the line among the strokes.
    pub(super) of: usize,
    pub(super) stroke: Stroke,
}

/// The parts of lines that run across more views than the one their middle lies in. `below` is how far
/// under its walls a view still has lines.
pub(super) fn parts(
    lines: &Linework,
    views: &[Reach],
    below: f64,
    takes: impl Fn(usize, &Stroke) -> bool,
) -> Vec<Part> {
    let mut order: Vec<usize> = (0..views.len()).collect();
    order.sort_by(|a, b| views[*a].region.x0.total_cmp(&views[*b].region.x0));
    let widest = views.iter().map(|v| v.region.width()).fold(0.0, f64::max);
    let mut out = Vec::new();
    let marks = |s: &Stroke| matches!(s.role, Some(Role::Grade | Role::Level)) && !s.closed;
    for (of, s) in lines.strokes.iter().enumerate().filter(|(_, s)| marks(s)) {
        let b = stroke_box(s);
        let from = order.partition_point(|v| views[*v].region.x0 < b.x0 - widest);
        let near = order[from..].iter().take_while(|v| views[**v].region.x0 <= b.x1);
        let crossed: Vec<usize> =
            near.copied().filter(|v| runs_across(b, &views[*v]) && takes(*v, s)).collect();
        let own = |v: &usize| views[*v].region.contains(b.center());
        if crossed.iter().all(own) && crossed.len() < 2 {
            continue;
        }
        for view in crossed {
            let Reach { region, walls } = &views[view];
            let high = |ring: &Ring| {
                let y = ring.iter().map(|p| p.y);
                y.clone().any(|y| y >= walls.y0 - below) && y.into_iter().any(|y| y <= walls.y1)
            };
            let parts = within(&s.points, region.x0, region.x1);
            let strokes =
                parts.into_iter().filter(high).map(|points| Stroke { points, ..s.clone() });
            out.extend(strokes.map(|stroke| Part { view, of, stroke }));
        }
    }
    out
}

fn runs_across(line: Rect, view: &Reach) -> bool {
    let walls = view.walls;
    let over = line.x1.min(walls.x1) - line.x0.max(walls.x0);
    let apart = line.y0 > view.region.y1 || line.y1 < view.region.y0;
    !apart && over > 0.0 && over >= ACROSS * walls.width()
}

/// The parts of a chain from `x0` to `x1`.
fn within(points: &[Point], x0: f64, x1: f64) -> Vec<Ring> {
    let mut out: Vec<Ring> = Vec::new();
    let mut open = false;
    for pair in points.windows(2) {
        let (a, b) = (pair[0], pair[1]);
        let (low, high) = (a.x.min(b.x), a.x.max(b.x));
        if high < x0 || low > x1 {
            open = false;
            continue;
        }
        let at = |p: Point| {
            let x = p.x.clamp(x0, x1);
            if x == p.x { p } else { Point::new(x, a.lerp(b, (x - a.x) / (b.x - a.x)).y) }
        };
        match out.last_mut().filter(|_| open) {
            Some(part) => part.push(at(b)),
            None => out.push(vec![at(a), at(b)]),
        }
        open = at(b) == b;
    }
    out.retain(|p| p.windows(2).any(|w| w[0] != w[1]));
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_chain_is_cut_where_a_view_ends_and_comes_back() {
        let p = |x: f64, y: f64| Point::new(x, y);
        let chain = [p(-10.0, 0.0), p(10.0, 20.0), p(30.0, 20.0), p(10.0, 0.0)];
        let parts = within(&chain, 0.0, 20.0);
        assert_eq!(parts[0], [p(0.0, 10.0), p(10.0, 20.0), p(20.0, 20.0)]);
        assert_eq!(parts[1], [p(20.0, 10.0), p(10.0, 0.0)]);
        assert_eq!(parts.len(), 2);
        assert!(within(&chain, 40.0, 50.0).is_empty());
    }
}
