//! Flashing round openings, cut from the roll, lower pieces first: sill, jambs, head
//! (`TrimFact::SillFlashing`, `TrimFact::JambFlashing`; the head's reach is taken as the sill's:
//! common practice, no source).

use super::shaped_flashing;
use super::stock::{Place, part};
use crate::geom::polygon::is_level_rectangle;
use crate::geom::vocabulary::Point;
use crate::job::Job;
use crate::model::house::OpeningSide;
use crate::model::trim::{JAMB_OVER, SILL_PAST, TrimEnd, TrimKind, TrimPiece};

/// How far jamb flashing stops short of the foot of the sill flashing (`TrimFact::JambFlashing`).
const JAMB_SHORT: f64 = 0.5;

pub(super) fn pieces(place: &Place, job: &Job) -> Vec<TrimPiece> {
    let mut out = Vec::new();
    for o in &place.wall.openings {
        if !is_level_rectangle(&o.outline) {
            out.extend(shaped_flashing::flashing(place, o, job));
            continue;
        }
        // A surround stands on the flashing: sizes are the opening's own.
        let inset = |side| if o.ends_at(side) { job.trim.surround } else { 0.0 };
        let (left, right, low, high) = o.own_sides();
        let (left, right) = (left + inset(OpeningSide::Left), right - inset(OpeningSide::Right));
        let high = high - inset(OpeningSide::Head);
        let low = if o.kind.has_sill() { low + inset(OpeningSide::Sill) } else { low };
        // Where the opening goes on over stone or another cladding, its flashing is not ours.
        let sill = o.kind.has_sill() && o.ends_at(OpeningSide::Sill);
        let past = |side| if o.ends_at(side) { SILL_PAST } else { 0.0 };
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
            if o.ends_at(side) {
                lines.push((TrimKind::JambFlashing, p(x, low - down), p(x, high + over)));
            }
        }
        if head {
            let y = high + half;
            lines.push((TrimKind::HeadFlashing, p(from, y), p(to, y)));
        }
        for (kind, a, b) in lines {
            let mut whole = place.piece(kind, a, b, 0.0, [TrimEnd::Square, TrimEnd::Square]);
            whole.opening = Some(o.id.clone());
            out.extend(part(whole, job.takeoff.flashing_roll, 0.0));
        }
    }
    out
}
