//! `report.txt` and the tables of the terminal, in plain text of 80 columns.

use crate::diag::{Note, Severity};
use crate::model::layout::Layout;

const WIDTH: usize = 80;

/// The report of a layout.
pub fn text(layout: &Layout) -> String {
    let mut out = String::new();
    let mut line = |s: &str| {
        out.push_str(s);
        out.push('\n');
    };
    line("LAPWRIGHT REPORT");
    line("");
    let t = &layout.job.title;
    for (name, value) in [
        ("Project", &t.project),
        ("Client", &t.client),
        ("Address", &t.address),
        ("Number", &t.number),
        ("Date", &t.date),
    ] {
        if !value.is_empty() {
            line(&format!("{name}: {}", plain(value)));
        }
    }
    let d = &layout.drawing;
    line(&format!("Drawing: {} (SHA-256 {})", plain(&d.name), d.sha256.get(..16).unwrap_or("")));
    line(&wrapped(&format!("Unit: {}, taken by {}.", d.unit, d.unit_source), ""));
    line(&wrapped(
        &format!(
            "Datum: butt line of course 1 at {} above the level line; {}.",
            crate::units::feet_inches(layout.datum),
            layout.datum_why
        ),
        "",
    ));
    line("");
    line("WALLS");
    for (e, w) in layout.walls() {
        line(&format!(
            "  {:<14} {:<22} {:>8.1} sq ft gross {:>8.1} net",
            w.id,
            plain(&e.name),
            w.gross_area,
            w.net_area
        ));
    }
    line("");
    line("PANELS");
    let b = &layout.bound;
    line(&wrapped(&b.words, "  "));
    line(&wrapped(
        &format!("The bound is by {}. It leaves out {}.", b.method, b.excludes.join("; ")),
        "  ",
    ));
    line(&wrapped(
        &format!(
            "A careful crew that starts each run with the last offcut takes {}. Net area and {} % would buy {}.",
            b.crew, layout.job.takeoff.area_waste, b.by_area
        ),
        "  ",
    ));
    if let Some(other) = b.other_policy {
        line(&wrapped(
            &format!(
                "If runs that one panel covers might have a seam too, {other} panels would do."
            ),
            "  ",
        ));
    }
    line("");
    line("TAKEOFF");
    line(&table(layout));
    line("CHECKED");
    for r in &layout.verify.rules {
        let verdict = if r.violations.is_empty() {
            "kept".to_owned()
        } else {
            format!("{} BROKEN", r.violations.len())
        };
        line(&format!("  {:<58} {:>6}  {}", r.rule, r.checked, verdict));
        for v in &r.violations {
            line(&wrapped(v, "      "));
        }
    }
    line("");
    line("FINDINGS");
    if layout.notes.is_empty() {
        line("  none");
    }
    out.push_str(&notes(&layout.notes));
    out.push('\n');
    out.push_str(&cautions());
    out
}

/// Findings, one block each.
pub fn notes(notes: &[Note]) -> String {
    let mut out = String::new();
    for n in notes {
        let word = match n.severity {
            Severity::Info => "note",
            Severity::Warning => "WARNING",
            Severity::Error => "ERROR",
        };
        let mut place = String::new();
        if let Some(e) = &n.elevation {
            place.push_str(&format!(" {}", plain(e)));
        }
        if let Some(p) = n.at {
            place.push_str(&format!(" at ({:.3}, {:.3})", p.x, p.y));
        }
        if let Some(o) = &n.origin {
            let handle =
                o.handle.as_deref().map_or(String::new(), |h| format!(", handle {}", plain(h)));
            place.push_str(&format!(
                " [{} on {}, line {}{handle}]",
                o.entity,
                plain(&o.layer),
                o.line
            ));
        }
        out.push_str(&wrapped(&format!("{word} {}{place}: {}", n.code, plain(&n.message)), "  "));
        out.push('\n');
        if !n.help.is_empty() {
            out.push_str(&wrapped(&format!("-> {}", n.help), "     "));
            out.push('\n');
        }
    }
    out
}

/// The takeoff as a table.
pub fn table(layout: &Layout) -> String {
    let mut out =
        format!("  {:<34} {:>10} {:>10} {:>8}  {}\n", "item", "net", "order", "waste", "unit");
    for l in &layout.takeoff {
        let order = if l.order > 0.0 { format!("{:.2}", l.order) } else { "-".to_owned() };
        let order = order.strip_suffix(".00").map(str::to_owned).unwrap_or(order);
        let mut item = plain(&l.item);
        if item.chars().count() > 34 {
            item = item.chars().take(33).chain(['…']).collect();
        }
        out.push_str(&format!(
            "  {item:<34} {:>10.2} {order:>10} {:>6.1} %  {}\n",
            l.net, l.waste, l.unit
        ));
    }
    out
}

/// The usual cautions (FACTS section 5), in every report.
pub fn cautions() -> String {
    let lines = [
        "CAUTIONS",
        "The siding maker's instructions and the local code override every figure here.",
        "This is an aid to layout. Structure, wind, fire separation and water management stay with the licensed designer and the local official.",
        "Falls: protect every edge from 6 ft up. Set an extension ladder's foot out a quarter of its working length and let its rails stand 3 ft above the landing.",
        "Power lines: keep ladders and scaffolds 10 ft from overhead lines; have the service drop made safe.",
        "Before 1978: painted surfaces may hold lead; asbestos-cement siding or sheet may lie underneath. Stop, test, and leave it to certified people.",
        "Cutting: eye protection; no dry cutting of fibre cement without dust collection. Cold vinyl is brittle: cut slowly below freezing.",
        "Heat: vinyl softens at 160 to 165 F. Keep grills and vents away; glass that faces the wall can reflect enough sun to warp it.",
        "Behind the wall: look for wiring, gas and water before you nail.",
    ];
    let mut out = String::new();
    for (i, l) in lines.iter().enumerate() {
        out.push_str(&if i == 0 { (*l).to_owned() } else { wrapped(l, "  ") });
        out.push('\n');
    }
    out
}

/// Text from a drawing without control characters, so that no terminal obeys it.
pub fn plain(text: &str) -> String {
    text.chars()
        .map(|c| {
            if c.is_control()
                || ('\u{202a}'..='\u{202e}').contains(&c)
                || ('\u{2066}'..='\u{2069}').contains(&c)
            {
                '\u{fffd}'
            } else {
                c
            }
        })
        .collect()
}

/// Words wrapped to the width, every line but the first indented two more.
fn wrapped(text: &str, indent: &str) -> String {
    let mut out = String::new();
    let mut line = indent.to_owned();
    let mut fresh = true;
    for word in text.split_whitespace() {
        if !fresh && line.chars().count() + 1 + word.chars().count() > WIDTH {
            out.push_str(&line);
            out.push('\n');
            line = format!("{indent}  ");
            fresh = true;
        }
        if !fresh {
            line.push(' ');
        }
        line.push_str(word);
        fresh = false;
    }
    out.push_str(&line);
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lines_stay_within_eighty_columns() {
        let long = "word ".repeat(100);
        assert!(wrapped(&long, "  ").lines().all(|l| l.chars().count() <= WIDTH));
    }

    #[test]
    fn control_characters_of_a_drawing_do_not_reach_the_terminal() {
        assert!(!plain("\u{1b}[31mred\u{202e}x").contains(['\u{1b}', '\u{202e}']));
    }
}
