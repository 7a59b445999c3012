//! A drawing and its job, from files.

use std::path::Path;

use super::args::Reading;
use super::files;
use crate::finding::lines::LineFinding;
use crate::finding::{Findings, Refusal};
use crate::job::{Job, file};

/// A drawing with its job, read.
pub(super) struct Loaded {
    /// The drawing as it stands in its file.
    pub(super) bytes: Vec<u8>,
    /// Name of its file.
    pub(super) name: String,
    /// The job, or the defaults.
    pub(super) job: Job,
}

/// Reads the drawing, and its job where one is named.
pub(super) fn load(a: &Reading, findings: &mut Findings) -> Result<Loaded, Refusal> {
    let mut job = match &a.job {
        Some(path) => {
            let bytes = files::read(path)?;
            file::read(&String::from_utf8_lossy(&bytes), &path.display().to_string(), findings)?
        }
        None => Job::default(),
    };
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
    let bytes = files::read(&a.drawing)?;
    let name = a
        .drawing
        .file_name()
        .map_or_else(|| "drawing".to_owned(), |n| n.to_string_lossy().into_owned());
    Ok(Loaded { bytes, name, job })
}

/// What a run reads, and so must not write.
pub(super) fn sources(a: &Reading) -> Vec<&Path> {
    let drawing = Some(a.drawing.as_path()).filter(|d| *d != Path::new("-"));
    drawing.into_iter().chain(a.job.as_deref()).collect()
}
