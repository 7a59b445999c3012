//! Flashing round openings, cut from the roll, lower pieces first: sill, jambs, head (FACTS SD-102,
//! SD-103; the head's reach is taken as the sill's: common practice, no source).

use super::stock::{Place, part};
use crate::geom::vocabulary::Point;
use crate::job::Job;
use crate::model::house::OpeningKind;
use crate::model::trim::{JAMB_OVER, SILL_PAST, TrimEnd, TrimKind, TrimPiece};

/// How far jamb flashing stops short of the foot of the sill flashing (FACTS SD-103, VSI-A).
const JAMB_SHORT: f64 = 0.5;

pub(super) fn pieces(place: &Place, job: &Job) -> Vec<TrimPiece> {
    let mut out = Vec::new();
    for o in &place.wall.openings {
        // A surround stands on the flashing: sizes are the opening's own.
        let w = job.trim.surround;
        let sill = matches!(o.kind, OpeningKind::Window | OpeningKind::Vent);
        let (left, right, low, high) = o.sides();
        let (left, right, high) = (left + w, right - w, high - w);
        let low = if sill { low + w } else { low };
        let half = SILL_PAST / 2.0;
        let p = |x: f64, y: f64| Point::new(x, y);
        let down = if sill { SILL_PAST - JAMB_SHORT } else { 0.0 };
        let mut lines = Vec::new();
        if sill {
            let y = low - half;
            lines.push((TrimKind::SillFlashing, p(left - SILL_PAST, y), p(right + SILL_PAST, y)));
        }
        for x in [left - half, right + half] {
            lines.push((TrimKind::JambFlashing, p(x, low - down), p(x, high + JAMB_OVER)));
        }
        let y = high + half;
        lines.push((TrimKind::HeadFlashing, p(left - SILL_PAST, y), p(right + SILL_PAST, y)));
        for (kind, a, b) in lines {
            let mut whole = place.piece(kind, a, b, 0.0, [TrimEnd::Square, TrimEnd::Square]);
            whole.opening = Some(o.id.clone());
            out.extend(part(whole, job.takeoff.flashing_roll, 0.0));
        }
    }
    out
}
