//! What every line needs: waste, shares by wall, the name of a piece.

use std::collections::BTreeMap;
use std::collections::btree_map::Entry;

use crate::job::Job;
use crate::layout::laid::LaidHouse;
use crate::model::ids::{ElevationName, WallId};
use crate::model::item::SidingPiece;
use crate::model::quantity::{Share, WallPart};
use crate::real::Total;

/// Percent of what is bought that is not used.
pub(super) fn waste(used: f64, bought: f64) -> f64 {
    if bought > 0.0 { (100.0 * (1.0 - used / bought)).max(0.0) } else { 0.0 }
}

/// Whole units, rounded up (`TakeoffFact::RoundedForSafety`); the last bit of a sum does not call for
/// one more.
pub(super) fn whole(units: f64) -> f64 {
    (units - 1e-9).ceil().max(0.0) + 0.0
}

/// What one stock length of a job's siding is.
pub(super) fn siding_piece_of(job: &Job) -> SidingPiece {
    job.product.kind.piece()
}

/// What one stock length of a layout's siding is.
pub(super) fn siding_piece(layout: &LaidHouse) -> SidingPiece {
    siding_piece_of(&layout.job)
}

/// Shares by wall, in the layout's order.
#[derive(Debug, Default)]
pub(super) struct Shares {
    list: Vec<Share>,
    /// Places in the list by elevation, wall and part of it.
    places: BTreeMap<(ElevationName, WallId, Option<WallPart>), usize>,
}

impl Shares {
    /// Adds to the share of a part of a wall.
    pub(super) fn add(
        &mut self,
        (elevation, wall): (&str, &str),
        wall_part: Option<WallPart>,
        pieces: usize,
        net: f64,
    ) {
        let (elevation, wall) = (ElevationName::from(elevation), WallId::from(wall));
        match self.places.entry((elevation.clone(), wall.clone(), wall_part)) {
            Entry::Occupied(at) => {
                if let Some(s) = self.list.get_mut(*at.get()) {
                    s.pieces += pieces;
                    s.net += net;
                }
            }
            Entry::Vacant(at) => {
                at.insert(self.list.len());
                self.list.push(Share { elevation, wall, wall_part, pieces, net });
            }
        }
    }

    /// Their sum.
    pub(super) fn net(&self) -> f64 {
        self.list.iter().map(|s| s.net).total()
    }

    /// The shares, walls as in the layout, the wall below its gable.
    pub(super) fn done(mut self, layout: &LaidHouse) -> Vec<Share> {
        let mut order: BTreeMap<&str, usize> = BTreeMap::new();
        for (i, (_, w)) in layout.walls().enumerate() {
            order.entry(w.id.as_str()).or_insert(i);
        }
        let place = |s: &Share| order.get(s.wall.as_str()).copied().unwrap_or(usize::MAX);
        self.list.sort_by(|a, b| place(a).cmp(&place(b)).then(a.wall_part.cmp(&b.wall_part)));
        self.list
    }

    /// The same shares in another unit.
    pub(super) fn scaled(shares: &[Share], by: f64) -> Vec<Share> {
        shares.iter().map(|s| Share { net: s.net * by, ..s.clone() }).collect()
    }
}
