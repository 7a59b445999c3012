//! Plain text: lines of one width, sections and lists.

use crate::clean::terminal;

/// Width of a report, letters.
pub(super) const WIDTH: usize = 80;

/// A section under its title.
pub(super) fn titled(title: &str, body: &str) -> String {
    format!("{title}\n{body}")
}

/// A list, an item a line or more.
pub(super) fn bullets<'a>(lines: impl Iterator<Item = &'a str>) -> String {
    lines.map(|l| wrapped(&format!("- {l}"), "  ") + "\n").collect()
}

/// Words cut to a width, so that no drawing's text breaks a table.
pub(super) fn fitted(text: &str, width: usize) -> String {
    let text = terminal(text);
    if text.chars().count() <= width {
        return text;
    }
    text.chars().take(width.saturating_sub(1)).chain(['…']).collect()
}

/// Words wrapped to the width, every line but the first indented two more.
pub(super) fn wrapped(text: &str, indent: &str) -> String {
    let mut out = String::new();
    let mut line = indent.to_owned();
    let mut fresh = true;
    for word in text.split_whitespace() {
        if !fresh && line.chars().count() + 1 + word.chars().count() > WIDTH {
            out.push_str(&line);
            out.push('\n');
            line = format!("{indent}  ");
            fresh = true;
        }
        if !fresh {
            line.push(' ');
        }
        line.push_str(word);
        fresh = false;
    }
    out.push_str(&line);
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lines_stay_within_eighty_columns() {
        let long = "word ".repeat(100);
        assert!(wrapped(&long, "  ").lines().all(|l| l.chars().count() <= WIDTH));
    }
}
