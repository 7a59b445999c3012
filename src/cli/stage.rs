//! What is staged at the side before it takes its place: a folder `.lapwright-XXXX` with a lock that its
//! run holds. The lock says whose the folder is and what it is for; a folder without it is somebody
//! else's, whatever its name, and is never touched. A lock that no one holds was left by a run that was
//! stopped: `recovery` sees to it.

use std::collections::BTreeMap;
use std::ffi::{OsStr, OsString};
use std::fs::{self, File, TryLockError};
use std::io::{self, Read, Write};
use std::path::{Path, PathBuf};
use std::time::Duration;

use super::disk::{is_there, open_to_all, sync_all};
use crate::outputs::file::OutputFile;
use crate::outputs::marker::Marker;
use crate::outputs::paths::within;

/// How the name of everything staged begins.
const PREFIX: &str = ".lapwright-";
/// The lock, and its name until it is held and written.
const LOCK: &str = "lock";
const LOCK_MAKING: &str = "lock-making";
/// First line of a lock.
const SIGNATURE: &str = "lapwright-lock/1";
/// Before the name of the folder that is to be replaced.
const TO: &str = "to ";
/// In its place: files go one by one into the folder that the stage lies in.
const IN_PLACE: &str = "in place";
/// Files held open at one time; systems allow some hundreds.
const OPEN_AT_ONCE: usize = 64;

/// Files that are being made: worth nothing until all are.
pub(super) const MAKING: &str = "making";
/// All new files; once folders were exchanged, the old ones.
pub(super) const NEW: &str = "new";
/// What stood there before, on its way out.
pub(super) const OLD: &str = "old";
/// What stood there before and could not be put back: for its owner.
pub(super) const KEPT: &str = "kept";
/// `NEW` and `OLD` once nobody needs them.
const GONE: [(&str, &str); 2] = [(NEW, "gone-new"), (OLD, "gone-old")];

/// A staging folder of this run. It is cleared away at the end, whatever happens, but for what is kept.
pub(super) struct Stage {
    path: PathBuf,
    // Held as long as the folder is there.
    lock: Option<File>,
}

impl Stage {
    /// A folder in `parent` for what replaces its folder `target`; without one, for what goes into
    /// `parent` itself. `list` is the list of the new files, the one that stays beside them included.
    pub(super) fn new(parent: &Path, target: Option<&OsStr>, list: &str) -> io::Result<Self> {
        let mut tries = 3;
        loop {
            let path = tempfile::Builder::new().prefix(PREFIX).tempdir_in(parent)?.keep();
            tries -= 1;
            match locked(&path, target, list) {
                Ok(lock) => return Ok(Stage { path, lock: Some(lock) }),
                // Another run took it for left behind before it was locked.
                Err(e) if tries > 0 && e.kind() == io::ErrorKind::NotFound => {}
                Err(e) => {
                    let _ = fs::remove_file(path.join(LOCK_MAKING));
                    let _ = fs::remove_dir(&path);
                    return Err(e);
                }
            }
        }
    }

    /// The path of what is called so in it.
    pub(super) fn at(&self, name: &str) -> PathBuf {
        self.path.join(name)
    }

    /// The folder's own name.
    fn name(&self) -> &OsStr {
        self.path.file_name().unwrap_or_default()
    }

    /// Writes files where nothing counts yet, then calls them new all at once.
    pub(super) fn fill(&self, files: &[&OutputFile], rights: &Path) -> io::Result<()> {
        let making = self.at(MAKING);
        fs::create_dir(&making)?;
        for some in files.chunks(OPEN_AT_ONCE) {
            let mut open = Vec::new();
            for (name, bytes) in some {
                let path = within(&making, name);
                if let Some(folder) = path.parent().filter(|f| !f.exists()) {
                    fs::create_dir_all(folder)?;
                    open_to_all(folder, rights, 0o777, 0o700);
                }
                let mut file = File::create_new(&path)?;
                file.write_all(bytes)?;
                open_to_all(&path, rights, 0o666, 0o600);
                open.push(file);
            }
            // On the disk before their names are: a rename may get there first otherwise.
            sync_all(&open)?;
        }
        open_to_all(&making, rights, 0o777, 0o700);
        fs::rename(making, self.at(NEW))
    }

    /// `NEW` or `OLD` is not needed any more: from this moment it may be deleted.
    pub(super) fn discard(&self, name: &str) {
        discard(&self.path, name);
    }
}

impl Drop for Stage {
    fn drop(&mut self) {
        clear(&self.path);
        self.lock = None;
        // Some systems keep a file's name as long as it is open.
        let _ = fs::remove_dir(&self.path);
    }
}

/// The lock of a new staging folder: there only once it is held and says what it is.
fn locked(path: &Path, target: Option<&OsStr>, list: &str) -> io::Result<File> {
    let half = path.join(LOCK_MAKING);
    let mut lock = File::create_new(&half)?;
    // A file system without locks goes without: then nobody takes the folder for left behind.
    let _ = lock.try_lock();
    let mut text = format!("{SIGNATURE}\n").into_bytes();
    match target {
        // A name over two lines is not read back: the folder is then left to its owner.
        Some(name) => {
            text.extend(TO.as_bytes());
            text.extend(name.as_encoded_bytes());
        }
        None => text.extend(IN_PLACE.as_bytes()),
    }
    text.push(b'\n');
    text.extend(list.as_bytes());
    lock.write_all(&text)?;
    fs::rename(half, path.join(LOCK))?;
    lock.sync_all()?;
    Ok(lock)
}

fn discard(stage: &Path, name: &str) {
    if let Some((from, to)) = GONE.iter().find(|g| g.0 == name) {
        let _ = fs::rename(stage.join(from), stage.join(to));
    }
}

/// Deletes what is worth nothing any more, the lock last; a folder that still holds something stays, with
/// its lock.
fn clear(stage: &Path) {
    for name in [MAKING, GONE[0].1, GONE[1].1] {
        let _ = fs::remove_dir_all(stage.join(name));
    }
    if [MAKING, NEW, OLD, KEPT, GONE[0].1, GONE[1].1].iter().all(|n| !is_there(&stage.join(n))) {
        let _ = fs::remove_file(stage.join(LOCK));
        let _ = fs::remove_dir(stage);
    }
}

/// A staging folder that a stopped run has left; no other run sees to it as long as this one does.
pub(super) struct Left {
    /// Its path.
    pub(super) path: PathBuf,
    /// What it was for.
    pub(super) purpose: Purpose,
    // Held while it is seen to.
    lock: Option<File>,
}

/// What was staged.
#[derive(Debug, PartialEq, Eq)]
pub(super) enum Purpose {
    /// A whole folder of this name beside the stage, with the hashes of the new files.
    Whole { target: OsString, new: BTreeMap<String, String> },
    /// Files of the folder that the stage lies in, with their hashes.
    InPlace { new: BTreeMap<String, String> },
    /// A whole folder, by a version that kept no lists.
    BeforeLists { target: OsString },
    /// The run was stopped while it made its lock, before anything else.
    Nothing,
}

impl Left {
    pub(super) fn at(&self, name: &str) -> PathBuf {
        self.path.join(name)
    }

    pub(super) fn discard(&self, name: &str) {
        discard(&self.path, name);
    }
}

impl Drop for Left {
    fn drop(&mut self) {
        match self.purpose {
            Purpose::BeforeLists { .. } => {}
            Purpose::Nothing => {
                let _ = fs::remove_file(self.path.join(LOCK_MAKING));
                let _ = fs::remove_dir(&self.path);
            }
            Purpose::Whole { .. } | Purpose::InPlace { .. } => clear(&self.path),
        }
        self.lock = None;
        let _ = fs::remove_dir(&self.path);
    }
}

/// What stopped runs have left in a folder.
pub(super) fn left_in(folder: &Path) -> Vec<Left> {
    staged_in(folder).into_iter().filter_map(|path| left(path).ok()).collect()
}

/// Whether another run stages something in this folder right now.
fn others_in(folder: &Path, own: Option<&OsStr>) -> Vec<OsString> {
    let name = |p: &PathBuf| p.file_name().unwrap_or_default().to_owned();
    let other = |p: &PathBuf| {
        own.is_none_or(|o| name(p) != *o) && matches!(left(p.clone()), Err(NotLeft::Live))
    };
    staged_in(folder).iter().filter(|p| other(p)).map(name).collect()
}

/// Folders by the name of a staging folder that hold a lock, be it half made.
fn staged_in(folder: &Path) -> Vec<PathBuf> {
    let file = |path: PathBuf| fs::symlink_metadata(path).is_ok_and(|m| m.is_file());
    let staged = |e: &fs::DirEntry| {
        let named = e.file_name().as_encoded_bytes().starts_with(PREFIX.as_bytes());
        named
            && e.file_type().is_ok_and(|t| t.is_dir())
            && (file(e.path().join(LOCK)) || file(e.path().join(LOCK_MAKING)))
    };
    fs::read_dir(folder).into_iter().flatten().flatten().filter(staged).map(|e| e.path()).collect()
}

/// Why a folder is not one that a stopped run left.
#[derive(Debug, PartialEq, Eq)]
enum NotLeft {
    /// A run holds it, or nobody can say.
    Live,
    /// It is no staging folder.
    Foreign,
}

fn left(path: PathBuf) -> Result<Left, NotLeft> {
    let whole = is_there(&path.join(LOCK));
    let at = path.join(if whole { LOCK } else { LOCK_MAKING });
    // Some systems lock only what may be written.
    let opened = File::options().read(true).write(true).open(&at).or_else(|_| File::open(&at));
    let mut lock = opened.map_err(|_| NotLeft::Foreign)?;
    match lock.try_lock() {
        Ok(()) => {}
        Err(TryLockError::WouldBlock | TryLockError::Error(_)) => return Err(NotLeft::Live),
    }
    // Another run may have seen to it while this one opened the lock.
    if !is_there(&at) {
        return Err(NotLeft::Foreign);
    }
    let mut text = Vec::new();
    lock.read_to_end(&mut text).map_err(|_| NotLeft::Foreign)?;
    let purpose = if whole { purpose(&path, &text) } else { nothing(&path, &text) };
    let purpose = purpose.ok_or(NotLeft::Foreign)?;
    Ok(Left { path, purpose, lock: Some(lock) })
}

/// What a lock says; none where it is not one of ours.
fn purpose(stage: &Path, text: &[u8]) -> Option<Purpose> {
    let Some(rest) = text.strip_prefix(format!("{SIGNATURE}\n").as_bytes()) else {
        return before_lists(stage, text);
    };
    let end = rest.iter().position(|b| *b == b'\n')?;
    let line = &rest[..end];
    let new = Marker::read(&rest[end + 1..])?.files;
    if line == IN_PLACE.as_bytes() {
        return Some(Purpose::InPlace { new });
    }
    let target = plain_name(line.strip_prefix(TO.as_bytes())?)?;
    Some(Purpose::Whole { target, new })
}

/// A lock that was not finished, be it before its first letter, alone in its folder.
fn nothing(stage: &Path, text: &[u8]) -> Option<Purpose> {
    let alone = fs::read_dir(stage).ok()?.flatten().count() == 1;
    let begun = SIGNATURE.as_bytes().iter().zip(text).all(|(a, b)| a == b);
    (alone && begun).then_some(Purpose::Nothing)
}

/// A stage of a version that kept no lists: its lock holds a plain name, and nothing but `new` and `old`
/// lies beside it.
fn before_lists(stage: &Path, text: &[u8]) -> Option<Purpose> {
    let target = plain_name(text)?;
    let known = |e: fs::DirEntry| [LOCK, NEW, OLD].iter().any(|k| e.file_name() == **k);
    let only = fs::read_dir(stage).ok()?.flatten().all(known);
    (only && stage.join(OLD).is_dir()).then_some(Purpose::BeforeLists { target })
}

/// A name that leads nowhere but into its folder.
fn plain_name(bytes: &[u8]) -> Option<OsString> {
    #[cfg(unix)]
    let name = std::os::unix::ffi::OsStrExt::from_bytes(bytes);
    #[cfg(not(unix))]
    let name = OsStr::new(std::str::from_utf8(bytes).ok()?);
    let name: &OsStr = name;
    let plain = Path::new(name).file_name() == Some(name) && !bytes.contains(&b'\n');
    plain.then(|| name.to_owned())
}

/// How often, and how long apart, a run looks whether another one is done.
const LOOKS: u32 = 100;
const BETWEEN_LOOKS: Duration = Duration::from_millis(100);

/// Waits until no other run stages in a folder; false when one still does after ten seconds.
pub(super) fn wait_for_others(folder: &Path) -> bool {
    for _ in 0..LOOKS {
        if others_in(folder, None).is_empty() {
            return true;
        }
        std::thread::sleep(BETWEEN_LOOKS);
    }
    false
}

/// A stage inside a folder, once no other run has one there: of two that begin at once the one with the
/// lower name goes on and the other steps back.
pub(super) fn alone_in(folder: &Path, list: &str) -> io::Result<Option<Stage>> {
    let mut stage = None;
    for _ in 0..LOOKS {
        let own = match stage.take() {
            Some(own) => own,
            None => Stage::new(folder, None, list)?,
        };
        let others = others_in(folder, Some(own.name()));
        if others.is_empty() {
            return Ok(Some(own));
        }
        if others.iter().all(|o| own.name() < o.as_os_str()) {
            stage = Some(own);
        }
        std::thread::sleep(BETWEEN_LOOKS);
    }
    Ok(None)
}

#[cfg(test)]
impl Stage {
    /// The run is stopped here: nothing is cleared away, and nobody holds the lock any more.
    pub(super) fn stopped(self) -> PathBuf {
        let this = std::mem::ManuallyDrop::new(self);
        let _ = this.lock.as_ref().map(File::unlock);
        this.path.clone()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_lock_is_read_back_and_nothing_else_is_one() {
        let dir = tempfile::tempdir().unwrap();
        let file: OutputFile = ("sheets/01-a.svg".to_owned(), b"abc".to_vec());
        let list = Marker::of([&file]);
        for target in [Some(OsStr::new("house-layout")), None] {
            let path = Stage::new(dir.path(), target, &list.text()).unwrap().stopped();
            let purpose = left(path).map(|l| {
                let path = l.path.clone();
                (
                    std::mem::replace(
                        &mut { l }.purpose,
                        Purpose::BeforeLists { target: OsString::new() },
                    ),
                    path,
                )
            });
            let (purpose, path) = purpose.unwrap_or_else(|e| panic!("{e:?}"));
            let new = list.files.clone();
            assert_eq!(
                purpose,
                match target {
                    Some(t) => Purpose::Whole { target: t.to_owned(), new },
                    None => Purpose::InPlace { new },
                }
            );
            fs::remove_dir_all(path).unwrap();
        }
        for text in ["", "mine", "a/b", "..", "lapwright-lock/1\n", "lapwright-lock/1\nto ../x\n"] {
            let path = dir.path().join(".lapwright-x");
            fs::create_dir_all(path.join("mine")).unwrap();
            fs::write(path.join(LOCK), text).unwrap();
            assert!(matches!(left(path), Err(NotLeft::Foreign)), "{text}");
        }
    }

    #[test]
    fn of_two_stages_in_one_folder_one_is_alone() {
        let dir = tempfile::tempdir().unwrap();
        let list = Marker::default().text();
        let first = alone_in(dir.path(), &list).unwrap().unwrap();
        let path = dir.path().to_owned();
        let second = std::thread::spawn(move || alone_in(&path, &Marker::default().text()));
        std::thread::sleep(BETWEEN_LOOKS * 3);
        assert!(!second.is_finished());
        drop(first);
        assert!(second.join().unwrap().unwrap().is_some());
        assert_eq!(fs::read_dir(dir.path()).unwrap().count(), 0);
    }
}
