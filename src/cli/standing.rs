//! What stands in a folder before results go there: the program's own files, those of them that were
//! changed since, and what it did not write.

use std::collections::BTreeMap;
use std::fs::{self, DirEntry};
use std::io;
use std::path::Path;
use std::time::{Duration, SystemTime};

use crate::fingerprint::sha256;
use crate::outputs::making::not_of_our_making;
use crate::outputs::marker::{MARKER, Marker};
use crate::outputs::names::is_own_name;

/// The files of a folder by whose they are; paths with slashes, folders end in one.
#[derive(Debug, Default, PartialEq, Eq)]
pub(super) struct Standing {
    /// The drawing whose results are there, where the list of files says so.
    pub(super) drawing: Option<String>,
    /// Fingerprint of what they were made of, where the list of files says so.
    pub(super) made_of: Option<String>,
    /// What was on the list and is not there any more.
    pub(super) missing: Vec<String>,
    /// What the program wrote and nobody changed, each with its SHA-256.
    pub(super) own: BTreeMap<String, String>,
    /// What it wrote and what was changed since, each with the SHA-256 it was written with.
    pub(super) edited: BTreeMap<String, String>,
    /// What it did not write, sorted.
    pub(super) strangers: Vec<String>,
}

impl Standing {
    /// Whether everything there is the program's own.
    pub(super) fn is_own(&self) -> bool {
        self.edited.is_empty() && self.strangers.is_empty()
    }
}

/// Files of one run are written within this time. In a folder without a list, what is later than the first
/// of them by more was changed by someone.
const ONE_RUN: Duration = Duration::from_secs(600);

/// Looks into a folder.
pub(super) fn survey(folder: &Path) -> io::Result<Standing> {
    let mut standing = match fs::read(folder.join(MARKER)).ok().and_then(|t| Marker::read(&t)) {
        Some(marker) => by_list(folder, marker)?,
        None => by_content(folder)?,
    };
    standing.strangers.sort();
    Ok(standing)
}

/// What lies in a folder, folders that `enters` names opened: files by their paths, and what is no file.
fn listed(
    folder: &Path,
    above: &str,
    enters: &dyn Fn(&str) -> bool,
    each: &mut dyn FnMut(String, &DirEntry) -> io::Result<()>,
) -> io::Result<Vec<String>> {
    let mut others = Vec::new();
    for entry in fs::read_dir(folder)? {
        let entry = entry?;
        let (name, kind) = (entry.file_name(), entry.file_type()?);
        let path = format!("{above}{}", name.to_string_lossy());
        match name.to_str() {
            Some(_) if kind.is_dir() && enters(&format!("{path}/")) => {
                others.extend(listed(&entry.path(), &format!("{path}/"), enters, each)?);
            }
            Some(_) if kind.is_file() => each(path, &entry)?,
            _ if kind.is_dir() => others.push(format!("{path}/")),
            _ => others.push(path),
        }
    }
    Ok(others)
}

fn by_list(folder: &Path, marker: Marker) -> io::Result<Standing> {
    let mut out = Standing {
        drawing: marker.drawing.clone(),
        made_of: marker.made_of.clone(),
        ..Standing::default()
    };
    let enters = |dir: &str| marker.files.keys().any(|f| f.starts_with(dir));
    let others = listed(folder, "", &enters, &mut |path, entry| {
        match marker.files.get(&path) {
            _ if path == MARKER => {}
            None => out.strangers.push(path),
            Some(hash) if sha256(&fs::read(entry.path())?) == *hash => {
                out.own.insert(path, hash.clone());
            }
            Some(hash) => {
                out.edited.insert(path, hash.clone());
            }
        }
        Ok(())
    })?;
    out.strangers.extend(others);
    let there = |name: &&String| out.own.contains_key(*name) || out.edited.contains_key(*name);
    out.missing = marker.files.keys().filter(|n| !there(n)).cloned().collect();
    Ok(out)
}

/// A folder from before there were lists is the program's own if every file's name and content is of its
/// making, and nobody changed one later; else nothing of it is.
fn by_content(folder: &Path) -> io::Result<Standing> {
    let mut found: Vec<(String, DirEntryTime)> = Vec::new();
    let enters = |dir: &str| {
        let last = dir.trim_end_matches('/').rsplit('/').next().unwrap_or_default();
        last == "sheets" || (last.starts_with("zone-") && dir.matches('/').count() == 1)
    };
    let strangers = listed(folder, "", &enters, &mut |path, entry| {
        found.push((path, DirEntryTime::of(entry)));
        Ok(())
    })?;
    let mut out = Standing { strangers, ..Default::default() };
    // By their names alone first: nobody's large files are read for this.
    out.strangers.extend(found.iter().map(|f| f.0.clone()).filter(|p| !is_own_name(p)));
    if !out.strangers.is_empty() {
        return Ok(out);
    }
    let mut files = BTreeMap::new();
    for (path, at) in &found {
        files.insert(path.clone(), fs::read(&at.path)?);
    }
    out.strangers = not_of_our_making(&files);
    let first = found.iter().filter_map(|f| f.1.written).min();
    let late = |t: SystemTime| {
        first.is_some_and(|f| t.duration_since(f).is_ok_and(|since| since > ONE_RUN))
    };
    for (path, at) in found {
        if !out.strangers.contains(&path) && at.written.is_some_and(late) {
            out.edited.insert(path, String::new());
        }
    }
    if out.is_own() {
        out.own = files.iter().map(|(path, bytes)| (path.clone(), sha256(bytes))).collect();
    }
    Ok(out)
}

/// Where a file is and when it was last written.
struct DirEntryTime {
    path: std::path::PathBuf,
    written: Option<SystemTime>,
}

impl DirEntryTime {
    fn of(entry: &DirEntry) -> Self {
        let written = entry.metadata().and_then(|m| m.modified()).ok();
        DirEntryTime { path: entry.path(), written }
    }
}
