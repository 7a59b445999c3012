//! What stands at each elevation, looked up by its name once: sheets of large drawings are made in time
//! that grows with their size.

use std::collections::BTreeMap;

use crate::layout::Layout;
use crate::layout::violation::Violation;
use crate::layout::wall::LaidElevation;
use crate::model::conflict::Break;
use crate::model::corner::{CornerSide, Pairing};
use crate::model::trim::TrimPiece;
use crate::model::work::WallWork;

/// What stands at one elevation, each in the layout's order.
#[derive(Default)]
pub(super) struct AtElevation<'a> {
    /// Trim that shows.
    pub trims: Vec<&'a TrimPiece>,
    /// Sides of corners whose other wall no elevation shows.
    pub open: Vec<&'a CornerSide>,
    /// The work of its walls.
    pub work: Vec<&'a WallWork>,
    /// Broken seam rules.
    pub breaks: Vec<&'a Break>,
    /// Places that break a rule of the check, by number.
    pub failed: Vec<(usize, &'a Violation)>,
}

/// What stands at every elevation of a layout.
pub(super) struct ElevationIndex<'a> {
    by: BTreeMap<&'a str, AtElevation<'a>>,
    none: AtElevation<'a>,
}

impl<'a> ElevationIndex<'a> {
    pub(super) fn of(layout: &'a Layout) -> Self {
        let mut by: BTreeMap<&'a str, AtElevation<'a>> = BTreeMap::new();
        for t in layout.trims.iter().filter(|t| !t.kind.behind()) {
            by.entry(&t.elevation).or_default().trims.push(t);
        }
        let open = layout.corners.iter().filter(|c| c.by == Pairing::Open);
        for s in open.flat_map(|c| &c.sides) {
            by.entry(&s.elevation).or_default().open.push(s);
        }
        for w in &layout.work.walls {
            by.entry(&w.elevation).or_default().work.push(w);
        }
        for c in &layout.bound.conflicts {
            by.entry(&c.elevation).or_default().breaks.extend(&c.breaks);
        }
        for (number, v) in layout.verify.numbered() {
            if let Some(at) = &v.at {
                by.entry(&at.elevation).or_default().failed.push((number, v));
            }
        }
        ElevationIndex { by, none: AtElevation::default() }
    }

    pub(super) fn at(&self, e: &LaidElevation) -> &AtElevation<'a> {
        self.by.get(e.name.as_str()).unwrap_or(&self.none)
    }
}
