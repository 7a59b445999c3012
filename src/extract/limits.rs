//! What is no wall of a house, whatever it is: refused by name, before it costs hours. The figures are
//! of our own choosing: no source.

use super::frame::ViewFrame;
use super::outline::Outline;
use crate::finding::Finding;
use crate::finding::house::{HouseFinding, OnWall};
use crate::finding::views::ViewFinding;
use crate::job::WIDEST;
use crate::model::house::DrawnWall;

/// Most sides of one outline: a wall with a dozen round gables has some hundreds.
const MOST_SIDES: usize = 10_000;
/// Highest wall, inches: 200 ft.
const HIGHEST: f64 = 2_400.0;
/// Areas smaller than this, square inches, are drawing noise: a 1/4 in strip of a story's height.
pub(super) const NOISE: f64 = 24.0;
/// Most walls of one elevation: a terrace of fifty houses has some hundreds.
const MOST_WALLS: usize = 500;
/// Most openings on one wall, and most fixtures: a block of flats drawn as one outline has some hundreds.
const MOST_HOLES: usize = 1_000;
/// Most faults of one kind in a view that are told one by one.
pub(super) const MOST_TOLD: usize = 100;

/// Why an outline is not laid out, if it is more than any house has.
pub(super) fn too_much(local: &ViewFrame, o: &Outline) -> Option<Finding> {
    let frame = o.frame();
    let (corners, width, height) = (o.ring.len(), frame.width(), frame.height());
    let kind = if corners > MOST_SIDES {
        HouseFinding::WallTooFine { corners, most: MOST_SIDES }
    } else if width > WIDEST || height > HIGHEST {
        HouseFinding::WallTooBig { width, height, most_width: WIDEST, most_height: HIGHEST }
    } else {
        return None;
    };
    let at = local.source(frame.center());
    Some(Finding::new(kind).about(&o.origin).at(at).on(&local.view.name))
}

/// A wall with more openings or fixtures than any has.
pub(super) fn too_many_holes(local: &ViewFrame, w: &DrawnWall) -> Option<Finding> {
    let all = [(OnWall::Openings, w.openings.len()), (OnWall::Fixtures, w.obstacles.len())];
    let (of_what, count) = all.into_iter().find(|(_, n)| *n > MOST_HOLES)?;
    let kind = HouseFinding::WallTooFull { of_what, count, most: MOST_HOLES };
    let at = local.source(crate::geom::polygon::bounds(&w.outline).unwrap_or_default().center());
    Some(Finding::new(kind).about(&w.origin).at(at).on(&local.view.name))
}

/// An elevation with more walls than any has.
pub(super) fn too_many_walls(view: &str, walls: usize) -> Option<Finding> {
    if walls <= MOST_WALLS {
        return None;
    }
    Some(Finding::new(ViewFinding::WallsTooMany { walls, most: MOST_WALLS }).on(view))
}
