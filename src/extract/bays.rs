//! Corners that two walls of one elevation share, since one of them stands at an angle: a bay, a canted
//! end. One post stands there, and a usual one of 90 degrees does not fit.
//!
//! Neighbors meet where the right side of one is drawn over the left side of the other and something says that
//! they do: the job gives one of them its true width (what is drawn short of it tells the angle), both bear one
//! tag, or the job gives nothing between them (`[[return]]` of width 0 from one to the other).

use crate::geom::polygon::bounds;
use crate::geom::tol::{LEVEL, SAME};
use crate::job::Job;
use crate::model::corner::{Corner, CornerKind, Hand, Pairing};
use crate::model::house::{EdgeKind, House};
use crate::real::Real;

/// Corners of a chain from which it is a bay: two walls at an angle and three between and beside them.
const BAY: usize = 4;

/// Two corners that are one, by their places: the right side of a wall, then the left side of the next.
type Pair = (usize, usize);

/// Joins them, and names their sides alike.
pub(super) fn join(house: &mut House, job: &Job) {
    let pairs = pairs(house, job);
    for (left, right) in &pairs {
        let (a, b) = (&house.corners[*left], &house.corners[*right]);
        let inside = [a, b].iter().any(|c| c.kind == CornerKind::Inside);
        let angle = angle(house, job, a, b);
        let sides = house.corners[*right].sides.clone();
        let (low, high) = (house.corners[*right].low, house.corners[*right].high);
        let tag = house.corners[*right].tag.clone();
        let into = &mut house.corners[*left];
        into.kind = if inside { CornerKind::Inside } else { into.kind };
        (into.by, into.angle) = (Pairing::Neighbor, angle);
        into.tag = into.tag.take().or(tag);
        into.sides.extend(sides);
        (into.low, into.high) = (into.low.min(low), into.high.max(high));
    }
    projecting(house, job, &pairs);
    for (left, right) in &pairs {
        house.corners[*right].sides.clear();
        named(house, *left);
    }
    house.corners.retain(|c| !c.sides.is_empty());
}

fn is_angled(job: &Job, wall: &str) -> bool {
    job.angled.iter().any(|a| a.wall == wall)
}

/// Whether the job says that no wall lies between two corners.
fn nothing_between(job: &Job, corners: [&Corner; 2]) -> bool {
    job.returns.iter().filter(|r| r.width <= 0.0).any(|r| {
        let Some(to) = &r.to else { return false };
        let [one, other] = corners;
        let named = |c: &Corner, name: &str| c.id == name || c.tag.as_deref() == Some(name);
        named(one, &r.corner) && named(other, to) || named(other, &r.corner) && named(one, to)
    })
}

/// Open corners of one elevation that stand in one place, by elevation and from left to right.
fn pairs(house: &House, job: &Job) -> Vec<Pair> {
    let open = |i: &usize| {
        let c = &house.corners[*i];
        c.by == Pairing::Open && c.sides.len() == 1
    };
    let all: Vec<usize> = (0..house.corners.len()).filter(open).collect();
    let mut out: Vec<Pair> = Vec::new();
    for i in &all {
        let a = &house.corners[*i].sides[0];
        if a.side != Hand::Right {
            continue;
        }
        let meets = |j: &&usize| {
            let (c, b) = (&house.corners[*i], &house.corners[**j].sides[0]);
            let tags = [&c.tag, &house.corners[**j].tag];
            b.side == Hand::Left
                && b.elevation == a.elevation
                && b.wall != a.wall
                && (b.x - a.x).abs() <= LEVEL
                && b.low < a.high - SAME
                && b.high > a.low + SAME
                && (tags[0] == tags[1] || tags.iter().any(|t| t.is_none()))
                && (is_angled(job, &a.wall)
                    || is_angled(job, &b.wall)
                    || tags[0].is_some() && tags[0] == tags[1]
                    || nothing_between(job, [c, &house.corners[**j]]))
        };
        let taken = |j: &usize| out.iter().any(|p| p.1 == *j);
        if let Some(j) = all.iter().filter(meets).find(|j| !taken(j)) {
            out.push((*i, *j));
        }
    }
    let place = |p: &Pair| &house.corners[p.0].sides[0];
    out.sort_by(|p, q| {
        let (a, b) = (place(p), place(q));
        a.elevation.cmp(&b.elevation).then(a.x.total_cmp(&b.x))
    });
    out
}

/// Degrees between the faces of two walls, where one of them stands at an angle to the other: its drawn
/// width is the true one by the cosine of its turn. To the degree, as plans give it.
fn angle(house: &House, job: &Job, a: &Corner, b: &Corner) -> Option<f64> {
    let walls = [&a.sides.first()?.wall, &b.sides.first()?.wall];
    let mut turned = walls.iter().filter_map(|w| job.angled.iter().find(|g| g.wall == w.as_str()));
    let (given, none) = (turned.next()?, turned.next());
    if none.is_some() {
        return None;
    }
    let wall = house.elevations.iter().flat_map(|e| &e.walls).find(|w| w.id == given.wall)?;
    let drawn = bounds(&wall.outline)?.width();
    let share = drawn / given.width;
    (share > 0.0 && share <= 1.0).then(|| 180.0 - share.arc_cosine().to_degrees().round())
}

/// A bay that no line marks an inside corner of stands out of its wall: its first and its last corner are
/// inside ones. Common practice, no source.
fn projecting(house: &mut House, job: &Job, pairs: &[Pair]) {
    let mut chain: Vec<Pair> = Vec::new();
    let mut chains: Vec<Vec<Pair>> = Vec::new();
    for p in pairs {
        let goes_on = chain
            .last()
            .is_some_and(|q| house.corners[q.1].sides[0].wall == house.corners[p.0].sides[0].wall);
        if !goes_on && !chain.is_empty() {
            chains.push(std::mem::take(&mut chain));
        }
        chain.push(*p);
    }
    chains.push(chain);
    for chain in chains {
        let (Some(first), Some(last)) = (chain.first(), chain.last()) else { continue };
        let flat = |i: usize| !is_angled(job, &house.corners[i].sides[0].wall);
        let marked = chain.iter().any(|p| house.corners[p.0].kind == CornerKind::Inside);
        if chain.len() >= BAY && !marked && flat(first.0) && flat(last.1) {
            house.corners[first.0].kind = CornerKind::Inside;
            house.corners[last.0].kind = CornerKind::Inside;
        }
    }
}

/// The sides of walls at a corner are named as it turns.
fn named(house: &mut House, corner: usize) {
    let c = house.corners[corner].clone();
    let kind = match c.kind {
        CornerKind::Outside => EdgeKind::OutsideCorner,
        CornerKind::Inside => EdgeKind::InsideCorner,
    };
    for s in &c.sides {
        let walls = house.elevations.iter_mut().flat_map(|e| &mut e.walls);
        for e in walls.filter(|w| w.id == s.wall).flat_map(|w| &mut w.edges) {
            let corner = matches!(e.kind, EdgeKind::OutsideCorner | EdgeKind::InsideCorner);
            let hand = if e.to.y > e.from.y { Hand::Right } else { Hand::Left };
            let (x, y) = ((e.from.x + e.to.x) / 2.0, (e.from.y + e.to.y) / 2.0);
            // Over the roof of a lower neighbor the wall has another corner at the same place.
            let along = s.low < y && y < s.high;
            if corner && along && hand == s.side && (x - s.x).abs() <= LEVEL {
                (e.kind, e.tag) = (kind, c.tag.clone());
            }
        }
    }
}
