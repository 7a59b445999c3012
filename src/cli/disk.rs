//! What is asked of the disk in several places.

use std::fs::{self, File};
use std::path::Path;

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
