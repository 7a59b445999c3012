//! What was laid out in a few lines, for whoever started it.

use super::findings::findings_text;
use crate::clean::terminal;
use crate::finding::Severity;
use crate::language::Language;
use crate::layout::Layout;
use crate::real::Total;
use crate::wording::{checks, kept, proof, report as report_words};

/// What a user sees when it is done.
pub fn text(layout: &Layout) -> String {
    let walls = layout.walls().count();
    let net: f64 = layout.walls().map(|(_, w)| w.net_area).total();
    let zone = layout.zone.as_ref().map_or(String::new(), |z| format!(", zone {}", terminal(z)));
    let name = format!("{}{zone}", terminal(&layout.drawing.name));
    let line = report_words::in_one_line(&name, layout.elevations.len(), walls, net);
    let mut out = format!(
        "{line}\n{}\n{}\n",
        proof::panels(Language::English, &layout.bound, &layout.job),
        proof::beside(Language::English, &layout.bound, &layout.job)
    );
    for line in layout.kept.iter().flat_map(|k| kept::told(k, layout.panels.len())) {
        out.push_str(&terminal(&line));
        out.push('\n');
    }
    let warnings: Vec<_> =
        layout.findings.iter().filter(|f| f.severity() >= Severity::Warning).cloned().collect();
    out.push_str(&findings_text(&warnings, layout.job.sheet.lengths));
    out.push_str(&checks::summary(Language::English, &layout.verify.rules));
    out.push('\n');
    out
}
