//! Where a course ends on a drawn slope, a rake's or a roof's hip.

use super::drawn_lines::DrawnLines;
use super::family::Span;
use crate::geom::polygon::Polygon;
use crate::geom::segment::Segment;
use crate::geom::vocabulary::{Point, Rect};

/// A line ends on a slope but for this, inches: prints round their points.
const ON: f64 = 1.0 / 8.0;
/// Slopes rise and run by more than this, inches: of our own choosing, no source.
const LEAST: f64 = 3.0;
/// Slopes, run over rise: as flat as 1/2 in 12 (common practice, no source).
const FLATTEST: f64 = 24.0;

/// The slopes that pass a place, or end there.
fn through(lines: &DrawnLines, at: Point) -> Vec<Segment> {
    let here = Rect::new(at.x - ON, at.y - ON, at.x + ON, at.y + ON);
    let is_slope = |(p, q): &Segment| {
        let (run, rise) = ((p.x - q.x).abs(), (p.y - q.y).abs());
        run > LEAST && rise > LEAST && run <= FLATTEST * rise
    };
    let near = |s: &Segment| (across(*s, at.y) - at.x).abs() <= ON * 2.0;
    let found = lines.within(here).into_iter().map(|(s, _)| s);
    found.filter(|s| is_slope(s) && near(s) && reaches(*s, at.y)).collect()
}

/// Where a slope stands at a height.
fn across((p, q): Segment, y: f64) -> f64 {
    p.x + (q.x - p.x) * (y - p.y) / (q.y - p.y)
}

fn reaches((p, q): Segment, y: f64) -> bool {
    (p.y.min(q.y) - ON..=p.y.max(q.y) + ON).contains(&y)
}

/// Whether the end of a line is on the slope of a roof that it stands beside, not in.
pub(super) fn beside_roof(lines: &DrawnLines, at: Point, left: bool) -> bool {
    // The roof lies under its slope.
    let falls = |(p, q): &Segment| (q.x - p.x) * (q.y - p.y) < 0.0;
    through(lines, at).iter().any(|s| falls(s) == left)
}

/// What lies beside the end of the last course, between the slope it ends on and the drawn line at `to` that
/// courses end at: a corner of three sides.
pub(super) fn corner(
    lines: &DrawnLines,
    (x, left): (f64, bool),
    y: f64,
    to: f64,
) -> Option<Polygon> {
    let out = if left { -1.0 } else { 1.0 };
    let ends = through(lines, Point::new(x, y)).into_iter().filter(|s| reaches(*s, to));
    let foot = ends.map(|s| across(s, to)).filter(|f| (f - x) * out > ON);
    let foot = foot.min_by(|a, b| (a - x).abs().total_cmp(&(b - x).abs()))?;
    let over: Span = (x.min(foot), x.max(foot));
    let level = |(p, q): &Segment| (p.y - to).abs() <= ON / 2.0 && (q.y - to).abs() <= ON / 2.0;
    let whole = |(p, q): &Segment| p.x <= over.0 + 2.0 * ON && q.x >= over.1 - 2.0 * ON;
    let row = lines.within(Rect::new(over.0, to - ON, over.1, to + ON));
    let drawn = row.iter().any(|(s, _)| level(s) && whole(s));
    let ring = vec![Point::new(x, y), Point::new(x, to), Point::new(foot, to)];
    drawn.then(|| Polygon::simple(ring).wound())
}
