//! What stands at each wall, looked up by the wall's name: large houses are checked in time that grows
//! with their size.

use std::collections::BTreeMap;

use crate::layout::laid::LaidHouse;
use crate::layout::wall::{LaidElevation, LaidOpening, LaidWall};
use crate::model::corner::{Corner, CornerSide};
use crate::model::trim::TrimPiece;

/// Trim, corners and walls of a layout by wall.
pub(crate) struct ByWall<'a> {
    trims: BTreeMap<&'a str, Vec<&'a TrimPiece>>,
    frames: BTreeMap<&'a str, BTreeMap<&'a str, Vec<&'a TrimPiece>>>,
    sides: BTreeMap<&'a str, Vec<(&'a Corner, &'a CornerSide)>>,
    walls: BTreeMap<&'a str, Vec<(&'a LaidElevation, &'a LaidWall)>>,
}

impl<'a> ByWall<'a> {
    pub(crate) fn of(layout: &'a LaidHouse) -> Self {
        let mut out = ByWall {
            trims: BTreeMap::new(),
            frames: BTreeMap::new(),
            sides: BTreeMap::new(),
            walls: BTreeMap::new(),
        };
        for t in &layout.trims {
            out.trims.entry(&t.wall).or_default().push(t);
            if let Some(o) = &t.opening {
                out.frames.entry(&t.wall).or_default().entry(o).or_default().push(t);
            }
        }
        for c in &layout.corners {
            for k in &c.sides {
                out.sides.entry(&k.wall).or_default().push((c, k));
            }
        }
        for (e, w) in layout.walls() {
            out.walls.entry(&w.id).or_default().push((e, w));
        }
        out
    }

    /// Trim on a wall, as the layout has it.
    pub(crate) fn trims(&self, wall: &str) -> &[&'a TrimPiece] {
        self.trims.get(wall).map_or(&[], Vec::as_slice)
    }

    /// Trim of an opening that stands on its wall.
    pub(crate) fn frame(&self, wall: &str, o: &LaidOpening) -> &[&'a TrimPiece] {
        let on = self.frames.get(wall);
        on.and_then(|f| f.get(o.id.as_str())).map_or(&[], Vec::as_slice)
    }

    /// Sides of corners that name a wall.
    pub(crate) fn sides(&self, wall: &str) -> &[(&'a Corner, &'a CornerSide)] {
        self.sides.get(wall).map_or(&[], Vec::as_slice)
    }

    /// Walls of a name.
    pub(crate) fn walls(&self, wall: &str) -> &[(&'a LaidElevation, &'a LaidWall)] {
        self.walls.get(wall).map_or(&[], Vec::as_slice)
    }
}
