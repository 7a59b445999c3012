//! What a revision of a drawing changes.

use std::path::Path;
use std::process::ExitCode;

use super::args::{Compare, Reading, Told};
use super::earlier::{self, Earlier};
use super::files;
use super::loading::load;
use super::outcome::tell_failed;
use super::place::Place;
use super::progress::lay;
use super::takeoff::{Prices, priced, prices};
use super::terminal::{print, refused, tell_line, tell_recovered};
use crate::clean::terminal;
use crate::finding::{Findings, Refusal};
use crate::layout::set::LaidSets;
use crate::outputs::compare as outputs;
use crate::pipeline;
use crate::units::LengthStyle;
use crate::wording::command;
use crate::write::{compare, json};

/// Tells what is changed, and writes its files where a folder is given.
pub(super) fn run(a: &Compare) -> ExitCode {
    a.out.iter().for_each(|folder| tell_recovered(folder));
    let mut findings = Findings::default();
    let mut both = || {
        let prices = prices(a.prices.as_deref())?;
        let old = side(&a.old, a, prices.as_ref(), &mut findings)?;
        Ok((old, side(&a.new, a, prices.as_ref(), &mut findings)?))
    };
    let (old, new): (LaidSets, LaidSets) = match both() {
        Ok(both) => both,
        Err(r) => return refused(&r, &findings, LengthStyle::default()),
    };
    let style = new.house.layout.job.sheet.lengths;
    let comparison = pipeline::compared(&old, &new, a.letter.as_deref());
    if let Some(folder) = &a.out {
        let written = outputs::files(&new, &comparison, !a.no_pictures)
            .and_then(|files| write(folder, a, &files).map(|()| files));
        match written {
            Ok(files) if !a.quiet => {
                let at_top = files.iter().map(|f| f.0.as_str()).filter(|n| !n.contains('/'));
                let names: Vec<&str> = at_top.collect();
                let to = terminal(&folder.display().to_string());
                tell_line(&command::wrote(&to, &names));
            }
            Ok(_) => {}
            Err(r) => return refused(&r, &findings, style),
        }
    }
    let printed = match a.format {
        _ if a.quiet => ExitCode::SUCCESS,
        Told::Report => print(compare::text(&comparison, &new.house.layout.job).as_bytes()),
        Told::Json => print(&json::comparison(&comparison)),
    };
    [&old, &new].into_iter().for_each(tell_failed);
    let code = match () {
        () if comparison.check_failed.contains(&true) => 4,
        () if a.strict && !comparison.is_same_house() => 3,
        () => 0,
    };
    if printed == ExitCode::SUCCESS { ExitCode::from(code) } else { printed }
}

fn write(folder: &Path, a: &Compare, files: &[(String, Vec<u8>)]) -> Result<(), Refusal> {
    let name = a.new.file_name().map(|n| n.to_string_lossy().into_owned()).unwrap_or_default();
    let place = Place {
        folder: folder.to_owned(),
        source: a.new.clone(),
        drawing: name,
        by_default: false,
        elsewhere: None,
        made_of: None,
    };
    let mut sources = vec![a.old.clone(), a.new.clone()];
    sources.extend(a.job.iter().chain(&a.prices).cloned());
    files::write_folder(&place, files, &sources, a.replace)
}

/// A layout that was written, or a drawing laid out in memory; priced where there are prices.
fn side(
    path: &Path,
    a: &Compare,
    prices: Option<&Prices>,
    findings: &mut Findings,
) -> Result<LaidSets, Refusal> {
    let sets = match earlier::of(path)? {
        Earlier::Layout(sets) => *sets,
        Earlier::Drawing => {
            let beside = path.with_extension("toml");
            let job = a.job.clone().or_else(|| beside.is_file().then_some(beside));
            let reading = Reading {
                drawing: path.to_owned(),
                job,
                known: None,
                page: Vec::new(),
                measured: None,
            };
            let loaded = load(&reading, findings)?;
            lay(&loaded, findings, a.quiet)?
        }
    };
    priced(sets, prices)
}
