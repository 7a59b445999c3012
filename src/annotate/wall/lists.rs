//! What stands beside a wall's drawing: saw list, rakes, trim, order of work.

use std::collections::BTreeMap;

use super::batches::{Batch, PanelsOf, batches, in_order};
use super::sticks::{Sticks, SticksOf};
use crate::annotate::columns::Rows;
use crate::annotate::cuts_of::{CutKind, Cuts};
use crate::annotate::elevation::marks::{prefix, short_mark};
use crate::annotate::style::TEXT;
use crate::geom::vocabulary::Rect;
use crate::language::SheetLanguage;
use crate::layout::Layout;
use crate::layout::piece::{EndCut, Piece};
use crate::layout::told;
use crate::layout::wall::LaidWall;
use crate::model::trim::TrimPiece;
use crate::wording::sheet_lengths::length;
use crate::wording::sheets::{ORDER_OF_WORK, TRIM_LIST};
use crate::wording::wall_sheets as words;
use crate::wording::{compare, lists, trim, work};

/// The lists of a wall.
pub(super) fn rows(
    layout: &Layout,
    w: &LaidWall,
    cuts: &Cuts,
    (panels, sticks): (&PanelsOf, (&Sticks, usize)),
    notes: &[String],
    area: Rect,
) -> Rows {
    let say = layout.job.sheet.language;
    let mut out = Rows::new(area);
    saw(&mut out, layout, w, cuts, panels);
    rakes(&mut out, layout, w, cuts);
    // Where trim has a view of its own, its list stands beside it.
    out.part();
    trims(&mut out, layout, w, sticks);
    if let Some(of_wall) = layout.work.walls.iter().find(|k| k.wall == w.id) {
        let steps = say.blocks(|lang| work::steps(lang, of_wall, layout.job.sheet.lengths));
        if !steps.is_empty() {
            out.head(&say.word(ORDER_OF_WORK), &say.word(words::DONE));
        }
        for (i, step) in steps.iter().enumerate() {
            out.ticked(1, &format!("{}", i + 1), step);
        }
    }
    out.head(&say.word(words::ON_THIS_SHEET), "");
    notes.iter().for_each(|n| out.text(n));
    out
}

/// What stands beside a wall that a revision changes.
pub(super) fn of_changes(area: Rect, say: SheetLanguage) -> Rows {
    let mut out = Rows::new(area);
    out.head(&say.word(words::ON_THIS_SHEET), "");
    out.text(compare::CLOUDS);
    out.text(compare::NOT_TO_CUT_BY);
    out
}

fn saw(out: &mut Rows, layout: &Layout, w: &LaidWall, cuts: &Cuts, panels: &PanelsOf) {
    let say = layout.job.sheet.language;
    let all = batches(layout, w, cuts);
    out.head(&say.word(words::SAW_LIST), &say.word(words::CUT_AND_HUNG));
    open(out, layout, panels);
    let style = layout.job.sheet.lengths;
    let several = layout.stocks.len() > 1;
    for b in &all {
        let lead = say.line(|lang| words::batch(lang, b.count(), &length(style, b.length)));
        out.ticked(2, &lead, &said(b, several, say));
    }
}

/// The panels of the wall: to open, taken over, to lay aside.
fn open(out: &mut Rows, layout: &Layout, panels: &PanelsOf) {
    let say = layout.job.sheet.language;
    let names: Vec<&str> = in_order(layout).into_iter().map(|(_, w)| prefix(w)).collect();
    let of = |by: &BTreeMap<usize, Vec<&str>>| {
        say.line(|lang| {
            let one = |(wall, panels): (&usize, &Vec<&str>)| {
                let name = names.get(*wall).copied().unwrap_or_default();
                words::panels_of(lang, &lists::ranges_in(lang, panels), name)
            };
            by.iter().map(one).collect::<Vec<_>>().join("; ")
        })
    };
    if !panels.opened.is_empty() {
        out.ticked(
            0,
            &say.word(words::OPEN),
            &say.line(|lang| lists::ranges_in(lang, &panels.opened)),
        );
    }
    if !panels.taken.is_empty() {
        out.ticked(0, &say.word(words::OFFCUTS_FROM), &of(&panels.taken));
    }
    if !panels.aside.is_empty() {
        out.ticked(0, &say.word(words::LAY_ASIDE), &of(&panels.aside));
    }
}

/// The pieces of a batch with their panels, those with one shaped cut together.
fn said(b: &Batch, several: bool, say: SheetLanguage) -> String {
    let one = |p: &&Piece| match b.whole && !several {
        true => short_mark(&p.mark).to_owned(),
        false => words::from_panel(short_mark(&p.mark), &p.panel),
    };
    let kinds = b.kinds.iter().map(|(kind, pieces)| {
        let marks: Vec<String> = pieces.iter().map(one).collect();
        let what = say.line(|lang| words::cut(lang, b.whole, cut_of(*kind)));
        words::marks(&what, &lists::commas(&marks))
    });
    kinds.collect::<Vec<_>>().join("; ")
}

/// The cutting sheets' number of a cut, and whether it is mirrored.
fn cut_of(kind: CutKind) -> Option<(usize, bool)> {
    match kind {
        CutKind::Shaped(n, mirrored) => Some((n, mirrored)),
        CutKind::Square | CutKind::Raked => None,
    }
}

/// Least distances of the columns of the table of rakes.
const RAKES: [f64; 6] = [0.36, 0.76, 1.56, 2.36, 2.8, 3.24];

/// Distances at which no word of these rows, so many heads first, runs into the next column, and where the last
/// ends.
fn distances(rows: &[[String; 6]], heads: usize) -> ([f64; 6], f64) {
    let mut out = RAKES;
    let mut end = 0.0_f64;
    for (i, at) in out.iter_mut().enumerate() {
        *at = at.max(end);
        let wide =
            rows.iter().enumerate().map(|(n, r)| crate::typeface::width(&r[i], TEXT, n < heads));
        end = *at + wide.fold(0.0, f64::max) + 0.06;
    }
    (out, end - 0.06)
}

/// What is cut along the rakes of a gable, by course.
fn rakes(out: &mut Rows, layout: &Layout, w: &LaidWall, cuts: &Cuts) {
    let say = layout.job.sheet.language;
    let pieces = w.courses.iter().flat_map(|k| &k.runs).flat_map(|r| &r.pieces);
    let raked: Vec<&Piece> = pieces.filter(|p| cuts.kind(p) == CutKind::Raked).collect();
    if raked.is_empty() {
        return;
    }
    out.head(&say.word(words::RAKES), &say.word(words::CUT_AND_HUNG));
    let heads = say.each().iter().map(|lang| words::RAKE_HEADS.map(|h| h.of(*lang).to_owned()));
    let said = say.each().len();
    let rows = heads.chain(raked.iter().map(|p| told_rake(p, layout)));
    let rows: Vec<[String; 6]> = rows.collect();
    let (at, end) = distances(&rows, said);
    // A narrow column has no room for six: they stand one after the other.
    let narrow = out.is_narrow() || !out.holds(end);
    for (i, row) in rows.into_iter().enumerate() {
        if narrow {
            let [mark, bottom, top, left, right, panel] = &row;
            if i >= said {
                let ends = words::raked_ends(top, [left, right], panel);
                out.ticked(2, &words::raked(mark, bottom), &ends);
            }
            continue;
        }
        let boxes = if i < said { 0 } else { 2 };
        out.ticked_cells(boxes, &at.into_iter().zip(row).collect::<Vec<_>>(), i < said);
    }
    out.text(&say.sentence(words::RAKES_ARE));
}

/// A raked piece's mark, bottom edge, top edge, angles at left and right, and panel.
fn told_rake(p: &Piece, layout: &Layout) -> [String; 6] {
    let (style, say) = (layout.job.sheet.lengths, layout.job.sheet.language);
    let edge = |top: bool| {
        told::edge(p, top, style).map_or(say.word(words::A_POINT), |(a, b)| length(style, b - a))
    };
    let angle = |i: usize| match p.ends[i].cut {
        EndCut::Angled => words::degrees(p.ends[i].angle),
        _ => words::SQUARE.to_owned(),
    };
    let mark = short_mark(&p.mark).to_owned();
    [mark, edge(false), edge(true), angle(0), angle(1), p.panel.to_string()]
}

/// Which stock lengths of a kind are opened, taken over and laid aside.
fn from_sticks(layout: &Layout, of: &SticksOf) -> String {
    let say = layout.job.sheet.language;
    let names: Vec<&str> = in_order(layout).into_iter().map(|(_, w)| prefix(w)).collect();
    say.line(|lang| {
        let numbers =
            |of: &[u32]| lists::ranges_in(lang, &of.iter().map(u32::to_string).collect::<Vec<_>>());
        let by = |by: &BTreeMap<usize, Vec<u32>>| -> Vec<String> {
            let name = |wall: &usize| names.get(*wall).copied().unwrap_or_default();
            by.iter().map(|(wall, of)| words::panels_of(lang, &numbers(of), name(wall))).collect()
        };
        words::sticks(lang, &numbers(&of.opened), &by(&of.taken), &by(&of.aside))
    })
}

/// Trim of a wall, equal cuts together, the longest of a kind first.
fn trims(out: &mut Rows, layout: &Layout, w: &LaidWall, (sticks, number): (&Sticks, usize)) {
    let say = layout.job.sheet.language;
    let style = layout.job.sheet.lengths;
    let boards = !layout.job.siding().receivers.has_pockets();
    let mut by: BTreeMap<(usize, i64, String), Vec<&TrimPiece>> = BTreeMap::new();
    for t in layout.trims.iter().filter(|t| t.wall == w.id) {
        let told = trim::cut_to(&length(style, style.to_cut(t.length)), t, style);
        let said = say.line(|lang| {
            let ends = t.ends.each_ref().map(|e| trim::end_in_short(lang, e, style, boards));
            words::trim_cut(lang, &told, &ends, !t.path.is_empty())
        });
        let stock = crate::model::trim::TrimStock::ALL.iter().position(|s| *s == t.kind.stock());
        let key = (stock.unwrap_or(0), -(t.length * 16.0).floor() as i64, said);
        by.entry(key).or_default().push(t);
    }
    if by.is_empty() {
        return;
    }
    out.head(&say.word(TRIM_LIST), &say.word(words::CUT_AND_HUNG));
    let mut last = None;
    for ((stock, _, said), pieces) in &by {
        if last != Some(stock) {
            last = Some(stock);
            let name = pieces.first().map(|t| say.word(trim::stock_on(t.kind.stock(), boards)));
            let kind = pieces.first().map(|t| t.kind.stock());
            let said = kind.map(|k| from_sticks(layout, &sticks.at(k, number)));
            out.kept(&name.unwrap_or_default(), &said.unwrap_or_default());
        }
        let marks: Vec<String> =
            pieces.iter().map(|t| words::from_stock(&t.mark, t.stock.number())).collect();
        out.ticked(
            2,
            &say.line(|lang| words::batch(lang, pieces.len(), said)),
            &lists::commas(&marks),
        );
    }
}
