//! Places by where they lie across the drawing.

use crate::geom::vocabulary::{Point, Rect};

/// Places sorted across, so that what lies in a region is found without looking at all the rest.
pub(super) struct Across(Vec<(Point, usize)>);

impl Across {
    pub(super) fn of(places: impl Iterator<Item = (Point, usize)>) -> Self {
        let mut all: Vec<(Point, usize)> = places.collect();
        all.sort_by(|a, b| a.0.x.total_cmp(&b.0.x));
        Across(all)
    }

    /// What lies in a region, in the order it was drawn.
    pub(super) fn within(&self, region: Rect) -> Vec<usize> {
        let from = self.0.partition_point(|(p, _)| p.x < region.x0);
        let to = self.0.partition_point(|(p, _)| p.x <= region.x1);
        let across = self.0.get(from..to).unwrap_or_default().iter();
        let mut found: Vec<usize> =
            across.filter(|(p, _)| region.contains(*p)).map(|(_, i)| *i).collect();
        found.sort_unstable();
        found
    }
}
