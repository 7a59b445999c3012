//! What a revision changes, as sheets of a workbook: the changes, each wall, the order.

use super::grid::{Grid, Look};
use crate::language::Language;
use crate::layout::Layout;
use crate::model::change::Comparison;
use crate::wording::compare as words;
use crate::wording::compare_tables as heads;
use crate::wording::takeoff::items;

/// What the drawing changes, a row a change.
pub(super) fn changes(layout: &Layout, c: &Comparison) -> Grid {
    let style = layout.job.sheet.lengths;
    let mut g = Grid::new(layout, heads::SHEETS[0], &[8.0, 24.0, 18.0, 70.0]);
    g.texts(&[words::CHANGES], Look::Title);
    g.texts(&[&words::revision(&c.revision, &c.date)], Look::Text);
    g.texts(&[&words::drawing(heads::DRAWINGS[0], &c.old.name, &c.old.sha256)], Look::Text);
    g.texts(&[&words::drawing(heads::DRAWINGS[1], &c.new.name, &c.new.sha256)], Look::Text);
    for r in &c.remarks {
        g.texts(&[&words::remark(r)], Look::Text);
    }
    for (_, which) in c.check_failed.iter().zip(heads::WHICH).filter(|f| *f.0) {
        g.texts(&[&words::check_failed(which)], Look::Heading);
    }
    let head = g.row;
    g.head(&words::CHANGE_HEADS, &[0]);
    for change in &c.changes {
        g.number(0, change.number as f64, Look::Count);
        g.text(1, change.elevation.as_deref().unwrap_or_default(), Look::Text);
        g.text(2, change.wall.as_deref().unwrap_or_default(), Look::Text);
        g.text(3, &words::change(change, style), Look::Wrapped);
        g.next();
    }
    g.filter(head, 4);
    if c.changes.is_empty() {
        g.texts(&["", "", "", words::NOTHING], Look::Text);
    }
    if !c.settings.is_empty() {
        g.next();
        g.texts(&[words::SETTINGS], Look::Heading);
        for s in &c.settings {
            g.text(3, &words::setting(&s.key, s.from.as_deref(), s.to.as_deref()), Look::Wrapped);
            g.next();
        }
    }
    g
}

/// What each wall takes, a row a wall and line.
pub(super) fn walls(layout: &Layout, c: &Comparison) -> Grid {
    let style = layout.job.sheet.lengths;
    let mut g = Grid::new(layout, heads::SHEETS[1], &[26.0, 36.0, 12.0, 12.0, 12.0, 12.0]);
    g.texts(&[words::WALLS], Look::Title);
    g.texts(&[&words::datum(c.datum, style)], Look::Text);
    g.head(&heads::WALL_COLUMNS, &[3, 4, 5]);
    let row = |g: &mut Grid, [wall, what, unit]: [&str; 3], both: [f64; 2], look: Look| {
        let excel = g.row + 1;
        g.texts_at(&[wall, what, unit]);
        g.number(3, both[0], look);
        g.number(4, both[1], look);
        g.sum(5, &format!("=E{excel}-D{excel}"), both[1] - both[0], look);
        g.next();
    };
    for w in &c.walls {
        let name = heads::wall_name(w);
        let counts = |both: [usize; 2]| both.map(|n| n as f64);
        let area = w.net_area.map(|f| style.area(f));
        row(&mut g, [&name, heads::NET_AREA, style.area_unit()], area, Look::Two);
        row(&mut g, [&name, heads::COURSES, ""], counts(w.courses), Look::Count);
        row(&mut g, [&name, heads::PIECES, ""], counts(w.pieces), Look::Count);
        // One number: those of the new layout that are cut as they were.
        g.texts_at(&[&name, heads::ALIKE, ""]);
        g.number(4, w.pieces_alike as f64, Look::Count);
        g.next();
        for l in &w.lines {
            let item = items::item(Language::English, &l.item, style);
            row(&mut g, [&name, &item, items::unit(l.unit).en], l.net, Look::Two);
        }
    }
    g.texts(&[&words::walls_alike(c.walls_alike)], Look::Text);
    g
}

/// The order before and after, a row a line.
pub(super) fn order(layout: &Layout, c: &Comparison) -> Grid {
    let style = layout.job.sheet.lengths;
    let currency = c.cost.as_ref().map(|c| c.currency.clone()).unwrap_or_default();
    let mut g = Grid::new(layout, heads::SHEETS[2], &[40.0, 12.0, 12.0, 12.0, 12.0, 14.0]);
    g.texts(&[words::ORDER_TITLE], Look::Title);
    g.texts(&[words::RESTS_ON], Look::Text);
    let cost = heads::cost_head(&currency);
    let [item, unit, before, after, more] = words::ORDER_HEADS;
    g.head(&[item, unit, before, after, more, &cost], &[2, 3, 4, 5]);
    let first = g.row + 1;
    for o in &c.orders {
        let excel = g.row + 1;
        g.texts_at(&[&items::item(Language::English, &o.item, style), items::unit(o.unit).en]);
        g.number(2, o.order[0], Look::Two);
        g.number(3, o.order[1], Look::Two);
        g.sum(4, &format!("=D{excel}-C{excel}"), o.more, Look::Two);
        if let Some(cost) = o.cost {
            g.number(5, cost, Look::Money);
        }
        g.next();
    }
    if c.cost.is_some() && !c.orders.is_empty() {
        g.text(0, words::DIFFERENCE_OF_PRICED, Look::TotalText);
        let sum: f64 = c.orders.iter().filter_map(|o| o.cost).sum();
        g.subtotal(5, first, sum, Look::TotalMoney);
        g.next();
    }
    g.texts(&[&words::orders_alike(c.orders_alike)], Look::Text);
    g
}
