//! This room's own tolerances, on purpose: no stage's tolerance decides whether the stage kept its
//! rule. Of our own choosing: no source.

/// Lengths that differ by less are the same: 1/256 in.
pub(super) const SAME: f64 = 1.0 / 256.0;

/// What no cutter tells apart: 1/64 in, a quarter of the finest mark on a tape.
pub(super) const CUT: f64 = 1.0 / 64.0;

/// How far a place or length may lie off where a rule has it, inches: what is laid is snapped to
/// 1/1024 piece by piece and pieces are reckoned to 1/16.
pub(super) const NEAR: f64 = 0.05;

/// Least that comes off a face with the hem over it, inches: a sixteenth.
pub(super) const HEM_CUT: f64 = 0.0625;

/// Whether two lengths are the same.
pub(super) fn same(a: f64, b: f64) -> bool {
    (a - b).abs() <= SAME
}
