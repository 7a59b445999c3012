//! Flashing and surround boards of an opening that is no level rectangle, along its true contour.

use super::contour::{ContourSide, of_outline, sides};
use super::shaped::along;
use super::stock::{Place, part};
use crate::geom::polygon::sides as ring_sides;
use crate::geom::tol::{SAME, same};
use crate::geom::vocabulary::Point;
use crate::job::Job;
use crate::model::house::{DrawnOpening, EdgeKind, OpeningSide};
use crate::model::trim::{JAMB_OVER, SILL_PAST, TrimEnd, TrimKind, TrimPiece};

/// Two sides that turn no more than this into the opening go on as one, degrees: the noise of chords.
const STRAIGHT: f64 = -1.0;

/// Whether a side with this middle is one where the opening goes on over something else.
fn is_cut(o: &DrawnOpening, p: Point) -> bool {
    let (left, right, low, high) = o.sides();
    o.cut.iter().any(|side| match side {
        OpeningSide::Left => same(p.x, left),
        OpeningSide::Right => same(p.x, right),
        OpeningSide::Sill => same(p.y, low),
        OpeningSide::Head => same(p.y, high),
    })
}

/// Sides of an outline that trim stands on: not those where the opening goes on over something else,
/// nor the foot of a door.
fn standing(o: &DrawnOpening) -> Vec<ContourSide> {
    let mut lines = of_outline(&o.outline);
    lines.retain(|s| !is_cut(o, s.middle()) && (o.kind.has_sill() || s.kind != EdgeKind::Sill));
    sides(lines, true)
}

/// Whether all of a plumb side stands at the side of another opening: units joined there have no jamb of their own,
/// as none between rectangles in one frame has. Common practice, no source.
fn is_joined(openings: &[DrawnOpening], o: &DrawnOpening, s: &ContourSide) -> bool {
    let (Some(a), Some(b)) = (s.points.first(), s.points.last()) else { return false };
    let (low, high) = (a.y.min(b.y), a.y.max(b.y));
    let covers = |(p, q): (Point, Point)| {
        let plumb = same(p.x, a.x) && same(q.x, a.x);
        plumb && p.y.min(q.y) <= low + SAME && p.y.max(q.y) >= high - SAME
    };
    let others = openings.iter().filter(|n| n.id != o.id);
    !s.is_curved && same(a.x, b.x) && others.flat_map(|n| ring_sides(&n.outline)).any(covers)
}

/// Strips along sill, jambs and head, lower ones first, those along a curve as long as it: each reaches as far past its ends as the
/// published sizes say, but not into a corner that the opening goes round. Behind a surround they are
/// taken along its outer edge, which is longer than the opening's: of our own choosing.
pub(super) fn flashing(place: &Place, o: &DrawnOpening, job: &Job) -> Vec<TrimPiece> {
    let all = standing(o);
    let mut out = Vec::new();
    for (kind, trim, past) in [
        (EdgeKind::Sill, TrimKind::SillFlashing, SILL_PAST),
        (EdgeKind::Jamb, TrimKind::JambFlashing, JAMB_OVER),
        (EdgeKind::Head, TrimKind::HeadFlashing, SILL_PAST),
    ] {
        let stands = |s: &&ContourSide| {
            s.kind == kind && (kind != EdgeKind::Jamb || !is_joined(&place.wall.openings, o, s))
        };
        for s in all.iter().filter(stands) {
            let reach =
                s.ends.map(|c| if c.is_some_and(|c| c.turn > STRAIGHT) { past } else { 0.0 });
            let middle = ContourSide { points: s.beside(SILL_PAST / 2.0), ..s.clone() };
            let square = [TrimEnd::Square, TrimEnd::Square];
            let mut whole = along(place, trim, &middle.reaching(reach), s.is_curved, square);
            whole.opening = Some(o.id.clone());
            out.extend(part(whole, job.takeoff.flashing_roll, 0.0));
        }
    }
    out
}

/// A board along each side, as long as its outer edge, mitered to the next; along a curve it is bent
/// or cut from wider stock.
pub(super) fn surround(place: &Place, o: &DrawnOpening, job: &Job) -> Vec<TrimPiece> {
    let mut out = Vec::new();
    for s in standing(o) {
        let ends = s.ends.each_ref().map(|c| match c {
            Some(c) if !c.is_smooth => TrimEnd::Miter(c.turn.abs() / 2.0),
            _ => TrimEnd::Square,
        });
        // Into the opening by half a width; as long as the side itself.
        let points = s.beside(-job.trim.surround / 2.0);
        let mut whole = along(place, TrimKind::Surround, &points, s.is_curved, ends);
        whole.opening = Some(o.id.clone());
        out.extend(part(whole, job.stock(TrimKind::Surround.stock()), 0.0));
    }
    out
}
