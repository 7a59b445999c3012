//! How far siding reaches down and up beside an upright line.

use crate::extract::patch::Patch;
use crate::geom::polygon::{Polygon, sides};
use crate::geom::tol::LEVEL;

/// Where siding is looked for beside a line, inches from it: a board, a post or a pane may stand at it.
const BESIDE: [f64; 5] = [1.0, 2.5, 4.0, 6.0, 8.0];
/// Parts of siding over one another with less than this between them are one wall's, inches: a porch
/// roof or a row of windows (common practice, no source).
const APART: f64 = 72.0;

/// Parts nearer than this to one another are not parted, inches.
const PARTED: f64 = 1.0;

/// Foot and head of the siding beside a line; a head that slopes is no measure.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Column {
    pub(super) low: f64,
    pub(super) high: f64,
    pub(super) level_top: bool,
}

/// The siding to the left (`-1.0`) or the right (`1.0`) of `x` that belongs with what stands between
/// `low` and `high`: all of it, or what nothing parts.
pub(super) fn beside(
    patches: &[Patch],
    x: f64,
    hand: f64,
    (reach, unparted): ((f64, f64), bool),
) -> Option<Column> {
    let apart = if unparted { PARTED } else { APART };
    let all = BESIDE.iter().filter_map(|off| at(patches, x + hand * off, reach, apart));
    all.reduce(|a, b| Column {
        low: a.low.min(b.low),
        high: a.high.max(b.high),
        level_top: if a.high >= b.high { a.level_top } else { b.level_top },
    })
}

fn at(patches: &[Patch], x: f64, (low, high): (f64, f64), apart: f64) -> Option<Column> {
    let mut parts: Vec<Column> = patches.iter().flat_map(|p| crossed(&p.shape, x)).collect();
    parts.sort_by(|a, b| a.low.total_cmp(&b.low));
    let mut joined: Vec<Column> = Vec::new();
    for p in parts {
        match joined.last_mut().filter(|l| p.low - l.high <= apart) {
            Some(l) if p.high > l.high => (l.high, l.level_top) = (p.high, p.level_top),
            Some(_) => {}
            None => joined.push(p),
        }
    }
    let shared = |c: &Column| c.high.min(high) - c.low.max(low);
    joined.into_iter().filter(|c| shared(c) > 0.0).max_by(|a, b| shared(a).total_cmp(&shared(b)))
}

/// The heights at which a shape covers a plumb line.
fn crossed(shape: &Polygon, x: f64) -> Vec<Column> {
    let mut found: Vec<(f64, bool)> = shape
        .rings()
        .flat_map(|r| sides(r))
        .filter(|(a, b)| (a.x > x) != (b.x > x))
        .map(|(a, b)| (a.y + (x - a.x) / (b.x - a.x) * (b.y - a.y), (a.y - b.y).abs() <= LEVEL))
        .collect();
    found.sort_by(|a, b| a.0.total_cmp(&b.0));
    let column = |c: &[(f64, bool)]| Column { low: c[0].0, high: c[1].0, level_top: c[1].1 };
    found.chunks_exact(2).map(column).collect()
}
