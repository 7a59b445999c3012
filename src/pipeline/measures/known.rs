//! Places in a line that are known, each with how far it goes, and what goes between them.

use crate::geom::tol::ROUNDING;
use crate::real::Total;

/// Lines of openings that lie so near to one another go alike, inches. Of our own choosing, no source.
pub(super) const ALIKE: f64 = 1.0;

/// Places in order with how far each goes, of those in one line the mean: each rank as near to one another as it says,
/// and where none of the ranks before it is so near, so that a band over windows whose edges are blank goes as
/// their heads do.
pub(super) fn knots<const N: usize>(ranks: [(Vec<(f64, f64)>, f64); N]) -> Vec<(f64, f64)> {
    let mut all: Vec<(f64, f64)> = Vec::new();
    for (mut rank, alike) in ranks {
        rank.retain(|o| all.iter().all(|k| (k.0 - o.0).abs() > alike));
        all.extend(means(rank, alike));
    }
    all.sort_by(|a, b| a.0.total_cmp(&b.0));
    all
}

fn means(mut all: Vec<(f64, f64)>, alike: f64) -> Vec<(f64, f64)> {
    all.sort_by(|a, b| a.0.total_cmp(&b.0));
    let lines = all.chunk_by(|a, b| (a.0 - b.0).abs() <= alike);
    let mean = |l: &[(f64, f64)]| {
        let n = l.len().max(1) as f64;
        (l.iter().map(|k| k.0).total() / n, l.iter().map(|k| k.1).total() / n)
    };
    lines.map(mean).collect()
}

/// How far a place goes by places that are known.
pub(super) fn through(known: &[(f64, f64)], v: f64) -> f64 {
    let after = known.partition_point(|k| k.0 < v);
    match (after.checked_sub(1).and_then(|i| known.get(i)), known.get(after)) {
        (Some(a), Some(b)) => between(*a, *b, v),
        (Some(k), None) | (None, Some(k)) => k.1,
        (None, None) => 0.0,
    }
}

/// The value at a place between two places with theirs, whichever comes first; beyond them the nearer one's.
pub(super) fn on_line(a: (f64, f64), b: (f64, f64), v: f64) -> f64 {
    if a.0 <= b.0 { between(a, b, v) } else { between(b, a, v) }
}

/// The value at a place between two places with theirs; beyond them the nearer one's.
pub(super) fn between((a, at_a): (f64, f64), (b, at_b): (f64, f64), v: f64) -> f64 {
    if b - a <= ROUNDING {
        return at_a;
    }
    at_a + ((v - a) / (b - a)).clamp(0.0, 1.0) * (at_b - at_a)
}
