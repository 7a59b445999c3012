//! What is noise and what is built so.

use crate::geom::polygon::sides;
use crate::geom::vocabulary::{Point, Vec2};
use crate::model::linework::{Role, Stroke};
use crate::real::Real;

/// A side at least this long, inches, is squared wherever it leans little (common practice, no source).
pub(super) const LONG: f64 = 24.0;
/// How far such a side may lie off level or plumb, degrees (common practice, no source). A roof of 1 in
/// 200, the least that is built to drain, lies three times as far off.
pub(super) const ANGLE: f64 = 0.1;
/// And how far its ends may stand apart, inches (common practice, no source).
pub(super) const LEAN: f64 = 0.25;
/// Steps of a rough drawing up to this are closed, inches: the finest mark of most tapes.
pub(super) const STEP: f64 = 1.0 / 16.0;
/// What rounding alone leaves, inches: two steps of the grid and a half.
pub(super) const HAIR: f64 = 2.5 / 1024.0;
/// A common tilt is undone up to this, degrees: it is undone for all sides alike, so nothing that is
/// built at a slope is lost (of our own choosing, no source).
pub(super) const MOST_TILT: f64 = 2.0;

/// How a side lies to the nearer axis.
#[derive(Clone, Copy, Debug)]
pub(super) struct Lie {
    pub(super) length: f64,
    /// From its axis, counter-clockwise, radians.
    pub(super) angle: f64,
    /// How far its ends stand apart across the axis, inches.
    pub(super) lean: f64,
    pub(super) level: bool,
}

impl Lie {
    pub(super) fn of(a: Point, b: Point) -> Lie {
        let v = b - a;
        let level = v.x.abs() >= v.y.abs();
        // Turned so that its axis runs to the right: the rest is its angle.
        let along = if level { v } else { Vec2::new(v.y, -v.x) };
        let along = if along.x < 0.0 { -along } else { along };
        let lean = along.y.abs();
        Lie { length: v.hypot(), angle: along.y.angle_over(along.x), lean, level }
    }

    /// A long side that leans as little as drawing noise does.
    pub(super) fn squares(&self) -> bool {
        self.length >= LONG && self.angle.abs() <= ANGLE.to_radians() && self.lean <= LEAN
    }

    /// The same, or tilted by what may be common to a drawing.
    pub(super) fn nearly(&self) -> bool {
        self.length >= LONG && self.angle.abs() <= MOST_TILT.to_radians()
    }
}

/// Roles whose sides show how a drawing is made.
pub(super) fn shows(role: Option<Role>) -> bool {
    matches!(role, Some(Role::Wall | Role::Bare | Role::Roof | Role::Band))
}

/// The sides of a stroke.
pub(super) fn sides_of(s: &Stroke) -> impl Iterator<Item = (Point, Point)> + '_ {
    let count = if s.closed { s.points.len() } else { s.points.len().saturating_sub(1) };
    sides(&s.points).take(count)
}
