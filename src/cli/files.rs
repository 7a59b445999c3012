//! Files in, and a folder of files out: written to a temporary sibling and renamed, so that an
//! interrupted run leaves the old folder whole.

use std::fs;
use std::io::{Read, Write};
use std::path::{Path, PathBuf};

use crate::diag::{Note, Refusal};

/// A file to write: its path inside the folder, and its bytes.
pub type Output = (String, Vec<u8>);

fn refusal(code: &'static str, message: String, help: &str) -> Refusal {
    Note::error(code, message, help).into()
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
        refusal(
            "file-unreadable",
            format!("{} cannot be read: {e}", path.display()),
            "Check the path and that you may read the file.",
        )
    })
}

/// Where results go by default: beside nothing, in the working folder, named after the drawing.
pub fn default_folder(drawing: &Path) -> PathBuf {
    let stem = drawing.file_stem().filter(|_| drawing != Path::new("-"));
    let stem = stem.map_or_else(|| "drawing".to_owned(), |s| s.to_string_lossy().into_owned());
    PathBuf::from(format!("{stem}-layout"))
}

/// Writes a folder of files. The folder may exist if it holds nothing but an earlier layout's files.
///
/// # Errors
/// `out-refused` when the target is a file, holds other people's files or holds the source;
/// `out-failed` when the system refuses. In both cases the old folder is whole.
pub fn write_folder(folder: &Path, files: &[Output], source: &Path) -> Result<(), Refusal> {
    let fail = |e: std::io::Error| {
        refusal(
            "out-failed",
            format!("{} cannot be written: {e}", folder.display()),
            "Check free space and that you may write there; what stood there before is untouched.",
        )
    };
    if folder.exists() {
        check_target(folder, source)?;
    }
    let parent = folder.parent().filter(|p| !p.as_os_str().is_empty()).unwrap_or(Path::new("."));
    fs::create_dir_all(parent).map_err(fail)?;
    let fresh = tempfile::Builder::new().prefix(".lapwright-").tempdir_in(parent).map_err(fail)?;
    for (name, bytes) in files {
        let path = fresh.path().join(name);
        if let Some(dir) = path.parent() {
            fs::create_dir_all(dir).map_err(fail)?;
        }
        let mut file = fs::File::create(&path).map_err(fail)?;
        file.write_all(bytes).and_then(|()| file.flush()).map_err(fail)?;
    }
    open_to_all(fresh.path(), 0o777, 0o700);
    swap(folder, fresh, parent).map_err(fail)
}

/// Writes a few files into a folder, each to a temporary sibling that is then renamed; what else
/// stands there is left alone.
///
/// # Errors
/// `out-refused` when the folder is a file or one of the files is the source; `out-failed` when the
/// system refuses.
pub fn write_beside(folder: &Path, files: &[Output], source: &Path) -> Result<(), Refusal> {
    let fail = |e: std::io::Error| {
        refusal(
            "out-failed",
            format!("{} cannot be written: {e}", folder.display()),
            "Check free space and that you may write there.",
        )
    };
    if folder.exists() && !folder.is_dir() {
        return Err(not_a_folder(folder));
    }
    fs::create_dir_all(folder).map_err(fail)?;
    for (name, bytes) in files {
        let path = folder.join(name);
        if let (Ok(s), Ok(p)) = (source.canonicalize(), path.canonicalize())
            && s == p
        {
            return Err(refusal(
                "out-refused",
                format!("{} is the drawing itself", path.display()),
                "Give another folder with --out; the source is never overwritten.",
            ));
        }
        let mut file =
            tempfile::Builder::new().prefix(".lapwright-").tempfile_in(folder).map_err(fail)?;
        file.write_all(bytes).and_then(|()| file.flush()).map_err(fail)?;
        file.persist(&path).map_err(|e| fail(e.error))?;
        open_to_all(&path, 0o666, 0o600);
    }
    Ok(())
}

/// Refuses when one of `files` stands in the folder already.
///
/// # Errors
/// `out-refused` with its path.
pub fn none_there(folder: &Path, files: &[Output]) -> Result<(), Refusal> {
    match files.iter().map(|f| folder.join(&f.0)).find(|p| p.exists()) {
        None => Ok(()),
        Some(path) => Err(refusal(
            "out-refused",
            format!("{} is there already", path.display()),
            "Give another folder, or move that file away; it may hold somebody's work.",
        )),
    }
}

fn not_a_folder(folder: &Path) -> Refusal {
    refusal(
        "out-refused",
        format!("{} is a file, not a folder", folder.display()),
        "Give another folder with --out.",
    )
}

/// Puts the fresh folder in the old one's place: two renames, the first undone if the second fails.
fn swap(folder: &Path, fresh: tempfile::TempDir, parent: &Path) -> std::io::Result<()> {
    if !folder.exists() {
        return fs::rename(fresh.keep(), folder);
    }
    let aside = tempfile::Builder::new().prefix(".lapwright-old-").tempdir_in(parent)?;
    let old = aside.path().join("old");
    fs::rename(folder, &old)?;
    if let Err(e) = fs::rename(fresh.path(), folder) {
        fs::rename(&old, folder)?;
        return Err(e);
    }
    let _gone = fresh.keep();
    Ok(())
}

/// A temporary file or folder is private; results are not: they get the rights of the folder they are
/// in, as far as `most` goes, and their owner's `least`.
fn open_to_all(path: &Path, most: u32, least: u32) {
    #[cfg(unix)]
    {
        use std::os::unix::fs::PermissionsExt;
        // The umask is not to be had without unsafe code: the parent's own mode stands for it.
        let mode = path
            .parent()
            .and_then(|p| fs::metadata(p).ok())
            .map_or(most & 0o755, |m| m.permissions().mode());
        let _ = fs::set_permissions(path, fs::Permissions::from_mode(mode & most | least));
    }
    #[cfg(not(unix))]
    let _ = (path, most, least);
}

/// Names a layout writes, so that a folder with anything else is left alone.
const OURS: [&str; 14] = [
    "layout.json",
    "overlay.dxf",
    "overlay-alone.dxf",
    "sheets.pdf",
    "sheets",
    "takeoff.xlsx",
    "takeoff.json",
    "takeoff.csv",
    "takeoff-by-wall.csv",
    "cut-list.csv",
    "story-pole.csv",
    "report.txt",
    "problems.svg",
    "check.txt",
];

fn check_target(folder: &Path, source: &Path) -> Result<(), Refusal> {
    if !folder.is_dir() {
        return Err(not_a_folder(folder));
    }
    if let (Ok(s), Ok(f)) = (source.canonicalize(), folder.canonicalize())
        && s.starts_with(&f)
    {
        return Err(refusal(
            "out-refused",
            format!("the drawing lies in {}", folder.display()),
            "Give another folder with --out; the source is never overwritten.",
        ));
    }
    let entries = fs::read_dir(folder).map_err(|e| {
        refusal(
            "out-failed",
            format!("{} cannot be read: {e}", folder.display()),
            "Check that you may read it.",
        )
    })?;
    for entry in entries.flatten() {
        let name = entry.file_name();
        if !OURS.iter().any(|o| name == **o) {
            let message = format!(
                "{} holds {}, which no layout wrote",
                folder.display(),
                name.to_string_lossy()
            );
            return Err(refusal(
                "out-refused",
                message,
                "Give an empty or new folder with --out, so that nothing of yours is lost.",
            ));
        }
    }
    Ok(())
}
