//! The cut list by panel: each stock panel as a bar with what is cut from it.

use super::canvas::{Canvas, fitted};
use super::page::{Page, room};
use super::style::{HEADING, Ink, TEXT};
use crate::geom::tol::SAME;
use crate::geom::vocabulary::{Point, Rect};
use crate::layout::Layout;
use crate::layout::piece::{EndCut, Panel, Piece, PieceEnd};
use crate::layout::told;
use crate::model::half::Half;
use crate::model::ids::PieceMark;
use crate::units::LengthStyle;
use crate::wording::sheet_lengths::{length, short};
use crate::wording::siding;
use crate::wording::stocks::panel_letters;
use crate::wording::{cuts, sheets};

/// Height of a row: a bar and two lines under it.
const ROW: f64 = 0.44;
/// Columns on a sheet of 18 in and wider.
fn columns(width: f64) -> usize {
    ((width / 5.2).floor() as usize).max(1)
}

pub(super) fn sheets(layout: &Layout) -> Vec<Page> {
    let area = room(layout);
    let pieces: std::collections::BTreeMap<&str, &Piece> =
        layout.pieces().map(|(.., p)| (p.mark.as_str(), p)).collect();
    // Whole panels need no bar: they are laid as they come.
    let whole = |p: &&Panel| {
        p.pieces.len() == 1
            && p.pieces
                .first()
                .and_then(|m| pieces.get(m.as_str()))
                .is_some_and(|q| is_plain(q, p.stock))
    };
    let (plain, whole_or_not): (Vec<&Panel>, Vec<&Panel>) = layout.panels.iter().partition(whole);
    // Each half of a ripped panel has a bar of its own.
    let bars: Vec<Panel> = whole_or_not.iter().flat_map(|p| halves(p, &pieces)).collect();
    let cut: Vec<&Panel> = bars.iter().collect();
    let per_column = (((area.height() - 0.5) / ROW).floor() as usize).max(1);
    let n = columns(area.width());
    let mut out: Vec<Page> = Vec::new();
    let lengths = panel_letters(&layout.stocks, layout.job.sheet.lengths)
        .map_or(String::new(), |l| format!("{l} "));
    let longest = layout.panels.iter().map(|p| p.stock).fold(1.0, f64::max);
    for (i, chunk) in cut.chunks(per_column * n).enumerate() {
        let mut c = Canvas::new(area);
        let count = sheets::CutCount {
            all: layout.panels.len(),
            cut: whole_or_not.len(),
            whole: plain.len(),
        };
        let piece = siding::piece(layout.job.product.kind);
        let words = sheets::cut_list(count, piece, &lengths, layout.job.sheet.lengths);
        heading(&mut c, area, &sheets::title(sheets::CUT_LIST, i == 0), &words);
        let width = area.width() / n as f64;
        for (j, panel) in chunk.iter().enumerate() {
            let x = area.x0 + (j / per_column) as f64 * width;
            let y = area.y1 - 0.5 - (j % per_column) as f64 * ROW;
            let r = Rect::new(x, y - ROW, x + width - 0.2, y);
            // Panels of two lengths are drawn to one scale.
            let share = panel.stock / longest;
            bar(&mut c, panel, &pieces, r, (share, layout.job.sheet.lengths));
        }
        out.push(page(layout, c, i + 1));
    }
    out
}

/// A panel of which both halves serve as two, the lower first; any other as it is.
fn halves(panel: &Panel, pieces: &std::collections::BTreeMap<&str, &Piece>) -> Vec<Panel> {
    let of = |mark: &PieceMark| pieces.get(mark.as_str()).and_then(|p| p.half);
    let mut kinds: Vec<Option<Half>> = panel.pieces.iter().map(of).collect();
    kinds.sort();
    kinds.dedup();
    let part = |half: Option<Half>| Panel {
        pieces: panel.pieces.iter().filter(|m| of(m) == half).cloned().collect(),
        ..panel.clone()
    };
    kinds.into_iter().map(part).collect()
}

fn is_plain(p: &Piece, stock: f64) -> bool {
    p.start <= SAME
        && p.end >= stock - SAME
        && p.rip.is_none()
        && p.notches.is_empty()
        && p.is_square()
}

fn page(layout: &Layout, c: Canvas, n: usize) -> Page {
    Page {
        name: format!("cut-list-{n}"),
        title: sheets::CUT_LIST.to_owned(),
        description: sheets::cut_list_description(siding::piece(layout.job.product.kind)),
        scale: sheets::NTS.to_owned(),
        canvas: c,
    }
}

pub(super) fn heading(c: &mut Canvas, area: Rect, title: &str, words: &str) {
    let w = c.left(title, HEADING, true, Point::new(area.x0, area.y1 - 0.12));
    let words = fitted(words, TEXT, false, area.width() - w - 0.3);
    c.left(&words, TEXT, false, Point::new(area.x0 + w + 0.3, area.y1 - 0.12));
}

/// One panel: its name, a bar to scale, marks in it where they fit, else numbers, and lengths
/// below.
fn bar(
    c: &mut Canvas,
    panel: &Panel,
    pieces: &std::collections::BTreeMap<&str, &Piece>,
    r: Rect,
    (share, style): (f64, LengthStyle),
) {
    c.left(&panel.id, TEXT, true, Point::new(r.x0, r.y1 - 0.12));
    let (x0, width) = (r.x0 + 0.5, (r.width() - 0.5) * share);
    let k = width / panel.stock;
    let (top, bottom) = (r.y1 - 0.04, r.y1 - 0.2);
    c.rect(Ink::Offcut, Rect::new(x0, bottom, x0 + width, top));
    let mut labels: Vec<(f64, String)> = Vec::new();
    let half = panel.pieces.iter().filter_map(|m| pieces.get(m.as_str())?.half).next();
    for mark in &panel.pieces {
        let Some(p) = pieces.get(mark.as_str()) else { continue };
        let (a, b) = (x0 + p.start * k, x0 + p.end * k);
        // Angled ends are drawn as they are cut, seen from the face.
        let lean = |end: &PieceEnd| {
            let slanted = matches!(end.cut, EndCut::Angled | EndCut::Shaped);
            if slanted { (end.set_back() * k).min((b - a) / 2.0) } else { 0.0 }
        };
        let [l, rr] = [&p.ends[0], &p.ends[1]].map(lean);
        let shape = [
            Point::new(a, bottom),
            Point::new(b, bottom),
            Point::new(b - rr, top),
            Point::new(a + l, top),
        ];
        c.ring(Ink::Ground, &shape);
        c.ring(Ink::Opening, &shape);
        let w = crate::typeface::width(mark, TEXT, false);
        if w + l + rr + 0.04 <= b - a {
            c.centered(
                mark,
                TEXT,
                false,
                Point::new((a + b) / 2.0 + (l - rr) / 2.0, (top + bottom) / 2.0),
            );
        }
        let mut words = describe(p, style);
        if let Some(half) = half.filter(|_| labels.is_empty()) {
            words = format!("{}: {words}", cuts::half(half));
        }
        let words = if w + l + rr + 0.04 <= b - a { words } else { format!("{mark} {words}") };
        labels.push((a, words));
    }
    below(c, &labels, &r);
}

/// Lengths under a bar: in one line, each under its piece or as near as there is room; in two where
/// one does not hold them. None is cut short.
fn below(c: &mut Canvas, labels: &[(f64, String)], r: &Rect) {
    let (near, far) = (r.y1 - 0.3, r.y1 - 0.3 - TEXT * 1.3);
    if let Some(at) = spread(labels, r) {
        return write_all(c, labels, &at, near);
    }
    for (first, y) in [(0, near), (1, far)] {
        let row: Vec<(f64, String)> = labels.iter().skip(first).step_by(2).cloned().collect();
        // Two lines hold what any panel is cut into; if not, they run on.
        let at = spread(&row, r).unwrap_or_else(|| in_a_line(&row, r.x0));
        write_all(c, &row, &at, y);
    }
}

fn write_all(c: &mut Canvas, labels: &[(f64, String)], at: &[f64], y: f64) {
    for ((_, words), x) in labels.iter().zip(at) {
        c.left(words, TEXT, false, Point::new(*x, y));
    }
}

/// Room between two lengths.
const BETWEEN: f64 = 0.12;

fn width(words: &str) -> f64 {
    crate::typeface::width(words, TEXT, false)
}

/// One after the other from `x`, none left of its own wish.
fn in_a_line(labels: &[(f64, String)], x: f64) -> Vec<f64> {
    let mut free = x;
    labels
        .iter()
        .map(|(wish, words)| {
            let at = free.max(*wish);
            free = at + width(words) + BETWEEN;
            at
        })
        .collect()
}

/// Places that keep the labels in order between both sides of `r`, each as near its wish as may be;
/// `None` where they are too wide together.
fn spread(labels: &[(f64, String)], r: &Rect) -> Option<Vec<f64>> {
    let mut at = in_a_line(labels, r.x0);
    let mut limit = r.x1;
    for ((_, words), x) in labels.iter().zip(&mut at).rev() {
        *x = x.min(limit - width(words));
        limit = *x - BETWEEN;
    }
    at.first().is_none_or(|x| *x >= r.x0).then_some(at)
}

/// Length, angles, rip and notches in short.
fn describe(p: &Piece, style: LengthStyle) -> String {
    let p = &told::piece(p, style);
    let mut out = length(style, p.length);
    for end in &p.ends {
        match end.cut {
            EndCut::Angled => out.push_str(&format!(" {:.1}°", end.angle)),
            EndCut::Shaped => out.push_str(" shaped"),
            EndCut::Factory | EndCut::Square => {}
        }
    }
    if let Some(r) = &p.rip {
        out.push_str(&format!(" rip to {}", short(style, r.to - r.from)));
    }
    if !p.notches.is_empty() {
        out.push_str(&format!(" n{}", p.notches.len()));
    }
    out
}
