//! Writing at the side and putting in place by one rename, so that whoever looks, at whatever moment
//! the program is stopped, finds the old results whole or the new ones.
//!
//! A folder is made as `.lapwright-XXXX/new` beside its target and exchanged with it in one step;
//! where the file system knows no exchange, in two, and the next run mends what was stopped between
//! them. A live run holds a lock on what it stages: what no one holds was left by a run that was
//! stopped, and the next run beside it clears it away.

use std::fs::{self, File, TryLockError};
use std::io::{self, Write};
use std::path::Path;

use tempfile::TempDir;

use crate::outputs::file::OutputFile;
use crate::wording::command::kept_in;

/// How the name of everything staged begins.
const PREFIX: &str = ".lapwright-";
/// In a staging folder: the lock, holding the target's name; the new folder; the old one on its way.
const LOCK: &str = "lock";
const NEW: &str = "new";
const OLD: &str = "old";

/// Whether a name is that of something staged.
fn is_staged(name: &str) -> bool {
    name.starts_with(PREFIX)
}

/// Whether a stopped run has left this: a file, or a folder with nothing but what is staged in one, that
/// no live run holds.
pub(super) fn left(path: &Path) -> bool {
    let named = path.file_name().is_some_and(|n| is_staged(&n.to_string_lossy()));
    named && if path.is_dir() { ours(path) && free(&path.join(LOCK)) } else { free(path) }
}

/// Makes `folder` hold exactly `files`: all of them, or it stays as it is.
pub(super) fn replace(folder: &Path, files: &[OutputFile]) -> io::Result<()> {
    replace_by(folder, files, exchange)
}

fn replace_by(
    folder: &Path,
    files: &[OutputFile],
    exchange: fn(&Path, &Path) -> io::Result<()>,
) -> io::Result<()> {
    let parent = folder.parent().filter(|p| !p.as_os_str().is_empty()).unwrap_or(Path::new("."));
    fs::create_dir_all(parent)?;
    let (stage, _lock) = staged(parent, folder)?;
    let new = stage.path().join(NEW);
    fs::create_dir(&new)?;
    for (name, bytes) in files {
        let path = new.join(name);
        if let Some(dir) = path.parent() {
            fs::create_dir_all(dir)?;
        }
        let mut file = File::create(&path)?;
        file.write_all(bytes)?;
        // On the disk before the name is: a rename may get there first otherwise.
        file.sync_all()?;
    }
    open_to_all(&new, parent, 0o777, 0o700);
    let old = stage.path().join(OLD);
    if !folder.exists() {
        fs::rename(&new, folder)?;
    } else if exchange(&new, folder).is_err() {
        fs::rename(folder, &old)?;
        if let Err(e) = fs::rename(&new, folder) {
            if fs::rename(&old, folder).is_err() {
                // The next run puts it back: it must not go with the staging folder.
                let kept = stage.keep().join(OLD);
                let words = kept_in(&e.to_string(), &kept.display().to_string());
                return Err(io::Error::new(e.kind(), words));
            }
            return Err(e);
        }
    }
    sync(parent);
    // What stood there before goes with the staging folder. Where it cannot be cleared away, the
    // results stand all the same.
    let _ = stage.close();
    Ok(())
}

/// Puts each of `files` into `folder`, in the place of what has its name.
pub(super) fn put(folder: &Path, files: &[OutputFile]) -> io::Result<()> {
    let mut ready = Vec::new();
    {
        let _quiet = cleared(folder);
        for (name, _) in files {
            let file = tempfile::Builder::new().prefix(PREFIX).tempfile_in(folder)?;
            // A file system without locks goes without.
            let _ = file.as_file().try_lock();
            ready.push((folder.join(name), file));
        }
    }
    for ((_, file), (_, bytes)) in ready.iter_mut().zip(files) {
        file.write_all(bytes)?;
        file.as_file().sync_all()?;
        open_to_all(file.path(), folder, 0o666, 0o600);
    }
    for (path, file) in ready {
        file.persist(path).map_err(|e| e.error)?;
    }
    sync(folder);
    Ok(())
}

/// A staging folder beside `target`, held by its lock.
fn staged(parent: &Path, target: &Path) -> io::Result<(TempDir, File)> {
    let _quiet = cleared(parent);
    let stage = tempfile::Builder::new().prefix(PREFIX).tempdir_in(parent)?;
    let mut lock = File::create(stage.path().join(LOCK))?;
    let _ = lock.try_lock();
    if let Some(name) = target.file_name() {
        lock.write_all(name.as_encoded_bytes())?;
    }
    Ok((stage, lock))
}

/// Holds a folder while something in it is staged or cleared, so that one run does not take for dead
/// what another is just about to lock. Some file systems have no locks: then it goes without.
fn quiet(folder: &Path) -> Option<File> {
    let file = File::open(folder).ok()?;
    for _ in 0..100 {
        match file.try_lock() {
            Ok(()) => return Some(file),
            Err(TryLockError::WouldBlock) => {
                std::thread::sleep(std::time::Duration::from_millis(10));
            }
            Err(TryLockError::Error(_)) => return None,
        }
    }
    None
}

/// Clears away what runs that were stopped have left in a folder; holds it still for what comes next.
fn cleared(folder: &Path) -> Option<File> {
    let quiet = quiet(folder)?;
    for entry in fs::read_dir(folder).into_iter().flatten().flatten() {
        let name = entry.file_name();
        if !is_staged(&name.to_string_lossy()) {
            continue;
        }
        let path = entry.path();
        match entry.file_type() {
            Ok(t) if t.is_file() && free(&path) => {
                let _ = fs::remove_file(&path);
            }
            Ok(t) if t.is_dir() && ours(&path) && free(&path.join(LOCK)) => {
                give_back(folder, &path);
                let _ = fs::remove_dir_all(&path);
            }
            _ => {}
        }
    }
    Some(quiet)
}

/// Whether no live run holds this file; one that is not there is held by none.
fn free(path: &Path) -> bool {
    match File::open(path) {
        Ok(file) => file.try_lock().is_ok(),
        Err(e) => e.kind() == io::ErrorKind::NotFound,
    }
}

/// Whether a folder holds nothing but what is staged in one.
fn ours(path: &Path) -> bool {
    let known = |e: fs::DirEntry| [LOCK, NEW, OLD].iter().any(|k| e.file_name() == **k);
    fs::read_dir(path).is_ok_and(|list| list.flatten().all(known))
}

/// Puts an old folder back whose run was stopped between two renames.
fn give_back(parent: &Path, stage: &Path) {
    let (old, name) = (stage.join(OLD), fs::read_to_string(stage.join(LOCK)).unwrap_or_default());
    let plain = Path::new(&name).file_name().is_some_and(|n| n == name.as_str());
    if plain && old.is_dir() && !parent.join(&name).exists() {
        let _ = fs::rename(old, parent.join(&name));
    }
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

/// The folder's names on the disk, where the system can be asked for that.
fn sync(folder: &Path) {
    if let Ok(dir) = File::open(folder) {
        let _ = dir.sync_all();
    }
}

/// A temporary file or folder is private; results are not: they get the rights of the folder they go
/// to, as far as `most` goes, and their owner's `least`.
fn open_to_all(path: &Path, into: &Path, most: u32, least: u32) {
    #[cfg(unix)]
    {
        use std::os::unix::fs::PermissionsExt;
        // The umask is not to be had without unsafe code: the folder's own mode stands for it.
        let mode = fs::metadata(into).map_or(most & 0o755, |m| m.permissions().mode());
        let _ = fs::set_permissions(path, fs::Permissions::from_mode(mode & most | least));
    }
    #[cfg(not(unix))]
    let _ = (path, into, most, least);
}

#[cfg(test)]
mod tests {
    use super::*;

    fn names(folder: &Path) -> Vec<String> {
        let mut out: Vec<String> = fs::read_dir(folder)
            .unwrap()
            .map(|e| e.unwrap().file_name().to_string_lossy().into_owned())
            .collect();
        out.sort();
        out
    }

    fn files(text: &str) -> Vec<OutputFile> {
        vec![("a".to_owned(), text.into()), ("sheets/b".to_owned(), text.into())]
    }

    #[test]
    fn a_folder_is_replaced_whole_with_and_without_an_exchange() {
        let without: fn(&Path, &Path) -> io::Result<()> =
            |_, _| Err(io::ErrorKind::Unsupported.into());
        for way in [exchange, without] {
            let dir = tempfile::tempdir().unwrap();
            let out = dir.path().join("out");
            for text in ["one", "two"] {
                replace_by(&out, &files(text), way).unwrap();
                assert_eq!(fs::read_to_string(out.join("sheets/b")).unwrap(), text);
                assert_eq!(names(dir.path()), ["out"]);
            }
        }
    }

    #[test]
    fn what_stopped_runs_left_is_cleared_and_what_live_ones_hold_is_not() {
        let dir = tempfile::tempdir().unwrap();
        let stage = |name: &str| {
            let path = dir.path().join(name);
            fs::create_dir_all(path.join(NEW)).unwrap();
            File::create(path.join(LOCK)).unwrap()
        };
        let live = stage(".lapwright-live");
        live.lock().unwrap();
        drop(stage(".lapwright-dead"));
        fs::create_dir(dir.path().join(".lapwright-bare")).unwrap();
        fs::write(dir.path().join(".lapwright-file"), "x").unwrap();
        // Somebody's own, whatever its name.
        fs::create_dir_all(dir.path().join(".lapwright-notes/mine")).unwrap();
        replace(&dir.path().join("out"), &files("x")).unwrap();
        assert_eq!(names(dir.path()), [".lapwright-live", ".lapwright-notes", "out"]);
    }

    #[test]
    fn a_folder_taken_away_by_a_stopped_run_is_given_back() {
        let dir = tempfile::tempdir().unwrap();
        let stage = dir.path().join(".lapwright-dead");
        fs::create_dir_all(stage.join(OLD)).unwrap();
        fs::write(stage.join(OLD).join("a"), "old").unwrap();
        fs::write(stage.join(LOCK), "house").unwrap();
        replace(&dir.path().join("other"), &files("x")).unwrap();
        assert_eq!(names(dir.path()), ["house", "other"]);
        assert_eq!(fs::read_to_string(dir.path().join("house/a")).unwrap(), "old");
    }
}
