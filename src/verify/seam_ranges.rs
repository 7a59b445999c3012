//! Ranges of the places where the seams of a part may stand.

use super::scan::{Spans, joined, without};
use super::seam_options::{Part, Pattern};

/// Beyond all places of a house, inches.
const FAR: f64 = 1e7;

/// The ranges of a part in two: one half of them each, or of one range.
pub(super) fn halves(of: &[Spans]) -> [Vec<Spans>; 2] {
    let count: usize = of.iter().map(Vec::len).sum();
    let mut out = [Vec::new(), Vec::new()];
    let mut n = 0;
    for spans in of {
        let mut parted = [Spans::new(), Spans::new()];
        for (low, high) in spans {
            if count == 1 {
                let middle = (low + high) / 2.0;
                parted[0].push((*low, middle));
                parted[1].push((middle, *high));
            } else {
                parted[usize::from(n >= count / 2)].push((*low, *high));
            }
            n += 1;
        }
        let [low, high] = parted;
        out[0].push(low);
        out[1].push(high);
    }
    out
}

/// Seams of all the patterns of a part that may still be taken, each as often as it has ranges.
pub(super) fn seams(part: &Part, ranges: &[Spans]) -> usize {
    part.patterns.iter().zip(ranges).map(|(p, r)| p.offsets.len() * r.len()).sum()
}

/// Whether seams of two parts may stand near one another at all.
pub(super) fn reach(a: &Part, b: &Part, apart: f64) -> bool {
    a.reach.0 - apart < b.reach.1 && b.reach.0 - apart < a.reach.1
}

/// What of a pattern's ranges goes with some place of another part.
pub(super) fn supported(
    (pattern, own): (&Pattern, &Spans),
    (others, theirs): (&[Pattern], &Vec<Spans>),
    apart: f64,
) -> Spans {
    if own.is_empty() {
        return Spans::new();
    }
    let mut with = Spans::new();
    for (other, spans) in others.iter().zip(theirs) {
        if spans.is_empty() {
            continue;
        }
        // Differences of the first seams that bring two seams too near.
        let near = other.offsets.iter().flat_map(|theirs| {
            pattern.offsets.iter().map(move |own| (theirs - own - apart, theirs - own + apart))
        });
        let all = vec![(-FAR, FAR)];
        let apart_by = without(&all, &joined(near.collect()));
        for (low, high) in spans {
            with.extend(apart_by.iter().map(|(from, to)| (low + from, high + to)));
        }
    }
    let with = joined(with);
    without(own, &without(&vec![(-2.0 * FAR, 2.0 * FAR)], &with))
}
