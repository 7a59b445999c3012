//! What each wall takes, then every opening.

use super::grid::{Grid, Look, letter};
use crate::language::Language;
use crate::layout::Layout;
use crate::layout::wall::{LaidOpening, LaidWall};
use crate::model::item::Item;
use crate::model::quantity::{Group, TakeoffLine};
use crate::model::takeoff::Takeoff;
use crate::real::Total;
use crate::wording::tables;
use crate::wording::takeoff::items;
use crate::write::json::word;

/// Columns before the lines of the takeoff.
const FIXED: u16 = 9;

pub(super) fn sheet(layout: &Layout, takeoff: &Takeoff) -> Grid {
    let mut widths = vec![22.0, 12.0, 14.0, 16.0, 11.0, 11.0, 11.0, 11.0, 11.0];
    widths.extend([11.0; 16]);
    let mut g = Grid::new(layout, tables::WALLS, &widths);
    g.texts(&[tables::WALLS], Look::Title);
    g.texts(&[tables::WALLS_NOTE], Look::Text);
    let lines: Vec<&TakeoffLine> = takeoff
        .lines
        .iter()
        .filter(|l| !l.shares.is_empty() && l.item != Item::Squares && l.group != Group::Comparison)
        .collect();
    walls(&mut g, layout, &lines);
    openings(&mut g, layout);
    g
}

fn walls(g: &mut Grid, layout: &Layout, lines: &[&TakeoffLine]) {
    let style = layout.job.sheet.lengths;
    let area = |name: &str| format!("{name} ({})", style.area_unit());
    let (gross, holes, net) = (area("Gross"), area("Openings"), area("Net"));
    let bare = area(tables::WITHOUT_SIDING);
    let mut head: Vec<String> = vec![
        "Elevation".into(),
        "Wall".into(),
        gross,
        holes,
        bare,
        net,
        "Openings".into(),
        "Courses".into(),
        "Pieces".into(),
    ];
    let named = |l: &&TakeoffLine| {
        format!("{} ({})", items::item(Language::English, &l.item, style), items::unit(l.unit).en)
    };
    head.extend(lines.iter().map(named));
    let words: Vec<&str> = head.iter().map(String::as_str).collect();
    g.head(&words, &(2..words.len() as u16).collect::<Vec<_>>());
    let first = g.row + 1;
    for (e, w) in layout.walls() {
        let excel = g.row + 1;
        g.text(0, &e.name, Look::Text);
        g.text(1, &w.id, Look::Text);
        g.number(2, style.area(w.gross_area), Look::Two);
        let holes = format!("=C{excel}-E{excel}-F{excel}");
        g.sum(3, &holes, style.area(openings_area(w)), Look::Two);
        g.number(4, style.area(w.bare_area()), Look::Two);
        g.number(5, style.area(w.net_area), Look::Two);
        g.number(6, w.openings.len() as f64, Look::Count);
        g.number(7, w.courses.len() as f64, Look::Count);
        g.number(8, pieces(w) as f64, Look::Count);
        for (i, l) in lines.iter().enumerate() {
            g.number(FIXED + i as u16, share(l, |s| s.wall == w.id), Look::Two);
        }
        g.next();
    }
    let last = g.row.max(first);
    total(g, layout, lines, first);
    g.row += 2;
    elevations(g, layout, lines, (first, last));
}

/// Square feet that openings take of gross area.
fn openings_area(w: &LaidWall) -> f64 {
    w.gross_area - w.bare_area() - w.net_area
}

fn pieces(w: &LaidWall) -> usize {
    w.courses.iter().flat_map(|c| &c.runs).map(|r| r.pieces.len()).sum()
}

fn share(line: &TakeoffLine, mine: impl Fn(&crate::model::quantity::Share) -> bool) -> f64 {
    line.shares.iter().filter(|s| mine(s)).map(|s| s.net).total()
}

fn total(g: &mut Grid, layout: &Layout, lines: &[&TakeoffLine], first: u32) {
    let style = layout.job.sheet.lengths;
    let sum = |f: &dyn Fn(&LaidWall) -> f64| -> f64 { layout.walls().map(|(_, w)| f(w)).sum() };
    g.text(0, "House", Look::TotalText);
    g.text(1, "", Look::TotalText);
    for (col, v, look) in [
        (2, style.area(sum(&|w| w.gross_area)), Look::Total),
        (3, style.area(sum(&openings_area)), Look::Total),
        (4, style.area(sum(&LaidWall::bare_area)), Look::Total),
        (5, style.area(sum(&|w| w.net_area)), Look::Total),
        (6, sum(&|w| w.openings.len() as f64), Look::TotalCount),
        (7, sum(&|w| w.courses.len() as f64), Look::TotalCount),
        (8, sum(&|w| pieces(w) as f64), Look::TotalCount),
    ] {
        g.subtotal(col, first, v, look);
    }
    for (i, l) in lines.iter().enumerate() {
        g.subtotal(FIXED + i as u16, first, share(l, |_| true), Look::Total);
    }
}

/// The same by elevation, by formulas over the walls.
fn elevations(g: &mut Grid, layout: &Layout, lines: &[&TakeoffLine], (first, last): (u32, u32)) {
    let style = layout.job.sheet.lengths;
    g.texts(&["By elevation"], Look::Heading);
    let mut seen: Vec<&str> = Vec::new();
    for e in &layout.elevations {
        if seen.contains(&e.name.as_str()) {
            continue;
        }
        seen.push(&e.name);
        let excel = g.row + 1;
        g.text(0, &e.name, Look::Text);
        let same = layout.elevations.iter().filter(|o| o.name == e.name);
        let walls: Vec<&LaidWall> = same.flat_map(|o| &o.walls).collect();
        let sum = |f: &dyn Fn(&LaidWall) -> f64| -> f64 { walls.iter().map(|w| f(w)).total() };
        let put = |g: &mut Grid, col: u16, v: f64, look: Look| {
            let c = letter(col);
            // A name that holds a wildcard would match others; the exact match has none.
            let formula =
                format!("=SUMPRODUCT(--($A${first}:$A${last}=$A{excel}),{c}${first}:{c}${last})");
            g.sum(col, &formula, v, look);
        };
        put(g, 2, style.area(sum(&|w| w.gross_area)), Look::Two);
        put(g, 3, style.area(sum(&openings_area)), Look::Two);
        put(g, 4, style.area(sum(&LaidWall::bare_area)), Look::Two);
        put(g, 5, style.area(sum(&|w| w.net_area)), Look::Two);
        put(g, 6, sum(&|w| w.openings.len() as f64), Look::Count);
        put(g, 7, sum(&|w| w.courses.len() as f64), Look::Count);
        put(g, 8, sum(&|w| pieces(w) as f64), Look::Count);
        for (i, l) in lines.iter().enumerate() {
            put(g, FIXED + i as u16, share(l, |s| s.elevation == e.name), Look::Two);
        }
        g.next();
    }
    g.next();
}

fn area(o: &LaidOpening) -> f64 {
    let next = o.outline.iter().cycle().skip(1);
    let sum: f64 = o.outline.iter().zip(next).map(|(a, b)| a[0] * b[1] - b[0] * a[1]).sum();
    sum.abs() / 288.0
}

fn openings(g: &mut Grid, layout: &Layout) {
    let style = layout.job.sheet.lengths;
    g.texts(&["Openings"], Look::Heading);
    let of = |name: &str| format!("{name} ({})", style.unit());
    let (width, height, sill, head) = (of("Width"), of("Height"), of("Sill"), of("Head"));
    let size = format!("Area ({})", style.area_unit());
    let top = g.row;
    g.heads(
        &["Elevation", "Wall", "Opening", "Kind", &width, &height, &sill, &head, &size, "Size"],
        &[4, 5, 6, 7, 8],
    );
    let first = g.row + 1;
    let mut total = 0.0;
    for (e, w) in layout.walls() {
        for o in &w.openings {
            g.text(0, &e.name, Look::Text);
            g.text(1, &w.id, Look::Text);
            g.text(2, &o.id, Look::Text);
            g.text(3, &word(&o.kind).unwrap_or_default().replace('-', " "), Look::Text);
            for (col, v) in [(4, o.right - o.left), (5, o.head - o.sill), (6, o.sill), (7, o.head)]
            {
                g.number(col, style.number(v), Look::Three);
            }
            g.number(8, style.area(area(o)), Look::Two);
            g.text(9, &style.size(o.right - o.left, o.head - o.sill), Look::Text);
            total += area(o);
            g.next();
        }
    }
    g.filter(top, 10);
    g.text(0, "Total", Look::TotalText);
    g.subtotal(8, first, style.area(total), Look::Total);
}
