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

/// Findings of one kind.
fn block(all: &[&Finding], style: LengthStyle) -> String {
    let mut out = String::new();
    let mut helps: Vec<(String, String)> = Vec::new();
    for (n, f) in all.iter().enumerate() {
        let severity = match f.severity() {
            Severity::Info => "note",
            Severity::Warning => "WARNING",
            Severity::Error => "ERROR",
        };
        let FindingWords { message, help } = words(f, style);
        let (at, message) = (place(f), terminal(&message));
        let (text, indent) = match (n, all.len()) {
            (0, 1) => (format!("{severity} {}{at}: {message}", f.code()), "  "),
            (0, of) => (format!("{severity} {} ({of}){at}: {message}", f.code()), "  "),
            _ => (format!("and{at}: {message}"), "     "),
        };
        out.push_str(&wrapped(&text, indent));
        out.push('\n');
        // What to do is said once, but for the names in it.
        let bare = unquoted(&help);
        if helps.iter().all(|h| h.0 != bare) {
            helps.push((bare, help));
        }
    }
    for (_, help) in helps {
        out.push_str(&wrapped(&format!("-> {}", terminal(&help)), "     "));
        out.push('\n');
    }
    out
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
        place.push_str(&format!(" [{} on {layer}{line}{handle}]", o.entity));
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
