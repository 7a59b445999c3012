//! An elevation, or one wall of it, as drawn on a sheet: panels with courses, seams and marks, trim,
//! dimensions.

pub(super) mod breaks;
mod corners;
mod dims;
mod failed;
mod flashing;
mod ground;
pub(super) mod labels;
pub(super) mod marks;
mod openings;
mod restricted;
mod revised;
pub(super) mod round;
mod slopes;
mod trims;
pub(super) mod view;
mod walls;

use std::collections::BTreeSet;

use view::View;

use super::canvas::Canvas;
use super::elevation_index::AtElevation;
use crate::geom::vocabulary::Rect;
use crate::layout::Layout;
use crate::layout::wall::LaidElevation;
use crate::model::house::Backdrop;
use crate::wording::legend;

/// How much of what stands there a drawing says.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Shows {
    /// Every piece with its mark and length, every trim with its mark.
    Pieces,
    /// The same, but marks of trim stand in a view of their own.
    PiecesAlone,
    /// Marks of trim alone.
    Trim,
    /// What a revision changes, without marks of pieces and trim: it is no sheet to cut by.
    Changes,
    /// What the house looks like, with names of walls and openings.
    Overview,
}

/// What is drawn.
#[derive(Clone, Copy)]
pub(super) struct Shown<'a> {
    pub(super) layout: &'a Layout,
    pub(super) elevation: &'a LaidElevation,
    /// The source's own lines.
    pub(super) behind: &'a [Backdrop],
    pub(super) on: &'a AtElevation<'a>,
    pub(super) shows: Shows,
}

/// Marks that found no room, and names of places that break a rule.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct LeftOff {
    pub(super) marks: usize,
    pub(super) names: usize,
    /// Marks of trim that stand over what is built.
    pub(super) crowded: usize,
}

/// Draws it within `body`.
pub(super) fn draw(
    c: &mut Canvas,
    s: &Shown,
    view: &View,
    body: Rect,
    next: &dyn Fn(i32, i32) -> Option<usize>,
) -> LeftOff {
    let area = std::mem::replace(&mut c.placer.area, body);
    c.clip = Some(view.clip(body));
    shapes(c, s, view);
    c.clip = None;
    labels::match_lines(c, view, next);
    let left = words(c, s, view);
    c.placer.area = area;
    left
}

/// What is drawn to scale: walls, openings, pieces, seams, ground and trim.
fn shapes(c: &mut Canvas, s: &Shown, view: &View) {
    let pockets = s.layout.job.siding().receivers.has_pockets();
    if s.shows == Shows::Overview {
        ground::backdrop(c, s.behind, view);
    }
    let seen_from = s.on.work.first().map(|w| w.seen_from);
    for wall in &s.elevation.walls {
        if s.shows != Shows::Trim {
            walls::panels(c, wall, view);
        }
        walls::outlines(c, wall, view);
        openings::outlines(c, wall, view);
        if s.shows != Shows::Trim {
            let laps = pockets && s.shows != Shows::Overview;
            walls::seams(c, wall, view, laps.then_some(seen_from.unwrap_or(view.house.x0)));
        }
    }
    breaks::shapes(c, s.on, s.elevation, view);
    failed::circles(c, s.on, view);
    ground::ground(c, s.elevation, view);
    trims::lines(c, s.on, view);
    if s.shows != Shows::Trim {
        revised::clouds(c, s.on, view);
    }
}

/// Dimensions, names and marks.
fn words(c: &mut Canvas, s: &Shown, view: &View) -> LeftOff {
    let (e, on) = (s.elevation, s.on);
    let revised = match s.shows {
        Shows::Trim => 0,
        shows => revised::marks(c, on, view, shows != Shows::Overview),
    };
    if s.shows == Shows::Trim {
        let (marks, crowded) = trims::marks(c, on, e, view);
        return LeftOff { marks, names: 0, crowded };
    }
    dims::heights(c, e, view, &checks(on));
    for wall in &e.walls {
        openings::names(c, wall, view, s.shows == Shows::Overview);
    }
    dims::widths(c, e, view);
    if s.shows != Shows::Overview {
        dims::upright(c, e, view);
    }
    slopes::slopes(c, e, view);
    let mut left = LeftOff { marks: revised, ..LeftOff::default() };
    if s.shows == Shows::Overview {
        failed::numbers(c, on, view);
        marks::names(c, e, view);
        ground::bare(c, e, s.behind, view);
    } else if s.shows == Shows::Changes {
        ground::bare(c, e, s.behind, view);
    } else {
        left.names = failed::marks(c, on, view);
        left.marks += breaks::marks(c, on, e, view) + marks::marks(c, e, view);
        if s.shows == Shows::Pieces {
            let (marks, crowded) = trims::marks(c, on, e, view);
            left.marks += marks;
            left.crowded = crowded;
        }
        if s.layout.job.siding().receivers.has_pockets() {
            restricted::marks(c, on, view);
        }
        ground::bare(c, e, s.behind, view);
        flashing::notes(c, s.layout, e, view);
    }
    // A single elevation shows none of the walls round it: the report says so once.
    if s.layout.elevations.len() > 1 {
        corners::open(c, on, view);
    }
    corners::turned(c, on, view);
    left
}

/// Numbers of courses of an elevation on whose top edge level is checked.
fn checks(on: &AtElevation) -> BTreeSet<i32> {
    on.work.iter().flat_map(|w| w.level_checks.iter().copied()).collect()
}

/// What signs and marks on a wall's drawing mean, besides line types.
pub(super) fn footnotes(layout: &Layout, e: &LaidElevation, on: &AtElevation) -> Vec<String> {
    let say = layout.job.sheet.language;
    let mut out = vec![say.sentence(legend::RIP)];
    if layout.job.siding().receivers.has_pockets() && restricted::places_of(on).next().is_some() {
        out.push(say.sentence(crate::wording::restricted::LEGEND));
    }
    if !on.failed.is_empty() {
        out.push(say.sentence(legend::FAILED));
    }
    if !on.breaks.is_empty() {
        out.push(say.sentence(legend::BREAKS));
    }
    if !checks(on).is_empty() {
        out.push(say.sentence(legend::LEVEL_CHECK));
    }
    out.extend(flashing::key(layout, e));
    out.extend(trims::key(&layout.job, on));
    out
}
