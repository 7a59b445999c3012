//! The languages that crews read: every word of a sheet is there in each of them.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A language.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Language {
    /// American English.
    English,
    /// Spanish as siding crews in the US speak it.
    Spanish,
}

impl Language {
    /// All of them.
    pub const ALL: [Language; 2] = [Language::English, Language::Spanish];
}

/// A word or sentence without figures, in every language.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Said {
    /// In English.
    pub en: &'static str,
    /// In Spanish.
    pub es: &'static str,
}

/// A word or sentence in every language.
pub const fn said(en: &'static str, es: &'static str) -> Said {
    Said { en, es }
}

impl Said {
    /// The same in one language.
    pub const fn of(self, lang: Language) -> &'static str {
        match lang {
            Language::English => self.en,
            Language::Spanish => self.es,
        }
    }
}

/// A name or sentence with figures, in every language.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Phrase {
    en: String,
    es: String,
}

impl Phrase {
    /// Said in every language.
    pub fn new(text: impl Fn(Language) -> String) -> Self {
        Phrase { en: text(Language::English), es: text(Language::Spanish) }
    }

    /// The same in one language.
    pub fn of(&self, lang: Language) -> &str {
        match lang {
            Language::English => &self.en,
            Language::Spanish => &self.es,
        }
    }
}

impl From<Said> for Phrase {
    fn from(word: Said) -> Self {
        Phrase::new(|lang| word.of(lang).to_owned())
    }
}

/// The language of sheets.
#[derive(
    Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema,
)]
#[serde(rename_all = "lowercase")]
pub enum SheetLanguage {
    /// English.
    #[default]
    En,
    /// Spanish.
    Es,
    /// Both: each sentence in English and under it in Spanish, each short word in both with a stroke between.
    Both,
}

impl SheetLanguage {
    /// The languages it has, the first first.
    pub fn each(self) -> &'static [Language] {
        match self {
            SheetLanguage::En => &Language::ALL[..1],
            SheetLanguage::Es => &Language::ALL[1..],
            SheetLanguage::Both => &Language::ALL,
        }
    }

    /// A name where there is room for one language alone: the first.
    pub fn alone(self, name: Said) -> &'static str {
        name.of(self.each().first().copied().unwrap_or(Language::English))
    }

    /// Names of a list, each on one line.
    pub fn names(self, list: impl Fn(Language) -> Vec<String>) -> Vec<String> {
        let all: Vec<Vec<String>> = self.each().iter().map(|l| list(*l)).collect();
        let count = all.first().map_or(0, Vec::len);
        let name = |i: usize, l: Language| {
            let own = self.each().iter().position(|each| *each == l).and_then(|k| all.get(k));
            own.and_then(|list| list.get(i)).cloned().unwrap_or_default()
        };
        (0..count).map(|i| self.line(|l| name(i, l))).collect()
    }

    /// Sentences: one under the other where there are two, once where both are alike.
    pub fn block(self, text: impl Fn(Language) -> String) -> String {
        self.joined(text, |a, b| format!("{a}\n{b}"))
    }

    /// A short text on one line; what both languages have alike stands once: `Wall / Pared F1, FRONT`.
    pub fn line(self, text: impl Fn(Language) -> String) -> String {
        self.joined(text, |a, b| merged(&a, &b))
    }

    /// A name on one line.
    pub fn name(self, name: &Phrase) -> String {
        self.line(|lang| name.of(lang).to_owned())
    }

    /// A sentence without figures.
    pub fn sentence(self, sentence: Said) -> String {
        self.block(|lang| sentence.of(lang).to_owned())
    }

    /// A list of sentences, as long in each language, sentence by sentence.
    pub fn blocks(self, list: impl Fn(Language) -> Vec<String>) -> Vec<String> {
        let mut lists: Vec<_> = self.each().iter().map(|l| list(*l).into_iter()).collect();
        let mut out = Vec::new();
        loop {
            let said: Vec<String> = lists.iter_mut().filter_map(Iterator::next).collect();
            match said.as_slice() {
                [] => return out,
                [one, rest @ ..] if rest.iter().all(|r| r == one) => out.push(one.clone()),
                all => out.push(all.join("\n")),
            }
        }
    }

    /// A word.
    pub fn word(self, word: Said) -> String {
        self.line(|l| word.of(l).to_owned())
    }

    fn joined(
        self,
        text: impl Fn(Language) -> String,
        join: impl Fn(String, String) -> String,
    ) -> String {
        let mut all = self.each().iter().map(|l| text(*l));
        let first = all.next().unwrap_or_default();
        match all.next() {
            Some(second) if second != first => join(first, second),
            _ => first,
        }
    }
}

/// Two texts on one line. Where words in one place alone differ, and no figure is among them, they stand side by
/// side there; else the texts do.
fn merged(a: &str, b: &str) -> String {
    let (x, y): (Vec<&str>, Vec<&str>) = (a.split(' ').collect(), b.split(' ').collect());
    let head = x.iter().zip(&y).take_while(|(p, q)| p == q).count();
    let ends = x[head..].iter().rev().zip(y[head..].iter().rev());
    let tail = ends.take_while(|(p, q)| p == q).count();
    let (p, q) = (&x[head..x.len() - tail], &y[head..y.len() - tail]);
    let plain = |words: &[&str]| {
        !words.is_empty() && !words.iter().any(|w| w.contains(|c: char| c.is_ascii_digit()))
    };
    if !plain(p) || !plain(q) || head + tail == 0 {
        return format!("{a} / {b}");
    }
    let middle = format!("{} / {}", p.join(" "), q.join(" "));
    let parts = [x[..head].join(" "), middle, x[x.len() - tail..].join(" ")];
    parts.iter().filter(|s| !s.is_empty()).cloned().collect::<Vec<_>>().join(" ")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_both_languages_have_alike_stands_once() {
        let both = |a: &'static str, b: &'static str| SheetLanguage::Both.word(said(a, b));
        assert_eq!(both("Wall F1, FRONT", "Pared F1, FRONT"), "Wall / Pared F1, FRONT");
        assert_eq!(both("7 at 3'-11\"", "7 a 3'-11\""), "7 at / a 3'-11\"");
        assert_eq!(both("3 of 16", "3 de 16"), "3 of / de 16");
        assert_eq!(both("J-channel", "J-channel"), "J-channel");
        assert_eq!(both("seam", "unión"), "seam / unión");
        // Words in two places: the whole beside the whole.
        let (a, b) = ("open 3; offcuts of 5", "abrir 3; sobrantes de 5");
        assert_eq!(both(a, b), format!("{a} / {b}"));
        assert_eq!(SheetLanguage::Both.block(|l| said("a", "b").of(l).to_owned()), "a\nb");
        assert_eq!(SheetLanguage::Es.word(said("seam", "unión")), "unión");
        assert_eq!(SheetLanguage::En.word(said("seam", "unión")), "seam");
    }
}
