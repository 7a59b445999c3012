//! What the house looks like: its elevations, several to a sheet at one scale, with names of walls and
//! openings; marks and lengths stand on the walls' own sheets.

use super::canvas::{Canvas, fitted};
use super::elevation::view::{ROUND_HOUSE, View, drop_to_grade, extent};
use super::elevation::{Shown, Shows, draw, labels};
use super::elevation_index::{AtElevation, ElevationIndex};
use super::page::{Page, room};
use super::style::HEADING;
use crate::clean::{Destination, clean};
use crate::cores;
use crate::geom::vocabulary::{Affine, Point, Rect};
use crate::job::paper::{Scale, scales};
use crate::language::Phrase;
use crate::layout::Layout;
use crate::layout::backdrop::Backdrops;
use crate::wording::sheets as words;

/// The smallest scale that several elevations share a sheet at: 1/8 in to the foot, about 1:100.
const SMALLEST: f64 = 100.0;
/// Room for an elevation's name over it.
const NAME: f64 = 0.28;
/// Most elevations side by side, and over one another.
const MOST: usize = 3;

/// How elevations stand on a sheet.
struct Grid {
    across: usize,
    up: usize,
    scale: Scale,
}

/// The sheets of the overview.
pub(super) fn sheets(
    layout: &Layout,
    backdrops: &Backdrops,
    standing: &ElevationIndex,
) -> Vec<Page> {
    let say = layout.job.sheet.language;
    let area = room(layout);
    let boards = !layout.job.siding().receivers.has_pockets();
    let foot = labels::key_height(say, area.width(), boards);
    let body = Rect::new(area.x0, area.y0 + foot, area.x1, area.y1);
    let grid = grid(layout, body);
    let each: Vec<usize> = (0..layout.elevations.len()).collect();
    let chunks: Vec<&[usize]> = each.chunks(grid.across * grid.up).collect();
    let drawn = cores::each(&chunks, |chunk| {
        let mut c = Canvas::new(area);
        labels::key(&mut c, say, area, boards);
        for (place, i) in chunk.iter().enumerate() {
            let Some(e) = layout.elevations.get(*i) else { continue };
            let cell = cell(body, &grid, place);
            let on = standing.at(e).overview();
            elevation(&mut c, layout, *i, (&on, backdrops), cell, &grid.scale);
        }
        c.finish_marks();
        c
    });
    let count = drawn.len();
    let page = |(i, (canvas, chunk)): (usize, (Canvas, &[usize]))| {
        let one = match chunk {
            [one] => layout.elevations.get(*one),
            _ => None,
        };
        let (title, stem) = match one {
            Some(e) => (Phrase::new(|_| e.name.to_string()), slug(&e.name)),
            None if count == 1 => (Phrase::from(words::ELEVATIONS), "elevations".to_owned()),
            None => (
                Phrase::new(|lang| words::elevations(lang, i + 1, count)),
                format!("elevations-{}", i + 1),
            ),
        };
        Page {
            name: stem,
            description: say.line(|lang| {
                words::elevations_description(lang, title.of(lang), chunk.len(), &grid.scale.words)
            }),
            title,
            scale: grid.scale.words.clone(),
            canvas,
        }
    };
    drawn.into_iter().zip(chunks).enumerate().map(page).collect()
}

/// The grid with the fewest sheets whose scale can be read, of these the one with the largest scale; one
/// elevation a sheet where none can.
fn grid(layout: &Layout, body: Rect) -> Grid {
    let boxes: Vec<Rect> = layout.elevations.iter().map(extent).collect();
    let widest = boxes.iter().map(Rect::width).fold(1.0, f64::max);
    let drops = layout.elevations.iter().zip(&boxes).map(|(e, b)| drop_to_grade(e, *b));
    let tallest = boxes.iter().zip(drops).map(|(b, d)| b.height() + d).fold(1.0, f64::max);
    let r = ROUND_HOUSE;
    let room = |across: usize, up: usize| {
        let (w, h) = (body.width() / across as f64, body.height() / up as f64);
        (w - r.x0 - r.x1, h - r.y0 - r.y1 - NAME)
    };
    let fit = |across, up| {
        super::scale::fit((widest, tallest), room(across, up), layout.job.sheet.lengths)
    };
    let smallest = scales(layout.job.sheet.lengths);
    let smallest = smallest.iter().map(|s| s.factor).filter(|f| *f <= SMALLEST).fold(0.0, f64::max);
    let all = (1..=MOST).flat_map(|across| (1..=MOST).map(move |up| (across, up)));
    let roomy = all.filter(|(a, u)| room(*a, *u).0 > 1.0 && room(*a, *u).1 > 0.5);
    let made = roomy.map(|(across, up)| Grid { across, up, scale: fit(across, up) });
    let readable = made.filter(|g| g.scale.factor <= smallest);
    let pages = |g: &Grid| boxes.len().div_ceil(g.across * g.up);
    let best = readable
        .min_by(|a, b| pages(a).cmp(&pages(b)).then(a.scale.factor.total_cmp(&b.scale.factor)));
    best.unwrap_or_else(|| Grid { across: 1, up: 1, scale: fit(1, 1) })
}

/// The place of an elevation: from the upper left, row by row.
fn cell(body: Rect, grid: &Grid, place: usize) -> Rect {
    let (w, h) = (body.width() / grid.across as f64, body.height() / grid.up as f64);
    let (column, row) = ((place % grid.across) as f64, (place / grid.across) as f64);
    let (x, y) = (body.x0 + column * w, body.y1 - (row + 1.0) * h);
    Rect::new(x, y, x + w, y + h)
}

/// One elevation in its cell, its name over it.
fn elevation(
    c: &mut Canvas,
    layout: &Layout,
    index: usize,
    (on, backdrops): (&AtElevation, &Backdrops),
    cell: Rect,
    scale: &Scale,
) {
    let Some(e) = layout.elevations.get(index) else { return };
    let house = extent(e);
    let k = 1.0 / scale.factor;
    let r = ROUND_HOUSE;
    let spare = |all: f64, own: f64| ((all - own) / 2.0).max(0.0);
    let left = cell.x0 + r.x0 + spare(cell.width() - r.x0 - r.x1, house.width() * k);
    let drop = drop_to_grade(e, house) * k;
    let low = cell.y0 + r.y0 + drop;
    let bottom = low + spare(cell.height() - NAME - r.y0 - r.y1, house.height() * k + drop);
    let map = Affine::translate((left, bottom))
        * Affine::scale(k)
        * Affine::translate((-house.x0, -house.y0));
    let (style, say) = (layout.job.sheet.lengths, layout.job.sheet.language);
    let view = View { map, factor: scale.factor, window: house, house, style, say };
    let name = fitted(&e.name, HEADING, true, cell.width() - 0.2);
    let top = bottom + house.height() * k + r.y1;
    let at = Point::new(left + house.width() * k / 2.0, top + NAME / 2.0);
    let w = crate::typeface::width(&name, HEADING, true) / 2.0;
    let x = at.x.clamp(cell.x0 + w, (cell.x1 - w).max(cell.x0 + w));
    c.centered(&name, HEADING, true, Point::new(x, at.y));
    let behind = backdrops.behind(index);
    let shown = Shown { layout, elevation: e, behind, on, shows: Shows::Overview };
    let body = Rect::new(cell.x0, cell.y0, cell.x1, top);
    draw(c, &shown, &view, body, &|_, _| None);
}

/// A name as a plain file stem.
fn slug(name: &str) -> String {
    let plain = clean(name, Destination::FileName { words: 5, letters: 40 });
    if plain.is_empty() { "elevation".to_owned() } else { plain }
}
