//! Where an elevation, or the part of it that one sheet shows, stands on paper.

use crate::annotate::scale::parts;
use crate::geom::vocabulary::{Affine, Point, Rect, Xy};
use crate::job::paper::Scale;
use crate::language::SheetLanguage;
use crate::layout::wall::LaidElevation;
use crate::units::LengthStyle;

/// From elevation inches to paper.
#[derive(Clone, Debug)]
pub(in crate::annotate) struct View {
    pub(in crate::annotate) map: Affine,
    /// House inches in a paper inch.
    pub(in crate::annotate) factor: f64,
    /// The part shown, elevation inches.
    pub(in crate::annotate) window: Rect,
    /// Box round all walls, elevation inches.
    pub(in crate::annotate) house: Rect,
    pub(in crate::annotate) style: LengthStyle,
    pub(in crate::annotate) say: SheetLanguage,
}

impl View {
    pub(in crate::annotate) fn at(&self, x: f64, y: f64) -> Point {
        self.map * Point::new(x, y)
    }

    pub(in crate::annotate) fn xy(&self, p: &Xy) -> Point {
        self.at(p[0], p[1])
    }

    pub(in crate::annotate) fn points(&self, ring: &[Xy]) -> Vec<Point> {
        ring.iter().map(|p| self.xy(p)).collect()
    }

    /// Whether a place is this sheet's; a place on a match line is the further sheet's.
    pub(in crate::annotate) fn holds(&self, x: f64, y: f64) -> bool {
        let (w, h) = (&self.window, &self.house);
        let last = |v: f64, end: f64, all: f64| v < end || end >= all - 1e-6;
        let first = |v: f64, start: f64, all: f64| v >= start || start <= all + 1e-6;
        first(x, w.x0, h.x0) && last(x, w.x1, h.x1) && first(y, w.y0, h.y0) && last(y, w.y1, h.y1)
    }

    /// The window on paper.
    pub(in crate::annotate) fn paper(&self) -> Rect {
        Rect::from_points(
            self.at(self.window.x0, self.window.y0),
            self.at(self.window.x1, self.window.y1),
        )
    }

    /// Where lines are cut: a little beyond the walls, but at match lines.
    pub(in crate::annotate) fn clip(&self, area: Rect) -> Rect {
        let (p, w, h) = (self.paper(), &self.window, &self.house);
        let cut = |own: f64, all: f64| (own - all).abs() > 1e-6;
        Rect::new(
            if cut(w.x0, h.x0) { p.x0 } else { area.x0 },
            if cut(w.y0, h.y0) { p.y0 } else { area.y0 },
            if cut(w.x1, h.x1) { p.x1 } else { area.x1 },
            if cut(w.y1, h.y1) { p.y1 } else { area.y1 },
        )
    }
}

/// Box round the walls of an elevation.
pub(in crate::annotate) fn extent(e: &LaidElevation) -> Rect {
    let points: Vec<Point> =
        e.walls.iter().flat_map(|w| &w.outline).map(|p| Point::new(p[0], p[1])).collect();
    crate::geom::polygon::bounds(&points).unwrap_or(Rect::new(0.0, 0.0, 1.0, 1.0))
}

/// How high walls reach in a window, elevation inches.
pub(in crate::annotate) fn top(e: &LaidElevation, window: Rect) -> f64 {
    let mut out = window.y0;
    for w in &e.walls {
        for (a, b) in w.outline.iter().zip(w.outline.iter().cycle().skip(1)) {
            let (a, b) = if a[0] <= b[0] { (a, b) } else { (b, a) };
            if b[0] < window.x0 || a[0] > window.x1 {
                continue;
            }
            let run = (b[0] - a[0]).max(1e-9);
            let at = |x: f64| a[1] + (x.clamp(a[0], b[0]) - a[0]) / run * (b[1] - a[1]);
            let upright = b[0] - a[0] < 1e-9;
            let ends = if upright { [a[1], b[1]] } else { [at(window.x0), at(window.x1)] };
            out = ends.into_iter().fold(out, f64::max);
        }
    }
    out.min(window.y1)
}

/// How far grade runs under an elevation's walls, elevation inches.
pub(in crate::annotate) fn drop_to_grade(e: &LaidElevation, house: Rect) -> f64 {
    let near = |p: &&Xy| p[0] > house.x0 - NEAR && p[0] < house.x1 + NEAR;
    let lowest = e.grade.iter().filter(near).map(|p| p[1]).fold(house.y0, f64::min);
    // Where it begins and ends farther off, its height at the walls is what counts.
    let at = |x: f64| {
        e.grade.windows(2).find(|p| p[0][0] <= x && x <= p[1][0]).map(|p| {
            let run = (p[1][0] - p[0][0]).max(1e-9);
            p[0][1] + (x - p[0][0]) / run * (p[1][1] - p[0][1])
        })
    };
    let ends = [at(house.x0 - NEAR), at(house.x1 + NEAR)].into_iter().flatten();
    (house.y0 - ends.fold(lowest, f64::min)).clamp(0.0, DEEPEST)
}

/// How far beside the walls grade is drawn, elevation inches.
const NEAR: f64 = 8.0;
/// Deepest drop to grade that a drawing is made higher for, elevation inches.
const DEEPEST: f64 = 96.0;

/// The parts of an elevation that a sheet each shows, left to right, then bottom up. Where it takes
/// more than one up, they meet on butt lines: `courses` is one of them and the height of a course.
pub(in crate::annotate) fn windows(
    house: Rect,
    room: (f64, f64),
    scale: &Scale,
    courses: (f64, f64),
) -> Vec<Rect> {
    let (across, up) = parts((house.width(), house.height()), room, scale);
    let even = |n: usize, from: f64, to: f64| -> Vec<f64> {
        (0..=n).map(|i| from + (to - from) * i as f64 / n as f64).collect()
    };
    let xs = even(across, house.x0, house.x1);
    let each = (room.1 * scale.factor / courses.1).floor();
    let ys = if up > 1 && each >= 1.0 {
        let first = courses.0 + ((house.y0 - courses.0) / courses.1).floor() * courses.1;
        // As many courses on each sheet as on the next.
        let all = ((house.y1 - first) / courses.1).ceil();
        let each = (all / (all / each).ceil()).ceil();
        let mut ys = vec![house.y0];
        let mut y = first + each * courses.1;
        while y < house.y1 - 1.0 {
            ys.push(y);
            y += each * courses.1;
        }
        ys.push(house.y1);
        ys
    } else {
        even(up, house.y0, house.y1)
    };
    ys.windows(2)
        .flat_map(|y| xs.windows(2).map(move |x| Rect::new(x[0], y[0], x[1], y[1])))
        .collect()
}
