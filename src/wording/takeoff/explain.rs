//! One line of the takeoff with all that is known of it, for whoever has to defend it.

use super::basis::basis;
use super::checks::rule;
use super::items;
use crate::job::Job;
use crate::language::Language;
use crate::layout::Layout;
use crate::model::item::{Item, id_as_written};
use crate::model::quantity::{Group, TakeoffLine};
use crate::model::takeoff::{Cost, Takeoff};
use crate::units::{self, LengthStyle};
use crate::wording::trim::stock_length;

/// The line that goes by this short name or these words, in any case.
pub fn named<'a>(takeoff: &'a Takeoff, name: &str, style: LengthStyle) -> Option<&'a TakeoffLine> {
    let name = name.trim().to_lowercase();
    takeoff.lines.iter().find(|l| {
        l.id == id_as_written(&name)
            || items::item(Language::English, &l.item, style).to_lowercase() == name
    })
}

/// A line with its figures, where they are used and what it counts. Plain text, one fact a line, not
/// wrapped.
pub fn explained(layout: &Layout, takeoff: &Takeoff, line: &TakeoffLine) -> String {
    let job = &layout.job;
    let style = job.sheet.lengths;
    let unit = items::unit(line.unit).en;
    let mut out = vec![
        format!("{} ({})", items::item(Language::English, &line.item, style), line.id),
        format!("net {:.4} {unit}, order {}", line.net, order(line)),
        format!("basis: {}", basis(line, job, &layout.bound)),
    ];
    if let (Some(stock), Some(length)) = (line.stock, line.length) {
        out.push(format!(
            "length: {} used, stock {} each: {} / {} = {:.4}",
            style.length(length),
            style.length(stock),
            style.number(length).round(),
            style.number(stock).round(),
            line.net
        ));
    }
    out.extend(balance(takeoff, line, style));
    out.extend(kinds(line, job));
    out.extend(shares(line));
    for c in takeoff.checks.iter().filter(|c| c.item.as_ref() == Some(&line.id)) {
        out.push(format!(
            "published rule: {} {} against {}; {}",
            c.rule,
            items::unit(c.unit).en,
            c.layout,
            rule(&c.counting_rule)
        ));
    }
    out.extend(takeoff.cost.as_ref().map(|c| cost(takeoff, c, line, job)));
    out.extend(counted(layout, takeoff, line));
    out.join("\n") + "\n"
}

fn order(line: &TakeoffLine) -> String {
    if line.order > 0.0 {
        format!("{} {}, {:.1} % of it not used", line.order, items::unit(line.unit).en, line.waste)
    } else {
        "none".to_owned()
    }
}

fn balance(takeoff: &Takeoff, line: &TakeoffLine, style: LengthStyle) -> Option<String> {
    let o = takeoff.offcuts.iter().find(|o| o.item == line.id)?;
    Some(format!(
        "of {} bought: {} on the wall, {} left in usable lengths, {} short ends and saw cuts",
        style.length(o.bought),
        style.length(o.used),
        style.length(o.usable),
        style.length(o.scrap)
    ))
}

fn kinds(line: &TakeoffLine, job: &Job) -> Vec<String> {
    let boards = !job.siding().receivers.has_pockets();
    let one = |k: &crate::model::quantity::KindShare| {
        let length = job.sheet.lengths.length(k.length);
        format!(
            "  {}: {}, {length}",
            items::trim_kind(k.kind, boards).en,
            units::counted(k.pieces, "piece")
        )
    };
    line.kinds.iter().map(one).collect()
}

fn shares(line: &TakeoffLine) -> Vec<String> {
    if line.shares.is_empty() {
        return Vec::new();
    }
    let mut out = vec!["by wall:".to_owned()];
    for s in &line.shares {
        let part = s.wall_part.map_or(String::new(), |p| format!(", {}", items::wall_part(p)));
        out.push(format!(
            "  {} {}{part}: {:.4} {}, {} counted",
            s.elevation,
            s.wall,
            s.net,
            items::unit(line.unit).en,
            s.pieces
        ));
    }
    out
}

/// What it costs at the user's prices, or why it has no cost.
fn cost(takeoff: &Takeoff, cost: &Cost, line: &TakeoffLine, job: &Job) -> String {
    if !takeoff.buys(line) {
        let instead = if line.group == Group::Panels && line.order > 0.0 {
            let of = job.product.kind.piece();
            format!(
                "; {}s are bought by {}",
                items::piece(of).en,
                items::panel_unit(takeoff.panels_by, of).en
            )
        } else {
            String::new()
        };
        return format!("cost: not bought by this line{instead}");
    }
    let Some(p) = cost.lines.iter().find(|p| p.item == line.id) else {
        return "cost: no price was given".to_owned();
    };
    let multiple = match p.multiple {
        1 => String::new(),
        n => format!(" (sold in multiples of {n})"),
    };
    format!(
        "cost: {} {}{multiple} at {} = {} {}",
        p.quantity,
        items::unit(line.unit).en,
        units_of(p.price, 10_000),
        units_of(p.extended, 100),
        cost.currency
    )
}

/// A whole number of parts as a decimal; at least two decimals.
fn units_of(v: i64, parts: i64) -> String {
    let (whole, part) = (v / parts, v % parts);
    match parts {
        100 => format!("{whole}.{part:02}"),
        _ if part % 100 == 0 => format!("{whole}.{:02}", part / 100),
        _ => format!("{whole}.{part:04}"),
    }
}

/// What it counts: stock by stock with the pieces where it is cut, else names.
fn counted(layout: &Layout, takeoff: &Takeoff, line: &TakeoffLine) -> Vec<String> {
    let mut out = Vec::new();
    if matches!(line.item, Item::Panels { .. }) {
        out.push("counts:".to_owned());
        let panels = layout.panels.iter().filter(|p| line.counts.iter().any(|c| p.id == **c));
        let panels = panels.map(|p| format!("  {}: {}", p.id, p.pieces.join(", ")));
        out.extend(panels);
        return out;
    }
    let cuts: Vec<_> = takeoff.trim_cuts.iter().filter(|c| c.item == line.id).collect();
    if !cuts.is_empty() {
        let boards = !layout.job.siding().receivers.has_pockets();
        out.push("counts:".to_owned());
        out.extend(cuts.iter().map(|c| {
            format!(
                "  {}: {}",
                stock_length(Language::English, &c.stock, boards),
                c.pieces.join(", ")
            )
        }));
    } else if !line.counts.is_empty() {
        out.push(format!("counts: {}", line.counts.join(", ")));
    }
    out
}
