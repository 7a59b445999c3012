//! Where results go: beside the drawing, in a folder named after it, unless the user names another.

use std::fs;
use std::io;
use std::path::{Component, Path, PathBuf};

use crate::clean::terminal;
use crate::outputs::paths::folder_name;
use crate::wording::command::Elsewhere;

/// Where results go.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Place {
    /// The folder.
    pub folder: PathBuf,
    /// The drawing's path.
    pub source: PathBuf,
    /// The drawing as the folder knows it from others of the same name.
    pub drawing: String,
    /// Whether the folder is the default: then it is the drawing's own.
    pub by_default: bool,
    /// Why it is in the working folder and not beside the drawing.
    pub elsewhere: Option<Elsewhere>,
    /// Fingerprint of all that the results follow from.
    pub made_of: Option<String>,
}

impl Place {
    /// Whether results that were written for the drawing of this name are of the same one: a file system
    /// may know it in capitals and in small letters.
    pub(super) fn is_of(&self, recorded: &str) -> bool {
        let own = terminal(&self.drawing);
        let same = || {
            let beside = self.source.with_file_name(recorded);
            let other = if self.elsewhere.is_none() { beside } else { recorded.into() };
            let real = |path: &Path| path.canonicalize().ok();
            real(&self.source).is_some_and(|source| real(&other) == Some(source))
        };
        own == recorded || (own.to_lowercase() == recorded.to_lowercase() && same())
    }
}

/// The place for the results of a drawing.
pub fn of(drawing: &Path, out: Option<&Path>) -> Place {
    let source = drawing.to_owned();
    let name = drawing.file_name().map(|n| n.to_string_lossy().into_owned());
    let name = name.filter(|_| drawing != Path::new("-")).unwrap_or_else(|| "-".to_owned());
    if let Some(out) = out {
        let folder = out.into();
        return Place {
            folder,
            source,
            drawing: name,
            by_default: false,
            elsewhere: None,
            made_of: None,
        };
    }
    let own = own_folder(drawing);
    let Some(why) = elsewhere(drawing, &own) else {
        return Place {
            folder: own,
            source,
            drawing: name,
            by_default: true,
            elsewhere: None,
            made_of: None,
        };
    };
    // Drawings of many folders may meet here: each is known by its whole path.
    let named = why == Elsewhere::ReadOnly;
    let path: PathBuf = drawing.components().filter(|c| *c != Component::CurDir).collect();
    let drawing = if named { path.to_string_lossy().into_owned() } else { "-".to_owned() };
    let own_name = own.file_name().filter(|_| named).map(PathBuf::from);
    let folder = own_name.unwrap_or_else(|| folder_name(None).into());
    Place { folder, source, drawing, by_default: true, elsewhere: Some(why), made_of: None }
}

/// The drawing's own folder, beside it.
fn own_folder(drawing: &Path) -> PathBuf {
    let stem = drawing.file_stem().map(|s| s.to_string_lossy());
    drawing.with_file_name(folder_name(stem.as_deref()))
}

/// Why the folder cannot be beside the drawing.
fn elsewhere(drawing: &Path, own: &Path) -> Option<Elsewhere> {
    if drawing == Path::new("-") {
        return Some(Elsewhere::StandardInput);
    }
    if fs::metadata(drawing).is_ok_and(|m| !m.is_file()) {
        return Some(Elsewhere::NoFile);
    }
    let beside = own.parent().filter(|p| !p.as_os_str().is_empty()).unwrap_or(Path::new("."));
    let here = fs::canonicalize(".").ok();
    // The working folder is no better than itself.
    let same = here.is_some() && beside.canonicalize().ok() == here;
    (!same && !takes_files(own) && !takes_files(beside)).then_some(Elsewhere::ReadOnly)
}

/// Whether files may be made in a folder. One whose owner took away every right to write is left alone
/// even by who may write anywhere.
fn takes_files(folder: &Path) -> bool {
    let Ok(meta) = fs::metadata(folder) else { return false };
    // On Windows the mark says nothing of a folder.
    let marked = cfg!(unix) && meta.permissions().readonly();
    meta.is_dir() && !marked && may_write(folder).is_ok()
}

#[cfg(any(target_os = "linux", target_os = "android", target_os = "macos"))]
fn may_write(folder: &Path) -> io::Result<()> {
    use rustix::fs::{Access, access};
    Ok(access(folder, Access::WRITE_OK | Access::EXEC_OK)?)
}

#[cfg(not(any(target_os = "linux", target_os = "android", target_os = "macos")))]
fn may_write(folder: &Path) -> io::Result<()> {
    tempfile::tempfile_in(folder).map(|_| ())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn results_stand_beside_the_drawing() {
        let dir = tempfile::tempdir().unwrap();
        for name in ["house.dxf", "a.b.svg", "noending", ".dxf"] {
            let drawing = dir.path().join(name);
            fs::write(&drawing, "").unwrap();
            let stem = drawing.file_stem().unwrap().to_string_lossy().into_owned();
            let place = of(&drawing, None);
            assert_eq!(place.folder, dir.path().join(format!("{stem}-layout")));
            assert_eq!((place.drawing.as_str(), place.elsewhere), (name, None));
        }
        let out = of(Path::new("a/house.dxf"), Some(Path::new("there")));
        assert_eq!((out.folder, out.by_default), (PathBuf::from("there"), false));
    }

    #[test]
    fn what_comes_by_standard_input_is_laid_out_in_the_working_folder() {
        let place = of(Path::new("-"), None);
        assert_eq!(place.folder, Path::new("drawing-layout"));
        assert_eq!(place.elsewhere, Some(Elsewhere::StandardInput));
    }

    #[test]
    #[cfg(unix)]
    fn a_read_only_folder_is_left_alone_and_its_drawings_are_told_apart() {
        use std::os::unix::fs::PermissionsExt;
        let dir = tempfile::tempdir().unwrap();
        let lock = |mode| {
            fs::set_permissions(dir.path(), fs::Permissions::from_mode(mode)).unwrap();
        };
        let drawing = dir.path().join("house.dxf");
        fs::write(&drawing, "").unwrap();
        lock(0o555);
        let place = of(&drawing, None);
        assert_eq!(place.folder, Path::new("house-layout"));
        assert_eq!(place.elsewhere, Some(Elsewhere::ReadOnly));
        assert_eq!(place.drawing, drawing.to_string_lossy());
        // A folder that was made ready there for the results is as good.
        lock(0o755);
        fs::create_dir(dir.path().join("house-layout")).unwrap();
        lock(0o555);
        assert_eq!(of(&drawing, None).folder, dir.path().join("house-layout"));
        lock(0o755);
        // A device is no file with a folder of its own.
        assert_eq!(of(Path::new("/dev/null"), None).elsewhere, Some(Elsewhere::NoFile));
    }
}
