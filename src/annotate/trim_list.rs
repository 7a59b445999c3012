//! Trim by stock length: each as a bar with what is cut from it.

use std::collections::BTreeMap;

use super::canvas::{Canvas, wrapped};
use super::cut_list::heading;
use super::page::{Page, room};
use super::style::{Ink, TEXT};
use crate::geom::vocabulary::{Point, Rect};
use crate::layout::Layout;
use crate::model::trim::{TrimPiece, TrimStock};
use crate::units::LengthStyle;
use crate::wording::sheet_lengths::cut as cut_length;
use crate::wording::{sheets, trim};

const LINE: f64 = 0.155;
const BAR: f64 = 0.17;

/// A heading or a stock length.
enum Row<'a> {
    Head(String),
    Stock { number: u32, length: f64, pieces: Vec<&'a TrimPiece>, lines: Vec<String> },
}

impl Row<'_> {
    fn height(&self) -> f64 {
        match self {
            Row::Head(_) => 0.26,
            Row::Stock { lines, .. } => BAR + 0.1 + lines.len() as f64 * LINE,
        }
    }
}

pub(super) fn sheets(layout: &Layout) -> Vec<Page> {
    let area = room(layout);
    let style = layout.job.sheet.lengths;
    let columns = ((area.width() / 5.2).floor() as usize).max(1);
    let width = area.width() / columns as f64 - 0.25;
    let rows = rows(layout, style, width);
    if rows.is_empty() {
        return Vec::new();
    }
    let mut pages = Vec::new();
    let mut c = begun(area, style, true);
    let (mut column, mut y) = (0, area.y1 - 0.4);
    for (i, row) in rows.iter().enumerate() {
        // A heading does not stand alone at the foot of a column.
        let next = rows.get(i + 1).filter(|_| matches!(row, Row::Head(_)));
        if y - row.height() - next.map_or(0.0, Row::height) < area.y0 {
            column += 1;
            y = area.y1 - 0.4;
        }
        if column == columns {
            let done = std::mem::replace(&mut c, begun(area, style, false));
            pages.push(page(pages.len() + 1, done));
            column = 0;
        }
        let x = area.x0 + column as f64 * (width + 0.25);
        draw(&mut c, row, Rect::new(x, y - row.height(), x + width, y));
        y -= row.height();
    }
    pages.push(page(pages.len() + 1, c));
    pages
}

fn begun(area: Rect, style: LengthStyle, first: bool) -> Canvas {
    let mut c = Canvas::new(area);
    let title = sheets::title(sheets::TRIM_LIST, first);
    let words = sheets::trim_list(style);
    heading(&mut c, area, &title, &words);
    c
}

fn page(n: usize, c: Canvas) -> Page {
    Page {
        name: format!("trim-list-{n}"),
        title: sheets::TRIM_LIST.to_owned(),
        description: sheets::TRIM_LIST_DESCRIPTION.to_owned(),
        scale: sheets::NTS.to_owned(),
        canvas: c,
    }
}

fn rows(layout: &Layout, style: LengthStyle, width: f64) -> Vec<Row<'_>> {
    let boards = !layout.job.siding().receivers.has_pockets();
    let mut rows = Vec::new();
    for stock in TrimStock::ALL {
        let mut by_number: BTreeMap<u32, Vec<&TrimPiece>> = BTreeMap::new();
        for t in layout.trims.iter().filter(|t| t.kind.stock() == stock) {
            by_number.entry(t.stock.number()).or_default().push(t);
        }
        if by_number.is_empty() {
            continue;
        }
        let length = layout.job.stock(stock);
        rows.push(Row::Head(format!(
            "{}: {} of {}",
            trim::stock_on(stock, boards),
            crate::units::counted(by_number.len(), "length"),
            crate::wording::sheet_lengths::length(style, length)
        )));
        for (number, pieces) in by_number {
            let cuts: Vec<String> = pieces.iter().map(|t| cut(t, style, boards)).collect();
            let lines = wrapped(&cuts.join(";  "), TEXT, width - 0.5);
            rows.push(Row::Stock { number, length, pieces, lines });
        }
    }
    rows
}

fn draw(c: &mut Canvas, row: &Row, r: Rect) {
    match row {
        Row::Head(text) => {
            c.left(text, TEXT, true, Point::new(r.x0, r.y0 + 0.09));
            c.line(Ink::Rule, Point::new(r.x0, r.y0), Point::new(r.x1, r.y0));
        }
        Row::Stock { number, length, pieces, lines } => {
            c.left(&number.to_string(), TEXT, true, Point::new(r.x0, r.y1 - 0.1));
            let (x0, top) = (r.x0 + 0.4, r.y1 - 0.04);
            let k = (r.width() - 0.4) / length;
            c.rect(Ink::Offcut, Rect::new(x0, top - BAR, r.x1, top));
            let mut x = x0;
            for t in pieces {
                let end = (x + t.length * k).min(r.x1);
                let shape = Rect::new(x, top - BAR, end, top);
                c.rect(Ink::Ground, shape);
                c.rect(Ink::Opening, shape);
                let w = crate::typeface::width(&t.mark, TEXT, false);
                if w + 0.04 < end - x {
                    c.centered(&t.mark, TEXT, false, shape.center());
                }
                x = end;
            }
            for (i, l) in lines.iter().enumerate() {
                let y = top - BAR - 0.09 - i as f64 * LINE;
                c.left(l, TEXT, false, Point::new(x0, y));
            }
        }
    }
}

fn cut(t: &TrimPiece, style: LengthStyle, boards: bool) -> String {
    let length = trim::cut_to(&cut_length(style, t.length), t, style);
    let mut out = format!("{} {length}", t.mark);
    if !t.path.is_empty() {
        out = trim::along_the_curve(&out);
    }
    let words = t.ends.each_ref().map(|e| trim::end_in_short(e, style, boards));
    match words {
        [a, b] if a.is_empty() && b.is_empty() => out,
        [a, b] if a == b => format!("{out} both {a}"),
        [a, b] if b.is_empty() => format!("{out} {a}"),
        [a, b] if a.is_empty() => format!("{out} {b}"),
        [a, b] => format!("{out} {a}, {b}"),
    }
}
