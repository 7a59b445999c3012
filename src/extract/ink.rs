//! Straight lines that are drawn level or plumb, looked up by where they lie.

use super::views::View;
use crate::geom::tol::{LEVEL, level, plumb};
use crate::geom::vocabulary::Rect;
use crate::model::linework::{Linework, Role};

/// How far beside a side a line may be drawn that stands for it, inches: pens and rounded figures.
const ALONG: f64 = 0.5;
/// A line that goes on this far past both ends of what it runs along is a grid line or a leader, inches
/// (common practice, no source).
const PAST: f64 = 24.0;

/// A light of a window is no wider than this, inches (common practice, no source).
const LIGHT: f64 = 60.0;
/// Joints between the sections of an overhead door are level lines from side to side, this many at least,
/// this far in from foot and head, inches, over this share of the leaf (common practice, no source).
const JOINTS: usize = 3;
const INSIDE: f64 = 8.0;
const WHOLE: f64 = 0.95;
/// No section of an overhead door is lower, inches: level lines nearer together are one casing or band (common
/// practice, no source; sections of 18 to 24 in are usual).
const SECTION: f64 = 12.0;
/// Widest casing, inches (common practice, no source).
const CASING: f64 = 12.0;

/// A line at one place across, from `low` to `high` along it.
#[derive(Clone, Copy, Debug)]
struct Line {
    at: f64,
    low: f64,
    high: f64,
}

/// Lines of one view.
pub(crate) struct Ink {
    plumb: Vec<Line>,
    level: Vec<Line>,
}

impl Ink {
    #[cfg(test)]
    pub(crate) fn plumb_at(at: f64, (low, high): (f64, f64)) -> Self {
        Ink { plumb: vec![Line { at, low, high }], level: Vec::new() }
    }

    pub(crate) fn of(lines: &Linework, view: &View) -> Self {
        use Role::{CornerTag, Dimension, Frame, Grade, Level, Texture, Title};
        let aside =
            |r: Role| matches!(r, Dimension | Title | Frame | Grade | Level | CornerTag | Texture);
        let mut out = Ink { plumb: Vec::new(), level: Vec::new() };
        for s in view.strokes(lines).filter(|s| !s.role.is_some_and(aside)) {
            let closing = s.closed.then(|| s.points.last().zip(s.points.first())).flatten();
            let pairs = s.points.windows(2).map(|w| (w[0], w[1]));
            for (a, b) in pairs.chain(closing.map(|(a, b)| (*a, *b))) {
                if plumb(b.x - a.x) && !level(b.y - a.y) {
                    let (low, high) = (a.y.min(b.y), a.y.max(b.y));
                    out.plumb.push(Line { at: (a.x + b.x) / 2.0, low, high });
                } else if level(b.y - a.y) && !plumb(b.x - a.x) {
                    let (low, high) = (a.x.min(b.x), a.x.max(b.x));
                    out.level.push(Line { at: (a.y + b.y) / 2.0, low, high });
                }
            }
        }
        out.plumb.sort_by(|a, b| a.at.total_cmp(&b.at));
        out.level.sort_by(|a, b| a.at.total_cmp(&b.at));
        out
    }

    /// How much of an upright side at `x` from `low` to `high` has a line drawn along it, inches; a line
    /// that runs far past `reach` at both ends is none of the wall's.
    pub(crate) fn along_plumb(&self, x: f64, (low, high): (f64, f64), reach: (f64, f64)) -> f64 {
        drawn(&self.plumb, x, (low, high), reach)
    }

    /// How much of a level side at `y` from `low` to `high` has a line drawn along it, inches; none by a line
    /// that runs far past both its ends.
    pub(crate) fn along_level(&self, y: f64, reach: (f64, f64)) -> f64 {
        drawn(&self.level, y, reach, reach)
    }

    /// How many lines stand up inside a box, over half of its height or more.
    pub(crate) fn uprights_in(&self, b: Rect) -> usize {
        self.uprights(b).count()
    }

    /// Where they stand, from left to right.
    fn uprights(&self, b: Rect) -> impl Iterator<Item = f64> + '_ {
        let from = self.plumb.partition_point(|l| l.at < b.x0 + ALONG);
        let near = self.plumb[from..].iter().take_while(move |l| l.at <= b.x1 - ALONG);
        let stands = move |l: &&Line| {
            l.high.min(b.y1) - l.low.max(b.y0) >= b.height() / 2.0 && !past(l, b.y0, b.y1)
        };
        near.filter(stands).map(|l| l.at)
    }

    /// Whether an opening is parted by mullions into lights of a window's width, and no joints of an overhead
    /// door's sections go across it.
    pub(crate) fn is_in_lights(&self, b: Rect) -> bool {
        let at: Vec<f64> = self.uprights(b).collect();
        let all: Vec<f64> = [b.x0].into_iter().chain(at.iter().copied()).chain([b.x1]).collect();
        let parted = all.windows(2).all(|w| w[1] - w[0] <= LIGHT);
        let left = at.iter().copied().find(|x| x - b.x0 <= CASING).unwrap_or(b.x0);
        let right = at.iter().copied().rfind(|x| b.x1 - x <= CASING).unwrap_or(b.x1);
        parted && self.joints(left, right, (b.y0 + INSIDE, b.y1 - INSIDE)) < JOINTS
    }

    /// How many levels have a line from one place to another.
    fn joints(&self, x0: f64, x1: f64, (low, high): (f64, f64)) -> usize {
        let from = self.level.partition_point(|l| l.at < low);
        let mut at: Vec<f64> =
            self.level[from..].iter().take_while(|l| l.at <= high).map(|l| l.at).collect();
        at.dedup_by(|b, a| *b - *a < 2.0 * ALONG);
        at.retain(|y| self.along_level(*y, (x0, x1)) >= WHOLE * (x1 - x0));
        at.dedup_by(|b, a| *b - *a < SECTION);
        at.len()
    }

    /// Whether anything plumb stands between two places at some height.
    pub(crate) fn plumb_between(&self, (x0, x1): (f64, f64), (low, high): (f64, f64)) -> bool {
        let from = self.plumb.partition_point(|l| l.at < x0);
        let near = self.plumb[from..].iter().take_while(|l| l.at <= x1);
        near.into_iter().any(|l| l.high.min(high) - l.low.max(low) > LEVEL && !past(l, low, high))
    }
}

fn past(l: &Line, low: f64, high: f64) -> bool {
    l.low < low - PAST && l.high > high + PAST
}

fn drawn(all: &[Line], at: f64, (low, high): (f64, f64), reach: (f64, f64)) -> f64 {
    let from = all.partition_point(|l| l.at < at - ALONG);
    let near = all[from..].iter().take_while(|l| l.at <= at + ALONG);
    let mut parts: Vec<(f64, f64)> = near
        .filter(|l| !past(l, reach.0, reach.1))
        .map(|l| (l.low.max(low), l.high.min(high)))
        .filter(|p| p.1 > p.0)
        .collect();
    parts.sort_by(|a, b| a.0.total_cmp(&b.0));
    let (mut reached, mut sum) = (low, 0.0);
    for (a, b) in parts {
        sum += (b - a.max(reached)).max(0.0);
        reached = b.max(reached);
    }
    sum
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_strip_of_windows_is_in_lights_and_an_overhead_door_is_not() {
        // A strip of 150 by 108 with a casing of 3.5 and mullions of 3 between lights of 33.5.
        let strip = Rect::new(0.0, 0.0, 150.0, 108.0);
        let up = |at: f64| Line { at, low: 0.0, high: 108.0 };
        let across = |at: f64| Line { at, low: 3.5, high: 146.5 };
        let ink = |plumb: &[f64], level: &[f64]| Ink {
            plumb: plumb.iter().map(|x| up(*x)).collect(),
            level: level.iter().map(|y| across(*y)).collect(),
        };
        let mullions = [3.5, 37.0, 40.0, 73.5, 76.5, 110.0, 113.0, 146.5];
        assert!(ink(&mullions, &[54.0]).is_in_lights(strip));
        // Joints of four sections go across the whole leaf, behind whatever is drawn on them.
        assert!(!ink(&mullions, &[27.0, 54.0, 81.0]).is_in_lights(strip));
        // Two rows of lights, with heads, a board and sills between them: one band, not three joints.
        assert!(ink(&mullions, &[72.0, 77.0, 82.0]).is_in_lights(strip));
        // A leaf alone.
        assert!(!ink(&[3.5, 146.5], &[]).is_in_lights(strip));
    }
}
