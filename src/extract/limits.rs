//! What is no wall of a house, whatever it is: refused by name, before it costs hours. The figures are
//! of our own choosing: no source.

use super::frame::ViewFrame;
use super::outline::Outline;
use crate::diag::Note;
use crate::job::WIDEST;
use crate::model::house::DrawnWall;

/// Most sides of one outline: a wall with a dozen round gables has some hundreds.
const MOST_SIDES: usize = 10_000;
/// Highest wall, inches: 200 ft.
const HIGHEST: f64 = 2_400.0;
/// Areas smaller than this, square inches, are drawing noise: a 1/4 in strip of a storey's height.
pub(super) const NOISE: f64 = 24.0;
/// Most walls of one elevation: a terrace of fifty houses has some hundreds.
const MOST_WALLS: usize = 500;
/// Most openings on one wall, and most fixtures: a block of flats drawn as one outline has some hundreds.
const MOST_HOLES: usize = 1_000;
/// Most faults of one kind in a view that are told one by one.
pub(super) const MOST_TOLD: usize = 100;

/// Why an outline is not laid out, if it is more than any house has.
pub(super) fn too_much(local: &ViewFrame, o: &Outline) -> Option<Note> {
    let frame = o.frame();
    let length = |inches: f64| local.job.sheet.lengths.length(inches);
    let (sides, wide, high) = (o.ring.len(), frame.width(), frame.height());
    let note = if sides > MOST_SIDES {
        let message = format!(
            "a wall outline on layer {} has {sides} corners; the most laid out is {MOST_SIDES}",
            o.origin.layer
        );
        let help =
            "Draw the wall's outline anew, with lines from corner to corner and arcs for curves.";
        Note::error("wall-too-fine", message, help)
    } else if wide > WIDEST || high > HIGHEST {
        let message = format!(
            "a wall outline on layer {} is {} wide and {} high; the most laid out is {} by {}",
            o.origin.layer,
            length(wide),
            length(high),
            length(WIDEST),
            length(HIGHEST)
        );
        let help = "Check the unit or the known distance: the drawing may be at another scale than the job says.";
        Note::error("wall-too-big", message, help)
    } else {
        return None;
    };
    let at = local.source(frame.center());
    Some(note.about(&o.origin).at(at).on(&local.view.name))
}

/// A wall with more openings or fixtures than any has.
pub(super) fn too_many_holes(local: &ViewFrame, w: &DrawnWall) -> Option<Note> {
    let all = [("openings", w.openings.len()), ("fixtures", w.obstacles.len())];
    let (what, n) = all.into_iter().find(|(_, n)| *n > MOST_HOLES)?;
    let message = format!(
        "a wall on layer {} has {n} {what}; the most laid out is {MOST_HOLES}",
        w.origin.layer
    );
    let help = "Draw the wall as several outlines, or take off the layer what is none.";
    let at = local.source(crate::geom::polygon::bounds(&w.outline).unwrap_or_default().center());
    Some(Note::error("wall-too-full", message, help).about(&w.origin).at(at).on(&local.view.name))
}

/// An elevation with more walls than any has.
pub(super) fn too_many_walls(view: &str, walls: usize) -> Option<Note> {
    if walls <= MOST_WALLS {
        return None;
    }
    let message = format!("{view} has {walls} walls; the most laid out is {MOST_WALLS}");
    let help = "Check what is on the wall layer, or frame each elevation as a view of its own.";
    Some(Note::error("walls-too-many", message, help).on(view))
}
