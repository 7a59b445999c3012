//! The frame of channels round an opening, where it is a level rectangle (else see `shaped`): sill, jambs, head with water tabs; finish trim where a
//! cut edge stands under a sill; a drip cap over the head.
//!
//! Mitered, lengths by `TrimFact::WindowFrame`: head and sill the opening's width and two faces, jambs
//! its height and two faces. Cut square, jambs stand between sill and head with a tab more at the
//! foot. The tabs are bent from the head's own ends (`TrimFact::HeadTabs`).

use super::cut_edge::wants_finish_trim;
use super::shaped;
use super::stock::{LEAST, Place, part};
use crate::geom::polygon::{bounds, is_level_rectangle};
use crate::geom::tol::SAME;
use crate::geom::vocabulary::{Point, Vec2};
use crate::job::{FrameCut, Job};
use crate::model::course::StoryPole;
use crate::model::house::EdgeKind;
use crate::model::receiver::{Field, FieldEdge};
use crate::model::trim::{TrimEnd, TrimKind, TrimPiece};

pub(super) fn pieces(place: &Place, field: &Field, pole: &StoryPole, job: &Job) -> Vec<TrimPiece> {
    let mut out = Vec::new();
    for (i, opening) in place.wall.openings.iter().enumerate() {
        let sides: Vec<&FieldEdge> = field.edges.iter().filter(|e| e.opening == Some(i)).collect();
        let mut frame = if is_level_rectangle(&opening.outline) {
            frame(place, &sides, pole, job)
        } else {
            shaped::frame(place, &sides, pole, job)
        };
        if !job.siding().receivers.has_pockets() {
            // Boards butt against the casing; only the head is capped.
            frame.retain(|p| p.kind == TrimKind::DripCap);
        }
        for piece in &mut frame {
            piece.opening = Some(opening.id.clone());
        }
        out.extend(frame.into_iter().flat_map(|p| {
            let stock = job.stock(p.kind.stock());
            part(p, stock, job.trim.channel_face)
        }));
    }
    out
}

/// The sides of one kind taken together: their length along, and the box round them.
fn reach(
    sides: &[&FieldEdge],
    kind: EdgeKind,
    keep: impl Fn(&FieldEdge) -> bool,
) -> Option<(f64, Point, Point)> {
    let mine: Vec<&&FieldEdge> = sides.iter().filter(|e| e.kind == kind && keep(e)).collect();
    let points: Vec<Point> = mine.iter().flat_map(|e| [e.from, e.to]).collect();
    let b = bounds(&points)?;
    let length = mine.iter().map(|e| e.from.distance(e.to)).sum();
    Some((length, Point::new(b.x0, b.y0), Point::new(b.x1, b.y1)))
}

fn frame(place: &Place, sides: &[&FieldEdge], pole: &StoryPole, job: &Job) -> Vec<TrimPiece> {
    let face = job.trim.channel_face;
    let square = || [TrimEnd::Square, TrimEnd::Square];
    let mut out = Vec::new();
    let head = reach(sides, EdgeKind::Head, |_| true);
    let sill = reach(sides, EdgeKind::Sill, |_| true);
    let middle =
        sides.iter().map(|e| e.from.x + e.to.x).sum::<f64>() / (2 * sides.len().max(1)) as f64;
    let jambs =
        [true, false].map(|left| reach(sides, EdgeKind::Jamb, |e| (e.from.x < middle) == left));
    let cut = Cut { job, mitered: job.trim.frame == FrameCut::Miter && plain(sides) };
    if let Some((length, low, high)) = sill {
        let (a, b) = (low, Point::new(high.x, low.y));
        let over = Vec2::new(face, 0.0);
        let ends = [cut.corner(jambs[0].is_some()), cut.corner(jambs[1].is_some())];
        let mut piece = place.piece(TrimKind::SillChannel, a - over, b + over, 0.0, ends);
        piece.length = crate::geom::tol::snap(length + 2.0 * face);
        out.push(piece);
        // A cut edge under a sill is held by finish trim inside the channel
        // (TrimFact::UndersillInChannel).
        let held = stretches(sides).filter(|_| wants_finish_trim(low.y, pole, job));
        out.extend(held.filter(|(from, to)| to - from >= LEAST).map(|(from, to)| {
            let [from, to] = [from, to].map(|x| Point::new(x, low.y));
            place.piece(TrimKind::FinishTrim, from, to, 0.0, square())
        }));
    }
    for (length, low, high) in jambs.iter().flatten() {
        // Mitered, a jamb runs one face past where it meets a channel; square, it stands between them
        // and has a tab's length more to go down into the sill's.
        let square = job.trim.frame == FrameCut::Square;
        let down = if sill.is_some() && !square { face } else { 0.0 };
        let up = if head.is_some() && !square { face } else { 0.0 };
        let more = if sill.is_some() && square { job.trim.tab } else { 0.0 };
        let (a, b) = (Point::new(low.x, low.y - down), Point::new(low.x, high.y + up));
        let foot = if sill.is_some() { cut.tabbed() } else { TrimEnd::Square };
        let ends = [foot, cut.corner(head.is_some())];
        let mut piece = place.piece(TrimKind::JambChannel, a, b, 0.0, ends);
        piece.length = crate::geom::tol::snap(length + down + up + more);
        out.push(piece);
    }
    if let Some((length, low, high)) = head {
        let tabs = || [cut.tabbed(), cut.tabbed()];
        let over = Vec2::new(face, 0.0);
        let (a, b) = (low, Point::new(high.x, low.y));
        let mut piece = place.piece(TrimKind::HeadChannel, a - over, b + over, 0.0, tabs());
        piece.length = crate::geom::tol::snap(length + 2.0 * face);
        out.push(piece);
        let past = Vec2::new(job.trim.drip_cap_past, 0.0);
        let mut cap = place.piece(TrimKind::DripCap, a - past, b + past, 0.0, square());
        cap.length = crate::geom::tol::snap(length + 2.0 * job.trim.drip_cap_past);
        out.push(cap);
    }
    out
}

/// From where to where siding stands under the sill: a filler board may part it.
fn stretches(sides: &[&FieldEdge]) -> impl Iterator<Item = (f64, f64)> + use<> {
    let of_sill = sides.iter().filter(|e| e.kind == EdgeKind::Sill);
    let mut spans: Vec<(f64, f64)> =
        of_sill.map(|e| (e.from.x.min(e.to.x), e.from.x.max(e.to.x))).collect();
    spans.sort_by(|a, b| a.0.total_cmp(&b.0));
    let mut out: Vec<(f64, f64)> = Vec::new();
    for span in spans {
        match out.last_mut().filter(|last| span.0 <= last.1 + SAME) {
            Some(last) => last.1 = last.1.max(span.1),
            None => out.push(span),
        }
    }
    out.into_iter()
}

/// How ends that meet are cut.
struct Cut<'a> {
    job: &'a Job,
    mitered: bool,
}

impl Cut<'_> {
    /// An end that meets another channel, if there is one.
    fn corner(&self, meets: bool) -> TrimEnd {
        if self.mitered && meets { TrimEnd::Miter(45.0) } else { TrimEnd::Square }
    }

    /// An end whose tab goes down into the channel below.
    fn tabbed(&self) -> TrimEnd {
        let tab = self.job.trim.tab;
        if self.mitered { TrimEnd::MiterTab { angle: 45.0, tab } } else { TrimEnd::Tab(tab) }
    }
}

/// Level and plumb sides, one of each: the corners are square.
fn plain(sides: &[&FieldEdge]) -> bool {
    let one = |kind: EdgeKind| sides.iter().filter(|e| e.kind == kind).count() <= 1;
    let straight =
        |e: &&FieldEdge| (e.from.x - e.to.x).abs() <= SAME || (e.from.y - e.to.y).abs() <= SAME;
    one(EdgeKind::Head) && one(EdgeKind::Sill) && sides.iter().all(straight)
}
