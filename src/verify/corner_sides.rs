//! Which sides of walls stand at a corner.

use super::tolerance::NEAR;
use crate::geom::tol::{LEVEL, SAME};
use crate::geom::vocabulary::Xy;
use crate::job::InsideCorner;
use crate::layout::laid::LaidHouse;
use crate::layout::wall::{LaidEdge, LaidWall};
use crate::model::corner::{Corner, CornerKind, CornerSide, Hand};
use crate::model::house::EdgeKind;
use crate::real::Real;

/// The edges' word for a corner's kind.
pub(super) fn kind(c: &Corner) -> EdgeKind {
    match c.kind {
        CornerKind::Outside => EdgeKind::OutsideCorner,
        CornerKind::Inside => EdgeKind::InsideCorner,
    }
}

/// The hand of a corner's side: the field lies on the left hand, so the right one runs up.
pub(super) fn hand(s: &LaidEdge) -> Option<Hand> {
    let corner = matches!(s.kind, EdgeKind::OutsideCorner | EdgeKind::InsideCorner);
    corner.then(|| if s.to[1] > s.from[1] { Hand::Right } else { Hand::Left })
}

/// How much a side may lean and still be upright, run over rise: 1 in on 8 ft (common practice, no source).
const UPRIGHT: f64 = 1.0 / 96.0;

/// Whether a side runs upright, or leans no more than a post may that stands along it.
pub(super) fn runs_upright(a: Xy, b: Xy) -> bool {
    (a[0] - b[0]).abs() <= LEVEL.max(UPRIGHT * (a[1] - b[1]).abs() + SAME)
}

/// Whether a top runs level, or is out of level no more than undersill trim follows: as a post along a corner does.
pub(super) fn runs_level(a: Xy, b: Xy) -> bool {
    runs_upright([a[1], a[0]], [b[1], b[0]])
}

/// Whether a side stands upright by its name: at a corner, or at another end of a wall.
pub(super) fn is_upright(kind: EdgeKind) -> bool {
    matches!(kind, EdgeKind::OutsideCorner | EdgeKind::InsideCorner | EdgeKind::Abutment)
}

/// Whether a side is a top that siding goes under with its clearance, level or out of level as taped.
pub(super) fn is_top(e: &LaidEdge) -> bool {
    let top = matches!(e.kind, EdgeKind::Eave | EdgeKind::BareBottom) && e.opening.is_none();
    top && runs_level(e.from, e.to)
}

/// Where a corner's side stands at a height, by the outline of its wall; as it is told where none lies along it, as
/// where stone reaches a little past the line of the wall over it; and past its ends as far as its line leans there.
pub(super) fn place_at(w: &LaidWall, k: &CornerSide, y: f64) -> f64 {
    let told = |y: f64| k.x + k.lean * (y - (k.low + k.high) / 2.0);
    let within = y.clamp(k.low + NEAR, (k.high - NEAR).max(k.low + NEAR));
    let drawn_at = |(a, b): (&Xy, &Xy), y: f64| a[0] + (b[0] - a[0]) * (y - a[1]) / (b[1] - a[1]);
    let next = w.outline.iter().cycle().skip(1);
    let drawn = w.outline.iter().zip(next).filter(|(a, b)| {
        // The wall lies on the left hand: its right side runs up.
        let hand = if b[1] > a[1] { Hand::Right } else { Hand::Left };
        let (low, high) = (a[1].min(b[1]), a[1].max(b[1]));
        let off = [low.max(k.low), high.min(k.high)].map(|y| drawn_at((a, b), y) - told(y));
        hand == k.side && low <= within && high >= within && runs_upright(**a, **b) && meets(off)
    });
    let off = |s: &(&Xy, &Xy)| (drawn_at(*s, within) - told(within)).abs();
    let nearest = drawn.min_by(|p, q| off(p).total_cmp(&off(q)));
    nearest.map_or(told(y), |s| drawn_at(s, y))
}

/// Whether a line so far off another at its ends meets it on the way, or all but.
fn meets([one, other]: [f64; 2]) -> bool {
    one * other <= 0.0 || one.abs().min(other.abs()) <= LEVEL + NEAR
}

/// Sixteenths of an inch, as a tape has them.
fn on_tape(x: f64) -> f64 {
    (x * 16.0).round() / 16.0
}

/// What a corner of this angle adds to the set-back of a post in a square one. A post's faces stand off the
/// sheathing by its pocket; the edge where they meet is the crossing of two lines so far off two walls,
/// (1 + cos a) / sin a of that past the corner, and pockets keep their distance from the edge.
fn added(layout: &LaidHouse, c: &Corner) -> f64 {
    let turn = c.angle.unwrap_or(90.0).clamp(30.0, 180.0).to_radians();
    // At 180 degrees there is no corner: the edge lies over it.
    let edge = if turn.sine() < 1e-6 { 0.0 } else { (1.0 + turn.cosine()) / turn.sine() };
    let off = layout.job.pocket() * (1.0 - edge);
    if c.kind == CornerKind::Outside { off } else { -off }
}

/// Where the bottom of a single channel meets siding that lies a pocket off the other wall.
fn single(layout: &LaidHouse, c: &Corner) -> f64 {
    let turn = c.angle.unwrap_or(90.0).clamp(30.0, 150.0).to_radians();
    let off = layout.job.pocket() * (1.0 + turn.cosine().max(0.0)) / turn.sine();
    if c.angle.is_some() { on_tape(off) } else { off }
}

/// How far along the wall siding stops short of a corner on one of its sides, less the end gap, as the
/// job has it: a post's set-back or a corner board's width, a cover's where that is wider; of one
/// J-channel its depth on the wall that is sided last, of two nothing.
pub(super) fn set_back(layout: &LaidHouse, c: &Corner, k: &CornerSide) -> f64 {
    let (job, p) = (&layout.job, &layout.job.product);
    let (system, inside) = (job.siding(), c.kind == CornerKind::Inside);
    if inside && job.trim.inside_corner == InsideCorner::TwoChannels {
        return 0.0;
    }
    if inside && job.trim.inside_corner == InsideCorner::OneChannel {
        let bears = c.sides.last().is_some_and(|last| last.elevation == k.elevation);
        return if bears { single(layout, c) } else { 0.0 };
    }
    let given = match (inside, system.receivers.has_pockets()) {
        (false, true) => p.outside_post_set_back,
        (true, true) => p.inside_post_set_back,
        (false, false) => p.corner_board,
        (true, false) => p.inside_corner_board,
    };
    let usual = if inside { system.corners.inside } else { system.corners.outside };
    let cover = if inside { 0.0 } else { job.trim.corner_cover };
    let mut post = given.unwrap_or(usual);
    if c.angle.is_some() && system.receivers.has_pockets() {
        let own =
            if inside { p.angled_inside_post_set_back } else { p.angled_outside_post_set_back };
        post = own.unwrap_or_else(|| on_tape((post + added(layout, c)).max(0.0)));
    }
    post.max(cover)
}

/// Whether a wall's field is wider, from its side of a corner on at a height, than the two end gaps that
/// stand there: a joint may leave a strip beside a post that no panel goes on.
pub(super) fn has_room(
    layout: &LaidHouse,
    w: &LaidWall,
    (c, k): (&Corner, &CornerSide),
    y: f64,
) -> bool {
    widest(layout, w, (c, k), y).is_none_or(|wide| wide > 2.0 * layout.job.end_gap() + NEAR)
}

/// Whether a wall's field ends beside its side of a corner between a height and so much over it, as under a sill.
pub(super) fn ends_over(
    layout: &LaidHouse,
    w: &LaidWall,
    at: (&Corner, &CornerSide),
    (y, over): (f64, f64),
) -> bool {
    widest(layout, w, at, y).is_some() && widest(layout, w, at, y + over).is_none()
}

/// How wide a wall's field is from its side of a corner on at a height; none where it does not reach there.
fn widest(layout: &LaidHouse, w: &LaidWall, (c, k): (&Corner, &CornerSide), y: f64) -> Option<f64> {
    let y = y + NEAR;
    let mut across: Vec<f64> = Vec::new();
    for ring in &w.field {
        let next = ring.iter().cycle().skip(1);
        let over = ring.iter().zip(next).filter(|(a, b)| (a[1] > y) != (b[1] > y));
        across.extend(over.map(|(a, b)| a[0] + (b[0] - a[0]) * (y - a[1]) / (b[1] - a[1])));
    }
    across.sort_by(f64::total_cmp);
    let near = NEAR + set_back(layout, c, k);
    let of_side = |s: &&[f64]| {
        let end = if k.side == Hand::Left { s[0] } else { s[1] };
        (end - place_at(w, k, y)).abs() < near
    };
    let widths = across.chunks_exact(2).filter(of_side).map(|s| s[1] - s[0]);
    widths.reduce(f64::max)
}

/// Whether a side of a wall lies on the corner's side.
pub(super) fn lies(
    layout: &LaidHouse,
    w: &LaidWall,
    s: &LaidEdge,
    (c, k): (&Corner, &CornerSide),
) -> bool {
    // A post stands between the corner and the siding; along a slope its edge runs on.
    let back = set_back(layout, c, k);
    let (low, high) = (s.from[1].min(s.to[1]), s.from[1].max(s.to[1]));
    let x = (s.from[0] + s.to[0]) / 2.0;
    k.wall == w.id
        && s.kind == kind(c)
        && hand(s) == Some(k.side)
        // A side that leans is off by as much at most.
        && (x - place_at(w, k, (low + high) / 2.0)).abs()
            < NEAR + (s.from[0] - s.to[0]).abs().min(LEVEL) + back
        && low >= k.low - NEAR - 3.0 * back
        && high <= k.high + NEAR + 3.0 * back
        && low < k.high
        && high > k.low
}
