//! What is no wall of a house, whatever it is: refused by name, before it costs hours. The figures are
//! of our own choosing: no source.

use super::frame::ViewFrame;
use super::outline::Outline;
use super::views::View;
use crate::finding::Finding;
use crate::finding::house::{HouseFinding, OnWall};
use crate::finding::views::ViewFinding;
use crate::job::WIDEST;
use crate::model::house::DrawnWall;
use crate::model::linework::{Linework, Role, Stroke};

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
/// Most corners of an outline of something on a wall: a round one, in chords, has some hundreds.
const MOST_CORNERS: usize = 2_000;
/// Most outlines of a sort in one elevation: a terrace of fifty houses has some hundreds.
const MOST_OF_SORT: [(Role, usize); 3] =
    [(Role::Roof, 5_000), (Role::Band, 500), (Role::Bare, 500)];
/// Most points of the lines of grade of one elevation: a drawn one has some dozens.
const MOST_OF_GRADE: usize = 2_000;
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

/// An outline of something on a wall with more corners than any has.
pub(super) fn too_fine(lines: &Linework) -> Option<Finding> {
    let most = MOST_CORNERS;
    let on_wall = |s: &&Stroke| s.role.is_some_and(|r| r.is_outline() && r != Role::Wall);
    let stroke = lines.strokes.iter().filter(on_wall).find(|s| s.points.len() > most)?;
    let kind = HouseFinding::OutlineTooFine { corners: stroke.points.len(), most };
    let at = lines.source(stroke.points[0]);
    Some(Finding::new(kind).about(&stroke.origin).at(at))
}

/// An elevation with more roofs, bands or bare areas than any has.
pub(super) fn too_many_outlines(lines: &Linework, view: &View) -> Option<Finding> {
    MOST_OF_SORT.iter().find_map(|(role, most)| {
        let of_sort = || view.strokes(lines).filter(|s| s.role == Some(*role));
        let count = of_sort().count();
        let first = of_sort().next().filter(|_| count > *most)?;
        let kind = HouseFinding::OutlinesTooMany { count, most: *most };
        Some(Finding::new(kind).about(&first.origin).on(&view.name))
    })
}

/// Lines of grade with more points than any have.
pub(super) fn too_fine_grade(view: &str, points: usize) -> Option<Finding> {
    let most = MOST_OF_GRADE;
    (points > most).then(|| Finding::new(HouseFinding::GradeTooFine { points, most }).on(view))
}

/// An elevation with more walls than any has.
pub(super) fn too_many_walls(view: &str, walls: usize) -> Option<Finding> {
    if walls <= MOST_WALLS {
        return None;
    }
    Some(Finding::new(ViewFinding::WallsTooMany { walls, most: MOST_WALLS }).on(view))
}
