//! Coordinates that are one: those of the ends of a squared side, of vertices at one place, and of
//! vertices that stand on a squared side.

use std::collections::BTreeMap;

use super::net::{Becomes, Net};
use super::noise::{HAIR, LEAN, LONG, STEP};
use crate::geom::near::Near;
use crate::geom::vocabulary::{Point, Rect};

/// Which of two coordinates.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Axis {
    X,
    Y,
}

impl Axis {
    pub(super) fn of(self, p: Point) -> f64 {
        if self == Axis::X { p.x } else { p.y }
    }
}

/// Vertices with one coordinate in common.
#[derive(Clone, Debug)]
pub(super) struct Class {
    pub(super) axis: Axis,
    pub(super) members: Vec<usize>,
    pub(super) site: usize,
    /// A level or plumb side lies on it.
    pub(super) governed: bool,
    /// A long side that leans lies on it.
    pub(super) leans: bool,
    /// Of finished grade: nothing is built at its height, and it stands by itself.
    pub(super) of_grade: bool,
}

/// Roots of coordinates, x first, then y.
struct Roots(Vec<usize>);

impl Roots {
    fn find(&mut self, mut i: usize) -> usize {
        while self.0[i] != i {
            self.0[i] = self.0[self.0[i]];
            i = self.0[i];
        }
        i
    }

    fn join(&mut self, a: usize, b: usize) {
        let (a, b) = (self.find(a), self.find(b));
        self.0[a.max(b)] = a.min(b);
    }
}

/// The classes of a net; those whose members lie farther apart than noise are left out.
pub(super) fn classes(net: &Net) -> Vec<Class> {
    let n = net.at.len();
    let mut roots = Roots((0..2 * n).collect());
    for s in &net.sides {
        match s.becomes {
            Becomes::Level => roots.join(n + s.a, n + s.b),
            Becomes::Plumb => roots.join(s.a, s.b),
            Becomes::Nothing => {
                roots.join(s.a, s.b);
                roots.join(n + s.a, n + s.b);
            }
            Becomes::AsDrawn => {}
        }
    }
    at_one_place(net, &mut roots);
    on_sides(net, &mut roots);
    let mut governed = vec![false; 2 * n];
    let mut leans = vec![false; 2 * n];
    for s in &net.sides {
        let at = match s.becomes {
            Becomes::Level => n + s.a,
            Becomes::Plumb => s.a,
            _ => continue,
        };
        let root = roots.find(at);
        governed[root] = true;
        leans[root] |= s.lie.lean > HAIR && s.lie.squares();
    }
    let mut by_root: BTreeMap<usize, Vec<usize>> = BTreeMap::new();
    for i in 0..2 * n {
        by_root.entry(roots.find(i)).or_default().push(i);
    }
    let mut out = Vec::new();
    for (root, all) in by_root {
        let axis = if root < n { Axis::X } else { Axis::Y };
        let members: Vec<usize> = all.into_iter().map(|i| i % n).collect();
        let site = net.site(members[0]);
        let (low, high) = spread(net, axis, &members);
        if high - low <= LEAN + HAIR {
            let (governed, leans) = (governed[root], leans[root]);
            if !governed && members.iter().all(|i| net.curved[*i]) {
                continue;
            }
            let of_grade = members.iter().all(|i| net.is_grade(*i));
            out.push(Class { axis, members, site, governed, leans, of_grade });
        }
    }
    out
}

fn spread(net: &Net, axis: Axis, members: &[usize]) -> (f64, f64) {
    members
        .iter()
        .map(|i| axis.of(net.at[*i]))
        .fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), v| (low.min(v), high.max(v)))
}

/// Vertices at one place but for noise have both coordinates in common.
fn at_one_place(net: &Net, roots: &mut Roots) {
    let n = net.at.len();
    let key = |p: Point| ((p.x / STEP).floor() as i64, (p.y / STEP).floor() as i64);
    let mut cells: BTreeMap<(i64, i64), Vec<usize>> = BTreeMap::new();
    for (i, p) in net.at.iter().enumerate() {
        let (cx, cy) = key(*p);
        let reach = net.step(net.site(i));
        let one = |j: &usize| {
            let q = net.at[*j];
            let near = (p.x - q.x).abs() <= reach && (p.y - q.y).abs() <= reach;
            near && net.site(*j) == net.site(i) && net.is_grade(*j) == net.is_grade(i)
        };
        // The nearest of each cell stands for the rest: they are one already.
        for dx in -2..=2 {
            for dy in -2..=2 {
                let found = cells.get(&(cx + dx, cy + dy)).into_iter().flatten().find(|j| one(j));
                if let Some(&j) = found {
                    roots.join(i, j);
                    roots.join(n + i, n + j);
                }
            }
        }
        let here = cells.entry((cx, cy)).or_default();
        // Thousands of vertices at one place are looked for once.
        if here.len() < 8 {
            here.push(i);
        }
    }
}

/// What stands on a long side that leans goes with it: a door on a wall's foot, a corner on an eave.
fn on_sides(net: &Net, roots: &mut Roots) {
    let n = net.at.len();
    let leaning: Vec<_> = net
        .sides
        .iter()
        .filter(|s| matches!(s.becomes, Becomes::Level | Becomes::Plumb))
        .filter(|s| s.lie.lean > HAIR && s.lie.length >= LONG)
        .collect();
    let near = Near::of(leaning.iter().map(|s| (net.at[s.a], net.at[s.b])));
    for (i, p) in net.at.iter().enumerate() {
        for k in near.within(Rect::from_points(*p, *p), STEP) {
            let s = leaning[k];
            let apart = net.site(s.a) != net.site(i) || net.is_grade(s.a) != net.is_grade(i);
            if apart || !on(*p, net.at[s.a], net.at[s.b]) {
                continue;
            }
            if s.becomes == Becomes::Level {
                roots.join(n + i, n + s.a);
            } else {
                roots.join(i, s.a);
            }
        }
    }
}

fn on(p: Point, a: Point, b: Point) -> bool {
    let length = a.distance(b);
    let u = (b - a) / length;
    let t = (p - a).dot(u);
    u.cross(p - a).abs() <= STEP && t >= -STEP && t <= length + STEP
}
