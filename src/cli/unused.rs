//! What was drawn and not used, told by commands that do not print all findings.

use super::terminal;
use crate::finding::drawing::DrawingFinding;
use crate::finding::house::HouseFinding;
use crate::finding::{Finding, FindingKind, Findings, Severity};
use crate::units::LengthStyle;
use crate::write::findings::findings_text;

/// Tells of it on standard error, a warning a layer.
pub(super) fn tell(findings: &Findings, style: LengthStyle) {
    let unused = |f: &&Finding| {
        let kind = matches!(
            f.kind,
            FindingKind::House(HouseFinding::DrawnUnused { .. })
                | FindingKind::Drawing(DrawingFinding::BlockExternal { .. })
        );
        kind && f.severity() == Severity::Warning
    };
    let list: Vec<Finding> = findings.all().iter().filter(unused).cloned().collect();
    if !list.is_empty() {
        terminal::tell(&findings_text(&list, style));
    }
}
