//! Findings as the cover tells them. What a crew minds is said in every language; what architect and office settle
//! stands in the report, in English, and a sheet in Spanish names it by its code.

use super::findings::{for_crew, message, subject};
use super::nouns::{self, counted};
use crate::finding::{Finding, gathered};
use crate::language::Language;
use crate::units::LengthStyle;
use crate::wording::lists::commas;

/// The findings of one head of the cover, a sentence each; in Spanish those about one subject that it does not tell
/// are one sentence.
pub fn told(lang: Language, findings: &[&Finding], style: LengthStyle) -> Vec<String> {
    if lang == Language::English {
        return findings.iter().map(|f| message(f, style)).collect();
    }
    let mut out = Vec::new();
    let mut others: Vec<&Finding> = Vec::new();
    for finding in findings {
        match for_crew(lang, finding, style) {
            Some(words) => out.push(words),
            None => others.push(finding),
        }
    }
    out.extend(gathered(others).iter().map(|group| {
        let kinds: Vec<String> = group
            .kinds
            .iter()
            .map(|k| {
                format!("{} {}", counted(lang, k.all().len(), nouns::FINDING), k.first().code())
            })
            .collect();
        let about = subject(group.subject).of(lang);
        format!("{about}: {}; el texto está en report.txt, en inglés.", commas(&kinds))
    }));
    out
}
