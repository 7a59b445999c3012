//! Panels of one kind in a pool: how many there are, and what one holds, costs and weighs.

use super::rules::{Rules, UNIT};

/// Panels of one kind.
#[derive(Clone, Debug)]
pub(super) struct OfKind {
    /// Those not cut.
    pub spare: Vec<usize>,
    /// How many there are, cut or not, less whole ones.
    pub made: usize,
    /// Whole panels between end pieces.
    pub wholes: i64,
    /// What a panel holds, what it costs, what it weighs.
    pub room: i64,
    pub unit: i64,
    pub weight: usize,
}

impl OfKind {
    pub(super) fn new(rules: &Rules, kind: usize) -> Self {
        OfKind {
            spare: Vec::new(),
            made: 0,
            wholes: 0,
            room: rules.panel_of(kind) + rules.kerf,
            unit: rules.unit(kind),
            weight: usize::try_from(rules.weight_of(kind)).unwrap_or(1),
        }
    }

    /// Panels in use.
    #[inline]
    pub(super) fn used(&self) -> usize {
        self.made - self.spare.len() + usize::try_from(self.wholes).unwrap_or(0)
    }
}

/// One scale for all kinds, a panel's cost and room: the one on which no leftover is worth more of its
/// panel.
pub(super) fn scale_of_leftovers(kinds: &[OfKind]) -> (i64, i64) {
    let mut best = (UNIT, 1);
    for (i, k) in kinds.iter().enumerate() {
        let squared = |unit: i64, room: i64| i128::from(unit) * i128::from(room) * i128::from(room);
        let cheaper = squared(k.unit, best.1) < squared(best.0, k.room);
        if i == 0 || cheaper {
            best = (k.unit, k.room);
        }
    }
    best
}
