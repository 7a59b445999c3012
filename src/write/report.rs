//! `report.txt` and the tables of the terminal, in plain text of 80 columns.

use super::findings::findings_by_audience;
use super::tables::{costs, terminal_table};
use super::text::{bullets, fitted, titled, wrapped};
use crate::clean::terminal;
use crate::job::{Job, Siding};
use crate::language::Language;
use crate::layout::Layout;
use crate::model::quantity::TakeoffLine;
use crate::model::takeoff::Takeoff;
use crate::units::LengthStyle;
use crate::wording::proof;
use crate::wording::takeoff::basis::basis;
use crate::wording::takeoff::{advice, checks as counting, comparison as compared, items};
use crate::wording::trim::stock_length;
use crate::wording::{self, checks, offcuts, pole, report, seams, siding};

/// The report of a layout: what was read and assumed, totals, the proof, the check, findings.
pub fn text(layout: &Layout, takeoff: &Takeoff) -> String {
    let parts = [
        read(layout),
        super::report_pole::datum(layout),
        walls(layout),
        super::corners::text(layout),
        zones(layout),
        panels(layout),
        held(layout),
        titled("TAKEOFF", &terminal_table(takeoff, layout.job.sheet.lengths)),
        basis_of_quantities(layout, takeoff),
        comparison(layout, takeoff),
        cross_checks(layout, takeoff),
        cutting(layout, takeoff),
        one_order(takeoff, &layout.job),
        costs(takeoff),
        super::report_nails::section(layout),
        super::report_work::order(layout),
        ordering_notes(layout, takeoff),
        checked(layout),
        titled("FINDINGS", &findings_by_audience(&layout.findings, layout.job.sheet.lengths)),
        cautions(layout.job.product.kind),
    ];
    parts.iter().filter(|p| !p.is_empty()).map(|p| p.trim_end()).collect::<Vec<_>>().join("\n\n")
        + "\n"
}

/// What is held of an earlier layout; nothing where nothing is.
fn held(layout: &Layout) -> String {
    let Some(kept) = &layout.kept else { return String::new() };
    let told = wording::kept::told(kept, layout.panels.len());
    let lines: Vec<String> = told.iter().map(|t| terminal(t)).collect();
    titled(wording::kept::TITLE, &bullets(lines.iter().map(String::as_str)))
}

/// What was read and assumed.
fn read(layout: &Layout) -> String {
    let mut out = super::alarm::bar(&layout.verify);
    out.push_str(&format!("{}\n\n", report::TITLE));
    let t = &layout.job.title;
    let zone = layout.zone.clone().unwrap_or_default();
    for (name, value) in [
        ("Zone", &zone),
        ("Project", &t.project),
        ("Client", &t.client),
        ("Address", &t.address),
        ("Number", &t.number),
        ("Date", &t.date),
    ] {
        if !value.is_empty() {
            out.push_str(&wrapped(&format!("{name}: {}", terminal(value)), ""));
            out.push('\n');
        }
    }
    let style = layout.job.sheet.lengths;
    let d = &layout.drawing;
    let p = &layout.job.product;
    let color = if p.color.is_empty() { String::new() } else { format!(", {}", p.color) };
    for line in [
        report::drawing(&terminal(&d.name), &d.sha256),
        terminal(&report::unit(d)),
        pole::datum(
            Language::English,
            layout.datum,
            &layout.datum_reason,
            &layout.story_pole.divisions,
            style,
        ),
        siding::in_full(Language::English, &layout.job, &terminal(&color)),
        siding::edges_as_drawn(Language::English, &layout.job),
    ] {
        out.push_str(&wrapped(&line, ""));
        out.push('\n');
    }
    out
}

fn walls(layout: &Layout) -> String {
    let style = layout.job.sheet.lengths;
    let unit = style.area_unit();
    let mut out = format!("WALLS ({unit})\n");
    let row = |wall: &str, elevation: &str, gross: f64, net: f64, n: usize| {
        format!(
            "  {:<16} {:<24} {:>9.1} gross {:>9.1} net {n:>3} opening{}\n",
            fitted(wall, 16),
            fitted(elevation, 24),
            style.area(gross),
            style.area(net),
            if n == 1 { "" } else { "s" }
        )
    };
    let (mut gross, mut net, mut n) = (0.0, 0.0, 0);
    for (e, w) in layout.walls() {
        out.push_str(&row(&w.id, &e.name, w.gross_area, w.net_area, w.openings.len()));
        gross += w.gross_area;
        net += w.net_area;
        n += w.openings.len();
    }
    out.push_str(&row("house", "", gross, net, n));
    let bare: Vec<String> =
        layout.walls().filter_map(|(_, w)| report::bare_wall(w, style)).collect();
    out + &bullets(bare.iter().map(String::as_str))
}

/// Parts of walls with another cladding; nothing where there are none.
fn zones(layout: &Layout) -> String {
    let style = layout.job.sheet.lengths;
    let all = layout.elevations.iter().flat_map(|e| e.zones.iter().map(move |z| (e, z)));
    let lines: Vec<String> = all.map(|(e, z)| terminal(&report::zone(z, &e.name, style))).collect();
    if lines.is_empty() {
        return String::new();
    }
    titled(report::OTHER_CLADDING, &bullets(lines.iter().map(String::as_str)))
}

/// The proof of how few panels there can be.
fn panels(layout: &Layout) -> String {
    let (b, job) = (&layout.bound, &layout.job);
    let mut lines = vec![
        proof::panels(Language::English, b, job),
        proof::method(Language::English, b, job),
        proof::beside(Language::English, b, job),
    ];
    lines.extend(proof::other_policy(Language::English, b, job));
    lines.extend(proof::other_courses(Language::English, b, job));
    lines.extend(proof::seam_places(b, job));
    lines.extend(
        offcuts::waiting(&layout.work.offcuts, job.product.kind.piece()).map(|l| terminal(&l)),
    );
    for c in &b.conflicts {
        let broken = |b: &crate::model::conflict::Break| {
            report::break_at(
                Language::English,
                &b.mark,
                &terminal(&c.elevation),
                &seams::fault(Language::English, &b.fault, layout.job.sheet.lengths),
            )
        };
        lines.extend(c.breaks.iter().map(broken));
    }
    let head = siding::pieces_heading(layout.job.product.kind).en.to_uppercase() + "\n";
    lines.iter().fold(head, |out, l| out + &wrapped(l, "  ") + "\n")
}

/// How each line of the takeoff came about.
fn basis_of_quantities(layout: &Layout, takeoff: &Takeoff) -> String {
    let job = &layout.job;
    let line = |l: &TakeoffLine| {
        let item = items::item(Language::English, &l.item, job.sheet.lengths);
        terminal(&format!("{item}: {}.", basis(l, job, &layout.bound)))
    };
    let lines: Vec<String> = takeoff.lines.iter().map(line).collect();
    titled(report::BASIS, &bullets(lines.iter().map(String::as_str)))
}

fn ordering_notes(layout: &Layout, takeoff: &Takeoff) -> String {
    let lines: Vec<String> =
        takeoff.advice.iter().map(|a| terminal(&advice::advice(a, &layout.job))).collect();
    titled(report::ORDERING_NOTES, &bullets(lines.iter().map(String::as_str)))
}

fn comparison(layout: &Layout, takeoff: &Takeoff) -> String {
    let style = layout.job.sheet.lengths;
    let singly = layout.job.sold_singly();
    let cartons = |n: &str| if singly { String::new() } else { format!(" {n:>8}") };
    let mut out = format!(
        "{}\n  {:<34} {:>9} {:>7}{}  {}\n",
        report::COMPARISON,
        report::WAY_OF_COUNTING,
        style.area_unit(),
        format!("{}s", siding::piece(layout.job.product.kind).en),
        cartons("cartons"),
        report::AGAINST_LAYOUT
    );
    for w in &takeoff.comparison {
        let over = compared::difference(w.over);
        let area = w.area.map_or("-".to_owned(), |a| format!("{:.1}", style.area(a)));
        out.push_str(&format!(
            "  {:<34} {area:>9} {:>7}{}  {over}\n",
            fitted(&compared::name(&w.method, style), 34),
            w.panels,
            cartons(&w.cartons.to_string())
        ));
    }
    for w in &takeoff.comparison {
        let (name, explained) =
            (compared::name(&w.method, style), compared::explained(&w.method, &layout.job));
        out.push_str(&wrapped(&format!("- {name}: {explained}."), "  "));
        out.push('\n');
    }
    out
}

fn cross_checks(layout: &Layout, takeoff: &Takeoff) -> String {
    let boards = !layout.job.siding().receivers.has_pockets();
    let mut out = format!(
        "{}\n  {:<34} {:>10} {:>12}  {}\n",
        report::CROSS_CHECK,
        "what",
        "by rule",
        "this layout",
        "unit"
    );
    let number = |v: f64| if v.fract() == 0.0 { format!("{v:.0}") } else { format!("{v:.1}") };
    let mut rules: Vec<String> = Vec::new();
    for c in &takeoff.checks {
        let layout = if c.layout > 0.0 { number(c.layout) } else { "-".to_owned() };
        out.push_str(&format!(
            "  {:<34} {:>10} {layout:>12}  {}\n",
            fitted(&counting::subject(&c.counting_rule, boards), 34),
            number(c.rule),
            items::unit(c.unit).en
        ));
        let rule = counting::rule(&c.counting_rule);
        if !rules.contains(&rule) {
            rules.push(rule);
        }
    }
    out + &bullets(rules.iter().map(String::as_str))
}

/// One list to buy by, where the house has zones with siding of their own.
fn one_order(takeoff: &Takeoff, job: &Job) -> String {
    let table = super::tables::one_order(takeoff, job);
    if table.is_empty() {
        return String::new();
    }
    titled(report::ONE_ORDER, &format!("{table}{}\n", wrapped(report::ONE_ORDER_NOTE, "  ")))
}

/// Where what is bought goes, and what is left.
fn cutting(layout: &Layout, takeoff: &Takeoff) -> String {
    let style = layout.job.sheet.lengths;
    let mut out = format!(
        "{}\n  {:<27} {:>11} {:>12} {:>11} {:>11}\n",
        report::USE_AND_WASTE,
        "item",
        "bought",
        report::ON_WALL,
        "usable",
        "scrap"
    );
    for o in &takeoff.offcuts {
        let [a, b, c, d] = [o.bought, o.used, o.usable, o.scrap].map(|v| whole(style, v));
        out.push_str(&format!(
            "  {:<27} {a:>11} {b:>12} {c:>11} {d:>11}\n",
            fitted(&items::of_line(Language::English, takeoff, &o.item, style), 27)
        ));
    }
    out.push_str(&wrapped(&report::usable(layout.job.seams.shortest, style), "  "));
    out.push('\n');
    let boards = !layout.job.siding().receivers.has_pockets();
    let mut at = 0;
    while let Some(first) = takeoff.leftovers.get(at) {
        let mine: Vec<String> = takeoff.leftovers[at..]
            .iter()
            .take_while(|l| l.item == first.item)
            .map(|l| {
                format!(
                    "{} ({})",
                    style.cut(l.length),
                    stock_length(Language::English, &l.stock.as_str().into(), boards)
                )
            })
            .collect();
        at += mine.len();
        let item = items::of_line(Language::English, takeoff, &first.item, style);
        out.push_str(&wrapped(&format!("{item}: {}", mine.join(", ")), "  "));
        out.push('\n');
    }
    out
}

/// A long length without its fraction.
fn whole(style: LengthStyle, inches: f64) -> String {
    match style {
        LengthStyle::Feet => format!("{:.1} ft", inches / 12.0),
        LengthStyle::Mm => format!("{:.2} m", style.number(inches) / 1000.0),
    }
}

/// Most violations of one rule that are printed; the count is always whole.
const MOST_SHOWN: usize = 50;

fn checked(layout: &Layout) -> String {
    let boards = !layout.job.siding().receivers.has_pockets();
    let mut out = format!("{}\n", checks::SECTION.en.to_uppercase());
    for r in &layout.verify.rules {
        let (title, verdict) = (fitted(checks::rule_on(r.rule, boards).en, 56), checks::verdict(r));
        out.push_str(&format!("  {title:<56} {:>7}  {verdict}\n", r.checked));
        for v in r.violations.iter().take(MOST_SHOWN) {
            let words = checks::violation(v, layout.job.sheet.lengths);
            out.push_str(&wrapped(&terminal(&words), "      "));
            out.push('\n');
        }
        if let Some(more) = r.violations.len().checked_sub(MOST_SHOWN).filter(|n| *n > 0) {
            out.push_str(&format!("      {}\n", checks::and_more(Language::English, more)));
        }
        for v in r.unavoidable.iter().take(MOST_SHOWN) {
            let words = checks::violation(v, layout.job.sheet.lengths);
            out.push_str(&wrapped(&terminal(&words), "      "));
            out.push('\n');
        }
    }
    let proven = layout.verify.unavoidable().count();
    if proven > 0 {
        out.push_str(&wrapped(&checks::unavoidable(Language::English, proven), "  "));
        out.push('\n');
    }
    out
}

/// The usual cautions, in every report.
fn cautions(kind: Siding) -> String {
    let lines = wording::cautions::all(kind);
    titled("CAUTIONS", &lines.iter().map(|l| wrapped(l.en, "  ") + "\n").collect::<String>())
}
