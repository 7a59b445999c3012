//! The frame round an opening that is no level rectangle: channel along each straight side, bent
//! channel along each curve, undersill trim along each straight sill that cuts a panel, a drip cap over
//! each straight head (`TrimFact::DripCaps`).
//!
//! Where two sides meet, both are mitered at half the turn between them, and the upper one's end is
//! tabbed over the lower one; square corners follow the job's style. That two curved lines, or a curve
//! and the side it springs from, lap where they go on as one: common practice, no source.

use super::contour::{ContourSide, Corner, Segment, sides};
use super::cut_edge::wants_finish_trim;
use super::stock::Place;
use crate::geom::tol::{SAME, snap};
use crate::geom::vocabulary::Point;
use crate::job::{FrameCut, Job};
use crate::model::course::StoryPole;
use crate::model::house::EdgeKind;
use crate::model::receiver::FieldEdge;
use crate::model::trim::{TrimEnd, TrimKind, TrimPiece};
use crate::real::Real;

/// The greatest turn that a miter closes, degrees: a corner sharper than 30 degrees is lapped, of our
/// own choosing.
const SHARPEST: f64 = 150.0;

pub(super) fn frame(
    place: &Place,
    edges: &[&FieldEdge],
    pole: &StoryPole,
    job: &Job,
) -> Vec<TrimPiece> {
    let lines: Vec<Segment> = edges.iter().map(|e| Segment::from(*e)).collect();
    let mut out = Vec::new();
    for s in sides(lines, false) {
        out.push(channel(place, &s, job));
        if s.is_curved {
            continue;
        }
        let (a, b) = s.ends();
        if s.kind == EdgeKind::Sill && holds_a_cut(a, b, pole, job) {
            let square = [TrimEnd::Square, TrimEnd::Square];
            out.push(place.piece(TrimKind::FinishTrim, a, b, 0.0, square));
        }
        if s.kind == EdgeKind::Head {
            out.push(cap(place, &s, job));
        }
    }
    out
}

/// Whether panels are cut along a straight sill: along every slope, and along a level one off the
/// course lines.
fn holds_a_cut(a: Point, b: Point, pole: &StoryPole, job: &Job) -> bool {
    (a.y - b.y).abs() > SAME || wants_finish_trim(a.y, pole, job)
}

/// A piece along the points of a side moved on by `by` at its ends.
pub(super) fn along(
    place: &Place,
    kind: TrimKind,
    points: &[Point],
    is_curved: bool,
    ends: [TrimEnd; 2],
) -> TrimPiece {
    let first = points.first().copied().unwrap_or_default();
    let last = points.last().copied().unwrap_or(first);
    let on_grid = |p: &Point| Point::new(snap(p.x), snap(p.y));
    let mut piece = place.piece(kind, on_grid(&first), on_grid(&last), 0.0, ends);
    if is_curved {
        piece.path = points.iter().map(|p| [snap(p.x), snap(p.y)]).collect();
        piece.length = snap(points.windows(2).map(|w| w[0].distance(w[1])).sum());
    }
    piece
}

fn channel(place: &Place, s: &ContourSide, job: &Job) -> TrimPiece {
    let face = job.trim.channel_face;
    if s.is_ring {
        // It laps over its own beginning at its lowest point, where water leaves it.
        let points = s.round_again(face);
        let ends = [TrimEnd::Square, TrimEnd::Lap(face)];
        return along(place, TrimKind::BentChannel, &points, true, ends);
    }
    let cuts = s.ends.each_ref().map(|c| cut(s, c.as_ref(), job));
    let points = s.reaching(cuts.each_ref().map(|c| c.reach));
    let tab: f64 = cuts.iter().map(|c| c.tab).sum();
    let kind = match s.kind {
        _ if s.is_curved => TrimKind::BentChannel,
        EdgeKind::Head => TrimKind::HeadChannel,
        EdgeKind::Sill => TrimKind::SillChannel,
        _ => TrimKind::JambChannel,
    };
    let mut piece = along(place, kind, &points, s.is_curved, cuts.map(|c| c.end));
    piece.length = snap(piece.length + tab);
    piece
}

/// How a channel ends: how far past the drawn corner, with what more for a tab, and cut how.
struct Cut {
    reach: f64,
    tab: f64,
    end: TrimEnd,
}

fn cut(s: &ContourSide, corner: Option<&Corner>, job: &Job) -> Cut {
    let (face, tab) = (job.trim.channel_face, job.trim.tab);
    let plain = |reach: f64, end: TrimEnd| Cut { reach, tab: 0.0, end };
    let Some(c) = corner else { return plain(0.0, TrimEnd::Square) };
    let tabbed = if c.is_upper { TrimEnd::Tab(tab) } else { TrimEnd::Square };
    if c.is_smooth || c.turn.abs() > SHARPEST {
        return if c.is_upper {
            plain(face, TrimEnd::Lap(face))
        } else {
            plain(0.0, TrimEnd::Square)
        };
    }
    if c.is_square && job.trim.frame == FrameCut::Square {
        // The level one runs past; the plumb one stands on it or under it, with a tab more at its foot.
        return match s.kind {
            EdgeKind::Jamb => {
                Cut { reach: 0.0, tab: if c.is_upper { tab } else { 0.0 }, end: tabbed }
            }
            _ => plain(if c.turn > 0.0 { face } else { 0.0 }, tabbed),
        };
    }
    let angle = c.turn.abs() / 2.0;
    // Round a corner that sticks out the faces' outer edges are the longer ones.
    let reach = if c.turn > 0.0 { face * angle.to_radians().tangent() } else { 0.0 };
    plain(reach, if c.is_upper { TrimEnd::MiterTab { angle, tab } } else { TrimEnd::Miter(angle) })
}

/// A cap along a straight head: past it at its outer ends, mitered to another head's, square where it
/// meets a side that goes on up.
fn cap(place: &Place, s: &ContourSide, job: &Job) -> TrimPiece {
    let of = |corner: &Option<Corner>| match corner {
        Some(c) if c.other == Some(EdgeKind::Head) && c.turn.abs() <= SHARPEST => {
            (0.0, TrimEnd::Miter(c.turn.abs() / 2.0))
        }
        Some(c) if c.turn < 0.0 || c.is_smooth => (0.0, TrimEnd::Square),
        _ => (job.trim.drip_cap_past, TrimEnd::Square),
    };
    let [(left, first), (right, last)] = s.ends.each_ref().map(of);
    along(place, TrimKind::DripCap, &s.reaching([left, right]), false, [first, last])
}
