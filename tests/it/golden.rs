//! What a change changes: the text outputs of every sample as they were, and a digest of every output,
//! pictures too. They say nothing of being right, which the other tests do; they show in a diff what is
//! different, and that debug and release builds write the same bytes.
//!
//! `LAPWRIGHT_GOLDEN=write cargo test --test it golden` writes them anew; look at the diff.

use std::collections::BTreeMap;
use std::path::PathBuf;

use lapwright::finding::Findings;
use lapwright::pipeline;
use sha2::{Digest, Sha256};

use crate::support::{job, root, samples};

/// Outputs kept whole.
const KEPT: [&str; 3] = ["report.txt", "takeoff.csv", "cut-list.csv"];
/// The digests, in the form that `sha256sum -c` reads.
const DIGESTS: &str = "sha256sums";

/// Everything kept of one sample, by file name.
fn golden(stem: &str, drawing: &std::path::Path) -> BTreeMap<String, Vec<u8>> {
    let source = std::fs::read(drawing).unwrap();
    let name = format!("{stem}.dxf");
    let sets =
        pipeline::layout(&source, &name, &job(drawing), &mut Findings::default(), &mut |_| {});
    let mut outputs = lapwright::outputs::set::files(&sets.unwrap().house, &source, true).unwrap();
    outputs.sort();
    let line = |(name, bytes): &(String, Vec<u8>)| {
        let digest: String = Sha256::digest(bytes).iter().map(|b| format!("{b:02x}")).collect();
        format!("{digest}  {name}\n")
    };
    let digests: String = outputs.iter().map(line).collect();
    let mut out: BTreeMap<String, Vec<u8>> =
        outputs.into_iter().filter(|(n, _)| KEPT.contains(&n.as_str())).collect();
    assert_eq!(out.len(), KEPT.len());
    out.insert(DIGESTS.to_owned(), digests.into_bytes());
    out
}

/// The first line in which two texts differ.
fn difference(was: &[u8], is: &[u8]) -> String {
    let (was, is) = (String::from_utf8_lossy(was), String::from_utf8_lossy(is));
    let (mut a, mut b) = (was.lines(), is.lines());
    for n in 1.. {
        match (a.next(), b.next()) {
            (None, None) => break,
            (x, y) if x != y => return format!("line {n}\n  was {x:?}\n  is  {y:?}"),
            _ => {}
        }
    }
    "line endings".to_owned()
}

#[test]
fn the_outputs_of_every_sample_are_as_they_were() {
    let write = std::env::var_os("LAPWRIGHT_GOLDEN").is_some_and(|v| v == "write");
    let mut changed = Vec::new();
    for (stem, drawing) in samples() {
        let folder: PathBuf = root().join("tests/golden").join(&stem);
        for (name, bytes) in golden(&stem, &drawing) {
            let path = folder.join(&name);
            if write {
                std::fs::create_dir_all(&folder).unwrap();
                std::fs::write(&path, &bytes).unwrap();
                continue;
            }
            let was = std::fs::read(&path).unwrap_or_default();
            if was != bytes {
                changed.push(format!("{stem}/{name}: {}", difference(&was, &bytes)));
            }
        }
    }
    assert!(
        changed.is_empty(),
        "{}\nIf that is meant: LAPWRIGHT_GOLDEN=write cargo test --test it golden",
        changed.join("\n")
    );
}
