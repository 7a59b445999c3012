//! Corners: every upright corner side belongs to one, and courses meet there (FACTS OT-01, OT-22).

use std::collections::BTreeSet;

use super::{NEAR, Rule, same};
use crate::geom::tol::SAME;
use crate::layout::Layout;
use crate::layout::by_wall::ByWall;
use crate::layout::course::LaidCourse;
use crate::layout::verified::RuleCheck;
use crate::layout::wall::{LaidEdge, LaidWall};
use crate::model::corner::{Corner, CornerKind, CornerSide, Hand};
use crate::model::house::EdgeKind;

/// Sides shorter than this are looked at by no rule, inches.
const LEAST: f64 = 1.0;
/// A strip lower than this at the end of the height two walls share may be left out as too thin,
/// inches.
const SLIVER: f64 = 0.5;

pub(super) fn check(layout: &Layout, at: &ByWall) -> [RuleCheck; 2] {
    let (mut once, mut meet) = (Rule::default(), Rule::default());
    for (e, w) in layout.walls() {
        for s in w.edges.iter().filter(|s| hand(s).is_some() && height(s) >= LEAST) {
            let n = at
                .sides(&w.id)
                .iter()
                .filter(|(c, k)| kind(c) == s.kind && lies(layout, w, s, k))
                .count();
            rule_of_one(&mut once, n, || {
                let side = hand(s).map_or("", Hand::word);
                format!(
                    "{}, {}: its {side} side at {:.2} is part of {n} corners",
                    e.name, w.id, s.from[0]
                )
            });
        }
    }
    let mut met: BTreeSet<&str> = BTreeSet::new();
    for c in &layout.corners {
        whole(&mut once, at, c, !met.insert(&c.id));
        courses(&mut meet, layout, at, c);
    }
    [
        once.done("every corner side is part of one corner"),
        meet.done("courses meet at every paired corner"),
    ]
}

fn rule_of_one(rule: &mut Rule, n: usize, words: impl FnOnce() -> String) {
    rule.case(n == 1, words);
}

/// The edges' word for a corner's kind.
pub(super) fn kind(c: &Corner) -> EdgeKind {
    match c.kind {
        CornerKind::Outside => EdgeKind::OutsideCorner,
        CornerKind::Inside => EdgeKind::InsideCorner,
    }
}

fn height(s: &LaidEdge) -> f64 {
    (s.to[1] - s.from[1]).abs()
}

/// The hand of a corner's side: the field lies on the left hand, so the right one runs up.
fn hand(s: &LaidEdge) -> Option<Hand> {
    let corner = matches!(s.kind, EdgeKind::OutsideCorner | EdgeKind::InsideCorner);
    corner.then(|| if s.to[1] > s.from[1] { Hand::Right } else { Hand::Left })
}

/// Whether a side of a wall lies on the corner's side.
pub(super) fn lies(layout: &Layout, w: &LaidWall, s: &LaidEdge, k: &CornerSide) -> bool {
    // A cover stands between the corner and the siding; along a slope its edge runs on.
    let cover = if s.kind == EdgeKind::OutsideCorner { layout.job.trim.corner_cover } else { 0.0 };
    let (low, high) = (s.from[1].min(s.to[1]), s.from[1].max(s.to[1]));
    let x = (s.from[0] + s.to[0]) / 2.0;
    k.wall == w.id
        && hand(s) == Some(k.side)
        // A side that leans is off by as much at most.
        && (x - k.x).abs() < NEAR + (s.from[0] - s.to[0]).abs() + cover
        && low >= k.low - NEAR - 3.0 * cover
        && high <= k.high + NEAR + 3.0 * cover
        && low < k.high
        && high > k.low
}

/// A corner names walls that stand, reaches as far as they do, and turns round to another elevation
/// where it has more than one wall.
fn whole(rule: &mut Rule, at: &ByWall, c: &Corner, twice: bool) {
    rule.case(!twice && !c.sides.is_empty(), || format!("{} stands twice, or on no wall", c.id));
    for k in &c.sides {
        let stands = at.walls(&k.wall).iter().any(|(e, _)| e.name == k.elevation);
        rule.case(stands, || format!("{}: there is no wall {} on {}", c.id, k.wall, k.elevation));
    }
    let low = c.sides.iter().map(|k| k.low).fold(f64::INFINITY, f64::min);
    let high = c.sides.iter().map(|k| k.high).fold(f64::NEG_INFINITY, f64::max);
    rule.case(same(low, c.low) && same(high, c.high), || {
        format!(
            "{}: from {:.2} to {:.2}, its walls from {low:.2} to {high:.2}",
            c.id, c.low, c.high
        )
    });
    let round = c.sides.iter().skip(1).any(|k| k.elevation != c.sides[0].elevation);
    rule.case(round || c.sides.len() < 2, || format!("{}: one elevation shows all of it", c.id));
}

/// A wall's side at a corner: heights its field reaches there, and the butt lines that end there.
struct Shown {
    reach: Vec<(f64, f64)>,
    lines: Vec<f64>,
}

fn shown(layout: &Layout, at: &ByWall, c: &Corner, here: &dyn Fn(&CornerSide) -> bool) -> Shown {
    let mut out = Shown { reach: Vec::new(), lines: Vec::new() };
    for k in c.sides.iter().filter(|k| here(k)) {
        for (_, w) in at.walls(&k.wall) {
            let mine = w.edges.iter().filter(|s| s.kind == kind(c) && lies(layout, w, s, k));
            out.reach.extend(
                mine.map(|s| {
                    (s.from[1].min(s.to[1]).max(k.low), s.from[1].max(s.to[1]).min(k.high))
                }),
            );
            let ends = |course: &&LaidCourse| {
                course.runs.iter().any(|r| {
                    let x = if k.side == Hand::Left { r.x0 } else { r.x1 };
                    (x - k.x).abs() < NEAR + layout.job.trim.corner_cover
                })
            };
            out.lines.extend(w.courses.iter().filter(ends).map(|c| c.bottom));
        }
    }
    out
}

/// Every butt line that reaches the corner on one wall, at a height the other wall reaches too, is a
/// butt line of the other.
fn courses(rule: &mut Rule, layout: &Layout, at: &ByWall, c: &Corner) {
    let Some(first) = c.sides.first() else { return };
    let one = shown(layout, at, c, &|k| k.elevation == first.elevation);
    let two = shown(layout, at, c, &|k| k.elevation != first.elevation);
    for (a, b, from) in [(&one, &two, "first"), (&two, &one, "second")] {
        for y in &a.lines {
            let inside = |r: &Vec<(f64, f64)>| {
                r.iter().any(|(low, high)| *y > low + SAME && *y < high - SLIVER)
            };
            if inside(&a.reach) && inside(&b.reach) {
                rule.case(b.lines.iter().any(|z| same(*y, *z)), || {
                    format!("{}: the butt line at {y:.3} on its {from} wall meets none", c.id)
                });
            }
        }
    }
}
