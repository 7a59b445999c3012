//! Starter strip along every start on a course line, with gaps between lengths and at posts
//! (`TrimFact::StarterGaps`, `TrimFact::StarterLocksFirstCourse`); it breaks at doors, which the
//! field's base leaves out.

use super::stock::{LEAST_ALONG, Place, part};
use crate::geom::vocabulary::Vec2;
use crate::job::Job;
use crate::model::receiver::{Field, Receiver};
use crate::model::trim::{TrimEnd, TrimKind, TrimPiece};

pub(super) fn pieces(place: &Place, field: &Field, job: &Job) -> Vec<TrimPiece> {
    let gap = job.trim_gaps().starter;
    let starts = field.edges.iter().filter(|e| e.receiver == Receiver::Starter);
    starts
        .filter(|e| e.from.distance(e.to) > 2.0 * gap + LEAST_ALONG)
        .flat_map(|e| {
            let (a, b) = if e.from.x < e.to.x { (e.from, e.to) } else { (e.to, e.from) };
            let inset = Vec2::new(gap, 0.0);
            let square = [TrimEnd::Square, TrimEnd::Square];
            let whole = place.piece(TrimKind::Starter, a + inset, b - inset, 0.0, square);
            part(whole, job.trim.starter, -gap)
        })
        .collect()
}
