//! Border, title block and page number: the fields of ISO 7200 (from memory), margins of ISO 5457
//! (20 mm at the filing edge, 10 mm elsewhere, from memory).

use super::canvas::{Canvas, fitted, wrapped};
use super::style::{Ink, TEXT};
use crate::geom::vocabulary::{Point, Rect};
use crate::job::paper::{PAPERS, paper};
use crate::job::revision::Revision;
use crate::language::{Phrase, Said};
use crate::layout::Layout;
use crate::model::sheet::Sheet;
use crate::wording::{cautions, checks, patterns, sheets};

/// A page before its border.
pub(super) struct Page {
    pub(super) name: String,
    pub(super) title: Phrase,
    pub(super) description: String,
    pub(super) scale: String,
    pub(super) orientation: Orientation,
    pub(super) canvas: Canvas,
}

/// Which way round a sheet's paper lies.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Orientation {
    Landscape,
    Portrait,
}

const FILING: f64 = 20.0 / 25.4;
const MARGIN: f64 = 10.0 / 25.4;
/// Height of a row of the title block whose values may take two lines, and of one whose values stand on one.
const ROW: f64 = 0.43;
const LOW_ROW: f64 = 0.3;

/// Paper so wide at most is held in the hand, where sheets may be turned: letter, A4, ARCH A. Larger ones lie in a set
/// that is bound at its left, all of them landscape.
const HELD: f64 = 12.0;

/// Both orientations on paper that is held in the hand, else landscape alone.
pub(super) fn orientations(layout: &Layout) -> &'static [Orientation] {
    let (w, _) = size(layout, Orientation::Landscape);
    if w <= HELD {
        &[Orientation::Landscape, Orientation::Portrait]
    } else {
        &[Orientation::Landscape]
    }
}

/// The paper of a layout's sheets.
fn size(layout: &Layout, o: Orientation) -> (f64, f64) {
    // The job's check refuses names that are not listed; ARCH B is the default.
    let p = paper(&layout.job.sheet.paper).unwrap_or(PAPERS[1]);
    match o {
        Orientation::Landscape => (p.width, p.height),
        Orientation::Portrait => (p.height, p.width),
    }
}

/// Distance of its lines.
const LINE: f64 = 0.155;

/// Width of the table of revisions.
const TABLE: f64 = 3.9;
/// Most rows of it.
const ROWS: usize = 3;
/// Widths of its columns but the last.
const COLUMNS: [f64; 2] = [0.4, 1.0];

fn notice(layout: &Layout, o: Orientation) -> Vec<String> {
    let table = if revisions(layout).is_empty() { 0.0 } else { TABLE + 0.12 };
    let say = layout.job.sheet.language;
    wrapped(&say.block(cautions::notice), TEXT, border(layout, o).width() - 0.24 - table)
}

/// The last revisions.
fn revisions(layout: &Layout) -> &[Revision] {
    let all = &layout.job.revision;
    &all[all.len().saturating_sub(ROWS)..]
}

/// Lines that notice and table take over the title block.
fn band(layout: &Layout, o: Orientation) -> usize {
    let rows = revisions(layout).len();
    notice(layout, o).len().max(if rows > 0 { rows + 1 } else { 0 })
}

/// The table of revisions over the title block, the newest on top, under its heads.
fn revision_table(c: &mut Canvas, layout: &Layout, b: Rect, top: f64) {
    let rows = revisions(layout);
    if rows.is_empty() {
        return;
    }
    let x = b.x1 - TABLE;
    let high = top + 0.06 + (rows.len() + 1) as f64 * LINE;
    c.line(Ink::Rule, Point::new(x, top), Point::new(x, high));
    c.line(Ink::Rule, Point::new(x, high), Point::new(b.x1, high));
    let say = layout.job.sheet.language;
    let head = sheets::REVISION_HEADS.map(|h| say.word(h));
    let told = rows.iter().map(|r| [r.letter.clone(), r.date.clone(), r.what.clone()]);
    for (i, cells) in told.chain([head]).enumerate() {
        let y = top + 0.1 + i as f64 * LINE;
        let mut at = x + 0.06;
        let last = TABLE - 0.12 - COLUMNS.iter().sum::<f64>();
        for (text, wide) in cells.iter().zip(COLUMNS.into_iter().chain([last])) {
            c.left(&fitted(text, TEXT, false, wide - 0.06), TEXT, false, Point::new(at, y));
            at += wide;
        }
    }
}

/// Height of the bar that says that the check failed.
const ALARM: f64 = 0.32;

/// The bar's height on sheets of a layout that breaks rules, else nothing.
fn alarm(layout: &Layout) -> f64 {
    if layout.verify.passes() { 0.0 } else { ALARM }
}

/// Inside the border.
fn border(layout: &Layout, o: Orientation) -> Rect {
    let (w, h) = size(layout, o);
    Rect::new(FILING, MARGIN, w - MARGIN, h - MARGIN)
}

/// Where a landscape page's own content goes.
pub(super) fn room(layout: &Layout) -> Rect {
    room_in(layout, Orientation::Landscape)
}

/// Where a page's own content goes: over the title block, a little off the border.
pub(super) fn room_in(layout: &Layout, o: Orientation) -> Rect {
    let b = border(layout, o);
    let below = ROW + lower_row(layout, o) + 0.07 + band(layout, o) as f64 * LINE;
    Rect::new(b.x0 + 0.12, b.y0 + below, b.x1 - 0.12, b.y1 - 0.1 - alarm(layout))
}

/// Adds border, title block and page number.
pub(super) fn finish(mut page: Page, layout: &Layout, number: usize, count: usize) -> Sheet {
    let say = layout.job.sheet.language;
    let o = page.orientation;
    let b = border(layout, o);
    let (width, height) = size(layout, o);
    let c = &mut page.canvas;
    c.placer.area = Rect::new(0.0, 0.0, width, height);
    c.rect(Ink::Border, b);
    if !layout.verify.passes() {
        let bar = Rect::new(b.x0, b.y1 - ALARM, b.x1, b.y1);
        c.alarm(bar, &say.line(|lang| checks::bar(lang, layout.verify.places())));
    }
    let lower = lower_row(layout, o);
    let top = b.y0 + ROW + lower;
    c.line(Ink::Border, Point::new(b.x0, top), Point::new(b.x1, top));
    for (i, line) in notice(layout, o).iter().rev().enumerate() {
        c.left(line, TEXT, false, Point::new(b.x0 + 0.12, top + 0.1 + i as f64 * LINE));
    }
    revision_table(c, layout, b, top);
    let mut x = b.x0;
    let cells = title_block(layout, &say.name(&page.title), &page.scale, (number, count));
    for (share, cells) in shares(o).into_iter().zip(cells) {
        let w = share * b.width();
        for (i, (name, value)) in cells.iter().enumerate() {
            let y1 = top - i as f64 * ROW;
            let alone = if i == 1 && lower < ROW { 0.205 } else { 0.265 };
            let name = fitted(name, TEXT, false, w - 0.12);
            c.left(&name, TEXT, false, Point::new(x + 0.06, y1 - 0.075));
            let shown = if value.is_empty() { "-" } else { value };
            let lines = in_cell(shown, w - 0.12);
            for (line, y) in
                lines.iter().zip(if lines.len() == 1 { [alone, 0.0] } else { [0.215, 0.355] })
            {
                c.left(line, TEXT, true, Point::new(x + 0.06, y1 - y));
            }
        }
        if x > b.x0 {
            c.line(Ink::Rule, Point::new(x, b.y0), Point::new(x, top));
        }
        x += w;
    }
    c.line(Ink::Rule, Point::new(b.x0, top - ROW), Point::new(b.x1, top - ROW));
    Sheet {
        full_size: page.scale == say.word(patterns::FULL_SIZE),
        name: format!("{number:02}-{}", page.name),
        title: say.name(&page.title),
        description: page.description,
        width,
        height,
        drawing: page.canvas.drawing,
    }
}

/// The share of the width that each pair of cells of the title block takes: what a sheet shows is the longest.
fn shares(o: Orientation) -> [f64; 5] {
    match o {
        Orientation::Landscape => [0.24, 0.14, 0.34, 0.12, 0.16],
        Orientation::Portrait => [0.24, 0.14, 0.33, 0.135, 0.155],
    }
}

/// Height of the lower row of the title block: its values are known before any sheet is, but for scales.
fn lower_row(layout: &Layout, o: Orientation) -> f64 {
    let say = layout.job.sheet.language;
    let longest =
        ["1 1/2\" = 1'-0\"".to_owned(), say.word(sheets::NTS), say.word(patterns::FULL_SIZE)];
    let one_line = longest.iter().all(|scale| {
        let cells = title_block(layout, "", scale, (999, 999));
        let rooms = shares(o).map(|share| share * border(layout, o).width() - 0.12);
        cells.iter().zip(rooms).all(|([_, (_, value)], room)| in_cell(value, room).len() <= 1)
    });
    if one_line { LOW_ROW } else { ROW }
}

/// The cells of the title block in pairs, their names and words.
fn title_block(
    layout: &Layout,
    title: &str,
    scale: &str,
    (number, count): (usize, usize),
) -> [[(String, String); 2]; 5] {
    let say = layout.job.sheet.language;
    let t = &layout.job.title;
    let unproved = match layout.drawing.unit_proved {
        true => String::new(),
        false => say.word(sheets::DO_NOT_SCALE),
    };
    let name = |word: Said| say.word(word);
    let issued = [t.date.as_str(), t.revision.as_str()];
    let issued: Vec<&str> = issued.into_iter().filter(|s| !s.is_empty()).collect();
    let kind = format!("{}, {scale}{unproved}", name(sheets::SIDING_LAYOUT));
    [
        [(name(sheets::PROJECT), t.project.clone()), (name(sheets::ADDRESS), t.address.clone())],
        [(name(sheets::CLIENT), t.client.clone()), (name(sheets::NUMBER), t.number.clone())],
        [(name(sheets::SHEET_TITLE), title.to_owned()), (name(sheets::TYPE_AND_SCALE), kind)],
        [
            (name(sheets::DRAWN_BY), t.drawn_by.clone()),
            (name(sheets::APPROVED_BY), t.approved_by.clone()),
        ],
        [
            (name(sheets::DATE_AND_REVISION), issued.join(", ")),
            (name(sheets::SHEET), say.line(|lang| sheets::sheet_of(lang, number, count))),
        ],
    ]
}

/// What a cell of the title block shows: on one line, else on two, the second as much as has room.
fn in_cell(words: &str, room: f64) -> Vec<String> {
    let wide = |text: &str, bold: bool| crate::typeface::width(text, TEXT, bold);
    if wide(words, true) <= room {
        return vec![words.to_owned()];
    }
    // Words are parted by their width in plain letters.
    let plain = room * wide(words, false) / wide(words, true);
    let lines = wrapped(words, TEXT, plain * 0.98);
    let (first, rest) = lines.split_at(lines.len().min(1));
    let rest = rest.join(" ");
    first
        .iter()
        .chain([&rest])
        .filter(|l| !l.is_empty())
        .map(|l| fitted(l, TEXT, true, room))
        .collect()
}
