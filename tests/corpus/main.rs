//! Every drawing of a folder of other people's drawings, named by `LAPWRIGHT_CORPUS`: each ends in
//! a layout or in named findings, none panics or hangs.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::disallowed_types,
    reason = "a test or bench may stop at the first thing that is not as it should be"
)]

use std::path::{Path, PathBuf};

use lapwright::diag::{Notes, Severity};
use lapwright::job::Job;
use lapwright::model::drawing::Drawing;
use lapwright::pipeline;
use lapwright::read::{self, Limits};

fn corpus() -> PathBuf {
    let dir = std::env::var_os("LAPWRIGHT_CORPUS")
        .expect("set LAPWRIGHT_CORPUS to the folder of drawings");
    let dir = PathBuf::from(dir);
    // A relative folder is meant from the project's own.
    if dir.is_absolute() { dir } else { Path::new(env!("CARGO_MANIFEST_DIR")).join(dir) }
}

fn drawings() -> Vec<PathBuf> {
    let mut out = Vec::new();
    for part in ["real", "stress"] {
        for e in std::fs::read_dir(corpus().join(part)).unwrap() {
            out.push(e.unwrap().path());
        }
    }
    out.retain(|p| p.extension().is_some_and(|x| x == "dxf"));
    out.sort();
    assert!(out.len() > 40, "only {} drawings", out.len());
    out
}

fn read(path: &Path) -> (Result<Drawing, lapwright::diag::Refusal>, Notes) {
    let mut notes = Notes::default();
    let bytes = std::fs::read(path).unwrap();
    let d = read::drawing(&bytes, "corpus", &Limits::default(), &mut notes);
    (d, notes)
}

#[test]
fn every_drawing_ends_in_a_layout_or_named_findings() {
    let mut refused = 0;
    for path in drawings() {
        let bytes = std::fs::read(&path).unwrap();
        let mut notes = Notes::default();
        match pipeline::layout(&bytes, "corpus", &Job::default(), &mut notes, &mut |_| {}) {
            Ok(_) => {}
            Err(r) => {
                refused += 1;
                assert!(!r.0.code.is_empty() && !r.0.help.is_empty(), "{}", path.display());
            }
        }
    }
    // None of them follows our convention.
    assert!(refused > 40);
}

#[test]
fn ascii_and_binary_twins_read_the_same() {
    let mut pairs = 0;
    for path in drawings() {
        let name = path.file_name().unwrap().to_string_lossy().into_owned();
        if !name.ends_with("_ascii.dxf") {
            continue;
        }
        let twin = path.with_file_name(name.replace("_ascii.dxf", "_binary.dxf"));
        let (a, b) = (read(&path).0.unwrap(), read(&twin).0.unwrap());
        assert_eq!(a.items.len(), b.items.len(), "{name}");
        for (x, y) in a.items.iter().zip(&b.items) {
            assert_eq!(a.layers[x.layer].name, b.layers[y.layer].name, "{name}");
            assert_eq!(
                std::mem::discriminant(&x.shape),
                std::mem::discriminant(&y.shape),
                "{name}"
            );
        }
        pairs += 1;
    }
    assert!(pairs >= 3, "{pairs}");
}

#[test]
fn real_drawings_are_read_without_loss() {
    let mut seen = 0;
    for path in drawings().into_iter().filter(|p| p.parent().is_some_and(|d| d.ends_with("real"))) {
        let (d, notes) = read(&path);
        let d = d.unwrap();
        assert!(d.items.len() > 100, "{}: {}", path.display(), d.items.len());
        assert_eq!(notes.count(Severity::Error), 0);
        seen += 1;
    }
    assert!(seen >= 5);
}

#[test]
fn a_shed_whose_walls_are_loose_lines_is_refused_with_its_layers_named() {
    let path = drawings().into_iter().find(|p| p.to_string_lossy().contains("E3_")).unwrap();
    let bytes = std::fs::read(path).unwrap();
    let r = pipeline::reading(&bytes, "e3", &Job::default(), &mut Notes::default()).unwrap_err();
    assert_eq!(r.0.code, "no-walls");
}
