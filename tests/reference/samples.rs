//! The sample drawings are what their scripts draw, and ezdxf finds no fault in them.

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};

use serde::Deserialize;

use crate::venv::{python, root};

#[derive(Deserialize)]
struct Findings {
    errors: Vec<String>,
    fixes: Vec<String>,
    entities: usize,
}

/// What ezdxf's audit finds in each file, by file name.
fn audit(files: &[PathBuf]) -> BTreeMap<String, Findings> {
    serde_json::from_str(&python("tests/reference/audit.py", files)).unwrap()
}

pub(crate) fn assert_sound(files: &[PathBuf]) {
    let found = audit(files);
    assert_eq!(found.len(), files.len());
    for (name, f) in found {
        assert!(f.errors.is_empty() && f.fixes.is_empty(), "{name}: {:?} {:?}", f.errors, f.fixes);
        assert!(f.entities > 0, "{name} is empty");
    }
}

pub(crate) fn files(folder: &Path, extension: &str) -> Vec<PathBuf> {
    let mut found: Vec<PathBuf> = fs::read_dir(folder)
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .filter(|path| path.extension().is_some_and(|e| e == extension))
        .collect();
    found.sort();
    assert!(!found.is_empty(), "no .{extension} in {}", folder.display());
    found
}

fn names(paths: &[PathBuf]) -> Vec<&str> {
    paths.iter().map(|p| p.file_name().unwrap().to_str().unwrap()).collect()
}

#[track_caller]
pub(crate) fn assert_same_bytes(kept: &Path, drawn: &Path) {
    let [a, b] = [kept, drawn].map(|p| fs::read(p).unwrap());
    if a != b {
        let at = a.iter().zip(&b).take_while(|(x, y)| x == y).count();
        panic!("{} differs from what its script draws, from byte {at}", kept.display());
    }
}

#[test]
fn samples_are_what_their_scripts_draw() {
    let folder = tempfile::tempdir().unwrap();
    let [drawings, expected] = ["drawings", "expected.json"].map(|n| folder.path().join(n));
    let args =
        ["--drawings".as_ref(), drawings.as_os_str(), "--expected".as_ref(), expected.as_ref()];
    python("tests/samples/draw.py", &args);
    let [kept, drawn] = [root().join("sample-drawings"), drawings].map(|d| files(&d, "dxf"));
    assert_eq!(names(&kept), names(&drawn), "every sample drawing has a script that draws it");
    for (kept, drawn) in kept.iter().zip(&drawn) {
        assert_same_bytes(kept, drawn);
    }
    assert_same_bytes(&root().join("tests/samples/expected.json"), &expected);
}

#[test]
fn samples_pass_an_independent_audit() {
    assert_sound(&files(&root().join("sample-drawings"), "dxf"));
}
