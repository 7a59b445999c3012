//! The key plan: the walls as they follow one another round the house, each with its place in the order of
//! work. It is put together from the corners that elevations share, and is no survey.

use std::collections::{BTreeMap, BTreeSet};

use super::canvas::{Canvas, Look, Mark};
use super::elevation::marks::prefix;
use super::style::Ink;
use crate::geom::polygon::bounds;
use crate::geom::vocabulary::{Point, Rect, Vec2};
use crate::layout::Layout;
use crate::layout::wall::LaidWall;
use crate::model::corner::{CornerKind, Hand};
use crate::wording::cover;

/// A wall as seen from above.
struct Placed<'a> {
    wall: &'a LaidWall,
    from: Point,
    to: Point,
}

/// Draws it in a box.
pub(super) fn draw(c: &mut Canvas, layout: &Layout, area: Rect) {
    let all = placed(layout);
    let points: Vec<Point> = all.iter().flat_map(|p| [p.from, p.to]).collect();
    let Some(r) = bounds(&points) else { return };
    // Room for names all round.
    let inner = area.inflate(-0.5, -0.25);
    let k = (inner.width() / r.width().max(1.0)).min(inner.height() / r.height().max(1.0));
    let on = |p: Point| inner.center() + (p - r.center()) * k;
    let order: BTreeMap<&str, usize> =
        layout.work.walls.iter().enumerate().map(|(i, w)| (w.wall.as_str(), i + 1)).collect();
    for p in &all {
        c.firm(Ink::Wall, on(p.from), on(p.to));
        let along = p.to - p.from;
        for end in [on(p.from), on(p.to)] {
            let across = Vec2::new(along.y, -along.x) / along.hypot().max(1e-9) * 0.05;
            c.line(Ink::Dimension, end - across, end + across);
        }
    }
    for p in &all {
        let along = (p.to - p.from) / (p.to - p.from).hypot().max(1e-9);
        // Seen from outside a wall goes to the right: outside lies on the right hand.
        let out = Vec2::new(along.y, -along.x);
        let middle = on(p.from.midpoint(p.to));
        let number = order.get(p.wall.id.as_str()).copied();
        let text = cover::wall_in_plan(number, prefix(p.wall));
        let wide = crate::typeface::width(&text, super::style::TEXT, false) / 2.0;
        let wish = middle + Vec2::new(out.x * (wide + 0.1), out.y * 0.14);
        c.mark(Mark { text: &text, target: middle, wish, reach: 1.0, look: Look::Bare });
    }
}

/// The walls in their places: chains of walls that meet, chain beside chain.
fn placed(layout: &Layout) -> Vec<Placed<'_>> {
    let next = next(layout);
    let walls: BTreeMap<&str, &LaidWall> =
        layout.walls().map(|(_, w)| (w.id.as_str(), w)).collect();
    let led_to: BTreeSet<&str> = next.values().map(|(w, _)| *w).collect();
    // Chains begin where nothing leads to; what is left is rings.
    let names = || layout.walls().map(|(_, w)| w.id.as_str());
    let starts = names().filter(|w| !led_to.contains(w)).chain(names());
    let mut seen: BTreeSet<&str> = BTreeSet::new();
    let mut out: Vec<Placed> = Vec::new();
    let mut x = 0.0;
    for start in starts {
        let mut chain: Vec<Placed> = Vec::new();
        let (mut at, mut heading) = (Point::ORIGIN, 0.0_f64);
        let mut here = Some(start);
        while let Some(id) = here.filter(|w| seen.insert(w)) {
            let Some(wall) = walls.get(id) else { break };
            let xs = || wall.outline.iter().map(|p| p[0]);
            let wide = xs().fold(f64::MIN, f64::max) - xs().fold(f64::MAX, f64::min);
            let to = at + Vec2::from_angle(heading.to_radians()) * wide;
            chain.push(Placed { wall, from: at, to });
            at = to;
            here = next.get(id).map(|(w, turn)| {
                heading += turn;
                *w
            });
        }
        let points: Vec<Point> = chain.iter().flat_map(|p| [p.from, p.to]).collect();
        let Some(r) = bounds(&points) else { continue };
        let by = Vec2::new(x - r.x0, -r.y0);
        x += r.width() + APART;
        out.extend(chain.into_iter().map(|p| Placed { from: p.from + by, to: p.to + by, ..p }));
    }
    out
}

/// Between chains that no corner joins, house inches.
const APART: f64 = 120.0;

/// The wall on the right of each, with the turn there, degrees counter-clockwise from above.
fn next(layout: &Layout) -> BTreeMap<&str, (&str, f64)> {
    let mut out = BTreeMap::new();
    for corner in &layout.corners {
        let side = |hand: Hand| corner.sides.iter().find(|s| s.side == hand);
        let (Some(a), Some(b)) = (side(Hand::Right), side(Hand::Left)) else { continue };
        let turn = 180.0 - corner.angle.unwrap_or(90.0);
        let turn = if corner.kind == CornerKind::Outside { turn } else { -turn };
        out.entry(a.wall.as_str()).or_insert((b.wall.as_str(), turn));
    }
    out
}
