//! The vertices of a part of the drawing with the sides between them.

use super::ends::misses;
use super::noise::{self, HAIR, LONG, Lie, STEP};
use super::sites::Sites;
use crate::geom::polygon::sides;
use crate::geom::vocabulary::{BezPath, PathEl, Point};
use crate::model::linework::{Linework, Role};
use crate::real::Real;

/// Sides that bend into both neighbors by more than this, degrees, and less than [`BENDS_MOST`] are
/// steps of a curve.
const BENDS_LEAST: f64 = 1.5;
const BENDS_MOST: f64 = 40.0;
/// So many leaning sides are not few.
const FEW: usize = 10;
/// In a rough part a short side is level or plumb where it leans less than this share of its length.
const SHORT_LEAN: f64 = 0.125;

/// Where vertices come from.
#[derive(Clone, Copy, Debug)]
pub(super) enum Carrier {
    Stroke(usize),
    /// A loop of a hatch.
    Loop(usize, usize),
}

/// One line of the drawing among the vertices.
#[derive(Clone, Debug)]
pub(super) struct Chain {
    pub(super) of: Carrier,
    /// Its vertices.
    pub(super) at: std::ops::Range<usize>,
    pub(super) closed: bool,
    pub(super) site: usize,
    pub(super) role: Option<Role>,
    pub(super) in_block: bool,
}

/// What a side is to be.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Becomes {
    Level,
    Plumb,
    /// So short that it is none.
    Nothing,
    AsDrawn,
}

/// A side with what it is to be.
#[derive(Clone, Copy, Debug)]
pub(super) struct NetSide {
    pub(super) a: usize,
    pub(super) b: usize,
    pub(super) lie: Lie,
    pub(super) becomes: Becomes,
}

/// How rough a part is drawn: by how much vertices are off, inches; none where it is drawn clean.
pub(super) type Rough = Option<f64>;

/// Vertices and sides of the parts that have noise.
#[derive(Clone, Debug, Default)]
pub(super) struct Net {
    pub(super) at: Vec<Point>,
    /// The chain of each vertex.
    pub(super) chain_of: Vec<usize>,
    pub(super) chains: Vec<Chain>,
    pub(super) sides: Vec<NetSide>,
    /// Whether a vertex is a step of a curve.
    pub(super) curved: Vec<bool>,
    /// By part.
    pub(super) rough: Vec<Rough>,
}

/// Loops of hatches that show siding, where no outline does.
pub(super) fn siding_loops(
    lines: &Linework,
) -> impl Iterator<Item = (usize, usize, Vec<Point>)> + '_ {
    let outlined = lines.strokes.iter().any(|s| s.role == Some(Role::Wall));
    let hatches = lines.hatches.iter().enumerate().filter(move |(_, h)| {
        !outlined
            && h.role != Some(Role::Ignore)
            && h.hatch.level_spacing().is_some()
            && !h.role.is_some_and(|r| r.is_outline() && r != Role::Wall)
    });
    hatches.flat_map(|(i, h)| {
        let loops = h.hatch.loops.iter().enumerate();
        loops.filter_map(move |(j, l)| corners(l).map(|p| (i, j, p)))
    })
}

/// Loops of fills that are outlines: a window drawn as a solid.
fn filled_loops(lines: &Linework) -> impl Iterator<Item = (usize, usize, Vec<Point>)> + '_ {
    let fill = |r: Role| r.is_outline() && r != Role::Wall;
    let hatches = lines.hatches.iter().enumerate().filter(move |(_, h)| h.role.is_some_and(fill));
    hatches.flat_map(|(i, h)| {
        let loops = h.hatch.loops.iter().enumerate();
        loops.filter_map(move |(j, l)| corners(l).map(|p| (i, j, p)))
    })
}

/// The corners of a loop of straight lines.
fn corners(path: &BezPath) -> Option<Vec<Point>> {
    let mut out = Vec::new();
    for (i, e) in path.elements().iter().enumerate() {
        match e {
            PathEl::MoveTo(p) if i == 0 => out.push(*p),
            PathEl::LineTo(p) => out.push(*p),
            PathEl::ClosePath => {}
            _ => return None,
        }
    }
    if out.len() > 1 && out.first() == out.last() {
        out.pop();
    }
    Some(out)
}

/// Roles whose lines are squared.
fn built(role: Option<Role>) -> bool {
    let Some(role) = role else { return false };
    role.is_outline()
        || matches!(role, Role::Level | Role::Grade | Role::InsideCorner | Role::Joint)
}

impl Net {
    /// The vertices of every part in which a side leans.
    pub(super) fn of(lines: &Linework, sites: &Sites) -> Net {
        let lies = evidence(lines, sites);
        let rough = roughness(&lies);
        // Where any part is rough the clean ones say how high things are.
        let any = rough.iter().any(Option::is_some);
        let leans = |l: &Vec<Lie>| l.iter().any(|l| l.squares() && l.lean > HAIR);
        let taken: Vec<bool> = lies.iter().map(|l| any || leans(l)).collect();
        let mut net = Net { rough, ..Default::default() };
        let site = |of: Option<usize>| of.filter(|s| taken[*s]);
        for (i, s) in lines.strokes.iter().enumerate().filter(|(_, s)| built(s.role)) {
            if let Some(site) = site(sites.of[i]) {
                let carrier = (Carrier::Stroke(i), s.role, s.group.is_some());
                net.add(&s.points, s.closed, carrier, site);
            }
        }
        for (i, j, ring) in siding_loops(lines).chain(filled_loops(lines)) {
            if let Some(site) = site(sites.of_hatch[i]) {
                let h = &lines.hatches[i];
                let role = h.role.filter(|r| r.is_outline()).or(Some(Role::Wall));
                net.add(&ring, true, (Carrier::Loop(i, j), role, h.group.is_some()), site);
            }
        }
        net
    }

    fn add(
        &mut self,
        p: &[Point],
        closed: bool,
        (of, role, in_block): (Carrier, Option<Role>, bool),
        site: usize,
    ) {
        let from = self.at.len();
        self.at.extend(p);
        self.chain_of.resize(self.at.len(), self.chains.len());
        self.curved.resize(self.at.len(), false);
        self.chains.push(Chain { of, at: from..self.at.len(), closed, site, role, in_block });
        let rough = self.rough[site];
        let n = p.len();
        let count = if closed { n } else { n.saturating_sub(1) };
        for i in 0..count {
            let (a, b) = (p[i], p[(i + 1) % n]);
            let lie = Lie::of(a, b);
            // No curve has steps as short as what noise leaves of a corner drawn twice.
            let step = rough.map_or(0.0, step_of);
            let curved = (step..LONG).contains(&lie.length)
                && bends(p, closed, i).zip(bends(p, closed, i + 1)).is_some_and(|(u, v)| {
                    let bent = |t: f64| (BENDS_LEAST..BENDS_MOST).contains(&t.abs());
                    bent(u) && bent(v) && (u > 0.0) == (v > 0.0)
                });
            if curved {
                self.curved[from + i] = true;
                self.curved[from + (i + 1) % n] = true;
            }
            let becomes = if curved { Becomes::AsDrawn } else { becomes(&lie, rough) };
            self.sides.push(NetSide { a: from + i, b: from + (i + 1) % n, lie, becomes });
        }
    }

    pub(super) fn site(&self, vertex: usize) -> usize {
        self.chains[self.chain_of[vertex]].site
    }

    /// Whether a vertex is of finished grade.
    pub(super) fn is_grade(&self, vertex: usize) -> bool {
        self.chains[self.chain_of[vertex]].role == Some(Role::Grade)
    }

    /// How far apart lines of a part may lie and be one.
    pub(super) fn step(&self, site: usize) -> f64 {
        self.rough[site].map_or(HAIR, step_of)
    }
}

/// The same by how much vertices are off.
pub(super) fn step_of(noise: f64) -> f64 {
    (3.0 * noise).clamp(HAIR, STEP + HAIR)
}

/// By how much a chain turns at its vertex `i`, degrees; none at a loose end.
fn bends(p: &[Point], closed: bool, i: usize) -> Option<f64> {
    let n = p.len();
    if !closed && (i == 0 || i + 1 >= n) {
        return None;
    }
    let (a, b, c) = (p[(i + n - 1) % n], p[i % n], p[(i + 1) % n]);
    let (u, v) = (b - a, c - b);
    Some(u.cross(v).angle_over(u.dot(v)).to_degrees())
}

fn becomes(lie: &Lie, rough: Rough) -> Becomes {
    let straight = if lie.level { Becomes::Level } else { Becomes::Plumb };
    let Some(noise) = rough else {
        return if lie.squares() || lie.lean <= HAIR { straight } else { Becomes::AsDrawn };
    };
    let step = step_of(noise);
    if lie.length <= step {
        return Becomes::Nothing;
    }
    let little = lie.lean <= step && lie.lean <= SHORT_LEAN * lie.length;
    if little || lie.squares() { straight } else { Becomes::AsDrawn }
}

/// Long sides of each part that lie nearly level or plumb.
fn evidence(lines: &Linework, sites: &Sites) -> Vec<Vec<Lie>> {
    let mut out: Vec<Vec<Lie>> = vec![Vec::new(); sites.regions.len()];
    let mut take = |site: Option<usize>, a: Point, b: Point| {
        let lie = Lie::of(a, b);
        let near = lie.length >= LONG && (lie.squares() || lie.lean <= STEP + HAIR);
        if let (Some(site), true) = (site, near) {
            out[site].push(lie);
        }
    };
    for (i, s) in lines.strokes.iter().enumerate().filter(|(_, s)| noise::shows(s.role)) {
        noise::sides_of(s).for_each(|(a, b)| take(sites.of[i], a, b));
    }
    for (i, _, ring) in siding_loops(lines) {
        sides(&ring).for_each(|(a, b)| take(sites.of_hatch[i], a, b));
    }
    for (i, lie) in misses(lines) {
        if let Some(site) = sites.of[i] {
            out[site].push(lie);
        }
    }
    out
}

/// A part is rough where a third of its long sides lean, three at least, or two of three, and where any
/// is, another with a quarter of them: one hand drew them. Vertices are then off by half of what all but a
/// few sides of all rough parts lean.
fn roughness(lies: &[Vec<Lie>]) -> Vec<Rough> {
    let leaning =
        |lies: &[Lie]| -> Vec<f64> { lies.iter().map(|l| l.lean).filter(|l| *l > HAIR).collect() };
    let is_rough = |lies: &[Lie]| {
        let count = leaning(lies).len();
        // A gable has few sides that could lean.
        count >= 3 && 3 * count >= lies.len() || count == 2 && 2 * lies.len() <= 3 * count
    };
    let mut rough: Vec<bool> = lies.iter().map(|l| is_rough(l)).collect();
    if rough.contains(&true) {
        let too = |l: &Vec<Lie>| !l.is_empty() && 4 * leaning(l).len() >= l.len();
        rough.iter_mut().zip(lies).for_each(|(r, l)| *r |= too(l));
    }
    let mut leans: Vec<f64> =
        lies.iter().zip(&rough).filter(|(_, r)| **r).flat_map(|(l, _)| leaning(l)).collect();
    leans.sort_by(f64::total_cmp);
    let most = leans
        .get(leans.len().saturating_sub(1).saturating_sub(leans.len() / 20))
        .copied()
        .unwrap_or_default();
    // Few sides hardly show the most that there is.
    let share = if leans.len() < FEW { 0.8 } else { 0.5 };
    let noise = (most * share).min(STEP / 2.0);
    rough.into_iter().map(|r| r.then_some(noise)).collect()
}

/// Whether an outline of a wall has no side at all that stands upright or lies level: a view was turned.
pub(super) fn any_turned(lines: &Linework) -> bool {
    let walls = lines.strokes.iter().filter(|s| s.role == Some(Role::Wall));
    walls.into_iter().any(|s| {
        let long =
            || noise::sides_of(s).map(|(a, b)| Lie::of(a, b)).filter(|l| l.length >= noise::LONG);
        long().count() > 2 && !long().any(|l| l.nearly())
    })
}

/// Whether any side of a building leans, or ends of its lines miss one another.
pub(super) fn any_leans(lines: &Linework) -> bool {
    let leans = |(a, b): (Point, Point)| {
        let lie = Lie::of(a, b);
        lie.lean > HAIR && lie.nearly()
    };
    let strokes = lines.strokes.iter().filter(|s| noise::shows(s.role));
    strokes.flat_map(noise::sides_of).any(leans)
        || siding_loops(lines).any(|(_, _, p)| sides(&p).any(leans))
        || misses(lines).any(|(_, lie)| lie.lean > HAIR)
}
