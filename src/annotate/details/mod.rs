//! Details: how siding starts, ends, laps and is flashed, as sections drawn from the job's own settings.
//! Typical ones: only those that the house has a place for.

mod corner;
mod ground;
mod level;
mod opening;
mod section;
mod siding;

use self::section::Section;
use super::canvas::Canvas;
use super::cut_list::heading;
use super::packed::packed;
use super::page::{Orientation, Page, orientations, room_in};
use crate::geom::vocabulary::{Point, Rect};
use crate::job::Job;
use crate::job::paper::{Scale, scale};
use crate::layout::Layout;
use crate::layout::wall::LaidFiller;
use crate::model::filler::FilledTo;
use crate::model::house::EdgeKind;
use crate::units::LengthStyle;
use crate::wording::details as words;

/// What its sheets are called.
pub(super) use crate::wording::details::DETAILS as TITLE;

/// Least room of the notes beside a drawing, paper inches.
const NOTES: f64 = 1.2;
/// Room between details, paper inches.
const GAP: f64 = 0.22;
/// Room between one and the next under it, paper inches.
const BETWEEN: f64 = 0.1;
/// Width of what is drawn of each, house inches.
const WIDE: f64 = 8.0;

/// 3 in to the foot (`DrawingFact::ArchitecturalScales`), or 1:5.
fn drawn_at(style: LengthStyle) -> Scale {
    let words = match style {
        LengthStyle::Feet => "3\" = 1'-0\"",
        LengthStyle::Mm => "1:5",
    };
    scale(words).unwrap_or(Scale { words: words.to_owned(), factor: 4.0 })
}

/// How details stand on sheets of one orientation.
struct Columns {
    orientation: Orientation,
    area: Rect,
    /// Width of one.
    width: f64,
    /// Room of the notes beside a drawing.
    notes: f64,
    /// Where they begin.
    top: f64,
    /// Sheet by sheet the column of each detail.
    sheets: Vec<Vec<usize>>,
}

impl Columns {
    fn of(layout: &Layout, details: &[Section], orientation: Orientation) -> Self {
        let factor = drawn_at(layout.job.sheet.lengths).factor;
        let area = room_in(layout, orientation);
        let least = WIDE / factor + section::GAP + NOTES + GAP;
        let count = (((area.width() + GAP) / least).floor() as usize).max(1);
        let width = (area.width() + GAP) / count as f64 - GAP;
        let notes = width - WIDE / factor - section::GAP;
        let (_, top) = begun(layout, area, false);
        let heights: Vec<f64> = details.iter().map(|s| s.height(factor, notes) + BETWEEN).collect();
        let mut sheets = Vec::new();
        let mut rest = heights.as_slice();
        while !rest.is_empty() {
            let placed = packed(rest, count, top - area.y0 + BETWEEN);
            rest = rest.get(placed.len()..).unwrap_or_default();
            sheets.push(placed);
        }
        Columns { orientation, area, width, notes, top, sheets }
    }
}

/// A sheet with its heading, and where its details begin.
fn begun(layout: &Layout, area: Rect, first: bool) -> (Canvas, f64) {
    let say = layout.job.sheet.language;
    let mut c = Canvas::new(area);
    let typical = say.sentence(words::TYPICAL);
    let top = heading(&mut c, area, say, (words::DETAILS, first), &typical);
    (c, top)
}

pub(super) fn sheets(layout: &Layout) -> Vec<Page> {
    let say = layout.job.sheet.language;
    let at = drawn_at(layout.job.sheet.lengths);
    let details = of(layout);
    let ways = orientations(layout).iter().map(|o| Columns::of(layout, &details, *o));
    let Some(how) = ways.min_by_key(|h| h.sheets.len()) else { return Vec::new() };
    let mut out = Vec::new();
    let mut numbered = details.iter().zip(1..);
    for columns in &how.sheets {
        let (mut c, _) = begun(layout, how.area, out.is_empty());
        let mut used = vec![how.top; columns.iter().max().map_or(0, |most| most + 1)];
        for (column, (s, number)) in columns.iter().zip(numbered.by_ref()) {
            let Some(y) = used.get_mut(*column) else { continue };
            let x = how.area.x0 + *column as f64 * (how.width + GAP);
            s.draw(&mut c, Point::new(x, *y), at.factor, how.notes, number);
            *y -= s.height(at.factor, how.notes) + BETWEEN;
        }
        c.finish_marks();
        out.push(Page {
            name: format!("details-{}", out.len() + 1),
            title: words::DETAILS.into(),
            description: say.word(words::DESCRIPTION),
            scale: at.words.clone(),
            orientation: how.orientation,
            canvas: c,
        });
    }
    out
}

/// The details that a house has places for, in the order of work.
fn of(layout: &Layout) -> Vec<Section> {
    let job: &Job = &layout.job;
    let edges = || layout.walls().flat_map(|(_, w)| &w.edges);
    let has = |kind: EdgeKind| edges().any(|e| e.kind == kind);
    let mut out = Vec::new();
    let mut add = |wanted: bool, draw: fn(&Job) -> Section| {
        if wanted {
            out.push(draw(job));
        }
    };
    let pockets = job.siding().receivers.has_pockets();
    add(has(EdgeKind::Base), level::grade);
    add(has(EdgeKind::OutsideCorner), corner::outside);
    add(has(EdgeKind::InsideCorner), corner::inside);
    add(true, corner::seam);
    add(has(EdgeKind::Sill), opening::sill);
    add(has(EdgeKind::Jamb), opening::jamb);
    add(has(EdgeKind::Head), opening::head);
    add(has(EdgeKind::Head) && pockets, opening::tab);
    add(has(EdgeKind::LowerRoof), level::roof);
    let skirts = |f: &LaidFiller| f.between.iter().any(|s| s.to == FilledTo::Course);
    add(layout.walls().flat_map(|(_, w)| &w.fillers).any(skirts), level::skirt);
    let mut roofs = layout.elevations.iter().flat_map(|e| e.roof_sides(layout));
    add(roofs.any(|s| s.kick_out.is_some()), level::kick_out);
    add(has(EdgeKind::Eave), level::soffit);
    let blocks = layout.walls().flat_map(|(_, w)| &w.obstacles).any(|o| o.mounting_block);
    add(blocks, opening::block);
    out
}
