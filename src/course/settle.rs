//! Levels that stand on a course line but for drawing noise, put on it once, before anything is laid
//! out: no stage meets a strip of wall thinner than what tells two heights apart.

use crate::geom::polygon::Polygon;
use crate::geom::vocabulary::{Point, Ring};
use crate::model::course::StoryPole;
use crate::model::house::{DrawnWall, House};

/// The house with every corner of walls, openings and fixtures that stands on a course line but for
/// drawing noise put on it. `None` where none does.
pub fn settled(house: &House, pole: &StoryPole) -> Option<House> {
    let mut out = house.clone();
    let mut any = false;
    for w in out.elevations.iter_mut().flat_map(|e| &mut e.walls) {
        any |= wall(w, pole);
    }
    for c in &mut out.corners {
        for s in &mut c.sides {
            (s.low, s.high) = (pole.settled(s.low), pole.settled(s.high));
        }
        (c.low, c.high) = (pole.settled(c.low), pole.settled(c.high));
    }
    any.then_some(out)
}

fn wall(w: &mut DrawnWall, pole: &StoryPole) -> bool {
    let mut any = ring(&mut w.outline, pole);
    for p in w.faces.iter_mut().chain(&mut w.bands) {
        any |= polygon(p, pole);
    }
    w.faces.retain(|p| p.outer.len() > 2);
    let openings = w.openings.iter_mut().map(|o| &mut o.outline);
    for r in openings.chain(w.obstacles.iter_mut().map(|o| &mut o.outline)) {
        any |= ring(r, pole);
    }
    for e in &mut w.edges {
        (e.from.y, e.to.y) = (pole.settled(e.from.y), pole.settled(e.to.y));
    }
    w.edges.retain(|e| e.from != e.to);
    any
}

fn polygon(p: &mut Polygon, pole: &StoryPole) -> bool {
    let mut any = ring(&mut p.outer, pole);
    for h in &mut p.holes {
        any |= ring(h, pole);
    }
    p.holes.retain(|h| h.len() > 2);
    any
}

/// Moves a ring's corners; those that become one are one.
fn ring(points: &mut Ring, pole: &StoryPole) -> bool {
    let mut any = false;
    for p in points.iter_mut() {
        let y = pole.settled(p.y);
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
