//! Levels that stand on a course line but for drawing noise, put on it once, before anything is laid
//! out: no stage meets a strip of wall thinner than what tells two heights apart. In a rough drawing they
//! lie as far off as its vertices may, but no farther than half the finest mark on a tape.

use crate::geom::polygon::{Polygon, sides};
use crate::geom::tol::{MARK, SAME, same};
use crate::geom::vocabulary::{Point, Ring};
use crate::model::course::StoryPole;
use crate::model::house::{DrawnWall, House};

/// The house with every corner of walls, openings and fixtures that stands on a course line but for
/// drawing noise put on it. `None` where none does.
pub fn settled(house: &House, pole: &StoryPole) -> Option<House> {
    let mut out = house.clone();
    let mut any = false;
    let reach = house.roughness.clamp(SAME, MARK);
    let on = |y: f64| pole.settled_within(y, reach);
    for w in out.elevations.iter_mut().flat_map(|e| &mut e.walls) {
        any |= wall(w, on);
    }
    for c in &mut out.corners {
        for s in &mut c.sides {
            (s.low, s.high) = (on(s.low), on(s.high));
        }
        (c.low, c.high) = (on(c.low), on(c.high));
    }
    any.then_some(out)
}

fn wall(w: &mut DrawnWall, on: impl Fn(f64) -> f64 + Copy) -> bool {
    let mut any = ring(&mut w.outline, on);
    let hidden = w.hidden.iter_mut().map(|h| &mut h.shape);
    for p in w.faces.iter_mut().chain(&mut w.bands).chain(hidden) {
        any |= polygon(p, on);
    }
    w.faces.retain(|p| p.outer.len() > 2);
    any |= touching(w);
    let openings = w.openings.iter_mut().map(|o| &mut o.outline);
    for r in openings.chain(w.obstacles.iter_mut().map(|o| &mut o.outline)) {
        any |= ring(r, on);
    }
    for e in &mut w.edges {
        (e.from.y, e.to.y) = (on(e.from.y), on(e.to.y));
    }
    w.edges.retain(|e| e.from != e.to);
    any
}

/// Puts corners of openings that touch a level side of their wall but for drawing noise on it: no
/// hairline of wall goes between.
fn touching(w: &mut DrawnWall) -> bool {
    let mut any = false;
    let all = w.faces.iter().flat_map(Polygon::rings).flat_map(|r| sides(r));
    let level: Vec<(Point, Point)> = all.filter(|(a, b)| a.y == b.y && a.x != b.x).collect();
    for p in w.openings.iter_mut().flat_map(|o| &mut o.outline) {
        let over = |(a, b): &&(Point, Point)| a.x.min(b.x) <= p.x && p.x <= a.x.max(b.x);
        if let Some((a, _)) = level.iter().filter(over).find(|(a, _)| same(a.y, p.y)) {
            any |= a.y != p.y;
            p.y = a.y;
        }
    }
    any
}

fn polygon(p: &mut Polygon, on: impl Fn(f64) -> f64 + Copy) -> bool {
    let mut any = ring(&mut p.outer, on);
    for h in &mut p.holes {
        any |= ring(h, on);
    }
    p.holes.retain(|h| h.len() > 2);
    any
}

/// Moves a ring's corners; those that become one are one.
fn ring(points: &mut Ring, on: impl Fn(f64) -> f64) -> bool {
    let mut any = false;
    for p in points.iter_mut() {
        let y = on(p.y);
        any |= y != p.y;
        *p = Point::new(p.x, y);
    }
    if any {
        points.dedup();
        while points.len() > 1 && points.first() == points.last() {
            points.pop();
        }
    }
    any
}
