//! CSV: text in quotes always, numbers bare. Lengths stand twice: as numbers, inches or millimeters by
//! the job, which the header says; and in the job's words, `12'-6 1/2"` or `3823 mm`.

use crate::language::Language;
use std::collections::BTreeMap;

use super::csv_cell::{Cell, count, money, number, table, text};
use super::saw_places::SawPlaces;
use crate::job::siding::system::CutEdgeRule;
use crate::layout::Layout;
use crate::layout::piece::Piece;
use crate::layout::told;
use crate::layout::wall::{LaidElevation, LaidWall};
use crate::model::notch::Contour;
use crate::model::quantity::TakeoffLine;
use crate::model::takeoff::{Cost, PartShare, Takeoff};
use crate::model::trim::TrimPiece;
use crate::units::LengthStyle;
use crate::wording::csv_columns;
use crate::wording::cuts;
use crate::wording::lists::ranges;
use crate::wording::pieces::{contour, end, notches};
use crate::wording::pole;
use crate::wording::takeoff::basis::basis;
use crate::wording::takeoff::items;
use crate::wording::trim::{self, stock as stock_words, stock_length};

fn owned(names: &[&str]) -> Vec<String> {
    names.iter().map(|n| (*n).to_owned()).collect()
}

/// `takeoff.csv`: one row a line of the takeoff; with prices, what each line costs.
pub fn takeoff(layout: &Layout, takeoff: &Takeoff) -> Vec<u8> {
    let style = layout.job.sheet.lengths;
    let mut header =
        owned(&["item", "unit", "net", "order", "waste %", "basis", "id", "part", "color"]);
    header.push(format!("stock ({})", style.unit()));
    header.push(format!("length used ({})", style.unit()));
    header.extend(owned(&["stock", "length used", "counts", csv_columns::ITEM_NUMBER]));
    if takeoff.cost.is_some() {
        header.extend(owned(&[
            "price",
            "order multiple",
            csv_columns::UNITS_TO_BUY,
            "extended",
            "currency",
        ]));
    }
    let length = |v: Option<f64>| v.map_or(Cell::BLANK, |v| number(style.number(v)));
    let words = |v: Option<f64>| text(v.map_or(String::new(), |v| style.length(v)));
    let rows = takeoff.lines.iter().map(|l| {
        let mut row = vec![
            text(items::item(Language::English, &l.item, style)),
            text(items::unit(l.unit).en),
            number(l.net),
            number(l.order),
            number(l.waste),
            text(basis(l, &layout.job, &layout.bound)),
            text(l.id.as_str()),
            text(super::json::word(&l.group).unwrap_or_default()),
            text(l.color.as_str()),
            length(l.stock),
            length(l.length),
            words(l.stock),
            words(l.length),
            text(ranges(&l.counts)),
            text(l.item_number.as_str()),
        ];
        row.extend(takeoff.cost.iter().flat_map(|c| costs(c, l, takeoff.buys(l))));
        row
    });
    table(&header, rows)
}

/// Cells of a line's cost; a line to buy without a price says so, one not bought is blank.
fn costs(cost: &Cost, line: &TakeoffLine, bought: bool) -> [Cell; 5] {
    match cost.lines.iter().find(|p| p.item == line.id) {
        Some(p) => [
            number(p.price as f64 / 1e4),
            count(p.multiple),
            count(p.quantity),
            money(p.extended),
            text(cost.currency.as_str()),
        ],
        None if bought => ["no price", "", "", "", ""].map(text),
        None => [Cell::BLANK; 5],
    }
}

/// `takeoff-by-wall.csv`: what each wall takes of each line, in the line's unit.
pub fn by_wall(layout: &Layout) -> Vec<u8> {
    let style = layout.job.sheet.lengths;
    let header =
        owned(&["item", "unit", "elevation", "wall", csv_columns::WALL_OR_GABLE, "pieces", "net"]);
    let rows = layout.takeoff.iter().flat_map(|l| {
        l.shares.iter().map(|s| {
            vec![
                text(items::item(Language::English, &l.item, style)),
                text(items::unit(l.unit).en),
                text(s.elevation.as_str()),
                text(s.wall.as_str()),
                text(s.wall_part.map_or("", items::wall_part)),
                count(s.pieces as u64),
                number(s.net),
            ]
        })
    });
    table(&header, rows)
}

/// What each part of the house takes of each line, in the line's unit.
pub fn shares(rows: &[PartShare], style: LengthStyle) -> Vec<u8> {
    let header = owned(&[
        "elevation",
        "wall",
        csv_columns::WALL_OR_GABLE,
        "item",
        "unit",
        "pieces",
        "net",
        "id",
    ]);
    let rows = rows.iter().map(|s| {
        vec![
            text(s.elevation.as_str()),
            text(s.wall.as_str()),
            text(s.wall_part.map_or("", items::wall_part)),
            text(items::item(Language::English, &s.item, style)),
            text(items::unit(s.unit).en),
            count(s.pieces as u64),
            number(s.net),
            text(s.id.as_str()),
        ]
    });
    table(&header, rows)
}

/// `story-pole.csv`: every line on the stick, bottom up.
pub fn story_pole(layout: &Layout) -> Vec<u8> {
    let style = layout.job.sheet.lengths;
    let unit = style.unit();
    let header = [
        format!("height ({unit})"),
        "height".to_owned(),
        "what".to_owned(),
        "course".to_owned(),
        format!("{} ({unit})", csv_columns::OVER_BUTT),
        csv_columns::OVER_BUTT.to_owned(),
        "elevations".to_owned(),
        "belongs to".to_owned(),
    ];
    let rows = layout.story_pole.lines.iter().map(|l| {
        vec![
            number(style.number(l.height)),
            text(style.length(l.height)),
            text(pole::line(l.kind).en),
            count(l.course),
            number(style.number(l.over)),
            text(style.short(l.over)),
            text(l.elevations.join("; ")),
            text(l.names.join("; ")),
        ]
    });
    table(&header, rows)
}

/// `cut-list.csv`: every piece of panel in cutting order, then every piece of trim.
pub fn cut_list(layout: &Layout) -> Vec<u8> {
    // Where panels come in several lengths, each row says which it is cut from.
    let lengths: BTreeMap<&str, f64> = match layout.stocks.len() > 1 {
        true => layout.panels.iter().map(|p| (p.id.as_str(), p.stock)).collect(),
        false => BTreeMap::new(),
    };
    let header = cut_list_header(layout, !lengths.is_empty());
    let pieces = cut_list_pieces(layout, &lengths);
    let panels = layout.panels.iter().flat_map(|p| &p.pieces);
    let panels = panels.filter_map(|m| pieces.get(m.as_str()).cloned());
    let mut trims: Vec<&TrimPiece> = layout.trims.iter().collect();
    trims.sort_by_key(|t| (stock_words(t.kind.stock()), t.stock.number()));
    let trims = trims.into_iter().map(|t| {
        let mut row = trim(layout, t);
        // Columns of pieces alone.
        row.resize(header.len(), Cell::BLANK);
        row
    });
    table(&header, panels.chain(trims))
}

/// The heads of the columns: those of every job, then those that this one asks for.
fn cut_list_header(layout: &Layout, mixed: bool) -> Vec<String> {
    let unit = layout.job.sheet.lengths.unit();
    let mut header = owned(&["stock", "mark"]);
    for name in ["from", "to", "length"] {
        header.push(format!("{name} ({unit})"));
    }
    header.extend(owned(&["length", "left end", "left angle", "right end", "right angle"]));
    header.push(format!("rip from ({unit})"));
    header.push(format!("rip to ({unit})"));
    header.extend(owned(&["notches", "elevation", "wall", "course"]));
    let [bottom, top] = csv_columns::EDGES;
    for name in [bottom, top, csv_columns::POINTS[0], csv_columns::POINTS[1]] {
        header.push(format!("{name} ({unit})"));
    }
    header.extend(owned(&csv_columns::FROM_SQUARE));
    header.extend(owned(&["left contour", "right contour"]));
    header.extend(owned(&csv_columns::SAW));
    if holds_cut_edges(layout) {
        header.push("nail slots".to_owned());
        if takes_lugs(layout) {
            header.push("lugs".to_owned());
        }
        header.push(csv_columns::SHIM.to_owned());
        header.push(csv_columns::HELD.to_owned());
    }
    if mixed {
        header.push(format!("panel length ({unit})"));
    }
    if layout.job.seams.reuse_halves {
        header.push(csv_columns::HALF.to_owned());
    }
    if layout.job.siding().cut_edge == CutEdgeRule::TrimNails {
        header.push("trim nails".to_owned());
    }
    header
}

/// Whether cut edges are held by slots, lugs or trim nails rather than through the face.
fn holds_cut_edges(layout: &Layout) -> bool {
    layout.job.siding().cut_edge != CutEdgeRule::FaceNails
}

/// Whether they are held by lugs.
fn takes_lugs(layout: &Layout) -> bool {
    layout.job.siding().cut_edge == CutEdgeRule::Lugs
}

/// The row of each piece by its mark.
fn cut_list_pieces<'a>(
    layout: &'a Layout,
    lengths: &BTreeMap<&str, f64>,
) -> BTreeMap<&'a str, Vec<Cell>> {
    let style = layout.job.sheet.lengths;
    let mut pieces = BTreeMap::new();
    let saw = SawPlaces::of(layout);
    for (e, w) in layout.walls() {
        for c in &w.courses {
            for p in c.runs.iter().flat_map(|r| &r.pieces) {
                let mut row = piece(style, e, w, c.index + 1, p);
                row.extend(saw.cells(&p.mark));
                if holds_cut_edges(layout) {
                    row.extend(edge_work(p, takes_lugs(layout)));
                }
                let stock = lengths.get(p.panel.as_str());
                row.extend(stock.map(|l| number(style.number(*l))));
                if layout.job.seams.reuse_halves {
                    row.push(text(p.half.map_or("", |h| cuts::half(h).en)));
                }
                if layout.job.siding().cut_edge == CutEdgeRule::TrimNails {
                    row.push(count(p.edge_work.trim_nails as u64));
                }
                pieces.insert(p.mark.as_str(), row);
            }
        }
    }
    pieces
}

fn piece(style: LengthStyle, e: &LaidElevation, w: &LaidWall, course: i32, p: &Piece) -> Vec<Cell> {
    let length = |v: f64| number(style.number(v));
    let rip = |v: Option<f64>| v.map_or(Cell::BLANK, length);
    let exact = p;
    let p = &told::piece(p, style);
    let [left, right] = &p.ends;
    let mut row = vec![
        text(p.panel.as_str()),
        text(p.mark.as_str()),
        length(p.start),
        length(p.end),
        length(p.length),
        text(style.length(p.length)),
        text(end(left.cut).en),
        number(left.angle),
        text(end(right.cut).en),
        number(right.angle),
        rip(p.rip.as_ref().map(|r| r.from)),
        rip(p.rip.as_ref().map(|r| r.to)),
        text(notches(Language::English, p, style)),
        text(e.name.as_str()),
        text(w.id.as_str()),
        count(course),
    ];
    row.extend(cuts(style, exact, p));
    row
}

/// Edges, angles from square and contours of a piece, as they are told.
fn cuts(style: LengthStyle, exact: &Piece, p: &Piece) -> Vec<Cell> {
    let length = |v: f64| number(style.number(v));
    let edge = |top: bool| length(told::edge(exact, top, style).map_or(0.0, |(a, b)| b - a));
    let points = |c: &Option<Contour>| {
        c.as_ref().map_or(String::new(), |c| contour(Language::English, c, style))
    };
    let [left, right] = &p.ends;
    vec![
        edge(false),
        edge(true),
        length(left.set_back()),
        length(right.set_back()),
        number(90.0 - left.angle),
        number(90.0 - right.angle),
        text(points(&left.contour)),
        text(points(&right.contour)),
    ]
}

/// What is done to cut edges.
fn edge_work(p: &Piece, lugs: bool) -> Vec<Cell> {
    let work = &p.edge_work;
    let mut out = vec![count(work.slots as u64)];
    if lugs {
        out.push(count(work.lugs as u64));
    }
    out.push(text(if work.furring { "yes" } else { "" }));
    out.push(text(cuts::holds(Language::English, work)));
    out
}

fn trim(layout: &Layout, t: &TrimPiece) -> Vec<Cell> {
    let style = layout.job.sheet.lengths;
    let boards = !layout.job.siding().receivers.has_pockets();
    vec![
        text(stock_length(Language::English, &t.stock, boards)),
        text(t.mark.as_str()),
        Cell::BLANK,
        Cell::BLANK,
        number(style.number(style.to_cut(t.length))),
        text(style.cut(t.length)),
        text(trim::end_on(Language::English, &t.ends[0], style, boards)),
        Cell::BLANK,
        text(trim::end_on(Language::English, &t.ends[1], style, boards)),
        Cell::BLANK,
        Cell::BLANK,
        Cell::BLANK,
        text(trim::piece_on(Language::English, t, style, boards)),
        text(t.elevation.as_str()),
        text(t.wall.as_str()),
        Cell::BLANK,
    ]
}
