//! What was laid out in a few lines, for whoever started it.

use super::report;
use crate::clean::terminal;
use crate::finding::Severity;
use crate::layout::Layout;
use crate::units::counted;
use crate::wording::{checks, proof};

/// What a user sees when it is done.
pub fn text(layout: &Layout) -> String {
    let walls = layout.walls().count();
    let net: f64 = layout.walls().map(|(_, w)| w.net_area).sum();
    let zone = layout.zone.as_ref().map_or(String::new(), |z| format!(", zone {}", terminal(z)));
    let mut out = format!(
        "{}{zone}: {}, {}, {net:.1} sq ft net\n{}\n{}\n",
        terminal(&layout.drawing.name),
        counted(layout.elevations.len(), "elevation"),
        counted(walls, "wall"),
        proof::panels(&layout.bound, &layout.job),
        proof::beside(&layout.bound, &layout.job)
    );
    let warnings: Vec<_> =
        layout.findings.iter().filter(|f| f.severity() >= Severity::Warning).cloned().collect();
    out.push_str(&report::findings(&warnings, layout.job.sheet.lengths));
    out.push_str(&checks::summary(&layout.verify.rules));
    out.push('\n');
    out
}
