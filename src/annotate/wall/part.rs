//! Which of the sheets of a wall that takes several.

/// Which of a wall's sheets.
#[derive(Clone, Copy)]
pub(super) struct Part {
    pub(super) index: usize,
    pub(super) count: usize,
    pub(super) across: usize,
}

impl Part {
    /// Number of the part so many sheets across and up, from 1.
    pub(super) fn beside(self, dx: i32, dy: i32) -> Option<usize> {
        let (column, row) =
            ((self.index % self.across) as i32 + dx, (self.index / self.across) as i32 + dy);
        let at = row * self.across as i32 + column;
        let inside = column >= 0 && column < self.across as i32 && row >= 0;
        (inside && (at as usize) < self.count).then(|| at as usize + 1)
    }
}
