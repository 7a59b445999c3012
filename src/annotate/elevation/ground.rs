//! What stands behind the siding: the source in grey, grade and level line, areas not sided.

use super::view::View;
use crate::annotate::canvas::{Canvas, Look, Mark};
use crate::annotate::style::Ink;
use crate::geom::vocabulary::{Point, Rect, Vec2};
use crate::model::layout::Elevation;
use crate::model::linework::Role;

/// How far outside the walls the source is shown, elevation inches: roofs' edges and eaves.
const ROUND: f64 = 48.0;

pub(super) fn backdrop(c: &mut Canvas, e: &Elevation, v: &View) {
    let shown = |r: Option<Role>| {
        !matches!(
            r,
            Some(Role::Frame | Role::Grade | Role::Level | Role::InsideCorner | Role::Wall)
        )
    };
    let near = v.house.inflate(ROUND, ROUND);
    for b in e.backdrop.iter().filter(|b| shown(b.role)) {
        if !b.points.iter().all(|p| near.contains(*p)) {
            continue;
        }
        let points: Vec<Point> = b.points.iter().map(|p| v.map * *p).collect();
        if b.closed { c.ring(Ink::Source, &points) } else { c.chain(Ink::Source, &points) }
    }
}

pub(super) fn ground(c: &mut Canvas, e: &Elevation, v: &View) {
    let house = v.house;
    let beyond = 8.0_f64;
    let ends = Rect::new(house.x0 - beyond, f64::MIN / 4.0, house.x1 + beyond, f64::MAX / 4.0);
    for p in e.grade.windows(2) {
        let (a, b) = (Point::new(p[0][0], p[0][1]), Point::new(p[1][0], p[1][1]));
        if let Some((a, b)) = crate::annotate::place::clipped(a, b, &ends) {
            c.firm(Ink::Grade, v.map * a, v.map * b);
        }
    }
    let out = Vec2::new(0.12, 0.0);
    c.line(Ink::Level, v.at(house.x0, 0.0) - out, v.at(house.x1, 0.0) + out);
}

/// Areas inside walls that take no siding are named.
pub(super) fn bare(c: &mut Canvas, e: &Elevation, v: &View) {
    for b in e.backdrop.iter().filter(|b| matches!(b.role, Some(Role::Bare)) && b.closed) {
        let Some(r) = crate::geom::polygon::bounds(&b.points) else { continue };
        let at = Point::new(r.x0 + r.width() / 4.0, r.center().y);
        if v.holds(at.x, at.y) {
            let target = v.map * at;
            c.mark(Mark {
                text: "not sided",
                target,
                wish: target,
                reach: 1.0,
                look: Look::Dotted,
            });
        }
    }
}
