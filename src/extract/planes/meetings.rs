//! Which patches of siding see one another: beside one another at the same heights, or over one another.

use std::collections::BTreeMap;

use crate::extract::patch::Patch;
use crate::geom::gaps::{slabs, turned};
use crate::geom::polygon::Polygon;

/// A stretch along which two patches see one another with nothing else between. Across is from the first
/// to the second; along is square to it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Stretch {
    /// Where the first ends, across.
    pub(super) from: f64,
    /// Where the second begins, across: before `from` where they overlap.
    pub(super) to: f64,
    /// Its ends, along.
    pub(super) low: f64,
    pub(super) high: f64,
}

impl Stretch {
    pub(super) fn length(&self) -> f64 {
        self.high - self.low
    }

    pub(super) fn gap(&self) -> f64 {
        self.to - self.from
    }
}

/// Stretches by the two patches that see one another along them.
pub(super) type Meetings = BTreeMap<(usize, usize), Vec<Stretch>>;

/// Patches beside one another, the left one first.
pub(super) fn beside(patches: &[Patch]) -> Meetings {
    let areas: Vec<Vec<Polygon>> = patches.iter().map(|p| vec![p.shape.clone()]).collect();
    of(&areas)
}

/// Patches over one another, the lower one first.
pub(super) fn over(patches: &[Patch]) -> Meetings {
    let areas: Vec<Vec<Polygon>> = patches.iter().map(|p| vec![turned(&p.shape)]).collect();
    of(&areas)
}

fn of(areas: &[Vec<Polygon>]) -> Meetings {
    let areas: Vec<&[Polygon]> = areas.iter().map(Vec::as_slice).collect();
    let mut out = Meetings::new();
    for slab in slabs(&areas) {
        for pair in slab.covered.windows(2) {
            let (a, b) = (&pair[0], &pair[1]);
            if a.of == b.of {
                continue;
            }
            let stretch = Stretch {
                from: (a.right.0 + a.right.1) / 2.0,
                to: (b.left.0 + b.left.1) / 2.0,
                low: slab.low,
                high: slab.high,
            };
            out.entry((a.of, b.of)).or_default().push(stretch);
        }
    }
    out
}
