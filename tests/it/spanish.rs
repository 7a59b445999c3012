//! Sheets in Spanish, and in both languages: no word is missing, none is left in English, and what is longer still
//! stands on its page without covering anything.

use std::collections::BTreeSet;
use std::fs;
use std::path::Path;

use lapwright::annotate;
use lapwright::job::file as job_file;
use lapwright::language::SheetLanguage;
use lapwright::layout::Layout;
use lapwright::layout::backdrop::Backdrops;
use lapwright::model::drawing::Shape;
use lapwright::model::sheet::Sheet;
use lapwright::units::LengthStyle;
use lapwright::wording::sheet_lengths::unit_note;
use lapwright::wording::terms::FROM_MEMORY;

use crate::random_sheets::house;
use crate::sheets::{legible, marked_once};
use crate::support::{dxf, laid, lay_set, said, samples};

/// Each English text of the words of sheets with its Spanish.
fn pairs() -> Vec<(String, String)> {
    let mut out = Vec::new();
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("src/wording");
    let mut folders = vec![root];
    while let Some(folder) = folders.pop() {
        for entry in fs::read_dir(folder).unwrap() {
            let path = entry.unwrap().path();
            if path.is_dir() {
                folders.push(path);
                continue;
            }
            let text = fs::read_to_string(&path).unwrap();
            let code = text.split("#[cfg(test)]").next().unwrap();
            for call in ["said(", "say!("] {
                for (at, _) in code.match_indices(call) {
                    let rest = &code[at + call.len()..];
                    // A function of that name takes no text first.
                    if call == "said(" && !rest.trim_start().starts_with('"') {
                        continue;
                    }
                    let literals = literals(rest, 2);
                    if let [en, es] = literals.as_slice() {
                        out.push((en.clone(), es.clone()));
                    }
                }
            }
        }
    }
    assert!(out.len() > 400, "{}", out.len());
    out
}

/// The first string literals of a call.
fn literals(code: &str, count: usize) -> Vec<String> {
    let mut out = Vec::new();
    let mut rest = code;
    while out.len() < count {
        let Some(start) = rest.find('"') else { break };
        let mut end = start + 1;
        let bytes = rest.as_bytes();
        while end < bytes.len() && bytes[end] != b'"' {
            end += if bytes[end] == b'\\' { 2 } else { 1 };
        }
        out.push(rest[start + 1..end].replace("\\\"", "\"").replace("\\u{a0}", " "));
        rest = &rest[end + 1..];
    }
    out
}

/// Words of a text: letters alone, in lower case.
pub(crate) fn words(text: &str) -> impl Iterator<Item = String> + '_ {
    text.split(|c: char| !c.is_alphabetic())
        .filter(|w| w.chars().count() > 1)
        .map(str::to_lowercase)
}

/// What stands in braces, in order.
fn figures(text: &str) -> Vec<String> {
    let mut out: Vec<String> =
        text.split('{').skip(1).filter_map(|p| p.split('}').next()).map(str::to_owned).collect();
    out.sort();
    out
}

fn plain(text: &str) -> String {
    text.split('{')
        .enumerate()
        .map(|(i, p)| match i {
            0 => p,
            _ => p.split_once('}').map_or("", |p| p.1),
        })
        .collect::<Vec<_>>()
        .join(" ")
}

pub(crate) fn in_language(stem: &str, language: SheetLanguage) -> (Layout, Vec<Sheet>) {
    let mut layout = laid(stem);
    layout.job.sheet.language = language;
    let sheets = annotate::sheets(&layout, &Backdrops::default());
    (layout, sheets)
}

pub(crate) fn drawn(sheets: &[Sheet]) -> Vec<String> {
    let mut out = Vec::new();
    for sheet in sheets {
        out.push(sheet.title.clone());
        out.push(sheet.description.clone());
        for item in &sheet.drawing.items {
            if let Shape::Text(t) = &item.shape {
                out.push(t.content.clone());
            }
        }
    }
    out
}

#[test]
fn each_sentence_names_the_same_figures_in_both_languages() {
    for (en, es) in pairs() {
        assert!(!es.trim().is_empty() || en.trim().is_empty(), "{en}");
        assert_eq!(figures(&en), figures(&es), "{en}\n{es}");
    }
}

/// Words of English that no Spanish text has.
pub(crate) fn only_english() -> BTreeSet<String> {
    let all = pairs();
    let set = |of: fn(&(String, String)) -> &String| -> BTreeSet<String> {
        all.iter().flat_map(|p| words(&plain(of(p))).collect::<Vec<_>>()).collect()
    };
    let (english, spanish) = (set(|p| &p.0), set(|p| &p.1));
    english.difference(&spanish).cloned().collect()
}

/// Names as the drawing and the job give them, and codes of findings.
pub(crate) fn given(layout: &Layout) -> BTreeSet<String> {
    let codes = layout.findings.iter().map(|f| format!(" {} ", f.code())).collect::<String>();
    let given = serde_json::to_string(&layout.job).unwrap()
        + &layout.drawing.name
        + &codes
        + &layout.walls().map(|(_, w)| format!(" {} ", w.id)).collect::<String>()
        + &layout.elevations.iter().map(|e| format!(" {} ", e.name)).collect::<String>();
    words(&given).collect()
}

/// Words that both languages write alike, of units, names and codes, are no sign of English.
#[test]
fn a_sheet_in_spanish_has_no_word_of_english() {
    let only_english = only_english();
    let mut told = 0;
    for (stem, _) in samples() {
        let (layout, sheets) = in_language(&stem, SheetLanguage::Es);
        let given = given(&layout);
        for text in drawn(&sheets) {
            told += 1;
            for word in words(&text) {
                let foreign = only_english.contains(&word) && !given.contains(&word);
                assert!(!foreign, "{stem}: `{word}` in `{text}`");
            }
        }
    }
    assert!(told > 1000, "{told}");
}

/// The tests of English sheets, of each sample on its own paper and on the smallest.
#[test]
fn what_is_longer_stays_on_its_page_and_covers_nothing() {
    for (stem, _) in samples() {
        let mut layout = laid(&stem);
        let small = ["one-window", "curlew-cottage"].contains(&stem.as_str());
        for language in [SheetLanguage::Es, SheetLanguage::Both] {
            layout.job.sheet.language = language;
            // Two languages need more than the smallest: A3 is the narrowest of what they may have, ANSI B the lowest.
            let papers = match language {
                SheetLanguage::Both if small => ["ARCH B", "A3", "ANSI B"].as_slice(),
                _ if small => &["ARCH B", "ANSI A", "ARCH A", "A4"],
                _ => &["ARCH B"],
            };
            for paper in papers {
                layout.job.sheet.paper = (*paper).to_owned();
                holds(&format!("{stem} {language:?} {paper}"), &layout);
            }
        }
    }
}

fn holds(name: &str, layout: &Layout) {
    let sheets = annotate::sheets(layout, &Backdrops::default());
    for sheet in &sheets {
        legible(name, sheet);
    }
    marked_once(name, layout, &sheets);
}

/// Twice the text has no room on paper of letter size: the job is refused where it says so, and told what to do.
#[test]
fn both_languages_are_refused_on_small_paper() {
    let job = |language: &str, paper: &str| {
        let text = format!("[sheet]\npaper = \"{paper}\"\nlanguage = \"{language}\"\n");
        job_file::parse(&text, "job.toml")
    };
    for paper in ["ANSI A", "arch-a", "A4"] {
        for one in ["en", "es"] {
            assert!(job(one, paper).is_ok(), "{one} {paper}");
        }
        let refused = job("both", paper).unwrap_err().0;
        assert_eq!(refused.code().to_string(), "job-value");
        let said = said(&refused);
        for part in [
            "job.toml",
            "3",
            "`sheet.language`",
            "`sheet.paper`",
            "`en`",
            "`es`",
            "ARCH B",
            "ANSI B",
            "A3",
        ] {
            assert!(said.contains(part), "{part}: {said}");
        }
    }
    for paper in ["ARCH B", "ARCH C", "ARCH D", "ANSI B", "ANSI C", "ANSI D", "A3", "A2", "A1"] {
        assert!(job("both", paper).is_ok(), "{paper}");
    }
}

#[test]
fn random_houses_keep_the_rules_of_sheets_in_both_languages() {
    for seed in 900..904 {
        let (rings, mut job) = house(seed);
        job.seams.effort = lapwright::model::seam::Effort::Crew;
        job.sheet.language = [SheetLanguage::Es, SheetLanguage::Both][seed as usize % 2];
        // What is refused is no job.
        if job.validate().is_err() {
            job.sheet.paper = "A3".to_owned();
            job.validate().unwrap();
        }
        let drawn: Vec<(&str, &[(f64, f64)])> =
            rings.iter().map(|(l, r)| (*l, r.as_slice())).collect();
        let set = lay_set(dxf(&drawn).as_bytes(), &job);
        holds(&format!("{seed}"), &set.layout);
    }
}

/// A wall's sheet holds each sentence in English, and in Spanish too.
#[test]
fn both_languages_stand_on_a_walls_sheet() {
    let wall = |language| {
        let (_, sheets) = in_language("one-window", language);
        let on_walls: Vec<Sheet> =
            sheets.into_iter().filter(|s| s.name.contains("wall-")).collect();
        assert!(!on_walls.is_empty());
        drawn(&on_walls)
    };
    let tokens = |texts: &[String]| -> BTreeSet<String> {
        texts.iter().flat_map(|t| words(t).collect::<Vec<_>>()).collect()
    };
    let both = tokens(&wall(SheetLanguage::Both));
    for language in [SheetLanguage::En, SheetLanguage::Es] {
        // The note on units stands in a heading only where there is room.
        let note = unit_note(LengthStyle::Feet);
        let note: BTreeSet<String> = words(note.en).chain(words(note.es)).collect();
        let own = tokens(&wall(language));
        let missing: Vec<String> =
            own.difference(&both).filter(|w| !note.contains(*w)).cloned().collect();
        assert!(missing.is_empty(), "{language:?}: {missing:?}");
    }
}

/// Lengths, marks and numbers are the same in each language.
#[test]
fn figures_do_not_change_with_the_language() {
    let lengths = |language| -> BTreeSet<String> {
        let (_, sheets) = in_language("one-gable", language);
        let of_walls = sheets.iter().filter(|s| s.name.contains("wall-"));
        let texts = of_walls.flat_map(|s| drawn(std::slice::from_ref(s)));
        let tokens = texts.flat_map(|t| {
            t.split(|c: char| c.is_whitespace() || "()[];,:".contains(c))
                .filter(|w| w.starts_with(|c: char| c.is_ascii_digit()))
                .filter(|w| w.contains('-') || w.contains('\''))
                .map(|w| w.trim_end_matches('.').to_owned())
                .collect::<Vec<_>>()
        });
        tokens.collect()
    };
    assert_eq!(lengths(SheetLanguage::En), lengths(SheetLanguage::Es));
}

/// Cautions are complete in Spanish: as many, with the same figures, and they defer to maker, code and licensed practice.
#[test]
fn cautions_keep_their_figures_in_spanish() {
    use lapwright::language::Language;
    use lapwright::wording::cautions;
    let digits = |t: &str| -> Vec<String> {
        t.split(|c: char| !c.is_ascii_digit())
            .filter(|d| !d.is_empty())
            .map(str::to_owned)
            .collect()
    };
    for c in cautions::of_all() {
        assert_eq!(digits(c.en), digits(c.es), "{}", c.es);
    }
    let notice = cautions::notice(Language::Spanish);
    for word in ["fabricante", "código local", "licencia", "fuego", "agua", "inspector"] {
        assert!(notice.contains(word), "{word}");
    }
}

/// Each term of the table is used.
#[test]
fn every_term_of_the_table_is_said() {
    let all = pairs();
    for (en, es) in FROM_MEMORY {
        let has = |text: &str, term: &str| text.to_lowercase().contains(&term.to_lowercase());
        let together = all.iter().any(|(a, b)| has(a, en) && has(b, es));
        assert!(together, "{en}, {es}");
    }
}
