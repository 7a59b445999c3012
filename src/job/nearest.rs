//! What a misspelt word was meant to be.

/// The word nearest to `word` that is near enough to be meant: a third of its letters may differ,
/// and one more.
pub fn nearest<'a>(word: &str, known: &'a [String]) -> Option<&'a String> {
    // Nobody misspells a word of a hundred letters, and comparing takes as long as both together, squared.
    let letters = word.chars().count();
    if letters > LONGEST {
        return None;
    }
    let like = |k: &&String| k.chars().count().abs_diff(letters) <= 1 + letters / 3;
    let best = known.iter().filter(like).min_by_key(|k| (distance(word, k), k.len()))?;
    near(word, best).then_some(best)
}

/// Letters of the longest word that may be misspelt.
const LONGEST: usize = 100;

/// Whether one may be meant by the other.
pub(super) fn near(word: &str, known: &str) -> bool {
    let (letters, others) = (word.chars().count(), known.chars().count());
    letters.abs_diff(others) <= 1 + letters / 3
        && letters <= LONGEST
        && distance(word, known) <= 1 + letters / 3
}

/// Edit distance by single characters (Levenshtein).
pub(super) fn distance(a: &str, b: &str) -> usize {
    let b: Vec<char> = b.chars().collect();
    let mut row: Vec<usize> = (0..=b.len()).collect();
    for (i, c) in a.chars().enumerate() {
        let mut before = row[0];
        row[0] = i + 1;
        for (j, d) in b.iter().enumerate() {
            let here = before + usize::from(c != *d);
            before = row[j + 1];
            row[j + 1] = here.min(before + 1).min(row[j] + 1);
        }
    }
    row[b.len()]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn edits_are_counted_and_far_words_left_alone() {
        // The textbook pair: two substitutions and one insertion.
        assert_eq!(distance("kitten", "sitting"), 3);
        let known = ["cartons", "panels"].map(str::to_owned);
        assert_eq!(nearest("panel", &known).map(String::as_str), Some("panels"));
        assert_eq!(nearest("windows", &known), None);
    }
}
