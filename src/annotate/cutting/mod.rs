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
use super::page::{Orientation, Page, orientations, room_in};
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

/// The cells of all cuts in the columns of sheets of one orientation.
struct Sheets<'a> {
    orientation: Orientation,
    area: Rect,
    width: f64,
    cells: Vec<(usize, cell::Cell<'a>)>,
    /// Sheet by sheet the column of each cell.
    columns: Vec<Vec<usize>>,
}

impl<'a> Sheets<'a> {
    fn of(layout: &Layout, cuts: &'a Cuts, orientation: Orientation) -> Self {
        let area = room_in(layout, orientation);
        let count = (((area.width() + GAP) / (WIDTH + GAP)).floor() as usize).max(1);
        let width = (area.width() - GAP * (count as f64 - 1.0)) / count as f64;
        let room = |sheet| begun(layout, area, sheet, cuts.shaped.len()).1 - area.y0;
        // The first sheet has the least: what holds for all stands over its cells.
        let lowest = room(1);
        let made = cuts.shaped.iter().flat_map(|k| cells(k, layout, width, lowest));
        let cells: Vec<(usize, cell::Cell)> = made.collect();
        let heights: Vec<f64> = cells.iter().map(|(_, cell)| cell.height()).collect();
        let mut columns: Vec<Vec<usize>> = Vec::new();
        let mut rest = heights.as_slice();
        while !rest.is_empty() {
            // The last cell of a column needs no room under it.
            let placed = packed(rest, count, room(columns.len() + 1) + cell::UNDER);
            rest = rest.get(placed.len()..).unwrap_or_default();
            columns.push(placed);
        }
        Sheets { orientation, area, width, cells, columns }
    }
}

/// The cutting sheets, without patterns: in the orientation in which they are fewest.
pub(super) fn sheets(layout: &Layout, cuts: &Cuts) -> Vec<Page> {
    let ways = orientations(layout).iter().map(|o| Sheets::of(layout, cuts, *o));
    let Some(how) = ways.min_by_key(|s| s.columns.len()) else { return Vec::new() };
    let mut pages = Vec::new();
    let mut rest = how.cells.iter();
    for columns in &how.columns {
        let n = pages.len() + 1;
        let (mut c, top) = begun(layout, how.area, n, cuts.shaped.len());
        let mut used = vec![top; columns.iter().max().map_or(0, |most| most + 1)];
        let mut shown = Vec::new();
        for (column, (cut, cell)) in columns.iter().zip(rest.by_ref()) {
            let Some(y) = used.get_mut(*column) else { continue };
            let x = how.area.x0 + *column as f64 * (how.width + GAP);
            cell.draw(&mut c, Point::new(x, *y));
            *y -= cell.height();
            shown.push(*cut);
        }
        pages.push(page(layout, n, how.orientation, c, &shown));
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

fn page(layout: &Layout, n: usize, orientation: Orientation, c: Canvas, cuts: &[usize]) -> Page {
    let say = layout.job.sheet.language;
    let ends = (cuts.first().copied().unwrap_or(0), cuts.last().copied().unwrap_or(0));
    Page {
        name: format!("cutting-{n}"),
        title: Phrase::new(|lang| sheets::cutting_title(lang, ends)),
        description: say.word(sheets::CUTTING_DESCRIPTION),
        scale: say.word(sheets::NTS),
        orientation,
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
    (c, if n == 1 { top + 0.06 } else { top })
}
