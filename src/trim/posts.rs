//! Corner posts: each corner once, though two elevations show it. Hung short of the soffit, run
//! below the starter, spliced by the rule when taller than stock (FACTS SD-54, SD-97, SD-98).

use super::channels::merged;
use super::stock::{Place, part};
use crate::geom::tol::{LEVEL, SAME};
use crate::geom::vocabulary::Point;
use crate::job::Job;
use crate::model::corner::{Corner, CornerKind, Hand};
use crate::model::house::{EdgeKind, House};
use crate::model::receiver::{Field, FieldEdge};
use crate::model::trim::{TrimEnd, TrimKind, TrimPiece};

/// A part of a corner that siding reaches, on one wall or on both.
struct Reach {
    low: f64,
    high: f64,
    /// Where it shows: indices of the corner's side and of a field there.
    parts: Vec<(usize, usize)>,
}

pub(super) fn pieces(house: &House, fields: &[Field], job: &Job) -> Vec<TrimPiece> {
    let mut out = Vec::new();
    for corner in &house.corners {
        for reach in reaches(house, fields, corner) {
            out.extend(post(house, fields, corner, &reach, job));
        }
    }
    out
}

/// Parts of a corner that siding reaches from either wall: what overlaps or touches is one post.
fn reaches(house: &House, fields: &[Field], corner: &Corner) -> Vec<Reach> {
    let kind = match corner.kind {
        CornerKind::Outside => EdgeKind::OutsideCorner,
        CornerKind::Inside => EdgeKind::InsideCorner,
    };
    let mut parts: Vec<Reach> = Vec::new();
    for (i, side) in corner.sides.iter().enumerate() {
        for (field, f) in fields.iter().enumerate() {
            if !Place::of(house, f).is_some_and(|p| p.wall.id == side.wall) {
                continue;
            }
            // Counter-clockwise: the right side of a wall runs up.
            let here = |e: &FieldEdge| {
                let hand = if e.to.y > e.from.y { Hand::Right } else { Hand::Left };
                let (low, high) = (e.from.y.min(e.to.y), e.from.y.max(e.to.y));
                let x = (e.from.x + e.to.x) / 2.0;
                e.kind == kind
                    && hand == side.side
                    && (x - side.x).abs() <= LEVEL
                    && low < side.high
                    && high > side.low
            };
            parts.extend(merged(&f.edges).iter().filter(|e| here(e)).map(|e| Reach {
                low: e.from.y.min(e.to.y),
                high: e.from.y.max(e.to.y),
                parts: vec![(i, field)],
            }));
        }
    }
    parts.sort_by(|a, b| a.low.total_cmp(&b.low).then(a.parts.cmp(&b.parts)));
    let mut out: Vec<Reach> = Vec::new();
    for part in parts {
        match out.last_mut().filter(|r| part.low <= r.high + SAME) {
            Some(r) => {
                r.high = r.high.max(part.high);
                r.parts.extend(part.parts);
            }
            None => out.push(part),
        }
    }
    out
}

/// The post of a part, counted on the first wall it stands at.
fn post(
    house: &House,
    fields: &[Field],
    corner: &Corner,
    reach: &Reach,
    job: &Job,
) -> Vec<TrimPiece> {
    let Some((first, field)) = reach.parts.iter().copied().min() else { return Vec::new() };
    let (Some(place), Some(side)) =
        (fields.get(field).and_then(|f| Place::of(house, f)), corner.sides.get(first))
    else {
        return Vec::new();
    };
    let kind = match corner.kind {
        CornerKind::Inside => TrimKind::InsidePost,
        CornerKind::Outside => TrimKind::OutsidePost,
    };
    let low = Point::new(side.x, reach.low - job.trim.post_below);
    let high = Point::new(side.x, reach.high - job.trim.post_top_gap);
    if high.y <= low.y {
        return Vec::new();
    }
    let mut whole = place.piece(kind, low, high, 0.0, [TrimEnd::Square, TrimEnd::Square]);
    let on = reach.parts.iter().map(|(i, _)| corner.sides[*i].elevation.as_str());
    whole.shared_with = on.filter(|e| *e != place.elevation.name).min().map(str::to_owned);
    part(whole, job.trim.stock(kind.stock()), job.trim.post_lap)
}
