//! Tight places: a short run between two receivers, where a panel cannot be slid in sideways
//! (FACTS PR-12, common practice, no source).

use super::view::View;
use crate::annotate::canvas::{Canvas, Look, Mark};
use crate::annotate::standing::Standing;
use crate::model::work::TightSpot;

/// Tight places of an elevation.
pub(super) fn of<'a>(on: &Standing<'a>) -> impl Iterator<Item = &'a TightSpot> {
    on.work.iter().flat_map(|w| &w.tight)
}

/// Marks each stack of tight runs once.
pub(super) fn places(c: &mut Canvas, on: &Standing, v: &View) {
    for s in of(on) {
        let (x, y) = ((s.x[0] + s.x[1]) / 2.0, (s.y[0] + s.y[1]) / 2.0);
        if !v.holds(x, y) {
            continue;
        }
        // Off the middle, where the mark of the piece stands.
        let wide = s.x[1] - s.x[0];
        let spots = [0.12, 0.88, 0.25, 0.75].map(|k| v.at(s.x[0] + k * wide, y));
        let mark =
            |target| Mark { text: "tight", target, wish: target, reach: 1.0, look: Look::Dotted };
        if !spots.iter().any(|t| c.mark_clear(mark(*t)).is_some()) {
            c.mark(mark(spots[0]));
        }
    }
}
