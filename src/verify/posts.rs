//! Corner posts: one at each part of a corner that siding reaches, counted once, hung short of the
//! soffit and run below the start (`TrimFact::PostTopGap`, `TrimFact::PostPastStarter`), spliced by
//! the rule (`TrimFact::PostSplice`).

use std::collections::{BTreeMap, BTreeSet};

use super::corner_sides::{kind, lies, place_at};
use super::named;
use super::rule::{Cases, Found, count, found};
use super::tolerance::NEAR;
use crate::geom::tol::SAME;
use crate::job::InsideCorner;
use crate::layout::breach::trim::CornerBreach;
use crate::layout::by_wall::ByWall;
use crate::layout::laid::LaidHouse;
use crate::layout::rule::Rule;
use crate::layout::verified::RuleCheck;
use crate::layout::wall::LaidWall;
use crate::model::corner::{Corner, CornerKind, CornerSide, Pairing};
use crate::model::post_angle::PostAngle;
use crate::model::trim::{TrimEnd, TrimKind, TrimPiece};

/// Sides shorter than this, and what hangs short of the soffit, take no post, inches.
const LEAST: f64 = 1.0;

/// What stands in corners.
fn upright(kind: TrimKind) -> bool {
    matches!(kind, TrimKind::OutsidePost | TrimKind::InsidePost | TrimKind::CornerChannel)
}

/// How far lengths lap.
fn lap(layout: &LaidHouse, kind: TrimKind) -> f64 {
    let r = &layout.job.trim;
    if kind == TrimKind::CornerChannel { r.channel_face } else { r.post_lap }
}

/// Lengths of a post that lap into one.
struct Post<'a> {
    pieces: Vec<&'a TrimPiece>,
    low: f64,
    high: f64,
}

pub(super) fn check(layout: &LaidHouse, at: &ByWall) -> RuleCheck {
    let mut rule = Cases::new(Rule::CornerPosts);
    let posts = whole(&mut rule, layout, at);
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
        rule.case(*n == 1, || {
            of_post(t, CornerBreach::PostCorners).measured(count(*n)).exactly(count(1))
        });
    }
    rule.done()
}

/// A violation of a post.
fn of_post(t: &TrimPiece, breach: CornerBreach) -> Found {
    found(named::trim(&t.mark), breach).at(named::at_trim(t))
}

fn whole<'a>(rule: &mut Cases, layout: &'a LaidHouse, at: &ByWall) -> Vec<Post<'a>> {
    let mut out: Vec<Post> = Vec::new();
    let posts = layout.trims.iter();
    for t in posts.filter(|t| upright(t.kind)) {
        let (low, high) = (t.from[1].min(t.to[1]), t.from[1].max(t.to[1]));
        let lapped = out.last_mut().filter(|p| {
            p.pieces.last().is_some_and(|q| {
                q.kind == t.kind
                    && q.wall == t.wall
                    && on_line(q, t)
                    && (low + lap(layout, t.kind) - p.high).abs() < NEAR
                    && (is_splice(layout, &t.ends[0]) || !starts(layout, at, t, low))
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
            let splice = is_splice(layout, &t.ends[0]);
            rule.case(splice == (i > 0), || of_post(t, CornerBreach::PostSplice));
        }
    }
    out
}

/// Whether a length stands on the line of another.
fn on_line(q: &TrimPiece, t: &TrimPiece) -> bool {
    let rise = q.to[1] - q.from[1];
    let lean = if rise.abs() > NEAR { (q.to[0] - q.from[0]) / rise } else { 0.0 };
    (q.from[0] + lean * (t.from[1] - q.from[1]) - t.from[0]).abs() < NEAR
}

/// Whether both ends of a length stand on a corner's side: where that is drawn at their heights, or, where the corner
/// is told to be plumb, on its line, which runs between the drawn places as the chords of a round wall bulge.
fn stands_on(at: &ByWall, k: &CornerSide, t: &TrimPiece) -> bool {
    let ends = [t.from, t.to];
    let drawn = |w: &LaidWall| ends.iter().all(|p| (place_at(w, k, p[1]) - p[0]).abs() < NEAR);
    let plumb = |w: &LaidWall| {
        let places = [k.low, (k.low + k.high) / 2.0, k.high].map(|y| place_at(w, k, y));
        let [left, right] = [f64::min, f64::max].map(|f| places.into_iter().reduce(f));
        k.lean == 0.0
            && ends.iter().all(|p| (p[0] - k.x).abs() < NEAR)
            && left.is_some_and(|x| x - NEAR < k.x)
            && right.is_some_and(|x| k.x < x + NEAR)
    };
    k.wall == t.wall && at.walls(&k.wall).iter().any(|(_, w)| drawn(w) || plumb(w))
}

fn is_splice(layout: &LaidHouse, e: &TrimEnd) -> bool {
    let r = &layout.job.trim;
    matches!(e, TrimEnd::Splice { lap, cut }
    if (*lap - r.post_lap).abs() < SAME && (*cut - r.post_cut_back).abs() < SAME)
}

/// Whether siding starts over the foot of a length: then it may be a post of its own, though it stands
/// beside the top of another by a lap.
fn starts(layout: &LaidHouse, at: &ByWall, t: &TrimPiece, low: f64) -> bool {
    let on = |k: &CornerSide| stands_on(at, k, t);
    let corners = layout.corners.iter().filter(|c| c.sides.iter().any(on));
    corners
        .flat_map(|c| sides(layout, at, c))
        .any(|s| (s.low - layout.job.trim_gaps().post_below - low).abs() < NEAR)
}

/// An upright side of a field on a corner.
struct Side<'a> {
    elevation: &'a str,
    x: f64,
    low: f64,
    high: f64,
}

/// What stands in a corner and what it stands for.
struct Standing<'a> {
    corner: &'a Corner,
    trim: TrimKind,
    /// Whether each elevation has its own: of two channels.
    each: bool,
    sides: Vec<Side<'a>>,
    posts: Vec<(usize, &'a Post<'a>)>,
}

fn corner(
    rule: &mut Cases,
    (layout, at): (&LaidHouse, &ByWall),
    c: &Corner,
    posts: &[(usize, &Post)],
    used: &mut [usize],
) {
    let gaps = layout.job.trim_gaps();
    let inside = layout.job.trim.inside_corner;
    let trim = match (c.kind, inside) {
        (CornerKind::Outside, _) => TrimKind::OutsidePost,
        (_, InsideCorner::Post) => TrimKind::InsidePost,
        _ => TrimKind::CornerChannel,
    };
    let each = trim == TrimKind::CornerChannel && inside == InsideCorner::TwoChannels;
    let here = |p: &&(usize, &Post)| {
        p.1.pieces.first().is_some_and(|t| {
            let on = |k: &CornerSide| stands_on(at, k, t);
            // Where its siding starts and ends: its foot hangs below, beside another corner's top.
            let (low, high) = (p.1.low + gaps.post_below, p.1.high + gaps.post_top);
            t.kind == trim && c.sides.iter().any(on) && low < c.high - NEAR && high > c.low + NEAR
        })
    };
    let posts: Vec<(usize, &Post)> = posts.iter().filter(here).copied().collect();
    let standing = Standing { corner: c, trim, each, sides: sides(layout, at, c), posts };
    reached(rule, layout, &standing);
    for (n, (i, _)) in standing.posts.iter().enumerate() {
        used[*i] += 1;
        post(rule, layout, &standing, n);
    }
}

/// The upright sides of fields on a corner.
fn sides<'a>(layout: &LaidHouse, at: &ByWall<'a>, c: &Corner) -> Vec<Side<'a>> {
    let mut out = Vec::new();
    let walls: BTreeSet<&str> = c.sides.iter().map(|k| k.wall.as_str()).collect();
    for (e, w) in walls.iter().flat_map(|w| at.walls(w)) {
        for s in w.edges.iter().filter(|s| s.kind == kind(c)) {
            if let Some(k) = c.sides.iter().find(|k| lies(layout, w, s, (c, k))) {
                let (low, high) = (s.from[1].min(s.to[1]), s.from[1].max(s.to[1]));
                let (low, high) = (low.max(k.low), high.min(k.high));
                out.push(Side { elevation: &e.name, x: k.x, low, high });
            }
        }
    }
    out
}

/// Every side of a corner is reached by a post from end to end.
fn reached(rule: &mut Cases, layout: &LaidHouse, s: &Standing) {
    let gaps = layout.job.trim_gaps();
    for side in &s.sides {
        let reached = s.posts.iter().any(|(_, p)| {
            let own = p.pieces.first().is_some_and(|t| t.elevation == side.elevation);
            (own || !s.each)
                && p.low <= side.low + NEAR
                && p.high >= side.high - gaps.post_top - NEAR
        });
        rule.case(reached || side.high - side.low <= gaps.post_top + LEAST, || {
            let (trim, from, to) = (s.trim, side.low, side.high);
            let at = named::place(side.elevation, [side.x, (from + to) / 2.0]);
            let breach = CornerBreach::PostMissing { trim, from, to };
            found(named::corner(&s.corner.id), breach).at(at)
        });
    }
}

/// A post hangs short of its sides' top and runs below their start, is shared with whom it says, and
/// stands alone.
fn post(rule: &mut Cases, layout: &LaidHouse, s: &Standing, n: usize) {
    let gaps = layout.job.trim_gaps();
    let p = s.posts[n].1;
    let Some(t) = p.pieces.first() else { return };
    let subject = || named::corner(&s.corner.id);
    // What the post stands for.
    let along: Vec<&Side> = s
        .sides
        .iter()
        .filter(|k| !s.each || t.elevation == k.elevation)
        .filter(|k| k.low < p.high + gaps.post_top && k.high > p.low + gaps.post_below)
        .collect();
    let low = along.iter().map(|k| k.low).fold(f64::INFINITY, f64::min);
    let high = along.iter().map(|k| k.high).fold(f64::NEG_INFINITY, f64::max);
    let hung =
        tail_stands(layout, p, low - p.low) && (p.high - (high - gaps.post_top)).abs() < NEAR;
    rule.case(hung, || {
        let walls = named::span(low, high);
        of_post(t, CornerBreach::PostHeight { said: [p.low, p.high], walls }).with(subject())
    });
    // One post in a corner that is not square is made for its angle; corner channels bend.
    let bends = s.trim == TrimKind::CornerChannel;
    let turned = s.corner.by == Pairing::Neighbor || s.corner.angle.is_some();
    let fits = match t.angle {
        Some(PostAngle::Degrees(d)) => {
            turned && s.corner.angle.is_some_and(|a| (a - f64::from(d)).abs() <= 0.5)
        }
        Some(PostAngle::Unknown) => turned && s.corner.angle.is_none(),
        None => !turned || bends,
    };
    rule.case(fits && p.pieces.iter().all(|q| q.angle == t.angle), || {
        of_post(t, CornerBreach::PostAngle).with(subject())
    });
    let other = |k: &&&Side| t.elevation != k.elevation;
    let agrees = match &t.shared_with {
        None => s.each || !along.iter().any(|k| other(&k)),
        Some(e) => along.iter().filter(other).any(|k| k.elevation == e.as_str()),
    };
    rule.case(agrees, || {
        let shared_with = t.shared_with.as_ref().map(|e| e.as_str().into());
        of_post(t, CornerBreach::PostShared { shared_with }).with(subject())
    });
    let one = |q: &Post| q.pieces.first().is_some_and(|q| !s.each || q.elevation == t.elevation);
    let mut before = s.posts[..n].iter().map(|(_, q)| *q).filter(|q| one(q));
    let clash = before.find(|q| !parted(q, p, gaps.post_below));
    rule.case(clash.is_none(), || {
        let v = of_post(t, CornerBreach::PostTwice);
        let first = clash.and_then(|q| q.pieces.first());
        match first {
            Some(q) => v.with(named::trim(&q.mark)),
            None => v,
        }
    });
}

/// Whether a post runs below the start as the job says; or less, though not above it, where every length of
/// it is a whole one, so that the whole tail would take one more.
fn tail_stands(layout: &LaidHouse, p: &Post, tail: f64) -> bool {
    let most = layout.job.trim_gaps().post_below;
    let whole = |t: &&TrimPiece| (t.length - layout.job.stock(t.kind.stock())).abs() < NEAR;
    let saves = tail > -NEAR && tail < most && p.pieces.iter().all(whole);
    (tail - most).abs() < NEAR || saves
}

/// Posts of parts one over the other: the upper one runs below its start, beside the lower one's top.
fn parted(q: &Post, p: &Post, below: f64) -> bool {
    q.high <= p.low + below + NEAR || p.high <= q.low + below + NEAR
}
