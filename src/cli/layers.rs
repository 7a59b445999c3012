//! Layers of a drawing, and guesses at their roles.

use std::process::ExitCode;

use super::args::Reading;
use super::loading::load;
use super::terminal::{print, refused, tell_unused};
use crate::finding::Findings;
use crate::pipeline;
use crate::units::LengthStyle;
use crate::write::layers;

/// Lists the layers with what each is taken for and what became of it.
pub(super) fn list(a: &Reading) -> ExitCode {
    let mut findings = Findings::default();
    let mut style = LengthStyle::default();
    let read = load(a, &mut findings).and_then(|l| {
        style = l.job.sheet.lengths;
        pipeline::layers(&l.bytes, &l.name, &l.job, &mut findings)
    });
    match read {
        Ok((list, accounts)) => {
            tell_unused(findings.all(), style);
            print(layers::table(&list, &accounts).as_bytes())
        }
        Err(r) => refused(&r, &findings, style),
    }
}

/// Prints guesses as a fragment of a job file.
pub(super) fn suggest(a: &Reading) -> ExitCode {
    let mut findings = Findings::default();
    let mut style = LengthStyle::default();
    let list = load(a, &mut findings).and_then(|l| {
        style = l.job.sheet.lengths;
        let list = pipeline::suggestions(&l.bytes, &l.name, &l.job)?;
        // What is not used with the job as it is; that there is nothing to lay out is why guesses are asked for.
        let _ = pipeline::layers(&l.bytes, &l.name, &l.job, &mut findings);
        Ok(list)
    });
    match list {
        Ok(list) => {
            tell_unused(findings.all(), style);
            print(layers::fragment(&list).as_bytes())
        }
        Err(r) => refused(&r, &findings, style),
    }
}
