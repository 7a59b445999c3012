//! Findings as the cover tells them. What a crew minds is said in every language; what architect and office settle
//! stands in the report, in English, and a sheet in Spanish names it by its code.

use super::findings::{message, subject};
use super::movement;
use super::nouns::{self, counted};
use crate::finding::laying::LayingFinding;
use crate::finding::{Finding, FindingKind, gathered};
use crate::language::Language;
use crate::units::LengthStyle;
use crate::wording::lists::{commas, courses_in};

/// The findings of one head of the cover, a sentence each; in Spanish those about one subject that it does not tell
/// are one sentence.
pub fn told(lang: Language, findings: &[&Finding], style: LengthStyle) -> Vec<String> {
    if lang == Language::English {
        return findings.iter().map(|f| message(f, style)).collect();
    }
    let mut out = Vec::new();
    let mut others: Vec<&Finding> = Vec::new();
    for finding in findings {
        match crew(finding, style) {
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

/// What the crew minds, in Spanish.
fn crew(finding: &Finding, style: LengthStyle) -> Option<String> {
    use LayingFinding as F;
    let FindingKind::Laying(found) = &finding.kind else { return None };
    let lang = Language::Spanish;
    Some(match found {
        F::BlockMoved { wall, blocks } => format!(
            "{wall}: {} corridos un poco para no cortar dos hileras; vea la hoja de la pared.",
            counted(lang, blocks.len(), nouns::BLOCK)
        ),
        F::PeakLeft { wall, height } => format!(
            "{wall}: sobre la última línea de hilera queda una punta de {}, muy baja para una pieza.",
            style.short(*height)
        ),
        F::PanelShort { wall, pieces, stud_spacing, .. } => format!(
            "{wall}: piezas más cortas que la distancia entre montantes, {}: {}. Vea con el fabricante cómo se clavan.",
            style.short(*stud_spacing),
            commas(pieces)
        ),
        F::NotchThin { wall, notches, least, .. } => format!(
            "{wall}: muescas que dejan menos de {} de la pieza: {}. Corte y maneje con cuidado.",
            style.short(*least),
            notches.len()
        ),
        F::MovementGap { row, .. } => format!(
            "{} de {}: necesita {} para dilatarse y tiene {}; siga al fabricante.",
            movement::piece(row.piece).of(lang),
            style.length(row.length),
            movement::fine(lang, style, row.needed),
            movement::fine(lang, style, row.room.unwrap_or(0.0))
        ),
        F::SeamOnJamb { wall, courses, within, .. } => format!(
            "{wall}: uniones a menos de {} de una línea de jamba en {}.",
            style.short(*within),
            courses_in(lang, courses)
        ),
        _ => return None,
    })
}
