//! The frame of channels round an opening, where it is a level rectangle (else see `shaped`): sill, jambs, head with water tabs; finish trim where a
//! cut edge stands under a sill; a drip cap over the head.
//!
//! Mitered, lengths by `TrimFact::WindowFrame`: head and sill the opening's width and two faces, jambs
//! its height and two faces. Cut square, jambs stand between sill and head with a tab more at the
//! foot. The tabs are bent from the head's own ends (`TrimFact::HeadTabs`).
//!
//! On a hand without a jamb, as where a filler board goes on to a corner post or to the next opening, head,
//! sill and cap end with the frame, square; where the next frame's go on there, they lap over them by a face
//! (common practice, no source).

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
            frame(place, (&sides, &field.edges), pole, job)
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

fn frame(
    place: &Place,
    (sides, all): (&[&FieldEdge], &[FieldEdge]),
    pole: &StoryPole,
    job: &Job,
) -> Vec<TrimPiece> {
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
    // Level trim of one kind between two points: past both by so much where a jamb stands.
    let level = |kind, (a, b): (Point, Point), length: f64, over: f64, ends: [TrimEnd; 2]| {
        let next = [a, b].map(|end| goes_on((sides, all), kind, end));
        let [left, right] = [0, 1].map(|hand| match (&jambs[hand], next[hand]) {
            (Some(_), _) => over,
            (None, true) => face,
            (None, false) => 0.0,
        });
        let by = |x: f64| Vec2::new(x, 0.0);
        let mut piece = place.piece(kind, a - by(left), b + by(right), 0.0, ends);
        piece.length = crate::geom::tol::snap(length + left + right);
        for hand in [0, 1].into_iter().filter(|hand| jambs[*hand].is_none()) {
            piece.ends[hand] = if next[hand] { TrimEnd::Lap(face) } else { TrimEnd::Square };
        }
        piece
    };
    if let Some((length, low, high)) = sill {
        let (a, b) = (low, Point::new(high.x, low.y));
        let ends = [cut.corner(true), cut.corner(true)];
        out.push(level(TrimKind::SillChannel, (a, b), length, face, ends));
        // A cut edge under a sill is held by finish trim inside the channel
        // (TrimFact::UndersillInChannel).
        let held = stretches(sides).filter(|_| wants_finish_trim(low.y, pole, job));
        out.extend(held.filter(|(from, to)| to - from >= LEAST).map(|(from, to)| {
            let [from, to] = [from, to].map(|x| Point::new(x, low.y));
            place.piece(TrimKind::FinishTrim, from, to, 0.0, square())
        }));
    }
    for jamb in jambs.iter().flatten() {
        out.push(jamb_channel(place, jamb, [sill.is_some(), head.is_some()], &cut));
    }
    if let Some((length, low, high)) = head {
        let tabs = [cut.tabbed(), cut.tabbed()];
        let ends = (low, Point::new(high.x, low.y));
        out.push(level(TrimKind::HeadChannel, ends, length, face, tabs));
        out.push(level(TrimKind::DripCap, ends, length, job.trim.drip_cap_past, square()));
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

/// The channel along a jamb, over a sill and under a head where there are any. Mitered, a jamb runs one face
/// past where it meets a channel; square, it stands between them and has a tab's length more to go down into
/// the sill's.
fn jamb_channel(
    place: &Place,
    (length, low, high): &(f64, Point, Point),
    [sill, head]: [bool; 2],
    cut: &Cut,
) -> TrimPiece {
    let rules = &cut.job.trim;
    let (face, square) = (rules.channel_face, rules.frame == FrameCut::Square);
    let down = if sill && !square { face } else { 0.0 };
    let up = if head && !square { face } else { 0.0 };
    let more = if sill && square { rules.tab } else { 0.0 };
    let (a, b) = (Point::new(low.x, low.y - down), Point::new(low.x, high.y + up));
    let foot = if sill { cut.tabbed() } else { TrimEnd::Square };
    let mut piece = place.piece(TrimKind::JambChannel, a, b, 0.0, [foot, cut.corner(head)]);
    piece.length = crate::geom::tol::snap(length + down + up + more);
    piece
}

/// Whether the like side of another opening goes on where level trim ends, and this one laps over its trim:
/// the first of the two does.
fn goes_on((mine, all): (&[&FieldEdge], &[FieldEdge]), trim: TrimKind, end: Point) -> bool {
    let own = mine.first().and_then(|e| e.opening);
    let kind = if trim == TrimKind::SillChannel { EdgeKind::Sill } else { EdgeKind::Head };
    let at = |e: &FieldEdge| e.from.distance(end) <= SAME || e.to.distance(end) <= SAME;
    all.iter().any(|e| e.kind == kind && e.opening > own && at(e))
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
    // A filler board may part a head or a sill: it is one where all of it is at one height.
    let one = |kind: EdgeKind| {
        let mut heights = sides.iter().filter(|e| e.kind == kind).map(|e| e.from.y);
        let first = heights.next();
        heights.all(|y| first.is_none_or(|f| (y - f).abs() <= SAME))
    };
    let straight =
        |e: &&FieldEdge| (e.from.x - e.to.x).abs() <= SAME || (e.from.y - e.to.y).abs() <= SAME;
    one(EdgeKind::Head) && one(EdgeKind::Sill) && sides.iter().all(straight)
}
