//! What every line needs: waste, and shares by wall.

use crate::model::layout::{Layout, Share, Zone};

/// Percent of what is bought that is not used.
pub(super) fn waste(used: f64, bought: f64) -> f64 {
    if bought > 0.0 { (100.0 * (1.0 - used / bought)).max(0.0) } else { 0.0 }
}

/// Whole units, rounded up (FACTS TK-24); the last bit of a sum does not call for one more.
pub(super) fn whole(units: f64) -> f64 {
    (units - 1e-9).ceil().max(0.0)
}

/// Shares by wall, in the layout's order.
#[derive(Debug, Default)]
pub(super) struct Shares(Vec<Share>);

impl Shares {
    /// Adds to the share of a wall and zone.
    pub(super) fn add(
        &mut self,
        (elevation, wall): (&str, &str),
        zone: Option<Zone>,
        pieces: usize,
        net: f64,
    ) {
        let mine = |s: &&mut Share| s.wall == wall && s.elevation == elevation && s.zone == zone;
        match self.0.iter_mut().find(mine) {
            Some(s) => {
                s.pieces += pieces;
                s.net += net;
            }
            None => self.0.push(Share {
                elevation: elevation.to_owned(),
                wall: wall.to_owned(),
                zone,
                pieces,
                net,
            }),
        }
    }

    /// Their sum.
    pub(super) fn net(&self) -> f64 {
        self.0.iter().map(|s| s.net).sum()
    }

    /// The shares, walls as in the layout, the wall below its gable.
    pub(super) fn done(mut self, layout: &Layout) -> Vec<Share> {
        let order: Vec<&str> = layout.walls().map(|(_, w)| w.id.as_str()).collect();
        let place = |s: &Share| order.iter().position(|w| *w == s.wall).unwrap_or(order.len());
        self.0.sort_by(|a, b| place(a).cmp(&place(b)).then(a.zone.cmp(&b.zone)));
        self.0
    }

    /// The same shares in another unit.
    pub(super) fn scaled(shares: &[Share], by: f64) -> Vec<Share> {
        shares.iter().map(|s| Share { net: s.net * by, ..s.clone() }).collect()
    }
}
