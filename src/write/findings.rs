//! Findings as text, for reports and terminals.

use super::text::wrapped;
use crate::clean::terminal;
use crate::finding::{Audience, Finding, Gathered, Kind, Severity, gathered};
use crate::units::LengthStyle;
use crate::wording::findings::{FindingWords, audience_head, head as subjects_head, words};

/// Findings, those about one subject together: each kind of error by itself first, then subjects with a warning.
/// A kind is one block: what each of it says and where, and once what to do.
pub fn findings_text(list: &[Finding], style: LengthStyle) -> String {
    gathered(list).iter().map(|group| told(group, style)).collect()
}

/// What is told under one head; a kind that stands alone needs none.
fn told(group: &Gathered, style: LengthStyle) -> String {
    if let [alone] = group.kinds.as_slice() {
        return block(alone, (word(alone.severity()), ""), style);
    }
    let mut out =
        wrapped(&format!("{} {}", word(group.severity()), subjects_head(group, "note")), "  ")
            + "\n";
    for kind in &group.kinds {
        out.push_str(&block(kind, (word(kind.severity()), "  "), style));
    }
    out
}

/// Findings of one kind: those with the same cure together, and it once after them, but for the names in it.
fn block(kind: &Kind, (severity, under): (&str, &str), style: LengthStyle) -> String {
    let mut cures: Vec<(String, String, Vec<String>)> = Vec::new();
    for f in kind.all() {
        let FindingWords { message, help } = words(f, style);
        let told = format!("{}: {}", place(f), terminal(&message));
        let bare = unquoted(&help);
        match cures.iter_mut().find(|c| c.0 == bare) {
            Some(cure) => cure.2.push(told),
            None => cures.push((bare, help, vec![told])),
        }
    }
    let (first, further) = (format!("{under}  "), format!("{under}     "));
    let mut out = String::new();
    for (_, help, places) in cures {
        for told in places {
            let (before, indent) = if out.is_empty() {
                (head(kind, severity), &first)
            } else {
                ("and".to_owned(), &further)
            };
            out.push_str(&wrapped(&(before + &told), indent));
            out.push('\n');
        }
        out.push_str(&wrapped(&format!("-> {}", terminal(&help)), &further));
        out.push('\n');
    }
    out
}

/// How bad findings of one kind are, its code, and how many there are.
fn head(kind: &Kind, severity: &str) -> String {
    match kind.all().len() {
        1 => format!("{severity} {}", kind.first().code()),
        of => format!("{severity} {} ({of})", kind.first().code()),
    }
}

fn word(severity: Severity) -> &'static str {
    match severity {
        Severity::Info => "note",
        Severity::Warning => "WARNING",
        Severity::Error => "ERROR",
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
