//! What of a file is read.

use crate::job::Job;
use crate::read::Limits;

/// The pages of a PDF that a job names, and how much at most is read.
pub(super) fn limits(job: &Job) -> Limits {
    Limits { pages: job.drawing.pages.clone(), ..Limits::default() }
}
