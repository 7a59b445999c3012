//! What is cut for a wall: pieces of one length and cut at one setting of the stop, and the panels that are
//! opened, taken over and laid aside.

use std::collections::{BTreeMap, BTreeSet};

use crate::annotate::cuts_of::{CutKind, Cuts};
use crate::geom::tol::SAME;
use crate::layout::Layout;
use crate::layout::piece::Piece;
use crate::layout::wall::LaidWall;

/// Pieces cut at one setting of the stop.
pub(super) struct Batch<'a> {
    /// Length they are cut to, inches.
    pub(super) length: f64,
    /// Laid as they come, no saw touches them.
    pub(super) whole: bool,
    pub(super) kind: CutKind,
    /// Course by course from the bottom.
    pub(super) pieces: Vec<&'a Piece>,
}

/// Batches of a wall, the longest first; what is cut along a rake is not among them.
pub(super) fn batches<'a>(layout: &Layout, w: &'a LaidWall, cuts: &Cuts) -> Vec<Batch<'a>> {
    let style = layout.job.sheet.lengths;
    let stock: BTreeMap<&str, f64> =
        layout.panels.iter().map(|p| (p.id.as_str(), p.stock)).collect();
    let mut by: BTreeMap<(i64, bool, CutKind), Batch> = BTreeMap::new();
    for p in w.courses.iter().flat_map(|k| &k.runs).flat_map(|r| &r.pieces) {
        let kind = cuts.kind(p);
        if kind == CutKind::Raked {
            continue;
        }
        let length = style.to_cut(p.length);
        let panel = stock.get(p.panel.as_str()).copied().unwrap_or(f64::INFINITY);
        let whole = kind == CutKind::Square && p.start <= SAME && p.end >= panel - SAME;
        let key = (-(length * 1024.0).round() as i64, !whole, kind);
        let empty = || Batch { length, whole, kind, pieces: Vec::new() };
        by.entry(key).or_insert_with(empty).pieces.push(p);
    }
    by.into_values().collect()
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
        for (i, (_, w)) in layout.walls().enumerate() {
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
