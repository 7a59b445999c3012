//! What stands behind the siding: the source in gray, grade and level line, areas without siding.

use super::view::View;
use crate::annotate::canvas::{Canvas, Look, Mark};
use crate::annotate::style::{Ink, TEXT};
use crate::geom::vocabulary::{Point, Rect, Vec2, Xy};
use crate::layout::wall::{LaidBare, LaidElevation};
use crate::model::house::Backdrop;
use crate::model::linework::Role;
use crate::model::receiver::BareBy;
use crate::wording::legend;

/// How far outside the walls the source is shown, elevation inches: roofs' edges and eaves.
const ROUND: f64 = 48.0;
/// Least area without siding that is named, square feet: of our own choosing.
const LEAST_MARKED: f64 = 1.0;

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
        if let Some((a, b)) = crate::annotate::meeting::clipped(a, b, &ends) {
            c.firm(Ink::Grade, v.map * a, v.map * b);
        }
    }
    let out = Vec2::new(0.12, 0.0);
    c.line(Ink::Level, v.at(house.x0, 0.0) - out, v.at(house.x1, 0.0) + out);
}

/// Areas inside walls that take no siding are named.
pub(super) fn bare(c: &mut Canvas, e: &LaidElevation, lines: &[Backdrop], v: &View) {
    let say = v.say;
    zones(c, e, v);
    without_siding(c, e, v);
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
                text: &say.word(crate::wording::sheets::NO_SIDING),
                target,
                wish: target,
                reach: 1.0,
                look: Look::Dotted,
            });
        }
    }
}

/// Parts of walls that are left without siding, near grade and behind roofs.
fn without_siding(c: &mut Canvas, e: &LaidElevation, v: &View) {
    let large = |b: &&LaidBare| match b.by {
        BareBy::StopsShort => true,
        BareBy::OverRoof | BareBy::Filler => false,
        _ => b.area >= LEAST_MARKED,
    };
    for b in e.walls.iter().flat_map(|w| w.bare.iter().filter(large)) {
        // What lies outside the wall is drawn.
        for ring in b.outline.iter().filter(|_| b.by == BareBy::StopsShort) {
            c.ring(Ink::Source, &v.points(ring));
        }
        let rings = b.outline.iter().filter_map(|ring| inside(ring));
        for at in rings.filter(|at| v.holds(at.x, at.y)).take(1) {
            let target = v.map * at;
            let text = crate::wording::sheets::NO_SIDING;
            c.mark(Mark {
                text: &v.say.word(text),
                target,
                wish: target,
                reach: 1.0,
                look: Look::Dotted,
            });
        }
    }
}

/// A place within a ring, as far from its sides as any, of those nearest its middle.
fn inside(ring: &[Xy]) -> Option<Point> {
    let points: Vec<Point> = ring.iter().map(|p| Point::new(p[0], p[1])).collect();
    let r = crate::geom::polygon::bounds(&points)?;
    let share = |i: i32| f64::from(i) / 16.0;
    let grid = (1..16).flat_map(|i| (1..16).map(move |k| (share(i), share(k))));
    let places = grid.map(|(i, k)| Point::new(r.x0 + r.width() * i, r.y0 + r.height() * k));
    let mut within: Vec<Point> =
        places.filter(|p| crate::geom::polygon::ring_contains(&points, *p)).collect();
    let middle = r.center();
    let sides = || points.iter().zip(points.iter().cycle().skip(1));
    let room = |p: &Point| -> f64 {
        sides().map(|(a, b)| off_side(*p, *a, *b)).fold(f64::INFINITY, f64::min)
    };
    let rank = |p: &Point| ((-2.0 * room(p)).round(), p.distance(middle));
    within.sort_by(|a, b| {
        let (a, b) = (rank(a), rank(b));
        a.0.total_cmp(&b.0).then(a.1.total_cmp(&b.1))
    });
    within.first().copied()
}

/// How far a place is from a side.
fn off_side(p: Point, a: Point, b: Point) -> f64 {
    let run = b - a;
    let along = ((p - a).dot(run) / run.hypot2().max(f64::MIN_POSITIVE)).clamp(0.0, 1.0);
    p.distance(a + run * along)
}

/// Other cladding is named and measured where it is.
fn zones(c: &mut Canvas, e: &LaidElevation, v: &View) {
    let say = v.say;
    for z in &e.zones {
        let Some(outer) = z.outline.first() else { continue };
        let points: Vec<Point> = outer.iter().map(|p| Point::new(p[0], p[1])).collect();
        let Some(r) = crate::geom::polygon::bounds(&points) else { continue };
        let at = Point::new(r.center().x, r.y0 + r.height() / 8.0);
        if !v.holds(at.x, at.y) {
            continue;
        }
        let text = say.line(|lang| legend::zone(lang, z, v.style));
        for ring in &z.outline {
            c.ring(Ink::Source, &v.points(ring));
        }
        let room = r.width() / v.factor;
        let text = crate::annotate::canvas::fitted(&text, TEXT, false, room.max(3.0));
        let target = v.map * at;
        c.mark(Mark { text: &text, target, wish: target, reach: 2.0, look: Look::Dotted });
    }
}
