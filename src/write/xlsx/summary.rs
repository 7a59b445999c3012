//! The first sheet: what it is of, the totals, the proof, the comparison.

use super::grid::{Grid, Look};
use super::order::{row_of, total_row};
use crate::finding::{Audience, Severity};
use crate::language::Language;
use crate::layout::Layout;
use crate::model::item::Item;
use crate::model::takeoff::Takeoff;
use crate::wording::takeoff::{checks as counting, comparison as compared, items};
use crate::wording::trim::stock_length;
use crate::wording::{checks, proof, report, siding, tables};

pub(super) fn sheet(layout: &Layout, takeoff: &Takeoff) -> Grid {
    let mut g = Grid::new(layout, "Summary", &[60.0, 14.0, 14.0, 14.0, 14.0, 12.0, 82.0]);
    g.texts(&[&title(layout)], Look::Title);
    let t = &layout.job.title;
    for (name, value) in [
        ("Client", &t.client),
        ("Address", &t.address),
        ("Number", &t.number),
        ("Revision", &t.revision),
        ("Date", &t.date),
        ("Drawn by", &t.drawn_by),
        ("Drawing", &layout.drawing.name),
        (tables::SHA, &layout.drawing.sha256),
    ] {
        if !value.is_empty() {
            g.texts(&[name, value], Look::Text);
        }
    }
    g.next();
    totals(&mut g, layout, takeoff);
    ways(&mut g, layout, takeoff);
    offcuts(&mut g, layout, takeoff);
    leftovers(&mut g, layout, takeoff);
    checks(&mut g, layout, takeoff);
    verified(&mut g, layout);
    one_order(&mut g, layout, takeoff);
    g
}

/// One list to buy by, where the house has zones with siding of their own.
fn one_order(g: &mut Grid, layout: &Layout, takeoff: &Takeoff) {
    if takeoff.one_order.is_empty() {
        return;
    }
    g.next();
    g.texts(&[tables::ONE_ORDER], Look::Heading);
    g.texts(&[report::ONE_ORDER_NOTE], Look::Text);
    g.heads(&["Item", "Needed", "To order", "Unit", "For"], &[1, 2]);
    for l in &takeoff.one_order {
        g.text(0, &report::order_item(l, &layout.job), Look::Text);
        g.number(1, l.net, Look::Two);
        g.number(2, l.order, if l.order.fract() == 0.0 { Look::Count } else { Look::Two });
        g.text(3, items::unit(l.unit).en, Look::Text);
        g.text(4, &report::order_sets(l), Look::Text);
        g.next();
    }
}

/// A total: what, which items it adds, and their column of the order.
type Total<'a> = (&'a str, fn(&Item) -> bool, &'static str);

/// Totals that point at the other sheets.
fn totals(g: &mut Grid, layout: &Layout, takeoff: &Takeoff) {
    let style = layout.job.sheet.lengths;
    g.texts(&["Totals"], Look::Heading);
    let what = siding::pieces_heading(layout.job.product.kind).en;
    let (laid, spare) = (format!("{what} laid"), format!("Spare {}", what.to_lowercase()));
    let rows: [Total; 6] = [
        (&laid, |i| matches!(i, Item::Panels { .. }), "E"),
        (&spare, |i| matches!(i, Item::SparePanels { .. }), "E"),
        (tables::CARTONS, |i| matches!(i, Item::Cartons { .. }), "E"),
        (tables::NET_SQUARES, |i| *i == Item::Squares, "D"),
        ("Squares laid", |i| *i == Item::SquaresLaid, "D"),
        ("Squares ordered", |i| *i == Item::Squares, "E"),
    ];
    for (what, is_of, col) in rows {
        // Of several lengths each has its own line.
        for line in takeoff.lines.iter().filter(|l| is_of(&l.item)) {
            let Some(row) = row_of(layout, takeoff, &line.id) else { continue };
            let length = line.item.mixed_stock().map(|s| format!(", {}", style.length(s.length)));
            g.text(0, &format!("{what}{}", length.unwrap_or_default()), Look::Text);
            let v = if col == "E" { line.order } else { line.net };
            let look = if v.fract() == 0.0 { Look::Count } else { Look::Two };
            g.sum(1, &format!("=Order!{col}{row}"), v, look);
            g.next();
        }
    }
    match &layout.bound.certificate.mixed {
        None => {
            g.text(0, &tables::fewest(siding::piece(layout.job.product.kind).en), Look::Text);
            g.number(1, layout.bound.panels as f64, Look::Count);
        }
        Some(proof) => {
            let first = layout.job.sheet.lengths.length(layout.first_length());
            g.text(0, &tables::least_bought(&first), Look::Text);
            let one = proof.stocks.first().map_or(1, |s| s.weight.max(1));
            let least = proof.bound as f64 / one as f64;
            g.number(1, least, Look::Two);
        }
    }
    g.text(2, &proof::panels(Language::English, &layout.bound, &layout.job), Look::Text);
    g.next();
    let cost = takeoff.cost.as_ref();
    g.text(0, &tables::priced(cost.map(|c| c.currency.as_str())), Look::Text);
    let total = cost.map_or(0.0, |c| c.total as f64 / 100.0);
    g.sum(1, &format!("=Order!K{}", total_row(layout, takeoff)), total, Look::Money);
    g.text(2, &tables::cost_note(takeoff), Look::Text);
    g.row += 2;
}

fn ways(g: &mut Grid, layout: &Layout, takeoff: &Takeoff) {
    let style = layout.job.sheet.lengths;
    g.texts(&[tables::COMPARISON], Look::Heading);
    let area = format!("Area ({})", style.area_unit());
    let singly = layout.job.sold_singly();
    g.heads(
        &[
            tables::WAY_OF_COUNTING,
            &area,
            siding::pieces_heading(layout.job.product.kind).en,
            if singly { "" } else { "Cartons" },
            tables::AGAINST_LAYOUT,
            &tables::siding_cost(siding::piece(layout.job.product.kind).en),
            "How",
        ],
        &[1, 2, 3, 4, 5],
    );
    let first = g.row + 1;
    for w in &takeoff.comparison {
        let excel = g.row + 1;
        g.text(0, &compared::name(&w.method, style), Look::Text);
        if let Some(a) = w.area {
            g.number(1, style.area(a), Look::Two);
        }
        g.number(2, w.panels as f64, Look::Count);
        if !singly {
            g.number(3, w.cartons as f64, Look::Count);
        }
        g.sum(4, &format!("=C{excel}-C${first}"), w.over as f64, Look::Count);
        if let Some(c) = w.cost {
            g.number(5, c as f64 / 100.0, Look::Money);
        }
        g.text(6, &compared::explained(&w.method, &layout.job), Look::Wrapped);
        g.next();
    }
    g.next();
}

fn offcuts(g: &mut Grid, layout: &Layout, takeoff: &Takeoff) {
    let style = layout.job.sheet.lengths;
    g.texts(&[tables::USE_AND_WASTE], Look::Heading);
    let of = |name: &str| format!("{name} ({})", style.unit());
    g.heads(
        &[
            "Item",
            &of("Bought"),
            &of(tables::ON_WALL),
            &of("Usable leftovers"),
            &of("Scrap"),
            "Not used",
        ],
        &[1, 2, 3, 4, 5],
    );
    for o in &takeoff.offcuts {
        let excel = g.row + 1;
        g.text(0, &items::of_line(Language::English, takeoff, &o.item, style), Look::Text);
        for (col, v) in [(1, o.bought), (2, o.used), (3, o.usable)] {
            g.number(col, style.number(v), Look::Two);
        }
        // As the formula reckons it, of the figures shown.
        let scrap = style.number(o.bought) - style.number(o.used) - style.number(o.usable);
        g.sum(4, &format!("=B{excel}-C{excel}-D{excel}"), scrap, Look::Two);
        let shown = style.number(o.used) / style.number(o.bought);
        let unused = if o.bought > 0.0 { 1.0 - shown } else { 0.0 };
        g.sum(5, &format!("=IF(B{excel}>0,1-C{excel}/B{excel},0)"), unused, Look::Percent);
        g.next();
    }
    g.next();
}

fn leftovers(g: &mut Grid, layout: &Layout, takeoff: &Takeoff) {
    let style = layout.job.sheet.lengths;
    let boards = !layout.job.siding().receivers.has_pockets();
    let least = style.short(layout.job.seams.shortest);
    g.texts(&[&format!("Leftovers of {least} or longer")], Look::Heading);
    let length = format!("Length ({})", style.unit());
    g.heads(&["Item", "Left of", &length, "Cut to", "Factory end"], &[2]);
    for l in &takeoff.leftovers {
        g.text(0, &items::of_line(Language::English, takeoff, &l.item, style), Look::Text);
        g.text(1, &stock_length(Language::English, &l.stock.as_str().into(), boards), Look::Text);
        g.number(2, style.number(l.length), Look::Three);
        g.text(3, &style.cut(l.length), Look::Text);
        g.text(4, if l.factory_end { "yes" } else { "no" }, Look::Text);
        g.next();
    }
    if takeoff.leftovers.is_empty() {
        g.texts(&["none"], Look::Text);
    }
    g.next();
}

fn checks(g: &mut Grid, layout: &Layout, takeoff: &Takeoff) {
    let boards = !layout.job.siding().receivers.has_pockets();
    g.texts(&[tables::CROSS_CHECK], Look::Heading);
    g.heads(&["What", "By rule", "This layout", "Unit", "", "", "Rule"], &[1, 2]);
    for c in &takeoff.checks {
        let look = |v: f64| if v.fract() == 0.0 { Look::Count } else { Look::Two };
        g.text(0, &counting::subject(&c.counting_rule, boards), Look::Text);
        g.number(1, c.rule, look(c.rule));
        if c.layout > 0.0 {
            g.number(2, c.layout, look(c.layout));
        }
        g.text(3, items::unit(c.unit).en, Look::Text);
        g.text(6, &counting::rule(&c.counting_rule), Look::Wrapped);
        g.next();
    }
    g.next();
}

fn verified(g: &mut Grid, layout: &Layout) {
    let boards = !layout.job.siding().receivers.has_pockets();
    g.texts(&[checks::SECTION.en], Look::Heading);
    g.heads(&["Rule", "Cases", "FAIL", "First"], &[1, 2]);
    for r in &layout.verify.rules {
        g.text(0, checks::rule_on(r.rule, boards).en, Look::Wrapped);
        g.number(1, r.checked as f64, Look::Count);
        g.number(2, r.violations.len() as f64, Look::Count);
        if let Some(v) = r.violations.first() {
            g.text(3, &checks::violation(v, layout.job.sheet.lengths), Look::Text);
        }
        g.next();
    }
    for audience in [Audience::Architect, Audience::Office, Audience::Crew] {
        let what = tables::open_findings(audience);
        let open = layout
            .findings
            .iter()
            .filter(|f| f.severity() >= Severity::Warning && f.audience() == audience);
        g.text(0, what, Look::Text);
        g.number(1, open.count() as f64, Look::Count);
        g.next();
    }
}

/// What the workbook is called.
pub(super) fn title(layout: &Layout) -> String {
    let project = &layout.job.title.project;
    format!("Takeoff: {}", if project.is_empty() { &layout.drawing.name } else { project })
}
