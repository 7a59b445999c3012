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
use super::page::{Page, room};
use crate::geom::vocabulary::Point;
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
const NOTES: f64 = 1.3;
/// Room between details, paper inches.
const GAP: f64 = 0.22;
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

pub(super) fn sheets(layout: &Layout) -> Vec<Page> {
    let say = layout.job.sheet.language;
    let area = room(layout);
    let at = drawn_at(layout.job.sheet.lengths);
    let narrow = WIDE / at.factor + section::GAP + NOTES + GAP;
    let columns = (((area.width() + GAP) / narrow).floor() as usize).max(1);
    let width = (area.width() + GAP) / columns as f64 - GAP;
    let notes = width - WIDE / at.factor - section::GAP;
    let details = of(layout);
    let mut pages: Vec<Canvas> = Vec::new();
    let mut rows = Vec::new();
    for row in details.chunks(columns) {
        let tall = row.iter().map(|s| s.height(at.factor, notes)).fold(0.0, f64::max);
        rows.push((row, tall));
    }
    let mut y = f64::NEG_INFINITY;
    let mut number = 0;
    for (row, tall) in rows {
        if y - tall < area.y0 {
            let mut c = Canvas::new(area);
            let first = pages.is_empty();
            let typical = say.sentence(words::TYPICAL);
            y = heading(&mut c, area, say, (words::DETAILS, first), &typical);
            pages.push(c);
        }
        let Some(c) = pages.last_mut() else { continue };
        for (i, s) in row.iter().enumerate() {
            number += 1;
            let x = area.x0 + i as f64 * (width + GAP);
            s.draw(c, Point::new(x, y), at.factor, notes, number);
        }
        y -= tall + 0.1;
    }
    let page = |(i, mut canvas): (usize, Canvas)| {
        canvas.finish_marks();
        Page {
            name: format!("details-{}", i + 1),
            title: words::DETAILS.into(),
            description: say.word(words::DESCRIPTION),
            scale: at.words.clone(),
            canvas,
        }
    };
    pages.into_iter().enumerate().map(page).collect()
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
