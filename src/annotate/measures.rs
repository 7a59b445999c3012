//! Sheets to tape a house by: one a wall, with its outline, each length numbered where it is taped, and a table
//! with the drawn length, a blank, and what an error spoils.

use super::canvas::{Canvas, fitted, wrapped};
use super::style::{Ink, TEXT, TITLE};
use crate::geom::polygon::bounds;
use crate::geom::vocabulary::{Point, Rect, Vec2, Xy};
use crate::language::SheetLanguage;
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
/// Pitch of rows: a pencil needs more than type.
const ROW: f64 = 0.26;
/// Rows under a picture, and on a sheet that goes on: the caution has two lines of room beneath.
const ROWS: usize = 18;
const MORE_ROWS: usize = 34;
/// Numbers stand at least so far from one another.
const APART: f64 = 0.21;
/// Where columns begin: number, what, drawn, taped, spoils.
const COLUMNS: [f64; 5] = [0.0, 0.42, 3.75, 4.85, 6.25];

/// The sheets of all walls, in the order of the layout; each wall's lengths worst first.
pub fn measures(layout: &Layout, all: &[Measure]) -> Vec<Sheet> {
    let style = layout.job.sheet.lengths;
    let say = layout.job.sheet.language;
    let mut out = Vec::new();
    for (elevation, wall) in layout.walls() {
        let mine: Vec<&Measure> = all.iter().filter(|m| *m.wall == *wall.id).collect();
        if mine.is_empty() {
            continue;
        }
        let title = words::sheet_title(&elevation.name, &wall.id);
        let first = mine.len().min(ROWS);
        let mut page = Paper::new(&title, say);
        page.picture(wall, &mine);
        let top = HEIGHT - MARGIN - 0.75 - PICTURE - 0.2;
        page.table(&mine[..first], 1, top, style);
        out.push(page.sheet(out.len() + 1, &title, &wall.id));
        for (i, rows) in mine[first..].chunks(MORE_ROWS).enumerate() {
            let title = words::goes_on(&title);
            let mut page = Paper::new(&title, say);
            let from = first + i * MORE_ROWS + 1;
            page.table(rows, from, HEIGHT - MARGIN - 0.75, style);
            out.push(page.sheet(out.len() + 1, &title, &wall.id));
        }
    }
    out
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
}

impl Paper {
    fn new(title: &str, say: SheetLanguage) -> Self {
        let mut canvas = Canvas::new(Rect::new(0.0, 0.0, WIDTH, HEIGHT));
        let room = WIDTH - 2.0 * MARGIN;
        let shown = fitted(title, TITLE, true, room);
        canvas.left(&shown, TITLE, true, Point::new(MARGIN, HEIGHT - MARGIN - 0.1));
        for (i, line) in wrapped(words::HOW, TEXT, room).iter().take(2).enumerate() {
            let y = HEIGHT - MARGIN - 0.36 - i as f64 * 0.15;
            canvas.left(line, TEXT, false, Point::new(MARGIN, y));
        }
        Paper { canvas, say }
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
        let bottom = HEIGHT - MARGIN - 0.75 - PICTURE + 0.4;
        let left = WIDTH / 2.0 - k * w / 2.0;
        let at = |p: Point| Point::new(left + k * (p.x - b.x0), bottom + k * (p.y - foot));
        let ring: Vec<Point> = outline.iter().map(|p| at(*p)).collect();
        self.canvas.ring(Ink::Wall, &ring);
        for o in &wall.openings {
            let ring: Vec<Point> = o.outline.iter().map(|p| at(point(p))).collect();
            self.canvas.ring(Ink::Opening, &ring);
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
        let c = &mut self.canvas;
        for (i, head) in words::HEADS.iter().enumerate() {
            c.left(head, TEXT, true, Point::new(x(i), top - 0.1));
        }
        let mut y = top - 0.22;
        for (i, m) in rows.iter().enumerate() {
            c.line(Ink::Rule, Point::new(MARGIN, y), Point::new(WIDTH - MARGIN, y));
            let middle = y - ROW / 2.0;
            let at = |i: usize| Point::new(x(i), middle);
            c.left(&(from + i).to_string(), TEXT, true, at(0));
            let what = fitted(&words::what(m), TEXT, false, COLUMNS[2] - COLUMNS[1] - 0.1);
            c.left(&what, TEXT, false, at(1));
            c.left(&style.length(m.drawn), TEXT, false, at(2));
            let spoils = fitted(&words::spoils(&m.spoils), TEXT, false, WIDTH - MARGIN - x(4));
            c.left(&spoils, TEXT, false, at(4));
            y -= ROW;
        }
        c.line(Ink::Rule, Point::new(MARGIN, y), Point::new(WIDTH - MARGIN, y));
        for i in [3, 4] {
            c.line(Ink::Rule, Point::new(x(i) - 0.08, top - 0.22), Point::new(x(i) - 0.08, y));
        }
        // The last line at the foot, one in another language over it.
        for (i, lang) in self.say.each().iter().rev().enumerate() {
            let at = Point::new(MARGIN, MARGIN - 0.12 + i as f64 * 0.15);
            c.left(words::CAUTION.of(*lang), TEXT, true, at);
        }
    }

    fn sheet(mut self, number: usize, title: &str, wall: &str) -> Sheet {
        self.canvas.finish_marks();
        Sheet {
            full_size: false,
            name: format!("{number:02}-{wall}"),
            title: title.to_owned(),
            description: words::DESCRIPTION.to_owned(),
            width: WIDTH,
            height: HEIGHT,
            drawing: self.canvas.drawing,
        }
    }
}
