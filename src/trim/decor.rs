//! Boards on the wall's face: flat surrounds of openings, friezes, bands with their caps (FACTS
//! OT-14, OT-15).

use super::channels::merged;
use super::stock::{Place, part};
use crate::geom::tol::SAME;
use crate::geom::vocabulary::Point;
use crate::job::{Job, TopFinish};
use crate::model::house::{EdgeKind, OpeningKind};
use crate::model::receiver::Field;
use crate::model::trim::{TrimEnd, TrimKind, TrimPiece};

/// Shortest board worth a piece, inches.
const LEAST: f64 = 1.0;

/// Boards of one wall. A wall may have several fields: what hangs on the drawn wall alone is made
/// with the first of them.
pub(super) fn pieces(place: &Place, field: &Field, first: bool, job: &Job) -> Vec<TrimPiece> {
    let mut out = caps(place, field, job);
    if first {
        out.extend(bands(place, job));
        out.extend(friezes(place, job));
        out.extend(surrounds(place, job));
    }
    out
}

/// A board from `a` to `b`, in lengths that butt.
fn board(place: &Place, kind: TrimKind, a: Point, b: Point, job: &Job) -> Vec<TrimPiece> {
    if a.distance(b) < LEAST {
        return Vec::new();
    }
    let whole = place.piece(kind, a, b, 0.0, [TrimEnd::Square, TrimEnd::Square]);
    part(whole, job.stock(kind.stock()), 0.0)
}

fn bands(place: &Place, job: &Job) -> Vec<TrimPiece> {
    let level = place.wall.bands.iter().map(|p| p.bounds());
    level
        .flat_map(|b| {
            let y = (b.y0 + b.y1) / 2.0;
            board(place, TrimKind::Band, Point::new(b.x0, y), Point::new(b.x1, y), job)
        })
        .collect()
}

/// A cap over each band that siding stands on: its flashing runs behind the siding above and over
/// the board below.
fn caps(place: &Place, field: &Field, job: &Job) -> Vec<TrimPiece> {
    let on_band = |y: f64, x: f64| {
        let top = |p: &crate::geom::polygon::Polygon| {
            let b = p.bounds();
            (b.y1 - y).abs() < 0.1 && x > b.x0 - 0.1 && x < b.x1 + 0.1
        };
        place.wall.bands.iter().any(top)
    };
    merged(&field.edges)
        .iter()
        .filter(|e| e.kind == EdgeKind::BareTop && on_band(e.from.y, e.from.midpoint(e.to).x))
        .flat_map(|e| {
            let (a, b) = if e.from.x < e.to.x { (e.from, e.to) } else { (e.to, e.from) };
            let whole =
                place.piece(TrimKind::DripCap, a, b, 0.0, [TrimEnd::Square, TrimEnd::Square]);
            part(whole, job.trim.drip_cap, job.trim.channel_face)
        })
        .collect()
}

/// A frieze along every level top, and a crown over it where the job has one.
fn friezes(place: &Place, job: &Job) -> Vec<TrimPiece> {
    let height = job.trim.frieze;
    if height <= 0.0 {
        return Vec::new();
    }
    let tops = place.wall.edges.iter().filter(|e| e.kind == EdgeKind::Eave);
    tops.flat_map(|e| {
        let (a, b) = if e.from.x < e.to.x { (e.from, e.to) } else { (e.to, e.from) };
        let down = |p: Point| Point::new(p.x, p.y - height / 2.0);
        let mut out = board(place, TrimKind::Frieze, down(a), down(b), job);
        if job.trim.top == TopFinish::Crown {
            out.extend(board(place, TrimKind::Crown, a, b, job));
        }
        out
    })
    .collect()
}

/// Flat boards round each opening: jambs between head and sill. Those of a curved or sloping head are
/// bent or cut from wider stock: the box round it is taken.
fn surrounds(place: &Place, job: &Job) -> Vec<TrimPiece> {
    let w = job.trim.surround;
    if w <= 0.0 {
        return Vec::new();
    }
    let mut out = Vec::new();
    for o in &place.wall.openings {
        let (left, right, low, high) = o.sides();
        let sill = matches!(o.kind, OpeningKind::Window | OpeningKind::Vent);
        let foot = if sill { low + w } else { low };
        let p = |x: f64, y: f64| Point::new(x, y);
        let mut mine = board(
            place,
            TrimKind::Surround,
            p(left, high - w / 2.0),
            p(right, high - w / 2.0),
            job,
        );
        if sill {
            let y = low + w / 2.0;
            mine.extend(board(place, TrimKind::Surround, p(left, y), p(right, y), job));
        }
        for x in [left + w / 2.0, right - w / 2.0] {
            if high - w > foot + SAME {
                mine.extend(board(place, TrimKind::Surround, p(x, foot), p(x, high - w), job));
            }
        }
        mine.iter_mut().for_each(|t| t.opening = Some(o.id.clone()));
        out.extend(mine);
    }
    out
}
