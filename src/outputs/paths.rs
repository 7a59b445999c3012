//! Names and paths of what is written, by the rules of every system at once: pure functions of text, so
//! that what holds on Windows is tested everywhere.

use std::path::{Path, PathBuf};

use crate::finding::files::NameFault;

/// Names that Windows keeps for devices, whatever ending follows and in whatever case.
const DEVICES: [&str; 6] = ["CON", "PRN", "AUX", "NUL", "CONIN$", "CONOUT$"];
/// Devices that are numbered, 0 to 9 and the raised 1, 2 and 3.
const NUMBERED: [&str; 2] = ["COM", "LPT"];

/// What keeps a single name from standing for one file or folder on every system.
pub fn name_fault(name: &str) -> Option<NameFault> {
    let forbidden = |c: &char| c.is_control() || "<>:\"/\\|?*".contains(*c);
    if name.is_empty() {
        Some(NameFault::NoName)
    } else if let Some(letter) = name.chars().find(forbidden) {
        Some(NameFault::Letter { letter })
    } else if is_device(name) {
        Some(NameFault::Device)
    } else if name.ends_with(['.', ' ']) {
        Some(NameFault::End)
    } else {
        None
    }
}

/// `con`, `NUL.txt`, `aux .svg`: what stands before the first period counts, its blanks left out.
fn is_device(name: &str) -> bool {
    let stem = name.split('.').next().unwrap_or_default().trim_end_matches(' ').to_uppercase();
    let number = |n: &str| {
        let mut letters = n.chars();
        let one = letters.next().is_some_and(|c| c.is_ascii_digit() || "¹²³".contains(c));
        one && letters.next().is_none()
    };
    DEVICES.contains(&stem.as_str())
        || NUMBERED.iter().any(|d| stem.strip_prefix(d).is_some_and(number))
}

/// The first part of a path, as Windows reads it, that stands for no folder of that name: `\\?\` and
/// `\\server\share` before it, a drive with a root (`C:\a`) or without (`C:a`), both slashes.
pub fn path_fault(path: &str) -> Option<(String, NameFault)> {
    if path.starts_with(r"\\.\") || path.starts_with("//./") {
        return Some((path.to_owned(), NameFault::Device));
    }
    let verbatim = path.strip_prefix(r"\\?\");
    let rest = match verbatim.map(|v| (v.strip_prefix(r"UNC\"), v)) {
        Some((Some(unc), _)) => after_share(unc),
        Some((None, local)) => local,
        None if path.starts_with(r"\\") || path.starts_with("//") => after_share(&path[2..]),
        None => path,
    };
    let rest = after_drive(rest);
    // In a path that begins with `\\?\` a slash is a letter of a name, and no name may hold one.
    let parts = rest.split(|c| c == '\\' || (verbatim.is_none() && c == '/'));
    let fault = |part: &str| match part {
        "" | "." | ".." => None,
        _ => name_fault(part).map(|fault| (part.to_owned(), fault)),
    };
    parts.into_iter().find_map(fault)
}

/// What follows `server\share`.
fn after_share(path: &str) -> &str {
    let mut parts = path.splitn(3, ['\\', '/']);
    parts.nth(2).unwrap_or_default()
}

fn after_drive(path: &str) -> &str {
    let drive = |p: &str| p.as_bytes().first().is_some_and(u8::is_ascii_alphabetic);
    match path.get(1..2) {
        Some(":") if drive(path) => &path[2..],
        _ => path,
    }
}

/// Whether a path written with slashes leads to a file inside a folder, on every system.
pub fn is_inside(path: &str) -> bool {
    path.split('/').all(|part| part != "." && part != ".." && name_fault(part).is_none())
}

/// A file inside a folder, part by part: on Windows a path that begins with `\\?\` takes no slashes.
pub fn within(folder: &Path, path: &str) -> PathBuf {
    path.split('/').fold(folder.to_owned(), |at, part| at.join(part))
}

/// The name of a drawing's folder of results.
pub fn folder_name(stem: Option<&str>) -> String {
    let name = format!("{}-layout", stem.unwrap_or("drawing"));
    // `aux.old-layout` would be a device, as every `aux.` is.
    if is_device(&name) { name.replacen('.', "-", 1) } else { name }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_that_windows_keeps_or_changes_are_known() {
        // "Naming Files, Paths, and Namespaces" of the Win32 documentation lists them.
        for name in
            ["con", "CON", "Prn.txt", "aux", "NUL.tar.gz", "com1", "COM9.svg", "lpt0", "COM¹"]
        {
            assert_eq!(name_fault(name), Some(NameFault::Device), "{name}");
        }
        for name in ["con .txt", "conin$", "CONOUT$"] {
            assert_eq!(name_fault(name), Some(NameFault::Device), "{name}");
        }
        for name in ["results.", "results ", "...", "a. ."] {
            assert_eq!(name_fault(name), Some(NameFault::End), "{name}");
        }
        for letter in "<>:\"/\\|?*\u{0}\u{1f}\n".chars() {
            let found = name_fault(&format!("a{letter}b"));
            assert_eq!(found, Some(NameFault::Letter { letter }), "{letter:?}");
        }
        assert_eq!(name_fault(""), Some(NameFault::NoName));
        for name in
            ["console", "con-layout", "com10", "comx", "lpt", ".hidden", "a.b", "Größe 2", "null"]
        {
            assert_eq!(name_fault(name), None, "{name}");
        }
    }

    #[test]
    fn paths_are_read_as_windows_reads_them() {
        for path in [
            r"C:\jobs\house-layout",
            r"C:house-layout",
            r"..\out",
            "out/sheets",
            r"\\server\share\out",
            "//server/share$/out",
            r"\\?\C:\jobs\out",
            r"\\?\UNC\server\share\out",
            r"\out",
            "C:",
            r"C:\",
            ".",
            "",
        ] {
            assert_eq!(path_fault(path), None, "{path}");
        }
        let device = |part: &str| Some((part.to_owned(), NameFault::Device));
        assert_eq!(path_fault(r"C:con"), device("con"));
        assert_eq!(path_fault(r"C:\jobs\Aux.old\out"), device("Aux.old"));
        assert_eq!(path_fault("jobs/nul"), device("nul"));
        assert_eq!(path_fault(r"\\.\COM1"), device(r"\\.\COM1"));
        assert_eq!(path_fault(r"\\?\C:\lpt1"), device("lpt1"));
        assert_eq!(path_fault(r"\\server\share\com2\x"), device("com2"));
        let end = Some(("out.".to_owned(), NameFault::End));
        assert_eq!((path_fault(r"C:\out."), path_fault("out./sheets")), (end.clone(), end));
        // A stream of a file, a second drive, a slash that is a letter.
        let letter = |part: &str, letter| Some((part.to_owned(), NameFault::Letter { letter }));
        assert_eq!(path_fault(r"out:more"), letter("out:more", ':'));
        assert_eq!(path_fault(r"C:\D:\out"), letter("D:", ':'));
        assert_eq!(path_fault(r"\\?\C:\a/b"), letter("a/b", '/'));
    }

    #[test]
    fn only_paths_that_stay_inside_are_taken() {
        for path in ["layout.json", "sheets/01-cover.svg", "zone-1-gable/sheets/02-front.png"] {
            assert!(is_inside(path), "{path}");
        }
        for path in [
            "../x",
            "a/../../x",
            "/etc/x",
            "a//b",
            "a/",
            "C:x",
            r"a\b",
            "con",
            "a/nul.svg",
            "",
            ".",
        ] {
            assert!(!is_inside(path), "{path}");
        }
    }

    #[test]
    fn a_file_inside_is_joined_part_by_part() {
        let joined = within(Path::new("out"), "sheets/01-cover.svg");
        assert_eq!(joined, Path::new("out").join("sheets").join("01-cover.svg"));
        assert_eq!(joined.components().count(), 3);
    }

    #[test]
    fn the_folder_of_results_has_a_name_that_no_system_keeps() {
        for stem in ["con", "house", "a.b", "aux.", "nul "] {
            assert_eq!(name_fault(&folder_name(Some(stem))), None, "{stem}");
        }
        assert_eq!(folder_name(None), "drawing-layout");
        assert_eq!(folder_name(Some("Aux.v2.old")), "Aux-v2.old-layout");
    }
}
