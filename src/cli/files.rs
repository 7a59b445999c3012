//! Files in, and files out: what may be written where. How it is written, so that an interrupted run
//! leaves whole what stood there, is in `staging`.

use std::fs;
use std::io::Read;
use std::path::{Path, PathBuf};

use super::staging;

use crate::finding::Refusal;
use crate::finding::files::{FileFinding, OutputRefusal, OutputTarget};
use crate::outputs::file::OutputFile;
use crate::outputs::names::{FILE_NAMES, is_sheet_name};

/// A path as a finding has it.
fn shown(path: &Path) -> String {
    path.display().to_string()
}

fn out_refused(refusal: OutputRefusal) -> Refusal {
    Refusal::new(FileFinding::OutRefused { refusal })
}

/// Why something could not be written, as the system says.
pub(super) fn out_failed(target: OutputTarget, error: &std::io::Error) -> Refusal {
    Refusal::new(FileFinding::OutFailed { target, system_says: error.to_string() })
}

/// The bytes of a file, or of standard input for `-`.
///
/// # Errors
/// `file-unreadable` with the system's reason.
pub fn read(path: &Path) -> Result<Vec<u8>, Refusal> {
    let result = if path == Path::new("-") {
        let mut bytes = Vec::new();
        std::io::stdin().lock().read_to_end(&mut bytes).map(|_| bytes)
    } else {
        fs::read(path)
    };
    result.map_err(|e| {
        let (path, system_says) = (shown(path), e.to_string());
        Refusal::new(FileFinding::FileUnreadable { path, system_says })
    })
}

/// Where results go by default: beside nothing, in the working folder, named after the drawing.
pub fn default_folder(drawing: &Path) -> PathBuf {
    let stem = drawing.file_stem().filter(|_| drawing != Path::new("-"));
    let stem = stem.map_or_else(|| "drawing".to_owned(), |s| s.to_string_lossy().into_owned());
    PathBuf::from(format!("{stem}-layout"))
}

/// Writes a folder of files, all of them or none. The folder may exist if it holds nothing but an
/// earlier layout's files; no path of `sources` may lie in it.
///
/// # Errors
/// `out-refused` when the target is a file, holds other people's files, a source or the place the
/// program was started in; `out-failed` when the system refuses. In both cases the old folder is whole.
pub fn write_folder(folder: &Path, files: &[OutputFile], sources: &[&Path]) -> Result<(), Refusal> {
    let fail =
        |e: std::io::Error| out_failed(OutputTarget::WholeFolder { path: shown(folder) }, &e);
    if folder.exists() {
        check_target(folder, sources)?;
    }
    // Where the folder is a link, what it leads to is replaced.
    let real = if folder.exists() { folder.canonicalize().map_err(fail)? } else { folder.into() };
    staging::replace(&real, files).map_err(fail)
}

/// Writes a few files into a folder, each to a temporary sibling that is then renamed; what else
/// stands there is left alone.
///
/// # Errors
/// `out-refused` when the folder is a file, or one of the files is a source or a folder; `out-failed`
/// when the system refuses.
pub fn write_beside(folder: &Path, files: &[OutputFile], sources: &[&Path]) -> Result<(), Refusal> {
    let fail =
        |e: std::io::Error| out_failed(OutputTarget::FilesInFolder { path: shown(folder) }, &e);
    if folder.exists() && !folder.is_dir() {
        return Err(not_a_folder(folder));
    }
    for (name, _) in files {
        let path = folder.join(name);
        if sources.iter().any(|s| same(s, &path)) {
            return Err(out_refused(OutputRefusal::IsASource { path: shown(&path) }));
        }
        if path.is_dir() {
            return Err(out_refused(OutputRefusal::IsAFolder { path: shown(&path) }));
        }
    }
    fs::create_dir_all(folder).map_err(fail)?;
    staging::put(folder, files).map_err(fail)
}

fn same(a: &Path, b: &Path) -> bool {
    matches!((a.canonicalize(), b.canonicalize()), (Ok(a), Ok(b)) if a == b)
}

/// Refuses when one of `files` stands in the folder already.
///
/// # Errors
/// `out-refused` with its path.
pub fn none_there(folder: &Path, files: &[OutputFile]) -> Result<(), Refusal> {
    match files.iter().map(|f| folder.join(&f.0)).find(|p| p.exists()) {
        None => Ok(()),
        Some(path) => Err(out_refused(OutputRefusal::AlreadyThere { path: shown(&path) })),
    }
}

fn not_a_folder(folder: &Path) -> Refusal {
    out_refused(OutputRefusal::NotAFolder { path: shown(folder) })
}

/// The first thing in a folder that no layout wrote, by its path in the folder.
fn foreign_item(folder: &Path) -> std::io::Result<Option<String>> {
    for entry in fs::read_dir(folder)? {
        let entry = entry?;
        let name = entry.file_name().to_string_lossy().into_owned();
        let is_dir = entry.file_type()?.is_dir();
        if name == "sheets" && is_dir {
            for sheet in fs::read_dir(entry.path())? {
                let sheet = sheet?;
                let name = sheet.file_name().to_string_lossy().into_owned();
                if sheet.file_type()?.is_dir() || !is_sheet_name(&name) {
                    return Ok(Some(format!("sheets/{name}")));
                }
            }
        } else if name.starts_with("zone-") && is_dir {
            // The set of a zone with lap siding of its own.
            if let Some(other) = foreign_item(&entry.path())? {
                return Ok(Some(format!("{name}/{other}")));
            }
        } else if (is_dir || !FILE_NAMES.contains(&name.as_str())) && !staging::left(&entry.path())
        {
            return Ok(Some(name));
        }
    }
    Ok(None)
}

fn check_target(folder: &Path, sources: &[&Path]) -> Result<(), Refusal> {
    if !folder.is_dir() {
        return Err(not_a_folder(folder));
    }
    let unreadable =
        |e: std::io::Error| out_failed(OutputTarget::UnreadableFolder { path: shown(folder) }, &e);
    let whole = folder.canonicalize().map_err(unreadable)?;
    if let Some(source) =
        sources.iter().find(|s| s.canonicalize().is_ok_and(|s| s.starts_with(&whole)))
    {
        let (path, source) = (shown(folder), shown(source));
        return Err(out_refused(OutputRefusal::HoldsASource { path, source }));
    }
    if std::env::current_dir().is_ok_and(|here| here.starts_with(&whole)) {
        return Err(out_refused(OutputRefusal::IsWorkingFolder { path: shown(folder) }));
    }
    match foreign_item(folder).map_err(unreadable)? {
        None => Ok(()),
        Some(other) => {
            Err(out_refused(OutputRefusal::HoldsOtherFiles { path: shown(folder), other }))
        }
    }
}
