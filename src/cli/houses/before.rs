//! Whether a house was laid out before: by the same program, of the same files, and not touched since.

use std::fs;

use crate::cli::house::Ready;
use crate::cli::standing::survey;
use crate::layout::houses::HouseFigures;
use crate::outputs::paths::within;
use crate::pipeline::houses::figures_again;

/// The figures of a house that stands finished in its folder; none where it is to be laid out. What is its
/// owner's besides the results does not count.
pub(super) fn finished(ready: &Ready, name: &str) -> Option<HouseFigures> {
    let folder = &ready.place.folder;
    let standing = survey(folder).ok()?;
    let same = standing.made_of.is_some() && standing.made_of == ready.place.made_of;
    if !same || !standing.edited.is_empty() || !standing.missing.is_empty() {
        return None;
    }
    let is_layout = |n: &&String| *n == "layout.json" || n.ends_with("/layout.json");
    let mut sets = Vec::new();
    for file in standing.own.keys().filter(is_layout) {
        sets.push(fs::read(within(folder, file)).ok()?);
    }
    figures_again(name, &sets)
}
