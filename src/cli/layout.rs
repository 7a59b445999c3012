//! The main job: everything about a house into a folder.

use std::process::ExitCode;

use super::args::{Layout, Overlay};
use super::earlier;
use super::files;
use super::loading::{Loaded, load, sources};
use super::outcome::{Outcome, tell_failed};
use super::place::{self, Place};
use super::progress::{lay_keeping, watched};
use super::takeoff::{priced, prices};
use super::terminal::{print, refused, refused_usage, tell, tell_line, tell_recovered};
use crate::clean::terminal;
use crate::finding::job::{JobFinding, JobSource};
use crate::finding::{FindingKind, Findings, Refusal};
use crate::job::Job;
use crate::layout::set::LaidSets;
use crate::outputs::house::{self, HouseFiles, Wanted};
use crate::outputs::names::set_folder;
use crate::pipeline;
use crate::pipeline::waiting_prices::waiting_prices;
use crate::units::LengthStyle;
use crate::wording::{command, offcuts};
use crate::write::alarm::bar;
use crate::write::summary;

/// Lays the house out and writes its files.
pub(super) fn run(a: &Layout) -> ExitCode {
    let place = place::of(&a.reading.drawing, a.out.as_deref());
    tell_recovered(&place.folder);
    let mut findings = Findings::default();
    // Prices are read first: a fault in them shall not wait for the search.
    let mut read = || Ok((load(&a.reading, &mut findings)?, prices(a.prices.as_deref())?));
    let (mut loaded, prices) = match read() {
        Ok(l) => l,
        Err(r) => return refused(&r, &findings, LengthStyle::default()),
    };
    let style = loaded.job.sheet.lengths;
    if let Err(r) = with_options(&mut loaded.job, a) {
        return refused_usage(&r);
    }
    if a.compare_waiting {
        return compare_waiting(&loaded, &findings, a.quiet);
    }
    let old = match earlier::given(a, &loaded.job) {
        Ok(old) => old,
        Err(r) => return refused(&r, &findings, style),
    };
    let earlier = old.as_ref().map(earlier::Given::earlier);
    let mut sources = sources(&a.reading);
    sources.extend(a.prices.as_deref());
    sources.extend(a.keep.as_deref());
    sources.extend(a.stock.as_deref());
    // Told before the search, not after it.
    if let Err(r) = files::ready(&place, &sources, a.replace) {
        return refused(&r, &findings, style);
    }
    let laid = lay_keeping(&loaded, earlier.as_ref(), &mut findings, a.quiet)
        .and_then(|sets| priced(sets, prices.as_ref()));
    let sets = match laid {
        Ok(l) => l,
        Err(r) => return refused(&r, &findings, style),
    };
    let wanted = Wanted { pictures: !a.no_pictures, overlay_alone: a.overlay == Overlay::Separate };
    let made = match house::files(&sets, &loaded.bytes, wanted) {
        Ok(m) => m,
        Err(r) => return refused(&r, &findings, style),
    };
    if let Err(r) = files::write_folder(&place, &made.files, &sources, a.replace) {
        return refused(&r, &findings, style);
    }
    if !a.quiet {
        tell_result(&sets, &made, &place);
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

/// Paper and scale of the command line, over the job's.
fn with_options(job: &mut Job, a: &Layout) -> Result<(), Refusal> {
    let sheet = &mut job.sheet;
    sheet.paper = a.paper.clone().unwrap_or(std::mem::take(&mut sheet.paper));
    sheet.scale = a.scale.clone().or(sheet.scale.take());
    // The job was in order as the file gives it: what is not now is an option's fault.
    job.validate().map_err(|Refusal(mut why)| {
        if let FindingKind::Job(JobFinding::JobValue { source, .. }) = &mut why.kind {
            *source = JobSource::CommandLine;
        }
        Refusal(why)
    })
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
