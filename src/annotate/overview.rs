//! What the house looks like: its elevations, several to a sheet at one scale, with names of walls and
//! openings; marks and lengths stand on the walls' own sheets.

use super::canvas::{Canvas, fitted};
use super::elevation::view::{View, drop_to_grade, extent};
use super::elevation::{Shown, Shows, draw, labels, round};
use super::elevation_index::{AtElevation, ElevationIndex};
use super::page::{Orientation, Page, orientations, room_in};
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
const NAME: f64 = 0.26;
/// Most elevations side by side, and over one another.
const MOST: usize = 3;

/// Elevations of a sheet by their numbers, each with its place.
type Places = Vec<(usize, Rect)>;

/// How elevations stand on their sheets.
struct Arrangement {
    orientation: Orientation,
    scale: Scale,
    /// Sheet by sheet.
    sheets: Vec<Places>,
    /// Sheets that the key stands on, the first ones.
    keys: usize,
}

/// The sheets of the overview.
pub(super) fn sheets(
    layout: &Layout,
    backdrops: &Backdrops,
    standing: &ElevationIndex,
) -> Vec<Page> {
    let say = layout.job.sheet.language;
    let boards = !layout.job.siding().receivers.has_pockets();
    let how = arrangement(layout);
    let area = room_in(layout, how.orientation);
    let numbered: Vec<(usize, &Places)> = how.sheets.iter().enumerate().collect();
    let drawn = cores::each(&numbered, |(number, places)| {
        let mut c = Canvas::new(area);
        if *number < how.keys {
            labels::key(&mut c, say, area, boards);
        }
        for (i, cell) in places.iter() {
            let Some(e) = layout.elevations.get(*i) else { continue };
            let on = standing.at(e).overview();
            elevation(&mut c, layout, *i, (&on, backdrops), *cell, &how.scale);
        }
        c.finish_marks();
        c
    });
    let count = drawn.len();
    let page = |(i, (canvas, places)): (usize, (Canvas, &Places))| {
        let one = match places.as_slice() {
            [(one, _)] => layout.elevations.get(*one),
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
                words::elevations_description(lang, title.of(lang), places.len(), &how.scale.words)
            }),
            title,
            scale: how.scale.words.clone(),
            orientation: how.orientation,
            canvas,
        }
    };
    drawn.into_iter().zip(&how.sheets).enumerate().map(page).collect()
}

/// What the arrangement is reckoned from.
struct Sizes {
    /// Of each elevation: width, height with its drop to grade, house inches, and the room round it, paper inches.
    each: Vec<((f64, f64), Rect)>,
    /// Scales that can be read, the largest first.
    readable: Vec<Scale>,
}

impl Sizes {
    fn of(layout: &Layout) -> Self {
        let style = layout.job.sheet.lengths;
        let one = |e| {
            let house = extent(e);
            let high = house.height() + drop_to_grade(e, house);
            ((house.width(), high), round::overview(e, house, style))
        };
        let each = layout.elevations.iter().map(one).collect();
        let readable = scales(style).into_iter().filter(|s| s.factor <= SMALLEST).collect();
        Sizes { each, readable }
    }

    /// Width and height of each on paper at a scale, with its name.
    fn on_paper(&self, factor: f64) -> Vec<(f64, f64)> {
        let one = |(size, r): &((f64, f64), Rect)| {
            (size.0 / factor + r.x0 + r.x1, size.1 / factor + r.y0 + r.y1 + NAME)
        };
        self.each.iter().map(one).collect()
    }
}

/// The arrangement with the fewest sheets whose scale can be read, of these the one with the largest scale; one
/// elevation a sheet where none can.
fn arrangement(layout: &Layout) -> Arrangement {
    let say = layout.job.sheet.language;
    let boards = !layout.job.siding().receivers.has_pockets();
    let sizes = Sizes::of(layout);
    let rooms = orientations(layout).iter().map(|o| {
        let area = room_in(layout, *o);
        (*o, area, labels::key_height(say, area.width(), boards))
    });
    let rooms: Vec<(Orientation, Rect, f64)> = rooms.collect();
    let mut all: Vec<Arrangement> = Vec::new();
    for (o, area, foot) in &rooms {
        let body = Rect::new(area.x0, area.y0 + foot, area.x1, area.y1);
        all.extend(sizes.readable.iter().filter_map(|s| grid(&sizes, body, *o, s)));
        all.extend(sizes.readable.iter().filter_map(|s| stacked(&sizes, *area, *foot, *o, s)));
    }
    let best = all.into_iter().min_by(|a, b| {
        let sheets = a.sheets.len().cmp(&b.sheets.len());
        // The first of equals: landscape before portrait, a grid before a stack.
        sheets.then(a.scale.factor.total_cmp(&b.scale.factor))
    });
    best.unwrap_or_else(|| one_each(layout, &sizes))
}

/// As many side by side and over one another as a scale allows, the key on every sheet.
fn grid(sizes: &Sizes, body: Rect, orientation: Orientation, scale: &Scale) -> Option<Arrangement> {
    let paper = sizes.on_paper(scale.factor);
    let (w, h) = paper.iter().fold((0.0_f64, 0.0_f64), |m, p| (m.0.max(p.0), m.1.max(p.1)));
    let holds = |all: f64, one: f64| ((all / one.max(1e-6)).floor() as usize).min(MOST);
    let (across, up) = (holds(body.width(), w), holds(body.height(), h));
    if across * up == 0 {
        return None;
    }
    // No more columns or rows than the elevations fill.
    let across = across.min(paper.len().max(1));
    let up = up.min(paper.len().div_ceil(across).max(1));
    let numbers: Vec<usize> = (0..paper.len()).collect();
    let place = |(n, i): (usize, &usize)| (*i, cell(body, (across, up), n));
    let sheet = |chunk: &[usize]| chunk.iter().enumerate().map(place).collect();
    let sheets = numbers.chunks(across * up).map(sheet).collect::<Vec<_>>();
    Some(Arrangement { orientation, scale: scale.clone(), keys: sheets.len(), sheets })
}

/// The place of an elevation in a grid: from the upper left, row by row.
fn cell(body: Rect, (across, up): (usize, usize), place: usize) -> Rect {
    let (w, h) = (body.width() / across as f64, body.height() / up as f64);
    let (column, row) = ((place % across) as f64, (place / across) as f64);
    let (x, y) = (body.x0 + column * w, body.y1 - (row + 1.0) * h);
    Rect::new(x, y, x + w, y + h)
}

/// One over the other, each as high as it is, the key on the first sheet.
fn stacked(
    sizes: &Sizes,
    area: Rect,
    foot: f64,
    orientation: Orientation,
    scale: &Scale,
) -> Option<Arrangement> {
    let paper = sizes.on_paper(scale.factor);
    if paper.iter().any(|p| p.0 > area.width()) {
        return None;
    }
    let heights: Vec<f64> = paper.iter().map(|p| p.1).collect();
    let mut tallest: Vec<usize> = (0..heights.len()).collect();
    tallest.sort_by(|a, b| heights[*b].total_cmp(&heights[*a]));
    let room = |sheet: usize| area.height() - if sheet == 0 { foot } else { 0.0 };
    let in_turn = first_fit(0..heights.len(), &heights, &room)?;
    let by_height = first_fit(tallest.into_iter(), &heights, &room)?;
    let fewest = if by_height.len() < in_turn.len() { by_height } else { in_turn };
    let sheet = |(n, mut all): (usize, Vec<usize>)| {
        all.sort_unstable();
        let used: f64 = all.iter().filter_map(|i| heights.get(*i)).sum();
        let spare = (room(n) - used) / all.len() as f64;
        let mut y = area.y1;
        let place = |i: usize| {
            let high = heights.get(i).copied().unwrap_or_default() + spare;
            y -= high;
            (i, Rect::new(area.x0, y, area.x1, y + high))
        };
        all.into_iter().map(place).collect()
    };
    let sheets = fewest.into_iter().enumerate().map(sheet).collect();
    Some(Arrangement { orientation, scale: scale.clone(), keys: 1, sheets })
}

/// Each into the first sheet with room for it; `None` where one has none anywhere.
fn first_fit(
    order: impl Iterator<Item = usize>,
    heights: &[f64],
    room: &impl Fn(usize) -> f64,
) -> Option<Vec<Vec<usize>>> {
    let mut sheets: Vec<(f64, Vec<usize>)> = Vec::new();
    for i in order {
        let high = heights.get(i).copied().unwrap_or_default();
        if high > room(0) {
            return None;
        }
        match sheets.iter().position(|s| s.0 >= high) {
            Some(n) => {
                if let Some((free, all)) = sheets.get_mut(n) {
                    *free -= high;
                    all.push(i);
                }
            }
            None => sheets.push((room(sheets.len()) - high, vec![i])),
        }
    }
    Some(sheets.into_iter().map(|s| s.1).collect())
}

/// One elevation a landscape sheet, at whatever scale holds them all.
fn one_each(layout: &Layout, sizes: &Sizes) -> Arrangement {
    let orientation = Orientation::Landscape;
    let area = room_in(layout, orientation);
    let boards = !layout.job.siding().receivers.has_pockets();
    let foot = labels::key_height(layout.job.sheet.language, area.width(), boards);
    let body = Rect::new(area.x0, area.y0 + foot, area.x1, area.y1);
    let most = |f: fn(&((f64, f64), Rect)) -> f64| sizes.each.iter().map(f).fold(1.0, f64::max);
    let size = (most(|e| e.0.0), most(|e| e.0.1));
    let room = (
        body.width() - most(|e| e.1.x0 + e.1.x1),
        body.height() - NAME - most(|e| e.1.y0 + e.1.y1),
    );
    let scale = super::scale::fit(size, room, layout.job.sheet.lengths);
    let sheets: Vec<Places> = (0..sizes.each.len()).map(|i| vec![(i, body)]).collect();
    Arrangement { orientation, scale, keys: sheets.len(), sheets }
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
    let r = round::overview(e, house, layout.job.sheet.lengths);
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
