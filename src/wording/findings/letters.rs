//! Of letters that cannot be drawn.

use super::finding_words::FindingWords;
use crate::finding::letters::{LetterFinding, LetterPlace};
use crate::units::counted;
use crate::wording::lists::commas;

pub(super) fn words(found: &LetterFinding) -> FindingWords {
    let LetterFinding::LettersNotDrawn { letters, code_points, kinds, places, names, .. } = found;
    let which: Vec<String> = code_points.iter().map(|c| letter(*c)).collect();
    let which = with_more(which, *kinds);
    let places = with_more(places.iter().map(place).collect(), *names);
    FindingWords::new(
        format!(
            "{} cannot be drawn on the sheets: {which}. {} in {places}",
            counted(*letters, "letter"),
            if *letters == 1 { "It stands" } else { "They stand" },
        ),
        "Each is a box with a question mark on the sheets and in the PDF; tables, workbook and report have it as it is written. Write the name in letters of another script, in the drawing or in the job file.",
    )
}

/// A letter with its code point, which tells it where it cannot be shown.
fn letter(code_point: u32) -> String {
    let shown = char::from_u32(code_point).filter(|c| !is_private(*c));
    let shown = shown.map_or(String::new(), |c| format!("{c} "));
    format!("{shown}U+{code_point:04X}")
}

/// A private letter looks like nothing in particular.
fn is_private(c: char) -> bool {
    matches!(c, '\u{e000}'..='\u{f8ff}' | '\u{f0000}'..)
}

fn with_more(shown: Vec<String>, all: usize) -> String {
    match all.saturating_sub(shown.len()) {
        0 => commas(&shown),
        more => format!("{} and {more} more", commas(&shown)),
    }
}

fn place(place: &LetterPlace) -> String {
    match place {
        LetterPlace::View { text } => format!("the view `{text}`"),
        LetterPlace::Job { key, text } => format!("`{key}` of the job, `{text}`"),
        LetterPlace::Drawing { text } => format!("the drawing's name, `{text}`"),
        LetterPlace::Layer { text } => format!("the layer `{text}`"),
        LetterPlace::Finding { text } => format!("`{text}`"),
    }
}
