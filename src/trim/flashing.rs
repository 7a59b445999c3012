//! Flashing round openings, cut from the roll, lower pieces first: sill, jambs, head
//! (`TrimFact::SillFlashing`, `TrimFact::JambFlashing`; the head's reach is taken as the sill's:
//! common practice, no source).
//!
//! Openings mulled side by side, with nothing or a filler board between them in one frame, are flashed as one:
//! a strip under all sills and one over all heads, jambs at the outer sides. Common practice, no source.

use super::shaped_flashing;
use super::stock::{Place, part};
use crate::geom::polygon::is_level_rectangle;
use crate::geom::tol::SAME;
use crate::geom::vocabulary::Point;
use crate::job::Job;
use crate::model::house::{DrawnOpening, OpeningSide};
use crate::model::trim::{JAMB_OVER, SILL_PAST, TrimEnd, TrimKind, TrimPiece};

/// How far jamb flashing stops short of the foot of the sill flashing (`TrimFact::JambFlashing`).
const JAMB_SHORT: f64 = 0.5;

/// The last of the openings mulled side by side from one on; none where another stands before it.
fn row_from(openings: &[DrawnOpening], first: usize) -> Option<usize> {
    let next = |a: usize| (0..openings.len()).find(|b| are_mulled(&openings[a], &openings[*b]));
    if openings.iter().any(|before| are_mulled(before, &openings[first])) {
        return None;
    }
    let mut last = first;
    // Each stands to the right of the one before.
    while let Some(further) = next(last) {
        last = further;
    }
    Some(last)
}

/// Whether an opening stands to the right of another, as high, in one frame with it.
fn are_mulled(a: &DrawnOpening, b: &DrawnOpening) -> bool {
    let near = |u: f64, v: f64| (u - v).abs() <= SAME;
    let ((left, right, ..), (next, ..)) = (a.sides(), b.sides());
    let ((_, own_right, low, high), (own_next, _, l, h)) = (a.own_sides(), b.own_sides());
    let level = is_level_rectangle(&a.outline) && is_level_rectangle(&b.outline);
    let alike =
        [OpeningSide::Sill, OpeningSide::Head].iter().all(|s| a.ends_at(*s) == b.ends_at(*s));
    level
        && near(right, next)
        && next > left
        && own_next >= own_right - SAME
        && near(low, l)
        && near(high, h)
        && a.kind.has_sill() == b.kind.has_sill()
        && alike
        && a.ends_at(OpeningSide::Right)
        && b.ends_at(OpeningSide::Left)
}

pub(super) fn pieces(place: &Place, job: &Job) -> Vec<TrimPiece> {
    let mut out = Vec::new();
    let openings = &place.wall.openings;
    for (i, o) in openings.iter().enumerate() {
        if !is_level_rectangle(&o.outline) {
            out.extend(shaped_flashing::flashing(place, o, job));
            continue;
        }
        // Of a row the first has the flashing of all.
        let Some(last) = row_from(openings, i).map(|i| &openings[i]) else { continue };
        // A surround stands on the flashing: sizes are the opening's own.
        let inset = |side| if o.ends_at(side) { job.trim.surround } else { 0.0 };
        let (left, _, low, high) = o.own_sides();
        let (_, right, ..) = last.own_sides();
        let (left, right) = (left + inset(OpeningSide::Left), right - inset(OpeningSide::Right));
        let high = high - inset(OpeningSide::Head);
        let low = if o.kind.has_sill() { low + inset(OpeningSide::Sill) } else { low };
        // Where the opening goes on over stone or another cladding, its flashing is not ours.
        let sill = o.kind.has_sill() && o.ends_at(OpeningSide::Sill);
        let ends =
            |side| if side == OpeningSide::Right { last.ends_at(side) } else { o.ends_at(side) };
        let past = |side| if ends(side) { SILL_PAST } else { 0.0 };
        let (from, to) = (left - past(OpeningSide::Left), right + past(OpeningSide::Right));
        let head = o.ends_at(OpeningSide::Head);
        let over = if head { JAMB_OVER } else { 0.0 };
        let half = SILL_PAST / 2.0;
        let p = |x: f64, y: f64| Point::new(x, y);
        let down = if sill { SILL_PAST - JAMB_SHORT } else { 0.0 };
        let mut lines = Vec::new();
        if sill {
            let y = low - half;
            lines.push((TrimKind::SillFlashing, p(from, y), p(to, y)));
        }
        for (side, x) in [(OpeningSide::Left, left - half), (OpeningSide::Right, right + half)] {
            if ends(side) {
                lines.push((TrimKind::JambFlashing, p(x, low - down), p(x, high + over)));
            }
        }
        if head {
            let y = high + half;
            lines.push((TrimKind::HeadFlashing, p(from, y), p(to, y)));
        }
        // Of an opening whose surround is wider than what of it stands in this wall, a strip may end before it
        // begins: it stands in the frame's own wall.
        lines.retain(|(_, a, b)| b.x > a.x + SAME || b.y > a.y + SAME);
        for (kind, a, b) in lines {
            let mut whole = place.piece(kind, a, b, 0.0, [TrimEnd::Square, TrimEnd::Square]);
            whole.opening = Some(o.id.clone());
            out.extend(part(whole, job.takeoff.flashing_roll, 0.0));
        }
    }
    out
}
