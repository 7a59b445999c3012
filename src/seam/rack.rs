//! Panels of one wall ordered by room: few enough for a sorted list.

/// Panels by room, then number.
#[derive(Clone, Debug, Default)]
pub(super) struct Rack(Vec<(i64, usize)>);

/// Cut panels that serve a wall, as the pool has those of the house.
#[derive(Clone, Debug, Default)]
pub(super) struct Racks {
    /// Those without a left-hand piece.
    pub no_left: Rack,
    /// Those without a right-hand piece.
    pub no_right: Rack,
    /// All.
    pub any: Rack,
}

impl Rack {
    pub(super) fn insert(&mut self, room: i64, panel: usize) {
        let at = self.0.partition_point(|p| *p < (room, panel));
        self.0.insert(at, (room, panel));
    }

    pub(super) fn remove(&mut self, room: i64, panel: usize) {
        if let Ok(at) = self.0.binary_search(&(room, panel)) {
            self.0.remove(at);
        }
    }

    /// The panel of least room that has `room`.
    #[inline]
    pub(super) fn tightest(&self, room: i64) -> Option<usize> {
        self.0.get(self.0.partition_point(|p| p.0 < room)).map(|p| p.1)
    }

    /// Panels that have `room`, rising.
    #[inline]
    pub(super) fn rising(&self, room: i64) -> impl Iterator<Item = (i64, usize)> + '_ {
        self.0[self.0.partition_point(|p| p.0 < room)..].iter().copied()
    }

    /// How many there are.
    pub(super) fn len(&self) -> usize {
        self.0.len()
    }

    /// The panel of a rank, the emptiest being of rank 0.
    pub(super) fn emptiest(&self, rank: usize) -> Option<usize> {
        let at = self.0.len().checked_sub(rank + 1)?;
        self.0.get(at).map(|p| p.1)
    }
}
