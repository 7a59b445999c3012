//! The cut list by panel: each stock panel as a bar with what is cut from it.

use super::canvas::{Canvas, wrapped};
use super::columns::{self, LINE, NEXT};
use super::page::{Orientation, Page, room};
use super::style::{Ink, TEXT, TITLE};
use crate::geom::tol::SAME;
use crate::geom::vocabulary::{Point, Rect};
use crate::language::{Said, SheetLanguage};
use crate::layout::Layout;
use crate::layout::piece::{EndCut, Panel, Piece, PieceEnd};
use crate::layout::told;
use crate::model::half::Half;
use crate::model::ids::PieceMark;
use crate::units::LengthStyle;
use crate::wording::sheet_lengths::{length, short};
use crate::wording::siding;
use crate::wording::stocks::panel_letters;
use crate::wording::takeoff::items::siding_noun;
use crate::wording::{cuts, sheets};

/// Height of a row with a bar alone, with one line under it, and with two.
const BAR_ALONE: f64 = 0.22;
const ROW: f64 = 0.36;
const TALL_ROW: f64 = 0.48;
/// Height of a title over a sheet with the room under it.
const UNDER_TITLE: f64 = 0.4;
/// Room that a panel's name takes beside its bar.
const NAME: f64 = 0.42;

pub(super) fn sheets(layout: &Layout) -> Vec<Page> {
    let say = layout.job.sheet.language;
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
    let n = columns::count(area);
    let width = area.width() / n as f64;
    let longest = layout.panels.iter().map(|p| p.stock).fold(1.0, f64::max);
    let style = layout.job.sheet.lengths;
    let count =
        sheets::CutCount { all: layout.panels.len(), cut: whole_or_not.len(), whole: plain.len() };
    let begun = |first| begun(layout, area, count, first);
    let mut out: Vec<Page> = Vec::new();
    let (mut c, mut top) = begun(true);
    let (mut column, mut y) = (0, top);
    for panel in &bars {
        // Panels of two lengths are drawn to one scale.
        let share = panel.stock / longest;
        let bar = Bar::of(panel, &pieces, width - 0.14, (share, style, say));
        if y - bar.height() < area.y0 {
            column += 1;
            y = top;
        }
        if column == n {
            let (next, lower) = begun(false);
            out.push(page(layout, std::mem::replace(&mut c, next), out.len() + 1));
            (column, top, y) = (0, lower, lower);
        }
        let x = area.x0 + column as f64 * width;
        bar.draw(&mut c, Point::new(x, y));
        y -= bar.height();
    }
    if !bars.is_empty() {
        out.push(page(layout, c, out.len() + 1));
    }
    out
}

/// A sheet with its heading, and where its bars begin; what holds for all of them stands on the first.
fn begun(layout: &Layout, area: Rect, count: sheets::CutCount, first: bool) -> (Canvas, f64) {
    let (say, style) = (layout.job.sheet.language, layout.job.sheet.lengths);
    let mut c = Canvas::new(area);
    let letters = |l| panel_letters(l, &layout.stocks, style).map_or(String::new(), |t| t + " ");
    let piece = siding_noun(layout.job.product.kind.piece());
    let words = if first {
        say.block(|l| sheets::cut_list(l, count, piece, &letters(l), style))
    } else {
        String::new()
    };
    let top = heading(&mut c, area, say, (sheets::CUT_LIST, first), &words);
    (c, top)
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
    let say = layout.job.sheet.language;
    Page {
        orientation: Orientation::Landscape,
        name: format!("cut-list-{n}"),
        title: sheets::CUT_LIST.into(),
        description: say.line(|lang| {
            sheets::cut_list_description(lang, siding::piece(layout.job.product.kind).of(lang))
        }),
        scale: say.word(sheets::NTS),
        canvas: c,
    }
}

/// Title and words over a sheet: beside the title where they fit on every sheet of the sort, else in lines
/// under it. Gives where the rest begins.
pub(super) fn heading(
    c: &mut Canvas,
    area: Rect,
    say: SheetLanguage,
    (title, first): (Said, bool),
    words: &str,
) -> f64 {
    let (x, y) = (area.x0, area.y1 - 0.12);
    let titled = |first| say.line(|lang| sheets::title(lang, title.of(lang), first));
    let beside = 0.3 + crate::typeface::width(&titled(false), TITLE, true);
    let used = c.left(&titled(first), TITLE, true, Point::new(x, y));
    if words.is_empty() {
        return area.y1 - NEXT;
    }
    let one_line = !words.contains('\n');
    if one_line && beside + crate::typeface::width(words, TEXT, false) <= area.width() {
        c.left(words, TEXT, false, Point::new(x + used + 0.3, y));
        return area.y1 - UNDER_TITLE;
    }
    let lines = wrapped(words, TEXT, area.width());
    for (i, line) in lines.iter().enumerate() {
        c.left(line, TEXT, false, Point::new(x, y - 0.22 - i as f64 * LINE));
    }
    area.y1 - UNDER_TITLE - lines.len() as f64 * LINE
}

/// One panel: its name, a bar to scale, marks in it with their lengths where they fit, else the marks, and what is
/// left below.
struct Bar<'a> {
    panel: &'a Panel,
    pieces: Vec<&'a Piece>,
    width: f64,
    share: f64,
    /// Words in the bar of each piece.
    inside: Vec<String>,
    /// Words under the bar: where each piece begins, from the row's left.
    labels: Vec<(f64, String)>,
}

impl<'a> Bar<'a> {
    fn of(
        panel: &'a Panel,
        by_mark: &std::collections::BTreeMap<&str, &'a Piece>,
        width: f64,
        (share, style, say): (f64, LengthStyle, SheetLanguage),
    ) -> Self {
        let find = |m: &PieceMark| by_mark.get(m.as_str()).copied();
        let pieces: Vec<&Piece> = panel.pieces.iter().filter_map(find).collect();
        let mut bar = Bar { panel, pieces, width, share, inside: Vec::new(), labels: Vec::new() };
        let half = bar.pieces.iter().find_map(|p| p.half);
        let (mut inside, mut labels) = (Vec::new(), Vec::new());
        for (i, p) in bar.pieces.iter().enumerate() {
            let mut words = describe(p, style, say);
            if let Some(half) = half.filter(|_| i == 0) {
                words = format!("{}: {words}", say.word(cuts::half(half)));
            }
            let whole = format!("{} {words}", p.mark);
            let [a, ..] = bar.span(p);
            let (held, below) = if bar.holds(p, &whole) {
                (whole, None)
            } else if bar.holds(p, &p.mark) {
                (p.mark.to_string(), Some(words))
            } else {
                (String::new(), Some(format!("{} {words}", p.mark)))
            };
            inside.push(held);
            labels.extend(below.map(|words| (a, words)));
        }
        bar.inside = inside;
        bar.labels = labels;
        bar
    }

    fn scale(&self) -> f64 {
        (self.width - NAME) * self.share / self.panel.stock
    }

    /// From where to where a piece's bar goes, from the row's left, and how far its ends lean in.
    fn span(&self, p: &Piece) -> [f64; 4] {
        let k = self.scale();
        let (a, b) = (NAME + p.start * k, NAME + p.end * k);
        // Angled ends are drawn as they are cut, seen from the face.
        let lean = |end: &PieceEnd| {
            let slanted = matches!(end.cut, EndCut::Angled | EndCut::Shaped);
            if slanted { (end.set_back() * k).min((b - a) / 2.0) } else { 0.0 }
        };
        let [left, right] = [&p.ends[0], &p.ends[1]].map(lean);
        [a, b, left, right]
    }

    /// Whether words stand in a piece's bar.
    fn holds(&self, p: &Piece, words: &str) -> bool {
        let [a, b, left, right] = self.span(p);
        width(words) + left + right + 0.04 <= b - a
    }

    fn height(&self) -> f64 {
        if self.labels.is_empty() {
            return BAR_ALONE;
        }
        let lines = lines(&self.labels, (0.0, self.width));
        ROW + (lines - 1) as f64 * (TALL_ROW - ROW)
    }

    fn draw(&self, c: &mut Canvas, at: Point) {
        c.left(&self.panel.id, TEXT, true, Point::new(at.x, at.y - 0.11));
        let (top, bottom) = (at.y - 0.03, at.y - 0.19);
        let end = at.x + NAME + self.panel.stock * self.scale();
        c.rect(Ink::Offcut, Rect::new(at.x + NAME, bottom, end, top));
        for (p, words) in self.pieces.iter().zip(&self.inside) {
            let [a, b, left, right] = self.span(p);
            let (a, b) = (at.x + a, at.x + b);
            let shape = [
                Point::new(a, bottom),
                Point::new(b, bottom),
                Point::new(b - right, top),
                Point::new(a + left, top),
            ];
            c.ring(Ink::Ground, &shape);
            c.ring(Ink::Opening, &shape);
            if !words.is_empty() {
                let x = (a + b) / 2.0 + (left - right) / 2.0;
                c.centered(words, TEXT, false, Point::new(x, (top + bottom) / 2.0));
            }
        }
        let shifted: Vec<(f64, String)> =
            self.labels.iter().map(|(x, w)| (at.x + x, w.clone())).collect();
        below(c, &shifted, (at.x, at.x + self.width), at.y);
    }
}

/// Lengths under a bar: in one line, each under its piece or as near as there is room; in more where
/// one does not hold them. None is cut short.
fn below(c: &mut Canvas, labels: &[(f64, String)], r: (f64, f64), top: f64) {
    let lines = lines(labels, r);
    for first in 0..lines {
        let row: Vec<(f64, String)> = labels.iter().skip(first).step_by(lines).cloned().collect();
        let at = spread(&row, r).unwrap_or_else(|| in_a_line(&row, r.0));
        write_all(c, &row, &at, top - 0.275 - first as f64 * (TALL_ROW - ROW));
    }
}

/// How many lines hold the lengths under a bar, taken by turns.
fn lines(labels: &[(f64, String)], r: (f64, f64)) -> usize {
    let row = |first: usize, of: usize| -> Vec<(f64, String)> {
        labels.iter().skip(first).step_by(of).cloned().collect()
    };
    let holds = |of: &usize| (0..*of).all(|first| spread(&row(first, *of), r).is_some());
    (1..=labels.len()).find(holds).unwrap_or(labels.len().max(1))
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
fn spread(labels: &[(f64, String)], r: (f64, f64)) -> Option<Vec<f64>> {
    let mut at = in_a_line(labels, r.0);
    let mut limit = r.1;
    for ((_, words), x) in labels.iter().zip(&mut at).rev() {
        *x = x.min(limit - width(words));
        limit = *x - BETWEEN;
    }
    at.first().is_none_or(|x| *x >= r.0).then_some(at)
}

/// Length, angles, rip and notches in short.
fn describe(p: &Piece, style: LengthStyle, say: SheetLanguage) -> String {
    let p = &told::piece(p, style);
    let mut out = length(style, p.length);
    for end in &p.ends {
        match end.cut {
            EndCut::Angled => out.push_str(&format!(" {:.1}°", end.angle)),
            EndCut::Shaped => out.push_str(&format!(" {}", say.word(cuts::SHAPED))),
            EndCut::Factory | EndCut::Square => {}
        }
    }
    if let Some(r) = &p.rip {
        let height = short(style, r.to - r.from);
        out.push_str(&format!(" {}", say.line(|lang| cuts::ripped_to(lang, &height))));
    }
    if !p.notches.is_empty() {
        out.push_str(&format!(" n{}", p.notches.len()));
    }
    out
}
