//! Random houses and the second set: the same bytes for the same seed, and files ezdxf finds no
//! fault in.

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};

use serde::Deserialize;

use crate::venv::python;

#[derive(Deserialize)]
struct Findings {
    errors: Vec<String>,
    fixes: Vec<String>,
    entities: usize,
}

fn files(folder: &Path) -> Vec<PathBuf> {
    let mut found: Vec<PathBuf> =
        fs::read_dir(folder).unwrap().map(|e| e.unwrap().path()).collect();
    found.sort();
    found
}

fn draw(folder: &Path, first: &str, count: &str) {
    let words = ["--first", first, "--count", count].map(Path::new);
    python("tests/samples/random_houses.py", &[&[folder], &words[..]].concat());
}

fn assert_sound(folder: &Path, count: usize) {
    let mut drawings = files(folder);
    drawings.retain(|p| p.extension().is_some_and(|e| e == "dxf"));
    let said = python(
        "tests/reference/audit_each.py",
        &drawings.iter().map(PathBuf::as_path).collect::<Vec<_>>(),
    );
    let found: BTreeMap<String, Findings> = serde_json::from_str(&said).unwrap();
    assert_eq!(found.len(), count);
    for (name, f) in found {
        assert!(f.errors.is_empty() && f.fixes.is_empty(), "{name}: {:?} {:?}", f.errors, f.fixes);
        assert!(f.entities > 0, "{name} is empty");
    }
}

#[test]
fn a_seed_gives_the_same_bytes_alone_or_among_others() {
    let [all, one] = [tempfile::tempdir().unwrap(), tempfile::tempdir().unwrap()];
    draw(all.path(), "20", "6");
    draw(one.path(), "23", "1");
    let alone = files(one.path());
    assert_eq!(alone.len(), 3);
    for file in alone {
        let among = all.path().join(file.file_name().unwrap());
        assert!(fs::read(&file).unwrap() == fs::read(&among).unwrap(), "{}", file.display());
    }
}

#[test]
fn fifty_random_houses_pass_an_independent_audit() {
    let folder = tempfile::tempdir().unwrap();
    draw(folder.path(), "1", "50");
    assert_sound(folder.path(), 50);
}

#[test]
fn the_second_set_passes_an_independent_audit() {
    let folder = tempfile::tempdir().unwrap();
    python("tests/samples/second_set.py", &[folder.path()]);
    assert_sound(folder.path(), 7);
}
