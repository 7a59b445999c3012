//! How one line came about, for whoever has to defend it.

use crate::layout::Layout;
use crate::model::quantity::{Group, TakeoffLine};
use crate::model::takeoff::{Takeoff, of_any_stock};
use crate::units::LengthStyle;

/// A line by its short name or words, with its figures, where they are used and what it counts;
/// `None` if the takeoff has no such line. Plain text, one fact a line, not wrapped.
pub fn explain(layout: &Layout, takeoff: &Takeoff, item: &str) -> Option<String> {
    let line = takeoff.line(item)?;
    let style = layout.job.sheet.lengths;
    let mut out = vec![
        format!("{} ({})", line.item, line.id),
        format!("net {:.4} {}, order {}", line.net, line.unit, order(line)),
        format!("how: {}", line.how),
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
    for k in &line.kinds {
        out.push(format!("  {}: {} pieces, {}", k.kind, k.pieces, style.length(k.length)));
    }
    if !line.shares.is_empty() {
        out.push("by wall:".into());
    }
    for s in &line.shares {
        let zone = s.zone.map_or(String::new(), |z| format!(", {}", z.word()));
        out.push(format!(
            "  {} {}{zone}: {:.4} {}, {} counted",
            s.elevation, s.wall, s.net, line.unit, s.pieces
        ));
    }
    for c in takeoff.checks.iter().filter(|c| c.item == line.id) {
        out.push(format!("published rule: {} {} against {}; {}", c.rule, c.unit, c.layout, c.how));
    }
    out.extend(cost(takeoff, line));
    out.extend(counted(layout, takeoff, line));
    Some(out.join("\n") + "\n")
}

fn order(line: &TakeoffLine) -> String {
    if line.order > 0.0 {
        format!("{} {}, {:.1} % of it not used", line.order, line.unit, line.waste)
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

/// What it costs at the user's prices, or why it has no cost.
fn cost(takeoff: &Takeoff, line: &TakeoffLine) -> Option<String> {
    let cost = takeoff.cost.as_ref()?;
    if !takeoff.buys(line) {
        let instead = if line.group == Group::Panels && line.order > 0.0 {
            format!("; panels are bought by {}", takeoff.panels_by.id())
        } else {
            String::new()
        };
        return Some(format!("cost: not bought by this line{instead}"));
    }
    let Some(p) = cost.lines.iter().find(|p| p.item == line.id) else {
        return Some("cost: no price was given".to_owned());
    };
    let multiple = match p.multiple {
        1 => String::new(),
        n => format!(" (sold in multiples of {n})"),
    };
    Some(format!(
        "cost: {} {}{multiple} at {} = {} {}",
        p.quantity,
        line.unit,
        units_of(p.price, 10_000),
        units_of(p.extended, 100),
        cost.currency
    ))
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
    if of_any_stock(&line.id) == "panels" {
        out.push("counts:".to_owned());
        let panels = layout.panels.iter().filter(|p| line.counts.iter().any(|c| p.id == *c));
        let panels = panels.map(|p| format!("  {}: {}", p.id, p.pieces.join(", ")));
        out.extend(panels);
        return out;
    }
    let cuts: Vec<_> = takeoff.trim_cuts.iter().filter(|c| c.item == line.id).collect();
    if !cuts.is_empty() {
        out.push("counts:".to_owned());
        out.extend(cuts.iter().map(|c| format!("  {}: {}", c.stock, c.pieces.join(", "))));
    } else if !line.counts.is_empty() {
        out.push(format!("counts: {}", line.counts.join(", ")));
    }
    out
}
