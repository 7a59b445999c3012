//! One elevation: the source in gray, panels with courses, seams and marks, trim, dimensions.

pub(super) mod breaks;
mod corners;
mod dims;
mod failed;
mod flashing;
mod ground;
mod labels;
pub(super) mod marks;
mod openings;
mod restricted;
mod slopes;
mod trims;
pub(super) mod view;
mod walls;

use std::collections::BTreeSet;

use view::{ABOVE, BELOW, LEFT, RIGHT, View, extent, windows};

use super::canvas::Canvas;
use super::elevation_index::AtElevation;
use super::page::{Page, room};
use super::scale::{elevation as scale_of, parts};
use crate::clean::{Destination, clean};
use crate::geom::vocabulary::{Affine, Rect};
use crate::job::paper::Scale;
use crate::layout::Layout;
use crate::layout::wall::LaidElevation;
use crate::model::house::Backdrop;
use crate::wording::{legend, sheets};

/// Courses drawn nearer than this, paper inches, cannot hold marks of 3/32 in.
const PITCH: f64 = 0.12;

/// The sheets of one elevation: one, or as many as it takes at its scale.
pub(super) fn sheets(
    layout: &Layout,
    e: &LaidElevation,
    behind: &[Backdrop],
    on: &AtElevation,
) -> Vec<Page> {
    let area = room(layout);
    let house = extent(e);
    let extra = footnotes(layout, e, on);
    let foot = labels::foot(area.width(), &extra, !layout.job.siding().receivers.has_pockets());
    let free = (area.width() - LEFT - RIGHT, area.height() - foot - BELOW - ABOVE);
    let size = (house.width(), house.height());
    let scale = scale_of(size, free, layout.job.product.exposure, PITCH, &layout.job.sheet);
    let (across, _) = parts(size, free, &scale);
    let courses = (layout.datum, layout.job.product.exposure);
    let all = windows(house, free, &scale, courses);
    let count = all.len();
    all.into_iter()
        .enumerate()
        .map(|(i, window)| {
            let k = 1.0 / scale.factor;
            // The walls stand in the middle of their room, over the dimensions.
            let spare = (free.0 - window.width() * k, free.1 - window.height() * k);
            let left = area.x0 + LEFT + spare.0.max(0.0) / 2.0;
            let bottom = area.y0 + foot + BELOW + spare.1.max(0.0) / 2.0;
            let map = Affine::translate((left, bottom))
                * Affine::scale(k)
                * Affine::translate((-window.x0, -window.y0));
            let style = layout.job.sheet.lengths;
            let view = View { map, factor: scale.factor, window, house, style };
            let part = Part { index: i, count, across };
            sheet(layout, (e, behind, on), &view, &scale, area, part, &extra)
        })
        .collect()
}

/// Which of an elevation's sheets.
#[derive(Clone, Copy)]
struct Part {
    index: usize,
    count: usize,
    across: usize,
}

impl Part {
    /// Number of the part so many sheets across and up, from 1.
    fn beside(self, dx: i32, dy: i32) -> Option<usize> {
        let (column, row) =
            ((self.index % self.across) as i32 + dx, (self.index / self.across) as i32 + dy);
        let at = row * self.across as i32 + column;
        let inside = column >= 0 && column < self.across as i32 && row >= 0;
        (inside && (at as usize) < self.count).then(|| at as usize + 1)
    }
}

fn sheet(
    layout: &Layout,
    (e, behind, on): (&LaidElevation, &[Backdrop], &AtElevation),
    view: &View,
    scale: &Scale,
    area: Rect,
    part: Part,
    extra: &[String],
) -> Page {
    let title = title(e, part);
    let mut c = Canvas::new(area);
    labels::title(&mut c, &title, scale, layout, area);
    let boards = !layout.job.siding().receivers.has_pockets();
    labels::key(&mut c, area, extra, boards);
    // What follows keeps over title and key.
    let foot = labels::foot(area.width(), extra, boards);
    let body = Rect::new(area.x0, area.y0 + foot, area.x1, area.y1);
    c.placer.area = body;
    c.clip = Some(view.clip(body));
    shapes(&mut c, layout, (e, behind, on), view);
    c.clip = None;
    labels::match_lines(&mut c, view, &|dx, dy| part.beside(dx, dy));
    let [without, unnamed] = words(&mut c, layout, (e, behind, on), view);
    c.placer.area = area;
    let mut left_off = Vec::new();
    left_off.extend((without > 0).then(|| sheets::marks_left_off(without)));
    left_off.extend((unnamed > 0).then(|| sheets::failed_left_off(unnamed)));
    for (i, words) in left_off.iter().enumerate() {
        let y = area.y1 - 0.1 - 0.16 * i as f64;
        let at = crate::geom::vocabulary::Point::new(area.x0, y);
        c.left(words, super::style::TEXT, true, at);
    }
    c.finish_marks();
    let pieces: usize =
        e.walls.iter().flat_map(|w| &w.courses).flat_map(|c| &c.runs).map(|r| r.pieces.len()).sum();
    let name = if part.count == 1 {
        slug(&e.name)
    } else {
        format!("{}-{}", slug(&e.name), part.index + 1)
    };
    Page {
        name,
        description: sheets::elevation_description(&title, pieces, e.walls.len(), &scale.words),
        title,
        scale: scale.words.clone(),
        canvas: c,
    }
}

/// The elevation's name, with the part's number where there are several.
fn title(e: &LaidElevation, part: Part) -> String {
    if part.count == 1 {
        e.name.to_string()
    } else {
        format!("{}, part {} of {}", e.name, part.index + 1, part.count)
    }
}

/// What is drawn to scale: walls, openings, pieces, seams, ground and trim.
fn shapes(
    c: &mut Canvas,
    layout: &Layout,
    (e, behind, on): (&LaidElevation, &[Backdrop], &AtElevation),
    view: &View,
) {
    let pockets = layout.job.siding().receivers.has_pockets();
    ground::backdrop(c, behind, view);
    let seen_from = on.work.first().map(|w| w.seen_from);
    for wall in &e.walls {
        walls::faces(c, wall, view, &super::faces::heights(layout));
        walls::panels(c, wall, view);
        walls::outlines(c, wall, view);
        openings::outlines(c, wall, view);
        walls::seams(c, wall, view, pockets.then_some(seen_from.unwrap_or(view.house.x0)));
    }
    breaks::shapes(c, on, e, view);
    failed::circles(c, on, view);
    ground::ground(c, e, view);
    trims::lines(c, on, view);
}

/// Dimensions, names and marks; the number of marks that found no room, and of names of places that
/// break a rule.
fn words(
    c: &mut Canvas,
    layout: &Layout,
    (e, behind, on): (&LaidElevation, &[Backdrop], &AtElevation),
    view: &View,
) -> [usize; 2] {
    dims::heights(c, e, view, &checks(on));
    for wall in &e.walls {
        openings::names(c, wall, view);
    }
    dims::widths(c, e, view);
    dims::upright(c, e, view);
    slopes::slopes(c, e, view);
    let unnamed = failed::marks(c, on, view);
    let without =
        breaks::marks(c, on, e, view) + marks::marks(c, e, view) + trims::marks(c, on, e, view);
    if layout.job.siding().receivers.has_pockets() {
        restricted::marks(c, on, view);
    }
    ground::bare(c, e, behind, view);
    flashing::notes(c, layout, e, view);
    // A single elevation shows none of the walls round it: the report says so once.
    if layout.elevations.len() > 1 {
        corners::open(c, on, view);
    }
    corners::turned(c, on, view);
    marks::notches(c, e, view);
    [without, unnamed]
}

/// Numbers of courses of an elevation on whose top edge level is checked.
fn checks(on: &AtElevation) -> BTreeSet<i32> {
    on.work.iter().flat_map(|w| w.level_checks.iter().copied()).collect()
}

/// What the key says besides line types.
fn footnotes(layout: &Layout, e: &LaidElevation, on: &AtElevation) -> Vec<String> {
    let mut out = vec![legend::RIP.to_owned(), legend::NOTCH.to_owned()];
    if layout.job.siding().receivers.has_pockets() && restricted::places_of(on).next().is_some() {
        out.push(crate::wording::restricted::LEGEND.to_owned());
    }
    if !on.failed.is_empty() {
        out.push(legend::FAILED.to_owned());
    }
    if !on.breaks.is_empty() {
        out.push(legend::BREAKS.to_owned());
    }
    if !checks(on).is_empty() {
        out.push(legend::LEVEL_CHECK.to_owned());
    }
    out.extend(flashing::key(layout, e));
    out.extend(trims::key(&layout.job, on));
    out
}

/// A name as a plain file stem.
fn slug(name: &str) -> String {
    let plain = clean(name, Destination::FileName { words: 5, letters: 40 });
    if plain.is_empty() { "elevation".to_owned() } else { plain }
}
