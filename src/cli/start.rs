//! A first job file beside the drawing.

use std::fs::OpenOptions;
use std::io::{ErrorKind, Write};
use std::path::{Path, PathBuf};
use std::process::ExitCode;

use super::files::{self, out_failed};
use super::terminal::{refused, tell_line, tell_unused};
use crate::clean::terminal;
use crate::finding::files::{FileFinding, OutputRefusal, OutputTarget};
use crate::finding::{Findings, Refusal};
use crate::job::first::FirstJob;
use crate::job::office::OFFICE;
use crate::pipeline;
use crate::units::LengthStyle;
use crate::wording::{command, first_job as said, layers};
use crate::write::first_job;

/// Writes the job that the drawing is read with best, and tells what it comes to.
pub(super) fn run(drawing: &Path) -> ExitCode {
    let made = started(drawing);
    match made {
        Ok((file, job)) => {
            let said = layers::said(&job.guess.reached);
            tell_line(&command::started(&terminal(&file.display().to_string()), &said));
            tell_unused(&job.findings, LengthStyle::default());
            ExitCode::SUCCESS
        }
        Err(r) => refused(&r, &Findings::default(), LengthStyle::default()),
    }
}

fn started(drawing: &Path) -> Result<(PathBuf, FirstJob), Refusal> {
    let file = match drawing == Path::new("-") {
        true => PathBuf::from("drawing.toml"),
        false => drawing.with_extension("toml"),
    };
    // What stands there is somebody's: told before a large drawing is read.
    if file.symlink_metadata().is_ok() {
        return Err(taken(&file));
    }
    let bytes = files::read(drawing)?;
    let name = |p: &Path| p.file_name().map(|n| n.to_string_lossy().into_owned());
    let of = name(drawing).filter(|n| n != "-").unwrap_or_else(|| "drawing".to_owned());
    let job = pipeline::first_job(&bytes, &of)?;
    let mut text = first_job::text(&job, &name(&file).unwrap_or_default());
    if file.with_file_name(OFFICE).is_file() {
        text = said::extends(OFFICE) + &text;
    }
    write_new(&file, text.as_bytes())?;
    Ok((file, job))
}

fn taken(file: &Path) -> Refusal {
    let path = file.display().to_string();
    Refusal::new(FileFinding::OutRefused { refusal: OutputRefusal::JobStands { path } })
}

/// Writes a file that is not there yet; what was written of one that cannot be finished is taken away.
fn write_new(file: &Path, bytes: &[u8]) -> Result<(), Refusal> {
    let failed = |e: &std::io::Error| {
        let folder = file.parent().filter(|p| !p.as_os_str().is_empty());
        let path = folder.unwrap_or(Path::new(".")).display().to_string();
        out_failed(OutputTarget::FilesInFolder { path }, e)
    };
    let mut made = match OpenOptions::new().write(true).create_new(true).open(file) {
        Err(e) if e.kind() == ErrorKind::AlreadyExists => return Err(taken(file)),
        Err(e) => return Err(failed(&e)),
        Ok(made) => made,
    };
    made.write_all(bytes).and_then(|()| made.sync_all()).map_err(|e| {
        let _ = std::fs::remove_file(file);
        failed(&e)
    })
}
