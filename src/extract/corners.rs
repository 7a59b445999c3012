//! Corners: which sides of walls on two elevations are one corner of the house.
//!
//! By tags where drawn. Else by the wrap order: seen from outside, an outside corner on a wall's
//! right is the left side of a wall on the next elevation round, an inside corner the left side of a
//! wall on the one before. Else, where the order is not known, by height and hand.

use crate::geom::boolean::intersection;
use crate::geom::polygon::{Polygon, total_area};
use crate::geom::tol::{LEVEL, SAME, plumb, same};
use crate::model::corner::{Corner, CornerKind, CornerSide, Hand, Pairing};
use crate::model::house::{DrawnEdge, DrawnWall, EdgeKind, House, WallWay};
use crate::model::ids::CornerId;

/// Sides shorter than this are no corner of their own worth a question, inches.
pub(super) const LEAST: f64 = 1.0;
/// A corner turns this often round a house.
const QUARTERS: usize = 4;

/// One corner as one elevation shows it.
struct Seen {
    elevation: usize,
    kind: CornerKind,
    tag: Option<String>,
    side: CornerSide,
    /// Index of its corner, once it has one.
    of: Option<usize>,
}

/// Every corner of the house, in the order of elevations and walls.
pub(super) fn paired(house: &House) -> Vec<Corner> {
    let mut seen = seen(house);
    let mut pairs: Vec<(Vec<usize>, Pairing)> = Vec::new();
    let passes: [(Pairing, Find); 4] = [
        (Pairing::Tag, by_tag),
        (Pairing::Wrap, by_wrap),
        (Pairing::Height, by_height),
        (Pairing::WrapAlone, by_wrap_alone),
    ];
    // The outermost on its elevation first: it is the end that neighbors share.
    let outer = |s: &Seen| if s.side.side == Hand::Right { -s.side.x } else { s.side.x };
    let mut order: Vec<usize> = (0..seen.len()).collect();
    order.sort_by(|a, b| {
        let (a, b) = (&seen[*a], &seen[*b]);
        a.elevation.cmp(&b.elevation).then(outer(a).total_cmp(&outer(b)))
    });
    for (by, find) in passes {
        for i in order.iter().copied() {
            if seen[i].of.is_none()
                && let Some(j) = find(house, &seen, i)
            {
                (seen[i].of, seen[j].of) = (Some(pairs.len()), Some(pairs.len()));
                pairs.push((vec![i.min(j), i.max(j)], by));
            }
        }
    }
    parts_joined(&mut seen, &mut pairs);
    pairs = overlapping_joined(&seen, pairs);
    let open = (0..seen.len()).filter(|i| seen[*i].of.is_none());
    pairs.extend(open.map(|i| (vec![i], Pairing::Open)));
    pairs.iter_mut().for_each(|p| p.0.sort_unstable());
    pairs.sort_by_key(|p| p.0[0]);
    let mut out: Vec<Corner> = Vec::new();
    for (of, by) in pairs {
        let first = &seen[of[0]];
        let sides: Vec<CornerSide> = of.iter().map(|i| seen[*i].side.clone()).collect();
        let id = name(&out, &first.side);
        let low = sides.iter().map(|s| s.low).fold(f64::INFINITY, f64::min);
        let high = sides.iter().map(|s| s.high).fold(f64::NEG_INFINITY, f64::max);
        let tag = first.tag.clone();
        out.push(Corner { id, kind: first.kind, tag, by, angle: None, low, high, sides });
    }
    out
}

/// A lower roof or a band parts a corner on one elevation and not on the other: the other parts belong to
/// it. Each may be what the next one shares some of its height with, whichever of them comes first.
fn parts_joined(seen: &mut [Seen], pairs: &mut [(Vec<usize>, Pairing)]) {
    let mut before = usize::MAX;
    let open = |seen: &[Seen]| seen.iter().filter(|s| s.of.is_none()).count();
    while open(seen) < before {
        before = open(seen);
        for i in 0..seen.len() {
            if seen[i].of.is_none()
                && let Some(c) = part_of(seen, pairs, i)
            {
                seen[i].of = Some(c);
                pairs[c].0.push(i);
            }
        }
    }
}

/// Pairs in one line that overlap in height are one corner: stone parts it on one elevation where a
/// roof parts it higher up on the other, and one post stands there.
fn overlapping_joined(
    seen: &[Seen],
    pairs: Vec<(Vec<usize>, Pairing)>,
) -> Vec<(Vec<usize>, Pairing)> {
    let reach = |of: &[usize]| {
        let heights = of.iter().map(|i| (seen[*i].side.low, seen[*i].side.high));
        heights.fold((f64::INFINITY, f64::NEG_INFINITY), |r, h| (r.0.min(h.0), r.1.max(h.1)))
    };
    let one = |p: &[usize], q: &[usize]| {
        let (a, b) = (reach(p), reach(q));
        a.0 < b.1 - SAME
            && b.0 < a.1 - SAME
            && p.iter().all(|i| q.iter().any(|j| in_line(&seen[*i], &seen[*j])))
    };
    let mut out: Vec<(Vec<usize>, Pairing)> = Vec::new();
    for (mut of, mut by) in pairs {
        // The first of them tells how it was paired.
        while let Some(i) = out.iter().position(|(other, _)| one(other, &of)) {
            let (mut all, first) = out.remove(i);
            all.append(&mut of);
            (of, by) = (all, first);
        }
        out.push((of, by));
    }
    out
}

/// Whether two sides stand over one another on one hand of an elevation.
fn in_line(a: &Seen, b: &Seen) -> bool {
    a.elevation == b.elevation
        && a.kind == b.kind
        && a.side.side == b.side.side
        && (a.side.x - b.side.x).abs() <= LEVEL
        && a.tag == b.tag
}

/// A name not taken yet.
fn name(taken: &[Corner], side: &CornerSide) -> CornerId {
    let base = format!("{}/{}", side.wall, side.side.id());
    let free = |id: &String| taken.iter().all(|c| c.id != id.as_str());
    let more = (2..).map(|n| format!("{base}-{n}"));
    std::iter::once(base.clone()).chain(more).find(free).unwrap_or(base).into()
}

/// Corner sides of every wall, those that follow one another in one line joined; by elevation, wall,
/// place and height.
fn seen(house: &House) -> Vec<Seen> {
    let mut out: Vec<Seen> = Vec::new();
    for (elevation, e) in house.elevations.iter().enumerate() {
        for w in &e.walls {
            let mut mine: Vec<Seen> = Vec::new();
            // A plane read from patches of siding has its bands, roofs and openings from the gaps: what
            // stands over one another at its end is one corner.
            let of_patches = w.way == WallWay::Hatch;
            let mut upward: Vec<&DrawnEdge> = w.edges.iter().collect();
            upward.sort_by(|a, b| a.from.y.min(a.to.y).total_cmp(&b.from.y.min(b.to.y)));
            for edge in upward {
                let kind = match edge.kind {
                    EdgeKind::OutsideCorner => CornerKind::Outside,
                    EdgeKind::InsideCorner => CornerKind::Inside,
                    _ => continue,
                };
                let (low, high) = (edge.from.y.min(edge.to.y), edge.from.y.max(edge.to.y));
                let (x, y) = ((edge.from.x + edge.to.x) / 2.0, (low + high) / 2.0);
                // Counter-clockwise: the right side of a wall runs up.
                let side = if edge.to.y > edge.from.y { Hand::Right } else { Hand::Left };
                let follows = mine.iter_mut().find(|s| {
                    s.kind == kind
                        && s.side.side == side
                        && (s.side.at(y) - x).abs() <= LEVEL
                        && s.tag == edge.tag
                        && ((low <= s.side.high + SAME && high >= s.side.low - SAME)
                            || (of_patches && !goes_on(w, &s.side, low)))
                });
                match follows {
                    Some(s) => {
                        s.side.reach(s.side.low.min(low), s.side.high.max(high));
                    }
                    None => {
                        let (wall, name) = (w.id.clone(), e.name.clone());
                        let lean = lean(edge);
                        let side = CornerSide { elevation: name, wall, side, x, lean, low, high };
                        mine.push(Seen { elevation, kind, tag: edge.tag.clone(), side, of: None });
                    }
                }
            }
            mine.sort_by(|a, b| {
                let (a, b) = (&a.side, &b.side);
                a.x.total_cmp(&b.x).then(a.low.total_cmp(&b.low)).then(a.side.cmp(&b.side))
            });
            out.extend(mine);
        }
    }
    out
}

/// How far a side leans to the right for an inch up, where by more than reads as plumb.
fn lean(e: &DrawnEdge) -> f64 {
    let v = e.to - e.from;
    if plumb(v.x) { 0.0 } else { v.x / v.y }
}

/// Whether siding of the wall goes on past the line of a side somewhere between its top and the height
/// where the next part in that line begins: no post stands in the midst of siding.
fn goes_on(w: &DrawnWall, side: &CornerSide, next: f64) -> bool {
    if next <= side.high + LEAST {
        return false;
    }
    let (near, far) = (LEAST / 4.0, LEAST);
    let (x0, x1) = match side.side {
        Hand::Left => (side.x - far, side.x - near),
        Hand::Right => (side.x + near, side.x + far),
    };
    let past = Polygon::rect(x0, side.high, x1, next);
    let sided = total_area(&intersection(&w.faces, &[past]));
    sided > LEAST * (far - near)
}

type Find = fn(&House, &[Seen], usize) -> Option<usize>;

/// What may be the other side of `i` at all.
fn free(seen: &[Seen], i: usize) -> impl Iterator<Item = usize> + use<'_> {
    let me = &seen[i];
    (0..seen.len()).filter(move |j| {
        let o = &seen[*j];
        *j != i && o.of.is_none() && o.elevation != me.elevation && o.kind == me.kind
    })
}

/// How much of their heights two sides share.
fn shared(a: &Seen, b: &Seen) -> f64 {
    a.side.high.min(b.side.high) - a.side.low.max(b.side.low)
}

/// The same tag; a lower roof may part a corner, and parts at the same height belong together.
fn by_tag(_: &House, seen: &[Seen], i: usize) -> Option<usize> {
    let tag = seen[i].tag.as_ref()?;
    let with = |j: usize| shared(&seen[i], &seen[j]);
    free(seen, i)
        .filter(|j| seen[*j].tag.as_ref() == Some(tag) && with(*j) > 0.0)
        .max_by(|a, b| with(*a).total_cmp(&with(*b)).then(b.cmp(a)))
}

/// Untagged, of the other hand, sharing some height.
fn other_hand<'a>(seen: &'a [Seen], i: usize) -> impl Iterator<Item = usize> + use<'a> {
    let me = &seen[i];
    let fits = move |j: &usize| {
        let o = &seen[*j];
        o.tag.is_none() && o.side.side != me.side.side && shared(o, me) > LEAST.min(SAME)
    };
    free(seen, i).filter(move |j| me.tag.is_none() && fits(j))
}

/// The elevation on which the other wall of a corner is seen.
fn round(house: &House, me: &Seen) -> Option<usize> {
    let facing = *house.facings.get(me.elevation)?;
    let on = (me.side.side == Hand::Right) == (me.kind == CornerKind::Outside);
    let turn = if on { 1 } else { QUARTERS - 1 };
    house.facings.iter().position(|f| *f == (facing + turn) % QUARTERS)
}

/// How far in from the end that meets `me`'s elevation a side stands: the outermost comes first.
fn depth(me: &Seen, o: &Seen) -> f64 {
    if me.side.side == Hand::Right { o.side.x } else { -o.side.x }
}

fn by_wrap(house: &House, seen: &[Seen], i: usize) -> Option<usize> {
    let (me, next) = (&seen[i], round(house, &seen[i])?);
    other_hand(seen, i)
        .filter(|j| seen[*j].elevation == next && same(seen[*j].side.high, me.side.high))
        .min_by(|a, b| depth(me, &seen[*a]).total_cmp(&depth(me, &seen[*b])))
}

/// Only where names do not say how elevations follow one another.
fn by_height(house: &House, seen: &[Seen], i: usize) -> Option<usize> {
    let me = &seen[i];
    if !house.facings.is_empty() {
        return None;
    }
    other_hand(seen, i).find(|j| same(seen[*j].side.high, me.side.high))
}

/// The outermost corners of neighbors, though their heights disagree: what is left of an elevation
/// on either hand must meet.
fn by_wrap_alone(house: &House, seen: &[Seen], i: usize) -> Option<usize> {
    let (me, next) = (&seen[i], round(house, &seen[i])?);
    let outermost = |s: &Seen, all: &[Seen]| {
        all.iter().filter(|o| o.elevation == s.elevation).all(|o| {
            let sign = if s.side.side == Hand::Right { 1.0 } else { -1.0 };
            (o.side.x - s.side.x) * sign <= LEVEL
        })
    };
    if me.kind != CornerKind::Outside || !outermost(me, seen) {
        return None;
    }
    let lower = |j: &usize| {
        let (a, b) = (&me.side, &seen[*j].side);
        shared(me, &seen[*j]) > 0.5 * (a.high - a.low).min(b.high - b.low)
    };
    other_hand(seen, i)
        .filter(|j| seen[*j].elevation == next && outermost(&seen[*j], seen) && lower(j))
        .max_by(|a, b| shared(me, &seen[*a]).total_cmp(&shared(me, &seen[*b])).then(b.cmp(a)))
}

/// The corner that a further part of one of its sides belongs to: in one line with it, on the same
/// hand, some of its height shared with the side round the corner, which has no other wall to meet
/// there.
fn part_of(seen: &[Seen], pairs: &[(Vec<usize>, Pairing)], i: usize) -> Option<usize> {
    let me = &seen[i];
    pairs.iter().position(|(of, _)| {
        let in_line = of.iter().any(|k| in_line(&seen[*k], me));
        let round = |k: &&usize| seen[**k].elevation != me.elevation;
        in_line && of.iter().filter(round).any(|k| shared(&seen[*k], me) > SAME)
    })
}
