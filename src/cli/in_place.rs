//! Files put one by one into a folder that cannot be exchanged as a whole (a mount point, a folder whose
//! parent is read-only) or that holds others' files too; the list of files last. What was there goes
//! aside first, so that a run that is stopped or fails in the midst is undone: by itself, or by the next.

use std::collections::BTreeMap;
use std::fs;
use std::io;
use std::path::{Path, PathBuf};

use super::disk::{is_there, sync};
use super::stage::{self, KEPT, NEW, OLD};
use crate::fingerprint::sha256;
use crate::outputs::file::OutputFile;
use crate::outputs::marker::{MARKER, Marker};
use crate::outputs::paths::within;

/// Why files were not put; the folder is as it was, but for what is said to be kept.
#[derive(Debug)]
pub(super) enum NotPut {
    /// They cannot be written or moved.
    Failed(io::Error),
    /// They cannot, and some of what was there could not be put back: where it is.
    Kept(io::Error, PathBuf),
    /// Something was changed since it was looked at.
    Changed,
    /// Another run is at it.
    AnotherRun,
}

/// What goes into a folder and what goes out of it.
pub(super) struct Change<'a> {
    /// New files, the list of files last.
    pub(super) put: &'a [&'a OutputFile],
    /// Files that go.
    pub(super) remove: &'a [&'a str],
    /// What the files that are there are known to hold, by SHA-256: another content is left alone.
    pub(super) known: &'a BTreeMap<String, String>,
}

/// Puts the files.
pub(super) fn put(folder: &Path, change: &Change) -> Result<(), NotPut> {
    let list = Marker::of(change.put.iter().copied());
    let stage = stage::alone_in(folder, &list.text()).map_err(NotPut::Failed)?;
    let stage = stage.ok_or(NotPut::AnotherRun)?;
    stage.fill(change.put, folder).map_err(NotPut::Failed)?;
    let (new, old) = (stage.at(NEW), stage.at(OLD));
    match moved(folder, &new, &old, change) {
        Ok(()) => {
            stage.discard(OLD);
            stage.discard(NEW);
            change.remove.iter().for_each(|name| remove_empty(folder, name));
            sync(folder);
            Ok(())
        }
        Err(fault) => {
            let kept = stage.at(KEPT);
            let sides = Sides { new: &new, old: &old, kept: &kept };
            let undone = undo(folder, &sides, &list.files);
            stage.discard(NEW);
            match (fault, undone.whole) {
                (NotPut::Failed(e), false) => Err(NotPut::Kept(e, kept)),
                (fault, _) => Err(fault),
            }
        }
    }
}

fn moved(folder: &Path, new: &Path, old: &Path, change: &Change) -> Result<(), NotPut> {
    let (list, results): (Vec<&str>, Vec<&str>) =
        change.put.iter().map(|f| f.0.as_str()).partition(|name| *name == MARKER);
    for name in results {
        aside(folder, old, name, change.known)?;
        renamed(&within(new, name), &within(folder, name), folder).map_err(NotPut::Failed)?;
    }
    for name in change.remove {
        aside(folder, old, name, change.known)?;
    }
    for name in list {
        aside(folder, old, name, change.known)?;
        renamed(&within(new, name), &within(folder, name), folder).map_err(NotPut::Failed)?;
    }
    Ok(())
}

/// Takes a file out of the way, where one is.
fn aside(
    folder: &Path,
    old: &Path,
    name: &str,
    known: &BTreeMap<String, String>,
) -> Result<(), NotPut> {
    let (from, to) = (within(folder, name), within(old, name));
    if !is_there(&from) {
        return Ok(());
    }
    renamed(&from, &to, folder).map_err(NotPut::Failed)?;
    let same = |hash: &String| fs::read(&to).is_ok_and(|b| sha256(&b) == *hash);
    if known.get(name).is_none_or(same) { Ok(()) } else { Err(NotPut::Changed) }
}

/// Renames a file into a folder that is made if need be.
fn renamed(from: &Path, to: &Path, rights: &Path) -> io::Result<()> {
    if let Some(folder) = to.parent().filter(|f| !f.exists()) {
        fs::create_dir_all(folder)?;
        if let Ok(meta) = fs::metadata(rights) {
            let _ = fs::set_permissions(folder, meta.permissions());
        }
    }
    fs::rename(from, to)
}

/// Folders of a stage: what is still new, what was taken away, what is kept for its owner.
pub(super) struct Sides<'a> {
    pub(super) new: &'a Path,
    pub(super) old: &'a Path,
    pub(super) kept: &'a Path,
}

/// What came of undoing.
#[derive(Debug, PartialEq, Eq)]
pub(super) struct Undone {
    /// Whether anything had been moved.
    pub(super) any: bool,
    /// Whether all is as it was; else the rest is in `kept`.
    pub(super) whole: bool,
}

/// Takes back what was put into a folder, and puts back what was taken away: the moves the other way
/// round, so that it may be stopped at any moment and begun again. `put` are the hashes of what was to be
/// put: what has another content by now is somebody's, and stays.
pub(super) fn undo(folder: &Path, sides: &Sides, put: &BTreeMap<String, String>) -> Undone {
    let mut any = false;
    for (name, hash) in put {
        let (new, at) = (within(sides.new, name), within(folder, name));
        // What is still new was not put.
        if !is_there(&new) && holds(&at, hash) {
            any = true;
            let _ = renamed(&at, &new, folder);
            remove_empty(folder, name);
        }
    }
    let mut whole = true;
    for name in files_in(sides.old) {
        any = true;
        let (old, at) = (within(sides.old, &name), within(folder, &name));
        whole &= !is_there(&at) && renamed(&old, &at, folder).is_ok();
    }
    if !whole {
        let _ = fs::rename(sides.old, sides.kept);
    } else {
        let _ = fs::remove_dir_all(sides.old);
    }
    Undone { any, whole }
}

fn holds(path: &Path, hash: &str) -> bool {
    fs::symlink_metadata(path).is_ok_and(|m| m.is_file())
        && fs::read(path).is_ok_and(|b| sha256(&b) == hash)
}

/// Every file below a folder of a stage, by its path in it.
fn files_in(folder: &Path) -> Vec<String> {
    let mut out = Vec::new();
    for entry in fs::read_dir(folder).into_iter().flatten().flatten() {
        let Some(name) = entry.file_name().to_str().map(str::to_owned) else { continue };
        if entry.file_type().is_ok_and(|t| t.is_dir()) {
            out.extend(files_in(&entry.path()).into_iter().map(|inner| format!("{name}/{inner}")));
        } else {
            out.push(name);
        }
    }
    out
}

/// Takes away the folders that a file lay in, as far as they are empty.
fn remove_empty(folder: &Path, name: &str) {
    let mut inner = name;
    while let Some((above, _)) = inner.rsplit_once('/') {
        if fs::remove_dir(within(folder, above)).is_err() {
            return;
        }
        inner = above;
    }
}
