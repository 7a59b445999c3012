//! Findings as the cover tells them. What a crew minds is said in every language; what architect and office settle
//! stands in the report, in English, and a sheet in Spanish names it by its code.

use super::findings::{for_crew, message};
use super::nouns::{self, counted};
use crate::finding::Finding;
use crate::language::Language;
use crate::units::LengthStyle;

/// The findings of one head of the cover, a sentence each; in Spanish those of one code that it does not tell are
/// one sentence.
pub fn told(lang: Language, findings: &[&Finding], style: LengthStyle) -> Vec<String> {
    if lang == Language::English {
        return findings.iter().map(|f| message(f, style)).collect();
    }
    let mut out = Vec::new();
    let mut codes: Vec<(String, usize)> = Vec::new();
    for finding in findings {
        if let Some(words) = for_crew(lang, finding, style) {
            out.push(words);
            continue;
        }
        let code = finding.code().to_string();
        match codes.iter_mut().find(|(c, _)| *c == code) {
            Some((_, count)) => *count += 1,
            None => codes.push((code, 1)),
        }
    }
    let by_code = codes.iter().map(|(code, count)| {
        let count = counted(lang, *count, nouns::FINDING);
        format!("{code}: {count}; el texto está en report.txt, en inglés.")
    });
    out.extend(by_code);
    out
}
