//! Filler boards where no siding goes, ripped to the width of their place: common practice, no source.

use super::stock::{Place, part};
use crate::geom::vocabulary::Point;
use crate::job::Job;
use crate::model::filler::DrawnFiller;
use crate::model::trim::{TrimEnd, TrimKind, TrimPiece};

/// The boards of one wall, along the middle of their places.
pub(super) fn pieces(place: &Place, job: &Job) -> Vec<TrimPiece> {
    place.wall.fillers.iter().flat_map(|f| board(place, f, job)).collect()
}

fn board(place: &Place, f: &DrawnFiller, job: &Job) -> Vec<TrimPiece> {
    let (r, c) = (f.place, f.place.center());
    let (a, b) = if f.upright {
        (Point::new(c.x, r.y0), Point::new(c.x, r.y1))
    } else {
        (Point::new(r.x0, c.y), Point::new(r.x1, c.y))
    };
    let square = [TrimEnd::Square, TrimEnd::Square];
    let whole = place.piece(TrimKind::Filler, a, b, 0.0, square);
    let whole = TrimPiece { width: Some(f.width()), ..whole };
    part(whole, job.stock(TrimKind::Filler.stock()), 0.0)
}
