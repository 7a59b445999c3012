//! The house rules of the source: floors, foreign crates in one room, small files.

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

use crate::support::root;

/// Rooms by floor; imports go only downward, and rooms of one floor never import one another, but for
/// the lowest.
const FLOORS: [(&str, u8); 33] = [
    ("main", 11),
    ("cli", 10),
    ("lib", 9),
    ("pipeline", 8),
    ("outputs", 7),
    ("annotate", 6),
    ("write", 6),
    ("wording", 5),
    ("read", 4),
    ("normalize", 4),
    ("extract", 4),
    ("receive", 4),
    ("course", 4),
    ("seam", 4),
    ("joint", 4),
    ("trim", 4),
    ("verify", 4),
    ("takeoff", 4),
    ("work", 4),
    ("layout", 3),
    ("job", 3),
    ("finding", 2),
    ("model", 2),
    ("geom", 1),
    ("units", 1),
    ("origin", 1),
    ("packing", 1),
    ("sources", 1),
    ("typeface", 1),
    ("pitch", 1),
    ("cores", 1),
    ("clean", 1),
    ("", 0),
];

/// The floor of the stages: called by the pipeline alone.
const STAGES: u8 = 4;

/// Foreign crates with the one room that may name each. serde and schemars derive on plain data.
const CRATES: [(&str, &[&str]); 25] = [
    ("clap", &["cli"]),
    ("clap_complete", &["cli"]),
    ("clap_mangen", &["cli"]),
    ("toml", &["job"]),
    ("miette", &["cli"]),
    ("indicatif", &["cli"]),
    ("tempfile", &["cli"]),
    ("rustix", &["cli"]),
    ("rayon", &["cores"]),
    ("sha2", &["read"]),
    ("encoding_rs", &["read"]),
    ("chardetng", &["read"]),
    ("spade", &["geom"]),
    ("memchr", &["read", "write"]),
    ("geo", &["geom"]),
    ("kurbo", &["geom"]),
    ("csv", &["write"]),
    ("rust_xlsxwriter", &["write"]),
    ("svg", &["write"]),
    ("usvg", &["read", "write"]),
    ("resvg", &["write"]),
    ("krilla", &["write"]),
    ("krilla_svg", &["write"]),
    ("serde_json", &["job", "write"]),
    ("ttf_parser", &["typeface"]),
];

fn files(dir: &Path, out: &mut Vec<std::path::PathBuf>) {
    for e in std::fs::read_dir(dir).unwrap() {
        let p = e.unwrap().path();
        if p.is_dir() {
            files(&p, out)
        } else if p.extension().is_some_and(|x| x == "rs") {
            out.push(p)
        }
    }
}

/// (room, path, text without its tests) of every source file.
fn sources() -> Vec<(String, String, String)> {
    let src = root().join("src");
    let mut paths = Vec::new();
    files(&src, &mut paths);
    paths.sort();
    assert!(paths.len() > 50);
    paths
        .into_iter()
        .map(|p| {
            let rel = p.strip_prefix(&src).unwrap().to_string_lossy().replace('\\', "/");
            let room = rel.split('/').next().unwrap().trim_end_matches(".rs").to_owned();
            let text = std::fs::read_to_string(&p).unwrap();
            let code = text.split("#[cfg(test)]").next().unwrap().to_owned();
            (room, rel, code)
        })
        .collect()
}

fn floor(room: &str) -> u8 {
    FLOORS.iter().find(|f| f.0 == room).unwrap_or_else(|| panic!("room `{room}` has no floor")).1
}

#[test]
fn imports_go_only_downward() {
    let mut seen = 0;
    for (room, path, code) in sources() {
        for part in code.split("crate::").skip(1) {
            let to: String =
                part.chars().take_while(|c| c.is_alphanumeric() || *c == '_').collect();
            if to.is_empty() || to == room {
                continue;
            }
            seen += 1;
            let allowed = match (room.as_str(), to.as_str()) {
                ("lib", _) => true,
                // The layout holds the job in force.
                ("layout", "job") => true,
                // A finding names things of the model; the model knows of no finding.
                ("finding", "model") => true,
                (a, b) if floor(b) == STAGES => floor(a) > STAGES && a == "pipeline",
                (a, b) if floor(a) == 1 && floor(b) == 1 => true,
                (a, b) => floor(b) < floor(a),
            };
            assert!(allowed, "{path} imports {to}");
        }
    }
    assert!(seen > 100, "the search for imports found only {seen}");
}

#[test]
fn each_foreign_crate_is_named_in_one_room() {
    let mut used: BTreeMap<&str, BTreeSet<String>> = BTreeMap::new();
    for (room, path, code) in sources() {
        for (name, rooms) in CRATES {
            let named = code.lines().filter(|l| !l.trim_start().starts_with("//")).any(|l| {
                l.match_indices(&format!("{name}::")).any(|(i, _)| {
                    let before = l[..i].chars().last();
                    !before.is_some_and(|c| c.is_alphanumeric() || c == '_' || c == ':')
                })
            });
            if named {
                assert!(rooms.contains(&room.as_str()), "{path} names {name}");
                used.entry(name).or_default().insert(room.clone());
            }
        }
    }
    let unused: Vec<&str> = CRATES.iter().map(|c| c.0).filter(|c| !used.contains_key(c)).collect();
    assert!(unused.is_empty(), "no room names {unused:?}");
}

#[test]
fn files_stay_small_and_without_globs() {
    for (_, path, code) in sources() {
        let lines = code.lines().count();
        assert!(lines <= 600, "{path} has {lines} lines");
        assert!(!code.contains("::*;"), "{path} imports a glob");
    }
}

/// Kinds of siding are known to their descriptions, to their names and to their cautions; all others ask
/// the description.
#[test]
fn only_descriptions_and_their_words_know_kinds_of_siding() {
    let word = |code: &str, name: &str| {
        code.match_indices(name).any(|(i, _)| {
            let before = code[..i].chars().last();
            !before.is_some_and(|c| c.is_alphanumeric() || c == '_')
        })
    };
    let kinds = ["is_board", "Kind::", "Siding::", "PanelSiding", "BoardSiding"];
    let mut known = 0;
    for (_, path, code) in sources() {
        let at_home = path.starts_with("job/siding/") || path == "wording/siding.rs";
        for name in kinds.into_iter().filter(|name| word(&code, name)) {
            assert!(at_home, "{path} names `{name}`: ask `job.siding()` instead");
            known += 1;
        }
    }
    assert!(known > 3, "the search for kinds of siding found only {known}");
}

#[test]
fn no_test_file_is_forgotten() {
    let main = std::fs::read_to_string(root().join("tests/it/main.rs")).unwrap();
    for e in std::fs::read_dir(root().join("tests/it")).unwrap() {
        let name = e.unwrap().file_name().to_string_lossy().into_owned();
        if let Some(stem) = name.strip_suffix(".rs").filter(|s| *s != "main") {
            assert!(main.contains(&format!("mod {stem};")), "{name} is not in main.rs");
        }
    }
}
