//! How a run ends: the exit code that follows from what was laid out and found.

use std::process::ExitCode;

use super::terminal::tell;
use crate::finding::{Findings, Severity};
use crate::layout::set::LaidSets;
use crate::write::alarm::alarm;

/// How a run that wrote or printed its results ends.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Outcome {
    /// Done.
    Done,
    /// Done, with warnings, where they are asked for (`--strict`).
    Warned,
    /// The layout breaks a rule of the check: it is written, and marked all over.
    CheckFailed,
}

impl Outcome {
    /// Of what was laid out and found: a broken rule counts over everything, asked for or not.
    pub fn of(sets: &LaidSets, findings: &Findings, strict: bool) -> Outcome {
        let layouts = || sets.iter().map(|s| &s.layout);
        let told = layouts().flat_map(|l| &l.findings).chain(findings.all());
        if sets.failed_places() > 0 {
            Outcome::CheckFailed
        } else if strict && told.into_iter().any(|f| f.severity() >= Severity::Warning) {
            Outcome::Warned
        } else {
            Outcome::Done
        }
    }

    /// The exit code.
    pub fn code(self) -> u8 {
        match self {
            Outcome::Done => 0,
            Outcome::Warned => 3,
            Outcome::CheckFailed => 4,
        }
    }

    /// The exit code, unless printing failed, which has its own.
    pub(super) fn after(self, printed: ExitCode) -> ExitCode {
        if printed == ExitCode::SUCCESS { ExitCode::from(self.code()) } else { printed }
    }
}

/// Tells standard error of every set that breaks rules, whether a run is to be quiet or not.
pub(super) fn tell_failed(sets: &LaidSets) {
    sets.iter().for_each(|s| tell(&alarm(&s.layout)));
}
