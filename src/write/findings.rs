//! Findings as text, for reports and terminals.

use super::text::wrapped;
use crate::clean::terminal;
use crate::finding::{Audience, Finding, Severity};
use crate::units::LengthStyle;
use crate::wording::findings::{FindingWords, audience_head, words};

/// Findings, one block for all of a kind: what each says and where, and once what to do.
pub fn findings_text(list: &[Finding], style: LengthStyle) -> String {
    let mut out = String::new();
    for (n, first) in list.iter().enumerate() {
        let alike = |f: &&Finding| f.code() == first.code() && f.severity() == first.severity();
        if list[..n].iter().any(|f| alike(&f)) {
            continue;
        }
        let all: Vec<&Finding> = list[n..].iter().filter(alike).collect();
        out.push_str(&block(&all, style));
    }
    out
}

/// Findings of one kind: those with the same cure together, and it once after them, but for the names in it.
fn block(all: &[&Finding], style: LengthStyle) -> String {
    let mut cures: Vec<(String, String, Vec<String>)> = Vec::new();
    for f in all {
        let FindingWords { message, help } = words(f, style);
        let told = format!("{}: {}", place(f), terminal(&message));
        let bare = unquoted(&help);
        match cures.iter_mut().find(|c| c.0 == bare) {
            Some(cure) => cure.2.push(told),
            None => cures.push((bare, help, vec![told])),
        }
    }
    let mut out = String::new();
    for (_, help, places) in cures {
        for told in places {
            let (before, indent) =
                if out.is_empty() { (head(all), "  ") } else { ("and".to_owned(), "     ") };
            out.push_str(&wrapped(&(before + &told), indent));
            out.push('\n');
        }
        out.push_str(&wrapped(&format!("-> {}", terminal(&help)), "     "));
        out.push('\n');
    }
    out
}

/// How bad findings of one kind are, its code, and how many there are.
fn head(all: &[&Finding]) -> String {
    let Some(first) = all.first() else { return String::new() };
    let severity = match first.severity() {
        Severity::Info => "note",
        Severity::Warning => "WARNING",
        Severity::Error => "ERROR",
    };
    match all.len() {
        1 => format!("{severity} {}", first.code()),
        of => format!("{severity} {} ({of})", first.code()),
    }
}

/// A text without what stands in quotation marks.
fn unquoted(text: &str) -> String {
    text.split('"').step_by(2).collect()
}

/// Where a finding is.
fn place(f: &Finding) -> String {
    let mut place = String::new();
    if let Some(e) = &f.elevation {
        place.push_str(&format!(" {}", terminal(e)));
    }
    if let Some(p) = f.at {
        place.push_str(&format!(" at ({:.3}, {:.3})", p.x, p.y));
    }
    if let Some(o) = &f.origin {
        let handle =
            o.handle.as_deref().map_or(String::new(), |h| format!(", handle {}", terminal(h)));
        let layer = terminal(&o.layer);
        let line = o.in_file();
        place.push_str(&format!(" [{}on {layer}{line}{handle}]", o.before()));
    }
    place
}

/// Findings by who must act on them.
pub(super) fn findings_by_audience(list: &[Finding], style: LengthStyle) -> String {
    let mut out = String::new();
    for audience in [Audience::Architect, Audience::Office, Audience::Crew] {
        let own: Vec<Finding> = list.iter().filter(|f| f.audience() == audience).cloned().collect();
        if !own.is_empty() {
            out.push_str(&format!("{}\n", audience_head(audience)));
            out.push_str(&findings_text(&own, style));
        }
    }
    if out.is_empty() { "  none\n".to_owned() } else { out }
}
