//! Facts of the trade: every one has its source by title or says that it has none, every one is cited,
//! and nothing cites a list that is not in the repository.

use std::collections::BTreeSet;
use std::path::{Path, PathBuf};

use lapwright::sources::drawing::DrawingFact;
use lapwright::sources::examples::Example;
use lapwright::sources::layout::LayoutFact;
use lapwright::sources::nails::NailFact;
use lapwright::sources::published::Published;
use lapwright::sources::record::{Record, Sureness};
use lapwright::sources::safety::SafetyFact;
use lapwright::sources::siding::SidingFact;
use lapwright::sources::takeoff::TakeoffFact;
use lapwright::sources::trim::TrimFact;
use lapwright::wording::sources::titles;

use crate::support::root;

/// Every fact by the name it is cited by.
fn facts() -> Vec<(String, Record)> {
    let mut out = Vec::new();
    macro_rules! all {
        ($($subject:ident),*) => {
            $(out.extend($subject::ALL.iter().map(|f| {
                (format!("{}::{f:?}", stringify!($subject)), f.record())
            }));)*
        };
    }
    all!(SidingFact, NailFact, TrimFact, LayoutFact, DrawingFact, TakeoffFact, SafetyFact, Example);
    out
}

/// Text files of the repository's own folders, with their contents.
fn texts() -> Vec<(PathBuf, String)> {
    fn walk(folder: &Path, out: &mut Vec<(PathBuf, String)>) {
        for entry in std::fs::read_dir(folder).unwrap() {
            let path = entry.unwrap().path();
            let name = path.file_name().unwrap().to_string_lossy().into_owned();
            if path.is_dir() {
                if !["target", "corpus", "artifacts"].contains(&name.as_str()) {
                    walk(&path, out);
                }
            } else if let Ok(text) = std::fs::read_to_string(&path) {
                out.push((path, text));
            }
        }
    }
    let mut out = Vec::new();
    for folder in ["src", "tests", "benches", "sample-drawings"] {
        let folder = root().join(folder);
        if folder.exists() {
            walk(&folder, &mut out);
        }
    }
    for file in ["README.md", "DEVELOPERS.md", "Cargo.toml"] {
        out.push((root().join(file), std::fs::read_to_string(root().join(file)).unwrap()));
    }
    out
}

#[test]
fn every_fact_has_its_source_by_title_or_says_that_it_has_none() {
    let facts = facts();
    assert!(facts.len() > 150, "{}", facts.len());
    for (name, r) in &facts {
        assert!(r.value.len() > 10, "{name}");
        let said = titles(&[*r]);
        match r.sureness {
            // Read somewhere, or known to be said somewhere: by whom.
            Sureness::Read | Sureness::Disputed => assert!(!r.sources.is_empty(), "{name}"),
            Sureness::Memory | Sureness::Practice => assert!(!said.is_empty(), "{name}"),
            Sureness::Exact => {}
        }
        assert!(r.section.is_empty() || !r.sources.is_empty(), "{name}");
        for source in r.sources {
            assert!(said.contains(source.title()), "{name}: {said}");
        }
    }
    let names: BTreeSet<&String> = facts.iter().map(|f| &f.0).collect();
    assert_eq!(names.len(), facts.len());
    assert_eq!(titles(&[TrimFact::HeadTabs.record()]), "common practice");
    assert_eq!(titles(&[SidingFact::UsualExpansion.record()]), "from memory");
    assert_eq!(titles(&[DrawingFact::Inch.record()]), "");
}

#[test]
fn titles_are_one_line_each_and_every_source_is_used() {
    let used: BTreeSet<Published> = facts().iter().flat_map(|f| f.1.sources.to_vec()).collect();
    let titles: BTreeSet<&str> = Published::ALL.iter().map(|p| p.title()).collect();
    assert_eq!(titles.len(), Published::ALL.len(), "two sources of one title");
    for source in Published::ALL {
        assert!(!source.title().contains('\n') && source.title().len() < 60, "{source:?}");
        assert!(used.contains(source), "nothing is taken from {source:?}");
    }
}

#[test]
fn every_fact_is_cited_by_its_name() {
    let cited: BTreeSet<String> = texts()
        .iter()
        .filter(|(path, _)| !path.starts_with(root().join("src/sources")))
        .filter(|(path, _)| !path.ends_with("tests/it/sources.rs"))
        .flat_map(|(_, text)| names_in(text))
        .collect();
    let missing: Vec<String> =
        facts().into_iter().map(|f| f.0).filter(|name| !cited.contains(name)).collect();
    assert!(missing.is_empty(), "{missing:?}");
}

/// Names of facts in a text: `Subject::Name`.
fn names_in(text: &str) -> Vec<String> {
    let word = |c: char| c.is_ascii_alphanumeric();
    let mut out = Vec::new();
    for (at, _) in text.match_indices("::") {
        let subject: String = text[..at].chars().rev().take_while(|c| word(*c)).collect();
        let subject: String = subject.chars().rev().collect();
        let name: String = text[at + 2..].chars().take_while(|c| word(*c)).collect();
        if subject.ends_with("Fact") || subject == "Example" {
            out.push(format!("{subject}::{name}"));
        }
    }
    out
}

#[test]
fn every_citation_is_of_a_fact_that_there_is() {
    let known: BTreeSet<String> = facts().into_iter().map(|f| f.0).collect();
    for (path, text) in texts() {
        if path.ends_with("tests/it/sources.rs") {
            continue;
        }
        for name in names_in(&text) {
            let made = name.ends_with("::ALL") || !name.contains("::") || name.ends_with("::");
            assert!(made || known.contains(&name), "{}: {name}", path.display());
        }
    }
}

#[test]
fn nothing_cites_a_list_that_is_not_in_the_repository() {
    const LISTS: [&str; 11] = ["SD", "OT", "PR", "TK", "WX", "WY", "GM", "DR", "DS", "UN", "SF"];
    for (path, text) in texts() {
        for (at, _) in text.match_indices('-') {
            let (before, after) = (&text[..at], &text[at + 1..]);
            let digits = after.bytes().take_while(u8::is_ascii_digit).count();
            let Some(list) = LISTS.iter().find(|l| before.ends_with(**l)) else { continue };
            let alone = !before[..before.len() - list.len()]
                .ends_with(|c: char| c.is_alphanumeric() || c == '-' || c == '_');
            let number = (2..=3).contains(&digits)
                && !after[digits..].starts_with(|c: char| c.is_alphanumeric());
            assert!(!(alone && number), "{}: {list}-{}", path.display(), &after[..digits]);
        }
    }
}
