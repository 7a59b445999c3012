//! Corner posts: one at each part of a corner that siding reaches, counted once, hung short of the
//! soffit and run below the start (FACTS SD-54, SD-97), spliced by the rule (SD-98).

use std::collections::{BTreeMap, BTreeSet};

use super::corners::{kind, lies};
use super::{NEAR, Rule};
use crate::geom::tol::SAME;
use crate::job::InsideCorner;
use crate::layout::Layout;
use crate::layout::by_wall::ByWall;
use crate::layout::verified::RuleCheck;
use crate::model::corner::{Corner, CornerKind};
use crate::model::trim::{TrimEnd, TrimKind, TrimPiece};

/// Sides shorter than this, and what hangs short of the soffit, take no post, inches.
const LEAST: f64 = 1.0;

/// What stands in corners.
fn upright(kind: TrimKind) -> bool {
    matches!(kind, TrimKind::OutsidePost | TrimKind::InsidePost | TrimKind::CornerChannel)
}

/// How far lengths lap.
fn lap(layout: &Layout, kind: TrimKind) -> f64 {
    let r = &layout.job.trim;
    if kind == TrimKind::CornerChannel { r.channel_face } else { r.post_lap }
}

/// Lengths of a post that lap into one.
struct Post<'a> {
    pieces: Vec<&'a TrimPiece>,
    low: f64,
    high: f64,
}

pub(super) fn check(layout: &Layout, at: &ByWall) -> RuleCheck {
    let mut rule = Rule::default();
    let posts = whole(&mut rule, layout);
    let mut used = vec![0usize; posts.len()];
    let mut standing: BTreeMap<&str, Vec<usize>> = BTreeMap::new();
    for (i, p) in posts.iter().enumerate() {
        let wall = p.pieces.first().map_or("", |t| t.wall.as_str());
        standing.entry(wall).or_default().push(i);
    }
    for c in &layout.corners {
        // Posts on the corner's own walls, as the layout has them.
        let walls: BTreeSet<&str> = c.sides.iter().map(|k| k.wall.as_str()).collect();
        let mut near: Vec<usize> =
            walls.iter().filter_map(|w| standing.get(w)).flatten().copied().collect();
        near.sort_unstable();
        let near: Vec<(usize, &Post)> = near.into_iter().map(|i| (i, &posts[i])).collect();
        corner(&mut rule, (layout, at), c, &near, &mut used);
    }
    for (p, n) in posts.iter().zip(&used) {
        let Some(t) = p.pieces.first() else { continue };
        rule.case(*n == 1, || format!("{}: stands at {n} corners", t.mark));
    }
    rule.done("every corner has its post, as high as the corner")
}

fn whole<'a>(rule: &mut Rule, layout: &'a Layout) -> Vec<Post<'a>> {
    let r = &layout.job.trim;
    let mut out: Vec<Post> = Vec::new();
    let posts = layout.trims.iter();
    for t in posts.filter(|t| upright(t.kind)) {
        let (low, high) = (t.from[1].min(t.to[1]), t.from[1].max(t.to[1]));
        let lapped = out.last_mut().filter(|p| {
            p.pieces.last().is_some_and(|q| {
                q.kind == t.kind
                    && q.wall == t.wall
                    && (q.from[0] - t.from[0]).abs() < NEAR
                    && (low + lap(layout, t.kind) - p.high).abs() < NEAR
            })
        });
        match lapped {
            Some(p) => {
                p.pieces.push(t);
                p.high = high;
            }
            None => out.push(Post { pieces: vec![t], low, high }),
        }
    }
    for p in &out {
        for (i, t) in p.pieces.iter().enumerate() {
            // An upper length's flange is cut back and its face laps over the lower one.
            if t.kind == TrimKind::CornerChannel {
                continue;
            }
            let splice = |e: &TrimEnd| {
                matches!(e, TrimEnd::Splice { lap, cut }
                if (*lap - r.post_lap).abs() < SAME && (*cut - r.post_cut_back).abs() < SAME)
            };
            rule.case(splice(&t.ends[0]) == (i > 0), || {
                format!("{}: its splice is not told", t.mark)
            });
        }
    }
    out
}

fn corner(
    rule: &mut Rule,
    (layout, at): (&Layout, &ByWall),
    c: &Corner,
    posts: &[(usize, &Post)],
    used: &mut [usize],
) {
    let r = &layout.job.trim;
    let kind_of = match (c.kind, r.inside_corner) {
        (CornerKind::Outside, _) => TrimKind::OutsidePost,
        (_, InsideCorner::Post) => TrimKind::InsidePost,
        _ => TrimKind::CornerChannel,
    };
    // With two channels each elevation has its own.
    let each = kind_of == TrimKind::CornerChannel && r.inside_corner == InsideCorner::TwoChannels;
    // Upright sides of fields on this corner: elevation, low, high.
    let mut sides: Vec<(&str, f64, f64)> = Vec::new();
    let walls: BTreeSet<&str> = c.sides.iter().map(|k| k.wall.as_str()).collect();
    for (e, w) in walls.iter().flat_map(|w| at.walls(w)) {
        for s in w.edges.iter().filter(|s| s.kind == kind(c)) {
            if let Some(k) = c.sides.iter().find(|k| lies(layout, w, s, k)) {
                let (low, high) = (s.from[1].min(s.to[1]), s.from[1].max(s.to[1]));
                sides.push((&e.name, low.max(k.low), high.min(k.high)));
            }
        }
    }
    let here = |p: &&(usize, &Post)| {
        p.1.pieces.first().is_some_and(|t| {
            let at = |k: &crate::model::corner::CornerSide| {
                k.wall == t.wall && (k.x - t.from[0]).abs() < NEAR
            };
            t.kind == kind_of && c.sides.iter().any(at) && p.1.low < c.high && p.1.high > c.low
        })
    };
    let mine: Vec<&(usize, &Post)> = posts.iter().filter(here).collect();
    for (elevation, low, high) in &sides {
        let reached = mine.iter().any(|(_, p)| {
            let own = p.pieces.first().is_some_and(|t| t.elevation == *elevation);
            (own || !each)
                && p.low <= low - r.post_below + NEAR
                && p.high >= high - r.post_top_gap - NEAR
        });
        rule.case(reached || high - low <= r.post_top_gap + LEAST, || {
            format!("{}: no {} from {low:.2} to {high:.2} on {elevation}", c.id, kind_of.words())
        });
    }
    for (n, (i, p)) in mine.iter().enumerate() {
        used[*i] += 1;
        let Some(t) = p.pieces.first() else { continue };
        // What the post stands for.
        let along: Vec<&(&str, f64, f64)> = sides
            .iter()
            .filter(|s| !each || s.0 == t.elevation)
            .filter(|s| s.1 < p.high + r.post_top_gap && s.2 > p.low + r.post_below)
            .collect();
        let low = along.iter().map(|s| s.1).fold(f64::INFINITY, f64::min);
        let high = along.iter().map(|s| s.2).fold(f64::NEG_INFINITY, f64::max);
        let hung = (p.low - (low - r.post_below)).abs() < NEAR
            && (p.high - (high - r.post_top_gap)).abs() < NEAR;
        rule.case(hung, || {
            format!(
                "{}: from {:.2} to {:.2}, its walls from {low:.2} to {high:.2}",
                t.mark, p.low, p.high
            )
        });
        let other = |s: &&&(&str, f64, f64)| s.0 != t.elevation;
        let told = match &t.shared_with {
            None => each || !along.iter().any(|s| other(&s)),
            Some(e) => along.iter().filter(other).any(|s| s.0 == e),
        };
        rule.case(told, || format!("{}: shared with {:?}, not so", t.mark, t.shared_with));
        let one = |q: &Post| q.pieces.first().is_some_and(|q| !each || q.elevation == t.elevation);
        let before = mine[..n].iter().map(|(_, q)| *q).filter(|q| one(q));
        rule.case(parted(before, p, r.post_below), || {
            format!("{}: stands where another post of {} does", t.mark, c.id)
        });
    }
}

/// Posts of parts one over the other: the upper one runs below its start, beside the lower one's top.
fn parted<'a>(mut others: impl Iterator<Item = &'a Post<'a>>, p: &Post, below: f64) -> bool {
    others.all(|q| q.high <= p.low + below + NEAR || p.high <= q.low + below + NEAR)
}
