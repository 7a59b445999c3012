//! Corner posts: each corner once, though two elevations show it. Hung short of the soffit, run
//! below the starter, spliced by the rule when taller than stock (`TrimFact::PostTopGap`,
//! `TrimFact::PostPastStarter`, `TrimFact::PostSplice`), capped at the foot over an overhang
//! (`TrimFact::PostCap`).

use std::collections::BTreeMap;

use super::channels::merged;
use super::stock::{LEAST, Place, part, parted};
use crate::geom::polygon::bounds;
use crate::geom::tol::{GRID, LEVEL, SAME};
use crate::geom::vocabulary::{Point, Rect};
use crate::job::{InsideCorner, Job};
use crate::model::corner::{Corner, CornerKind, Hand};
use crate::model::house::{DrawnWall, EdgeKind, House, WallWay};
use crate::model::ids::ElevationName;
use crate::model::post_angle::PostAngle;
use crate::model::receiver::{Field, FieldEdge};
use crate::model::trim::{TrimEnd, TrimKind, TrimPiece};
use crate::real::Real;

/// Shortest length of a spliced post that is cut, inches: common practice, no source.
const SHORTEST: f64 = 12.0;
/// How far over the top of the wall below an upper story's siding may start, inches: common
/// practice, no source.
const OVERHANG: f64 = 24.0;

/// A part of a corner that siding reaches, on one wall or on both.
struct Reach {
    low: f64,
    high: f64,
    /// Where it shows.
    parts: Vec<Part>,
}

/// The siding of one wall at a corner.
#[derive(Clone, Copy)]
struct Part {
    /// Index of the corner's side.
    side: usize,
    /// Index of the field.
    field: usize,
    low: f64,
    high: f64,
}

pub(super) fn pieces(house: &House, fields: &[Field], job: &Job) -> Vec<TrimPiece> {
    let mut out = Vec::new();
    let mut on: BTreeMap<&str, Vec<usize>> = BTreeMap::new();
    for (i, f) in fields.iter().enumerate() {
        if let Some(place) = Place::of(house, f) {
            on.entry(&place.wall.id).or_default().push(i);
        }
    }
    for corner in &house.corners {
        for reach in reaches(fields, (&on, past_bands(house, corner)), corner, job) {
            out.extend(post(house, fields, corner, &reach, job));
        }
    }
    out
}

/// Widest band that a post runs on past, inches: where the siding is drawn to the band and no closer, the
/// band butts the post (common practice, no source).
const BAND: f64 = 16.0;

/// The gaps in the siding that the post of a corner runs on past.
fn past_bands(house: &House, corner: &Corner) -> f64 {
    let walls = || house.elevations.iter().flat_map(|e| &e.walls);
    let drawn = |wall: &str| walls().any(|w| w.id == wall && w.way == WallWay::Hatch);
    if corner.sides.iter().all(|s| drawn(&s.wall)) { BAND } else { 0.0 }
}

/// Parts of a corner that siding reaches from either wall: what overlaps or touches is one post.
/// `on` has the fields of each wall; a post runs on past gaps up to `past`.
fn reaches(
    fields: &[Field],
    (on, past): (&BTreeMap<&str, Vec<usize>>, f64),
    corner: &Corner,
    job: &Job,
) -> Vec<Reach> {
    let kind = match corner.kind {
        CornerKind::Outside => EdgeKind::OutsideCorner,
        CornerKind::Inside => EdgeKind::InsideCorner,
    };
    let set_backs = job.set_backs();
    let mut parts: Vec<Reach> = Vec::new();
    for (i, side) in corner.sides.iter().enumerate() {
        for &field in on.get(side.wall.as_str()).into_iter().flatten() {
            let Some(f) = fields.get(field) else { continue };
            // Counter-clockwise: the right side of a wall runs up.
            // The field ends at the bottom of the pocket, the post stands in the corner.
            let set_back = set_backs.at(corner, &side.wall);
            let ends = |y: f64| match side.side {
                Hand::Left => side.at(y) + set_back,
                Hand::Right => side.at(y) - set_back,
            };
            let here = |e: &FieldEdge| {
                let hand = if e.to.y > e.from.y { Hand::Right } else { Hand::Left };
                let (low, high) = (e.from.y.min(e.to.y), e.from.y.max(e.to.y));
                let x = (e.from.x + e.to.x) / 2.0;
                e.kind == kind
                    && hand == side.side
                    && (x - ends((low + high) / 2.0)).abs() <= LEVEL
                    && low < side.high
                    && high > side.low
            };
            parts.extend(merged(&f.edges).iter().filter(|e| here(e)).map(|e| {
                let (low, high) = (e.from.y.min(e.to.y), e.from.y.max(e.to.y));
                let (low, high) = (low.max(side.low), high.min(side.high));
                Reach { low, high, parts: vec![Part { side: i, field, low, high }] }
            }));
        }
    }
    let first = |r: &Reach| r.parts.first().map(|p| (p.side, p.field));
    parts.sort_by(|a, b| a.low.total_cmp(&b.low).then(first(a).cmp(&first(b))));
    let mut out: Vec<Reach> = Vec::new();
    for part in parts {
        match out.last_mut().filter(|r| part.low <= r.high + SAME.max(past)) {
            Some(r) => {
                r.high = r.high.max(part.high);
                r.parts.extend(part.parts);
            }
            None => out.push(part),
        }
    }
    out
}

/// What stands in a part: a post counted on the first wall it stands at; in an inside corner by the
/// job a J-channel on one wall or on each (`TrimFact::InsideCorner`).
fn post(
    house: &House,
    fields: &[Field],
    corner: &Corner,
    reach: &Reach,
    job: &Job,
) -> Vec<TrimPiece> {
    let kind = match (corner.kind, job.trim.inside_corner) {
        (CornerKind::Outside, _) => TrimKind::OutsidePost,
        (_, InsideCorner::Post) => TrimKind::InsidePost,
        _ => TrimKind::CornerChannel,
    };
    let each =
        kind == TrimKind::CornerChannel && job.trim.inside_corner == InsideCorner::TwoChannels;
    let on = parts_laid(corner, reach, (kind, each), job);
    let mut out = Vec::new();
    for part_of in on {
        let (Some(place), Some(side)) = (
            fields.get(part_of.field).and_then(|f| Place::of(house, f)),
            corner.sides.get(part_of.side),
        ) else {
            continue;
        };
        // Beside what hangs short of the soffit.
        if part_of.high - part_of.low <= job.trim_gaps().post_top + LEAST {
            continue;
        }
        // A post that leans with its corner is longer than the corner is high.
        let along = side.lean.hypotenuse(1.0);
        let standing = (part_of.high - job.trim_gaps().post_top - part_of.low) * along;
        let place_at = |y: f64| Point::new(side.at(y), y);
        let low = place_at(part_of.low - tail(standing, kind, job) / along);
        let high = place_at(part_of.high - job.trim_gaps().post_top);
        let mut whole = place.piece(kind, low, high, 0.0, [TrimEnd::Square, TrimEnd::Square]);
        if !each {
            let shown = reach.parts.iter().map(|p| corner.sides[p.side].elevation.as_str());
            whole.shared_with =
                shown.filter(|e| *e != place.elevation.name).min().map(ElevationName::from);
        }
        if kind == TrimKind::CornerChannel {
            out.extend(part(whole, job.trim.j_channel, job.trim.channel_face));
            continue;
        }
        // Boards are closed at their feet; a post is hollow.
        if job.siding().receivers.has_pockets() && over_overhang(&place, low.x, part_of.low) {
            whole.ends[0] = TrimEnd::Capped;
        }
        whole.angle = PostAngle::at(corner);
        let lap = job.trim.post_lap;
        if kind == TrimKind::OutsidePost && job.trim.corner_cover > 0.0 {
            // A cover stands over the post, as long as it.
            let cover = TrimPiece { kind: TrimKind::CornerCover, ..whole.clone() };
            let lengths = parted(cover, job.stock(TrimKind::CornerCover.stock()), lap, SHORTEST);
            out.extend(spliced(lengths, job));
        }
        out.extend(spliced(parted(whole, job.stock(kind.stock()), lap, SHORTEST), job));
    }
    out
}

/// How far a post runs below the starter: as the job says (`TrimFact::PostPastStarter`), or less where
/// that saves a splice, for one piece is better (`TrimFact::PostSplice`); never above the starter's lower
/// edge. `standing` is its length over that edge.
fn tail(standing: f64, kind: TrimKind, job: &Job) -> f64 {
    let rules = &job.trim;
    let stock = job.stock(kind.stock());
    let lap = if kind == TrimKind::CornerChannel { rules.channel_face } else { rules.post_lap };
    // So much do as many lengths reach as the post takes without a tail.
    let lengths = ((standing - lap) / (stock - lap)).ceil().max(1.0);
    let reach = lengths * (stock - lap) + lap;
    // On the grid, so that what is cut is no longer than the lengths it is cut from.
    let spared = ((reach - standing).max(0.0) / GRID).floor() * GRID;
    job.trim_gaps().post_below.min(spared)
}

/// The parts of a corner that get a piece each, in the order of its sides: of a post, one.
fn parts_laid(
    corner: &Corner,
    reach: &Reach,
    (kind, each): (TrimKind, bool),
    job: &Job,
) -> Vec<Part> {
    let mut on: Vec<Part> = reach.parts.clone();
    on.sort_by_key(|p| (p.side, p.field));
    if kind == TrimKind::CornerChannel && job.trim.inside_corner == InsideCorner::OneChannel {
        // The wall that is sided second, the last one in wrap order, bears it.
        on.reverse();
    }
    // Of a wall's own channels each is as high as the siding there; a post, as the whole corner.
    on.dedup_by(|next, p| {
        let same = corner.sides[next.side].elevation == corner.sides[p.side].elevation;
        if same {
            (p.low, p.high) = (p.low.min(next.low), p.high.max(next.high));
        }
        same
    });
    on.truncate(if each { on.len() } else { 1 });
    if let Some(one) = on.first_mut().filter(|_| !each) {
        (one.low, one.high) = (reach.low, reach.high);
    }
    on
}

/// Lengths of a post taller than stock: the upper one's flange is cut back and its face lapped over
/// the lower one, so that water runs over the joint (`TrimFact::PostSplice`).
fn spliced(mut lengths: Vec<TrimPiece>, job: &Job) -> Vec<TrimPiece> {
    let n = lengths.len();
    for (i, t) in lengths.iter_mut().enumerate() {
        if i + 1 < n {
            t.ends[1] = TrimEnd::Square;
        }
        if i > 0 {
            t.ends[0] = TrimEnd::Splice { lap: job.trim.post_lap, cut: job.trim.post_cut_back };
        }
    }
    lengths
}

/// Whether a post's foot hangs over a story that stands back: its wall starts there, another wall
/// of the elevation lies below, and no post goes on down (`TrimFact::PostCap`).
fn over_overhang(place: &Place, x: f64, foot: f64) -> bool {
    let starts = place.wall.edges.iter().any(|e| {
        e.kind == EdgeKind::Base
            && (e.from.y - foot).abs() < 1.0
            && (e.from.x.min(e.to.x) - x).abs().min((e.from.x.max(e.to.x) - x).abs()) < 1.0
    });
    let frame = |w: &DrawnWall| bounds(&w.outline).unwrap_or_default();
    let mine = frame(place.wall);
    let below = place.elevation.walls.iter().filter(|w| w.id != place.wall.id);
    let below: Vec<Rect> = below
        .map(frame)
        .filter(|b| {
            b.y1 <= foot + OVERHANG && b.y1 > foot - OVERHANG && b.x0 < mine.x1 && mine.x0 < b.x1
        })
        .collect();
    starts
        && !below.is_empty()
        && below.iter().all(|b| (b.x0 - x).abs() > 1.0 && (b.x1 - x).abs() > 1.0)
}
