//! Straight lines that are drawn level or plumb, looked up by where they lie.

use crate::extract::views::View;
use crate::geom::tol::{LEVEL, level, plumb};
use crate::geom::vocabulary::Rect;
use crate::model::linework::{Linework, Role};

/// How far beside a side a line may be drawn that stands for it, inches: pens and rounded figures.
const ALONG: f64 = 0.5;
/// A line that goes on this far past both ends of what it runs along is a grid line or a leader, inches
/// (common practice, no source).
const PAST: f64 = 24.0;

/// A line at one place across, from `low` to `high` along it.
#[derive(Clone, Copy, Debug)]
struct Line {
    at: f64,
    low: f64,
    high: f64,
}

/// Lines of one view.
pub(super) struct Ink {
    plumb: Vec<Line>,
    level: Vec<Line>,
}

impl Ink {
    #[cfg(test)]
    pub(super) fn plumb_at(at: f64, (low, high): (f64, f64)) -> Self {
        Ink { plumb: vec![Line { at, low, high }], level: Vec::new() }
    }

    pub(super) fn of(lines: &Linework, view: &View) -> Self {
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
    pub(super) fn along_plumb(&self, x: f64, (low, high): (f64, f64), reach: (f64, f64)) -> f64 {
        drawn(&self.plumb, x, (low, high), reach)
    }

    /// How much of a level side at `y` from `low` to `high` has a line drawn along it, inches; none by a line
    /// that runs far past both its ends.
    pub(super) fn along_level(&self, y: f64, reach: (f64, f64)) -> f64 {
        drawn(&self.level, y, reach, reach)
    }

    /// How many lines stand up inside a box, over half of its height or more.
    pub(super) fn uprights_in(&self, b: Rect) -> usize {
        let from = self.plumb.partition_point(|l| l.at < b.x0 + ALONG);
        let near = self.plumb[from..].iter().take_while(|l| l.at <= b.x1 - ALONG);
        let stands = |l: &&Line| {
            l.high.min(b.y1) - l.low.max(b.y0) >= b.height() / 2.0 && !past(l, b.y0, b.y1)
        };
        near.filter(stands).count()
    }

    /// Whether anything plumb stands between two places at some height.
    pub(super) fn plumb_between(&self, (x0, x1): (f64, f64), (low, high): (f64, f64)) -> bool {
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
