//! Findings as text, for reports and terminals.

use super::text::wrapped;
use crate::clean::terminal;
use crate::finding::{Audience, Finding, Severity};
use crate::units::LengthStyle;
use crate::wording::findings::{FindingWords, audience_head, words};

/// Findings, one block each.
pub fn findings_text(list: &[Finding], style: LengthStyle) -> String {
    let mut out = String::new();
    for f in list {
        let severity = match f.severity() {
            Severity::Info => "note",
            Severity::Warning => "WARNING",
            Severity::Error => "ERROR",
        };
        let FindingWords { message, help } = words(f, style);
        let head = format!("{severity} {}{}: {}", f.code(), place(f), terminal(&message));
        out.push_str(&wrapped(&head, "  "));
        out.push('\n');
        out.push_str(&wrapped(&format!("-> {}", terminal(&help)), "     "));
        out.push('\n');
    }
    out
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
