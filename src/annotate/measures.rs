//! Sheets to tape a house by: one a wall, with its outline, each length numbered where it is taped, and a table
//! with the drawn length, a blank, and what an error spoils.

use super::canvas::{Canvas, fitted, wrapped};
use super::style::{Ink, TEXT, TITLE};
use crate::geom::polygon::bounds;
use crate::geom::vocabulary::{Point, Rect, Vec2, Xy};
use crate::language::{Language, SheetLanguage};
use crate::layout::Layout;
use crate::layout::wall::LaidWall;
use crate::model::measure::Measure;
use crate::model::sheet::Sheet;
use crate::units::LengthStyle;
use crate::wording::measures as words;

/// Page, inches: ANSI A upright, for a clipboard (`DrawingFact::ArchitecturalPaper`).
const WIDTH: f64 = 8.5;
const HEIGHT: f64 = 11.0;
const MARGIN: f64 = 0.5;
/// Room of the picture.
const PICTURE: f64 = 4.0;
/// Pitch of lines of type.
const LINE: f64 = 0.15;
/// Numbers stand at least so far from one another.
const APART: f64 = 0.21;
/// Where columns begin: number, what, drawn, taped, spoils.
const COLUMNS: [f64; 5] = [0.0, 0.42, 3.75, 4.85, 6.25];

/// The sheets of all walls, in the order of the layout; each wall's lengths worst first.
pub fn measures(layout: &Layout, all: &[Measure]) -> Vec<Sheet> {
    let (style, say) = (layout.job.sheet.lengths, layout.job.sheet.language);
    let room = Heights::of(say);
    let mut out = Vec::new();
    for (elevation, wall) in layout.walls() {
        let mine: Vec<&Measure> = all.iter().filter(|m| *m.wall == *wall.id).collect();
        if mine.is_empty() {
            continue;
        }
        let title = say.line(|l| words::sheet_title(l, &elevation.name, &wall.id));
        let (whole, top) = (room.table, room.table - PICTURE - 0.2);
        let first = mine.len().min(room.rows_under(top));
        let mut page = Paper::new(&title, say);
        page.picture(wall, &mine);
        page.table(&mine[..first], 1, top, style);
        out.push(page.sheet(out.len() + 1, &title, &wall.id));
        for (i, rows) in mine[first..].chunks(room.rows_under(whole)).enumerate() {
            let title = say.line(|l| words::further_title(l, &wall.id, i + 2));
            let mut page = Paper::new(&title, say);
            let from = first + i * room.rows_under(whole) + 1;
            page.table(rows, from, whole, style);
            out.push(page.sheet(out.len() + 1, &title, &wall.id));
        }
    }
    out
}

/// Heights on a page; each text has a line for each language.
#[derive(Clone, Copy)]
struct Heights {
    /// Where a table begins that has the page to itself.
    table: f64,
    /// Its heads.
    heads: f64,
    /// Pitch of rows: a pencil needs more than type.
    row: f64,
    /// Where tables end, over the caution.
    foot: f64,
}

impl Heights {
    fn of(say: SheetLanguage) -> Self {
        let more = LINE * (say.each().len() - 1) as f64;
        Heights {
            table: HEIGHT - MARGIN - 0.75 - words::HOW_LINES as f64 * more,
            heads: 0.22 + more,
            row: 0.26 + more,
            foot: MARGIN + 0.08 + more,
        }
    }

    /// Rows of a table that begins so high.
    fn rows_under(&self, top: f64) -> usize {
        ((top - self.heads - self.foot) / self.row).floor() as usize
    }
}

/// Where the number of a length stands: on its line where there is room, else beside it.
fn free(a: Point, z: Point, taken: &[Point]) -> Point {
    let along = [0.5, 0.35, 0.65, 0.2, 0.8, 0.1, 0.9].map(|t| a + (z - a) * t);
    let middle = a + (z - a) * 0.5;
    let around = (1..=5).flat_map(|ring| {
        let off = 0.22 * f64::from(ring);
        [(1.0, 0.0), (-1.0, 0.0), (0.0, -1.0), (0.0, 1.0), (1.0, -1.0), (-1.0, -1.0)]
            .map(|(x, y)| middle + Vec2::new(x * off, y * off))
    });
    let is_free = |p: &Point| taken.iter().all(|t| p.distance(*t) > APART);
    along.into_iter().chain(around).find(is_free).unwrap_or(middle)
}

struct Paper {
    canvas: Canvas,
    say: SheetLanguage,
    room: Heights,
}

impl Paper {
    fn new(title: &str, say: SheetLanguage) -> Self {
        let mut canvas = Canvas::new(Rect::new(0.0, 0.0, WIDTH, HEIGHT));
        let room = WIDTH - 2.0 * MARGIN;
        let shown = fitted(title, TITLE, true, room);
        canvas.left(&shown, TITLE, true, Point::new(MARGIN, HEIGHT - MARGIN - 0.1));
        let how = say.each().iter().flat_map(|l| wrapped(words::HOW.of(*l), TEXT, room));
        for (i, line) in how.enumerate() {
            let y = HEIGHT - MARGIN - 0.36 - i as f64 * LINE;
            canvas.left(&line, TEXT, false, Point::new(MARGIN, y));
        }
        Paper { canvas, say, room: Heights::of(say) }
    }

    /// A text about a place, a line for each language, no wider than its column.
    fn said(&mut self, text: impl Fn(Language) -> String, bold: bool, at: Point, width: f64) {
        let text = self.say.block(text);
        let lines: Vec<&str> = text.split('\n').collect();
        let up = (lines.len() - 1) as f64 * LINE / 2.0;
        for (i, line) in lines.iter().enumerate() {
            let place = Point::new(at.x, at.y + up - i as f64 * LINE);
            self.canvas.left(&fitted(line, TEXT, bold, width), TEXT, bold, place);
        }
    }

    /// The wall with its openings, and each length as a line with its number.
    fn picture(&mut self, wall: &LaidWall, measures: &[&Measure]) {
        let point = |p: &Xy| Point::new(p[0], p[1]);
        let outline: Vec<Point> = wall.outline.iter().map(point).collect();
        let Some(b) = bounds(&outline) else { return };
        let foot = b.y0.min(0.0);
        let (w, h) = (b.width().max(1.0), (b.y1 - foot).max(1.0));
        let room = Rect::new(MARGIN + 0.5, 0.0, WIDTH - MARGIN - 0.5, PICTURE - 0.6);
        let k = (room.width() / w).min(room.height() / h);
        let bottom = self.room.table - PICTURE + 0.4;
        let left = WIDTH / 2.0 - k * w / 2.0;
        let at = |p: Point| Point::new(left + k * (p.x - b.x0), bottom + k * (p.y - foot));
        let ring: Vec<Point> = outline.iter().map(|p| at(*p)).collect();
        self.canvas.ring(Ink::Wall, &ring);
        for o in &wall.openings {
            let ring: Vec<Point> = o.outline.iter().map(|p| at(point(p))).collect();
            self.canvas.ring(Ink::Opening, &ring);
        }
        for b in &wall.bands {
            let ring: Vec<Point> = b.iter().map(|p| at(point(p))).collect();
            self.canvas.ring(Ink::Board, &ring);
        }
        let (x0, x1) = (left - 0.3, left + k * w + 0.3);
        let floor = bottom - k * foot;
        self.canvas.line(Ink::Level, Point::new(x0, floor), Point::new(x1, floor));
        let mut taken: Vec<Point> = Vec::new();
        for (i, m) in measures.iter().enumerate() {
            let [a, z] = m.ends.map(|p| at(point(&p)));
            self.canvas.line(Ink::Dimension, a, z);
            let place = free(a, z, &taken);
            taken.push(place);
            let middle = a + (z - a) * 0.5;
            if place.distance(middle) > a.distance(z) / 2.0 + 0.01 {
                self.canvas.line(Ink::Leader, middle, place);
            }
            self.canvas.on_ground(&(i + 1).to_string(), TEXT, place);
        }
    }

    fn table(&mut self, rows: &[&Measure], from: usize, top: f64, style: LengthStyle) {
        let x = |i: usize| MARGIN + COLUMNS[i];
        let ends = [COLUMNS[1], COLUMNS[2], COLUMNS[3], COLUMNS[4], WIDTH - 2.0 * MARGIN];
        let wide = |i: usize| ends[i] - COLUMNS[i] - if i < 4 { 0.1 } else { 0.0 };
        let Heights { heads, row, .. } = self.room;
        for (i, head) in words::HEADS.iter().enumerate() {
            let at = Point::new(x(i), top - heads / 2.0 + 0.01);
            self.said(|l| head.of(l).to_owned(), true, at, wide(i));
        }
        let first = top - heads;
        let line = |y: f64| [Point::new(MARGIN, y), Point::new(WIDTH - MARGIN, y)];
        let mut y = first;
        for (i, m) in rows.iter().enumerate() {
            let [a, b] = line(y);
            self.canvas.line(Ink::Rule, a, b);
            let at = |i: usize| Point::new(x(i), y - row / 2.0);
            self.canvas.left(&(from + i).to_string(), TEXT, true, at(0));
            self.said(|l| words::what(l, m), false, at(1), wide(1));
            self.canvas.left(&style.length(m.drawn), TEXT, false, at(2));
            self.said(|l| words::spoils(l, &m.spoils), false, at(4), wide(4));
            y -= row;
        }
        let [a, b] = line(y);
        self.canvas.line(Ink::Rule, a, b);
        for i in [3, 4] {
            let x = x(i) - 0.08;
            self.canvas.line(Ink::Rule, Point::new(x, first), Point::new(x, y));
        }
        // At the foot, one language over the other.
        let foot = MARGIN - 0.12 + (self.say.each().len() - 1) as f64 * LINE / 2.0;
        let at = Point::new(MARGIN, foot);
        self.said(|l| words::CAUTION.of(l).to_owned(), true, at, WIDTH - 2.0 * MARGIN);
    }

    fn sheet(mut self, number: usize, title: &str, wall: &str) -> Sheet {
        self.canvas.finish_marks();
        Sheet {
            full_size: false,
            name: format!("{number:02}-{wall}"),
            title: title.to_owned(),
            description: self.say.sentence(words::DESCRIPTION),
            width: WIDTH,
            height: HEIGHT,
            drawing: self.canvas.drawing,
        }
    }
}
