//! Standard output, standard error and exit codes.

use std::io::{IsTerminal, Write};
use std::process::ExitCode;

use crate::diag::{Note, Notes, Refusal, Severity};
use crate::write::report;

/// Bytes to standard output; a reader that went away is no fault.
pub(super) fn print(bytes: &[u8]) -> ExitCode {
    let mut out = std::io::stdout().lock();
    match out.write_all(bytes).and_then(|()| out.flush()) {
        Err(e) if e.kind() != std::io::ErrorKind::BrokenPipe => {
            let message = format!("standard output cannot be written: {e}");
            let help = "Check free space where the output goes; what is there is not whole.";
            refused(&Note::error("out-failed", message, help).into(), &Notes::default())
        }
        _ => ExitCode::SUCCESS,
    }
}

/// Text to standard error.
pub(super) fn tell(text: &str) {
    let mut err = std::io::stderr().lock();
    let _ = err.write_all(text.as_bytes());
}

/// Errors on the terminal, in colour where it shows and `NO_COLOR` is not set; exit 1.
pub(super) fn refused(refusal: &Refusal, notes: &Notes) -> ExitCode {
    show(refusal, notes);
    ExitCode::from(1)
}

/// The same for an argument that does not fit this drawing; exit 2.
pub(super) fn refused_usage(refusal: &Refusal) -> ExitCode {
    show(refusal, &Notes::default());
    ExitCode::from(2)
}

fn show(refusal: &Refusal, notes: &Notes) {
    let others: Vec<_> = notes
        .all()
        .iter()
        .filter(|n| n.severity == Severity::Error && **n != *refusal.0)
        .cloned()
        .collect();
    let mut text = String::new();
    let handler = miette::GraphicalReportHandler::new_themed(theme());
    let diagnostic = Finding(refusal.0.as_ref());
    if handler.render_report(&mut text, &diagnostic).is_err() {
        text = refusal.to_string();
    }
    tell(&text);
    tell("\n");
    if !others.is_empty() {
        tell(&report::notes(&others));
    }
}

fn theme() -> miette::GraphicalTheme {
    if coloured(std::io::stderr().is_terminal(), std::env::var_os("NO_COLOR").as_deref()) {
        miette::GraphicalTheme::unicode()
    } else {
        miette::GraphicalTheme::unicode_nocolor()
    }
}

/// Colour is for terminals; by the informal standard an empty `NO_COLOR` asks for nothing.
fn coloured(terminal: bool, no_color: Option<&std::ffi::OsStr>) -> bool {
    terminal && no_color.is_none_or(std::ffi::OsStr::is_empty)
}

/// A finding as the terminal shows it.
#[derive(Debug)]
struct Finding<'a>(&'a Note);

impl std::fmt::Display for Finding<'_> {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "{}", report::plain(&self.0.message))?;
        if let Some(p) = self.0.at {
            write!(f, " (at {:.3}, {:.3} in the drawing)", p.x, p.y)?;
        }
        if let Some(o) = &self.0.origin {
            let handle = o
                .handle
                .as_deref()
                .map_or(String::new(), |h| format!(", handle {}", report::plain(h)));
            write!(f, " ({} at line {}{handle})", o.entity, o.line)?;
        }
        Ok(())
    }
}

impl std::error::Error for Finding<'_> {}

impl miette::Diagnostic for Finding<'_> {
    fn code<'a>(&'a self) -> Option<Box<dyn std::fmt::Display + 'a>> {
        Some(Box::new(self.0.code))
    }

    fn help<'a>(&'a self) -> Option<Box<dyn std::fmt::Display + 'a>> {
        Some(Box::new(&self.0.help))
    }
}

#[cfg(test)]
mod tests {
    use super::coloured;

    #[test]
    fn no_color_is_heeded_unless_empty() {
        assert!(coloured(true, None) && coloured(true, Some("".as_ref())));
        assert!(!coloured(true, Some("1".as_ref())) && !coloured(true, Some("0".as_ref())));
        assert!(!coloured(false, None));
    }
}
