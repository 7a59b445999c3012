//! What is asked of the disk in several places.

use std::fs::{self, File};
use std::io;
use std::path::Path;
use std::thread::{Builder, scope};

/// Files that are waited for at one time: a disk takes what many ask of it at once in few turns.
const WAITED_FOR: usize = 16;

/// Whether anything of this name is there, be it a link to nowhere.
pub(super) fn is_there(path: &Path) -> bool {
    fs::symlink_metadata(path).is_ok()
}

/// The folder's names on the disk, where the system can be asked for that.
pub(super) fn sync(folder: &Path) {
    if let Ok(dir) = File::open(folder) {
        let _ = dir.sync_all();
    }
}

/// Files on the disk, all that was written to them; where the system gives no threads, one after the other.
///
/// # Errors
/// What the system says of the first of them that fails.
pub(super) fn sync_all(files: &[File]) -> io::Result<()> {
    let each = |some: &[File]| some.iter().try_for_each(File::sync_all);
    scope(|all| {
        let shares = files.chunks(files.len().div_ceil(WAITED_FOR).max(1));
        let begun = shares.map(|s| (s, Builder::new().spawn_scoped(all, move || each(s))));
        let begun: Vec<_> = begun.collect();
        begun.into_iter().try_for_each(|(share, waiting)| match waiting {
            Ok(waiting) => waiting.join().unwrap_or_else(|_| each(share)),
            Err(_) => each(share),
        })
    })
}

/// What is staged is private; results are not: they get the rights of the folder they go to, as far as
/// `most` goes, and their owner's `least`.
pub(super) fn open_to_all(path: &Path, rights: &Path, most: u32, least: u32) {
    #[cfg(unix)]
    {
        use std::os::unix::fs::PermissionsExt;
        // The umask is not to be had without unsafe code: the folder's own mode stands for it.
        let mode = fs::metadata(rights).map_or(most & 0o755, |m| m.permissions().mode());
        let _ = fs::set_permissions(path, fs::Permissions::from_mode(mode & most | least));
    }
    #[cfg(not(unix))]
    let _ = (path, rights, most, least);
}
