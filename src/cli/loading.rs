//! A drawing and its job, from files.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

use super::args::Reading;
use super::files;
use crate::finding::job::{ExtendsFault, JobFinding};
use crate::finding::lines::LineFinding;
use crate::finding::{Finding, Findings, Refusal};
use crate::job::Job;
use crate::job::extended::{self, Extended};
use crate::job::texts::{JobText, Texts};
use crate::pipeline::measures;
use crate::units::{LengthStyle, Unit};

/// A drawing with its job, read.
pub(super) struct Loaded {
    /// The drawing as it stands in its file.
    pub(super) bytes: Vec<u8>,
    /// Name of its file.
    pub(super) name: String,
    /// The job, or the defaults.
    pub(super) job: Job,
    /// The files of the job, its own first; none for the defaults.
    pub(super) files: Vec<JobText>,
    /// Which of them each setting comes from.
    pub(super) from: BTreeMap<String, usize>,
}

impl Loaded {
    /// The price list that the job names, from the folder of the file that names it.
    pub(super) fn price_list(&self) -> Option<PathBuf> {
        price_list(&self.job, &self.files, &self.from)
    }
}

/// The price list that a job names, from the folder of the file that names it.
pub(super) fn price_list(
    job: &Job,
    files: &[JobText],
    from: &BTreeMap<String, usize>,
) -> Option<PathBuf> {
    let list = job.estimate.price_list.as_ref()?;
    let file = from.get("estimate.price_list").and_then(|i| files.get(*i))?;
    Some(Path::new(&file.name).with_file_name(list))
}

/// Files that jobs extend, each from the folder of the one that names it.
struct OnDisk {
    /// Those read so far, as the system knows them, with what errors call them.
    read: Vec<(PathBuf, String)>,
}

impl OnDisk {
    fn of(job: &Path) -> Self {
        let name = job.display().to_string();
        OnDisk { read: job.canonicalize().ok().map(|real| (real, name)).into_iter().collect() }
    }
}

impl Texts for OnDisk {
    fn extended(&mut self, from: &str, extends: &str) -> Result<JobText, ExtendsFault> {
        let path = Path::new(from).with_file_name(extends);
        let unreadable =
            |e: std::io::Error| ExtendsFault::Unreadable { system_says: e.to_string() };
        let real = path.canonicalize().map_err(unreadable)?;
        // One file is one, however its path is written.
        let seen = self.read.iter().find(|r| r.0 == real).map(|r| r.1.clone());
        let name = seen.unwrap_or_else(|| path.display().to_string());
        let bytes = std::fs::read(&path).map_err(unreadable)?;
        self.read.push((real, name.clone()));
        Ok(JobText { name, text: String::from_utf8_lossy(&bytes).into_owned() })
    }
}

/// Reads a job with the files that it extends.
///
/// # Errors
/// As [`extended::read`], and when the file cannot be read.
pub(super) fn job(path: &Path, findings: &mut Findings) -> Result<Extended, Refusal> {
    let bytes = files::read(path)?;
    let text = String::from_utf8_lossy(&bytes);
    extended::read(&text, &path.display().to_string(), &mut OnDisk::of(path), findings)
}

/// Reads the drawing, and its job where one is named.
pub(super) fn load(a: &Reading, findings: &mut Findings) -> Result<Loaded, Refusal> {
    let read = a.job.as_ref().map(|path| job(path, findings)).transpose()?;
    if read.is_none() {
        not_given(&a.drawing, findings);
    }
    let (mut job, files, from) =
        read.map_or_else(Default::default, |read| (read.job, read.files, read.from));
    if let Some(known) = &a.known {
        job.drawing.known = Some(known.clone());
        // A fault of the command line is not told as one of the job file.
        if job.drawing.known_scale().is_none() {
            return Err(Refusal::new(LineFinding::KnownUnreadable { text: known.clone() }));
        }
    }
    if !a.page.is_empty() {
        job.drawing.pages.clone_from(&a.page);
    }
    if let Some(path) = &a.measured {
        let bare = if job.sheet.lengths == LengthStyle::Mm { Unit::Mm } else { Unit::Inch };
        let table = measures::read(&files::read(path)?, &path.display().to_string(), bare)?;
        job.taped.extend(table);
    }
    let bytes = files::read(&a.drawing)?;
    let name = a
        .drawing
        .file_name()
        .map_or_else(|| "drawing".to_owned(), |n| n.to_string_lossy().into_owned());
    Ok(Loaded { bytes, name, job, files, from })
}

/// Tells of a job under the drawing's name, as `start` writes it, where none is given.
fn not_given(drawing: &Path, findings: &mut Findings) {
    let beside = drawing.with_extension("toml");
    if drawing != Path::new("-") && beside.is_file() {
        findings.push(Finding::new(JobFinding::NotGiven { file: beside.display().to_string() }));
    }
}

/// The drawing and the job of a house that is given by its job alone.
///
/// # Errors
/// As [`job`]; `job-no-drawing` where the job names no drawing.
pub(super) fn drawing_of(path: &Path) -> Result<PathBuf, Refusal> {
    let read = job(path, &mut Findings::default())?;
    let file = read.from.get("model.drawing").and_then(|i| read.files.get(*i));
    match (&read.job.model.drawing, file) {
        (Some(drawing), Some(file)) => Ok(Path::new(&file.name).with_file_name(drawing)),
        _ => {
            let file = path.display().to_string();
            Err(Refusal::new(JobFinding::NoDrawing { file }))
        }
    }
}

/// What a run reads, and so must not write.
pub(super) fn sources(a: &Reading, loaded: &Loaded) -> Vec<PathBuf> {
    let drawing = Some(a.drawing.clone()).filter(|d| d != Path::new("-"));
    let jobs = loaded.files.iter().map(|f| PathBuf::from(&f.name));
    let taped = a.measured.clone();
    drawing.into_iter().chain(jobs).chain(loaded.price_list()).chain(taped).collect()
}
