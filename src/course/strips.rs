//! Strips lower than the least, as they are cut: what is said of the datum in force is what is laid on it.

use crate::geom::tol::CUT;
use crate::layout::course::LaidCourse;
use crate::layout::laid::LaidHouse;
use crate::layout::piece::Piece;
use crate::layout::wall::{LaidFiller, LaidWall};
use crate::model::filler::FilledTo;
use crate::model::notch::{Notch, NotchSide};
use crate::model::pole::{StripPlace, ThinStrips};

/// Thin strips of a layout by place.
pub fn laid(layout: &LaidHouse) -> Vec<ThinStrips> {
    let least = layout.job.least_strip();
    let mut out: Vec<ThinStrips> = Vec::new();
    for (w, c, _, p) in layout.pieces() {
        for (place, along, left) in of_piece(w, c, p) {
            if left >= least || left <= CUT {
                continue;
            }
            let Some(has) = out.iter_mut().find(|t| t.place == place) else {
                out.push(ThinStrips { place, along, least: Some(left) });
                continue;
            };
            has.along += along;
            has.least = has.least.map(|l| l.min(left));
        }
    }
    out.sort_by_key(|t| t.place);
    out
}

/// Strips that skirt boards take the place of.
pub fn skirted(layout: &LaidHouse) -> Vec<ThinStrips> {
    let clear = layout.job.courses.notch_clearance;
    let fillers = layout.walls().flat_map(|(_, w)| &w.fillers);
    let skirts: Vec<&LaidFiller> =
        fillers.filter(|f| f.between.iter().any(|s| s.to == FilledTo::Course)).collect();
    let along = skirts.iter().map(|f| f.length).sum();
    let least = skirts.iter().map(|f| f.width - clear).reduce(f64::min);
    let strips = least.map(|_| ThinStrips { place: StripPlace::AtStarts, along, least });
    strips.into_iter().collect()
}

/// What a rip and notches leave of a piece: where, how long, how high.
fn of_piece<'a>(
    w: &'a LaidWall,
    c: &'a LaidCourse,
    p: &'a Piece,
) -> impl Iterator<Item = (StripPlace, f64, f64)> + 'a {
    let height = p.rip.as_ref().map_or(c.top - c.bottom, |r| r.to - r.from);
    let ripped = p.rip.as_ref().map(|r| {
        let place = if r.from > 0.0 { StripPlace::AtStarts } else { StripPlace::AtTops };
        (place, p.length, height)
    });
    let notched = p.notches.iter().filter_map(move |n| {
        let place = beside(w, n)?;
        Some((place, n.told_width(), height - n.depth))
    });
    ripped.into_iter().chain(notched)
}

/// Over or under what a notch goes round; none for a slot or a hole.
fn beside(w: &LaidWall, n: &Notch) -> Option<StripPlace> {
    let over = match n.side {
        NotchSide::Bottom => true,
        NotchSide::Top => false,
        NotchSide::Left | NotchSide::Right | NotchSide::Hole => return None,
    };
    let of_opening = n.around.iter().any(|id| w.openings.iter().any(|o| o.id.as_str() == &**id));
    Some(match (of_opening, over) {
        (true, true) => StripPlace::OverHeads,
        (true, false) => StripPlace::UnderSills,
        (false, _) if !n.around.is_empty() => StripPlace::AtFixtures,
        (false, true) => StripPlace::AtStarts,
        (false, false) => StripPlace::AtTops,
    })
}
