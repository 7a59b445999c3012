//! Every panel with what is cut from it.

use crate::wording::stocks::panel_letters;
use std::collections::BTreeMap;

use super::grid::{Grid, Look};
use crate::job::siding::system::CutEdgeRule;
use crate::layout::Layout;
use crate::layout::course::LaidCourse;
use crate::layout::piece::Piece;
use crate::layout::told;
use crate::layout::wall::{LaidElevation, LaidWall};
use crate::wording::pieces::{contour, end, notches};
use crate::wording::siding;
use crate::wording::{crew_tables as words, cuts};

pub(super) fn sheet(layout: &Layout) -> Grid {
    let style = layout.job.sheet.lengths;
    let mut g = started(layout);
    // Up to the course: notches, contours and what is punched stand on the cutting sheets.
    g.print_columns(16);
    let head = heads(&mut g, layout);
    let first = g.row + 1;
    let pieces: BTreeMap<&str, (&LaidElevation, &LaidWall, &LaidCourse, &Piece)> = layout
        .walls()
        .flat_map(|(e, w)| {
            w.courses.iter().flat_map(move |c| {
                c.runs.iter().flat_map(|r| &r.pieces).map(move |p| (p.mark.as_str(), (e, w, c, p)))
            })
        })
        .collect();
    let (mut used, mut left) = (0.0, 0.0);
    for panel in &layout.panels {
        for (i, mark) in panel.pieces.iter().enumerate() {
            let Some((e, w, c, p)) = pieces.get(mark.as_str()) else { continue };
            match p.half {
                Some(half) => {
                    let half = layout.job.sheet.language.word(cuts::half(half));
                    g.text(0, &format!("{} {half}", panel.id), Look::Wrapped)
                }
                None => g.text(0, &panel.id, Look::Text),
            }
            if i == 0 {
                g.number(1, 1.0, Look::Count);
                g.number(17, style.number(panel.offcut), Look::Three);
                left += style.number(panel.offcut);
            }
            let p = &told::piece(p, style);
            used += style.number(p.length);
            piece(&mut g, layout, p);
            g.text(13, &e.name, Look::Text);
            g.text(14, &w.id, Look::Text);
            g.number(15, f64::from(c.index + 1), Look::Count);
            g.next();
        }
    }
    g.filter(head, if holds_cut_edges(layout) { 27 } else { 24 });
    g.text(0, layout.job.sheet.language.alone(words::TOTAL), Look::TotalText);
    g.subtotal(1, first, layout.panels.len() as f64, Look::TotalCount);
    let rows = g.row;
    g.sum(
        2,
        &format!("=SUBTOTAL(103,C{first}:C{})", rows.max(first)),
        layout.pieces().count() as f64,
        Look::TotalCount,
    );
    g.subtotal(5, first, used, Look::Total);
    g.subtotal(17, first, left, Look::Total);
    g
}

/// The sheet with what stands over its table.
fn started(layout: &Layout) -> Grid {
    let (style, say) = (layout.job.sheet.lengths, layout.job.sheet.language);
    let kind = layout.job.product.kind;
    let mut g = Grid::new(
        layout,
        say.alone(siding::pieces_heading(kind)),
        &[
            9.0, 8.0, 11.0, 10.0, 10.0, 10.0, 13.0, 9.0, 8.0, 9.0, 8.0, 9.0, 9.0, 20.0, 11.0, 8.0,
            60.0, 11.0, 10.0, 10.0, 9.0, 9.0, 30.0, 30.0, 8.0, 8.0, 8.0, 40.0,
        ],
    );
    g.texts(&[&say.line(|l| words::panels_title(l, kind))], Look::Title);
    for how in say.blocks(|l| vec![words::cutting_order(l, kind)]).iter().flat_map(|t| t.lines()) {
        g.texts(&[how], Look::Text);
    }
    if layout.stocks.len() > 1 {
        let letters = say.block(|l| panel_letters(l, &layout.stocks, style).unwrap_or_default());
        letters.lines().for_each(|line| g.texts(&[line], Look::Text));
    }
    g
}

/// Heads of the columns; the row they stand in.
fn heads(g: &mut Grid, layout: &Layout) -> u32 {
    let (style, kind) = (layout.job.sheet.lengths, layout.job.product.kind);
    // Lugs, or trim nails.
    let held = siding::held_by(layout.job.siding()).many;
    let names = layout.job.sheet.language.names(|l| words::panel_heads(l, kind, style, held));
    let head = g.row;
    let shown = if holds_cut_edges(layout) { names.len() } else { names.len() - 4 };
    let figures = [1, 3, 4, 5, 8, 10, 11, 12, 15, 17, 18, 19, 20, 21, 24, 25];
    let figures: Vec<u16> = figures.into_iter().filter(|c| usize::from(*c) < shown).collect();
    let names: Vec<&str> = names.iter().take(shown).map(String::as_str).collect();
    g.head(&names, &figures);
    head
}

/// The cells of a piece, its figures as they are told.
fn piece(g: &mut Grid, layout: &Layout, p: &Piece) {
    let (style, say) = (layout.job.sheet.lengths, layout.job.sheet.language);
    g.text(2, &p.mark, Look::Text);
    g.number(3, style.number(p.start), Look::Three);
    g.number(4, style.number(p.end), Look::Three);
    g.number(5, style.number(p.length), Look::Three);
    g.text(6, &style.length(p.length), Look::Text);
    for (side, e) in (0u16..).zip(&p.ends) {
        g.text(7 + 2 * side, &say.word(end(e.cut)), Look::Text);
        g.number(8 + 2 * side, e.angle, Look::Two);
        g.number(18 + side, style.number(e.set_back()), Look::Three);
        g.number(20 + side, 90.0 - e.angle, Look::Two);
        if let Some(c) = &e.contour {
            g.text(22 + side, &say.line(|l| contour(l, c, style)), Look::Text);
        }
    }
    if let Some(r) = &p.rip {
        g.number(11, style.number(r.from), Look::Three);
        g.number(12, style.number(r.to), Look::Three);
    }
    if !p.notches.is_empty() {
        // One line a piece: a table of as many rows as pieces is read and printed faster.
        g.text(16, &say.line(|l| notches(l, p, style)), Look::Text);
    }
    if !holds_cut_edges(layout) {
        return;
    }
    let work = &p.edge_work;
    g.number(24, f64::from(work.slots), Look::Count);
    g.number(25, f64::from(work.lugs + work.trim_nails), Look::Count);
    if work.furring {
        g.text(26, &say.word(words::YES), Look::Text);
    }
    if !work.holds.is_empty() {
        g.text(27, &say.line(|l| cuts::holds(l, work)), Look::Text);
    }
}

/// Whether cut edges are held by slots, lugs or trim nails rather than through the face.
fn holds_cut_edges(layout: &Layout) -> bool {
    layout.job.siding().cut_edge != CutEdgeRule::FaceNails
}
