//! Headings, sentences and tables in columns that go on from page to page.

use super::canvas::{Canvas, fitted, wrapped};
use super::style::{HEADING, Ink, TEXT, TITLE};
use crate::geom::vocabulary::{Point, Rect};

/// Distance of lines of text.
const LINE: f64 = 0.155;
/// Room between columns.
const GAP: f64 = 0.25;

/// Columns of rows that go on from page to page.
pub(super) struct Flow {
    area: Rect,
    /// Heading of the pages after the first.
    next: &'static str,
    columns: usize,
    /// Top of the columns of the page in hand.
    top: f64,
    column: usize,
    y: f64,
    pages: Vec<Canvas>,
    canvas: Canvas,
}

impl Flow {
    /// Columns under `top` on a page that is begun.
    pub(super) fn new(area: Rect, canvas: Canvas, top: f64, next: &'static str) -> Self {
        let columns = ((area.width() / 4.05).floor() as usize).clamp(1, 6);
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
            next.left(self.next, TITLE, true, at);
            self.pages.push(std::mem::replace(&mut self.canvas, next));
            self.column = 0;
            self.top = self.area.y1 - 0.4;
        }
        self.y = self.top;
    }

    pub(super) fn head(&mut self, text: &str) {
        self.room(0.32 + 2.0 * LINE);
        self.y -= 0.12;
        let (x, y) = (self.x(), self.y);
        let text = fitted(text, HEADING, true, self.width());
        self.canvas.left(&text, HEADING, true, Point::new(x, y));
        let rule = y - 0.11;
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
        self.room(LINE * 0.6);
        let (x, y, w) = (self.x(), self.y, self.width());
        let item = fitted(item, TEXT, false, w - 1.7);
        self.canvas.left(&item, TEXT, false, Point::new(x, y));
        self.canvas.right(count, TEXT, true, Point::new(x + w - 0.8, y));
        let unit = fitted(unit, TEXT, false, 0.72);
        self.canvas.left(&unit, TEXT, false, Point::new(x + w - 0.72, y));
        self.y -= LINE;
    }
}
