//! Names and numbers in a row.

use std::fmt::Display;

use crate::language::{Language, Said, said};

/// Names in a row: `a`, `a and b`, `a, b and c`.
pub fn joined<T: Display>(list: &[T]) -> String {
    joined_in(Language::English, list)
}

/// The same in a language.
pub fn joined_in<T: Display>(lang: Language, list: &[T]) -> String {
    match list.split_last() {
        Some((last, [])) => last.to_string(),
        Some((last, firsts)) => say!(lang, "{} and {last}", "{} y {last}", commas(firsts)),
        None => String::new(),
    }
}

/// Names with commas between them.
pub fn commas<T: Display>(list: &[T]) -> String {
    list.iter().map(T::to_string).collect::<Vec<_>>().join(", ")
}

/// The first of many names, and how many more there are.
pub fn first_in(lang: Language, names: &[String], most: usize) -> String {
    let first = commas(&names[..names.len().min(most)]);
    match names.len().saturating_sub(most) {
        0 => first,
        more => say!(lang, "{first} and {more} more", "{first} y {more} más"),
    }
}

/// A sentence's first letter as a capital.
pub fn capital(sentence: &str) -> String {
    let mut letters = sentence.chars();
    let first = letters.next().into_iter().flat_map(char::to_uppercase);
    first.chain(letters).collect()
}

/// A small number in words.
pub fn number_word(lang: Language, number: usize) -> String {
    const NUMBERS: [Said; 7] = [
        said("two", "dos"),
        said("three", "tres"),
        said("four", "cuatro"),
        said("five", "cinco"),
        said("six", "seis"),
        said("seven", "siete"),
        said("eight", "ocho"),
    ];
    let word = number.checked_sub(2).and_then(|i| NUMBERS.get(i));
    word.map_or_else(|| number.to_string(), |word| word.of(lang).to_owned())
}

/// Course numbers in order: `course 3`, `courses 1 to 4, 7`.
pub fn courses(list: &[i32]) -> String {
    courses_in(Language::English, list)
}

/// The same in a language.
pub fn courses_in(lang: Language, list: &[i32]) -> String {
    let mut parts: Vec<String> = Vec::new();
    let mut at = 0;
    while at < list.len() {
        let mut end = at;
        while end + 1 < list.len() && list[end].checked_add(1) == Some(list[end + 1]) {
            end += 1;
        }
        parts.push(match end - at {
            0 => list[at].to_string(),
            1 => format!("{}, {}", list[at], list[end]),
            _ => say!(lang, "{} to {}", "{} a {}", list[at], list[end]),
        });
        at = end + 1;
    }
    let what = if list.len() == 1 { said("course", "hilera") } else { said("courses", "hileras") };
    format!("{} {}", what.of(lang), parts.join(", "))
}

/// A name before its last number, and that number.
fn split(name: &str) -> Option<(&str, u64)> {
    let digits = name.chars().rev().take_while(char::is_ascii_digit).count();
    let (head, tail) = name.split_at(name.len() - digits);
    tail.parse().ok().map(|k| (head, k))
}

/// Names in order, with the numbers that follow one another drawn together: `P1 to P7, P9`.
pub fn ranges<T: AsRef<str>>(names: &[T]) -> String {
    ranges_in(Language::English, names)
}

/// The same in a language.
pub fn ranges_in<T: AsRef<str>>(lang: Language, names: &[T]) -> String {
    let mut names: Vec<&str> = names.iter().map(T::as_ref).collect();
    names.sort_by_key(|n| split(n).map_or((*n, 0, *n), |(head, k)| (head, k, *n)));
    let mut out: Vec<String> = Vec::new();
    let mut first = 0;
    for i in 0..names.len() {
        let goes_on = names.get(i + 1).is_some_and(|next| match (split(names[i]), split(next)) {
            (Some((a, m)), Some((b, n))) => a == b && m.checked_add(1) == Some(n),
            _ => false,
        });
        if goes_on {
            continue;
        }
        out.push(match i - first {
            0 => names[i].to_owned(),
            1 => format!("{}, {}", names[first], names[i]),
            _ => say!(lang, "{} to {}", "{} a {}", names[first], names[i]),
        });
        first = i + 1;
    }
    out.join(", ")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_in_a_row_are_drawn_together() {
        let names = |t: &str| t.split(' ').map(str::to_owned).collect::<Vec<_>>();
        assert_eq!(ranges(&names("P2 P1 P3 P6 Q7 P5 P10 x")), "P1 to P3, P5, P6, P10, Q7, x");
        assert_eq!(
            ranges(&names("P09 P10 P11 99999999999999999999999")),
            "99999999999999999999999, P09 to P11"
        );
        assert_eq!(ranges::<String>(&[]), "");
    }

    #[test]
    fn lists_read_as_they_are_spoken() {
        assert_eq!(joined::<i32>(&[]), "");
        assert_eq!(joined(&[1]), "1");
        assert_eq!(joined(&[1, 2, 3]), "1, 2 and 3");
        assert_eq!(courses(&[3]), "course 3");
        assert_eq!(courses(&[1, 2, 3, 4, 7, 9, 10]), "courses 1 to 4, 7, 9, 10");
        assert_eq!(courses(&[i32::MAX, i32::MIN]), format!("courses {}, {}", i32::MAX, i32::MIN));
        assert_eq!((capital("élan"), capital("")), ("Élan".to_owned(), String::new()));
    }
}
