//! A patch of drawn siding: an area covered by level course lines at one pitch.

use crate::geom::polygon::Polygon;
use crate::origin::Origin;

/// Course lines of two patches that differ by no more than this, inches, stand on one level
/// (common practice, no source).
const SAME_LEVEL: f64 = 0.125;
/// Pitches that differ by no more than this share of themselves are one (common practice, no source).
const SAME_PITCH: f64 = 0.01;

/// An area that is drawn as level siding.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Patch {
    /// What the lines cover, openings and notches left out.
    pub(crate) shape: Polygon,
    /// From one course line to the next, inches.
    pub(crate) pitch: f64,
    /// Height of one of the course lines.
    pub(crate) level: f64,
    /// Index of its layer.
    pub(crate) layer: usize,
    /// Which area of the drawing it came with: one hatch may cover several.
    pub(crate) with: usize,
    /// Place in the source.
    pub(crate) origin: Origin,
}

impl Patch {
    /// Whether the two have one pitch.
    pub(crate) fn is_as_close(&self, other: &Patch) -> bool {
        (self.pitch - other.pitch).abs() <= SAME_PITCH * self.pitch
    }

    /// Whether course lines run on from one patch to the other at the same levels, near height `y`.
    pub(crate) fn runs_on(&self, other: &Patch, y: f64) -> bool {
        let near = |p: &Patch| ((y - p.level) / p.pitch).round() * p.pitch + p.level;
        let off = (near(self) - near(other)).rem_euclid(self.pitch);
        self.is_as_close(other) && off.min(self.pitch - off) <= SAME_LEVEL
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lines_run_on_where_levels_and_pitch_agree() {
        let patch = |pitch: f64, level: f64| Patch {
            shape: Polygon::rect(0.0, 0.0, 10.0, 10.0),
            pitch,
            level,
            layer: 0,
            with: 0,
            origin: Origin::default(),
        };
        assert!(patch(4.0, 0.5).runs_on(&patch(4.0, 96.5), 50.0));
        // 98.25 is 24 pitches and 1 3/4 in over 0.5.
        assert!(!patch(4.0, 0.5).runs_on(&patch(4.0, 98.25), 50.0));
        assert!(!patch(4.0, 0.0).runs_on(&patch(8.0, 0.0), 50.0));
        // Just under a line on one side, just over it on the other.
        assert!(patch(4.0, 0.05).runs_on(&patch(4.0, -0.05), 2.0));
    }
}
