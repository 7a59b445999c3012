//! All files of a house: its own set, and that of each zone in a folder of its own.

use super::file::{OutputFile, pictured};
use super::names::set_folder;
use super::{overlay, set};
use crate::finding::Refusal;
use crate::layout::set::LaidSets;

/// Which files are wanted beside the tables, sheets as SVG and the overlay.
#[derive(Clone, Copy, Debug)]
pub struct Wanted {
    /// PDF and PNG of the sheets.
    pub pictures: bool,
    /// The overlay by itself too.
    pub overlay_alone: bool,
}

/// Files to write.
#[derive(Debug, Default)]
pub struct HouseFiles {
    /// All of them, by their paths in the folder.
    pub files: Vec<OutputFile>,
    /// Names of those that stand in the folder itself.
    pub at_top: Vec<String>,
    /// Numbers of sheets of the sets that have too many for pictures.
    pub large: Vec<usize>,
}

/// The files of every set, those of a zone in a folder of their own.
///
/// # Errors
/// As [`set::files`].
pub fn files(sets: &LaidSets, source: &[u8], wanted: Wanted) -> Result<HouseFiles, Refusal> {
    let mut out = HouseFiles::default();
    for laid in sets.iter() {
        let mut files = set::files(laid, source, wanted.pictures)?;
        let sheets = files.iter().filter(|(n, _)| n.ends_with(".svg")).count();
        out.large.extend((wanted.pictures && !pictured(sheets)).then_some(sheets));
        if wanted.overlay_alone {
            files.push(overlay::alone(laid));
        }
        match set_folder(&laid.layout) {
            Some(inner) => {
                out.files.extend(files.into_iter().map(|(n, b)| (format!("{inner}/{n}"), b)));
            }
            None => {
                let names = files.iter().map(|f| f.0.clone());
                out.at_top = names.filter(|n| !n.contains('/')).collect();
                out.files.extend(files);
            }
        }
    }
    Ok(out)
}
