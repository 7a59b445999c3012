//! Outlines closed: by their flag, by ends that meet, or by loose lines that join end to end
//! within the weld tolerance. Larger gaps are never welded; `extract` reports them.

use std::collections::{BTreeMap, BTreeSet};

use crate::finding::lines::LineFinding;
use crate::finding::{Finding, Findings};
use crate::geom::polygon::bounds;
use crate::geom::tol::{GRID, LEVEL, snap};
use crate::geom::vocabulary::Point;
use crate::model::linework::{Linework, Role, Stroke};
use crate::origin::Origin;

/// Roles whose strokes must be loops.
const LOOPS: [Role; 9] = [
    Role::Wall,
    Role::Bare,
    Role::Band,
    Role::Roof,
    Role::Window,
    Role::Door,
    Role::MountingBlock,
    Role::Obstacle,
    Role::Frame,
];

/// Joins loose strokes of each role and insertion into loops.
pub(super) fn close_outlines(lines: &mut Linework, weld: f64, findings: &mut Findings) {
    let joined = join(&mut lines.strokes, weld, |chain| {
        if chain.members.len() == 1 && !chain.closed { None } else { Some(chain) }
    });
    if !joined.is_empty() {
        let ends = joined.iter().map(|j| j.ends).sum();
        let kind = LineFinding::EndsJoined { ends, weld, loose: false };
        findings.push(Finding::new(kind));
    }
    close_gaps(lines, weld, findings);
}

/// Loops that lack less than this at their corners are closed, inches: what a drafter misses a corner
/// by, and less than any detail is apart (common practice, no source).
const GAP: f64 = 0.25;

/// Closes loops with gaps wider than the weld distance and under a quarter of an inch, and tells of
/// each layer's. What does not become a loop stays as it is drawn.
fn close_gaps(lines: &mut Linework, weld: f64, findings: &mut Findings) {
    let under = GAP - GRID;
    if weld >= under {
        return;
    }
    // What is no larger than some gaps is a mark.
    let sized =
        |c: &Chain| bounds(&c.points).is_some_and(|b| b.width().min(b.height()) > 4.0 * GAP);
    let closed =
        join(&mut lines.strokes, under, |chain| (chain.closed && sized(&chain)).then_some(chain));
    let mut by_layer: BTreeMap<usize, Vec<Joined>> = BTreeMap::new();
    for j in closed {
        by_layer.entry(j.layer).or_default().push(j);
    }
    for (layer, list) in by_layer {
        let Some(first) = list.first() else { continue };
        let place = |j: &Joined| lines.source(j.at);
        let kind = LineFinding::GapsClosed {
            layer: lines.layers.get(layer).map_or_else(String::new, |l| l.layer.name.clone()),
            loops: list.len(),
            widest: list.iter().map(|j| j.widest).fold(0.0, f64::max),
        };
        let others = list.iter().skip(1).take(MOST_PLACES).map(place).collect();
        findings.push(Finding::new(kind).about(&first.origin).at(place(first)).also_at(others));
    }
}

/// Most places of loops that are kept beside the first.
const MOST_PLACES: usize = 200;

/// What was joined to one stroke.
struct Joined {
    layer: usize,
    ends: usize,
    widest: f64,
    at: Point,
    origin: Origin,
}

/// Joins loose strokes of each role and insertion where `keep` takes the chain that they make.
fn join(
    strokes: &mut Vec<Stroke>,
    weld: f64,
    keep: impl Fn(Chain) -> Option<Chain>,
) -> Vec<Joined> {
    let mut joined = Vec::new();
    let mut sets: BTreeMap<(Role, usize, Option<usize>), Vec<usize>> = BTreeMap::new();
    for (i, s) in strokes.iter().enumerate() {
        if let Some(role) = s.role.filter(|r| LOOPS.contains(r) && !s.closed) {
            sets.entry((role, s.layer, s.group)).or_default().push(i);
        }
    }
    let mut gone = BTreeSet::new();
    let mut made = Vec::new();
    for set in sets.values() {
        for chain in chains(strokes, set, weld) {
            let Some(chain) = keep(chain) else { continue };
            let Some(first) = chain.members.first() else { continue };
            let mut stroke = strokes[*first].clone();
            if chain.welded > 0 {
                joined.push(Joined {
                    layer: stroke.layer,
                    ends: chain.welded,
                    widest: chain.widest,
                    at: chain.points.first().copied().unwrap_or(Point::ZERO),
                    origin: stroke.origin.clone(),
                });
            }
            stroke.points = chain.points;
            stroke.closed = chain.closed;
            stroke.entities = chain.members.iter().map(|i| strokes[*i].entities).sum();
            gone.extend(chain.members);
            made.push(stroke);
        }
    }
    let mut i = 0;
    strokes.retain(|_| {
        i += 1;
        !gone.contains(&(i - 1))
    });
    strokes.extend(made);
    joined
}

/// Strokes joined end to end.
#[derive(Debug)]
pub struct Chain {
    /// Indices of the strokes, in order.
    pub members: Vec<usize>,
    /// All points.
    pub points: Vec<Point>,
    /// Whether the ends meet.
    pub closed: bool,
    /// Joints that were not exact.
    pub welded: usize,
    /// The widest of them, inches.
    pub widest: f64,
}

impl Chain {
    fn joint(&mut self, gap: f64) {
        self.welded += usize::from(gap > 0.0);
        self.widest = self.widest.max(gap);
    }

    /// Closes it where its ends meet within the weld distance.
    fn close(&mut self, weld: f64) {
        let n = self.points.len();
        let (Some(a), Some(b)) = (self.points.first().copied(), self.points.last().copied()) else {
            return;
        };
        let gap = a.distance(b);
        if n <= 3 || gap > weld {
            return;
        }
        self.closed = true;
        self.joint(gap);
        if gap <= LEVEL {
            self.points.pop();
        } else if let Some(c) = corner((self.points[n - 2], b), (self.points[1], a), gap) {
            self.points[0] = c;
            self.points.pop();
        }
    }
}

/// Where two sides that miss one another would meet, each given by a point of it and the end that
/// misses: no farther from the ends than they are from one another.
fn corner((p, a): (Point, Point), (q, b): (Point, Point), gap: f64) -> Option<Point> {
    let (u, v) = (a - p, b - q);
    let across = u.cross(v);
    // Sides in one line meet nowhere: the gap is bridged.
    if across.abs() <= 0.05 * u.hypot() * v.hypot() {
        return None;
    }
    let t = (q - p).cross(v) / across;
    let c = p + u * t;
    let c = Point::new(snap(c.x), snap(c.y));
    (c.distance(a) <= 1.5 * gap && c.distance(b) <= 1.5 * gap).then_some(c)
}

/// Chains of the open strokes in `set`, longest reach first come first served.
pub fn chains(strokes: &[Stroke], set: &[usize], weld: f64) -> Vec<Chain> {
    let ends = Ends::of(strokes, set, weld);
    let mut used = BTreeSet::new();
    let mut out = Vec::new();
    // A stroke that comes back to its own start is a ring by itself: taken first, so that it is not
    // strung together with a neighbor that touches it there.
    let (rings, open): (Vec<usize>, Vec<usize>) = set.iter().partition(|i| {
        let p = &strokes[**i].points;
        p.len() > 3 && p[0].distance(p[p.len() - 1]) <= weld
    });
    for &i in &rings {
        used.insert(i);
        let points = strokes[i].points.clone();
        let mut chain = Chain { members: vec![i], points, closed: false, welded: 0, widest: 0.0 };
        chain.close(weld);
        out.push(chain);
    }
    for &i in &open {
        if !used.insert(i) {
            continue;
        }
        out.push(ends.strung(i, &mut used));
    }
    out
}

/// Ends of strokes by place.
struct Ends<'a> {
    strokes: &'a [Stroke],
    weld: f64,
    /// Strokes by the cells of a grid, with whether it is the stroke's start that lies there.
    cells: BTreeMap<(i64, i64), Vec<(usize, bool)>>,
}

impl<'a> Ends<'a> {
    fn of(strokes: &'a [Stroke], set: &[usize], weld: f64) -> Self {
        let mut out = Ends { strokes, weld, cells: BTreeMap::new() };
        for &i in set {
            let p = &strokes[i].points;
            if let (Some(a), Some(b)) = (p.first(), p.last()) {
                out.cells.entry(out.key(*a)).or_default().push((i, true));
                out.cells.entry(out.key(*b)).or_default().push((i, false));
            }
        }
        out
    }

    fn key(&self, p: Point) -> (i64, i64) {
        let cell = self.weld.max(1.0 / 64.0) * 4.0;
        ((p.x / cell).floor() as i64, (p.y / cell).floor() as i64)
    }

    /// The nearest unused end within the weld distance: (stroke, whether it is that one's start).
    fn near(&self, p: Point, used: &BTreeSet<usize>) -> Option<(usize, bool, f64)> {
        let (cx, cy) = self.key(p);
        let mut best: Option<(usize, bool, f64)> = None;
        for dx in -1..=1 {
            for dy in -1..=1 {
                for &(i, start) in self.cells.get(&(cx + dx, cy + dy)).into_iter().flatten() {
                    let pts = &self.strokes[i].points;
                    let q = if start { pts.first() } else { pts.last() };
                    let d = q.map_or(f64::INFINITY, |q| q.distance(p));
                    if !used.contains(&i) && d <= self.weld && best.is_none_or(|b| d < b.2) {
                        best = Some((i, start, d));
                    }
                }
            }
        }
        best
    }

    /// The chain that a stroke is part of, strung on at either end as far as it goes.
    fn strung(&self, i: usize, used: &mut BTreeSet<usize>) -> Chain {
        let points = self.strokes[i].points.clone();
        let mut chain = Chain { members: vec![i], points, closed: false, welded: 0, widest: 0.0 };
        for _ in 0..2 {
            while let Some(&tail) = chain.points.last() {
                let Some((j, start, d)) = self.near(tail, used) else { break };
                used.insert(j);
                chain.members.push(j);
                chain.joint(d);
                let more = self.strokes[j].points.iter().copied();
                let more: Vec<Point> = if start { more.collect() } else { more.rev().collect() };
                let mut from = 1;
                let n = chain.points.len();
                if d > LEVEL && n > 1 && more.len() > 1 {
                    match corner((chain.points[n - 2], tail), (more[1], more[0]), d) {
                        Some(c) => chain.points[n - 1] = c,
                        None => from = 0,
                    }
                }
                chain.points.extend(more.into_iter().skip(from));
            }
            chain.points.reverse();
        }
        chain.close(self.weld);
        chain
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn line(a: (f64, f64), b: (f64, f64)) -> Stroke {
        Stroke {
            points: vec![a.into(), b.into()],
            closed: false,
            role: Some(Role::Wall),
            layer: 0,
            group: None,
            part_of: None,
            ink: Default::default(),
            entities: 1,
            origin: Origin::default(),
        }
    }

    #[test]
    fn four_loose_lines_join_whatever_their_order_and_sense() {
        let strokes = [
            line((0., 0.), (10., 0.)),
            line((10., 8.), (0.01, 8.)),
            line((10., 0.), (10., 8.)),
            line((0., 0.), (0., 8.)),
        ];
        let found = chains(&strokes, &[0, 1, 2, 3], 1.0 / 16.0);
        assert_eq!(found.len(), 1);
        assert!(found[0].closed);
        assert_eq!((found[0].points.len(), found[0].welded), (4, 1));
    }
}
