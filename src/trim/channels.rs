//! Channels and finish trim along the sides of a wall: eaves, rakes, wall ends, lower roofs, and
//! starts off the course line.

use super::stock::{LEAST_ALONG, Place, part};
use crate::geom::tol::{CUT, SAME, plumb};
use crate::geom::vocabulary::Point;
use crate::job::{Job, TopFinish};
use crate::model::house::EdgeKind;
use crate::model::receiver::{Field, FieldEdge, Receiver};
use crate::model::trim::{TrimEnd, TrimKind, TrimPiece};
use crate::real::Real;

pub(super) fn pieces(place: &Place, field: &Field, job: &Job) -> Vec<TrimPiece> {
    let sides = merged(&field.edges);
    sides
        .iter()
        .filter(|e| e.opening.is_none() && e.from.distance(e.to) >= LEAST_ALONG)
        .flat_map(|e| kinds(e, job).iter().map(move |k| (*k, e)))
        .flat_map(|(kind, e)| {
            let (a, b) = rightward(e);
            let ends = [miter(&sides, e, a), miter(&sides, e, b)];
            let whole = place.piece(kind, a, b, 0.0, ends);
            // Lengths of channel lap by one face so that water runs over the joint; boards butt.
            let lap = match kind {
                TrimKind::TopFace | TrimKind::TopPanel | TrimKind::Crown => 0.0,
                _ => job.trim.channel_face,
            };
            part(whole, job.stock(kind.stock()), lap)
        })
        .collect()
}

fn kinds(e: &FieldEdge, job: &Job) -> &'static [TrimKind] {
    match (e.kind, e.receiver) {
        // Boards butt against trim of others' making.
        (_, Receiver::Starter | Receiver::Trim) => &[],
        (_, Receiver::TopFinish) => match job.trim.top {
            TopFinish::FinishTrim => &[TrimKind::FinishTrim],
            TopFinish::TwoPiece => &[TrimKind::TopBase, TrimKind::TopFace],
            TopFinish::TopPanel => &[TrimKind::TopPanel],
            TopFinish::Crown => &[TrimKind::TopBase, TrimKind::Crown],
        },
        (EdgeKind::Eave | EdgeKind::BareBottom, _) => &[TrimKind::FinishTrim],
        (EdgeKind::Rake, _) => &[TrimKind::RakeChannel],
        (EdgeKind::LowerRoof, _) => &[TrimKind::RoofChannel],
        // A cut bottom is held as a cut top is (TrimFact::CutFirstCourse).
        (EdgeKind::Base | EdgeKind::BareTop, _) => &[TrimKind::FinishTrim],
        (EdgeKind::Abutment, _) => &[TrimKind::WallChannel],
        _ => &[],
    }
}

fn rightward(e: &FieldEdge) -> (Point, Point) {
    let swap = e.to.x < e.from.x - SAME || ((e.to.x - e.from.x).abs() <= SAME && e.to.y < e.from.y);
    if swap { (e.to, e.from) } else { (e.from, e.to) }
}

/// Consecutive sides of one kind in one line, joined: no corner between lies farther off the line than
/// what reads as straight. The chords of a curve make as many lines as it takes.
pub(super) fn merged(edges: &[FieldEdge]) -> Vec<FieldEdge> {
    let mut out: Vec<FieldEdge> = Vec::new();
    // Corners that the last of them goes straight past.
    let mut passed: Vec<Point> = Vec::new();
    for e in edges {
        if let Some(last) = out.last_mut() {
            let (u, v, whole) = (last.to - last.from, e.to - e.from, e.to - last.from);
            let off = |p: &Point| whole.cross(*p - last.from).abs() / whole.hypot().max(SAME);
            if last.to.distance(e.from) < SAME
                && (last.kind, last.opening, last.receiver) == (e.kind, e.opening, e.receiver)
                && u.dot(v) > 0.0
                && passed.iter().chain([&e.from]).all(|p| off(p) <= CUT)
            {
                passed.push(e.from);
                last.to = e.to;
                continue;
            }
        }
        passed.clear();
        out.push(e.clone());
    }
    out
}

/// A miter where two rakes meet: half the angle between them, off square. Where a rake's foot meets
/// a plumb side, its end is cut plumb: off square by the rake's own angle.
fn miter(sides: &[FieldEdge], e: &FieldEdge, end: Point) -> TrimEnd {
    if e.kind != EdgeKind::Rake {
        return TrimEnd::Square;
    }
    let other = sides.iter().find(|o| {
        o.kind == EdgeKind::Rake
            && !std::ptr::eq(*o, e)
            && (o.from.distance(end) < SAME || o.to.distance(end) < SAME)
    });
    match other {
        Some(o) => {
            let away = |s: &FieldEdge| {
                if s.from.distance(end) < s.to.distance(end) {
                    s.to - s.from
                } else {
                    s.from - s.to
                }
            };
            let (u, v) = (away(e), away(o));
            let between = (u.dot(v) / (u.hypot() * v.hypot())).clamp(-1.0, 1.0).arc_cosine();
            TrimEnd::Miter(90.0 - between.to_degrees() / 2.0)
        }
        None => {
            let plumb = sides.iter().any(|o| {
                let at = |p: Point| p.distance(end) < SAME;
                // Chords of a curve, each of them plumb, lean together by more.
                let corner = matches!(o.kind, EdgeKind::OutsideCorner | EdgeKind::InsideCorner);
                let upright = corner || plumb(o.to.x - o.from.x) || o.kind == EdgeKind::Abutment;
                upright && o.opening.is_none() && (at(o.from) || at(o.to))
            });
            let rise = e.to - e.from;
            if plumb {
                TrimEnd::Miter(rise.y.abs().angle_over(rise.x.abs()).to_degrees())
            } else {
                TrimEnd::Square
            }
        }
    }
}
