//! Sheets to tape a house by.

use std::path::PathBuf;
use std::process::ExitCode;

use super::args::Measure;
use super::files;
use super::loading::{load, sources};
use super::terminal::{refused, tell, tell_line, tell_recovered};
use crate::clean::terminal;
use crate::finding::{Findings, Refusal};
use crate::model::seam::Effort;
use crate::outputs::measures;
use crate::pipeline;
use crate::pipeline::measures::{measures as measured, tell_left_out};
use crate::units::LengthStyle;
use crate::wording::command;
use crate::write::findings::findings_text;

/// Writes the table and the sheets; what was filled in is never written over without being asked.
pub(super) fn run(a: &Measure) -> ExitCode {
    let folder = folder(a);
    tell_recovered(&folder);
    let mut findings = Findings::default();
    match written(a, &folder, &mut findings) {
        Ok(names) => {
            let names: Vec<&str> = names.iter().map(String::as_str).collect();
            tell_line(&command::wrote(&terminal(&folder.display().to_string()), &names));
            ExitCode::SUCCESS
        }
        Err(r) => refused(&r, &findings, LengthStyle::default()),
    }
}

fn folder(a: &Measure) -> PathBuf {
    a.out.clone().unwrap_or_else(|| {
        let stem = a.reading.drawing.file_stem().map(|s| s.to_string_lossy().into_owned());
        let stem = stem.filter(|s| s != "-").unwrap_or_else(|| "drawing".to_owned());
        a.reading.drawing.with_file_name(format!("{stem}-measure"))
    })
}

fn written(
    a: &Measure,
    folder: &std::path::Path,
    findings: &mut Findings,
) -> Result<Vec<String>, Refusal> {
    let loaded = load(&a.reading, findings)?;
    // A careful crew's layout says as well which pieces meet a corner, and is there at once.
    let mut quick = loaded.job.clone();
    quick.seams.effort = Effort::Crew;
    let (bytes, name) = (&loaded.bytes, &loaded.name);
    let house = pipeline::reading(bytes, name, &quick, &mut Findings::default())?.house;
    let layout = pipeline::layout(bytes, name, &quick, findings, &mut |_| {})?.house.layout;
    let all = measured(&house, &layout);
    let list = measures::files(&layout, &all)?;
    files::write_beside(folder, &list, &sources(&a.reading, &loaded), a.replace)?;
    let mut untaped = Findings::default();
    tell_left_out(&house, &mut untaped);
    tell(&findings_text(untaped.all(), layout.job.sheet.lengths));
    Ok(list.into_iter().map(|f| f.0).collect())
}
