//! What stands behind the siding: the source in gray, grade and level line, areas not sided.

use super::view::View;
use crate::annotate::canvas::{Canvas, Look, Mark};
use crate::annotate::style::{Ink, TEXT};
use crate::geom::vocabulary::{Point, Rect, Vec2};
use crate::layout::wall::LaidElevation;
use crate::model::house::Backdrop;
use crate::model::linework::Role;
use crate::wording::legend;

/// How far outside the walls the source is shown, elevation inches: roofs' edges and eaves.
const ROUND: f64 = 48.0;

pub(super) fn backdrop(c: &mut Canvas, lines: &[Backdrop], v: &View) {
    let shown = |r: Option<Role>| {
        !matches!(
            r,
            Some(Role::Frame | Role::Grade | Role::Level | Role::InsideCorner | Role::Wall)
        )
    };
    let near = v.house.inflate(ROUND, ROUND);
    for b in lines.iter().filter(|b| shown(b.role)) {
        if !b.points.iter().all(|p| near.contains(*p)) {
            continue;
        }
        let points: Vec<Point> = b.points.iter().map(|p| v.map * *p).collect();
        if b.closed { c.ring(Ink::Source, &points) } else { c.chain(Ink::Source, &points) }
    }
}

pub(super) fn ground(c: &mut Canvas, e: &LaidElevation, v: &View) {
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
pub(super) fn bare(c: &mut Canvas, e: &LaidElevation, lines: &[Backdrop], v: &View) {
    zones(c, e, v);
    for b in lines.iter().filter(|b| b.role == Some(Role::Bare) && b.closed) {
        let Some(r) = crate::geom::polygon::bounds(&b.points) else { continue };
        let of_zone = |p: &Point| {
            let rings = e.zones.iter().flat_map(|z| &z.outline);
            rings.flatten().any(|q| (q[0] - p.x).abs() < 0.1 && (q[1] - p.y).abs() < 0.1)
        };
        // A zone's outline lies on its own area's, in part at least.
        if b.points.iter().filter(|p| of_zone(p)).count() >= 2 {
            continue;
        }
        let at = Point::new(r.x0 + r.width() / 4.0, r.center().y);
        if v.holds(at.x, at.y) {
            let target = v.map * at;
            c.mark(Mark {
                text: crate::wording::sheets::NO_SIDING,
                target,
                wish: target,
                reach: 1.0,
                look: Look::Dotted,
            });
        }
    }
}

/// Other cladding is named and measured where it is.
fn zones(c: &mut Canvas, e: &LaidElevation, v: &View) {
    for z in &e.zones {
        let Some(outer) = z.outline.first() else { continue };
        let points: Vec<Point> = outer.iter().map(|p| Point::new(p[0], p[1])).collect();
        let Some(r) = crate::geom::polygon::bounds(&points) else { continue };
        let at = Point::new(r.center().x, r.y0 + r.height() / 8.0);
        if !v.holds(at.x, at.y) {
            continue;
        }
        let text = legend::zone(z, v.style);
        for ring in &z.outline {
            c.ring(Ink::Source, &v.points(ring));
        }
        let room = r.width() / v.factor;
        let text = crate::annotate::canvas::fitted(&text, TEXT, false, room.max(3.0));
        let target = v.map * at;
        c.mark(Mark { text: &text, target, wish: target, reach: 2.0, look: Look::Dotted });
    }
}
