//! Standard output, standard error and exit codes.

use std::io::{IsTerminal, Write};
use std::path::Path;
use std::process::ExitCode;

use super::files::{out_failed, recovered};
use super::recovery::Recovered;
use crate::clean::terminal;
use crate::finding::drawing::DrawingFinding;
use crate::finding::files::OutputTarget;
use crate::finding::house::HouseFinding;
use crate::finding::lines::LineCode;
use crate::finding::{Finding, FindingCode, FindingKind, Findings, Refusal, Severity};
use crate::units::LengthStyle;
use crate::wording::command::{self, message_with_place};
use crate::wording::findings::{FindingWords, words};
use crate::write::findings::findings_text;

/// Bytes to standard output; a reader that went away is no fault.
pub(super) fn print(bytes: &[u8]) -> ExitCode {
    let mut out = std::io::stdout().lock();
    match out.write_all(bytes).and_then(|()| out.flush()) {
        Err(e) if e.kind() != std::io::ErrorKind::BrokenPipe => {
            let refusal = out_failed(OutputTarget::StandardOutput, &e);
            refused(&refusal, &Findings::default(), LengthStyle::default())
        }
        _ => ExitCode::SUCCESS,
    }
}

/// A line to standard error.
pub(super) fn tell_line(line: &str) {
    tell(&format!("{line}\n"));
}

/// Puts back what stopped runs have taken away from a folder, and tells of it.
pub(super) fn tell_recovered(folder: &Path) {
    for one in recovered(folder) {
        let path = |p: &Path| terminal(&p.display().to_string());
        tell_line(&match &one {
            Recovered::Back(at) => command::back_in_place(&path(at)),
            Recovered::KeptAside(at) => command::kept_aside(&path(at)),
        });
    }
}

/// Text to standard error.
pub(super) fn tell(text: &str) {
    let mut err = std::io::stderr().lock();
    let _ = err.write_all(text.as_bytes());
}

/// Errors on the terminal, in color where it shows and `NO_COLOR` is not set; exit 1, or 2 where an
/// argument is to blame.
pub(super) fn refused(refusal: &Refusal, findings: &Findings, style: LengthStyle) -> ExitCode {
    show(refusal, findings, style);
    // A job's own `known` is a fault of the job, told as one of its values.
    let argument = matches!(refusal.0.code(), FindingCode::Lines(LineCode::KnownUnreadable));
    ExitCode::from(if argument { 2 } else { 1 })
}

/// The same for an argument that does not fit this drawing; exit 2.
pub(super) fn refused_usage(refusal: &Refusal) -> ExitCode {
    show(refusal, &Findings::default(), LengthStyle::default());
    ExitCode::from(2)
}

fn show(refusal: &Refusal, findings: &Findings, style: LengthStyle) {
    let is_other = |f: &&Finding| f.severity() == Severity::Error && **f != *refusal.0;
    let others: Vec<Finding> = findings.all().iter().filter(is_other).cloned().collect();
    let mut text = String::new();
    let handler = miette::GraphicalReportHandler::new_themed(theme());
    let diagnostic = Shown::of(&refusal.0, style);
    if handler.render_report(&mut text, &diagnostic).is_err() {
        text = diagnostic.to_string();
    }
    tell(&text);
    tell("\n");
    if !others.is_empty() {
        tell(&findings_text(&others, style));
    }
    // What is not used may be why there is nothing to lay out.
    tell_unused(findings.all(), style);
}

/// Tells what was drawn and not used, a warning a layer: for commands that do not print all findings.
pub(super) fn tell_unused(findings: &[Finding], style: LengthStyle) {
    let unused = |f: &&Finding| {
        let kind = matches!(
            f.kind,
            FindingKind::House(HouseFinding::DrawnUnused { .. } | HouseFinding::LayerSpeaks { .. })
                | FindingKind::Drawing(
                    DrawingFinding::BlockExternal { .. } | DrawingFinding::NumbersAbsurd { .. }
                )
        );
        kind && f.severity() == Severity::Warning
    };
    let list: Vec<Finding> = findings.iter().filter(unused).cloned().collect();
    if !list.is_empty() {
        tell(&findings_text(&list, style));
    }
}

fn theme() -> miette::GraphicalTheme {
    if colored(std::io::stderr().is_terminal(), std::env::var_os("NO_COLOR").as_deref()) {
        miette::GraphicalTheme::unicode()
    } else {
        miette::GraphicalTheme::unicode_nocolor()
    }
}

/// Color is for terminals; by the informal standard an empty `NO_COLOR` asks for nothing.
fn colored(terminal: bool, no_color: Option<&std::ffi::OsStr>) -> bool {
    terminal && no_color.is_none_or(std::ffi::OsStr::is_empty)
}

/// A finding as the terminal shows it.
#[derive(Debug)]
struct Shown<'a> {
    finding: &'a Finding,
    words: FindingWords,
}

impl<'a> Shown<'a> {
    fn of(finding: &'a Finding, style: LengthStyle) -> Self {
        Shown { finding, words: words(finding, style) }
    }
}

impl std::fmt::Display for Shown<'_> {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(&message_with_place(self.finding, &self.words.message, terminal))
    }
}

impl std::error::Error for Shown<'_> {}

impl miette::Diagnostic for Shown<'_> {
    fn code<'a>(&'a self) -> Option<Box<dyn std::fmt::Display + 'a>> {
        Some(Box::new(self.finding.code()))
    }

    fn help<'a>(&'a self) -> Option<Box<dyn std::fmt::Display + 'a>> {
        Some(Box::new(terminal(&self.words.help)))
    }
}

#[cfg(test)]
mod tests {
    use super::colored;

    #[test]
    fn no_color_is_heeded_unless_empty() {
        assert!(colored(true, None) && colored(true, Some("".as_ref())));
        assert!(!colored(true, Some("1".as_ref())) && !colored(true, Some("0".as_ref())));
        assert!(!colored(false, None));
    }
}
