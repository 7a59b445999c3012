//! A whole folder put in the place of another, so that whoever looks, at whatever moment the program is
//! stopped, finds the old results whole or the new ones. Both change places in one step; where the file
//! system knows no such step, in two, and `recovery` mends what was stopped between them.

use std::fs;
use std::io;
use std::path::{Path, PathBuf};

use super::disk::{is_there, sync};
use super::stage::{self, NEW, OLD, Stage};
use super::standing::{Standing, survey};
use crate::outputs::file::OutputFile;
use crate::outputs::marker::Marker;

/// What two folders change places by.
type Exchange = fn(&Path, &Path) -> io::Result<()>;

/// Why a folder was not replaced; it is as it was.
#[derive(Debug)]
pub(super) enum NotReplaced {
    /// Nothing can be staged beside it.
    Stage(io::Error),
    /// The new files cannot be written.
    Write(io::Error),
    /// The folder cannot be moved.
    Move(io::Error),
    /// What stood there was taken away and cannot be put back: where it is.
    Kept(io::Error, PathBuf),
    /// What stands there was changed since it was looked at.
    Changed,
}

/// The folder that a path lies in.
pub(super) fn parent_of(folder: &Path) -> &Path {
    folder.parent().filter(|p| !p.as_os_str().is_empty()).unwrap_or(Path::new("."))
}

/// Makes `folder` hold exactly `files`. `before` is what stood there when it was looked at.
pub(super) fn replace(
    folder: &Path,
    files: &[&OutputFile],
    before: &Standing,
) -> Result<(), NotReplaced> {
    replace_by(folder, files, before, exchange)
}

fn replace_by(
    folder: &Path,
    files: &[&OutputFile],
    before: &Standing,
    exchange: Exchange,
) -> Result<(), NotReplaced> {
    let parent = parent_of(folder);
    fs::create_dir_all(parent).map_err(NotReplaced::Stage)?;
    let list = Marker::of(files.iter().copied()).text();
    let stage = Stage::new(parent, folder.file_name(), &list).map_err(NotReplaced::Stage)?;
    let rights = if folder.is_dir() { folder } else { parent };
    stage.fill(files, rights).map_err(NotReplaced::Write)?;
    let moved = put(&stage, folder, before, exchange);
    // Whatever is new by now was not put, or stood there before.
    stage.discard(NEW);
    if moved.is_ok() {
        stage.discard(OLD);
    }
    sync(parent);
    moved
}

fn put(
    stage: &Stage,
    folder: &Path,
    before: &Standing,
    exchange: Exchange,
) -> Result<(), NotReplaced> {
    let (new, old) = (stage.at(NEW), stage.at(OLD));
    if !is_there(folder) {
        return fs::rename(&new, folder).map_err(NotReplaced::Move);
    }
    // Looked at once more when nobody can reach it by its name any more.
    let same = |taken: &Path| survey(taken).is_ok_and(|now| now == *before);
    if exchange(&new, folder).is_ok() {
        if same(&new) {
            return Ok(());
        }
        return match exchange(&new, folder) {
            Ok(()) => Err(NotReplaced::Changed),
            Err(e) => Err(kept(stage, NEW, e)),
        };
    }
    fs::rename(folder, &old).map_err(NotReplaced::Move)?;
    // Nothing is done between the two, so that the folder is away as briefly as can be.
    let fault = match fs::rename(&new, folder) {
        Ok(()) if same(&old) => return Ok(()),
        Ok(()) => match fs::rename(folder, &new) {
            Ok(()) => NotReplaced::Changed,
            Err(e) => return Err(kept(stage, OLD, e)),
        },
        Err(e) => NotReplaced::Move(e),
    };
    match fs::rename(&old, folder) {
        Ok(()) => Err(fault),
        Err(e) => Err(kept(stage, OLD, e)),
    }
}

/// What stood there stays in the stage for its owner.
fn kept(stage: &Stage, name: &str, error: io::Error) -> NotReplaced {
    let kept = stage.at(stage::KEPT);
    let at = if fs::rename(stage.at(name), &kept).is_ok() { kept } else { stage.at(name) };
    NotReplaced::Kept(error, at)
}

/// Two folders change places in one step.
#[cfg(any(target_os = "linux", target_os = "android", target_os = "macos"))]
fn exchange(a: &Path, b: &Path) -> io::Result<()> {
    use rustix::fs::{CWD, RenameFlags, renameat_with};
    Ok(renameat_with(CWD, a, CWD, b, RenameFlags::EXCHANGE)?)
}

#[cfg(not(any(target_os = "linux", target_os = "android", target_os = "macos")))]
fn exchange(_: &Path, _: &Path) -> io::Result<()> {
    Err(io::ErrorKind::Unsupported.into())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn names(folder: &Path) -> Vec<String> {
        let entries = fs::read_dir(folder).unwrap();
        let mut out: Vec<String> =
            entries.map(|e| e.unwrap().file_name().to_string_lossy().into_owned()).collect();
        out.sort();
        out
    }

    /// Two files and their list.
    fn files(text: &str) -> Vec<OutputFile> {
        let mut out: Vec<OutputFile> =
            vec![("a".to_owned(), text.into()), ("sheets/b".to_owned(), text.into())];
        let list = Marker::of(&out).text().into_bytes();
        out.push((crate::outputs::marker::MARKER.to_owned(), list));
        out
    }

    fn none(_: &Path, _: &Path) -> io::Result<()> {
        Err(io::ErrorKind::Unsupported.into())
    }

    fn write(out: &Path, text: &str, way: Exchange) -> Result<(), NotReplaced> {
        let before = if out.exists() { survey(out).unwrap() } else { Standing::default() };
        let files = files(text);
        replace_by(out, &files.iter().collect::<Vec<_>>(), &before, way)
    }

    #[test]
    fn a_folder_is_replaced_whole_with_and_without_an_exchange() {
        let ways: [Exchange; 2] = [exchange, none];
        for way in ways {
            let dir = tempfile::tempdir().unwrap();
            let out = dir.path().join("out");
            for text in ["one", "two"] {
                write(&out, text, way).unwrap();
                assert_eq!(fs::read_to_string(out.join("sheets/b")).unwrap(), text);
                assert_eq!(names(dir.path()), ["out"]);
            }
        }
    }

    #[test]
    fn what_is_changed_after_it_was_looked_at_is_put_back() {
        let ways: [Exchange; 2] = [exchange, none];
        for way in ways {
            let dir = tempfile::tempdir().unwrap();
            let out = dir.path().join("out");
            write(&out, "one", way).unwrap();
            let before = survey(&out).unwrap();
            fs::write(out.join("a"), "mine").unwrap();
            fs::write(out.join("mine"), "mine").unwrap();
            let new = files("two");
            let found = replace_by(&out, &new.iter().collect::<Vec<_>>(), &before, way);
            assert!(matches!(found, Err(NotReplaced::Changed)), "{found:?}");
            assert_eq!(fs::read_to_string(out.join("a")).unwrap(), "mine");
            assert_eq!(fs::read_to_string(out.join("mine")).unwrap(), "mine");
            assert_eq!(names(dir.path()), ["out"]);
        }
    }
}
