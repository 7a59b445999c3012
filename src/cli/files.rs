//! Files in, and files out: what may be written where, so that nobody's files are lost. How it is
//! written, so that an interrupted run leaves whole what stood there, is in `whole` and `in_place`.

use std::fs;
use std::io::{self, Read};
use std::path::{Path, PathBuf};

use super::disk::is_there;
use super::in_place::{self, Change, NotPut};
use super::place::Place;
use super::recovery::{Recovered, recover};
use super::stage;
use super::standing::{Standing, survey};
use super::whole::{self, NotReplaced, parent_of};

use crate::finding::Refusal;
use crate::finding::files::{FileFinding, NameFault, OutputRefusal, OutputTarget};
use crate::outputs::file::OutputFile;
use crate::outputs::marker::{MARKER, Marker};
use crate::outputs::paths::{path_fault, within};
use crate::wording::command::kept_in;

/// A path as a finding has it.
fn shown(path: &Path) -> String {
    path.display().to_string()
}

fn out_refused(refusal: OutputRefusal) -> Refusal {
    Refusal::new(FileFinding::OutRefused { refusal })
}

/// Why something could not be written, as the system says.
pub(super) fn out_failed(target: OutputTarget, error: &io::Error) -> Refusal {
    Refusal::new(FileFinding::OutFailed { target, system_says: error.to_string() })
}

/// The bytes of a file, or of standard input for `-`.
///
/// # Errors
/// `file-unreadable` with the system's reason.
pub fn read(path: &Path) -> Result<Vec<u8>, Refusal> {
    let result = if path == Path::new("-") {
        let mut bytes = Vec::new();
        io::stdin().lock().read_to_end(&mut bytes).map(|_| bytes)
    } else {
        fs::read(path)
    };
    result.map_err(|e| {
        let (path, system_says) = (shown(path), e.to_string());
        Refusal::new(FileFinding::FileUnreadable { path, system_says })
    })
}

/// Puts back what stopped runs have taken away from a folder.
pub fn recovered(folder: &Path) -> Vec<Recovered> {
    let mut out = recover(parent_of(folder));
    if folder.is_dir() {
        out.extend(recover(folder));
    }
    out
}

/// Whether a place takes a layout: it is new, empty, or holds nothing but what the program wrote and
/// nobody changed; no path of `sources` lies in it. With `replace` it may hold anything else besides.
///
/// # Errors
/// `out-refused` with what stands against it; `out-failed` when it cannot be looked into.
pub fn ready(place: &Place, sources: &[PathBuf], replace: bool) -> Result<(), Refusal> {
    look(place, sources, replace).map(|_| ())
}

fn look(place: &Place, sources: &[PathBuf], replace: bool) -> Result<Standing, Refusal> {
    let folder = &place.folder;
    check_name(folder)?;
    if !is_there(folder) {
        return Ok(Standing::default());
    }
    check_target(folder, sources)?;
    if !stage::wait_for_others(folder) {
        return Err(out_refused(OutputRefusal::AnotherRun { path: shown(folder) }));
    }
    let standing = survey(folder)
        .map_err(|e| out_failed(OutputTarget::UnreadableFolder { path: shown(folder) }, &e))?;
    if !replace {
        check_standing(place, &standing)?;
    }
    Ok(standing)
}

fn check_standing(place: &Place, standing: &Standing) -> Result<(), Refusal> {
    let path = shown(&place.folder);
    if !standing.is_own() {
        let edited = standing.edited.keys().cloned().collect();
        let strangers = standing.strangers.clone();
        return Err(out_refused(OutputRefusal::HoldsOtherFiles { path, strangers, edited }));
    }
    match standing.drawing.clone().filter(|d| place.by_default && !place.is_of(d)) {
        Some(drawing) => Err(out_refused(OutputRefusal::HoldsAnotherDrawing { path, drawing })),
        None => Ok(()),
    }
}

/// Writes a folder of files with the list of them, all or none. What the place must be like, see
/// [`ready`]. With `replace`, files of these names are written over whatever they hold, and all others
/// that are not the program's own stay.
///
/// # Errors
/// As [`ready`], and `out-failed` when the system refuses. The folder is then as it was.
pub fn write_folder(
    place: &Place,
    files: &[OutputFile],
    sources: &[PathBuf],
    replace: bool,
) -> Result<(), Refusal> {
    let folder = &place.folder;
    let target = || OutputTarget::WholeFolder { path: shown(folder) };
    let fail = |e: io::Error| out_failed(target(), &e);
    recovered(folder);
    let before = look(place, sources, replace)?;
    // Where the folder is a link, what it leads to is replaced.
    let real = if folder.exists() { folder.canonicalize() } else { std::path::absolute(folder) };
    let real = real.map_err(fail)?;
    check_names(folder, files)?;
    let list = Marker::of(files).of_drawing(&place.drawing).made_of(place.made_of.as_deref());
    let list = (MARKER.to_owned(), list.text().into_bytes());
    let all: Vec<&OutputFile> = files.iter().chain([&list]).collect();
    let written = |name: &str| all.iter().any(|f| f.0 == name);
    let mut others = before.strangers.iter().chain(before.edited.keys());
    if !(others.any(|name| !written(name)) || is_mount(&real)) {
        match whole::replace(&real, &all, &before) {
            Ok(()) => return Ok(()),
            // What cannot be exchanged as a whole may take files one by one.
            Err(NotReplaced::Stage(e) | NotReplaced::Move(e)) if !real.is_dir() => {
                return Err(fail(e));
            }
            Err(NotReplaced::Stage(_) | NotReplaced::Move(_)) => {}
            Err(NotReplaced::Write(e)) => return Err(fail(e)),
            Err(NotReplaced::Kept(e, kept)) => return Err(not_whole(target(), &e, &kept)),
            Err(NotReplaced::Changed) => return Err(changed(folder)),
        }
    }
    let gone = |name: &&str| !written(name) && *name != MARKER;
    let remove: Vec<&str> = before.own.keys().map(String::as_str).filter(gone).collect();
    put(folder, &real, target(), &Change { put: &all, remove: &remove, known: &before.own })
}

fn changed(folder: &Path) -> Refusal {
    out_refused(OutputRefusal::ChangedMeanwhile { path: shown(folder) })
}

/// What stood there is in two places.
fn not_whole(target: OutputTarget, error: &io::Error, kept: &Path) -> Refusal {
    let system_says = kept_in(&error.to_string(), &shown(kept));
    Refusal::new(FileFinding::OutFailed { target, system_says })
}

fn put(folder: &Path, real: &Path, target: OutputTarget, change: &Change) -> Result<(), Refusal> {
    in_place::put(real, change).map_err(|fault| match fault {
        NotPut::Failed(e) => out_failed(target, &e),
        NotPut::Kept(e, kept) => not_whole(target, &e, &kept),
        NotPut::Changed => changed(folder),
        NotPut::AnotherRun => out_refused(OutputRefusal::AnotherRun { path: shown(folder) }),
    })
}

/// Writes a few files into a folder that may hold others, which are left alone, and puts them on its
/// list. A file of such a name that is there is replaced only if the program wrote it and nobody changed
/// it, or with `replace`.
///
/// # Errors
/// `out-refused` when the folder is a file, one of the files is a source or a folder, or is not the
/// program's own; `out-failed` when the system refuses. The folder is then as it was.
pub fn write_beside(
    folder: &Path,
    files: &[OutputFile],
    sources: &[PathBuf],
    replace: bool,
) -> Result<(), Refusal> {
    let target = || OutputTarget::FilesInFolder { path: shown(folder) };
    let fail = |e: io::Error| out_failed(target(), &e);
    check_name(folder)?;
    if folder.exists() && !folder.is_dir() {
        return Err(not_a_folder(folder));
    }
    recovered(folder);
    for (name, _) in files {
        let path = within(folder, name);
        if sources.iter().any(|s| same(s, &path)) {
            return Err(out_refused(OutputRefusal::IsASource { path: shown(&path) }));
        }
    }
    check_names(folder, files)?;
    let standing =
        if folder.exists() { survey(folder).map_err(fail)? } else { Standing::default() };
    if !replace {
        check_files(folder, files, &standing)?;
    }
    let mut list = Marker::of(files);
    (list.drawing, list.made_of) = (standing.drawing.clone(), standing.made_of.clone());
    for (name, hash) in standing.own.iter().chain(&standing.edited) {
        list.files.entry(name.clone()).or_insert_with(|| hash.clone());
    }
    let list = (MARKER.to_owned(), list.text().into_bytes());
    let all: Vec<&OutputFile> = files.iter().chain([&list]).collect();
    fs::create_dir_all(folder).map_err(fail)?;
    put(folder, folder, target(), &Change { put: &all, remove: &[], known: &standing.own })
}

fn same(a: &Path, b: &Path) -> bool {
    matches!((a.canonicalize(), b.canonicalize()), (Ok(a), Ok(b)) if a == b)
}

fn not_a_folder(folder: &Path) -> Refusal {
    out_refused(OutputRefusal::NotAFolder { path: shown(folder) })
}

/// Refuses a new folder without a name, as `new/..`, and what Windows takes for something else than a
/// folder of that name.
fn check_name(folder: &Path) -> Result<(), Refusal> {
    let path = shown(folder);
    let fault = if !folder.exists() && folder.file_name().is_none() {
        Some((path.clone(), NameFault::NoName))
    } else {
        path_fault(&path).filter(|_| cfg!(windows))
    };
    match fault {
        Some((part, name_fault)) => {
            Err(out_refused(OutputRefusal::BadName { path, part, name_fault }))
        }
        None => Ok(()),
    }
}

/// Refuses where a folder stands in the place of a file that is to be written, or a file or a link in the
/// place of a folder: neither is replaced by a file, whatever the user says of files.
fn check_names(folder: &Path, files: &[OutputFile]) -> Result<(), Refusal> {
    for (name, _) in files {
        let path = within(folder, name);
        if fs::symlink_metadata(&path).is_ok_and(|m| m.is_dir()) {
            return Err(out_refused(OutputRefusal::IsAFolder { path: shown(&path) }));
        }
        for (end, _) in name.match_indices('/') {
            let above = within(folder, &name[..end]);
            if fs::symlink_metadata(&above).is_ok_and(|m| !m.is_dir()) {
                return Err(not_a_folder(&above));
            }
        }
    }
    Ok(())
}

/// Refuses where one of the files is there and is somebody's. Which name it has is the system's to say:
/// some take `Check.txt` for `check.txt`.
fn check_files(folder: &Path, files: &[OutputFile], there: &Standing) -> Result<(), Refusal> {
    let taken = |(name, bytes): &&OutputFile| {
        let path = within(folder, name);
        is_there(&path)
            && !there.own.contains_key(name)
            && !fs::read(&path).is_ok_and(|b| b == *bytes)
    };
    let names = files.iter().filter(taken).map(|f| f.0.clone());
    // A list of files that is none of ours is somebody's too.
    let list = folder.join(MARKER);
    let readable = fs::read(&list).is_ok_and(|text| Marker::read(&text).is_some());
    let list = (is_there(&list) && !readable).then(|| MARKER.to_owned());
    let (edited, strangers): (Vec<String>, Vec<String>) =
        names.chain(list).partition(|name| there.edited.contains_key(name));
    if edited.is_empty() && strangers.is_empty() {
        return Ok(());
    }
    let path = shown(folder);
    Err(out_refused(OutputRefusal::HoldsOtherFiles { path, strangers, edited }))
}

fn check_target(folder: &Path, sources: &[PathBuf]) -> Result<(), Refusal> {
    if !folder.is_dir() {
        return Err(not_a_folder(folder));
    }
    let unreadable =
        |e: io::Error| out_failed(OutputTarget::UnreadableFolder { path: shown(folder) }, &e);
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
    Ok(())
}

/// Whether a folder is where another file system begins: then it cannot be exchanged for another.
fn is_mount(folder: &Path) -> bool {
    #[cfg(unix)]
    {
        use std::os::unix::fs::MetadataExt;
        let device = |path: &Path| fs::metadata(path).map(|m| m.dev()).ok();
        folder.is_dir() && device(folder) != device(parent_of(folder))
    }
    #[cfg(not(unix))]
    {
        let _ = folder;
        false
    }
}
