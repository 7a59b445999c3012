//! Rows of lists in columns that go on from column to column and from page to page; on a first page the
//! columns may stand under a drawing, each from its own height down.

mod across;
mod lines;

pub(super) use self::across::{NEXT, count, is_small, left_of_lists, tops_under, width};

use self::across::{GAP, WIDTH};
use self::lines::{lead_lines, wrapped_after};
use super::canvas::{Canvas, fitted};
use super::style::{HEADING, Ink, TEXT};
use crate::geom::vocabulary::{Point, Rect};

/// Distance of lines of text: half as much again as capitals are high (ISO 3098, from memory).
pub(super) const LINE: f64 = 1.5 * TEXT;
/// So many lines of a section or fewer are not left alone in its last column.
const ALONE: usize = 2;
/// Room over a heading.
const OVER_HEAD: f64 = 0.08;
/// Side of a box to tick.
const BOX: f64 = 0.095;
/// Distance of boxes.
const BOXES: f64 = 0.15;

/// One line of a list.
#[derive(Clone, Debug, Default)]
pub(super) struct Row {
    /// Text with its distance from the column's left, and whether it is bold.
    cells: Vec<(f64, String, bool)>,
    /// Boxes to tick at its left.
    boxes: usize,
    /// A heading with a rule under it.
    head: bool,
    /// A heading that goes on in the next row, where its rule is.
    goes_on: bool,
    /// Not parted from the next row.
    keep: bool,
    /// Room over it.
    over: f64,
}

impl Row {
    fn height(&self) -> f64 {
        self.over
            + match (self.head, self.goes_on) {
                (true, false) => 0.215,
                (true, true) => 0.17,
                _ => LINE,
            }
    }
}

/// A list being written, for columns of one width.
#[derive(Debug)]
pub(super) struct Rows {
    width: f64,
    rows: Vec<Row>,
    /// The row that begins the second page.
    second: Option<usize>,
}

impl Rows {
    pub(super) fn new(area: Rect) -> Self {
        Rows { width: width(area), rows: Vec::new(), second: None }
    }

    /// Whether a column has no room for a table of six.
    pub(super) fn is_narrow(&self) -> bool {
        self.width < WIDTH
    }

    /// Whether a row that ends so far from the column's left stands in it.
    pub(super) fn holds(&self, end: f64) -> bool {
        end <= self.width
    }

    /// A heading, with what stands at its right.
    pub(super) fn head(&mut self, text: &str, right: &str) {
        let right_width = crate::typeface::width(right, TEXT, false);
        let beside = crate::typeface::width(text, HEADING, true) + right_width + 0.1 <= self.width;
        let mut lines = lead_lines(text, HEADING, self.width);
        // Two lines at most: names in it may be as long as a book.
        let text =
            fitted(&lines.split_off(lines.len().min(1)).join(" "), HEADING, true, self.width);
        let (first, text) = match (lines.pop(), text.is_empty()) {
            (Some(first), false) => (Some(first), text),
            (only, _) => (None, only.unwrap_or_default()),
        };
        let mut cells = vec![(0.0, text, true)];
        if !right.is_empty() && beside {
            cells.push((self.width - right_width, right.to_owned(), false));
        }
        let mut over = if self.rows.is_empty() { 0.0 } else { OVER_HEAD };
        if let Some(first) = first {
            let cells = vec![(0.0, first, true)];
            self.rows.push(Row {
                cells,
                head: true,
                goes_on: true,
                keep: true,
                over,
                ..Row::default()
            });
            over = 0.0;
        }
        self.rows.push(Row { cells, head: true, keep: true, over, ..Row::default() });
        if !right.is_empty() && !beside {
            self.kept("", right);
        }
    }

    /// Text with boxes to tick before it: `lead` in bold, the rest on as many lines as it takes.
    pub(super) fn ticked(&mut self, boxes: usize, lead: &str, text: &str) {
        let left = if boxes == 0 { 0.0 } else { boxes as f64 * BOXES + 0.04 };
        let mut leads = lead_lines(lead, TEXT, self.width - left);
        let lead = leads.pop().unwrap_or_default();
        let over = leads.len();
        for (i, line) in leads.into_iter().enumerate() {
            let boxes = if i == 0 { boxes } else { 0 };
            let cells = vec![(left, line, true)];
            self.rows.push(Row { cells, boxes, keep: true, ..Row::default() });
        }
        let boxes = if over > 0 { 0 } else { boxes };
        let begun = if lead.is_empty() {
            left
        } else {
            left + crate::typeface::width(&lead, TEXT, true) + 0.07
        };
        let inner = left + 0.12;
        let lines = wrapped_after(text, self.width - begun, self.width - inner);
        let mut first = Row { boxes, ..Row::default() };
        if !lead.is_empty() {
            first.cells.push((left, lead, true));
        }
        let mut lines = lines.into_iter();
        if let Some(line) = lines.next().filter(|l| !l.is_empty()) {
            first.cells.push((begun, line, false));
        }
        let rest: Vec<String> = lines.collect();
        first.keep = !rest.is_empty();
        self.rows.push(first);
        let last = rest.len().saturating_sub(1);
        for (i, line) in rest.into_iter().enumerate() {
            // Two lines at least go on in the next column.
            let keep = i + 1 == last;
            self.rows.push(Row { cells: vec![(inner, line, false)], keep, ..Row::default() });
        }
    }

    /// Plain text.
    pub(super) fn text(&mut self, text: &str) {
        self.ticked(0, "", text);
    }

    /// A line over what it names: `lead` in bold, the rest plain.
    pub(super) fn kept(&mut self, lead: &str, text: &str) {
        let first = self.rows.len();
        self.ticked(0, lead, text);
        self.rows.iter_mut().skip(first).for_each(|r| r.keep = true);
    }

    /// Words at distances from the column's left with boxes before them, one line; each is cut to what fits.
    pub(super) fn ticked_cells(&mut self, boxes: usize, cells: &[(f64, String)], bold: bool) {
        let ends = cells.iter().skip(1).map(|c| c.0 - 0.05).chain([self.width]);
        let cell =
            |((x, t), end): (&(f64, String), f64)| (*x, fitted(t, TEXT, bold, end - x), bold);
        let cells = cells.iter().zip(ends).map(cell).collect();
        self.rows.push(Row { cells, boxes, keep: bold, ..Row::default() });
    }

    /// Words at distances from the column's left, then a text on as many lines as it takes, at the distance of
    /// the last.
    pub(super) fn columns(&mut self, cells: &[(f64, String)], text: &str) {
        let Some(((left, _), firsts)) = cells.split_last() else { return };
        let room = self.width - left;
        let mut row = Row::default();
        row.cells.extend(firsts.iter().map(|(x, t)| (*x, t.clone(), false)));
        for (i, line) in wrapped_after(text, room, room).into_iter().enumerate() {
            if i > 0 {
                row.keep = true;
                self.rows.push(std::mem::take(&mut row));
            }
            row.cells.push((*left, line, false));
        }
        self.rows.push(row);
    }

    /// What comes next may stand on the second page, where that makes no page more.
    pub(super) fn part(&mut self) {
        self.second = Some(self.rows.len());
    }

    /// Whether the second page begins where it may, not where the first is full.
    fn parted(&self, area: Rect, tops: &[Vec<f64>]) -> Option<usize> {
        let pages = |at| self.placed(area, tops, at).last().map_or(1, |p| p.0 + 1);
        let at = self.second.filter(|_| tops.len() == 2)?;
        let first = self.placed(area, tops, Some(at)).get(at).map(|p| p.0);
        (first == Some(1) && pages(Some(at)) <= pages(None).max(2)).then_some(at)
    }

    /// How many pages the list takes where the first pages' columns begin at these heights.
    pub(super) fn pages(&self, area: Rect, tops: &[Vec<f64>]) -> usize {
        self.places(area, tops).last().map_or(1, |p| p.0 + 1).max(tops.len())
    }

    /// Page, column and height of each row.
    fn places(&self, area: Rect, tops: &[Vec<f64>]) -> Vec<(usize, usize, f64)> {
        self.placed(area, tops, self.parted(area, tops))
    }

    /// The same where row `second`, if any, begins the second page.
    fn placed(
        &self,
        area: Rect,
        tops: &[Vec<f64>],
        second: Option<usize>,
    ) -> Vec<(usize, usize, f64)> {
        let fresh = area.y1 - NEXT;
        let columns = count(area);
        let (mut page, mut column) = (0, 0);
        let top = |page: usize, column: usize| {
            tops.get(page).and_then(|t| t.get(column)).copied().unwrap_or(fresh)
        };
        let mut y = top(0, 0);
        let mut out = Vec::with_capacity(self.rows.len());
        for (i, row) in self.rows.iter().enumerate() {
            if second == Some(i) && page == 0 {
                (page, column) = (1, 0);
                y = top(page, column);
            }
            // What is kept together, up to the first row that may stand last in a column.
            let group = self.rows[i..].iter().scan(true, |go, r| {
                let now = *go;
                *go = now && r.keep;
                now.then(|| r.height())
            });
            let need: f64 = group.take(4).sum();
            let mut tries = 0;
            while y - need < area.y0 && tries <= columns * (tops.len() + 1) {
                column += 1;
                tries += 1;
                if column == columns {
                    (page, column) = (page + 1, 0);
                }
                y = top(page, column);
            }
            // A heading at a column's top needs no room over it.
            if y >= top(page, column) {
                y += row.over;
            }
            out.push((page, column, y));
            y -= row.height();
        }
        self.last_whole(area, &mut out, top);
        out
    }

    /// Takes the last section over whole into the column in which it ends, where else a line or two of it would
    /// stand there alone.
    fn last_whole(
        &self,
        area: Rect,
        out: &mut [(usize, usize, f64)],
        top: impl Fn(usize, usize) -> f64,
    ) {
        // Of a heading of two lines the first.
        let begins = |i: &usize| self.rows[*i].head && (*i == 0 || !self.rows[i - 1].goes_on);
        let head = (0..self.rows.len()).rev().find(begins);
        let Some((first, (page, column, _))) = head.zip(out.last().copied()) else { return };
        let alone = out.iter().skip(first).filter(|p| (p.0, p.1) == (page, column)).count();
        let height: f64 = self.rows[first..].iter().map(Row::height).sum();
        let mut y = top(page, column) + self.rows[first].over;
        if alone > ALONE || alone == out.len() - first || y - height < area.y0 {
            return;
        }
        for (row, place) in self.rows[first..].iter().zip(&mut out[first..]) {
            *place = (page, column, y);
            y -= row.height();
        }
    }

    /// Draws the rows, first on the pages that are begun; pages that follow are begun by `next`.
    pub(super) fn draw(
        &self,
        area: Rect,
        tops: &[Vec<f64>],
        begun: Vec<Canvas>,
        next: impl Fn() -> Canvas,
    ) -> Vec<Canvas> {
        let mut pages = begun;
        for (row, (page, column, y)) in self.rows.iter().zip(self.places(area, tops)) {
            while pages.len() <= page {
                pages.push(next());
            }
            if let Some(c) = pages.get_mut(page) {
                let x = area.x0 + column as f64 * (self.width + GAP);
                self.row(c, row, Point::new(x, y - row.over));
            }
        }
        pages
    }

    fn row(&self, c: &mut Canvas, row: &Row, at: Point) {
        let height = if row.head { HEADING } else { TEXT };
        let y = at.y - if row.head { 0.085 } else { LINE / 2.0 };
        for i in 0..row.boxes {
            let x = at.x + i as f64 * BOXES + BOX / 2.0 + 0.01;
            c.rect(Ink::Frame, Rect::from_center_size(Point::new(x, y), (BOX, BOX)));
        }
        for (i, (x, text, bold)) in row.cells.iter().enumerate() {
            let height = if i == 0 { height } else { TEXT };
            c.left(text, height, *bold, Point::new(at.x + x, y));
        }
        if row.head && !row.goes_on {
            let rule = y - 0.11;
            let end = Point::new(at.x + self.width, rule);
            c.line(Ink::Rule, Point::new(at.x, rule), end);
        }
    }
}
