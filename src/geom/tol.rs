//! The one set of tolerances, asked in words. Everything here is inches.

/// Spacing of the grid every coordinate is snapped to once, in `normalize`: 1/1024 in.
///
/// A power of two, so that snapped coordinates and their sums are exact in `f64` and boolean
/// results come back bit for bit.
pub const GRID: f64 = 1.0 / 1024.0;

/// Two lengths nearer than this are one length: eight grid steps, under 1/100 in.
pub const SAME: f64 = 8.0 * GRID;

/// Sides that lean less than this are called level or plumb: 1/16 in over their length.
pub const LEVEL: f64 = 1.0 / 16.0;

/// What no cutter tells apart: 1/64 in, a quarter of the finest mark on a tape. A side that leans less
/// is cut level or square, a corner nearer to the line past it is none.
pub const CUT: f64 = 1.0 / 64.0;

/// How far a mark may lie off the cut it stands for: 1/32 in, half the finest mark on a tape.
pub const MARK: f64 = 1.0 / 32.0;

/// How far a side may lie off another that it is one with, where one of them was moved by clearances
/// or drawn by hand, inches: of our own choosing, no source.
pub const BESIDE: f64 = 0.05;

/// What sums of lengths differ by for rounding alone, inches.
pub const ROUNDING: f64 = 1e-6;

/// How much a side may lean and still bear what stands in a corner, run over rise: 1 in on 8 ft. Crews set a post
/// along a corner that leans so; guidelines for builders call a wall out of plumb from 3/8 in on 32 in, which is
/// as much (from memory; common practice, no other source).
pub const LEANS: f64 = 1.0 / 96.0;

/// The nearest grid value.
pub fn snap(v: f64) -> f64 {
    (v / GRID).round() * GRID
}

/// Whether two lengths or coordinates are the same for this trade.
pub fn same(a: f64, b: f64) -> bool {
    (a - b).abs() <= SAME
}

/// The one of `lines` that a coordinate stands on but for drawing noise, else the coordinate itself.
pub fn onto(v: f64, lines: [f64; 2]) -> f64 {
    lines.into_iter().find(|l| same(*l, v)).unwrap_or(v)
}

/// Whether `length` goes into `room`.
pub fn fits(length: f64, room: f64) -> bool {
    length <= room + SAME
}

/// Whether `a` is less than `b` by more than drawing noise.
pub fn less(a: f64, b: f64) -> bool {
    a < b - SAME
}

/// Whether a segment of this rise reads as level.
pub fn level(rise: f64) -> bool {
    rise.abs() <= LEVEL
}

/// Whether the top of a wall, so far up and so far along, bears what holds panels under a soffit: as far out of level
/// as a corner may be out of plumb.
pub fn lies_flat(rise: f64, run: f64) -> bool {
    upright(rise, run)
}

/// Whether a segment of this run reads as plumb.
pub fn plumb(run: f64) -> bool {
    run.abs() <= LEVEL
}

/// Whether a side so far sideways and so high is upright, as a corner of a house may lean; part of one that leans just
/// so may lean more by the grid.
pub fn upright(run: f64, rise: f64) -> bool {
    run.abs() <= LEVEL.max(LEANS * rise.abs() + SAME)
}
