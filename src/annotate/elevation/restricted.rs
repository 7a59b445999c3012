//! Restricted access: a short run between two receivers, where a panel cannot be slid in sideways
//! (`LayoutFact::RestrictedAccess`, common practice, no source).

use super::view::View;
use crate::annotate::canvas::{Canvas, Look, Mark};
use crate::annotate::elevation_index::AtElevation;
use crate::model::work::RestrictedAccess;
use crate::wording::restricted::MARK;

/// Places with restricted access of an elevation.
pub(super) fn places_of<'a>(on: &AtElevation<'a>) -> impl Iterator<Item = &'a RestrictedAccess> {
    on.work.iter().flat_map(|w| &w.restricted)
}

/// Marks each once.
pub(super) fn marks(c: &mut Canvas, on: &AtElevation, v: &View) {
    let text = &v.say.word(MARK);
    for s in places_of(on) {
        let (x, y) = ((s.x[0] + s.x[1]) / 2.0, (s.y[0] + s.y[1]) / 2.0);
        if !v.holds(x, y) {
            continue;
        }
        // Off the middle, where the mark of the piece stands.
        let wide = s.x[1] - s.x[0];
        let spots = [0.12, 0.88, 0.25, 0.75].map(|k| v.at(s.x[0] + k * wide, y));
        let mark = |target| Mark { text, target, wish: target, reach: 1.0, look: Look::Dotted };
        let far = |target| Mark { reach: 3.0, ..mark(target) };
        if !spots.iter().any(|t| c.mark_off_work(far(*t)).is_some())
            && !spots.iter().any(|t| c.mark_clear(mark(*t)).is_some())
        {
            c.mark(mark(spots[0]));
        }
    }
}
