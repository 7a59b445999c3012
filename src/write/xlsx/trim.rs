//! Every stock length of trim with what is cut from it.

use std::collections::BTreeMap;

use super::grid::{Grid, Look};
use crate::layout::Layout;
use crate::model::takeoff::Takeoff;
use crate::model::trim::TrimPiece;
use crate::wording::takeoff::items::trim_kind;
use crate::wording::trim::stock_length;
use crate::wording::{crew_tables, trim as words};

pub(super) fn sheet(layout: &Layout, takeoff: &Takeoff) -> Grid {
    let (style, say) = (layout.job.sheet.lengths, layout.job.sheet.language);
    let mut g = Grid::new(
        layout,
        say.alone(crew_tables::TRIM_TAB),
        &[22.0, 9.5, 17.5, 8.0, 22.0, 17.5, 13.0, 16.0, 16.0, 20.0, 11.0, 12.0, 30.0, 24.0],
    );
    // Which other wall, and what is left, is for whoever reads the file.
    g.print_columns(12);
    g.text(0, &say.word(crew_tables::TRIM), Look::Title);
    g.text(4, &say.word(crew_tables::trim_note(&layout.job)), Look::Text);
    g.next();
    let head = heads(&mut g, layout);
    let first = g.row + 1;
    let pieces: BTreeMap<&str, &TrimPiece> =
        layout.trims.iter().map(|t| (t.mark.as_str(), t)).collect();
    let boards = !layout.job.siding().receivers.has_pockets();
    let mut left = 0.0;
    for cut in &takeoff.trim_cuts {
        for (i, t) in cut.pieces.iter().filter_map(|m| pieces.get(m.as_str())).enumerate() {
            g.text(0, &say.line(|l| stock_length(l, &cut.stock, boards)), Look::Text);
            if i == 0 {
                g.number(1, 1.0, Look::Count);
                g.number(13, style.number(cut.left), Look::Three);
                left += style.number(cut.left);
            }
            g.number(2, style.number(cut.length), Look::Three);
            piece(&mut g, layout, t);
            g.next();
        }
    }
    g.filter(head, 14);
    g.text(0, say.alone(crew_tables::TOTAL), Look::TotalText);
    g.subtotal(1, first, takeoff.trim_cuts.len() as f64, Look::TotalCount);
    let last = g.row.max(first);
    let pieces = layout.trims.len() as f64;
    g.sum(3, &format!("=SUBTOTAL(103,D{first}:D{last})"), pieces, Look::TotalCount);
    let used: f64 = layout.trims.iter().map(|t| style.number(style.to_cut(t.length))).sum();
    g.subtotal(5, first, used, Look::Total);
    g.subtotal(13, first, left, Look::Total);
    g.next();
    g.print_to_here();
    kinds(&mut g, layout, takeoff, (first, last));
    g
}

/// Heads of the columns; the row they stand in.
fn heads(g: &mut Grid, layout: &Layout) -> u32 {
    let style = layout.job.sheet.lengths;
    let names = layout.job.sheet.language.names(|l| crew_tables::trim_heads(l, style));
    let names: Vec<&str> = names.iter().map(String::as_str).collect();
    let head = g.row;
    g.head(&names, &[1, 2, 5, 13]);
    head
}

fn piece(g: &mut Grid, layout: &Layout, t: &TrimPiece) {
    let (style, say) = (layout.job.sheet.lengths, layout.job.sheet.language);
    g.text(3, &t.mark, Look::Text);
    let boards = !layout.job.siding().receivers.has_pockets();
    g.text(4, &say.word(trim_kind(t.kind, boards)), Look::Text);
    g.number(5, style.number(style.to_cut(t.length)), Look::Three);
    g.text(6, &words::cut_to(&style.cut(t.length), t, style), Look::Text);
    g.text(7, &say.line(|l| words::end_on(l, &t.ends[0], style, boards)), Look::Text);
    g.text(8, &say.line(|l| words::end_on(l, &t.ends[1], style, boards)), Look::Text);
    g.text(9, &t.elevation, Look::Text);
    g.text(10, &t.wall, Look::Text);
    g.text(11, t.opening.as_deref().unwrap_or_default(), Look::Text);
    g.text(12, t.shared_with.as_deref().unwrap_or_default(), Look::Text);
}

/// Pieces and length of each kind, by formulas over the rows above.
fn kinds(g: &mut Grid, layout: &Layout, takeoff: &Takeoff, (first, last): (u32, u32)) {
    let (style, say) = (layout.job.sheet.lengths, layout.job.sheet.language);
    g.row += 1;
    g.texts(&[&say.word(crew_tables::BY_KIND)], Look::Heading);
    let names = say.names(|l| crew_tables::kind_heads(l, style));
    let names: Vec<&str> = names.iter().map(String::as_str).collect();
    g.heads(&names, &[1, 2]);
    let boards = !layout.job.siding().receivers.has_pockets();
    for k in takeoff.lines.iter().flat_map(|l| &l.kinds) {
        let excel = g.row + 1;
        g.text(0, &say.word(trim_kind(k.kind, boards)), Look::Text);
        let range = |c: &str| format!("${c}${first}:${c}${last}");
        let count = format!("=COUNTIF({},A{excel})", range("E"));
        g.sum(1, &count, k.pieces as f64, Look::Count);
        let sum = format!("=SUMIF({},A{excel},{})", range("E"), range("F"));
        g.sum(2, &sum, style.number(k.length), Look::Two);
        g.next();
    }
}
