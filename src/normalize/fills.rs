//! Filled areas as closed outlines: a window drawn as a SOLID, a stone foot drawn as a HATCH. Where
//! the same thing is drawn with lines too, the fill is its texture, and the lines stand.

use std::collections::{BTreeMap, BTreeSet};

use crate::geom::boolean::{even_odd, intersection, union_all, without_slits};
use crate::geom::polygon::{Polygon, bounds, total_area};
use crate::geom::tol::{SAME, snap};
use crate::geom::vocabulary::{Rect, Ring};
use crate::model::hatch::Hatch;
use crate::model::linework::{HatchArea, Linework, Role, Stroke};

/// A fill of which more than this share lies within lines of its role is their texture.
const TEXTURE: f64 = 0.25;
/// Of stone, roofs and bands nearly all of it.
const WHOLE: f64 = 0.98;
/// Fills smaller than this, square inches, are arrow heads and the like (common practice, no source).
const LEAST: f64 = 1.0;
/// Most points of one fill that is made an outline.
const MOST_POINTS: usize = 100_000;

/// Fills by role, layer and insertion: each with its number among the hatches and its outline.
type FillSets = BTreeMap<(Role, usize, Option<usize>), Vec<(usize, Polygon)>>;

/// Adds the outlines of filled areas to the strokes, and marks what they were made of.
pub(super) fn outline(lines: &mut Linework) {
    let drawn = Drawn::of(lines);
    let mut sets: FillSets = BTreeMap::new();
    for (i, h) in lines.hatches.iter().enumerate() {
        let Some(role) = h.role.filter(|r| r.is_outline() && *r != Role::Wall) else { continue };
        if points(&h.hatch) > MOST_POINTS || (role.is_thing() && drawn.in_block(lines, h, role)) {
            continue;
        }
        for p in without_slits(even_odd(&h.hatch.rings())) {
            if p.area() >= LEAST && !drawn.covers(role, &p) {
                sets.entry((role, h.layer, h.group)).or_default().push((i, p));
            }
        }
    }
    for ((role, _, group), parts) in sets {
        let made = joined(lines, role, group, parts);
        lines.strokes.extend(made);
    }
}

/// The outlines of fills of one layer: those that touch are one.
fn joined(
    lines: &mut Linework,
    role: Role,
    group: Option<usize>,
    parts: Vec<(usize, Polygon)>,
) -> Vec<Stroke> {
    let all: Vec<Polygon> = parts.iter().map(|(_, p)| p.clone()).collect();
    let boxes: Vec<(usize, Rect)> = parts.iter().map(|(i, p)| (*i, p.bounds())).collect();
    let mut out = Vec::new();
    let mut counted: BTreeSet<usize> = BTreeSet::new();
    for whole in union_all(&all) {
        let b = whole.bounds().inflate(SAME, SAME);
        let mine = || boxes.iter().filter(|(_, p)| b.contains(p.center()));
        let Some((first, _)) = mine().next() else { continue };
        let fresh: BTreeSet<usize> =
            mine().map(|(i, _)| *i).filter(|i| counted.insert(*i)).collect();
        let (layer, origin) = (lines.hatches[*first].layer, lines.hatches[*first].origin.clone());
        let part_of = group.filter(|_| role.is_thing()).map(|g| outermost(lines, g));
        // An opening goes as far as its outline; stone stops where a hole is left in it.
        let rings = if role.is_thing() { vec![whole.outer] } else { without_holes(whole) };
        for (n, points) in rings.into_iter().enumerate() {
            let entities = if n == 0 { fresh.len() } else { 0 };
            let origin = origin.clone();
            let role = Some(role);
            out.push(Stroke {
                points,
                closed: true,
                role,
                layer,
                group,
                part_of,
                ink: Default::default(),
                entities,
                origin,
            });
        }
    }
    for i in counted {
        lines.hatches[i].outlined = true;
    }
    out
}

/// The outermost insertion on a layer of openings or fixtures.
fn outermost(lines: &Linework, group: usize) -> usize {
    let thing = |g: usize| {
        let role = lines.groups.get(g).and_then(|g| lines.layers.get(g.layer)).and_then(|l| l.role);
        role.is_some_and(Role::is_thing)
    };
    let mut at = group;
    while let Some(parent) = lines.groups.get(at).and_then(|g| g.parent).filter(|p| thing(*p)) {
        at = parent;
    }
    at
}

/// An area as rings without holes: cut through the middle of each hole.
fn without_holes(whole: Polygon) -> Vec<Ring> {
    const MOST: usize = 10_000;
    let (mut open, mut out) = (vec![whole], Vec::new());
    while let Some(p) = open.pop() {
        let hole = p.holes.first().and_then(bounds);
        let Some(hole) = hole.filter(|_| out.len() + open.len() < MOST) else {
            out.push(p.outer);
            continue;
        };
        let (b, x) = (p.bounds(), snap(hole.center().x));
        let left = Polygon::rect(b.x0 - 1.0, b.y0 - 1.0, x, b.y1 + 1.0);
        let right = Polygon::rect(x, b.y0 - 1.0, b.x1 + 1.0, b.y1 + 1.0);
        for side in [left, right] {
            open.extend(intersection(std::slice::from_ref(&p), &[side]));
        }
    }
    out
}

fn points(hatch: &Hatch) -> usize {
    hatch.loops.iter().map(|l| l.elements().len()).sum()
}

/// What lines of a role show already.
struct Drawn {
    /// Closed outlines and blocks: by role, left to right.
    areas: BTreeMap<Role, Vec<(Rect, Polygon)>>,
    /// Widest of each role.
    widest: BTreeMap<Role, f64>,
    /// Insertions with lines of a role.
    blocks: BTreeSet<(usize, Role)>,
}

impl Drawn {
    fn of(lines: &Linework) -> Self {
        let mut areas: BTreeMap<Role, Vec<(Rect, Polygon)>> = BTreeMap::new();
        let mut block_boxes: BTreeMap<(usize, Role), Rect> = BTreeMap::new();
        let mut blocks = BTreeSet::new();
        for s in &lines.strokes {
            let (Some(role), Some(b)) = (s.role.filter(|r| r.is_outline()), bounds(&s.points))
            else {
                continue;
            };
            blocks.extend(s.group.map(|g| (g, role)));
            if let Some(root) = s.part_of {
                blocks.insert((root, role));
                block_boxes.entry((root, role)).and_modify(|r| *r = r.union(b)).or_insert(b);
            } else if s.closed && s.points.len() >= 3 {
                let shape = Polygon::simple(s.points.clone()).wound();
                areas.entry(role).or_default().push((b, shape));
            }
        }
        for ((_, role), b) in block_boxes {
            areas.entry(role).or_default().push((b, Polygon::rect(b.x0, b.y0, b.x1, b.y1)));
        }
        let mut widest = BTreeMap::new();
        for (role, list) in &mut areas {
            list.sort_by(|a, b| a.0.x0.total_cmp(&b.0.x0));
            widest.insert(*role, list.iter().map(|(b, _)| b.width()).fold(0.0, f64::max));
        }
        Drawn { areas, widest, blocks }
    }

    /// Whether the block that a fill came by is drawn with lines as well.
    fn in_block(&self, lines: &Linework, h: &HatchArea, role: Role) -> bool {
        let mut at = h.group;
        while let Some(g) = at {
            if self.blocks.contains(&(g, role)) {
                return true;
            }
            at = lines.groups.get(g).and_then(|g| g.parent);
        }
        false
    }

    /// Whether a fill lies within what lines show. Of openings and fixtures a part is enough: it is
    /// glass, or a shadow; stone is where it is hatched, and only what lines hold whole is texture.
    fn covers(&self, role: Role, p: &Polygon) -> bool {
        let b = p.bounds();
        let Some(list) = self.areas.get(&role) else { return false };
        let reach = self.widest.get(&role).copied().unwrap_or(0.0);
        let from = list.partition_point(|(o, _)| o.x0 < b.x0 - reach - 1.0);
        let near = list[from..].iter().take_while(|(o, _)| o.x0 < b.x1);
        let near: Vec<Polygon> = near
            .filter(|(o, _)| o.x1 > b.x0 && o.y0 < b.y1 && o.y1 > b.y0)
            .map(|(_, s)| s.clone())
            .collect();
        if near.is_empty() {
            return false;
        }
        let within = total_area(&intersection(std::slice::from_ref(p), &union_all(&near)));
        within > if role.is_thing() { TEXTURE } else { WHOLE } * p.area()
    }
}
