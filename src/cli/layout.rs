//! The main job: everything about a house into a folder.

use std::process::ExitCode;

use super::args::Layout;
use super::earlier;
use super::house::{House, Ready, Written, ready, written};
use super::houses;
use super::houses::{NotListed, WorkList};
use super::loading::Loaded;
use super::outcome::{Outcome, tell_failed};
use super::place::Place;
use super::progress::{lay_keeping, watched};
use super::terminal::{print, refused, refused_usage, tell, tell_line, tell_recovered};
use crate::clean::terminal;
use crate::finding::files::{FileFinding, KeepFault};
use crate::finding::{Findings, Refusal};
use crate::layout::set::LaidSets;
use crate::outputs::house::HouseFiles;
use crate::outputs::names::set_folder;
use crate::pipeline;
use crate::pipeline::waiting_prices::waiting_prices;
use crate::units::LengthStyle;
use crate::wording::{command, offcuts};
use crate::write::alarm::bar;
use crate::write::summary;

/// Lays the house out, or many, and writes the files.
pub(super) fn run(a: &Layout) -> ExitCode {
    match houses::work_list(a) {
        Ok(WorkList::One(house)) => one(a, &house),
        Ok(WorkList::Many(_)) if a.keep.is_some() => {
            let fault = KeepFault::ManyHouses;
            refused_usage(&Refusal::new(FileFinding::LayoutNotKept { fault }))
        }
        Ok(WorkList::Many(all)) => houses::run(a, &all),
        Err(NotListed::Usage(r)) => refused_usage(&r),
        Err(NotListed::Unread(r)) => refused(&r, &Findings::default(), LengthStyle::default()),
    }
}

fn one(a: &Layout, house: &House) -> ExitCode {
    tell_recovered(&house.place.folder);
    let mut findings = Findings::default();
    let mut ready = match ready(house, a, &mut findings) {
        Ok(Ok(ready)) => ready,
        Ok(Err(usage)) => return refused_usage(&usage),
        Err(r) => return refused(&r, &findings, LengthStyle::default()),
    };
    if a.compare_waiting {
        return compare_waiting(&ready.loaded, &findings, a.quiet);
    }
    let style = ready.loaded.job.sheet.lengths;
    let old = match earlier::given(a, &house.reading, &ready.loaded.job) {
        Ok(old) => old,
        Err(r) => return refused(&r, &findings, style),
    };
    let earlier = old.as_ref().map(earlier::Given::earlier);
    if a.keep.is_some() {
        // What it follows from is another layout besides: no call for many houses may take it for its own.
        ready.place.made_of = None;
    }
    ready.sources.extend(a.keep.iter().chain(&a.stock).cloned());
    let lay = |l: &Loaded| lay_keeping(l, earlier.as_ref(), &mut findings, a.quiet);
    let Written { sets, made, by_tape } = match written(&ready, a, lay) {
        Ok(written) => written,
        Err(r) => return refused(&r, &findings, style),
    };
    let Ready { place, .. } = ready;
    if !a.quiet {
        tell_result(&sets, &made, &place);
        by_tape.into_iter().for_each(|n| tell_line(&command::by_tape(n)));
    }
    tell_failed(&sets);
    Outcome::of(&sets, &findings, a.strict).after(ExitCode::SUCCESS)
}

/// Prints what it costs that fewer offcuts wait, under a bar where one of the layouts breaks rules.
fn compare_waiting(loaded: &Loaded, findings: &Findings, quiet: bool) -> ExitCode {
    let mut failed: Option<LaidSets> = None;
    let table = watched(quiet, |watch| {
        waiting_prices(&loaded.job, |job| {
            let (bytes, name) = (&loaded.bytes, &loaded.name);
            let sets = pipeline::layout(bytes, name, job, &mut Findings::default(), &mut *watch)?;
            if sets.failed_places() > 0 && failed.is_none() {
                failed = Some(sets.clone());
            }
            Ok(sets)
        })
    });
    let lines = match table {
        Ok(lines) => offcuts::prices(&lines),
        Err(r) => return refused(&r, findings, loaded.job.sheet.lengths),
    };
    let Some(failed) = failed else { return print(lines.as_bytes()) };
    let bars: String = failed.iter().map(|s| bar(&s.layout.verify)).collect();
    let printed = print(format!("{bars}{lines}").as_bytes());
    tell_failed(&failed);
    Outcome::CheckFailed.after(printed)
}

/// Tells what was laid out and where it stands.
fn tell_result(sets: &LaidSets, made: &HouseFiles, place: &Place) {
    for sheets in &made.large {
        tell_line(&command::no_pictures(*sheets));
    }
    if let Some(why) = place.elsewhere {
        tell_line(command::in_working_folder(why));
    }
    for laid in sets.iter().map(|s| &s.layout) {
        let folder = &place.folder;
        let to = set_folder(laid).map_or(folder.to_owned(), |inner| folder.join(inner));
        tell(&summary::text(laid));
        let names: Vec<&str> = made.at_top.iter().map(String::as_str).collect();
        tell_line(&command::wrote(&terminal(&to.display().to_string()), &names));
    }
}
