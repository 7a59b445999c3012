//! How one line came about, for whoever has to defend it.

use crate::model::layout::{Layout, TakeoffLine};
use crate::model::takeoff::Takeoff;
use crate::units::LengthStyle;

/// A line by its short name or words, with its figures, where they are used and what it counts;
/// `None` if the takeoff has no such line. Plain text, one fact a line, not wrapped.
pub fn explain(layout: &Layout, item: &str) -> Option<String> {
    let takeoff = super::quantities(layout);
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
    out.extend(balance(&takeoff, line, style));
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
    out.extend(counted(layout, &takeoff, line));
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

/// What it counts: stock by stock with the pieces where it is cut, else names.
fn counted(layout: &Layout, takeoff: &Takeoff, line: &TakeoffLine) -> Vec<String> {
    let mut out = Vec::new();
    if line.id == "panels" {
        out.push("counts:".to_owned());
        let panels = layout.panels.iter().map(|p| format!("  {}: {}", p.id, p.pieces.join(", ")));
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
