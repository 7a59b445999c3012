//! In which turn a wall comes, and at which setting of the stop a piece is cut.

use std::collections::BTreeMap;

use super::csv_cell::{Cell, count};
use crate::layout::Layout;

/// Columns of the cut list: the turn of the wall, and the number of the batch on its saw list, both from 1.
pub(super) struct SawPlaces<'a>(BTreeMap<&'a str, (usize, usize)>);

impl<'a> SawPlaces<'a> {
    pub(super) fn of(layout: &'a Layout) -> Self {
        let mut places = BTreeMap::new();
        for (turn, wall) in layout.work.walls.iter().enumerate() {
            for (n, batch) in wall.saw.batches.iter().enumerate() {
                let marks = batch.pieces.iter().map(|p| p.mark.as_str());
                places.extend(marks.map(|mark| (mark, (turn + 1, n + 1))));
            }
        }
        SawPlaces(places)
    }

    /// The cells of a piece.
    pub(super) fn cells(&self, mark: &str) -> [Cell; 2] {
        match self.0.get(mark) {
            Some((turn, batch)) => [count(*turn as u64), count(*batch as u64)],
            None => [Cell::BLANK; 2],
        }
    }
}
