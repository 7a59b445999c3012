//! Pitch, x in 12: angles of cuts, rafters, steps and gables (`DrawingFact::PitchTable`,
//! `DrawingFact::GableArea`, `DrawingFact::RakeLength`, `DrawingFact::RakeStep`). "Pitch" is rise for
//! 12 of run throughout, never the old books' rise over span (`DrawingFact::PitchTable`).

use crate::real::Real;

/// Rise in 12 of a segment that runs `dx` and rises `dy`, either way; infinite for a plumb one.
pub fn in_twelve(dx: f64, dy: f64) -> f64 {
    (12.0 * dy / dx).abs()
}

/// Angle of the slope with the level, degrees: what a gable piece's cut makes with the panel's
/// long edge.
pub fn angle(pitch: f64) -> f64 {
    (pitch / 12.0).arc_tangent().to_degrees()
}

/// What a saw that reads from square is set to for that cut, degrees.
pub fn from_square(pitch: f64) -> f64 {
    90.0 - angle(pitch)
}

/// Length along the slope for one of run.
pub fn slope_factor(pitch: f64) -> f64 {
    (pitch / 12.0).hypotenuse(1.0)
}

/// Length of a rake or common rafter over `run`, in the run's unit (`DrawingFact::RakeLength`).
pub fn rafter(pitch: f64, run: f64) -> f64 {
    run * slope_factor(pitch)
}

/// How far a rake moves sideways in one course of height `exposure`; infinite for no pitch.
pub fn step(pitch: f64, exposure: f64) -> f64 {
    12.0 * exposure / pitch
}

/// Height of a symmetric gable of width `span`.
pub fn gable_rise(pitch: f64, span: f64) -> f64 {
    span / 2.0 * pitch / 12.0
}

/// Area of a symmetric gable, in the square of the span's unit (`DrawingFact::GableArea`).
pub fn gable_area(pitch: f64, span: f64) -> f64 {
    span * gable_rise(pitch, span) / 2.0
}
