//! Layouts that were written before, read back: a folder of results, or its `layout.json`.

use std::fs;
use std::path::Path;

use super::args::{Layout, Reading};
use super::files;
use crate::finding::Refusal;
use crate::finding::files::FileFinding;
use crate::job::Job;
use crate::layout::at_hand::AtHand;
use crate::layout::set::LaidSets;
use crate::outputs::names::ZONE;
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
        let layout = layout_json::layout(&files::read(path)?)?;
        return Ok(Earlier::Layout(Box::new(reread(layout, Vec::new()))));
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
    let read = |at: &Path| -> Result<crate::layout::Layout, Refusal> {
        layout_json::layout(&files::read(&at.join(LAYOUT))?)
    };
    let house = read(path)?;
    let inner = fs::read_dir(path).map(|all| all.flatten().map(|e| e.path()).collect::<Vec<_>>());
    let mut zones: Vec<_> = inner.unwrap_or_default();
    zones.retain(|p| {
        let name = p.file_name().map(|n| n.to_string_lossy().into_owned()).unwrap_or_default();
        name.starts_with(ZONE) && p.join(LAYOUT).is_file()
    });
    zones.sort();
    let zones = zones.iter().map(|p| read(p)).collect::<Result<Vec<_>, _>>()?;
    Ok(reread(house, zones))
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
pub(super) fn given(a: &Layout, reading: &Reading, job: &Job) -> Result<Option<Given>, Refusal> {
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
