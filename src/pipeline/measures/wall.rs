//! A wall as drawn and as taped, and where a place of it goes.
//!
//! Corners and the peak go where they were taped. What stands in line with one of them, level or plumb, stays in line:
//! the top of a part that steps up from a soffit has the soffit's shift. Places between go by their height and by
//! their distance from sides and jambs, each by itself, so that what is level stays level and what is plumb stays
//! plumb, and a band over windows goes along with them.

use super::known::{ALIKE, between, knots, on_line, through};
use super::shape::{OpeningShape, SIDE, Side, WallShape, outline_of};
use crate::geom::polygon::{bounds, sides};
use crate::geom::tol::{BESIDE, LEANS, LEVEL, ROUNDING, level, plumb};
use crate::geom::vocabulary::{Point, Rect, Ring, Vec2};
use crate::model::house::DrawnWall;

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
        let (id, outline) = (wall.id.to_string(), outline_of(wall));
        let (shifts, across, up) = (Vec::new(), Vec::new(), Vec::new());
        let mut out = Wall { id, drawn, taped, frame, outline, shifts, across, up };
        (out.across, out.up) = (out.across(), out.up());
        out.shifts = (0..out.outline.len()).map(|i| out.vertex(i, None)).collect();
        Some(out)
    }

    /// The wall with its openings as they are joined to what they touch: vertices of the outline that stand on a
    /// jamb go with it now, so that no hairline is left between.
    pub(super) fn with_openings(mut self, openings: Vec<OpeningShape>) -> Self {
        self.taped.openings = openings;
        (self.across, self.up) = (self.across(), self.up());
        self.shifts = (0..self.outline.len()).map(|i| self.vertex(i, self.on_jamb(i))).collect();
        self
    }

    /// How far the jamb goes that a vertex of the outline stands on, or one right over or under it.
    fn on_jamb(&self, i: usize) -> Option<f64> {
        let jamb = |v: Point| {
            let k = self.jamb_at(v)?;
            let (d, t) = (&self.drawn.openings[k], &self.taped.openings[k]);
            let is_left = (v.x - d.left).abs() <= LEVEL;
            Some(if is_left { t.left - d.left } else { t.right - d.right })
        };
        std::iter::once(self.outline[i]).chain(self.line_of(i, |p| p.x)).find_map(jamb)
    }

    /// The vertices of the outline next to one, either way round, that are in line with it.
    fn line_of(&self, i: usize, off: fn(Point) -> f64) -> impl Iterator<Item = Point> + '_ {
        let (v, n) = (self.outline[i], self.outline.len());
        let on = move |p: &Point| (off(*p) - off(v)).abs() <= LEVEL;
        let onward = (1..n).map(move |k| self.outline[(i + k) % n]).take_while(on);
        let back = (1..n).map(move |k| self.outline[(i + n - k) % n]).take_while(on);
        onward.chain(back)
    }

    /// Where a place of the wall goes; beside it all goes as its side does.
    pub(super) fn moved(&self, p: Point) -> Point {
        p + self.on_outline(p).unwrap_or_else(|| self.within(p))
    }

    /// Where a place at an opening goes, which has the place and the size that were taped.
    pub(super) fn at_opening(&self, i: usize, p: Point) -> Point {
        let (d, t) = (&self.drawn.openings[i], &self.taped.openings[i]);
        // A shape that ends at the wall's own sides ends there still; of a rectangle see `joined`.
        let touching = if d.square { None } else { self.nearest_side(p) };
        let along = |v: f64, (a, b): (f64, f64), (a2, b2): (f64, f64)| match v {
            v if v < a => v - a + a2,
            v if v > b => v - b + b2,
            v => a2 + (v - a) / (b - a).max(ROUNDING) * (b2 - a2),
        };
        let own = Point::new(
            along(p.x, (d.left, d.right), (t.left, t.right)),
            along(p.y, (d.sill, d.head), (t.sill, t.head)),
        );
        let Some((side, place)) = touching else { return own };
        // Its own sides stay level and plumb, and end on the side as that was taped.
        match () {
            () if place.is_end(side) => p + self.shift_on((side, place), p),
            () if plumb(side.x) => Point::new(p.x + self.aside(place, p.y, own.y, turned), own.y),
            () if level(side.y) => Point::new(own.x, p.y + self.aside(place, p.x, own.x, straight)),
            () => p + self.shift_on((side, place), p),
        }
    }

    /// The opening whose frame holds a box.
    pub(super) fn opening_of(&self, b: Rect) -> Option<usize> {
        self.drawn.openings.iter().position(|o| {
            let frame = Rect::new(o.left, o.sill, o.right, o.head).inflate(FRAME, FRAME);
            frame.contains(Point::new(b.x0, b.y0)) && frame.contains(Point::new(b.x1, b.y1))
        })
    }

    /// Whether its left and its right side lean, as taped, farther than a corner may that bears a post.
    pub(super) fn leans_too_far(&self) -> [bool; 2] {
        [self.taped.left, self.taped.right].map(|s| {
            let v = s.top - s.foot;
            v.x.abs() > LEVEL.max(LEANS * v.y.abs())
        })
    }

    /// The opening that a strip runs along from end to end, over or under it, or beside it: then it is upright. What
    /// is drawn so, as a bar between a door and the window over it, ends with the opening however that was taped.
    pub(super) fn strip_of(&self, b: Rect) -> Option<(usize, bool)> {
        let near = |a: f64, b: f64| (a - b).abs() <= LEVEL;
        let along = self.drawn.openings.iter().enumerate().filter_map(|(i, o)| {
            let level = near(b.x0, o.left) && near(b.x1, o.right);
            let upright = near(b.y0, o.sill) && near(b.y1, o.head);
            let touches = |ends: [f64; 4]| near(ends[0], ends[1]) || near(ends[2], ends[3]);
            match () {
                () if level && touches([b.y1, o.sill, b.y0, o.head]) => Some((i, false)),
                () if upright && touches([b.x1, o.left, b.x0, o.right]) => Some((i, true)),
                () => None,
            }
        });
        // Between two openings with the upper one: siding is cut under its sill.
        along.max_by_key(|(i, upright)| !upright && near(b.y1, self.drawn.openings[*i].sill))
    }

    /// The opening on whose jamb a place is: what ends there does so however that was taped.
    pub(super) fn jamb_at(&self, p: Point) -> Option<usize> {
        let near = |x: f64| (p.x - x).abs() <= LEVEL;
        self.drawn.openings.iter().position(|o| {
            (near(o.left) || near(o.right)) && (o.sill - LEVEL..=o.head + LEVEL).contains(&p.y)
        })
    }

    /// The same for a place of a shape, or for one right over or under it: what is plumb in the shape stays plumb.
    pub(super) fn jamb_of(&self, p: Point, shape: &[Point]) -> Option<usize> {
        let in_line = shape.iter().copied().filter(|q| plumb(q.x - p.x));
        std::iter::once(p).chain(in_line).find_map(|q| self.jamb_at(q))
    }

    /// The opening of a name.
    pub(super) fn opening(&self, id: &str) -> Option<usize> {
        self.drawn.openings.iter().position(|o| o.id == id)
    }

    /// The side of the outline that a place is on, and where on it.
    fn nearest_side(&self, p: Point) -> Option<(Vec2, OnSide)> {
        let all = sides(&self.outline).map(|(a, b)| {
            let (side, from) = (b - a, p - a);
            let t = (from.dot(side) / side.hypot2().max(ROUNDING)).clamp(0.0, 1.0);
            (p.distance(a + side * t), t, side)
        });
        let nearest = all.enumerate().min_by(|a, b| a.1.0.total_cmp(&b.1.0))?;
        let (number, (away, share, side)) = nearest;
        (away <= BESIDE).then_some((side, OnSide { number, share }))
    }

    /// How far a place on the outline goes: between the ends of the side that it is nearest to. Along a plumb side
    /// heights go as within the wall, along a level one places do: what ends there is level or plumb still.
    fn on_outline(&self, p: Point) -> Option<Vec2> {
        self.nearest_side(p).map(|on| self.shift_on(on, p))
    }

    /// The same by the side that it is on.
    fn shift_on(&self, (side, on): (Vec2, OnSide), p: Point) -> Vec2 {
        let at = |i: usize| self.shifts.get(i % self.shifts.len().max(1)).copied();
        let ends = at(on.number).zip(at(on.number + 1)).unwrap_or_default();
        let (along, within) = (ends.0.lerp(ends.1, on.share), self.within(p));
        match () {
            () if on.is_end(side) => along,
            () if plumb(side.x) => Vec2::new(self.aside(on, p.y, p.y + within.y, turned), within.y),
            () if level(side.y) => {
                Vec2::new(within.x, self.aside(on, p.x, p.x + within.x, straight))
            }
            () => along,
        }
    }

    /// How far a side that is drawn plumb or level goes aside, from where it was `drawn` along it to where it is
    /// `taped`: what stands on one that is out of line as taped stands on it there too. `turn` has along first.
    fn aside(&self, on: OnSide, drawn: f64, taped: f64, turn: fn(Point) -> (f64, f64)) -> f64 {
        let n = self.outline.len().max(1);
        let end = |i: usize| self.outline.get(i % n).copied().zip(self.shifts.get(i % n).copied());
        let Some(((a, from), (b, to))) = end(on.number).zip(end(on.number + 1)) else {
            return 0.0;
        };
        on_line(turn(a + from), turn(b + to), taped) - on_line(turn(a), turn(b), drawn)
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
        let corners = self.both().map(mean).into_iter().chain(peak).collect();
        knots([(corners, LEVEL), (jambs.collect(), ALIKE)])
    }

    /// What was taped of heights.
    fn up(&self) -> Vec<(f64, f64)> {
        let ends = self.both().into_iter().flat_map(|[d, t]| [(d.foot, t.foot), (d.top, t.top)]);
        let all = ends.chain(self.drawn.peak.zip(self.taped.peak));
        let own = |(d, t): (&OpeningShape, &OpeningShape)| {
            [(d.sill, t.sill - d.sill), (d.head, t.head - d.head)]
        };
        let corners = all.map(|(d, t)| (d.y, t.y - d.y)).collect();
        let levels = self.openings().flat_map(own).collect();
        let bands = self.drawn.bands.iter().zip(&self.taped.bands);
        let bands = bands.flat_map(|(d, t)| t.shifts(d)).collect();
        knots([(bands, LEVEL), (corners, LEVEL), (levels, ALIKE)])
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

    /// How far a vertex of the outline goes; `jamb` is how far the one goes that it stands on.
    fn vertex(&self, i: usize, jamb: Option<f64>) -> Vec2 {
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
        let x = upright.or(leaning).or(jamb).unwrap_or(free.x);
        Vec2::new(x, along.unwrap_or(free.y))
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
        let known = self.line_of(i, off).filter_map(|p| Some((along(p), part(self.known(p)?))));
        let mut known: Vec<(f64, f64)> = known.collect();
        known.sort_by(|a, b| a.0.total_cmp(&b.0));
        let (first, last) = (known.first()?, known.last()?);
        Some(between(*first, *last, along(self.outline[i])))
    }
}

/// A place along a level side, and aside of it.
fn straight(p: Point) -> (f64, f64) {
    (p.x, p.y)
}

/// The same along a plumb side.
fn turned(p: Point) -> (f64, f64) {
    (p.y, p.x)
}

/// Where on a side of the outline a place is: its number, and the share of its length from its beginning.
#[derive(Clone, Copy, Debug)]
struct OnSide {
    number: usize,
    share: f64,
}

impl OnSide {
    /// Whether it is at an end of the side.
    fn is_end(self, side: Vec2) -> bool {
        let length = side.hypot();
        self.share * length <= BESIDE || (1.0 - self.share) * length <= BESIDE
    }
}
