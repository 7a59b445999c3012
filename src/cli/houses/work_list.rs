//! Which houses a call is of: drawings, jobs that name their drawing, folders of them, lists of them.

use std::collections::{BTreeMap, BTreeSet};
use std::path::{Path, PathBuf};

use crate::cli::args::{Layout, Reading};
use crate::cli::files;
use crate::cli::house::House;
use crate::cli::loading;
use crate::cli::place;
use crate::finding::files::FileFinding;
use crate::finding::job::JobCode;
use crate::finding::{FindingCode, Findings, Refusal};

/// The work of a call.
pub(in crate::cli) enum WorkList {
    /// One house, as of a drawing alone.
    One(Box<House>),
    /// Any number of them.
    Many(Vec<House>),
}

/// Why there is no list.
pub(in crate::cli) enum NotListed {
    /// The arguments do not go together.
    Usage(Refusal),
    /// Something cannot be read.
    Unread(Refusal),
}

/// Endings of drawings.
const DRAWINGS: [&str; 4] = ["dxf", "dwg", "svg", "pdf"];

/// What an argument is.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Given {
    Drawing,
    Job,
    Folder,
    List,
}

fn given_as(path: &Path) -> Given {
    match ending(path).as_str() {
        _ if path.is_dir() => Given::Folder,
        "toml" => Given::Job,
        "txt" => Given::List,
        _ => Given::Drawing,
    }
}

fn ending(path: &Path) -> String {
    path.extension().map(|e| e.to_string_lossy().to_lowercase()).unwrap_or_default()
}

/// The houses of a call: one where a drawing or a job is given alone, as it always was; else all of them, each
/// with a folder of its own.
///
/// # Errors
/// Two houses of one folder, no house at all, a folder or a list that cannot be read.
pub(in crate::cli) fn work_list(a: &Layout) -> Result<WorkList, NotListed> {
    if let [one] = a.drawings.as_slice() {
        match given_as(one) {
            Given::Drawing => {
                return Ok(WorkList::One(Box::new(house(a, one, a.job.clone(), true))));
            }
            Given::Job => {
                let drawing = loading::drawing_of(one).map_err(NotListed::Unread)?;
                return Ok(WorkList::One(Box::new(by_job(a, one, Ok(drawing), true))));
            }
            Given::Folder | Given::List => {}
        }
    }
    let mut given = Vec::new();
    for path in &a.drawings {
        match given_as(path) {
            Given::List => given.extend(listed(path).map_err(NotListed::Unread)?),
            _ => given.push(path.clone()),
        }
    }
    let mut found = Found::default();
    for path in &given {
        match given_as(path) {
            Given::Folder => found.folder(path).map_err(NotListed::Unread)?,
            Given::Job => found.job(path, true),
            Given::Drawing | Given::List => found.drawings.push((path.clone(), true)),
        }
    }
    let houses = found.houses(a);
    if houses.is_empty() {
        let path = given.first().map_or_else(String::new, |p| p.display().to_string());
        return Err(NotListed::Usage(Refusal::new(FileFinding::NoHouses { path })));
    }
    match alike(&houses) {
        Some(refusal) => Err(NotListed::Usage(refusal)),
        None => Ok(WorkList::Many(houses)),
    }
}

/// The paths of a list, a line each, from the list's own folder; blank lines and remarks after # are none.
fn listed(list: &Path) -> Result<Vec<PathBuf>, Refusal> {
    let bytes = files::read(list)?;
    let text = String::from_utf8_lossy(&bytes);
    let text = text.strip_prefix('\u{feff}').unwrap_or(&text);
    let lines = text.lines().map(str::trim).filter(|l| !l.is_empty() && !l.starts_with('#'));
    Ok(lines.map(|l| list.with_file_name(l)).collect())
}

/// What was found, and whether it was named by itself.
#[derive(Default)]
struct Found {
    drawings: Vec<(PathBuf, bool)>,
    jobs: Vec<(PathBuf, bool, Result<PathBuf, Refusal>)>,
    /// Files that another job goes on from: no houses by themselves, unless named.
    bases: BTreeSet<PathBuf>,
}

impl Found {
    /// A job, with the drawing it names. In a folder, one without is an office's, or of a drawing beside it.
    fn job(&mut self, path: &Path, named: bool) {
        let drawing = loading::drawing_of(path);
        if !named && drawing.as_ref().is_err_and(|r| is_no_house(path, r)) {
            return;
        }
        if let Ok(read) = loading::job(path, &mut Findings::default()) {
            let bases = read.files.iter().skip(1).filter_map(|f| real(Path::new(&f.name)));
            self.bases.extend(bases);
        }
        self.jobs.push((path.to_owned(), named, drawing));
    }

    /// Everything in a folder; folders in it are left alone.
    fn folder(&mut self, folder: &Path) -> Result<(), Refusal> {
        let unreadable = |e: std::io::Error| {
            let (path, system_says) = (folder.display().to_string(), e.to_string());
            Refusal::new(FileFinding::FileUnreadable { path, system_says })
        };
        let mut paths = Vec::new();
        for entry in std::fs::read_dir(folder).map_err(unreadable)? {
            paths.push(entry.map_err(unreadable)?.path());
        }
        paths.sort();
        for path in paths.iter().filter(|p| p.is_file()) {
            match ending(path).as_str() {
                "toml" => self.job(path, false),
                other if DRAWINGS.contains(&other) => self.drawings.push((path.clone(), false)),
                _ => {}
            }
        }
        Ok(())
    }

    /// Every house: a drawing that jobs name is built by them, and a job that others go on from is theirs.
    fn houses(self, a: &Layout) -> Vec<House> {
        let of_jobs: BTreeSet<PathBuf> =
            self.jobs.iter().filter_map(|(_, _, d)| real(d.as_ref().ok()?)).collect();
        let bases = &self.bases;
        let jobs = self
            .jobs
            .into_iter()
            .filter(|(p, named, _)| *named || real(p).is_none_or(|p| !bases.contains(&p)));
        let mut out: Vec<House> = jobs.map(|(path, _, d)| by_job(a, &path, d, false)).collect();
        for (path, named) in self.drawings {
            if named || real(&path).is_none_or(|p| !of_jobs.contains(&p)) {
                let beside = Some(path.with_extension("toml")).filter(|j| j.is_file());
                out.push(house(a, &path, beside.or_else(|| a.job.clone()), false));
            }
        }
        out.sort_by(|x, y| (&x.name, &x.reading.drawing).cmp(&(&y.name, &y.reading.drawing)));
        // A file that is given twice, by its name and by its folder, is one house.
        let mut known = BTreeSet::new();
        let files = |h: &House| [Some(&h.reading.drawing), h.reading.job.as_ref()].map(whole);
        out.retain(|h| known.insert((files(h), whole(Some(&h.place.folder)))));
        out
    }
}

/// A path from the root, the same however it is written; of what stands nowhere as it is written.
fn whole(path: Option<&PathBuf>) -> Option<PathBuf> {
    let path = std::path::absolute(path?).ok()?;
    let stands = path.ancestors().find_map(|p| Some((p, real(p)?)));
    Some(match stands {
        Some((p, real)) => path.strip_prefix(p).map(|rest| real.join(rest)).unwrap_or(path.clone()),
        None => path,
    })
}

fn real(path: &Path) -> Option<PathBuf> {
    path.canonicalize().ok()
}

/// Whether a job file that names no drawing, or cannot be read, is not meant to be a house.
fn is_no_house(path: &Path, why: &Refusal) -> bool {
    let beside = || DRAWINGS.iter().any(|e| path.with_extension(e).is_file());
    matches!(why.0.code(), FindingCode::Job(JobCode::NoDrawing)) || beside()
}

/// A house by its drawing; `alone` as the only one of the call.
fn house(a: &Layout, drawing: &Path, job: Option<PathBuf>, alone: bool) -> House {
    made(a, drawing, (drawing.to_owned(), job), alone)
}

/// A house by its job.
fn by_job(a: &Layout, job: &Path, drawing: Result<PathBuf, Refusal>, alone: bool) -> House {
    let (drawing, fault) = match drawing {
        Ok(drawing) => (drawing, None),
        Err(fault) => (PathBuf::new(), Some(fault)),
    };
    House { fault, ..made(a, job, (drawing, Some(job.to_owned())), alone) }
}

/// A house that is called as the file that it is given by.
fn made(a: &Layout, by: &Path, (drawing, job): (PathBuf, Option<PathBuf>), alone: bool) -> House {
    let name = by.file_stem().map_or_else(String::new, |s| s.to_string_lossy().into_owned());
    let own = a.out.as_ref().map(|out| if alone { out.clone() } else { out.join(&name) });
    let place = place::of(by, own.as_deref());
    let reading = Reading {
        drawing,
        job,
        known: a.known.clone(),
        page: a.page.clone(),
        measured: a.measured.clone(),
    };
    House { name, reading, place, fault: None }
}

/// Two houses that would go to one folder; systems may know names in capitals and in small letters as one.
fn alike(houses: &[House]) -> Option<Refusal> {
    let mut taken: BTreeMap<String, &House> = BTreeMap::new();
    for h in houses {
        let folder = whole(Some(&h.place.folder)).unwrap_or_else(|| h.place.folder.clone());
        let folder = folder.display().to_string().to_lowercase();
        if let Some(other) = taken.insert(folder, h) {
            let path = |h: &House| h.place.source.display().to_string();
            let (folder, one, other) = (h.place.folder.display().to_string(), path(other), path(h));
            return Some(Refusal::new(FileFinding::HousesAlike { folder, one, other }));
        }
    }
    None
}
