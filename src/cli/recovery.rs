//! What runs that were stopped have left: old results are put back, half of new ones is cleared away.

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};

use super::disk::is_there;
use super::in_place::{Sides, undo};
use super::stage::{KEPT, Left, NEW, OLD, Purpose, left_in};
use super::standing::survey;
use crate::fingerprint::sha256;
use crate::outputs::marker::MARKER;

/// What a stopped run had taken away.
#[derive(Debug, PartialEq, Eq)]
pub enum Recovered {
    /// It is back in this folder.
    Back(PathBuf),
    /// Something else stands there by now: it is kept here.
    KeptAside(PathBuf),
}

/// Sees to everything that stopped runs have left in a folder, for it or for folders in it.
pub(super) fn recover(folder: &Path) -> Vec<Recovered> {
    left_in(folder).into_iter().filter_map(|left| recover_one(folder, &left)).collect()
}

fn recover_one(folder: &Path, left: &Left) -> Option<Recovered> {
    let kept = left.at(KEPT);
    if is_there(&kept) {
        return Some(Recovered::KeptAside(kept));
    }
    match &left.purpose {
        Purpose::Whole { target, new } => whole(left, &folder.join(target), new),
        Purpose::InPlace { new } => in_place(left, folder, new),
        Purpose::Nothing => None,
        Purpose::BeforeLists { target } => {
            let target = folder.join(target);
            let back = !is_there(&target) && fs::rename(left.at(OLD), &target).is_ok();
            back.then_some(Recovered::Back(target))
        }
    }
}

/// Whether the list of files in a folder is the one that was to be put there.
fn has_list(folder: &Path, files: &BTreeMap<String, String>) -> bool {
    let there = fs::read(folder.join(MARKER)).ok().map(|list| sha256(&list));
    there.is_some() && there.as_ref() == files.get(MARKER)
}

fn whole(left: &Left, target: &Path, files: &BTreeMap<String, String>) -> Option<Recovered> {
    let (new, old) = (left.at(NEW), left.at(OLD));
    let aside = |name: &str| {
        let kept = left.at(KEPT);
        fs::rename(left.at(name), &kept).ok().map(|()| Recovered::KeptAside(kept))
    };
    let own = |folder: &Path| survey(folder).is_ok_and(|s| s.is_own());
    if is_there(&old) {
        // Stopped between two renames, or before what was there could be cleared away.
        if !is_there(target) {
            let back = fs::rename(&old, target).ok().map(|()| Recovered::Back(target.to_owned()));
            left.discard(NEW);
            return back;
        }
        if has_list(target, files) && !is_there(&new) && own(&old) {
            left.discard(OLD);
            return None;
        }
        left.discard(NEW);
        return aside(OLD);
    }
    // What is new was not put, or has changed places with what was there.
    if is_there(&new) && !own(&new) {
        return aside(NEW);
    }
    left.discard(NEW);
    None
}

fn in_place(left: &Left, folder: &Path, files: &BTreeMap<String, String>) -> Option<Recovered> {
    let (new, old, kept) = (left.at(NEW), left.at(OLD), left.at(KEPT));
    if !is_there(&new) {
        // Nothing had been moved, or all was done.
        left.discard(OLD);
        return None;
    }
    if !is_there(&new.join(MARKER)) && has_list(folder, files) {
        left.discard(OLD);
        left.discard(NEW);
        return None;
    }
    let undone = undo(folder, &Sides { new: &new, old: &old, kept: &kept }, files);
    left.discard(NEW);
    match undone {
        u if !u.whole => Some(Recovered::KeptAside(kept)),
        u if u.any => Some(Recovered::Back(folder.to_owned())),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cli::in_place::{Change, put};
    use crate::cli::stage::Stage;
    use crate::outputs::file::OutputFile;
    use crate::outputs::marker::Marker;
    use std::ffi::OsStr;

    /// Files with their list; `more` is a name that only some sets have.
    fn files(text: &str, more: Option<&str>) -> Vec<OutputFile> {
        let names = ["layout.json", "sheets/01-a.svg", "report.txt"].into_iter().chain(more);
        let mut out: Vec<OutputFile> =
            names.map(|n| (n.to_owned(), format!("{text} {n}").into_bytes())).collect();
        // One file is the same in every set.
        out.push(("same".to_owned(), b"same".to_vec()));
        let list = Marker::of(&out).text().into_bytes();
        out.push((MARKER.to_owned(), list));
        out
    }

    fn all(files: &[OutputFile]) -> Vec<&OutputFile> {
        files.iter().collect()
    }

    fn written(folder: &Path, files: &[OutputFile]) {
        fs::create_dir_all(folder.join("sheets")).unwrap();
        files.iter().for_each(|(n, b)| fs::write(folder.join(n), b).unwrap());
    }

    #[track_caller]
    fn holds_only(folder: &Path, files: &[OutputFile]) {
        let standing = survey(folder).unwrap();
        assert!(standing.is_own(), "{standing:?}");
        assert_eq!(standing.own.len(), files.len() - 1, "{standing:?}");
        for (name, bytes) in files {
            assert_eq!(&fs::read(folder.join(name)).unwrap(), bytes, "{name}");
        }
    }

    fn count(folder: &Path) -> usize {
        fs::read_dir(folder).unwrap().count()
    }

    #[test]
    fn stopped_between_two_renames_old_results_are_put_back() {
        let dir = tempfile::tempdir().unwrap();
        let target = dir.path().join("house-layout");
        let (before, after) = (files("old", None), files("new", Some("check.txt")));
        written(&target, &before);
        let list = Marker::of(&after).text();
        let stage = Stage::new(dir.path(), Some(OsStr::new("house-layout")), &list).unwrap();
        stage.fill(&all(&after), dir.path()).unwrap();
        fs::rename(&target, stage.at(OLD)).unwrap();
        stage.stopped();
        assert!(!target.exists());
        assert_eq!(recover(dir.path()), [Recovered::Back(target.clone())]);
        holds_only(&target, &before);
        assert_eq!((count(dir.path()), recover(dir.path())), (1, Vec::new()));
    }

    #[test]
    fn old_results_whose_place_is_taken_are_kept_and_told_until_they_are_fetched() {
        let dir = tempfile::tempdir().unwrap();
        let target = dir.path().join("house-layout");
        let (before, after) = (files("old", None), files("new", None));
        let list = Marker::of(&after).text();
        let stage = Stage::new(dir.path(), Some(OsStr::new("house-layout")), &list).unwrap();
        stage.fill(&all(&after), dir.path()).unwrap();
        written(&stage.at(OLD), &before);
        let stage = stage.stopped();
        fs::create_dir(&target).unwrap();
        fs::write(target.join("mine"), "mine").unwrap();
        for _ in 0..2 {
            assert_eq!(recover(dir.path()), [Recovered::KeptAside(stage.join(KEPT))]);
            holds_only(&stage.join(KEPT), &before);
        }
        fs::remove_dir_all(stage.join(KEPT)).unwrap();
        assert_eq!((recover(dir.path()), count(dir.path())), (Vec::new(), 1));
    }

    #[test]
    fn what_was_done_or_never_begun_is_cleared_away_in_silence() {
        let dir = tempfile::tempdir().unwrap();
        let target = dir.path().join("house-layout");
        let (before, after) = (files("old", None), files("new", None));
        written(&target, &before);
        let list = Marker::of(&after).text();
        let new = || Stage::new(dir.path(), Some(OsStr::new("house-layout")), &list).unwrap();
        // Before the exchange, and half written.
        let stage = new();
        stage.fill(&all(&after), dir.path()).unwrap();
        stage.stopped();
        fs::create_dir(new().stopped().join(crate::cli::stage::MAKING)).unwrap();
        assert_eq!((recover(dir.path()), count(dir.path())), (Vec::new(), 1));
        holds_only(&target, &before);
        // After the exchange; and after two renames.
        for at in [NEW, OLD] {
            let stage = new();
            written(&stage.at(at), &before);
            stage.stopped();
            fs::remove_dir_all(&target).unwrap();
            written(&target, &after);
            assert_eq!((recover(dir.path()), count(dir.path())), (Vec::new(), 1), "{at}");
            holds_only(&target, &after);
        }
        // An old file that someone changed while it was on its way out is not cleared away.
        let stage = new();
        written(&stage.at(NEW), &before);
        fs::write(stage.at(NEW).join("report.txt"), "mine").unwrap();
        let stage = stage.stopped();
        assert_eq!(recover(dir.path()), [Recovered::KeptAside(stage.join(KEPT))]);
        assert_eq!(fs::read_to_string(stage.join(KEPT).join("report.txt")).unwrap(), "mine");
    }

    /// The moves of a run in place, one by one: stopped after each of them it is undone.
    #[test]
    fn stopped_at_any_move_in_place_old_results_are_put_back() {
        let (before, after) =
            (files("old", Some("check.txt")), files("new", Some("story-pole.csv")));
        for stop in 0..=14 {
            let dir = tempfile::tempdir().unwrap();
            written(dir.path(), &before);
            fs::write(dir.path().join("mine.txt"), "mine").unwrap();
            let stage = Stage::new(dir.path(), None, &Marker::of(&after).text()).unwrap();
            stage.fill(&all(&after), dir.path()).unwrap();
            let mut moves = 0;
            let mut step = |from: PathBuf, to: PathBuf| {
                if from.exists() && moves < stop {
                    fs::create_dir_all(to.parent().unwrap()).unwrap();
                    fs::rename(from, to).unwrap();
                    moves += 1;
                }
            };
            let list = || after.last().map(|f| f.0.as_str());
            let puts = after.iter().map(|f| f.0.as_str()).filter(|n| Some(*n) != list());
            for name in puts.chain(["check.txt"]).chain(list()) {
                step(dir.path().join(name), stage.at(OLD).join(name));
                step(stage.at(NEW).join(name), dir.path().join(name));
            }
            stage.stopped();
            let found = recover(dir.path());
            // The list is put last: then all is done. 5 files go and 5 come, one only goes, one only comes.
            let (expected, told) = if moves == 12 { (&after, false) } else { (&before, moves > 0) };
            assert_eq!(found.len(), usize::from(told), "stopped after {moves}: {found:?}");
            assert_eq!(fs::read_to_string(dir.path().join("mine.txt")).unwrap(), "mine");
            fs::remove_file(dir.path().join("mine.txt")).unwrap();
            holds_only(dir.path(), expected);
            assert_eq!(count(dir.path()), 6, "stopped after {moves}");
        }
    }

    #[test]
    fn a_run_in_place_that_fails_in_the_midst_is_undone_by_itself() {
        let dir = tempfile::tempdir().unwrap();
        let before = files("old", None);
        written(dir.path(), &before);
        let after = files("new", Some("story-pole.csv"));
        let known = survey(dir.path()).unwrap().own;
        // The last but one is somebody's by now: found when it is taken away.
        fs::write(dir.path().join("report.txt"), "mine").unwrap();
        let change = Change { put: &all(&after), remove: &["same"], known: &known };
        assert!(put(dir.path(), &change).is_err());
        assert_eq!(fs::read_to_string(dir.path().join("report.txt")).unwrap(), "mine");
        fs::write(dir.path().join("report.txt"), "old report.txt").unwrap();
        holds_only(dir.path(), &before);
        assert_eq!(count(dir.path()), 5);
    }
}
