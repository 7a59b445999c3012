//! Random houses: the generator gives the same bytes for the same seed, and files ezdxf finds no
//! fault in.

use std::path::{Path, PathBuf};

use crate::samples::{assert_same_bytes, assert_sound, files};
use crate::venv::python;

/// Draws `count` houses from `first` into a folder.
pub(crate) fn draw(folder: &Path, first: u32, count: u32) {
    let numbers = [first.to_string(), count.to_string()];
    let out = folder.to_str().unwrap();
    let args = [out, "--first", &numbers[0], "--count", &numbers[1]];
    python("tests/samples/random_houses.py", &args);
}

#[test]
fn a_seed_gives_the_same_bytes_alone_or_among_others() {
    let [all, one] = [tempfile::tempdir().unwrap(), tempfile::tempdir().unwrap()];
    draw(all.path(), 20, 6);
    draw(one.path(), 23, 1);
    for extension in ["dxf", "toml", "json"] {
        let alone: PathBuf = one.path().join("house-00023").with_extension(extension);
        assert_same_bytes(&all.path().join(alone.file_name().unwrap()), &alone);
    }
}

#[test]
fn fifty_houses_pass_an_independent_audit() {
    let folder = tempfile::tempdir().unwrap();
    draw(folder.path(), 1, 50);
    assert_sound(&files(folder.path(), "dxf"));
}
