//! Trim along the other sides of a wall: starters, channels, finish trim, corner posts.

use std::collections::BTreeMap;

use super::NEAR;
use super::Rule;
use super::along::{bare, reach};
use crate::geom::tol::SAME;
use crate::model::house::EdgeKind;
use crate::model::layout::{Edge, Elevation, Layout, RuleCheck, Wall};
use crate::model::receiver::Receiver;
use crate::model::trim::{TrimKind, TrimPiece};

/// Sides shorter than this take no trim of their own, inches.
const LEAST: f64 = 1.0;

pub(super) fn check(layout: &Layout) -> [RuleCheck; 2] {
    let (mut sides, mut corners) = (Rule::default(), Rule::default());
    let index = Index::new(layout);
    for (_, w) in layout.walls() {
        for s in w.edges.iter().filter(|s| s.opening.is_none() && reach(s.from, s.to) >= LEAST) {
            side(&mut sides, layout, &index, w, s);
        }
    }
    posts(&mut corners, layout);
    [
        sides.done("every side has its trim"),
        corners.done("every corner has its post, as high as the corner"),
    ]
}

/// Trim of a wall by kind, by the lower of its ends' x.
struct Index<'a> {
    of: BTreeMap<(&'a str, TrimKind), Vec<&'a TrimPiece>>,
    longest: f64,
}

fn left(t: &TrimPiece) -> f64 {
    t.from[0].min(t.to[0])
}

impl<'a> Index<'a> {
    fn new(layout: &'a Layout) -> Self {
        let mut of: BTreeMap<(&str, TrimKind), Vec<&TrimPiece>> = BTreeMap::new();
        for t in layout.trims.iter().filter(|t| t.opening.is_none()) {
            of.entry((&t.wall, t.kind)).or_default().push(t);
        }
        of.values_mut().for_each(|list| list.sort_by(|a, b| left(a).total_cmp(&left(b))));
        let longest = layout.trims.iter().map(|t| reach(t.from, t.to)).fold(0.0, f64::max);
        Index { of, longest }
    }

    /// Trim of a kind on a wall that may lie along a side.
    fn near(&self, w: &'a Wall, kind: TrimKind, s: &Edge) -> &[&'a TrimPiece] {
        let all = self.of.get(&(w.id.as_str(), kind)).map_or(&[][..], Vec::as_slice);
        let (low, high) = (s.from[0].min(s.to[0]), s.from[0].max(s.to[0]));
        let first = all.partition_point(|t| left(t) < low - self.longest - NEAR);
        let last = all.partition_point(|t| left(t) <= high + NEAR);
        &all[first..last.max(first)]
    }
}

/// What trim lies along a side by its kind and what takes panels there (FACTS SD-90, SD-91, SD-106,
/// SD-110); corners are looked at apart.
fn trim_of(s: &Edge) -> Option<TrimKind> {
    match (s.receiver, s.kind) {
        (Receiver::Starter, _) => Some(TrimKind::Starter),
        (_, EdgeKind::Eave | EdgeKind::BareBottom) => Some(TrimKind::FinishTrim),
        (_, EdgeKind::Rake) => Some(TrimKind::RakeChannel),
        (_, EdgeKind::LowerRoof) => Some(TrimKind::RoofChannel),
        (_, EdgeKind::Base | EdgeKind::BareTop | EdgeKind::Abutment) => Some(TrimKind::WallChannel),
        _ => None,
    }
}

fn side(rule: &mut Rule, layout: &Layout, index: &Index, w: &Wall, s: &Edge) {
    let Some(kind) = trim_of(s) else { return };
    let whole = reach(s.from, s.to);
    let pieces = index.near(w, kind, s);
    let open = bare(s.from, s.to, pieces);
    let gap = layout.job.trim.starter_gap;
    let most = if kind == TrimKind::Starter {
        if whole <= 2.0 * gap + LEAST {
            return;
        }
        // A gap at each end, and between lengths (FACTS SD-55).
        gap * (1.0 + (whole / layout.job.trim.starter).ceil())
    } else {
        0.0
    };
    rule.case(open <= most + NEAR, || {
        format!(
            "{}: {open:.2} in of {whole:.2} at {:.2}, {:.2} have no {}",
            w.id,
            s.from[0],
            s.from[1],
            kind.words()
        )
    });
    // Starters keep their gap from posts and from one another.
    rule.case(kind != TrimKind::Starter || open >= 2.0 * gap - NEAR, || {
        format!("{}: the starter at {:.2}, {:.2} leaves no gap", w.id, s.from[0], s.from[1])
    });
}

/// A corner as one wall shows it.
struct Corner<'a> {
    elevation: &'a Elevation,
    wall: &'a Wall,
    kind: TrimKind,
    tag: Option<&'a str>,
    x: f64,
    low: f64,
    high: f64,
}

/// Upright corner sides, those that follow one another joined.
fn corners(layout: &Layout) -> Vec<Corner<'_>> {
    let mut out: Vec<Corner> = Vec::new();
    for (elevation, wall) in layout.walls() {
        for s in &wall.edges {
            let kind = match s.kind {
                EdgeKind::OutsideCorner => TrimKind::OutsidePost,
                EdgeKind::InsideCorner => TrimKind::InsidePost,
                _ => continue,
            };
            let (low, high) = (s.from[1].min(s.to[1]), s.from[1].max(s.to[1]));
            let follows = out.last_mut().filter(|c| {
                std::ptr::eq(c.wall, wall)
                    && c.kind == kind
                    && (c.x - s.from[0]).abs() < NEAR
                    && low <= c.high + NEAR
                    && high >= c.low - NEAR
            });
            match follows {
                Some(c) => (c.low, c.high) = (c.low.min(low), c.high.max(high)),
                None => {
                    let tag = s.tag.as_deref();
                    out.push(Corner { elevation, wall, kind, tag, x: s.from[0], low, high });
                }
            }
        }
    }
    out
}

/// Lengths of a post that lap into one, with the corner it stands at and the one it is shared with.
struct Post<'a> {
    pieces: Vec<&'a TrimPiece>,
    low: f64,
    high: f64,
    own: Option<usize>,
    shared: Option<usize>,
}

impl<'a> Post<'a> {
    fn first(&self) -> Option<&'a TrimPiece> {
        self.pieces.first().copied()
    }

    /// Whether it stands where a corner needs it: from under the start to short of the soffit
    /// (FACTS SD-54, SD-97).
    fn reaches(&self, layout: &Layout, c: &Corner) -> bool {
        let r = &layout.job.trim;
        self.first().is_some_and(|t| t.kind == c.kind)
            && self.low <= c.low - r.post_below + NEAR
            && self.high >= c.high - r.post_top_gap - NEAR
    }
}

fn whole_posts(layout: &Layout) -> Vec<Post<'_>> {
    let mut out: Vec<Post> = Vec::new();
    for t in layout
        .trims
        .iter()
        .filter(|t| matches!(t.kind, TrimKind::OutsidePost | TrimKind::InsidePost))
    {
        let (low, high) = (t.from[1].min(t.to[1]), t.from[1].max(t.to[1]));
        let lapped = out.last_mut().filter(|p| {
            p.pieces.last().is_some_and(|q| {
                q.kind == t.kind
                    && q.wall == t.wall
                    && (q.from[0] - t.from[0]).abs() < NEAR
                    && (low + layout.job.trim.post_lap - p.high).abs() < NEAR
            })
        });
        match lapped {
            Some(p) => {
                p.pieces.push(t);
                p.high = high;
            }
            None => out.push(Post { pieces: vec![t], low, high, own: None, shared: None }),
        }
    }
    out
}

/// Each corner has one post: on its own wall, or on the elevation round the corner, which says so.
fn posts(rule: &mut Rule, layout: &Layout) {
    let mut posts = whole_posts(layout);
    let least = layout.job.trim.post_top_gap + LEAST;
    let all: Vec<Corner> = corners(layout).into_iter().filter(|c| c.high - c.low > least).collect();
    let mut elsewhere = Vec::new();
    for (i, c) in all.iter().enumerate() {
        let here = |p: &&mut Post| {
            p.own.is_none()
                && p.reaches(layout, c)
                && p.first().is_some_and(|t| t.wall == c.wall.id && (t.from[0] - c.x).abs() < NEAR)
        };
        match posts.iter_mut().find(here) {
            Some(p) => p.own = Some(i),
            None => elsewhere.push(i),
        }
    }
    for i in elsewhere {
        let c = &all[i];
        // Of posts shared with this elevation: the same tag, then the nearest height.
        let fit = |p: &Post| {
            let tag = p.own.and_then(|k| all[k].tag);
            let off = (p.low - c.low).abs() + (p.high - c.high).abs();
            (tag != c.tag, (off * 1024.0) as i64)
        };
        let free = |p: &&mut Post| {
            let round = p.first().and_then(|t| t.shared_with.as_deref());
            p.shared.is_none() && round == Some(&c.elevation.name) && p.reaches(layout, c)
        };
        let found = posts.iter_mut().filter(free).min_by_key(|p| fit(p));
        rule.case(found.is_some(), || {
            let place = format!("{}, {} at {:.2}", c.elevation.name, c.wall.id, c.x);
            format!("{place}: no {} from {:.2} to {:.2}", c.kind.words(), c.low, c.high)
        });
        found.into_iter().for_each(|p| p.shared = Some(i));
    }
    for p in &posts {
        let Some(t) = p.first() else { continue };
        rule.case(p.own.is_some(), || format!("{}: no corner stands at {:.2}", t.mark, t.from[0]));
        rule.case(p.shared.is_some() == t.shared_with.is_some(), || {
            format!("{}: shared with {:?}, which shows no such corner", t.mark, t.shared_with)
        });
        rule.case(p.high - p.low > SAME, || format!("{}: a post without length", t.mark));
    }
}
