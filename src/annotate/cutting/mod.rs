//! Cutting sheets: each distinct shaped cut drawn once with its dimensions and the marks of the pieces it
//! makes, mirror images with it; patterns for slopes and for openings with round heads.

mod cell;
mod pattern;
mod round_heads;
mod tiles;

use super::canvas::Canvas;
use super::cut_list::heading;
use super::cuts_of::{Cut, Cuts};
use super::packed::packed;
use super::page::{Orientation, Page, room};
use crate::geom::vocabulary::{Point, Rect};
use crate::language::Phrase;
use crate::layout::Layout;
use crate::layout::piece::EdgeWork;
use crate::wording::sheets;
use crate::wording::siding;

/// Room between columns.
const GAP: f64 = 0.22;
/// Least width of a column.
const WIDTH: f64 = 2.9;

/// The cutting sheets, without patterns.
pub(super) fn sheets(layout: &Layout, cuts: &Cuts) -> Vec<Page> {
    let area = room(layout);
    let columns = (((area.width() + GAP) / (WIDTH + GAP)).floor() as usize).max(1);
    let width = (area.width() - GAP * (columns as f64 - 1.0)) / columns as f64;
    let count = cuts.shaped.len();
    let (_, lowest) = begun(layout, area, 1, count);
    let made = cuts.shaped.iter().flat_map(|k| cells(k, layout, width, lowest - area.y0));
    let made: Vec<(usize, cell::Cell)> = made.collect();
    let heights: Vec<f64> = made.iter().map(|(_, cell)| cell.height()).collect();
    let mut pages = Vec::new();
    let mut first = 0;
    while first < made.len() {
        let n = pages.len() + 1;
        let (mut c, top) = begun(layout, area, n, count);
        let placed = packed(heights.get(first..).unwrap_or_default(), columns, top - area.y0);
        let mut used = vec![top; columns];
        let mut shown = Vec::new();
        for ((cut, cell), column) in made.iter().skip(first).zip(&placed) {
            let Some(y) = used.get_mut(*column) else { continue };
            let x = area.x0 + *column as f64 * (width + GAP);
            cell.draw(&mut c, Point::new(x, *y));
            *y -= cell.height();
            shown.push(*cut);
        }
        first += placed.len().max(1);
        pages.push(page(layout, n, c, &shown));
    }
    pages
}

/// The patterns, full size; they come last in a set.
pub(super) fn patterns(layout: &Layout) -> Vec<Page> {
    let mut out = pattern::sheets(layout);
    out.extend(round_heads::sheets(layout));
    out
}

/// The cells of a cut, no higher than a column, each with the cut's number.
fn cells<'a>(
    k: &'a Cut,
    layout: &Layout,
    width: f64,
    column: f64,
) -> impl Iterator<Item = (usize, cell::Cell<'a>)> {
    let number = k.number;
    cell::Cell::of(k, layout, width).parts(column).into_iter().map(move |c| (number, c))
}

fn page(layout: &Layout, n: usize, c: Canvas, cuts: &[usize]) -> Page {
    let say = layout.job.sheet.language;
    let ends = (cuts.first().copied().unwrap_or(0), cuts.last().copied().unwrap_or(0));
    Page {
        name: format!("cutting-{n}"),
        title: Phrase::new(|lang| sheets::cutting_title(lang, ends)),
        description: say.word(sheets::CUTTING_DESCRIPTION),
        scale: say.word(sheets::NTS),
        orientation: Orientation::Landscape,
        canvas: c,
    }
}

/// A page for cells, begun, and where its cells begin.
fn begun(layout: &Layout, area: Rect, n: usize, count: usize) -> (Canvas, f64) {
    let say = layout.job.sheet.language;
    let mut c = Canvas::new(area);
    let sum =
        |of: fn(&EdgeWork) -> u32| -> u32 { layout.pieces().map(|(.., p)| of(&p.edge_work)).sum() };
    let (slots, held) = (sum(|w| w.slots), sum(|w| w.lugs + w.trim_nails));
    let held_by = siding::held_by(layout.job.siding());
    let over = siding::over_face(layout.job.siding());
    let over = (over, layout.job.siding().receivers.has_pockets());
    let style = layout.job.sheet.lengths;
    // What holds for all of them stands on the first sheet.
    let words = if n == 1 {
        say.block(|lang| sheets::cutting(lang, count, slots, (held, held_by), over, style))
    } else {
        String::new()
    };
    let top = heading(&mut c, area, say, (sheets::CUTTING, n == 1), &words);
    (c, top + 0.06)
}
