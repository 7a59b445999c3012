//! The source's own lines behind a layout: drawn in gray on its sheets, and no part of it. A layout that
//! is read back from its file has none.

use crate::model::house::{Backdrop, House};

/// Lines of the source, elevation by elevation as in the layout.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Backdrops(Vec<Vec<Backdrop>>);

impl Backdrops {
    /// What each elevation of a house was drawn with.
    pub fn of_house(house: &House) -> Self {
        Backdrops(house.elevations.iter().map(|e| e.backdrop.clone()).collect())
    }

    /// Behind the elevation of this number.
    pub fn behind(&self, elevation: usize) -> &[Backdrop] {
        self.0.get(elevation).map_or(&[], Vec::as_slice)
    }
}
