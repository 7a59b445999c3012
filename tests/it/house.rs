//! The house rules of the source: floors, foreign crates in one room, small files.

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

use crate::support::root;

/// Rooms by floor; imports go only downward, and stages never import one another.
const FLOORS: [(&str, u8); 28] = [
    ("main", 7),
    ("cli", 6),
    ("lib", 5),
    ("pipeline", 4),
    ("read", 3),
    ("normalize", 3),
    ("extract", 3),
    ("receive", 3),
    ("course", 3),
    ("seam", 3),
    ("joint", 3),
    ("trim", 3),
    ("verify", 3),
    ("takeoff", 3),
    ("work", 3),
    ("annotate", 3),
    ("write", 3),
    ("model", 2),
    ("job", 2),
    ("geom", 1),
    ("units", 1),
    ("diag", 1),
    ("packing", 1),
    ("sources", 1),
    ("typeface", 1),
    ("pitch", 1),
    ("cores", 1),
    ("", 0),
];

/// Foreign crates with the one room that may name each. serde and schemars derive on plain data.
const CRATES: [(&str, &[&str]); 25] = [
    ("clap", &["cli"]),
    ("clap_complete", &["cli"]),
    ("clap_mangen", &["cli"]),
    ("toml", &["cli"]),
    ("miette", &["cli"]),
    ("indicatif", &["cli"]),
    ("tempfile", &["cli"]),
    ("rustix", &["cli"]),
    ("rayon", &["cores"]),
    ("sha2", &["pipeline"]),
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
    ("serde_json", &["write"]),
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
                // Plain data may name one another: the layout echoes the job, the job names roles.
                ("model", "job") | ("job", "model") => true,
                ("lib", _) => true,
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
