//! Letters of revisions.

use crate::job::title::Title;

/// Letters that are none of a revision: they are taken for figures, or for marks of another sort.
// DrawingFact::RevisionLetters.
const NONE: [char; 6] = ['I', 'O', 'Q', 'S', 'X', 'Z'];

/// The revision that the new title block names, where it is another than the old one's; else the letter that
/// comes next after the old one's, A where that had none.
pub(super) fn next_letter(old: &Title, new: &Title) -> String {
    let (was, is) = (old.revision.trim(), new.revision.trim());
    if !is.is_empty() && is != was {
        return is.to_owned();
    }
    let last = was.chars().last().filter(char::is_ascii_alphanumeric);
    let Some(last) = last else { return "A".to_owned() };
    if last.is_ascii_digit() {
        let head = was.trim_end_matches(|c: char| c.is_ascii_digit());
        let number: u64 = was[head.len()..].parse().unwrap_or(0);
        return format!("{head}{}", number.saturating_add(1));
    }
    let head = &was[..was.len() - 1];
    let base = if last.is_ascii_lowercase() { 'a' } else { 'A' };
    let free = |c: &char| !NONE.contains(&c.to_ascii_uppercase());
    let after = (last as u8 + 1..base as u8 + 26).map(char::from).find(free);
    // After Y comes AA.
    after.map_or_else(|| format!("{head}{base}{base}"), |c| format!("{head}{c}"))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_next_letter_leaves_out_those_that_are_taken_for_figures() {
        let title = |r: &str| Title { revision: r.to_owned(), ..Title::default() };
        for (was, is, next) in [
            ("", "", "A"),
            ("A", "A", "B"),
            ("A", "", "B"),
            ("H", "H", "J"),
            ("N", "", "P"),
            ("Y", "", "AA"),
            ("2", "2", "3"),
            ("R9", "", "R10"),
            ("A", "C", "C"),
            ("", "1", "1"),
        ] {
            assert_eq!(next_letter(&title(was), &title(is)), next, "{was} {is}");
        }
    }
}
