//! What was read, and what a layout would tell, without its files.

use std::io::IsTerminal;
use std::process::ExitCode;

use super::args::Check;
use super::files;
use super::loading::{Loaded, load, sources};
use super::outcome::{Outcome, tell_failed};
use super::progress::watched;
use super::terminal::{print, refused, tell_recovered};
use crate::finding::{Finding, Findings};
use crate::layout::set::LaidSets;
use crate::outputs::problems::problems;
use crate::pipeline::{self, Checked};
use crate::units::LengthStyle;
use crate::write::findings::findings_text;
use crate::write::{alarm, told_settings, walls};

/// Tells what was read, assumed, mended and refused.
pub(super) fn run(a: &Check) -> ExitCode {
    a.out.iter().for_each(|folder| tell_recovered(folder));
    let mut findings = Findings::default();
    let loaded = match load(&a.reading, &mut findings) {
        Ok(l) => l,
        Err(r) => return refused(&r, &findings, LengthStyle::default()),
    };
    let style = loaded.job.sheet.lengths;
    let sources = sources(&a.reading, &loaded);
    let settings = settings(a, &loaded);
    let checked = pipeline::checked(loaded.bytes, &loaded.name, &loaded.job, &mut findings);
    // Laid out in memory: what later stages warn of is told too, and rules that the layout breaks.
    let sets = watched(true, |watch| {
        pipeline::checked_layout(&checked, &loaded.job, &mut findings, watch)
    });
    sets.iter().for_each(|sets| with_zones(sets, &mut findings));
    let text = told(&checked, sets.as_ref(), &findings, style) + &settings;
    if let Some(folder) = &a.out {
        let picture = problems(&checked.drawing, &checked.lines, &findings, style);
        let files = [
            ("problems.svg".to_owned(), picture),
            ("check.txt".to_owned(), text.clone().into_bytes()),
        ];
        if let Err(r) = files::write_beside(folder, &files, &sources, a.replace) {
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
    let ended = match (checked.house, &sets) {
        (Err(r), _) => return refused(&r, &Findings::default(), style),
        (Ok(_), None) => Outcome::Done,
        (Ok(_), Some(sets)) => {
            tell_failed(sets);
            Outcome::of(sets, &findings, a.strict)
        }
    };
    std::mem::forget(sets);
    ended.after(printed)
}

/// Where settings come from: all of them where they are asked for, what files say where there are several.
fn settings(a: &Check, loaded: &Loaded) -> String {
    if !a.settings && loaded.files.len() < 2 {
        return String::new();
    }
    let files: Vec<&str> = loaded.files.iter().map(|f| f.name.as_str()).collect();
    told_settings::text(&loaded.job, &files, &loaded.from, a.settings)
}

/// Walls, findings, and every rule that the layout breaks.
fn told(
    checked: &Checked,
    sets: Option<&LaidSets>,
    findings: &Findings,
    style: LengthStyle,
) -> String {
    let mut text = checked.house.as_ref().map(|h| walls::text(h, style)).unwrap_or_default();
    text.push_str(&findings_text(findings.all(), style));
    for layout in sets.into_iter().flat_map(LaidSets::iter).map(|s| &s.layout) {
        text.push_str(&alarm::bar(&layout.verify));
        text.push_str(&alarm::places(&layout.verify, style));
    }
    text
}

/// Adds what was found of zones that are laid out as sets of their own, each thing once.
fn with_zones(sets: &LaidSets, findings: &mut Findings) {
    for found in sets.zones.iter().flat_map(|s| &s.layout.findings) {
        if !findings.all().contains(found) {
            findings.push(found.clone());
        }
    }
}
