//! Cutting sheets: each distinct cut drawn once with its dimensions and the marks of the pieces it
//! makes, square cuts as a list by length, and a pattern for every slope.

mod cell;
mod pattern;
mod seam_ends;

use std::collections::BTreeMap;

use super::canvas::{Canvas, wrapped};
use super::cut_list::heading;
use super::page::{Page, room};
use super::style::TEXT;
use crate::geom::vocabulary::{Point, Rect};
use crate::layout::Layout;
use crate::layout::course::LaidCourse;
use crate::layout::piece::{EdgeWork, EndCut, Piece, PieceEnd};
use crate::layout::told;
use crate::model::half::Half;
use crate::model::hold::Hold;
use crate::model::notch::{Contour, Notch, NotchSide};
use crate::wording::sheet_lengths::length;
use crate::wording::siding;
use crate::wording::{cuts, sheets};

/// What makes two pieces the same cut, in whole 1/16 in and 1/100 degree.
type Key = (
    i64,
    [EndKey; 2],
    Option<(i64, i64)>,
    Vec<NotchKey>,
    ([u32; 3], Vec<Hold>),
    (i64, bool, bool, Option<Half>),
);
/// Kind, angle, set, contour.
type EndKey = (u8, i64, i64, Vec<[i64; 2]>);
/// Edge, left, width, depth, foot, contour.
type NotchKey = (u8, [i64; 4], Vec<[i64; 2]>);

/// Pieces that are cut alike.
struct Cut<'a> {
    /// Which ends are cut and meet a seam.
    meets: (bool, bool),
    piece: &'a Piece,
    course: &'a LaidCourse,
    marks: Vec<&'a str>,
}

fn key(p: &Piece, k: &LaidCourse, meets: (bool, bool)) -> Key {
    let sixteenths = crate::units::sixteenths;
    let points = |c: &Option<Contour>| {
        let points = c.iter().flat_map(|c| &c.points);
        points.map(|q| [sixteenths(q[0]), sixteenths(q[1])]).collect::<Vec<_>>()
    };
    let end = |end: &PieceEnd| {
        let kind = match end.cut {
            EndCut::Factory => 0,
            EndCut::Square => 1,
            EndCut::Angled => 2,
            EndCut::Shaped => 3,
        };
        let hundredths = (end.angle * 100.0).round() as i64;
        (kind, hundredths, sixteenths(end.set_back()), points(&end.contour))
    };
    let notch = |n: &Notch| {
        let side = match n.side {
            NotchSide::Top => 0,
            NotchSide::Bottom => 1,
            NotchSide::Left => 2,
            NotchSide::Right => 3,
            NotchSide::Hole => 4,
        };
        let sizes = [n.left, n.width, n.depth, n.foot.unwrap_or(0.0)].map(sixteenths);
        (side, sizes, points(&n.contour))
    };
    (
        sixteenths(p.length),
        [end(&p.ends[0]), end(&p.ends[1])],
        p.rip.as_ref().map(|r| (sixteenths(r.from), sixteenths(r.to))),
        p.notches.iter().map(notch).collect(),
        ([p.edge_work.slots, p.edge_work.lugs, p.edge_work.trim_nails], p.edge_work.holds.clone()),
        // What a piece has over its face hangs on the course; a cut end at a seam has more to cut.
        (sixteenths(k.top - k.bottom), meets.0, meets.1, p.half),
    )
}

/// Whether a piece is cut square and nothing else, or not at all.
fn plain(p: &Piece) -> bool {
    p.rip.is_none() && p.notches.is_empty() && p.is_square()
}

pub(super) fn sheets(layout: &Layout) -> Vec<Page> {
    let mut cuts: BTreeMap<Key, Cut> = BTreeMap::new();
    for (_, course, run, piece) in layout.pieces() {
        let meets = seam_ends::cut_at_seams(&layout.job.product, run, piece);
        let empty = Cut { meets, piece, course, marks: Vec::new() };
        let c = cuts.entry(key(piece, course, meets)).or_insert(empty);
        c.marks.push(&piece.mark);
    }
    // Longest first within a kind: square cuts, angled, ripped, notched.
    let (square, mut shaped): (Vec<Cut>, Vec<Cut>) =
        cuts.into_values().rev().partition(|c| c.meets == (false, false) && plain(c.piece));
    shaped.sort_by_key(|c| (!c.piece.notches.is_empty(), c.piece.rip.is_some()));
    let mut out = drawn(layout, &shaped);
    out.extend(list(layout, &square));
    out.extend(pattern::sheets(layout));
    out
}

fn page(n: usize, c: Canvas) -> Page {
    Page {
        name: format!("cutting-{n}"),
        title: sheets::CUTTING.to_owned(),
        description: sheets::CUTTING_DESCRIPTION.to_owned(),
        scale: sheets::NTS.to_owned(),
        canvas: c,
    }
}

/// A page for cells, begun.
fn begun(layout: &Layout, area: Rect, n: usize, count: usize) -> Canvas {
    let mut c = Canvas::new(area);
    let title = sheets::title(sheets::CUTTING, n == 1);
    let sum =
        |of: fn(&EdgeWork) -> u32| -> u32 { layout.pieces().map(|(.., p)| of(&p.edge_work)).sum() };
    let (slots, held) = (sum(|w| w.slots), sum(|w| w.lugs + w.trim_nails));
    let held_by = siding::held_by(layout.job.siding());
    let words = sheets::cutting(count, slots, (held, held_by), layout.job.sheet.lengths);
    heading(&mut c, area, &title, &words);
    c
}

fn drawn(layout: &Layout, cuts: &[Cut]) -> Vec<Page> {
    let area = room(layout);
    let columns = ((area.width() / 5.3).floor() as usize).max(1);
    let width = area.width() / columns as f64 - 0.25;
    let mut pages = Vec::new();
    let mut c = begun(layout, area, 1, cuts.len());
    let top = area.y1 - 0.42;
    let (mut column, mut y) = (0, top);
    let cells = cuts.iter().map(|k| cell::Cell::of(k.piece, k.course, &k.marks, layout, width));
    for cell in cells.flat_map(|c| c.parts(top - area.y0)) {
        if y - cell.height() < area.y0 {
            column += 1;
            y = top;
        }
        if column == columns {
            let n = pages.len() + 1;
            pages.push(page(n, std::mem::replace(&mut c, begun(layout, area, n + 1, cuts.len()))));
            column = 0;
        }
        let x = area.x0 + column as f64 * (width + 0.25);
        cell.draw(&mut c, Point::new(x, y));
        y -= cell.height();
    }
    if !cuts.is_empty() {
        pages.push(page(pages.len() + 1, c));
    }
    pages
}

/// Square cuts by length, with their marks.
fn list(layout: &Layout, cuts: &[Cut]) -> Vec<Page> {
    const ROW: f64 = 0.165;
    let area = room(layout);
    let style = layout.job.sheet.lengths;
    let columns = ((area.width() / 4.0).floor() as usize).max(1);
    let width = area.width() / columns as f64;
    let mut rows: Vec<(Option<String>, String)> = Vec::new();
    for k in cuts {
        let ends = cuts::square_ends([k.piece.ends[0].cut, k.piece.ends[1].cut]);
        let count = match k.marks.len() {
            1 => "1 piece".to_owned(),
            n => format!("{n} pieces"),
        };
        rows.push((
            Some(format!("{} {ends}: {count}", length(style, told::piece(k.piece, style).length))),
            String::new(),
        ));
        let marks = wrapped(&k.marks.join(", "), TEXT, width - 0.4);
        rows.extend(marks.into_iter().map(|l| (None, l)));
    }
    let fits = (((area.height() - 0.5) / ROW).floor() as usize).max(1);
    let mut out = Vec::new();
    for (i, chunk) in rows.chunks(fits * columns).enumerate() {
        let mut c = Canvas::new(area);
        let title = sheets::title(sheets::SQUARE_CUTS, i == 0);
        heading(&mut c, area, &title, siding::square_cuts(layout.job.siding()));
        for (j, (head, text)) in chunk.iter().enumerate() {
            let at = Point::new(
                area.x0 + (j / fits) as f64 * width,
                area.y1 - 0.48 - (j % fits) as f64 * ROW,
            );
            match head {
                Some(h) => c.left(h, TEXT, true, at),
                None => c.left(text, TEXT, false, Point::new(at.x + 0.15, at.y)),
            };
        }
        out.push(Page {
            name: format!("square-cuts-{}", i + 1),
            title: sheets::SQUARE_CUTS.to_owned(),
            description: sheets::SQUARE_CUTS_DESCRIPTION.to_owned(),
            scale: sheets::NTS.to_owned(),
            canvas: c,
        });
    }
    out
}
