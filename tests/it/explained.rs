//! Every code is explained, and what the program says is plain language: no text of a debugger, no
//! infinite numbers.

use std::collections::BTreeSet;

use assert_cmd::Command;
use lapwright::finding::FindingCode;
use lapwright::wording::explain::explanation;
use lapwright::write::explain::{page, table};

fn explain(args: &[&str]) -> std::process::Output {
    Command::cargo_bin("lapwright").unwrap().arg("explain").args(args).output().unwrap()
}

#[test]
fn every_code_has_a_cause_a_remedy_and_an_example_of_its_own() {
    let (mut examples, mut titles) = (BTreeSet::new(), BTreeSet::new());
    for code in FindingCode::all() {
        let e = explanation(code);
        for text in [e.title, e.cause, e.remedy, e.example] {
            assert!(!text.trim().is_empty(), "{code}");
        }
        // Sentences, not words.
        assert!(e.cause.len() > 40 && e.cause.ends_with('.') && e.remedy.ends_with('.'), "{code}");
        assert!(examples.insert(e.example), "{code} has the example of another");
        assert!(titles.insert(e.title), "{code} has the title of another");
    }
}

#[test]
fn explain_prints_a_page_that_fits_the_terminal() {
    for code in FindingCode::all() {
        let out = explain(&[code.word()]);
        assert_eq!(out.status.code(), Some(0), "{code}");
        let text = String::from_utf8(out.stdout).unwrap();
        assert_eq!(text, page(code));
        for head in ["Severity", "Who acts", "Cause", "What to do", "Example"] {
            assert!(text.contains(&format!("\n{head}\n")), "{code}: {text}");
        }
        let prose = text.split("\nExample\n").next().unwrap();
        assert!(prose.lines().all(|l| l.chars().count() <= 80), "{text}");
    }
}

#[test]
fn explain_lists_all_and_names_the_nearest_of_an_unknown_one() {
    let list = String::from_utf8(explain(&[]).stdout).unwrap();
    assert_eq!(list, table());
    for code in FindingCode::all() {
        assert!(list.lines().any(|l| l.starts_with(&format!("{code} "))), "{code}");
    }
    let out = explain(&["wall-opne"]);
    let said = String::from_utf8_lossy(&out.stderr).into_owned();
    assert_eq!((out.status.code(), out.stdout.len()), (Some(2), 0));
    assert!(said.contains("wall-opne") && said.contains("Did you mean wall-open?"), "{said}");
    assert_eq!(explain(&["nothing-of-the-sort-at-all"]).status.code(), Some(2));
    // Upper case is no other code.
    assert_eq!(explain(&["WALL-OPEN"]).status.code(), Some(0));
}
