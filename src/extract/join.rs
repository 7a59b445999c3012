//! Walls of one plane that the drawing shows in parts: the whole, and what parts them. What lies level
//! between two parts, or plumb between them, parts them.

use super::frame::ViewFrame;
use super::limits::NOISE;
use crate::geom::boolean::{difference, intersection, union_all};
use crate::geom::polygon::{Polygon, bounds, sides};
use crate::geom::sliver::without_slivers;
use crate::geom::tol::{LEVEL, SAME, level, plumb, snap};
use crate::geom::vocabulary::{Point, Rect};
use crate::model::house::DrawnOpening;
use crate::model::linework::{Role, Stroke};

/// Widest casing beside an opening, inches: the widest with room to spare (common practice, no source).
const CASING: f64 = 12.0;
/// Widest board between walls, inches: band boards are up to two feet (common practice, no source).
const BOARD: f64 = 24.0;
/// How far from a side of a gap its board's line may be drawn, inches: of our own choosing, no source.
const BESIDE: f64 = 1.0;

/// Some walls as one, and what parts them; none where one of them faces no other.
pub(super) fn joined(walls: &[Polygon]) -> Option<(Polygon, Vec<Polygon>)> {
    let turned = |p: &Polygon| p.map(|q| Point::new(q.y, q.x)).wound();
    let mut gaps = between(walls);
    let on_side: Vec<Polygon> = walls.iter().map(turned).collect();
    gaps.extend(between(&on_side).iter().map(turned));
    let all: Vec<Polygon> = walls.iter().chain(&gaps).cloned().collect();
    let [whole] = &union_all(&all)[..] else { return None };
    let on_grid = |p: Point| Point::new(snap(p.x), snap(p.y));
    let whole = Polygon::simple(whole.outer.clone()).map(on_grid).wound();
    let parts = without_slivers(difference(std::slice::from_ref(&whole), &union_all(walls)));
    Some((whole, parts.into_iter().filter(|p| p.area() > NOISE).collect()))
}

/// What lies level between two of some shapes: trapezoids, slab by slab from vertex to vertex.
fn between(shapes: &[Polygon]) -> Vec<Polygon> {
    let mut heights: Vec<f64> =
        shapes.iter().flat_map(Polygon::rings).flatten().map(|p| p.y).collect();
    heights.sort_by(f64::total_cmp);
    heights.dedup_by(|a, b| *a - *b < SAME);
    let mut out = Vec::new();
    for slab in heights.windows(2) {
        let mut spans: Vec<(usize, [f64; 2], [f64; 2])> = Vec::new();
        for (i, s) in shapes.iter().enumerate() {
            spans.extend(across(s, slab[0], slab[1]).into_iter().map(|(l, r)| (i, l, r)));
        }
        spans.sort_by(|a, b| (a.1[0] + a.1[1]).total_cmp(&(b.1[0] + b.1[1])));
        for pair in spans.windows(2) {
            let ((a, _, from), (b, to, _)) = (pair[0], pair[1]);
            let apart = from[0] < to[0] - SAME || from[1] < to[1] - SAME;
            if a != b && apart {
                let p = |x: f64, y: f64| Point::new(x, y);
                out.push(Polygon::simple(vec![
                    p(from[0], slab[0]),
                    p(to[0], slab[0]),
                    p(to[1], slab[1]),
                    p(from[1], slab[1]),
                ]));
            }
        }
    }
    out
}

/// Where a shape lies between two heights with none of its vertices between: its spans, each by its left
/// and right end at the lower and the upper height.
fn across(shape: &Polygon, low: f64, high: f64) -> Vec<([f64; 2], [f64; 2])> {
    let middle = (low + high) / 2.0;
    let over = |(a, b): &(Point, Point)| (a.y < middle) != (b.y < middle);
    let at = |a: Point, b: Point, y: f64| a.x + (b.x - a.x) * (y - a.y) / (b.y - a.y);
    let mut ends: Vec<[f64; 2]> = shape
        .rings()
        .flat_map(|r| sides(r).filter(over).collect::<Vec<_>>())
        .map(|(a, b)| [at(a, b, low), at(a, b, high)])
        .collect();
    ends.sort_by(|a, b| (a[0] + a[1]).total_cmp(&(b[0] + b[1])));
    ends.chunks_exact(2).map(|p| (p[0], p[1])).collect()
}

/// What stands between joined walls.
#[derive(Default)]
pub(super) struct Filled {
    /// Openings that stand in it.
    pub(super) openings: usize,
    /// Level boards.
    pub(super) bands: Vec<Polygon>,
    /// Upright boards.
    pub(super) upright: Vec<Polygon>,
    /// Where nothing is drawn.
    pub(super) bare: Vec<Polygon>,
}

/// Says of each gap what is drawn in it. An opening grows to the gap it stands in, as far as a casing
/// is wide.
pub(super) fn fill(local: &ViewFrame, gaps: Vec<Polygon>, openings: &mut [DrawnOpening]) -> Filled {
    let mut out = Filled::default();
    for gap in gaps {
        let mut holes = Vec::new();
        for o in openings.iter_mut() {
            let b = bounds(&o.outline).unwrap_or_default();
            if gap.contains(b.center()) {
                out.openings += 1;
                if let Some(cased) = with_casing(&gap, b) {
                    o.outline = cased.outer;
                }
            }
            holes.push(Polygon::simple(o.outline.clone()).wound());
        }
        let rest = without_slivers(difference(&[gap], &union_all(&holes)));
        for part in rest.into_iter().filter(|p| p.area() > NOISE) {
            let b = part.bounds();
            let narrow = b.width().min(b.height()) <= BOARD;
            let drawn = narrow && is_drawn(local, b);
            match (drawn, b.width() >= b.height()) {
                (true, true) => out.bands.push(part),
                (true, false) => out.upright.push(part),
                (false, _) => out.bare.push(part),
            }
        }
    }
    out
}

/// The part of a gap that an opening fills with its casing.
fn with_casing(gap: &Polygon, b: Rect) -> Option<Polygon> {
    let c = b.center();
    let row = spans_at(gap, c.y).into_iter().find(|(l, r)| *l <= c.x && c.x <= *r)?;
    let on_side = gap.map(|q| Point::new(q.y, q.x));
    let column = spans_at(&on_side, c.x).into_iter().find(|(l, r)| *l <= c.y && c.y <= *r)?;
    let near = |edge: f64, end: f64| if (edge - end).abs() <= CASING { end } else { edge };
    let whole = Polygon::rect(
        near(b.x0, row.0),
        near(b.y0, column.0),
        near(b.x1, row.1),
        near(b.y1, column.1),
    );
    let inside = intersection(&[whole], std::slice::from_ref(gap));
    inside.into_iter().find(|p| p.contains(c)).map(|p| Polygon::simple(p.outer))
}

/// Where a shape lies at a height.
fn spans_at(shape: &Polygon, y: f64) -> Vec<(f64, f64)> {
    across(shape, y - SAME, y + SAME).iter().map(|(l, r)| (l[0], r[0])).collect()
}

/// Whether lines are drawn along both long sides of a gap, other than the walls' own outlines.
fn is_drawn(local: &ViewFrame, b: Rect) -> bool {
    let lying = b.width() >= b.height();
    let long = if lying { b.width() } else { b.height() };
    let along = |at: f64, from: f64, to: f64| {
        let covered = |s: &Stroke| {
            let ring = local.ring(s);
            let closing = s.closed.then(|| [ring[ring.len() - 1], ring[0]]);
            let open = ring.windows(2).map(|w| [w[0], w[1]]);
            let sides = open.chain(closing).filter(|[p, q]| {
                let (even, off) =
                    if lying { (level(p.y - q.y), p.y - at) } else { (plumb(p.x - q.x), p.x - at) };
                even && off.abs() <= BESIDE
            });
            sides
                .map(|[p, q]| if lying { (p.x, q.x) } else { (p.y, q.y) })
                .map(|(p, q)| (p.max(q).min(to) - p.min(q).max(from)).max(0.0))
                .sum::<f64>()
        };
        let all = local.view.strokes(local.lines);
        all.filter(|s| speaks(s)).map(covered).sum::<f64>() >= long / 2.0 - LEVEL
    };
    match lying {
        true => along(b.y0, b.x0, b.x1) && along(b.y1, b.x0, b.x1),
        false => along(b.x0, b.y0, b.y1) && along(b.x1, b.y0, b.y1),
    }
}

/// Whether a line may be a board's: not of walls' outlines, openings, marks.
fn speaks(s: &Stroke) -> bool {
    matches!(s.role, None | Some(Role::Band | Role::Ignore | Role::Bare)) && s.points.len() > 1
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_lies_level_or_plumb_between_walls_parts_them() {
        // Two walls 10 apart, one 60 high beside one 100 high: the gap is 10 by 60.
        let two = [Polygon::rect(0.0, 0.0, 100.0, 100.0), Polygon::rect(110.0, 0.0, 200.0, 60.0)];
        let (whole, gaps) = joined(&two).unwrap();
        assert_eq!(whole.area(), 100.0 * 100.0 + 90.0 * 60.0 + 10.0 * 60.0);
        assert_eq!(
            gaps.iter().map(Polygon::bounds).collect::<Vec<_>>(),
            [Rect::new(100.0, 0.0, 110.0, 60.0)]
        );
        // One over the other, a band of 8 between.
        let two = [Polygon::rect(0.0, 0.0, 100.0, 50.0), Polygon::rect(20.0, 58.0, 120.0, 90.0)];
        let (_, gaps) = joined(&two).unwrap();
        assert_eq!(
            gaps.iter().map(Polygon::bounds).collect::<Vec<_>>(),
            [Rect::new(20.0, 50.0, 100.0, 58.0)]
        );
        // Corner to corner they face nowhere.
        let two = [Polygon::rect(0.0, 0.0, 100.0, 50.0), Polygon::rect(110.0, 60.0, 200.0, 90.0)];
        assert!(joined(&two).is_none());
    }

    #[test]
    fn a_gap_beside_a_rake_ends_where_the_lower_wall_does() {
        // The right part is under a slope from 100 down to 50: its left side is 100 high, the other's 80.
        let right = Polygon::simple(
            [(60.0, 0.0), (160.0, 0.0), (160.0, 50.0), (60.0, 100.0)].map(Point::from).to_vec(),
        );
        let (_, gaps) = joined(&[Polygon::rect(0.0, 0.0, 50.0, 80.0), right]).unwrap();
        assert_eq!(gaps.iter().map(Polygon::area).sum::<f64>(), 10.0 * 80.0);
    }
}
