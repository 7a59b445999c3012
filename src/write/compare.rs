//! What a revision changes, as a report of 80 columns.

use super::text::{bullets, fitted, titled, wrapped};
use crate::clean::terminal;
use crate::job::Job;
use crate::language::Language;
use crate::model::change::{Comparison, OrderChange, WallEffect};
use crate::model::item::SidingPiece;
use crate::units::LengthStyle;
use crate::wording::compare as words;
use crate::wording::compare_tables as heads;
use crate::wording::takeoff::items;

/// The report: what the drawing changes, what that does to each wall, what to order more and what is over.
pub fn text(c: &Comparison, job: &Job) -> String {
    let style = job.sheet.lengths;
    let piece = job.product.kind.piece();
    let parts = [
        head(c),
        changes(c, style),
        settings(c),
        walls(c, style),
        orders(c, style, piece),
        cost(c),
        [words::RESTS_ON, words::BEFORE_ORDERING].map(|t| wrapped(t, "") + "\n").concat(),
    ];
    parts.iter().filter(|p| !p.is_empty()).map(|p| p.trim_end()).collect::<Vec<_>>().join("\n\n")
        + "\n"
}

fn head(c: &Comparison) -> String {
    let mut out = format!("{}\n\n", words::TITLE);
    let old = words::drawing(heads::DRAWINGS[0], &terminal(&c.old.name), &c.old.sha256);
    let new = words::drawing(heads::DRAWINGS[1], &terminal(&c.new.name), &c.new.sha256);
    let revision = terminal(&words::revision(&c.revision, &c.date));
    let mut lines = vec![old, new, format!("{revision}.")];
    for (failed, which) in c.check_failed.iter().zip(heads::WHICH) {
        lines.extend(failed.then(|| words::check_failed(which)));
    }
    lines.extend(c.remarks.iter().map(|r| terminal(&words::remark(r))));
    out.extend(lines.iter().map(|l| wrapped(l, "") + "\n"));
    out
}

fn changes(c: &Comparison, style: LengthStyle) -> String {
    let title = format!("{} ({})", words::CHANGES, c.changes.len());
    if c.changes.is_empty() {
        return titled(&title, &wrapped(words::NOTHING, "  "));
    }
    let mut out = String::new();
    let mut at = None;
    for change in &c.changes {
        let here = (change.zone.clone(), change.elevation.clone());
        if at.as_ref() != Some(&here) {
            let name = heads::changes_of(here.1.as_ref(), here.0.as_deref());
            out.push_str(&format!("  {}\n", fitted(&name, 76)));
            at = Some(here);
        }
        let line = format!("{:>4}. {}", change.number, terminal(&words::change(change, style)));
        out.push_str(&(wrapped(&line, "    ") + "\n"));
    }
    titled(&title, &out)
}

fn settings(c: &Comparison) -> String {
    if c.settings.is_empty() {
        return String::new();
    }
    let lines: Vec<String> = c
        .settings
        .iter()
        .map(|s| terminal(&words::setting(&s.key, s.from.as_deref(), s.to.as_deref())))
        .collect();
    titled(words::SETTINGS, &bullets(lines.iter().map(String::as_str)))
}

fn walls(c: &Comparison, style: LengthStyle) -> String {
    let mut out = wrapped(&words::datum(c.datum, style), "  ") + "\n";
    if !c.walls.is_empty() {
        let [wall, area, courses, pieces, alike] = heads::wall_heads(style.area_unit());
        out.push_str(&format!("  {wall:<24} {area:>15} {courses:>9} {pieces:>11} {alike:>10}\n"));
    }
    for w in &c.walls {
        out.push_str(&wall(w, style));
    }
    if c.walls_alike > 0 {
        out.push_str(&(wrapped(&words::walls_alike(c.walls_alike), "  ") + "\n"));
    }
    titled(words::WALLS, &out)
}

fn wall(w: &WallEffect, style: LengthStyle) -> String {
    let [a, b] = w.net_area.map(|f| format!("{:.1}", style.area(f)));
    let both = |[a, b]: [usize; 2]| heads::before_after(a.to_string(), b.to_string());
    let mut out = format!(
        "  {:<24} {:>15} {:>9} {:>11} {:>10}\n",
        fitted(&heads::wall_name(w), 24),
        heads::before_after(a, b),
        both(w.courses),
        both(w.pieces),
        w.pieces_alike
    );
    for l in &w.lines {
        let more = l.net[1] - l.net[0];
        out.push_str(&format!(
            "      {:<42} {:>8} -> {:<8} {more:>+8.2}\n",
            fitted(
                &format!(
                    "{}, {}",
                    items::item(Language::English, &l.item, style),
                    items::unit(l.unit).en
                ),
                42
            ),
            format!("{:.2}", l.net[0]),
            format!("{:.2}", l.net[1]),
        ));
    }
    out
}

fn orders(c: &Comparison, style: LengthStyle, piece: SidingPiece) -> String {
    let panels = wrapped(&words::panels(c.panels, piece), "  ");
    if c.orders.is_empty() {
        return format!("{}\n{panels}", words::SAME_ORDER);
    }
    let part = |title: &str, sign: f64| {
        let of: Vec<&OrderChange> = c.orders.iter().filter(|o| o.more * sign > 0.0).collect();
        if of.is_empty() {
            return String::new();
        }
        let [item, was, is, by, unit, cost] = heads::order_heads(sign > 0.0, c.cost.is_some());
        let head = format!("  {item:<36} {was:>7} {is:>7} {by:>7}  {unit:<8} {cost:>8}");
        let mut out = format!("{}\n", head.trim_end());
        out.extend(of.iter().map(|o| order(o, style)));
        titled(title, &out) + "\n"
    };
    let mut out = part(words::MORE, 1.0) + &part(words::OVER, -1.0) + &panels + "\n";
    if c.orders_alike > 0 {
        out.push_str(&wrapped(&words::orders_alike(c.orders_alike), "  "));
    }
    out
}

fn order(o: &OrderChange, style: LengthStyle) -> String {
    let number = |v: f64| {
        let text = format!("{v:.2}");
        text.strip_suffix(".00").map(str::to_owned).unwrap_or(text)
    };
    let cost = o.cost.map(|v| format!("{:.2}", v.abs())).unwrap_or_default();
    let line = format!(
        "  {:<36} {:>7} {:>7} {:>7}  {:<8} {cost:>8}",
        fitted(&items::item(Language::English, &o.item, style), 36),
        number(o.order[0]),
        number(o.order[1]),
        number(o.more.abs()),
        fitted(items::unit(o.unit).en, 8),
    );
    format!("{}\n", line.trim_end())
}

fn cost(c: &Comparison) -> String {
    let Some(cost) = &c.cost else { return String::new() };
    let currency = fitted(&cost.currency, 8);
    let row = |what: &str, v: f64| format!("  {what:<40} {v:>12.2} {currency}\n");
    let mut out = row(words::OLD_ORDER, cost.total[0]) + &row(words::NEW_ORDER, cost.total[1]);
    out.push_str(&row(words::TO_ORDER_MORE, cost.more));
    out.push_str(&row(words::OVER_COST, cost.over));
    let difference = cost.total[1] - cost.total[0];
    out.push_str(&row(words::DIFFERENCE, difference));
    if cost.tax[0] != 0.0 || cost.tax[1] != 0.0 {
        out.push_str(&row(words::TAX_DIFFERENCE, cost.tax[1] - cost.tax[0]));
    }
    if !cost.unpriced.is_empty() {
        let names: Vec<String> = cost.unpriced.iter().map(|i| terminal(i)).collect();
        out.push_str(&(wrapped(&words::unpriced(&names), "  ") + "\n"));
    }
    titled(words::COST, &out)
}
