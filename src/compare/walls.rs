//! Walls of one elevation, paired by what they cover.

use super::shape::{Shift, differs, moved, overlap, plain};
use crate::layout::wall::LaidElevation;

/// A wall in both layouts, by its places in its elevations; `by` is how far it was moved as a whole, on the
/// new elevation.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct WallPair {
    /// Elevation of the old layout, and the wall among its walls.
    pub(super) old: (usize, usize),
    /// Elevation of the new layout, and the wall among its walls.
    pub(super) new: (usize, usize),
    /// How far it was moved as a whole: right and up.
    pub(super) by: [f64; 2],
}

/// What two outlines must have in common to be one wall.
const ONE: f64 = 0.2;

/// The walls of two elevations that are one: those that cover most in common, then those of one shape.
pub(super) fn pairs(
    (old, new): (&LaidElevation, &LaidElevation),
    at: (usize, usize),
    shift: Shift,
) -> Vec<WallPair> {
    let was: Vec<Vec<[f64; 2]>> = old.walls.iter().map(|w| plain(&shift.ring(w.drawn()))).collect();
    let is: Vec<Vec<[f64; 2]>> = new.walls.iter().map(|w| plain(w.drawn())).collect();
    let mut guesses: Vec<(bool, f64, usize, usize)> = Vec::new();
    for (i, a) in was.iter().enumerate() {
        for (j, b) in is.iter().enumerate() {
            let shared = overlap(a, b);
            if shared >= ONE {
                guesses.push((false, shared, i, j));
            } else if let Some(by) = moved(a, b) {
                guesses.push((true, -by[0].abs() - by[1].abs(), i, j));
            }
        }
    }
    guesses
        .sort_by(|a, b| a.0.cmp(&b.0).then(b.1.total_cmp(&a.1)).then((a.2, a.3).cmp(&(b.2, b.3))));
    let mut out: Vec<WallPair> = Vec::new();
    for (.., i, j) in guesses {
        if out.iter().all(|p| p.old.1 != i && p.new.1 != j) {
            let by = moved(&was[i], &is[j]).filter(|by| by.iter().any(|v| differs(*v, 0.0)));
            let by = by.unwrap_or_default();
            out.push(WallPair { old: (at.0, i), new: (at.1, j), by });
        }
    }
    out.sort_by_key(|p| p.new);
    out
}
