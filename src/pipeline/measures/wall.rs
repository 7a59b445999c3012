//! A wall as drawn and as taped, and where a place of it goes.
//!
//! Corners and the peak go where they were taped. What stands in line with one of them, level or plumb, stays in line:
//! the top of a part that steps up from a soffit has the soffit's shift. Places between go by their height and by
//! their distance from sides and jambs, each by itself, so that what is level stays level and what is plumb stays
//! plumb, and a band over windows goes along with them.

use super::shape::{OpeningShape, SIDE, Side, WallShape};
use crate::geom::polygon::{bounds, sides};
use crate::geom::tol::{BESIDE, LEVEL, ROUNDING, level, plumb};
use crate::geom::vocabulary::{Point, Rect, Ring, Vec2};
use crate::model::house::DrawnWall;
use crate::real::Total;

/// What is drawn within this of an opening is its frame, inches. Of our own choosing, no source.
const FRAME: f64 = 6.0;

/// A wall as drawn and as taped.
#[derive(Debug)]
pub(super) struct Wall {
    pub(super) id: String,
    pub(super) drawn: WallShape,
    pub(super) taped: WallShape,
    /// Round what is drawn of it, inches of its elevation.
    pub(super) frame: Rect,
    outline: Ring,
    /// How far each vertex of the outline goes.
    shifts: Vec<Vec2>,
    /// Places along the wall, and heights, with how far each goes.
    across: Vec<(f64, f64)>,
    up: Vec<(f64, f64)>,
}

impl Wall {
    /// None without an outline.
    pub(super) fn of(wall: &DrawnWall, drawn: WallShape, taped: WallShape) -> Option<Self> {
        let frame = bounds(&wall.outline)?;
        let (id, outline) = (wall.id.to_string(), wall.outline.clone());
        let (shifts, across, up) = (Vec::new(), Vec::new(), Vec::new());
        let mut out = Wall { id, drawn, taped, frame, outline, shifts, across, up };
        (out.across, out.up) = (out.across(), out.up());
        out.shifts = (0..out.outline.len()).map(|i| out.vertex(i)).collect();
        Some(out)
    }

    /// Where a place of the wall goes; beside it all goes as its side does.
    pub(super) fn moved(&self, p: Point) -> Point {
        p + self.on_outline(p).unwrap_or_else(|| self.within(p))
    }

    /// Where a place at an opening goes, which has the place and the size that were taped.
    pub(super) fn at_opening(&self, i: usize, p: Point) -> Point {
        let (d, t) = (&self.drawn.openings[i], &self.taped.openings[i]);
        let along = |v: f64, (a, b): (f64, f64), (a2, b2): (f64, f64)| match v {
            v if v < a => v - a + a2,
            v if v > b => v - b + b2,
            v => a2 + (v - a) / (b - a).max(ROUNDING) * (b2 - a2),
        };
        Point::new(
            along(p.x, (d.left, d.right), (t.left, t.right)),
            along(p.y, (d.sill, d.head), (t.sill, t.head)),
        )
    }

    /// The opening whose frame holds a box.
    pub(super) fn opening_of(&self, b: Rect) -> Option<usize> {
        self.drawn.openings.iter().position(|o| {
            let frame = Rect::new(o.left, o.sill, o.right, o.head).inflate(FRAME, FRAME);
            frame.contains(Point::new(b.x0, b.y0)) && frame.contains(Point::new(b.x1, b.y1))
        })
    }

    /// The opening of a name.
    pub(super) fn opening(&self, id: &str) -> Option<usize> {
        self.drawn.openings.iter().position(|o| o.id == id)
    }

    /// How far a place on the outline goes: between the ends of the side that it is nearest to. Along a plumb side
    /// heights go as within the wall, along a level one places do: what ends there is level or plumb still.
    fn on_outline(&self, p: Point) -> Option<Vec2> {
        let all = sides(&self.outline).map(|(a, b)| {
            let (side, from) = (b - a, p - a);
            let t = (from.dot(side) / side.hypot2().max(ROUNDING)).clamp(0.0, 1.0);
            (p.distance(a + side * t), t, side)
        });
        let nearest = all.enumerate().min_by(|a, b| a.1.0.total_cmp(&b.1.0))?;
        let (i, (away, t, side)) = nearest;
        let next = self.shifts.get((i + 1) % self.shifts.len().max(1))?;
        if away > BESIDE {
            return None;
        }
        let (along, within) = (self.shifts[i].lerp(*next, t), self.within(p));
        let at_end = t * side.hypot() <= BESIDE || (1.0 - t) * side.hypot() <= BESIDE;
        Some(match () {
            () if at_end => along,
            () if plumb(side.x) => Vec2::new(along.x, within.y),
            () if level(side.y) => Vec2::new(within.x, along.y),
            () => along,
        })
    }

    /// How far a place goes that is on no side: by its height, and by its distance from the sides.
    fn within(&self, p: Point) -> Vec2 {
        Vec2::new(through(&self.across, p.x), through(&self.up, p.y))
    }

    /// What was taped of places along the wall: its sides, and the upright side of a part that stands over it.
    fn across(&self) -> Vec<(f64, f64)> {
        let mean = |[d, t]: [Side; 2]| (d.foot.x, (t.foot.x - d.foot.x + t.top.x - d.top.x) / 2.0);
        let upright =
            |p: Point| sides(&self.outline).any(|(a, b)| (a == p || b == p) && plumb(b.x - a.x));
        let peak = self.drawn.peak.zip(self.taped.peak).filter(|(p, _)| upright(*p));
        let peak = peak.map(|(d, t)| (d.x, t.x - d.x));
        let jambs = self
            .openings()
            .flat_map(|(d, t)| [(d.left, t.left - d.left), (d.right, t.right - d.right)]);
        knots(self.both().map(mean).into_iter().chain(peak).collect(), jambs.collect())
    }

    /// What was taped of heights.
    fn up(&self) -> Vec<(f64, f64)> {
        let ends = self.both().into_iter().flat_map(|[d, t]| [(d.foot, t.foot), (d.top, t.top)]);
        let all = ends.chain(self.drawn.peak.zip(self.taped.peak));
        let own = |(d, t): (&OpeningShape, &OpeningShape)| {
            [(d.sill, t.sill - d.sill), (d.head, t.head - d.head)]
        };
        let levels = self.openings().flat_map(own);
        knots(all.map(|(d, t)| (d.y, t.y - d.y)).collect(), levels.collect())
    }

    /// Its openings, each as drawn and as taped.
    fn openings(&self) -> impl Iterator<Item = (&OpeningShape, &OpeningShape)> {
        self.drawn.openings.iter().zip(&self.taped.openings)
    }

    /// Its sides, each as drawn and as taped.
    fn both(&self) -> [[Side; 2]; 2] {
        [[self.drawn.left, self.taped.left], [self.drawn.right, self.taped.right]]
    }

    /// What was taped of a vertex of the outline.
    fn known(&self, v: Point) -> Option<Vec2> {
        let peak = self.drawn.peak.zip(self.taped.peak);
        let ends = self.both().into_iter().flat_map(|[d, t]| [(d.foot, t.foot), (d.top, t.top)]);
        ends.chain(peak).find(|(from, _)| from.distance(v) <= ROUNDING).map(|(from, to)| to - from)
    }

    /// How far a vertex of the outline goes.
    fn vertex(&self, i: usize) -> Vec2 {
        let v = self.outline[i];
        if let Some(known) = self.known(v) {
            return known;
        }
        let free = self.within(v);
        let side = self.both().into_iter().find(|[d, _]| (v.x - d.foot.x).abs() <= SIDE);
        let leaning = side.map(|[d, t]| {
            let (foot, top) = (t.foot.x - d.foot.x, t.top.x - d.top.x);
            between((d.foot.y, foot), (d.top.y, top), v.y)
        });
        let upright = self.in_line(i, |p| p.x, |p| p.y, |s| s.x);
        let along = self.in_line(i, |p| p.y, |p| p.x, |s| s.y);
        Vec2::new(upright.or(leaning).unwrap_or(free.x), along.unwrap_or(free.y))
    }

    /// What the vertices that were taped say of one in line with them: `off` is the same for all of a line, `along`
    /// tells them apart, `part` is the part of the shift that moves the line.
    fn in_line(
        &self,
        i: usize,
        off: fn(Point) -> f64,
        along: fn(Point) -> f64,
        part: fn(Vec2) -> f64,
    ) -> Option<f64> {
        let (v, n) = (self.outline[i], self.outline.len());
        let on = |p: &Point| (off(*p) - off(v)).abs() <= LEVEL;
        let onward = (1..n).map(|k| self.outline[(i + k) % n]).take_while(on);
        let back = (1..n).map(|k| self.outline[(i + n - k) % n]).take_while(on);
        let known = onward.chain(back).filter_map(|p| Some((along(p), part(self.known(p)?))));
        let mut known: Vec<(f64, f64)> = known.collect();
        known.sort_by(|a, b| a.0.total_cmp(&b.0));
        let (first, last) = (known.first()?, known.last()?);
        Some(between(*first, *last, along(v)))
    }
}

/// Lines of openings that lie so near to one another go alike, inches. Of our own choosing, no source.
const ALIKE: f64 = 1.0;

/// Places in order with how far each goes, of those in one line the mean: corners, and openings where no corner is
/// near, so that a band over windows goes as their heads do.
fn knots(corners: Vec<(f64, f64)>, openings: Vec<(f64, f64)>) -> Vec<(f64, f64)> {
    let mut all = means(corners, LEVEL);
    let mut free = openings;
    free.retain(|o| all.iter().all(|k| (k.0 - o.0).abs() > ALIKE));
    all.extend(means(free, ALIKE));
    all.sort_by(|a, b| a.0.total_cmp(&b.0));
    all
}

fn means(mut all: Vec<(f64, f64)>, alike: f64) -> Vec<(f64, f64)> {
    all.sort_by(|a, b| a.0.total_cmp(&b.0));
    let lines = all.chunk_by(|a, b| (a.0 - b.0).abs() <= alike);
    let mean = |l: &[(f64, f64)]| {
        let n = l.len().max(1) as f64;
        (l.iter().map(|k| k.0).total() / n, l.iter().map(|k| k.1).total() / n)
    };
    lines.map(mean).collect()
}

/// How far a place goes by places that are known.
fn through(known: &[(f64, f64)], v: f64) -> f64 {
    let after = known.partition_point(|k| k.0 < v);
    match (after.checked_sub(1).and_then(|i| known.get(i)), known.get(after)) {
        (Some(a), Some(b)) => between(*a, *b, v),
        (Some(k), None) | (None, Some(k)) => k.1,
        (None, None) => 0.0,
    }
}

/// The value at a place between two places with theirs; beyond them the nearer one's.
fn between((a, at_a): (f64, f64), (b, at_b): (f64, f64), v: f64) -> f64 {
    if b - a <= ROUNDING {
        return at_a;
    }
    at_a + ((v - a) / (b - a)).clamp(0.0, 1.0) * (at_b - at_a)
}
