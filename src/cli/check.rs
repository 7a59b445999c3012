//! What was read, without a layout.

use std::io::IsTerminal;
use std::process::ExitCode;

use super::args::Check;
use super::files;
use super::loading::{load, sources};
use super::terminal::{print, refused, tell_recovered};
use crate::finding::{Finding, Findings, Severity};
use crate::outputs::problems::problems;
use crate::pipeline;
use crate::units::LengthStyle;
use crate::write::findings::findings_text;
use crate::write::walls;

/// Tells what was read, assumed, mended and refused.
pub(super) fn run(a: &Check) -> ExitCode {
    a.out.iter().for_each(|folder| tell_recovered(folder));
    let mut findings = Findings::default();
    let loaded = match load(&a.reading, &mut findings) {
        Ok(l) => l,
        Err(r) => return refused(&r, &findings, LengthStyle::default()),
    };
    let style = loaded.job.sheet.lengths;
    let checked = pipeline::checked(loaded.bytes, &loaded.name, &loaded.job, &mut findings);
    let mut text = checked.house.as_ref().map(|h| walls::text(h, style)).unwrap_or_default();
    text.push_str(&findings_text(findings.all(), style));
    if let Some(folder) = &a.out {
        let files = [
            ("problems.svg".to_owned(), problems(&checked.drawing, &findings, style)),
            ("check.txt".to_owned(), text.clone().into_bytes()),
        ];
        if let Err(r) = files::write_beside(folder, &files, &sources(&a.reading), a.replace) {
            return refused(&r, &Findings::default(), style);
        }
    }
    // What stops it is told on standard error: not twice where both are one terminal.
    let one_screen = std::io::stdout().is_terminal() && std::io::stderr().is_terminal();
    let printed = match &checked.house {
        Err(stop) if one_screen => {
            let others: Vec<Finding> =
                findings.all().iter().filter(|n| **n != *stop.0).cloned().collect();
            print(findings_text(&others, style).as_bytes())
        }
        _ => print(text.as_bytes()),
    };
    // The process ends here: giving millions of items back one by one would only take time.
    std::mem::forget((checked.drawing, checked.lines));
    match checked.house {
        Err(r) => refused(&r, &Findings::default(), style),
        Ok(_) if printed != ExitCode::SUCCESS => printed,
        Ok(_) if a.strict && findings.count(Severity::Warning) > 0 => ExitCode::from(3),
        Ok(_) => ExitCode::SUCCESS,
    }
}
