//! Sizes in a drawing, in its own units, that speak for one unit or another: of what lies in the views
//! only, where frames or the job's regions say where these are.

use std::collections::BTreeMap;

use super::paper_scale::written_metric;
use super::{loose_courses, stated, stories};
use crate::geom::near::clusters;
use crate::geom::polygon::bounds;
use crate::geom::vocabulary::{CurveShape, Point, Rect};
use crate::job::Job;
use crate::model::linework::{Linework, Measured, Role, Stroke};
use crate::model::turn::Turn;
use crate::units::Unit;

/// Heights that walls of a view may stand, inches: a low gable to four stories (common practice).
const WALL: std::ops::RangeInclusive<f64> = 8.0..=600.0;
/// Heights that they as a rule stand, inches: a story to three with a gable, 8 to 30 ft (common practice,
/// no source).
const STORIES: [f64; 2] = [96.0, 360.0];
/// Walls so little lower or higher than that speak for a unit as well: what is drawn over three stories counts with
/// them where siding and roof are drawn alike. Of our own choosing, no source.
const NEARLY: f64 = 1.25;
/// Heights a door may have, inches: nominal doors are 80, 84 and 96 (`TakeoffFact::CallSizes`).
const DOOR: std::ops::RangeInclusive<f64> = 72.0..=120.0;
/// Heights most windows have, inches (common practice, no source).
const WINDOW: std::ops::RangeInclusive<f64> = 16.0..=96.0;
/// How far a window stands over the one under it, inches: a story of 8 to 12 ft and its floor (common practice,
/// no source).
const STORY: std::ops::RangeInclusive<f64> = 78.0..=180.0;
/// Exposures that siding is drawn with, inches; those that most is drawn with; and what no siding is read
/// beyond (common practice, no source).
const COURSES: std::ops::RangeInclusive<f64> = 2.5..=13.0;
const USUAL: std::ops::RangeInclusive<f64> = 3.75..=8.5;
const READ: std::ops::RangeInclusive<f64> = 1.9..=14.0;
/// What a written scale weighs for the units of its system: as much as the header, which it is oftener
/// right than (common practice, no source).
const SYSTEM: i32 = 3;
/// A box so many times as high as the next is no wall, where walls are drawn as loose lines (common
/// practice, no source).
const ODD: f64 = 3.0;
/// Lines of one opening lie this near to one another, of the highest one's height, and most that are looked at:
/// of our own choosing, no source.
const TOUCH: f64 = 1e-3;
const MOST: usize = 4_000;
/// A door's swing on a plan is as wide as high within this share: its leaf has some thickness (common practice, no
/// source).
const SWING: f64 = 0.06;
/// Boxes nearer than this share of a wall's height stand in one view (common practice, no source).
const NEAR: f64 = 0.4;

/// Sizes in drawing units.
#[derive(Default)]
pub(super) struct Sizes {
    /// How high the walls of a view stand; 0 where none is known.
    pub(super) walls: f64,
    /// Where.
    pub(super) at: Option<Point>,
    doors: Vec<f64>,
    /// Height of the middle one of the windows.
    window: Option<f64>,
    /// How far blocks in siding stand over one another.
    story: Option<f64>,
    /// Distance of drawn courses.
    courses: Option<f64>,
    /// Drawn length and the inches its text states.
    stated: Vec<(f64, f64)>,
    /// Whether scales written on it are metric; none where none or both are written.
    metric: Option<bool>,
}

/// Where the views are: everywhere if nothing says so.
struct Views(Vec<Rect>);

impl Views {
    fn of(lines: &Linework, job: &Job) -> Self {
        let given: Vec<Option<[f64; 4]>> =
            job.views().filter(|v| !v.skip).map(|v| v.region).collect();
        if !given.is_empty() {
            let corners =
                |[a, b, c, d]: [f64; 4]| Rect::from_points(Point::new(a, b), Point::new(c, d));
            let all: Option<Vec<Rect>> = given.into_iter().map(|r| r.map(corners)).collect();
            return Views(all.unwrap_or_default());
        }
        let frames = lines.strokes.iter().filter(|s| s.role == Some(Role::Frame) && s.closed);
        Views(frames.filter_map(|s| bounds(&s.points)).collect())
    }

    /// The part of a box that is seen, if its middle is.
    fn seen(&self, b: Rect) -> Option<Rect> {
        if self.0.is_empty() {
            return Some(b);
        }
        self.0.iter().find(|v| v.contains(b.center())).map(|v| v.intersect(b))
    }

    fn sees(&self, p: Point) -> bool {
        self.0.is_empty() || self.0.iter().any(|v| v.contains(p))
    }
}

/// Whether the drawing lies on its side, by most of its text: its heights then run across.
fn lying(lines: &Linework) -> bool {
    let read = lines.labels.iter().filter(|l| l.role != Some(Role::Dimension));
    let turns: Vec<Turn> =
        read.filter_map(|l| Turn::of_text(l.text.angle, l.text.mirrored)).collect();
    2 * turns.iter().filter(|t| t.quarters % 2 == 1).count() > turns.len()
}

/// The middle one of some sizes.
fn middle(mut sizes: Vec<f64>) -> Option<f64> {
    sizes.sort_by(f64::total_cmp);
    sizes.get(sizes.len() / 2).copied()
}

/// The middle one of some sizes by how much each weighs.
fn of_most(mut sizes: Vec<(f64, f64)>) -> Option<f64> {
    sizes.sort_by(|a, b| a.0.total_cmp(&b.0));
    let half = sizes.iter().map(|s| s.1).sum::<f64>() / 2.0;
    let mut sum = 0.0;
    let reached = |(_, weight): &&(f64, f64)| {
        sum += weight;
        sum >= half
    };
    sizes.iter().find(reached).map(|s| s.0)
}

impl Sizes {
    pub(super) fn of(lines: &Linework, job: &Job) -> Self {
        let high = if lying(lines) { Rect::width } else { Rect::height };
        let views = Views::of(lines, job);
        let of_role = |role: Role| lines.strokes.iter().filter(move |s| s.role == Some(role));
        let seen = |s: &Stroke| views.seen(bounds(&s.points)?);
        let drawn = |closed: bool| -> Vec<Rect> {
            of_role(Role::Wall).filter(|s| s.closed == closed).filter_map(seen).collect()
        };
        let mut hatches = siding(lines, &views);
        if of_role(Role::Wall).filter_map(seen).next().is_none() {
            hatches.extend(loose_courses::fields(lines, |p| views.sees(p)));
        }
        let frames: Vec<Rect> = hatches.iter().map(|h| h.0).collect();
        let story = stories::rise(lines, &frames, high);
        let (closed, loose) = (drawn(true), drawn(false));
        let facades: Vec<Rect> = closed.iter().chain(&loose).chain(&frames).copied().collect();
        let walls = if closed.iter().any(|b| high(b) > 0.0) {
            lower_middle(standing(closed, high, |all| middle(all).unwrap_or(0.0)), high)
        } else if loose.iter().any(|b| high(b) > 0.0) {
            tallest_of_loose(loose, high)
        } else {
            let greatest = |all: Vec<f64>| all.into_iter().fold(0.0, f64::max);
            standing(frames, high, greatest).into_iter().max_by(|a, b| high(a).total_cmp(&high(b)))
        };
        let things = |role: Role| {
            let mut blocks: BTreeMap<usize, Rect> = BTreeMap::new();
            let mut loose: Vec<Rect> = Vec::new();
            for (s, b) in of_role(role).filter_map(|s| Some((s, seen(s)?))) {
                match s.group {
                    Some(g) => {
                        blocks.entry(g).and_modify(|r| *r = r.union(b)).or_insert(b);
                    }
                    None => loose.push(b),
                }
            }
            blocks.into_values().chain(whole(loose, high)).collect::<Vec<Rect>>()
        };
        let heights = |all: Vec<Rect>| all.iter().map(high).filter(|h| *h > 0.0).collect();
        let stated = lines.measured.iter().filter(|m| views.sees(m.middle) && m.drawn > 0.0);
        Sizes {
            walls: walls.as_ref().map_or(0.0, high),
            at: walls.map(|r| Point::new(r.x0, r.y1)),
            doors: heights(of_elevations(things(Role::Door), &facades)),
            window: middle(heights(things(Role::Window))),
            story,
            courses: of_most(hatches.iter().map(|(b, apart)| (*apart, b.area())).collect()),
            stated: stated.filter_map(|m| Some((m.drawn, of_dimension(m)?))).collect(),
            metric: is_metric(lines),
        }
    }

    /// How high the walls stand in a unit, inches.
    pub(super) fn height(&self, unit: Unit) -> f64 {
        self.walls * unit.inches()
    }

    /// Whether walls may be so high, inches; loose lines on a wall layer may all be level, and then there
    /// is nothing to judge by.
    pub(super) fn may_be(&self, height: f64) -> bool {
        self.walls == 0.0 || WALL.contains(&height)
    }

    /// How many times the walls are lower or higher in a unit than houses stand; 1 where they are not.
    pub(super) fn off(&self, unit: Unit) -> f64 {
        let tall = self.height(unit);
        (STORIES[0] / tall).max(tall / STORIES[1]).max(1.0)
    }

    /// Whether doors or what dimensions state prove a unit.
    pub(super) fn proves(&self, unit: Unit) -> bool {
        self.doors_fit(unit) || self.dimensions_fit(unit) == Some(true)
    }

    fn doors_fit(&self, unit: Unit) -> bool {
        self.doors.iter().any(|d| DOOR.contains(&(d * unit.inches())))
    }

    /// Whether most of the dimensions that state a length measure it; none where there are none.
    pub(super) fn dimensions_fit(&self, unit: Unit) -> Option<bool> {
        let agrees =
            |(drawn, stated): &&(f64, f64)| (drawn * unit.inches() - stated).abs() <= 0.02 * stated;
        let fit = self.stated.iter().filter(agrees).count();
        (!self.stated.is_empty()).then_some(2 * fit >= self.stated.len())
    }

    /// How much sizes speak for a unit: the higher the more. Weights are of our own choosing: what is
    /// written most, then doors, walls, windows and courses.
    pub(super) fn speaks(&self, unit: Unit) -> i32 {
        let k = unit.inches();
        let off = self.off(unit);
        let walls = if self.walls == 0.0 {
            0
        } else if !self.may_be(self.height(unit)) {
            -6
        } else if off <= NEARLY {
            2
        } else if off <= 2.0 {
            1
        } else {
            -1
        };
        let doors = if self.doors_fit(unit) { 3 } else { -2 * i32::from(!self.doors.is_empty()) };
        let written = self.dimensions_fit(unit).map_or(0, |fit| if fit { 5 } else { -5 });
        let vote = |size: Option<f64>, usual: &std::ops::RangeInclusive<f64>| {
            size.map_or(0, |s| if usual.contains(&(s * k)) { 1 } else { -1 })
        };
        let scale = self.metric.map_or(0, |m| SYSTEM * i32::from(m == unit.is_metric()));
        let windows = vote(self.window, &WINDOW) + vote(self.story, &STORY);
        walls + doors + written + scale + windows + self.courses_fit(k)
    }

    /// How well drawn courses fit, where a drawing unit is so many inches.
    fn courses_fit(&self, k: f64) -> i32 {
        self.courses.map_or(0, |c| match c * k {
            c if USUAL.contains(&c) => 2,
            c if COURSES.contains(&c) => 1,
            c if READ.contains(&c) => -1,
            _ => -3,
        })
    }
}

/// What a dimension says it measures, inches, if that proves a unit.
fn of_dimension(m: &Measured) -> Option<f64> {
    match (&m.text, &m.lettered) {
        (Some(text), _) => stated::sure(text),
        (None, Some(text)) => stated::sure_of_picture(text, m.drawn),
        (None, None) => None,
    }
}

/// Whether the scales that are written in a drawing are metric; none where none or both are.
fn is_metric(lines: &Linework) -> Option<bool> {
    let texts = lines.labels.iter().chain(lines.paper_labels.iter().map(|(_, l)| l));
    let mut found: Vec<bool> = texts.filter_map(|l| written_metric(&l.text.content)).collect();
    found.sort_unstable();
    found.dedup();
    found.first().copied().filter(|_| found.len() == 1)
}

/// Boxes and spacings of hatches with level lines only: where no outline is drawn, walls are read from
/// these.
fn siding(lines: &Linework, views: &Views) -> Vec<(Rect, f64)> {
    let hatches = lines.hatches.iter().filter(|h| h.role != Some(Role::Ignore));
    hatches
        .filter_map(|h| {
            let spacing = h.hatch.level_spacing()?;
            let b = h.hatch.loops.iter().map(CurveShape::bounding_box).reduce(|a, b| a.union(b))?;
            Some((views.seen(b)?, spacing))
        })
        .collect()
}

/// Doors at walls, and not as high as wide: one that is swung open on a plan is as high as its leaf is wide.
/// Where that leaves none, all of them.
fn of_elevations(doors: Vec<Rect>, facades: &[Rect]) -> Vec<Rect> {
    let is_swing = |d: &Rect| (d.width() - d.height()).abs() < SWING * d.height();
    let reach = |d: &Rect| d.width().max(d.height());
    let beside = |d: &Rect| facades.iter().any(|f| f.inflate(reach(d), reach(d)).overlaps(*d));
    let some: Vec<Rect> = doors.iter().filter(|d| !is_swing(d) && beside(d)).copied().collect();
    if some.is_empty() { doors } else { some }
}

/// Boxes round loose lines that lie in or on one another: a door's panel is none by itself.
fn whole(loose: Vec<Rect>, high: fn(&Rect) -> f64) -> Vec<Rect> {
    if loose.len() > MOST {
        return loose;
    }
    let most = loose.iter().map(high).fold(0.0, f64::max);
    clusters(loose, TOUCH * most)
}

/// Boxes round what stands together, by a height that `scale` takes of theirs.
fn standing(
    boxes: Vec<Rect>,
    high: fn(&Rect) -> f64,
    scale: impl Fn(Vec<f64>) -> f64,
) -> Vec<Rect> {
    let apart = NEAR * scale(boxes.iter().map(high).collect());
    clusters(boxes, apart)
}

/// The middle one of views by height, the lower of two: a plan beside elevations is no wall.
fn lower_middle(mut views: Vec<Rect>, high: fn(&Rect) -> f64) -> Option<Rect> {
    views.retain(|v| high(v) > 0.0);
    views.sort_by(|a, b| high(a).total_cmp(&high(b)));
    views.get(views.len().saturating_sub(1) / 2).copied()
}

/// The tallest of loose lines, but one that is far taller than all others.
fn tallest_of_loose(mut boxes: Vec<Rect>, high: fn(&Rect) -> f64) -> Option<Rect> {
    boxes.sort_by(|a, b| high(b).total_cmp(&high(a)));
    let odd = matches!(&boxes[..], [a, b, _, ..] if high(b) > 0.0 && high(a) > ODD * high(b));
    boxes.get(usize::from(odd)).copied()
}
