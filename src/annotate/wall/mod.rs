//! One sheet a wall: its drawing as large as the paper takes, the length on every piece, and beside it all
//! that is cut and done there.

mod batches;
mod lists;
mod made;
mod part;
mod sticks;

pub(super) use batches::{PanelWalls, in_order};
pub(super) use sticks::Sticks;

use self::made::{HEAD, Made, UNDER, alone, begun, block, body, finish, shown, tops, view};
use self::made::{round_part, without_sky};
use self::part::Part;
use super::canvas::{Canvas, fitted};
use super::columns::tops_under;
use super::cuts_of::Cuts;
use super::elevation::marks::prefix;
use super::elevation::round;
use super::elevation::view::{drop_to_grade, extent, windows};
use super::elevation::{Shows, draw, footnotes};
use super::elevation_index::AtElevation;
use super::page::{Orientation, Page, orientations, room_in};
use super::scale::{FEW, MOST, elevation as scale_in_parts, parts};
use super::style::TITLE;
use crate::clean::{Destination, clean};
use crate::geom::vocabulary::{Point, Rect};
use crate::job::paper::{Scale, scale, scales};
use crate::language::Phrase;
use crate::layout::Layout;
use crate::layout::wall::{LaidElevation, LaidWall};
use crate::wording::{sheets as sheet_words, wall_sheets as words};

/// Courses drawn nearer than this, paper inches, cannot hold marks of 3/32 in between their lines.
const PITCH: f64 = 0.13;
/// Scales that are tried for the fewest sheets, from the largest that fits.
const TRIED: usize = 4;
/// How much farther courses stand apart in parts at a larger scale.
const LARGER: [f64; 3] = [2.0, 4.0, 8.0];
/// Share of marks of trim over what is built beyond which they have a view of their own.
const CROWDED: f64 = 0.34;

/// A wall in its place.
pub(super) struct WallAt<'a> {
    /// Its number in the order of walls, from 0.
    pub(super) number: usize,
    pub(super) elevation: &'a LaidElevation,
    pub(super) wall: &'a LaidWall,
    /// What stands at its elevation.
    pub(super) on: &'a AtElevation<'a>,
}

/// A wall's sheets as they could be.
struct Drawn {
    pages: Vec<Page>,
    /// Marks that found no room.
    without: usize,
    /// House inches in a paper inch.
    factor: f64,
}

/// The sheets of a wall: in the orientation in which all marks have room and it takes the fewest sheets, of these with
/// the larger scale.
pub(super) fn sheets(
    layout: &Layout,
    at: &WallAt,
    cuts: &Cuts,
    stock: (&PanelWalls, &Sticks),
) -> Vec<Page> {
    let each = orientations(layout).iter().map(|o| best(&made(layout, at, cuts, stock, *o)));
    let better = |a: Drawn, b: Drawn| {
        let rank = |d: &Drawn| (d.without, d.pages.len());
        let order = rank(&a).cmp(&rank(&b)).then(a.factor.total_cmp(&b.factor));
        if order.is_gt() { b } else { a }
    };
    each.reduce(better).map_or_else(Vec::new, |d| d.pages)
}

fn made<'a>(
    layout: &'a Layout,
    at: &WallAt<'a>,
    cuts: &Cuts,
    (panels, sticks): (&PanelWalls, &Sticks),
    orientation: Orientation,
) -> Made<'a> {
    let (say, style) = (layout.job.sheet.language, layout.job.sheet.lengths);
    let area = room_in(layout, orientation);
    let alone = alone(at.elevation, at.wall);
    let on = at.on.at_wall(at.wall);
    let prefix = prefix(at.wall);
    let shows = if on.revised.is_empty() { Shows::Pieces } else { Shows::Changes };
    let rows = if shows == Shows::Changes {
        lists::of_changes(area, say)
    } else {
        let mut notes = vec![say.block(|lang| words::marks_read(lang, prefix))];
        notes.extend(footnotes(layout, &alone, &on));
        let stock = (&panels.at(at.number), (sticks, at.number));
        lists::rows(layout, at.wall, cuts, stock, &notes, area)
    };
    let house = extent(&alone);
    let title = Phrase::new(|lang| words::title(lang, prefix, &at.elevation.name));
    let drop = drop_to_grade(&alone, house);
    let round = round::wall(&alone, house, style);
    Made { layout, alone, on, house, drop, prefix, title, rows, shows, round, orientation }
}

fn best(m: &Made) -> Drawn {
    let area = room_in(m.layout, m.orientation);
    let fixed = m.layout.job.sheet.scale.is_some();
    let mut best = match whole(m, area) {
        Some(scale) => on_one(m, area, &scale),
        None => in_parts(m, area, (PITCH, MOST)),
    };
    // Where marks find no room, in parts at a larger scale.
    for times in LARGER {
        if best.without == 0 || fixed || !reached(m, area, (PITCH * times, FEW)) {
            break;
        }
        let larger = in_parts(m, area, (PITCH * times, FEW));
        if larger.without < best.without {
            best = larger;
        }
    }
    best
}

/// The scale of a wall that one sheet holds: the job's own, or of those that fit the largest with which all
/// takes the fewest sheets. `None` where its courses would stand too near for marks.
fn whole(m: &Made, area: Rect) -> Option<Scale> {
    if let Some(fixed) = m.layout.job.sheet.scale.as_deref().and_then(scale) {
        return Some(fixed).filter(|s| fits(m, area, s));
    }
    let exposure = m.layout.job.product.exposure;
    let legible = |s: &Scale| exposure / s.factor >= PITCH;
    let pages = |s: &Scale| m.rows.pages(area, &[tops(m, area, s.factor)]);
    fitting(m, area).filter(legible).take(TRIED).min_by_key(pages)
}

/// Whether a sheet holds the wall's drawing at a scale.
fn fits(m: &Made, area: Rect, s: &Scale) -> bool {
    let (w, h) = block(m, s.factor);
    w <= area.width() && h <= area.height() - HEAD
}

/// Scales at which one sheet holds the wall's drawing, the largest first.
fn fitting<'a>(m: &'a Made, area: Rect) -> impl Iterator<Item = Scale> + 'a {
    scales(m.layout.job.sheet.lengths).into_iter().filter(move |s| fits(m, area, s))
}

/// Drawing and lists, the first sheet under its heading.
fn on_one(m: &Made, area: Rect, scale: &Scale) -> Drawn {
    let say = m.layout.job.sheet.language;
    let factor = scale.factor;
    let body = body(m, area, factor);
    let view = view(m, (m.house, m.round), body.origin(), factor);
    let drawn = |shows: Shows| {
        let mut c = begun(m, area, scale, &m.title);
        let left = draw(&mut c, &shown(m, shows), &view, body, &|_, _| None);
        (c, left)
    };
    let (mut c, left) = drawn(m.shows);
    let tops = tops(m, area, factor);
    let marks = m.on.trims.len() as f64;
    // Where the lists take a second sheet, marks of trim stand there: neither is crowded, none nearly empty.
    let (one, two) = ([tops.clone()], [tops.clone(), tops.clone()]);
    let count = |tops: &[Vec<f64>]| m.rows.pages(area, tops);
    let spills = count(&one) > 1 && count(&two) <= count(&one) && !m.on.trims.is_empty();
    let all_shown = left.marks == 0 && !spills && left.crowded as f64 <= CROWDED * marks;
    if all_shown || m.shows == Shows::Changes {
        let without = left.marks;
        finish(say, &mut c, area, left);
        return Drawn { pages: pages(m, area, scale, (&one, 1), vec![c]), without, factor };
    }
    with_trim_view(m, area, &larger(m, area, scale))
}

/// The wall's drawing, and another of its trim: where one drawing is crowded, or the lists take a second sheet.
fn with_trim_view(m: &Made, area: Rect, scale: &Scale) -> Drawn {
    let (say, factor) = (m.layout.job.sheet.language, scale.factor);
    let body = body(m, area, factor);
    let view = view(m, (m.house, m.round), body.origin(), factor);
    let drawn = |title: &Phrase, shows: Shows| {
        let mut c = begun(m, area, scale, title);
        let left = draw(&mut c, &shown(m, shows), &view, body, &|_, _| None);
        (c, left)
    };
    let tops = tops(m, area, factor);
    let two = [tops.clone(), tops];
    let (mut alone, left) = drawn(&m.title, Shows::PiecesAlone);
    finish(say, &mut alone, area, left);
    let without = left.marks;
    let title = Phrase::new(|lang| words::trim_view(lang, m.title.of(lang)));
    let (mut trim, left) = drawn(&title, Shows::Trim);
    finish(say, &mut trim, area, left);
    let without = without + left.marks;
    Drawn { pages: pages(m, area, scale, (&two, 1), vec![alone, trim]), without, factor }
}

/// The scale of a wall with a view of its trim: the largest with which two drawings and all lists take no more
/// sheets than at this.
fn larger(m: &Made, area: Rect, scale: &Scale) -> Scale {
    let pages = |s: &Scale| {
        let tops = tops(m, area, s.factor);
        m.rows.pages(area, &[tops.clone(), tops])
    };
    let (now, fixed) = (pages(scale), m.layout.job.sheet.scale.is_some());
    let larger = fitting(m, area).filter(|s| !fixed && s.factor < scale.factor);
    larger.take(TRIED).find(|s| pages(s) <= now).unwrap_or_else(|| scale.clone())
}

/// The room of a part, and its scale: courses at least so far apart on paper, in at most so many parts.
fn parted(m: &Made, area: Rect, pitch: (f64, usize)) -> ((f64, f64), Scale) {
    let (job, r) = (&m.layout.job, m.round);
    let free = (area.width() - r.x0 - r.x1, area.height() - HEAD - r.y0 - r.y1 - 0.5);
    let size = (m.house.width(), m.house.height());
    (free, scale_in_parts(size, free, job.product.exposure, pitch, &job.sheet))
}

/// Whether few enough parts hold courses so far apart; else they would be drawn smaller instead.
fn reached(m: &Made, area: Rect, pitch: (f64, usize)) -> bool {
    m.layout.job.product.exposure / parted(m, area, pitch).1.factor >= pitch.0
}

/// A wall in parts with match lines, courses at least so far apart on paper where so many parts hold it, its lists
/// under them and on further sheets.
fn in_parts(m: &Made, area: Rect, pitch: (f64, usize)) -> Drawn {
    let say = m.layout.job.sheet.language;
    let job = &m.layout.job;
    let (free, scale) = parted(m, area, pitch);
    let (across, _) = parts((m.house.width(), m.house.height()), free, &scale);
    let all = windows(m.house, free, &scale, (m.layout.datum, job.product.exposure));
    let count = all.len();
    let (mut out, mut trims, mut without) = (Vec::new(), Vec::new(), 0);
    let (mut under, mut under_trims) = (Vec::new(), Vec::new());
    for (index, window) in all.into_iter().enumerate() {
        let title = Phrase::new(|lang| words::part(lang, m.title.of(lang), index + 1, count));
        let mut c = begun(m, area, &scale, &title);
        let window = without_sky(m, window);
        let r = round_part(m, window);
        let h = window.height() / scale.factor + r.y0 + r.y1;
        let h = h + if window.y0 <= m.house.y0 { m.drop / scale.factor } else { 0.0 };
        let bottom = area.y1 - HEAD - h;
        let body = Rect::new(area.x0, bottom.max(area.y0), area.x1, area.y1 - HEAD);
        // Lists begin in the room that a part leaves at its foot.
        let tops = tops_under(area, area.x1, bottom - UNDER);
        let v = view(m, (window, r), Point::new(area.x0, bottom), scale.factor);
        let part = Part { index, count, across };
        let next = |dx, dy| part.beside(dx, dy);
        let mut left = draw(&mut c, &shown(m, m.shows), &v, body, &next);
        if left.marks > 0 && m.shows == Shows::Pieces {
            c = begun(m, area, &scale, &title);
            left = draw(&mut c, &shown(m, Shows::PiecesAlone), &v, body, &next);
            let title = Phrase::new(|lang| words::trim_view(lang, title.of(lang)));
            let mut trim = begun(m, area, &scale, &title);
            let of_trim = draw(&mut trim, &shown(m, Shows::Trim), &v, body, &next);
            without += of_trim.marks;
            finish(say, &mut trim, area, of_trim);
            trims.push(trim);
            under_trims.push(tops.clone());
        }
        without += left.marks;
        finish(say, &mut c, area, left);
        out.push(c);
        under.push(tops);
    }
    out.extend(trims);
    under.extend(under_trims);
    let parts = out.len();
    let factor = scale.factor;
    Drawn { pages: pages(m, area, &scale, (&under, parts), out), without, factor }
}

/// The drawn sheets, so many of them parts of the wall, with the lists: beside and under the drawing where `tops`
/// says so, and on further sheets.
fn pages(
    m: &Made,
    area: Rect,
    scale: &Scale,
    (tops, parts): (&[Vec<f64>], usize),
    mut drawn: Vec<Canvas>,
) -> Vec<Page> {
    let say = m.layout.job.sheet.language;
    let further = || {
        let mut c = Canvas::new(area);
        let title = say.line(|lang| sheet_words::title(lang, m.title.of(lang), false));
        let title = fitted(&title, TITLE, true, area.width());
        c.left(&title, TITLE, true, Point::new(area.x0, area.y1 - 0.12));
        c
    };
    let drawings = drawn.len();
    drawn = m.rows.draw(area, tops, drawn, further);
    let count = drawn.len();
    let pieces = m.alone.walls.iter().flat_map(|w| &w.courses).flat_map(|c| &c.runs);
    let pieces: usize = pieces.map(|r| r.pieces.len()).sum();
    let stem = clean(m.prefix, Destination::FileName { words: 5, letters: 40 });
    let name = |i: usize| match count {
        1 => format!("wall-{stem}"),
        _ => format!("wall-{stem}-{}", i + 1),
    };
    let page = |(i, canvas): (usize, Canvas)| {
        let title = if parts > 1 && i < parts {
            Phrase::new(|lang| words::part(lang, m.title.of(lang), i + 1, parts))
        } else {
            Phrase::new(|lang| sheet_words::title(lang, m.title.of(lang), i == 0))
        };
        Page {
            name: name(i),
            description: say
                .line(|lang| words::description(lang, m.title.of(lang), pieces, &scale.words)),
            title,
            scale: if i < drawings { scale.words.clone() } else { say.word(sheet_words::NTS) },
            orientation: m.orientation,
            canvas,
        }
    };
    drawn.into_iter().enumerate().map(page).collect()
}
