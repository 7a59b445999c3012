//! Texts in lines no wider than a column.

use crate::annotate::canvas::{fitted, printable, wrapped};
use crate::annotate::style::TEXT;

/// What stands before a text in bold, in lines no wider than a column: one where it can be.
pub(super) fn lead_lines(lead: &str, height: f64, room: f64) -> Vec<String> {
    let lead = printable(lead);
    if crate::typeface::width(&lead, height, true) <= room {
        return vec![lead];
    }
    let lines = wrapped(&lead, height, room * 0.92);
    lines.iter().map(|l| fitted(l, height, true, room)).collect()
}

/// A text in lines, the first no wider than `first`, the others than `room`.
pub(super) fn wrapped_after(text: &str, first: f64, room: f64) -> Vec<String> {
    let mut out: Vec<String> = vec![String::new()];
    for (at, line) in text.split('\n').enumerate() {
        if at > 0 {
            out.push(String::new());
        }
        wrap_on(&mut out, line, first, room);
    }
    out
}

/// Goes on with a line of a text.
fn wrap_on(out: &mut Vec<String>, text: &str, first: f64, room: f64) {
    for word in printable(text).split_ascii_whitespace() {
        // A hard space keeps a length and its fraction together.
        let word = word.replace('\u{a0}', " ");
        let limit = if out.len() == 1 { first } else { room };
        let last = out.last().cloned().unwrap_or_default();
        let joined = if last.is_empty() { word.clone() } else { format!("{last} {word}") };
        if crate::typeface::width(&joined, TEXT, false) <= limit {
            if let Some(l) = out.last_mut() {
                *l = joined;
            }
        } else {
            out.extend(at_hyphens(&word, room));
        }
    }
}

/// A word in lines no wider than `room`, broken behind hyphens only where it is wider.
fn at_hyphens(word: &str, room: f64) -> Vec<String> {
    let mut out: Vec<String> = Vec::new();
    for part in word.split_inclusive('-') {
        match out.last_mut() {
            Some(l) if crate::typeface::width(&format!("{l}{part}"), TEXT, false) <= room => {
                l.push_str(part);
            }
            _ => out.push(fitted(part, TEXT, false, room)),
        }
    }
    out
}
