//! What the codes of findings mean, in plain text of 80 columns.

use super::text::wrapped;
use crate::finding::FindingCode;
use crate::wording::explain::{self, LIST_END, explanation};

/// One code: title, severity, who acts, cause, remedy, example.
pub fn page(code: FindingCode) -> String {
    let e = explanation(code);
    let severities = code.severities().iter().map(|s| explain::severity(*s));
    let matters = severities.collect::<Vec<_>>().join("; or ");
    let mut out = format!("{code}: {}\n", e.title);
    for (head, text) in [
        ("Severity", matters.as_str()),
        ("Who acts", explain::audience(code.audience())),
        ("Cause", e.cause),
        (explain::REMEDY, e.remedy),
    ] {
        out.push_str(&format!("\n{head}\n{}\n", wrapped(text, "  ").replace("\n    ", "\n  ")));
    }
    out.push_str("\nExample\n");
    for line in e.example.lines() {
        out.push_str(&format!("    {line}\n"));
    }
    out
}

/// Every code with its title.
pub fn table() -> String {
    let codes = FindingCode::all();
    let width = codes.iter().map(|c| c.word().len()).max().unwrap_or(0);
    let mut out = String::new();
    for code in codes {
        out.push_str(&format!("{code:<width$}  {}\n", explanation(code).title));
    }
    out + "\n" + LIST_END + "\n"
}
