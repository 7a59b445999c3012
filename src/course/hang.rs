//! A first course that hangs below the drawn bottom of a wall: the wall as siding then covers it.

use super::levels::{bottoms, hang, span};
use crate::geom::boolean::union_all;
use crate::geom::polygon::Polygon;
use crate::geom::tol::{SAME, same, snap};
use crate::geom::vocabulary::Point;
use crate::job::CourseRules;
use crate::model::course::StoryPole;
use crate::model::house::{DrawnElevation, DrawnOpening, DrawnWall, House, OpeningSide};

/// A wall bottom that is moved down.
struct Moved {
    x: (f64, f64),
    from: f64,
    to: f64,
}

/// The house with each wall bottom moved down to the butt line below it where the job lets the first
/// course hang that far and grade leaves its clearance; doors and windows that stand on it reach down with it.
/// `None` where nothing hangs.
pub fn hung(house: &House, pole: &StoryPole, rules: &CourseRules) -> Option<House> {
    if rules.hang_below <= 0.0 {
        return None;
    }
    let mut out = house.clone();
    let mut any = false;
    for e in &mut out.elevations {
        for i in 0..e.walls.len() {
            let moved = moved(e, &e.walls[i], pole, rules);
            if !moved.is_empty() {
                any = true;
                lower(&mut e.walls[i], &moved);
                let wall = &e.walls[i].id;
                let sides = out.corners.iter_mut().flat_map(|c| &mut c.sides);
                for s in sides.filter(|s| s.wall == *wall) {
                    let foot = Point::new(s.at(s.low), s.low);
                    s.reach(down(foot, &moved).map_or(s.low, |p| p.y), s.high);
                }
            }
        }
    }
    for c in &mut out.corners {
        c.low = c.sides.iter().map(|s| s.low).fold(c.high, f64::min);
    }
    any.then_some(out)
}

fn moved(
    on: &DrawnElevation,
    wall: &DrawnWall,
    pole: &StoryPole,
    rules: &CourseRules,
) -> Vec<Moved> {
    bottoms(wall)
        .map(|e| Moved { x: span(e), from: e.from.y, to: pole.butt(pole.course_at(e.from.y)) })
        .zip(bottoms(wall))
        .filter(|(m, e)| {
            let by = m.from - m.to;
            by > SAME && by <= hang(on, e, rules) + SAME
        })
        .map(|(m, _)| m)
        .collect()
}

fn lower(wall: &mut DrawnWall, moved: &[Moved]) {
    let strips = moved.iter().map(|m| Polygon::rect(m.x.0, m.to, m.x.1, m.from));
    let grown = |shapes: &[Polygon]| {
        let all: Vec<Polygon> = shapes.iter().cloned().chain(strips.clone()).collect();
        let snapped = |p: &Polygon| p.map(|q| Point::new(snap(q.x), snap(q.y)));
        union_all(&all).iter().map(snapped).collect::<Vec<_>>()
    };
    wall.faces = grown(&wall.faces);
    let whole = grown(&[Polygon::simple(wall.outline.clone()).wound()]);
    let largest = whole.into_iter().max_by(|a, b| a.area().total_cmp(&b.area()));
    if let Some(p) = largest {
        wall.outline = p.outer;
    }
    for o in &mut wall.openings {
        follow(o, moved);
    }
    for e in &mut wall.edges {
        // Level sides go down with the bottom, uprights reach down to it.
        let (a, b) = (down(e.from, moved), down(e.to, moved));
        if same(e.from.x, e.to.x) || (a.is_some() && b.is_some()) {
            e.from = a.unwrap_or(e.from);
            e.to = b.unwrap_or(e.to);
        }
    }
}

/// A door or window that stands on a moved bottom reaches down to the new one. The sill of a window that ends
/// there stays where it is drawn, and with it its boards and flashing.
fn follow(opening: &mut DrawnOpening, moved: &[Moved]) {
    let drawn = opening.outline.clone();
    for p in &mut opening.outline {
        *p = down(*p, moved).unwrap_or(*p);
    }
    let ends_there = opening.kind.has_sill() && opening.ends_at(OpeningSide::Sill);
    if ends_there && opening.outline != drawn {
        opening.unfilled.get_or_insert(drawn);
    }
}

fn down(p: Point, moved: &[Moved]) -> Option<Point> {
    let on = |m: &&Moved| same(p.y, m.from) && p.x >= m.x.0 - SAME && p.x <= m.x.1 + SAME;
    moved.iter().find(on).map(|m| Point::new(p.x, m.to))
}
