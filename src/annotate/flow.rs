//! Headings, sentences and tables in columns that go on from page to page.

use super::canvas::{Canvas, wrapped};
use super::columns;
use super::style::{HEADING, Ink, TEXT, TITLE};
use crate::geom::vocabulary::{Point, Rect};

/// Distance of lines of text.
const LINE: f64 = 0.155;
/// Distance of lines of a heading.
const HEAD_LINE: f64 = 0.19;
/// Share of its room that bold text may take, set as plain text is.
const BOLD: f64 = 0.92;
/// Room between columns.
const GAP: f64 = 0.25;
/// Room of a count's unit.
const UNITS: f64 = 0.72;

/// Columns of rows that go on from page to page.
pub(super) struct Flow {
    area: Rect,
    /// Heading of the pages after the first.
    next: String,
    columns: usize,
    /// Top of the columns of the page in hand.
    top: f64,
    column: usize,
    y: f64,
    pages: Vec<Canvas>,
    canvas: Canvas,
}

impl Flow {
    /// Columns under `top` on a page that is begun; on small paper they are as wide as those of its lists.
    pub(super) fn new(area: Rect, canvas: Canvas, top: f64, next: String) -> Self {
        let columns = match columns::is_small(area) {
            true => columns::count(area),
            false => ((area.width() / 4.05).floor() as usize).clamp(1, 6),
        };
        Flow { area, next, columns, top, column: 0, y: top, pages: Vec::new(), canvas }
    }

    /// The pages, the last one too.
    pub(super) fn done(mut self) -> Vec<Canvas> {
        self.pages.push(self.canvas);
        self.pages
    }

    fn width(&self) -> f64 {
        (self.area.width() + GAP) / self.columns as f64 - GAP
    }

    fn x(&self) -> f64 {
        self.area.x0 + self.column as f64 * (self.width() + GAP)
    }

    /// Makes room for so much, in the next column or on the next page.
    fn room(&mut self, height: f64) {
        if self.y - height >= self.area.y0 {
            return;
        }
        self.column += 1;
        if self.column == self.columns {
            let mut next = Canvas::new(self.area);
            let at = Point::new(self.area.x0, self.area.y1 - 0.12);
            next.left(&self.next, TITLE, true, at);
            self.pages.push(std::mem::replace(&mut self.canvas, next));
            self.column = 0;
            self.top = self.area.y1 - 0.4;
        }
        self.y = self.top;
    }

    pub(super) fn head(&mut self, text: &str) {
        let lines = wrapped(text, HEADING, self.width() * BOLD);
        let more = lines.len().saturating_sub(1) as f64 * HEAD_LINE;
        self.room(0.32 + more + 2.0 * LINE);
        self.y -= 0.12;
        let x = self.x();
        for (i, line) in lines.iter().enumerate() {
            let at = Point::new(x, self.y - i as f64 * HEAD_LINE);
            self.canvas.left(line, HEADING, true, at);
        }
        self.y -= more;
        let rule = self.y - 0.11;
        self.canvas.line(Ink::Rule, Point::new(x, rule), Point::new(x + self.width(), rule));
        self.y -= 0.26;
    }

    pub(super) fn text(&mut self, text: &str) {
        for (i, line) in wrapped(text, TEXT, self.width() - 0.12).iter().enumerate() {
            self.room(LINE * 0.6);
            let x = self.x() + if i > 0 { 0.1 } else { 0.0 };
            self.canvas.left(line, TEXT, false, Point::new(x, self.y));
            self.y -= LINE;
        }
        self.y -= 0.02;
    }

    pub(super) fn count(&mut self, item: &str, count: &str, unit: &str) {
        let w = self.width();
        // Where a count has no unit it stands at the right.
        let units_room = if unit.is_empty() { 0.0 } else { UNITS };
        let at_most = w - units_room - 0.18 - crate::typeface::width(count, TEXT, true);
        let (items, units) = (wrapped(item, TEXT, at_most), wrapped(unit, TEXT, UNITS));
        let lines = items.len().max(units.len()).max(1);
        self.room(LINE * (lines as f64 - 0.4));
        let (x, y) = (self.x(), self.y);
        let end = if unit.is_empty() { w } else { w - UNITS - 0.08 };
        self.canvas.right(count, TEXT, true, Point::new(x + end, y));
        for (left, list) in [(x, &items), (x + w - UNITS, &units)] {
            for (i, line) in list.iter().enumerate() {
                self.canvas.left(line, TEXT, false, Point::new(left, y - i as f64 * LINE));
            }
        }
        self.y -= LINE * lines as f64;
    }
}
