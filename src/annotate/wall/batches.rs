//! What is cut for a wall: pieces of one length and cut at one setting of the stop, and the panels that are
//! opened, taken over and laid aside.

use std::collections::{BTreeMap, BTreeSet};

use crate::annotate::cuts_of::{CutKind, Cuts};
use crate::geom::tol::SAME;
use crate::layout::Layout;
use crate::layout::piece::Piece;
use crate::layout::wall::{LaidElevation, LaidWall};

/// Pieces cut at one setting of the stop.
pub(super) struct Batch<'a> {
    /// Length they are cut to, inches.
    pub(super) length: f64,
    /// Laid as they come, no saw touches them.
    pub(super) whole: bool,
    /// Square ones first, then by what else is cut; of each kind course by course from the bottom.
    pub(super) kinds: BTreeMap<CutKind, Vec<&'a Piece>>,
}

impl Batch<'_> {
    /// How many there are.
    pub(super) fn count(&self) -> usize {
        self.kinds.values().map(Vec::len).sum()
    }
}

/// Batches of a wall, the longest first; what is cut along a rake is not among them.
pub(super) fn batches<'a>(layout: &Layout, w: &'a LaidWall, cuts: &Cuts) -> Vec<Batch<'a>> {
    let style = layout.job.sheet.lengths;
    let stock: BTreeMap<&str, f64> =
        layout.panels.iter().map(|p| (p.id.as_str(), p.stock)).collect();
    let mut by: BTreeMap<(i64, bool), Batch> = BTreeMap::new();
    for p in w.courses.iter().flat_map(|k| &k.runs).flat_map(|r| &r.pieces) {
        let kind = cuts.kind(p);
        if kind == CutKind::Raked {
            continue;
        }
        let length = style.to_cut(p.length);
        let panel = stock.get(p.panel.as_str()).copied().unwrap_or(f64::INFINITY);
        let whole = kind == CutKind::Square && p.start <= SAME && p.end >= panel - SAME;
        let key = (-(length * 1024.0).round() as i64, !whole);
        let empty = || Batch { length, whole, kinds: BTreeMap::new() };
        let batch = by.entry(key).or_insert_with(empty);
        batch.kinds.entry(kind).or_default().push(p);
    }
    by.into_values().collect()
}

/// The walls in the order of work; what that leaves out comes last.
pub(in crate::annotate) fn in_order(layout: &Layout) -> Vec<(&LaidElevation, &LaidWall)> {
    let places: BTreeMap<&str, usize> =
        layout.work.walls.iter().enumerate().map(|(i, w)| (w.wall.as_str(), i)).collect();
    let mut walls: Vec<(&LaidElevation, &LaidWall)> = layout.walls().collect();
    walls.sort_by_key(|(_, w)| places.get(w.id.as_str()).copied().unwrap_or(usize::MAX));
    walls
}

/// Which walls each panel goes to, by their numbers in the order of walls.
pub(in crate::annotate) struct PanelWalls<'a> {
    walls: BTreeMap<&'a str, BTreeSet<usize>>,
}

/// The panels of a wall.
#[derive(Debug, Default)]
pub(super) struct PanelsOf<'a> {
    /// Opened here.
    pub(super) opened: Vec<&'a str>,
    /// Of these an offcut waited, with the wall where each was opened.
    pub(super) taken: BTreeMap<usize, Vec<&'a str>>,
    /// Of these an offcut waits for a later wall.
    pub(super) aside: BTreeMap<usize, Vec<&'a str>>,
}

impl<'a> PanelWalls<'a> {
    pub(in crate::annotate) fn of(layout: &'a Layout) -> Self {
        let mut walls: BTreeMap<&str, BTreeSet<usize>> = BTreeMap::new();
        for (i, (_, w)) in in_order(layout).into_iter().enumerate() {
            for p in w.courses.iter().flat_map(|k| &k.runs).flat_map(|r| &r.pieces) {
                walls.entry(p.panel.as_str()).or_default().insert(i);
            }
        }
        PanelWalls { walls }
    }

    pub(super) fn at(&self, wall: usize) -> PanelsOf<'a> {
        let mut out = PanelsOf::default();
        for (panel, walls) in &self.walls {
            if !walls.contains(&wall) {
                continue;
            }
            match walls.first() {
                Some(first) if *first < wall => out.taken.entry(*first).or_default().push(panel),
                _ => out.opened.push(panel),
            }
            if let Some(next) = walls.range(wall + 1..).next() {
                out.aside.entry(*next).or_default().push(panel);
            }
        }
        out
    }
}
