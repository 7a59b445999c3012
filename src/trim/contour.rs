//! An opening's contour as trim goes along it: straight sides and curves, each with what it meets at
//! its ends.

use super::stock::LEAST;
use crate::geom::curve::curved_sides;
use crate::geom::polygon::sides as ring_sides;
use crate::geom::tol::{CUT, SAME};
use crate::geom::vocabulary::{Point, Ring, Vec2};
use crate::model::house::EdgeKind;
use crate::model::receiver::FieldEdge;
use crate::real::Real;

/// Turns smaller than this are no corner of a curve, degrees: of our own choosing.
const SMOOTH: f64 = 30.5;
/// Chords of one curve turn by less than this.
const CHORDS: f64 = 40.0;
/// How far a corner may be from square and still be cut as one, degrees.
const SQUARE: f64 = 0.1;

/// A line of a contour, the siding on its left hand.
#[derive(Clone, Copy, Debug)]
pub(super) struct Segment {
    from: Point,
    to: Point,
    pub(super) kind: EdgeKind,
    is_curved: bool,
}

impl Segment {
    /// The middle of it.
    pub(super) fn middle(&self) -> Point {
        self.from.midpoint(self.to)
    }

    fn run(&self) -> Vec2 {
        self.to - self.from
    }
}

impl From<&FieldEdge> for Segment {
    fn from(e: &FieldEdge) -> Self {
        Segment { from: e.from, to: e.to, kind: e.kind, is_curved: e.is_curved }
    }
}

/// What a side meets at one of its ends.
#[derive(Clone, Copy, Debug)]
pub(super) struct Corner {
    /// Degrees between the two sides' lines; where the opening is notched, less than 0.
    pub turn: f64,
    /// Whether this side leaves the corner over the other, so that water runs from it.
    pub is_upper: bool,
    /// Whether the two go on as one line but for the chords of a curve.
    pub is_smooth: bool,
    /// Whether a level side meets a plumb one.
    pub is_square: bool,
    /// What the other side is; none where it is a curve.
    pub other: Option<EdgeKind>,
}

/// One straight side or one curve of a contour: from left to right, or bottom up where it is a jamb.
#[derive(Clone, Debug)]
pub(super) struct ContourSide {
    /// What it is.
    pub kind: EdgeKind,
    /// Whether it is bent.
    pub is_curved: bool,
    /// Whether it goes all round.
    pub is_ring: bool,
    /// Its ends, and where it is bent the points between.
    pub points: Vec<Point>,
    /// What it meets at its first and at its last point; nothing where the siding ends.
    pub ends: [Option<Corner>; 2],
    /// Away from the opening, square to it, at its first side.
    pub out: Vec2,
}

impl ContourSide {
    /// Its first and its last point.
    pub(super) fn ends(&self) -> (Point, Point) {
        let first = self.points.first().copied().unwrap_or_default();
        (first, self.points.last().copied().unwrap_or(first))
    }

    /// Its points with the first and the last moved on along it.
    pub(super) fn reaching(&self, by: [f64; 2]) -> Vec<Point> {
        let mut out = self.points.clone();
        let n = out.len();
        if n < 2 {
            return out;
        }
        let on =
            |from: Point, to: Point, by: f64| to + (to - from) / from.distance(to).max(SAME) * by;
        (out[0], out[n - 1]) = (on(out[1], out[0], by[0]), on(out[n - 2], out[n - 1], by[1]));
        out
    }

    /// Its points, and of a ring that goes on over its own beginning those of that, `by` far.
    pub(super) fn round_again(&self, by: f64) -> Vec<Point> {
        let mut out = self.points.clone();
        let mut left = by;
        for w in self.points.windows(2) {
            let long = w[0].distance(w[1]);
            if left <= SAME || long <= 0.0 {
                continue;
            }
            out.push(w[0] + (w[1] - w[0]) * (left / long).min(1.0));
            left -= long;
        }
        out
    }

    /// Its points moved away from the opening, square to it, where it is straight.
    pub(super) fn beside(&self, by: f64) -> Vec<Point> {
        let out = self.out * (by / self.out.hypot().max(SAME));
        self.points.iter().map(|p| if self.is_curved { *p } else { *p + out }).collect()
    }
}

/// The lines of a whole outline that runs counter-clockwise.
pub(super) fn of_outline(ring: &Ring) -> Vec<Segment> {
    let curved = curved_sides(ring);
    let both = ring_sides(ring).zip(curved);
    let mut out: Vec<Segment> = both
        .map(|((a, b), is_curved)| {
            let kind = EdgeKind::of_opening_side(a - b, is_curved);
            Segment { from: b, to: a, kind, is_curved }
        })
        .filter(|s| s.run().hypot() > SAME)
        .collect();
    out.reverse();
    out
}

/// The sides of a contour. Where `by_kind`, a curve is parted where it goes over from head to sill.
pub(super) fn sides(mut lines: Vec<Segment>, by_kind: bool) -> Vec<ContourSide> {
    // A plumb chord goes on as what its curve was before it, the first as what it is after.
    for i in (1..lines.len()).chain((0..lines.len().saturating_sub(1)).rev()) {
        let beside = if lines[i].kind != EdgeKind::Jamb || !lines[i].is_curved {
            continue;
        } else {
            [i.checked_sub(1), Some(i + 1)]
        };
        let curve =
            |j: &usize| lines.get(*j).is_some_and(|s| s.is_curved && s.kind != EdgeKind::Jamb);
        if let Some(j) = beside.into_iter().flatten().find(curve) {
            lines[i].kind = lines[j].kind;
        }
    }
    chains(lines)
        .into_iter()
        .flat_map(|(chain, closed)| of_chain(&chain, closed, by_kind))
        .collect()
}

/// Lines that go on from one another, in order, with whether they close.
fn chains(lines: Vec<Segment>) -> Vec<(Vec<Segment>, bool)> {
    let mut out: Vec<Vec<Segment>> = Vec::new();
    for s in lines {
        match out.last_mut() {
            Some(c) if c.last().is_some_and(|l| l.to.distance(s.from) <= SAME) => c.push(s),
            _ => out.push(vec![s]),
        }
    }
    let meets = |a: &[Segment], b: &[Segment]| {
        a.last().zip(b.first()).is_some_and(|(x, y)| x.to.distance(y.from) <= SAME)
    };
    // The first may go on from the last: a ring begins anywhere.
    if out.len() > 1 && meets(&out[out.len() - 1], &out[0]) {
        let mut last = out.pop().unwrap_or_default();
        last.append(&mut out[0]);
        out[0] = last;
    }
    out.into_iter()
        .map(|c| {
            let closed = c.len() > 2 && meets(&c, &c);
            (c, closed)
        })
        .collect()
}

/// Degrees from one run to another, positive to the right: with the siding on the left hand, round a
/// corner that sticks out of the opening.
fn turn(u: Vec2, v: Vec2) -> f64 {
    -u.cross(v).angle_over(u.dot(v)).to_degrees()
}

/// Whether a line goes on the side that `before` is the last line of and that began at `start`.
fn goes_on(before: &Segment, s: &Segment, start: Point, by_kind: bool) -> bool {
    if before.is_curved != s.is_curved {
        return false;
    }
    if s.is_curved {
        let parted = by_kind && before.kind != s.kind;
        return turn(before.run(), s.run()).abs() <= CHORDS && !parted;
    }
    let whole = s.to - start;
    let off = whole.cross(before.to - start).abs() / whole.hypot().max(SAME);
    before.run().dot(s.run()) > 0.0 && off <= CUT
}

fn of_chain(chain: &[Segment], closed: bool, by_kind: bool) -> Vec<ContourSide> {
    let n = chain.len();
    let after = |i: usize| {
        goes_on(&chain[(i + n - 1) % n], &chain[i], chain[(i + n - 1) % n].from, by_kind)
    };
    let begin = if closed { (0..n).find(|i| !after(*i)) } else { Some(0) };
    let Some(begin) = begin else { return vec![ring(chain)] };
    let mut groups: Vec<Vec<Segment>> = Vec::new();
    for k in 0..n {
        let s = chain[(begin + k) % n];
        match groups.last_mut() {
            Some(g) if goes_on(&g[g.len() - 1], &s, g[0].from, by_kind) => g.push(s),
            _ => groups.push(vec![s]),
        }
    }
    // A side shorter than trim is cut is drawn dirt: its neighbors meet.
    groups.retain(|g| g.iter().map(|s| s.run().hypot()).sum::<f64>() >= LEAST);
    let m = groups.len();
    let meets = |i: usize, j: usize| (closed && m > 1 || i < j) && i < m && j < m;
    (0..m)
        .map(|i| {
            let before = if i > 0 { i - 1 } else { m - 1 };
            let next = (i + 1) % m;
            let ends = [
                meets(before, i).then(|| corner(&groups[i], &groups[before], false)),
                meets(i, next).then(|| corner(&groups[i], &groups[next], true)),
            ];
            side(&groups[i], ends)
        })
        .collect()
}

/// Direction of a side at its end, or at its beginning; of a curve, of the curve rather than its chord.
fn tangent(g: &[Segment], at_end: bool) -> Vec2 {
    let n = g.len();
    let (chord, inner) = if at_end {
        (g[n - 1].run(), g[n.saturating_sub(2)].run())
    } else {
        (g[0].run(), g[1.min(n - 1)].run())
    };
    let along = if g[0].is_curved { chord } else { g[n - 1].to - g[0].from };
    let half = if g[0].is_curved && n > 1 {
        inner.cross(chord).angle_over(inner.dot(chord)) / 2.0
    } else {
        0.0
    };
    let (sin, cos) = half.sine_cosine();
    Vec2::new(along.x * cos - along.y * sin, along.x * sin + along.y * cos)
        / along.hypot().max(SAME)
}

/// Two sides that turn by more than this go back along one another, degrees.
const BACK: f64 = 179.0;

/// Turn from one side to the next. Where the next one goes back, the side left out between them tells to
/// which hand.
fn turn_to_next(before: &[Segment], next: &[Segment]) -> f64 {
    let (u, v) = (tangent(before, true), tangent(next, false));
    let between = next[0].from - before[before.len() - 1].to;
    let whole = turn(u, v);
    if whole.abs() > BACK && between.hypot() > SAME {
        return whole.abs().copysign(turn(u, between));
    }
    whole
}

/// What a side meets at its end, or at its beginning.
fn corner(me: &[Segment], other: &[Segment], at_end: bool) -> Corner {
    let (u, v) = (tangent(me, at_end), tangent(other, !at_end));
    let turn = if at_end { turn_to_next(me, other) } else { turn_to_next(other, me) };
    // Away from the corner.
    let (mine, theirs) = if at_end { (-u, v) } else { (u, -v) };
    // Of two that go back along one another the one that stands higher.
    let (my_end, their_end) = if at_end {
        (me[me.len() - 1].to, other[0].from)
    } else {
        (me[0].from, other[other.len() - 1].to)
    };
    let is_upper = if turn.abs() > BACK && (my_end.y - their_end.y).abs() > SAME {
        my_end.y > their_end.y
    } else if (mine.y - theirs.y).abs() > 0.01 {
        mine.y > theirs.y
    } else {
        mine.x < theirs.x
    };
    let curves = me[0].is_curved || other[0].is_curved;
    let upright = |d: Vec2| d.x.abs().min(d.y.abs()) < 0.002;
    Corner {
        turn,
        is_upper,
        is_smooth: curves && turn.abs() <= SMOOTH,
        is_square: !curves && (turn.abs() - 90.0).abs() < SQUARE && upright(mine),
        other: (!other[0].is_curved).then(|| kind(other)),
    }
}

fn kind(g: &[Segment]) -> EdgeKind {
    let run = g[g.len() - 1].to - g[0].from;
    if g[0].is_curved {
        g.iter().map(|s| s.kind).find(|k| *k != EdgeKind::Jamb).unwrap_or(g[0].kind)
    } else {
        EdgeKind::of_opening_side(run, false)
    }
}

fn side(g: &[Segment], mut ends: [Option<Corner>; 2]) -> ContourSide {
    let is_curved = g[0].is_curved;
    let mut points = vec![g[0].from];
    if is_curved {
        points.extend(g.iter().map(|s| s.to));
    } else {
        points.push(g[g.len() - 1].to);
    }
    let (a, b) = (points[0], points[points.len() - 1]);
    let kind = kind(g);
    let up = b.y > a.y;
    let turned = if kind == EdgeKind::Jamb { !up } else { b.x < a.x };
    if turned {
        points.reverse();
        ends.reverse();
    }
    let along = if turned { g[g.len() - 1].run() } else { g[0].run() };
    ContourSide { kind, is_curved, is_ring: false, points, ends, out: along.turn_90() }
}

/// A curve all round, from its lowest point, where water leaves it.
fn ring(chain: &[Segment]) -> ContourSide {
    let low = (0..chain.len()).min_by(|a, b| chain[*a].from.y.total_cmp(&chain[*b].from.y));
    let low = low.unwrap_or(0);
    let n = chain.len();
    let mut points: Vec<Point> = (0..n).map(|k| chain[(low + k) % n].from).collect();
    points.push(chain[low].from);
    let out = chain[low].run().turn_90();
    ContourSide {
        kind: EdgeKind::Head,
        is_curved: true,
        is_ring: true,
        points,
        ends: [None, None],
        out,
    }
}
