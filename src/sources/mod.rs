//! Published sources in words. The documentation of keys names them as the code does, by number and
//! short name in the collection of check values; who reads a schema, a job file or a takeoff has no such
//! collection, so there they stand by their titles, which are written here alone.

pub mod published;
pub mod record;
pub mod takeoff;
pub mod trim;

/// Title of a source, its short name, and the numbers of values that are taken from it alone. What is
/// reckoned or defined has no title; common practice is said beside the value.
const TITLES: &[(&str, &str, &str)] = &[
    (
        "siding association's manual, horizontal siding",
        "VSI-H",
        "OT-01 SD-29 SD-30 SD-50 SD-51 SD-52 SD-70 SD-72 SD-80",
    ),
    ("siding association's manual, accessories", "VSI-A", "SD-23 SD-54 SD-97 SD-98 SD-100"),
    ("siding association's manual, an older edition", "VSI-H-old", "SD-73 SD-76"),
    ("siding association on windy places", "VSI-HW", "SD-106"),
    ("siding association on IRC R703", "VSI-IRC", "SD-90 SD-91 SD-113 SD-114"),
    ("IRC 2018", "IRC18", "SD-20"),
    ("IRC", "IRC", "SD-32 SD-33"),
    ("CAN/CGSB-41.24", "CGSB", "SD-04 SD-57"),
    ("NAVEDTRA 14044", "NAV14044", "OT-05 OT-07 OT-08 SD-134 SD-135 SD-137"),
    ("Journal of Light Construction on vinyl siding", "JLC-V", "OT-02 SD-55 SD-93 SD-99"),
    ("Journal of Light Construction on fibre-cement", "JLC-F", "SD-130 SD-131 SD-132"),
    ("California Redwood Association", "CRA", "WX-15"),
    ("an estimating handbook of 2018", "EST18", "SD-24"),
    ("a lumber yard's estimating page", "YARD", "TK-04 TK-13 TK-14 TK-15 TK-16 TK-17"),
    ("a siding shop's measuring page", "RETAIL", "TK-12"),
    ("a carpenter's takeoff pages", "SAWK", ""),
    ("western lumber association", "WWPA", "TK-20 WX-14"),
    ("a building trades pocketbook", "BCON", ""),
    ("a house-building handbook", "HAB", "SD-38"),
    ("shop pages", "", "TK-02 TK-10"),
    ("usage of the trade", "", "SD-81"),
    ("from memory", "", "SD-05"),
    (PRACTICE, "", "OT-06 OT-14 OT-18 OT-21 OT-25 PR-01 PR-02 PR-05 PR-06 PR-07 PR-08 PR-09 PR-10"),
    (
        PRACTICE,
        "",
        "PR-11 PR-12 PR-13 PR-14 SD-74 SD-78 SD-79 SD-95 SD-104 SD-105 SD-109 SD-112 UN-01",
    ),
    ("", "", "GM-08 OT-20 SD-37 SD-133 TK-03 TK-11 TK-18 UN-08"),
];

const PRACTICE: &str = "common practice";

/// A text with its references in words: `(FACTS SD-54, VSI-A)` becomes `(siding association's manual,
/// accessories)`.
pub(crate) fn in_words(text: &str) -> String {
    let plain = text.split_whitespace().collect::<Vec<_>>().join(" ");
    let mut out = String::new();
    let mut rest = text;
    while let Some(at) = next_reference(rest) {
        out.push_str(&rest[..at]);
        let (items, after) = items(&rest[at..]);
        // Said already, with or without a line's end within.
        let said = |t: &str| t == PRACTICE && plain.contains(t);
        let titles: Vec<&str> =
            titles(&items).into_iter().filter(|t| !t.is_empty() && !said(t)).collect();
        out.push_str(&titles.join("; "));
        rest = after;
        if titles.is_empty() {
            rest = close(&mut out, rest);
        }
    }
    out.push_str(rest);
    out
}

/// Takes away what stood round references of which nothing is said: brackets, or the sign after them.
fn close<'a>(out: &mut String, rest: &'a str) -> &'a str {
    if !out.ends_with('(') {
        return rest.trim_start_matches([',', ';', ':', ' ']);
    }
    if let Some(after) = rest.strip_prefix(')') {
        out.pop();
        out.truncate(out.trim_end().len());
        return after;
    }
    rest.trim_start_matches([',', ';', ':']).trim_start()
}

/// Where the next list of references begins: at its word or at a number.
fn next_reference(text: &str) -> Option<usize> {
    let starts = text.char_indices().filter(|(i, _)| {
        text[..*i].chars().next_back().is_none_or(|c| !c.is_alphanumeric() && c != '-')
    });
    starts
        .map(|(i, _)| i)
        .find(|i| text[*i..].starts_with("FACTS") || number(&text[*i..]).is_some())
}

/// The items of a list of references, and what follows them.
fn items(text: &str) -> (Vec<&str>, &str) {
    let mut rest = text.strip_prefix("FACTS").map_or(text, str::trim_start);
    let (mut found, mut after) = (Vec::new(), rest);
    while let Some(item) = number(rest).or_else(|| short_name(rest)) {
        found.push(item);
        after = &rest[item.len()..];
        // `, `, `; ` and ` to ` go on, a line's end for a blank.
        let next = after.strip_prefix([',', ';']).unwrap_or(after);
        let next = next.trim_start();
        rest = next.strip_prefix("to").map_or(next, str::trim_start);
    }
    (found, after)
}

/// Two capitals, a hyphen, one to three digits at the start of a text.
fn number(text: &str) -> Option<&str> {
    let bytes = text.as_bytes();
    let head = bytes.len() > 3 && bytes[..2].iter().all(u8::is_ascii_uppercase) && bytes[2] == b'-';
    let digits = bytes.iter().skip(3).take_while(|b| b.is_ascii_digit()).count();
    (head && (1..=3).contains(&digits)).then(|| &text[..3 + digits])
}

fn short_name(text: &str) -> Option<&str> {
    let word = text.split(|c: char| !(c.is_alphanumeric() || c == '-')).next()?;
    TITLES.iter().any(|t| !t.1.is_empty() && t.1 == word).then_some(word)
}

/// Titles of the sources named, else of those the numbers are taken from.
fn titles<'a>(items: &[&'a str]) -> Vec<&'a str> {
    let named: Vec<&str> =
        items.iter().filter_map(|i| TITLES.iter().find(|t| t.1 == *i)).map(|t| t.0).collect();
    let of = |i: &&'a str| {
        let known = TITLES.iter().find(|t| t.2.split(' ').any(|n| n == *i));
        known.map_or(*i, |t| t.0)
    };
    let mut out = if named.is_empty() { items.iter().map(of).collect() } else { named };
    let mut seen = std::collections::BTreeSet::new();
    out.retain(|t| seen.insert(*t));
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn references_stand_in_words() {
        for (text, words) in [
            ("3/4 in (FACTS SD-97, VSI-A).", "3/4 in (siding association's manual, accessories)."),
            ("Default 2 (FACTS SD-81).", "Default 2 (usage of the trade)."),
            (
                "2 in: common\npractice, no source (FACTS OT-06).",
                "2 in: common\npractice, no source.",
            ),
            (
                "16 in (FACTS PR-09, common practice, no source).",
                "16 in (common practice, no source).",
            ),
            ("drawn edge (FACTS OT-25).", "drawn edge (common practice)."),
            ("25.4 mm exactly (FACTS GM-08).", "25.4 mm exactly."),
            (
                "found (FACTS OT-01 to\nOT-08).",
                "found (siding association's manual, horizontal siding; NAVEDTRA 14044).",
            ),
            (
                "8 to 12 (FACTS\nSD-23, VSI-A), 10 to 12 (PR-07).",
                "8 to 12 (siding association's manual, accessories), 10 to 12 (common practice).",
            ),
            ("A-WALL-OTLN and 3-4 stay", "A-WALL-OTLN and 3-4 stay"),
        ] {
            assert_eq!(in_words(text), words);
        }
    }

    #[test]
    fn no_schema_or_job_file_holds_a_reference_that_its_reader_cannot_look_up() {
        use crate::write::json;
        for schema in [json::job_schema(), json::layout_schema(), json::takeoff_schema()] {
            let text = String::from_utf8(schema).unwrap();
            let at = next_reference(&text);
            assert_eq!(at.map(|i| text[i..].chars().take(40).collect::<String>()), None);
        }
    }

    #[test]
    fn every_number_has_one_title_and_titles_are_one_line() {
        let numbers: Vec<&str> = TITLES.iter().flat_map(|t| t.2.split_whitespace()).collect();
        for n in &numbers {
            assert_eq!(number(n), Some(*n));
            assert_eq!(numbers.iter().filter(|o| *o == n).count(), 1, "{n}");
        }
    }
}
