//! The outline of courses that hang together: what lies between their lines, and beyond the first and the
//! last of them as far as the drawn end.

use std::collections::BTreeMap;

use super::blank::{End, blank};
use super::boxed::{is_boxed, is_in_casing};
use super::cap::{cap, without_masonry};
use super::drawn_lines::DrawnLines;
use super::family::{Link, Span, open};
use super::own::Own;
use super::pieces::Piece;
use super::sloped::corner;
use crate::geom::boolean::union_all;
use crate::geom::polygon::Polygon;
use crate::geom::tol::snap;
use crate::geom::vocabulary::{Point, Rect, Ring};

/// Slopes of rakes, rise over run (1/2 in 12 to 48 in 12: common practice, no source).
const SLOPES: std::ops::RangeInclusive<f64> = 0.04..=4.0;
/// Steps of line ends at a rake are alike but for this share and this much, inches.
const ALIKE: (f64, f64) = (0.2, 0.15);
/// What stands at one level, and what meets end to end, does so but for this, inches.
const LEVEL: f64 = 1.0 / 32.0;
const MEETS: f64 = 1.0 / 16.0;
/// Corners nearer to the line past them are none, inches: prints round their points.
const STRAIGHT: f64 = 1.0 / 16.0;

/// Courses that hang together, traced.
pub(super) struct Traced {
    pub(super) areas: Vec<Polygon>,
    /// Over what length no line is drawn where the courses end, inches.
    pub(super) open: f64,
}

/// Everything that one tracing needs.
pub(super) struct Tracer<'a> {
    pub(super) pieces: &'a [Piece],
    pub(super) links: &'a [Link],
    pub(super) pitch: f64,
    pub(super) lines: &'a DrawnLines,
    /// What are courses.
    pub(super) own: Own,
}

impl Tracer<'_> {
    pub(super) fn trace(&self) -> Traced {
        let mut parts = self.between();
        let mut unended = 0.0;
        for up in [true, false] {
            let ends = Ends::of(self, up);
            let mut level = Vec::new();
            for (piece, spans) in open(self.pieces, self.links, up) {
                for span in spans {
                    let (found, none) = ends.beyond(piece, span);
                    level.extend(self.level_end(piece, span, &found));
                    parts.extend(found);
                    unended += none;
                }
            }
            parts.extend(blank(self.lines, level));
        }
        let whole = union_all(&parts).into_iter().map(straightened);
        let areas = whole.filter(|p| p.outer.len() >= 3 && p.area() > 1.0).collect();
        Traced { areas, open: unended }
    }

    /// From where to where a line goes of which this is a part: it may be drawn in pieces, end to end.
    fn whole_line(&self, (mut x0, mut x1): Span, y: f64) -> Span {
        let from = self.pieces.partition_point(|q| q.y < y - LEVEL);
        let row = || self.pieces[from..].iter().take_while(|q| q.y <= y + LEVEL);
        while let Some(q) = row().find(|q| q.x0 < x0 - MEETS && q.x1 >= x0 - MEETS) {
            x0 = q.x0;
        }
        while let Some(q) = row().find(|q| q.x1 > x1 + MEETS && q.x0 <= x1 + MEETS) {
            x1 = q.x1;
        }
        (x0, x1)
    }

    /// What lies beyond a part of a course line, where that is one rectangle.
    fn level_end(&self, piece: usize, over: Span, found: &[Polygon]) -> Option<End> {
        let b = found.iter().map(Polygon::bounds).reduce(|a, b| a.union(b))?;
        let y = self.pieces[piece].y;
        let to = if b.y1 > y { b.y1 } else { b.y0 };
        let area: f64 = found.iter().map(Polygon::area).sum();
        let whole = (area - (over.1 - over.0) * (to - y).abs()).abs() <= 0.1;
        whole.then_some(End { over, y, to })
    }

    /// One line between its drawn ends.
    pub(super) fn single(&self, piece: usize) -> Traced {
        let p = &self.pieces[piece];
        let ends =
            [true, false].map(|up| cap(self.lines, (p.x0, p.x1), p.y, up, self.pitch, &self.own));
        let open = ends.iter().map(|c| c.open).sum();
        let parts: Vec<Polygon> = ends.into_iter().flat_map(|c| c.parts).collect();
        let areas = union_all(&parts).into_iter().map(straightened).collect();
        Traced { areas, open }
    }

    /// Rectangles between lines, those of one width made one.
    fn between(&self) -> Vec<Polygon> {
        let mut links: Vec<&Link> = self.links.iter().collect();
        links.sort_by(|a, b| self.pieces[a.low].y.total_cmp(&self.pieces[b.low].y));
        let mut out: Vec<(Span, f64, f64)> = Vec::new();
        let mut last: BTreeMap<(u64, u64), usize> = BTreeMap::new();
        for l in links {
            let (low, high) = (self.pieces[l.low].y, self.pieces[l.high].y);
            let key = (l.x0.to_bits(), l.x1.to_bits());
            match last.get(&key).and_then(|i| out.get_mut(*i)).filter(|r| r.2 == low) {
                Some(open) => open.2 = high,
                None => {
                    last.insert(key, out.len());
                    out.push(((l.x0, l.x1), low, high));
                }
            }
        }
        out.iter().map(|((x0, x1), low, high)| Polygon::rect(*x0, *low, *x1, *high)).collect()
    }
}

/// The ends of courses in one direction.
struct Ends<'a> {
    of: &'a Tracer<'a>,
    up: bool,
    /// Pieces beyond each, and before it.
    beyond: BTreeMap<usize, Vec<&'a Link>>,
    before: BTreeMap<usize, Vec<&'a Link>>,
}

impl<'a> Ends<'a> {
    fn of(of: &'a Tracer<'a>, up: bool) -> Self {
        let mut out = Ends { of, up, beyond: BTreeMap::new(), before: BTreeMap::new() };
        for l in of.links {
            let (near, far) = if up { (l.low, l.high) } else { (l.high, l.low) };
            out.beyond.entry(near).or_default().push(l);
            out.before.entry(far).or_default().push(l);
        }
        out
    }

    /// What lies beyond a part of a piece over which no piece stands, and over how much of it no end is
    /// drawn.
    fn beyond(&self, piece: usize, span: Span) -> (Vec<Polygon>, f64) {
        let p = &self.of.pieces[piece];
        if span == (p.x0, p.x1) && self.is_sill(piece) {
            return (Vec::new(), 0.0);
        }
        if let Some(part) = self.rake(piece, span) {
            return (vec![part], 0.0);
        }
        let mut found = cap(self.of.lines, span, p.y, self.up, self.of.pitch, &self.of.own);
        let wide = span.1 - span.0;
        let any = !found.parts.is_empty();
        without_masonry(self.of.lines, span, p.y, &mut found);
        if any && found.parts.is_empty() {
            return (Vec::new(), 0.0);
        }
        let is_trim = found.open == 0.0 && self.is_trim(piece, span, &found.parts);
        if is_trim || is_in_casing(self.of.lines, p, span, &found.parts) {
            return (Vec::new(), 0.0);
        }
        if let Some(second) = p.second.filter(|_| self.up && found.open > 0.5 * wide) {
            // The board is drawn with its upper edge.
            return (vec![Polygon::rect(span.0, p.y, span.1, p.y + second)], 0.0);
        }
        match self.apex(piece, span).filter(|_| found.open > 0.5 * wide) {
            Some(part) => (vec![part], 0.0),
            None => {
                let corners = self.corners(piece, span, &found.parts);
                (found.parts.into_iter().chain(corners).collect(), found.open)
            }
        }
    }

    /// What lies beside the parts beyond a line's own ends, where those stand on slopes.
    fn corners(&self, piece: usize, span: Span, parts: &[Polygon]) -> Vec<Polygon> {
        let p = &self.of.pieces[piece];
        let at = [(span.0, p.x0, true), (span.1, p.x1, false)];
        let ends = at.into_iter().filter(|(x, end, _)| x == end);
        let of = |(x, _, left): (f64, f64, bool)| {
            let beside = |b: &Rect| (if left { b.x0 } else { b.x1 } - x).abs() <= LEVEL;
            let level = |q: &&Polygon| (q.area() - q.bounds().area()).abs() <= 0.1;
            let b = parts.iter().filter(level).map(Polygon::bounds).find(beside)?;
            corner(self.of.lines, (x, left), p.y, if self.up { b.y1 } else { b.y0 })
        };
        ends.filter_map(of).collect()
    }

    /// Whether what lies beyond a line is a board with ends of its own, where the courses are not drawn so:
    /// then the line is the board's edge.
    fn is_trim(&self, piece: usize, span: Span, found: &[Polygon]) -> bool {
        let y = self.of.pieces[piece].y;
        let Some(room) = found.iter().map(Polygon::bounds).reduce(|a, b| a.union(b)) else {
            return false;
        };
        let to = if room.center().y > y { room.y1 } else { room.y0 };
        // A sill may stand on the board.
        let level =
            found.iter().all(|p| (p.area() - p.bounds().width() * (to - y).abs()).abs() <= 0.1);
        if !level {
            return false;
        }
        let before = self.before.get(&piece).and_then(|l| l.first());
        let drawn_so = before.is_some_and(|l| {
            is_boxed(self.of.lines, span, y, self.of.pieces[self.other(l, piece)].y)
        });
        !drawn_so && is_boxed(self.of.lines, self.of.whole_line(span, y), y, to)
    }

    /// Whether a whole line is that of a sill or a head: beside it, at its level, siding goes on.
    fn is_sill(&self, piece: usize) -> bool {
        let p = &self.of.pieces[piece];
        let beside = |q: &Piece| {
            (q.y - p.y).abs() <= 1.0 / 32.0
                && ((q.x1 - p.x0).abs() <= 0.25 || (q.x0 - p.x1).abs() <= 0.25)
        };
        let from = self.of.pieces.partition_point(|q| q.y < p.y - 1.0 / 32.0);
        let row = self.of.pieces[from..].iter().take_while(|q| q.y <= p.y + 1.0 / 32.0);
        row.enumerate().any(|(n, q)| beside(q) && self.beyond.contains_key(&(from + n)))
    }

    /// What lies under a rake beside the end of the next course: ends of courses that step evenly stand
    /// on one line.
    fn rake(&self, piece: usize, (x0, x1): Span) -> Option<Polygon> {
        let p = &self.of.pieces[piece];
        let left = x0 == p.x0;
        let links = self.beyond.get(&piece)?;
        let next = links.iter().find(|l| if left { l.x0 == x1 } else { l.x1 == x0 })?;
        let far = self.other(next, piece);
        let step = x1 - x0;
        let y = self.of.pieces[far].y;
        if !SLOPES.contains(&((y - p.y).abs() / step)) {
            return None;
        }
        let alike = |a: f64, b: f64| (a - b).abs() <= ALIKE.0 * a.min(b) + ALIKE.1;
        let (inner, outer) = if left { (x1, x0) } else { (x0, x1) };
        let foot = [Point::new(outer, p.y), Point::new(inner, p.y)];
        let of = |more: &[Point]| {
            let ring = foot.iter().chain(more).copied().collect();
            Some(Polygon::simple(ring).wound())
        };
        let (on, back) = (self.step(far, left, true), self.step(piece, left, false));
        if on.is_some_and(|s| alike(s, step)) || back.is_some_and(|s| alike(s, step)) {
            return of(&[Point::new(inner, y)]);
        }
        // A rake that begins or ends between the two lines: its slope is that of the courses beyond, or
        // before.
        if let Some(s) = on.filter(|s| *s > step && self.goes_on(far, left, *s)) {
            let turn = y - (y - p.y) * step / s;
            return of(&[Point::new(inner, y), Point::new(outer, turn)]);
        }
        let s = back.filter(|s| *s > step)?;
        let before = self.before.get(&piece)?.first().map(|l| self.other(l, piece))?;
        let goes_on = self.step(before, left, false).is_some_and(|b| alike(b, s));
        goes_on.then(|| of(&[Point::new(inner, p.y + (y - p.y) * step / s)]))?
    }

    /// Whether the ends of courses beyond a piece's next one step as far again.
    fn goes_on(&self, piece: usize, left: bool, step: f64) -> bool {
        let next = self.beyond.get(&piece).and_then(|l| l.first()).map(|l| self.other(l, piece));
        let again = next.and_then(|n| self.step(n, left, true));
        again.is_some_and(|a| (a - step).abs() <= ALIKE.0 * step + ALIKE.1)
    }

    fn other(&self, l: &Link, piece: usize) -> usize {
        if l.low == piece { l.high } else { l.low }
    }

    /// How far the end of a piece stands inside that of the one before it, or outside that of the one
    /// beyond it; none where it does not.
    fn step(&self, piece: usize, left: bool, on: bool) -> Option<f64> {
        let links = if on { self.beyond.get(&piece) } else { self.before.get(&piece) }?;
        let of = |i: usize| &self.of.pieces[i];
        let p = of(piece);
        let end = |q: &Piece| if left { q.x0 } else { -q.x1 };
        let side = links.iter().min_by(|a, b| {
            let at = |l: &Link| if left { l.x0 } else { -l.x1 };
            at(a).total_cmp(&at(b))
        })?;
        let q = of(self.other(side, piece));
        let step = if on { end(q) - end(p) } else { end(p) - end(q) };
        (step > 1.0 / 32.0).then_some(step)
    }

    /// The tip over the last line of a gable whose rakes are not drawn.
    fn apex(&self, piece: usize, (x0, x1): Span) -> Option<Polygon> {
        let p = &self.of.pieces[piece];
        if (x0, x1) != (p.x0, p.x1) || self.beyond.contains_key(&piece) {
            return None;
        }
        let (left, right) = (self.step(piece, true, false)?, self.step(piece, false, false)?);
        let wide = x1 - x0;
        if wide > 1.1 * (left + right) {
            return None;
        }
        let rise = self.of.pitch * wide / (left + right);
        let tip = p.y + if self.up { rise } else { -rise };
        let at = x0 + wide * left / (left + right);
        let ring = vec![Point::new(x0, p.y), Point::new(x1, p.y), Point::new(at, tip)];
        Some(Polygon::simple(ring).wound())
    }
}

/// A polygon without corners that rounding makes, on the grid.
fn straightened(p: Polygon) -> Polygon {
    let holes = p.holes.into_iter().map(ring_straight).filter(|r| r.len() >= 3).collect();
    Polygon { outer: ring_straight(p.outer), holes }
}

/// A ring with as few of its corners as stay within [`STRAIGHT`] of it.
fn ring_straight(ring: Ring) -> Ring {
    let n = ring.len();
    if n < 4 {
        return ring;
    }
    // From one corner that stays to another: the lowest left one and the one farthest from it.
    let from = (0..n)
        .min_by(|a, b| (ring[*a].x + ring[*a].y).total_cmp(&(ring[*b].x + ring[*b].y)))
        .unwrap_or(0);
    let turned: Ring = (0..=n).map(|i| ring[(from + i) % n]).collect();
    let far = (0..n)
        .max_by(|a, b| turned[*a].distance(turned[0]).total_cmp(&turned[*b].distance(turned[0])))
        .unwrap_or(0);
    let mut keep = vec![false; n + 1];
    (keep[0], keep[far], keep[n]) = (true, true, true);
    let mut open = vec![(0, far), (far, n)];
    while let Some((a, b)) = open.pop() {
        let off = |i: &usize| {
            let way = turned[b] - turned[a];
            let length = way.hypot().max(1e-9);
            (way.cross(turned[*i] - turned[a]) / length).abs()
        };
        let farthest = (a + 1..b).max_by(|i, j| off(i).total_cmp(&off(j)));
        if let Some(i) = farthest.filter(|i| off(i) > STRAIGHT) {
            keep[i] = true;
            open.extend([(a, i), (i, b)]);
        }
    }
    let kept = (0..n).filter(|i| keep[*i]);
    kept.map(|i| Point::new(snap(turned[i].x), snap(turned[i].y))).collect()
}
