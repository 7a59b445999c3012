//! What a page asks: each answer is whole by itself, nothing is kept between two calls.

use serde::Serialize;

use super::seen::{self, Seen, SeenFinding, finding, seen};
use crate::finding::{Findings, Refusal};
use crate::job::edit::{NotChanged, edited, said};
use crate::job::{Job, file};
use crate::layout::set::LaidSets;
use crate::outputs::file::OutputFile;
use crate::outputs::house::{self, Wanted};
use crate::pipeline::{self, Watch};
use crate::units::LengthStyle;
use crate::wording::layers;
use crate::write::{alarm, first_job, json, summary, zip};

/// Name of the job in what is told of it.
const JOB: &str = "job.toml";

/// The job of a drawing, or the drawing without one with what is wrong in it.
fn job_of(text: &str, findings: &mut Findings) -> Result<Job, Refusal> {
    match text.trim() {
        "" => Ok(Job::default()),
        _ => file::read(text, JOB, findings),
    }
}

/// What is read of a drawing by a job, as JSON of a [`Seen`]. A job that cannot be read leaves the drawing as
/// it is read without one, and is told first.
pub fn look(bytes: &[u8], name: &str, job: &str) -> String {
    let (said, mut findings) = (said(job), Findings::default());
    let (job, refused) = match job_of(job, &mut findings) {
        Ok(job) => (job, None),
        Err(refused) => (Job::default(), Some(refused)),
    };
    let style = job.sheet.lengths;
    let checked = pipeline::checked(bytes.to_vec(), name, &job, &mut findings);
    let mut out: Seen = seen(&checked, said, &findings, style);
    if let Some(Refusal(why)) = refused {
        out.findings.insert(0, finding(&why, None, style));
        out.stopped = true;
    }
    json::compact(&out)
}

/// A first job, or why there is none.
#[derive(Serialize)]
#[serde(rename_all = "snake_case")]
enum Answer {
    /// The text of the job, and what was said of it.
    Job { text: String, said: String },
    /// Why not.
    Refused { why: Vec<SeenFinding> },
}

fn refused(Refusal(why): &Refusal) -> Answer {
    Answer::Refused { why: vec![finding(why, None, LengthStyle::default())] }
}

/// The first job of a drawing as a job file, as JSON: `{"job": {"text", "said"}}` or `{"refused": {"why"}}`.
pub fn start(bytes: &[u8], name: &str) -> String {
    json::compact(&match pipeline::first_job(bytes, name) {
        Ok(job) => {
            Answer::Job { text: first_job::text(&job, JOB), said: layers::said(&job.guess.reached) }
        }
        Err(r) => refused(&r),
    })
}

/// A job with one change in it, as [`start`] answers; all else in its text stays as it was. Where the change does
/// not fit what stands there, nothing is said of why.
pub fn edit(job: &str, change: &str) -> String {
    json::compact(&match edited(job, change) {
        Ok(text) => Answer::Job { text, said: String::new() },
        Err(NotChanged::Refused(r)) => refused(&r),
        Err(NotChanged::Unfit) => Answer::Refused { why: Vec::new() },
    })
}

/// What a layout came to, in words.
#[derive(Debug, Serialize)]
pub struct Told {
    /// The summary, a set after the other.
    pub summary: String,
    /// In how many places rules of the check are broken, as the bar says it; empty where none is.
    pub alarm: String,
    /// What was found on the way.
    pub findings: Vec<SeenFinding>,
    /// Whether there is no layout.
    pub refused: bool,
}

/// A layout: what it came to, and its files.
#[derive(Debug)]
pub struct Laid {
    /// In words.
    pub told: Told,
    /// Files by their paths, as the command writes them; none where it was refused.
    pub files: Vec<OutputFile>,
}

/// Lays a house out and makes its files, as the command does.
pub fn lay(bytes: &[u8], name: &str, job: &str, pictures: bool, watch: Watch) -> Laid {
    let mut findings = Findings::default();
    let wanted = Wanted { pictures, overlay_alone: false };
    let laid = job_of(job, &mut findings).and_then(|job| {
        let style = job.sheet.lengths;
        let sets = pipeline::layout(bytes, name, &job, &mut findings, watch)?;
        let made = house::files(&sets, bytes, wanted)?;
        Ok((told(&sets, &findings, style), made.files))
    });
    match laid {
        Ok((told, files)) => Laid { told, files },
        Err(Refusal(why)) => {
            let style = LengthStyle::default();
            let mut all: Vec<SeenFinding> = vec![finding(&why, None, style)];
            let others = findings.all().iter().filter(|f| **f != *why);
            all.extend(seen::told(others, None, style));
            let (summary, alarm) = Default::default();
            Laid { told: Told { summary, alarm, findings: all, refused: true }, files: Vec::new() }
        }
    }
}

fn told(sets: &LaidSets, findings: &Findings, style: LengthStyle) -> Told {
    let layouts = || sets.iter().map(|s| &s.layout);
    let of_layouts = layouts().flat_map(|l| &l.findings).filter(|f| !findings.all().contains(f));
    Told {
        summary: layouts().map(summary::text).collect(),
        alarm: layouts().map(|l| alarm::bar(&l.verify)).collect(),
        findings: seen::told(findings.all().iter().chain(of_layouts), None, style),
        refused: false,
    }
}

/// Files as one archive; none where they do not fit into one.
pub fn pack(files: &[OutputFile]) -> Option<Vec<u8>> {
    zip::archive(files)
}

/// The JSON Schema of the job file.
pub fn settings() -> String {
    String::from_utf8(json::job_schema()).unwrap_or_default()
}
