//! Layouts that were written before, read back: a folder of results, or its `layout.json`.

use std::collections::BTreeSet;
use std::path::{Path, PathBuf};
use std::{fs, io};

use super::args::{self, Reading};
use super::files;
use crate::finding::Refusal;
use crate::finding::files::FileFinding;
use crate::job::Job;
use crate::layout::at_hand::AtHand;
use crate::layout::set::LaidSets;
use crate::outputs::marker::{MARKER, Marker};
use crate::outputs::names::{ZONE, set_folder};
use crate::pipeline::site::{layout_json, stock_csv, ticks_json};
use crate::pipeline::{self, reread};

/// Name of a layout's file.
const LAYOUT: &str = "layout.json";

/// What a path leads to.
pub(super) enum Earlier {
    /// A layout that was written, with its zones.
    Layout(Box<LaidSets>),
    /// Something else: a drawing.
    Drawing,
}

/// Reads what a path leads to: a folder of results, a `layout.json`, or a drawing, which is left to others.
///
/// # Errors
/// `no-layout-folder` for a folder without a layout; what the reader says of a file that is none of this version.
pub(super) fn of(path: &Path) -> Result<Earlier, Refusal> {
    let json = path.extension().is_some_and(|e| e.eq_ignore_ascii_case("json"));
    if json {
        return file(path).map(|s| Earlier::Layout(Box::new(s)));
    }
    if path.is_dir() {
        folder(path).map(|s| Earlier::Layout(Box::new(s)))
    } else {
        Ok(Earlier::Drawing)
    }
}

/// Reads a folder of results: the house's layout, and those of its zones.
///
/// # Errors
/// As [`of`].
pub(super) fn folder(path: &Path) -> Result<LaidSets, Refusal> {
    if !path.join(LAYOUT).is_file() {
        let path = path.display().to_string();
        return Err(Refusal::new(FileFinding::NoLayoutFolder { path }));
    }
    file(&path.join(LAYOUT))
}

/// Reads a layout's file, and those of its zones beside it.
///
/// # Errors
/// As [`of`]; `no-layout-folder` with the folder of a zone that was laid out and is not there.
fn file(path: &Path) -> Result<LaidSets, Refusal> {
    let house = layout_json::layout(&files::read(path)?)?;
    let of_house: BTreeSet<String> = house
        .elevations
        .iter()
        .flat_map(|e| &e.zones)
        .filter(|z| z.laid_out && house.zone.is_none())
        .map(|z| z.zone.clone())
        .collect();
    if of_house.is_empty() {
        return Ok(reread(house, Vec::new()));
    }
    let folder = path.parent().filter(|p| !p.as_os_str().is_empty()).unwrap_or(Path::new("."));
    let mut zones = Vec::new();
    for at in zone_folders(folder)? {
        let zone = layout_json::layout(&files::read(&at.join(LAYOUT))?)?;
        let named = zone.zone.as_ref().is_some_and(|z| of_house.contains(z));
        if named && zone.drawing.sha256 == house.drawing.sha256 {
            zones.push(zone);
        }
    }
    let there: BTreeSet<&str> = zones.iter().filter_map(|z| z.zone.as_deref()).collect();
    let written = fs::read(folder.join(MARKER)).ok().and_then(|m| Marker::read(&m));
    for zone in of_house.iter().filter(|z| !there.contains(z.as_str())) {
        let mut of_zone = house.clone();
        of_zone.laid.zone = Some(zone.clone());
        let name = set_folder(&of_zone).unwrap_or_default();
        // A zone too small to side has no folder: none was written.
        let begins = format!("{name}/");
        let was = |m: &Marker| m.files.keys().any(|f| f.starts_with(&begins));
        if written.as_ref().is_none_or(was) {
            let path = folder.join(name).display().to_string();
            return Err(Refusal::new(FileFinding::NoLayoutFolder { path }));
        }
    }
    Ok(reread(house, zones))
}

/// Folders of zones in a folder of results, in order of their names.
fn zone_folders(folder: &Path) -> Result<Vec<PathBuf>, Refusal> {
    let unreadable = |e: io::Error| {
        let (path, system_says) = (folder.display().to_string(), e.to_string());
        Refusal::new(FileFinding::FileUnreadable { path, system_says })
    };
    let mut out = Vec::new();
    for entry in fs::read_dir(folder).map_err(unreadable)? {
        let path = entry.map_err(unreadable)?.path();
        let name = path.file_name().map(|n| n.to_string_lossy().into_owned()).unwrap_or_default();
        if name.starts_with(ZONE) && path.join(LAYOUT).is_file() {
            out.push(path);
        }
    }
    out.sort();
    Ok(out)
}

/// An earlier layout that is held, with ticks and stock as their files give them.
pub(super) struct Given {
    sets: LaidSets,
    ticked: Vec<String>,
    stock: Option<Vec<AtHand>>,
}

impl Given {
    /// As the flow takes it.
    pub(super) fn earlier(&self) -> pipeline::Earlier<'_> {
        let (ticked, stock) = (self.ticked.clone(), self.stock.clone());
        pipeline::Earlier { sets: &self.sets, ticked, stock }
    }
}

/// Reads the earlier layout that `layout` is to hold, the ticks that the job names, and the list of what lies on the
/// site; none where no earlier layout is given. Ticks stand beside the job.
///
/// # Errors
/// As [`folder`]; `ticks-unreadable`, `stock-unreadable`.
pub(super) fn given(
    a: &args::Layout,
    reading: &Reading,
    job: &Job,
) -> Result<Option<Given>, Refusal> {
    let Some(keep) = &a.keep else { return Ok(None) };
    let sets = folder(keep)?;
    let mut ticked = Vec::new();
    for name in job.built.iter().map(|b| &b.ticks).filter(|t| !t.is_empty()) {
        let beside = reading.job.as_ref().map_or_else(|| name.into(), |j| j.with_file_name(name));
        let bytes = files::read(&beside)?;
        let drawing = &sets.house.layout.drawing.sha256;
        let ticks = ticks_json::parse(&bytes, &beside.display().to_string(), drawing)?;
        ticked.extend(ticks.hung);
    }
    let panel = job.panel_stocks().first().map_or(0.0, |s| s.length);
    let stock = match &a.stock {
        Some(path) => {
            let name = path.display().to_string();
            Some(stock_csv::parse(&files::read(path)?, &name, panel)?)
        }
        None => None,
    };
    Ok(Some(Given { sets, ticked, stock }))
}
