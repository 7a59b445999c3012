//! Names of files and folders.

use crate::clean::{Destination, clean};
use crate::layout::Layout;

/// Names that a layout or a check may write into a folder, whichever features were on.
pub const FILE_NAMES: [&str; 19] = [
    "layout.json",
    "overlay.dxf",
    "overlay.pdf",
    "overlay-alone.dxf",
    "sheets.pdf",
    "takeoff.xlsx",
    "takeoff.json",
    "takeoff.csv",
    "takeoff-by-wall.csv",
    "cut-list.csv",
    "story-pole.csv",
    "report.txt",
    "review.html",
    "problems.svg",
    "check.txt",
    "compare.json",
    "compare.txt",
    "compare.xlsx",
    "compare.pdf",
];

/// How the name of a zone's folder begins.
pub const ZONE: &str = "zone-";

/// Whether a sheet's file has this name: `02-front-elevation.svg`.
pub fn is_sheet_name(name: &str) -> bool {
    let stem = name.strip_suffix(".svg").or_else(|| name.strip_suffix(".png"));
    stem.and_then(|s| s.split_once('-'))
        .is_some_and(|(number, _)| number.len() >= 2 && number.bytes().all(|b| b.is_ascii_digit()))
}

/// Whether a path in a folder of results has the name of one: in the folder itself, among its sheets, or in
/// the set of a zone.
pub fn is_own_name(path: &str) -> bool {
    let inner = match path.split_once('/') {
        Some((zone, inner)) if zone.starts_with(ZONE) => inner,
        _ => path,
    };
    match inner.split_once('/') {
        None => FILE_NAMES.contains(&inner),
        Some((folder, name)) => folder == "sheets" && is_sheet_name(name),
    }
}

/// The folder of a set inside the house's own: none for the house.
pub fn set_folder(layout: &Layout) -> Option<String> {
    let zone = layout.zone.as_ref()?;
    let number = layout.job.zone.iter().position(|z| z.name == *zone)? + 1;
    let slug = clean(zone, Destination::FileName { words: usize::MAX, letters: 30 });
    Some(format!("{ZONE}{number}-{slug}").trim_end_matches('-').to_owned())
}

#[cfg(test)]
mod tests {
    use super::is_sheet_name;

    #[test]
    fn names_of_sheets_are_known_from_others() {
        for name in ["01-cover.svg", "02-front-elevation.png", "104-cuts.svg"] {
            assert!(is_sheet_name(name), "{name}");
        }
        for name in ["notes.svg", "01-cover.pdf", "1-cover.svg", "a1-b.png", "01cover.svg"] {
            assert!(!is_sheet_name(name), "{name}");
        }
    }
}
