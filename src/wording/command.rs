//! What the command says on the terminal of what it did. Names and paths come in ready for it.

use crate::finding::Finding;
use crate::units::counted;

/// A set with too many sheets for pictures.
pub fn no_pictures(sheets: usize) -> String {
    format!("{sheets} sheets are too many for PNG pictures; sheets.pdf holds every one.")
}

/// What taped lengths change.
pub fn by_tape(changes: usize) -> String {
    format!(
        "The taped lengths make {} in the house as drawn; compare.txt tells each, and what it does to courses, pieces, trim and the order.",
        counted(changes, "change")
    )
}

/// The search, while nothing is proven.
pub fn panels_so_far(panels: usize) -> String {
    counted(panels, "panel")
}

/// The search, and the fewest that are proven to be needed.
pub fn panels_and_bound(panels: usize, bound: usize) -> String {
    format!("{}, bound {bound}", counted(panels, "panel"))
}

/// A first job was written, and what the drawing comes to with it.
pub fn started(file: &str, said: &str) -> String {
    format!("Wrote {file}: {said}.")
}

/// Where results went.
pub fn wrote(folder: &str, names: &[&str]) -> String {
    format!("Wrote {folder}: {}", names.join(", "))
}

/// What the system said, and where the results from before are.
pub fn kept_in(system_says: &str, folder: &str) -> String {
    format!("{system_says}; what stood there is kept in {folder}")
}

/// A table that holds the house alone.
pub fn without_zones(names: &[&str]) -> String {
    let names = names.join(", ");
    format!("Without zones that are sets of their own: {names}; see `lapwright layout`.")
}

/// Over the one order for a house and its zones.
pub const ONE_ORDER: &str = "One order for the house and its zones";

/// Warnings that are not listed here.
pub fn warnings_elsewhere(warnings: usize) -> String {
    format!("{}: `lapwright check` tells more.", counted(warnings, "warning"))
}

/// The head over a zone's table.
pub fn zone_head(zone: &str) -> String {
    format!("ZONE {zone}")
}

/// What a finding says and where it is, on one line; its message and the texts of its place pass
/// through `clean`.
pub fn message_with_place(finding: &Finding, message: &str, clean: fn(&str) -> String) -> String {
    let mut out = clean(message);
    if let Some(p) = finding.at {
        out.push_str(&format!(" (at {:.3}, {:.3} in the drawing)", p.x, p.y));
    }
    if let Some(o) = &finding.origin {
        let handle = o.handle.as_deref().map(|h| format!(", handle {}", clean(h)));
        let handle = handle.unwrap_or_default();
        let line = (o.line > 0).then(|| format!("at line {}", o.line));
        let entity = Some(o.entity.word()).filter(|w| !w.is_empty()).map(str::to_owned);
        let told: Vec<String> = entity.into_iter().chain(line).collect();
        out.push_str(&format!(" ({}{handle})", told.join(" ")));
    }
    out
}

/// In the list of files that stands beside results.
pub const ABOUT_MARKER: &str = "What Lapwright wrote here. Any other file, and any of these that was changed, is left alone without --replace.";

/// Why results do not stand beside the drawing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Elsewhere {
    /// It came by standard input.
    StandardInput,
    /// It is a pipe or a device: nothing lies beside it.
    NoFile,
    /// Nothing can be written beside it.
    ReadOnly,
}

/// Where results are by default, and not beside the drawing.
pub fn in_working_folder(why: Elsewhere) -> &'static str {
    match why {
        Elsewhere::StandardInput => {
            "The drawing came by standard input: the results are in the working folder."
        }
        Elsewhere::NoFile => {
            "The drawing is no file in a folder: the results are in the working folder."
        }
        Elsewhere::ReadOnly => {
            "The drawing's folder cannot be written to: the results are in the working folder."
        }
    }
}

/// Results of before that a stopped run had taken away.
pub fn back_in_place(folder: &str) -> String {
    format!("An earlier run was stopped while it wrote {folder}: what was there before is back.")
}

/// Files of before that could not be put back.
pub fn kept_aside(folder: &str) -> String {
    format!(
        "An earlier run was stopped while it wrote; what it had taken away is kept in {folder}: take what you need and delete that folder."
    )
}

/// Said while the library is built for a browser.
pub const BUILDING_PAGE: &str =
    "Building the library for a browser; this takes some minutes the first time.";

/// The page is made.
pub fn page_made(file: &str, bytes: usize) -> String {
    format!(
        "Wrote {file}: the whole program in one page of {:.1} MB. Open it in a browser; it needs no network.",
        bytes as f64 / 1e6
    )
}
