//! CSV by RFC 4180. A cell of text that begins with `=`, `+`, `-`, `@`, a tab or a return gets an
//! apostrophe before it, so that no spreadsheet runs it as a formula; numbers are left alone.
//!
//! Lengths stand twice: as numbers, inches or millimeters by the job, which the header says; and in
//! the job's words, `12'-6 1/2"` or `3823 mm`.

use std::collections::BTreeMap;

use crate::clean::{Destination, clean};
use crate::job::siding::system::CutEdgeRule;
use crate::layout::Layout;
use crate::layout::piece::Piece;
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

/// A cell that stays text.
fn cell(text: &str) -> String {
    clean(text, Destination::Csv)
}

fn table(header: &[String], rows: impl Iterator<Item = Vec<String>>) -> Vec<u8> {
    let mut writer =
        csv::WriterBuilder::new().terminator(csv::Terminator::CRLF).from_writer(Vec::new());
    // Writing to memory cannot fail; a row of another length would, and there is none.
    let _ = writer.write_record(header);
    for row in rows {
        let _ = writer.write_record(&row);
    }
    writer.into_inner().unwrap_or_default()
}

/// A number to four decimals, without trailing zeros.
fn number(v: f64) -> String {
    let rounded = (v * 1e4).round() / 1e4;
    format!("{}", if rounded == 0.0 { 0.0 } else { rounded })
}

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
    header.extend(owned(&["stock", "length used", "counts"]));
    if takeoff.cost.is_some() {
        header.extend(owned(&[
            "price",
            "order multiple",
            csv_columns::UNITS_TO_BUY,
            "extended",
            "currency",
        ]));
    }
    let length = |v: Option<f64>| v.map_or(String::new(), |v| number(style.number(v)));
    let words = |v: Option<f64>| v.map_or(String::new(), |v| style.length(v));
    let rows = takeoff.lines.iter().map(|l| {
        let mut row = vec![
            cell(&items::item(&l.item, style)),
            items::unit(l.unit).to_owned(),
            number(l.net),
            number(l.order),
            number(l.waste),
            cell(&basis(l, &layout.job, &layout.bound)),
            cell(&l.id),
            super::json::word(&l.group).unwrap_or_default(),
            cell(&l.color),
            length(l.stock),
            length(l.length),
            words(l.stock),
            words(l.length),
            cell(&ranges(&l.counts)),
        ];
        row.extend(takeoff.cost.iter().flat_map(|c| costs(c, l, takeoff.buys(l))));
        row
    });
    table(&header, rows)
}

/// Cells of a line's cost; a line to buy without a price says so, one not bought is blank.
fn costs(cost: &Cost, line: &TakeoffLine, bought: bool) -> [String; 5] {
    match cost.lines.iter().find(|p| p.item == line.id) {
        Some(p) => [
            number(p.price as f64 / 1e4),
            p.multiple.to_string(),
            p.quantity.to_string(),
            format!("{}.{:02}", p.extended / 100, p.extended % 100),
            cell(&cost.currency),
        ],
        None if bought => ["no price", "", "", "", ""].map(str::to_owned),
        None => Default::default(),
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
                cell(&items::item(&l.item, style)),
                items::unit(l.unit).to_owned(),
                cell(&s.elevation),
                cell(&s.wall),
                s.wall_part.map_or("", items::wall_part).to_owned(),
                s.pieces.to_string(),
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
            cell(&s.elevation),
            cell(&s.wall),
            s.wall_part.map_or("", items::wall_part).to_owned(),
            cell(&items::item(&s.item, style)),
            items::unit(s.unit).to_owned(),
            s.pieces.to_string(),
            number(s.net),
            cell(&s.id),
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
            cell(&style.length(l.height)),
            pole::line(l.kind).to_owned(),
            l.course.to_string(),
            number(style.number(l.over)),
            style.short(l.over),
            cell(&l.elevations.join("; ")),
            cell(&l.names.join("; ")),
        ]
    });
    table(&header, rows)
}

/// `cut-list.csv`: every piece of panel in cutting order, then every piece of trim.
pub fn cut_list(layout: &Layout) -> Vec<u8> {
    let style = layout.job.sheet.lengths;
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
        let mut row = trim(style, t);
        // Columns of pieces alone.
        row.resize(header.len(), String::new());
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
    header.extend(owned(&["left contour", "right contour", "nail slots", "lugs"]));
    header.push(csv_columns::SHIM.to_owned());
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

/// The row of each piece by its mark.
fn cut_list_pieces<'a>(
    layout: &'a Layout,
    lengths: &BTreeMap<&str, f64>,
) -> BTreeMap<&'a str, Vec<String>> {
    let style = layout.job.sheet.lengths;
    let mut pieces = BTreeMap::new();
    for (e, w) in layout.walls() {
        for c in &w.courses {
            for p in c.runs.iter().flat_map(|r| &r.pieces) {
                let mut row = piece(style, e, w, c.index + 1, p);
                let stock = lengths.get(p.panel.as_str());
                row.extend(stock.map(|l| number(style.number(*l))));
                if layout.job.seams.reuse_halves {
                    row.push(p.half.map_or("", cuts::half).to_owned());
                }
                if layout.job.siding().cut_edge == CutEdgeRule::TrimNails {
                    row.push(p.edge_work.trim_nails.to_string());
                }
                pieces.insert(p.mark.as_str(), row);
            }
        }
    }
    pieces
}

fn piece(
    style: LengthStyle,
    e: &LaidElevation,
    w: &LaidWall,
    course: i32,
    p: &Piece,
) -> Vec<String> {
    let length = |v: f64| number(style.number(v));
    let rip = |v: Option<f64>| v.map_or(String::new(), length);
    let [left, right] = &p.ends;
    let mut row = vec![
        cell(&p.panel),
        cell(&p.mark),
        length(p.start),
        length(p.end),
        length(p.length),
        style.cut(p.length),
        end(left.cut).into(),
        number(left.angle),
        end(right.cut).into(),
        number(right.angle),
        rip(p.rip.as_ref().map(|r| r.from)),
        rip(p.rip.as_ref().map(|r| r.to)),
        cell(&notches(p, style)),
        cell(&e.name),
        cell(&w.id),
        course.to_string(),
    ];
    row.extend(cuts(style, p));
    row
}

/// Edges, angles from square, contours and what is done to cut edges.
fn cuts(style: LengthStyle, p: &Piece) -> Vec<String> {
    let length = |v: f64| number(style.number(v));
    let edge = |top: bool| {
        let (a, b) = p.edge(top);
        length((b - a).max(0.0))
    };
    let points = |c: &Option<Contour>| c.as_ref().map_or(String::new(), |c| contour(c, style));
    let (work, [left, right]) = (&p.edge_work, &p.ends);
    vec![
        edge(false),
        edge(true),
        length(left.set_back()),
        length(right.set_back()),
        number(90.0 - left.angle),
        number(90.0 - right.angle),
        cell(&points(&left.contour)),
        cell(&points(&right.contour)),
        work.slots.to_string(),
        work.lugs.to_string(),
        if work.furring { "yes".to_owned() } else { String::new() },
    ]
}

fn trim(style: LengthStyle, t: &TrimPiece) -> Vec<String> {
    let blank = String::new;
    vec![
        cell(&stock_length(&t.stock)),
        cell(&t.mark),
        blank(),
        blank(),
        number(style.number(t.length)),
        style.cut(t.length),
        trim::end(&t.ends[0], style),
        blank(),
        trim::end(&t.ends[1], style),
        blank(),
        blank(),
        blank(),
        cell(trim::kind(t.kind)),
        cell(&t.elevation),
        cell(&t.wall),
        blank(),
    ]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_cell_runs_as_a_formula() {
        for t in ["=1+1", "+1", "-1", "@x", "\tx", "\rx"] {
            assert!(cell(t).starts_with('\''));
        }
        assert_eq!(cell("front-1"), "front-1");
    }

    #[test]
    fn numbers_carry_no_noise() {
        assert_eq!(number(-0.000001), "0");
        assert_eq!(number(0.1 + 0.2), "0.3");
    }
}
