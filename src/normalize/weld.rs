//! Outlines closed: by their flag, by ends that meet, or by loose lines that join end to end
//! within the weld tolerance. Larger gaps are never welded; `extract` reports them.

use std::collections::{BTreeMap, BTreeSet};

use crate::finding::lines::LineFinding;
use crate::finding::{Finding, Findings};
use crate::geom::vocabulary::Point;
use crate::model::linework::{Linework, Role, Stroke};

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
    let mut joined = 0usize;
    let mut sets: BTreeMap<(Role, usize, Option<usize>), Vec<usize>> = BTreeMap::new();
    for (i, s) in lines.strokes.iter().enumerate() {
        if let Some(role) = s.role.filter(|r| LOOPS.contains(r) && !s.closed) {
            sets.entry((role, s.layer, s.group)).or_default().push(i);
        }
    }
    let mut gone = BTreeSet::new();
    let mut made = Vec::new();
    for set in sets.values() {
        for chain in chains(&lines.strokes, set, weld) {
            joined += chain.welded;
            let Some(first) = chain.members.first() else { continue };
            let mut stroke = lines.strokes[*first].clone();
            if chain.members.len() == 1 && !chain.closed {
                continue;
            }
            stroke.points = chain.points;
            stroke.closed = chain.closed;
            gone.extend(chain.members);
            made.push(stroke);
        }
    }
    let mut i = 0;
    lines.strokes.retain(|_| {
        i += 1;
        !gone.contains(&(i - 1))
    });
    lines.strokes.extend(made);
    if joined > 0 {
        let kind = LineFinding::EndsJoined { ends: joined, weld, loose: false };
        findings.push(Finding::new(kind));
    }
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
        let mut points = strokes[i].points.clone();
        let welded = usize::from(points.first() != points.last());
        points.pop();
        out.push(Chain { members: vec![i], points, closed: true, welded });
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
        let mut chain = Chain { members: vec![i], points, closed: false, welded: 0 };
        for _ in 0..2 {
            while let Some(&tail) = chain.points.last() {
                let Some((j, start, d)) = self.near(tail, used) else { break };
                used.insert(j);
                chain.members.push(j);
                chain.welded += usize::from(d > 0.0);
                let more = self.strokes[j].points.iter().copied();
                let more: Vec<Point> = if start { more.collect() } else { more.rev().collect() };
                chain.points.extend(more.into_iter().skip(1));
            }
            chain.points.reverse();
        }
        let (first, last) = (chain.points.first().copied(), chain.points.last().copied());
        if let (Some(a), Some(b)) = (first, last) {
            let d = a.distance(b);
            if chain.points.len() > 3 && d <= self.weld {
                chain.closed = true;
                chain.welded += usize::from(d > 0.0);
                chain.points.pop();
            }
        }
        chain
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::origin::Origin;

    fn line(a: (f64, f64), b: (f64, f64)) -> Stroke {
        Stroke {
            points: vec![a.into(), b.into()],
            closed: false,
            role: Some(Role::Wall),
            layer: 0,
            group: None,
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
