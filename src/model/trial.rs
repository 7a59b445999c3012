//! Jobs that a drawing is tried with, and what its reading comes to.

use super::guess::LayerGuess;
use crate::units::Unit;

/// What a reading comes to.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Reached {
    /// Whether there is a house to lay out, and no error.
    pub usable: bool,
    /// Whether walls are taken from siding that is drawn rather than from outlines.
    pub from_siding: bool,
    /// Elevations with walls.
    pub elevations: usize,
    /// Walls.
    pub walls: usize,
    /// Openings on them.
    pub openings: usize,
    /// Area of the walls less openings, square feet.
    pub area: f64,
    /// How much the walls take of what is drawn of the facades, percent.
    pub percent: f64,
    /// Errors.
    pub errors: usize,
    /// Warnings.
    pub warnings: usize,
    /// Remarks.
    pub remarks: usize,
}

/// Walls are the same if their area is, but for this share. Of our own choosing: no source.
const SAME_AREA: f64 = 0.01;

impl Reached {
    /// Whether the walls are those of another reading.
    pub fn has_walls_of(&self, other: &Reached) -> bool {
        let near = (self.area - other.area).abs() <= SAME_AREA * other.area;
        self.walls == other.walls && near
    }

    /// Whether it is as good as another reading in everything.
    pub fn is_as_good_as(&self, other: &Reached) -> bool {
        !other.usable
            || (self.usable
                && self.has_walls_of(other)
                && self.openings >= other.openings
                && self.warnings <= other.warnings)
    }

    /// Whether a layout of it is better than that of a reading without a job: there is none without, or it
    /// has the same walls with more openings, or fewer warnings.
    pub fn is_better_than(&self, plain: &Reached) -> bool {
        if !self.usable || !plain.usable {
            return self.usable;
        }
        // More openings on the same walls leave less of them.
        let same = self.walls == plain.walls && self.openings >= plain.openings;
        same && (self.openings, plain.warnings) > (plain.openings, self.warnings)
    }
}

/// A job that a drawing is tried with.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct JobGuess {
    /// The drawing's unit, where its header is wrong or silent.
    pub unit: Option<Unit>,
    /// Whether layers are read that are off.
    pub hidden_layers: bool,
    /// What layers mean.
    pub layers: Vec<LayerGuess>,
    /// What reading with it comes to.
    pub reached: Reached,
}

/// What a drawing comes to without a job, and the jobs that lead farther, the best first.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Suggested {
    /// Without.
    pub plain: Reached,
    /// Jobs that lead to a layout better than without.
    pub jobs: Vec<JobGuess>,
}
