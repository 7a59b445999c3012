//! What is done to the cut edges of pieces: a panel ripped along its length has no nail hem left and
//! is held by nail slots or snap-lock lugs instead (`TrimFact::NailSlots`, `TrimFact::LugSpacing`,
//! `TrimFact::UndersillLugs`).

use std::collections::BTreeMap;

use crate::geom::tol::CUT;
use crate::geom::vocabulary::{Point, Xy};
use crate::job::Job;
use crate::job::siding::system::CutEdgeRule;
use crate::layout::course::LaidCourse;
use crate::layout::piece::{EdgeWork, Piece};
use crate::model::hold::Hold;
use crate::model::house::{EdgeKind, House};
use crate::model::notch::LEAST_HEM_CUT;
use crate::model::receiver::{Field, FieldEdge};
use crate::model::trim::{TrimKind, TrimPiece};
use crate::real::Real;

/// A cut this near under the top of a face leaves the panel lying on the wall there, inches: common
/// practice, no source (`TrimFact::FurredUndersill` says only that it hangs on the panel).
const FLUSH: f64 = 0.5;

/// Tells every piece what is done to its cut edges; `courses[i]` are those of `fields[i]`. Trim must be
/// known: what stands over an edge decides what holds it.
pub fn tell(
    courses: &mut [Vec<LaidCourse>],
    house: &House,
    fields: &[Field],
    trims: &[TrimPiece],
    job: &Job,
) {
    // What is nailed through its face has no hem to lose.
    if job.siding().cut_edge == CutEdgeRule::FaceNails {
        return;
    }
    let mut finish_trim: BTreeMap<&str, Vec<&TrimPiece>> = BTreeMap::new();
    for t in trims.iter().filter(|t| t.kind == TrimKind::FinishTrim) {
        finish_trim.entry(&t.wall).or_default().push(t);
    }
    for (field, courses) in fields.iter().zip(courses) {
        let of = house.elevations.get(field.elevation).and_then(|e| e.walls.get(field.wall));
        let finish = of.and_then(|w| finish_trim.get(w.id.as_str())).map_or(&[][..], Vec::as_slice);
        for c in courses {
            let line = (c.bottom, c.top);
            for p in c.runs.iter_mut().flat_map(|r| &mut r.pieces) {
                p.edge_work = work(p, line, &field.edges, finish, job);
            }
        }
    }
}

/// How many lie along an edge at even places: no two farther apart than the spacing, the outer ones
/// within half of it from the ends.
fn along(length: f64, spacing: f64) -> u32 {
    ((length - CUT) / spacing).ceil().max(1.0) as u32
}

fn work(
    p: &Piece,
    (bottom, top): (f64, f64),
    edges: &[FieldEdge],
    finish: &[&TrimPiece],
    job: &Job,
) -> EdgeWork {
    let rules = &job.courses;
    let reach = rules.notch_clearance + job.pocket();
    let mut out = EdgeWork::default();
    let mut hem = false;
    let mut slopes = false;
    for (a, b) in upper_sides(p) {
        let (left, right) = (a[0].min(b[0]), a[0].max(b[0]));
        let length = (a[0] - b[0]).hypotenuse(a[1] - b[1]);
        if (a[1] - b[1]).abs() > CUT {
            let is_held = hold_slanting(&mut out, (a, b), (edges, finish), job);
            slopes |= !is_held;
            continue;
        }
        let y = a[1];
        let at_top = y >= top - CUT;
        // On the course line the hem goes on over the edge, unless something stands there; less than comes off
        // with a hem is never kept clear.
        let reach = if at_top { rules.notch_clearance.max(LEAST_HEM_CUT) } else { reach };
        let over = |u: f64, v: f64| (u.max(v).min(right) - u.min(v).max(left)).max(0.0);
        let trimmed: f64 = finish
            .iter()
            .filter(|t| (t.from[1] - t.to[1]).abs() < CUT)
            .filter(|t| (-CUT..=reach + CUT).contains(&(t.from[1] - y)))
            .map(|t| over(t.from[0], t.to[0]))
            .sum();
        let ends_wall = edges.iter().any(|e| {
            matches!(e.kind, EdgeKind::Eave | EdgeKind::BareBottom)
                && (-CUT..=reach + CUT).contains(&(e.from.y - y))
                && (e.from.y - e.to.y).abs() < CUT
                && over(e.from.x, e.to.x) > length / 2.0
        });
        if trimmed > length / 2.0 {
            hold(&mut out, length, job);
            out.furring |= stands_off(y - bottom, job);
        } else if ends_wall {
            out.slots += along(length, rules.slot_spacing);
        } else {
            hem |= at_top;
        }
    }
    // What stands in rake channels takes no lugs: there is no trim for them to catch in.
    if !hem && out.is_none() {
        out.holds.push(if slopes { Hold::FaceNail } else { Hold::ChannelOver });
    }
    hold_below(&mut out, p, bottom, finish, job);
    out.holds.extend(foot(p, bottom, edges, job));
    out.holds.sort_unstable();
    out
}

/// What holds a foot that keeps no lock.
fn foot(p: &Piece, bottom: f64, edges: &[FieldEdge], job: &Job) -> Option<Hold> {
    let room = job.courses.notch_clearance.max(job.end_gap());
    let over = |kind: EdgeKind, (a, b): (Xy, Xy)| {
        let middle = Point::new((a[0] + b[0]) / 2.0, (a[1] + b[1]) / 2.0);
        let mut of_kind = edges.iter().filter(|e| e.kind == kind);
        of_kind.any(|e| away(middle, e.from, e.to) <= room + CUT)
    };
    let is_cut = |(a, b): &(Xy, Xy)| a[1].max(b[1]) > bottom + CUT;
    if lower_sides(p).filter(is_cut).any(|s| over(EdgeKind::LowerRoof, s)) {
        return Some(Hold::RoofChannel);
    }
    let locked = lower_sides(p).any(|s| !is_cut(&s));
    let on_head = || lower_sides(p).any(|s| over(EdgeKind::Head, s));
    (!locked && on_head()).then_some(Hold::HeadChannel)
}

/// Distance of a place from a side.
fn away(p: Point, a: Point, b: Point) -> f64 {
    let side = b - a;
    let share = if side.hypot2() > 0.0 { (p - a).dot(side) / side.hypot2() } else { 0.0 };
    p.distance(a + side * share.clamp(0.0, 1.0))
}

/// Holds a slanting upper edge in the undersill trim over it, or by its slots under a top; false where it stands in
/// neither.
fn hold_slanting(
    out: &mut EdgeWork,
    (a, b): (Xy, Xy),
    (edges, finish): (&[FieldEdge], &[&TrimPiece]),
    job: &Job,
) -> bool {
    let reach = job.courses.notch_clearance + job.pocket();
    let length = (a[0] - b[0]).hypotenuse(a[1] - b[1]);
    let in_trim = under_a_slope(finish, (a, b), reach);
    let under_top = under_a_top(edges, (a, b), reach);
    match () {
        () if in_trim => hold(out, length, job),
        () if under_top => out.slots += along(length, job.courses.slot_spacing),
        () => {}
    }
    in_trim || under_top
}

/// Whether most of a slanting upper edge stands in the undersill trim of a sloped sill or top.
fn under_a_slope(finish: &[&TrimPiece], side: (Xy, Xy), reach: f64) -> bool {
    let mut sloped = finish.iter().filter(|t| (t.to[1] - t.from[1]).abs() > CUT);
    sloped.any(|t| lies_under(side, (t.from, t.to), reach))
}

/// Whether a slanting upper edge runs along a top that was taped out of level.
fn under_a_top(edges: &[FieldEdge], side: (Xy, Xy), reach: f64) -> bool {
    let mut tops = edges.iter().filter(|e| matches!(e.kind, EdgeKind::Eave | EdgeKind::BareBottom));
    tops.any(|e| lies_under(side, ([e.from.x, e.from.y], [e.to.x, e.to.y]), reach))
}

/// Whether the middle of an edge lies under a line by no more than `reach`.
fn lies_under((a, b): (Xy, Xy), (from, to): (Xy, Xy), reach: f64) -> bool {
    let middle = [(a[0] + b[0]) / 2.0, (a[1] + b[1]) / 2.0];
    let (run, rise) = (to[0] - from[0], to[1] - from[1]);
    let share = (middle[0] - from[0]) / run;
    let over = from[1] + share * rise - middle[1];
    run.abs() > CUT && (0.0..=1.0).contains(&share) && (-CUT..=reach + CUT).contains(&over)
}

/// Holds lower edges that stand in trim off their course line.
fn hold_below(out: &mut EdgeWork, p: &Piece, bottom: f64, finish: &[&TrimPiece], job: &Job) {
    let reach = job.courses.notch_clearance + job.pocket();
    // A bottom cut off its course line has no lock left (TrimFact::CutFirstCourse).
    for (a, b) in lower_sides(p).filter(|(a, b)| (a[1] - b[1]).abs() <= CUT) {
        let held = |t: &&&TrimPiece| {
            (t.from[1] - t.to[1]).abs() < CUT
                && (-CUT..=reach + CUT).contains(&(a[1] - t.from[1]))
                && t.from[0].max(t.to[0]).min(b[0]) - t.from[0].min(t.to[0]).max(a[0]) > CUT
        };
        if a[1] > bottom + CUT && finish.iter().any(|t| held(&t)) {
            hold(out, b[0] - a[0], job);
        }
    }
}

/// Adds what holds so long a cut edge in finish trim or under a slope: lugs, or nails where the
/// material takes none.
fn hold(out: &mut EdgeWork, length: f64, job: &Job) {
    let rules = &job.courses;
    if job.siding().cut_edge == CutEdgeRule::TrimNails {
        out.trim_nails += along(length, rules.slot_spacing);
    } else {
        out.lugs += along(length, rules.lug_spacing);
    }
}

/// Sides of the outline, counter-clockwise, that the piece lies under.
fn upper_sides(p: &Piece) -> impl Iterator<Item = (Xy, Xy)> + '_ {
    let next = p.outline.iter().cycle().skip(1);
    p.outline.iter().zip(next).map(|(a, b)| (*a, *b)).filter(|(a, b)| b[0] < a[0] - CUT)
}

/// Sides of the outline that the piece lies over.
fn lower_sides(p: &Piece) -> impl Iterator<Item = (Xy, Xy)> + '_ {
    let next = p.outline.iter().cycle().skip(1);
    p.outline.iter().zip(next).map(|(a, b)| (*a, *b)).filter(|(a, b)| b[0] > a[0] + CUT)
}

/// Whether a panel cut at this height over its butt line stands off the wall there: a face lies
/// flat at its top alone.
fn stands_off(height: f64, job: &Job) -> bool {
    let face = job.product.face();
    let over = height - ((height + CUT) / face).floor() * face;
    over > CUT && over < face - FLUSH
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lugs_and_slots_stand_at_even_places() {
        // 36 1/2 in under a window: at 6 in (TrimFact::UndersillLugs) seven; 16 in
        // (TrimFact::NailSlots) along 12 ft 6 in: ten.
        assert_eq!((along(36.5, 6.0), along(150.0, 16.0)), (7, 10));
        assert_eq!((along(6.0, 6.0), along(6.1, 6.0), along(0.5, 6.0)), (1, 2, 1));
    }

    #[test]
    fn a_cut_at_the_top_of_a_face_needs_no_furring() {
        // Double 4 (SidingFact::DoubleFour): at 4 in the first face ends; 3 3/4 is its thin top, 2
        // stands off, as do 4 1/4 and 6.
        let job = Job::default();
        let found = [4.0, 3.75, 2.0, 4.25, 6.0, 7.75].map(|h| stands_off(h, &job));
        assert_eq!(found, [false, false, true, true, true, false]);
    }
}
