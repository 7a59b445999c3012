//! Walls from the boundaries of siding hatches: what the hatch covers, with its holes and notches
//! closed where an opening stands.

use super::recess::{self, FoundOpening};
use crate::extract::outline::{Outline, stroke_box};
use crate::extract::patch::Patch;
use crate::geom::boolean::{even_odd, intersection, union_all, without_slits};
use crate::geom::polygon::{Polygon, bounds, sides, signed_area, total_area};
use crate::geom::tol::{LEVEL, SAME};
use crate::geom::vocabulary::{CurveShape, Point, Rect};
use crate::model::hatch::Hatch;
use crate::model::house::WallWay;
use crate::model::linework::{HatchArea, Linework, Role};
use crate::origin::EntityKind;

/// Exposures that drawn lap siding has, inches: boards of 3 in up to the widest boards
/// (common practice, no source).
const EXPOSURES: std::ops::RangeInclusive<f64> = 2.0..=14.0;
/// Hatched areas smaller than this, square inches, are no walls: one square foot.
const LEAST: f64 = 144.0;
/// Smaller parts of a hatch than this, square inches, are left out: slits between slats and leaves
/// (common practice, no source).
const SCRAP: f64 = 24.0;
/// The smallest area hatched by itself that is looked at, square inches: what is left of a wall between the
/// head of a window and what stands over it (common practice, no source).
const SPECK: f64 = 4.0;

/// Solid areas smaller than this, square inches, are arrows and shadows, no walls: ten square feet
/// (common practice, no source).
const LEAST_FILLED: f64 = 1440.0;

/// The exposure that a hatch shows if it is drawn lap siding, inches.
fn lap_exposure(hatch: &Hatch) -> Option<f64> {
    hatch.level_spacing().filter(|e| EXPOSURES.contains(e))
}

/// Whether a hatch is drawn as lap siding is.
pub(crate) fn is_lap(hatch: &Hatch) -> bool {
    lap_exposure(hatch).is_some()
}

/// Whether a hatch stands for siding to be laid out: drawn lap courses on a layer that is not left
/// alone.
pub(crate) fn is_siding(h: &HatchArea) -> bool {
    let elsewhere = |r: Role| r == Role::Ignore || (r.shapes_layout() && r != Role::Wall);
    let sided = h.no_siding.is_none() && lap_exposure(&h.hatch).is_some();
    sided && !h.role.is_some_and(elsewhere)
}

/// Whether a filled area is a wall's: a wall layer holds nothing else.
fn is_filled(h: &HatchArea) -> bool {
    h.role == Some(Role::Wall) && h.hatch.solid
}

/// Middles of drawn lap siding with its exposure, in the order drawn.
pub(super) fn exposures(lines: &Linework) -> Vec<(Point, f64)> {
    let of = |h: &HatchArea| {
        let exposure = lap_exposure(&h.hatch)?;
        let at = h.hatch.loops.iter().map(CurveShape::bounding_box).reduce(|a, c| a.union(c))?;
        Some((at.center(), exposure))
    };
    lines.hatches.iter().filter_map(of).collect()
}

/// Exposure of the first hatch whose middle lies in the box of a wall.
pub(super) fn exposure_over(exposures: &[(Point, f64)], ring: &[Point]) -> Option<f64> {
    let b = bounds(ring)?;
    exposures.iter().find(|(at, _)| b.contains(*at)).map(|(_, e)| *e)
}

/// What hatches cover: each area of drawn siding by itself, filled areas joined where they meet without
/// a line drawn between them. Those that lie under one of `known` outlines are left out.
pub(super) fn outlines(lines: &Linework, known: &[Outline]) -> Vec<Outline> {
    let taken: Vec<(Rect, Polygon)> = known.iter().map(|o| (o.frame(), o.polygon())).collect();
    let mut filled: Vec<(Polygon, &HatchArea)> = Vec::new();
    let (mut out, mut scraps): (Vec<Outline>, Vec<Patch>) = (Vec::new(), Vec::new());
    for (with, h) in lines.hatches.iter().enumerate() {
        let least = match (is_siding(h), is_filled(h)) {
            (true, _) => LEAST,
            (_, true) => LEAST_FILLED,
            _ => continue,
        };
        let mut mine: Vec<Outline> = Vec::new();
        let mut small: Vec<Polygon> = Vec::new();
        for p in without_slits(even_odd(&h.hatch.rings())) {
            let b = p.bounds();
            let near = taken.iter().filter(|(t, _)| t.intersect(b).area() > 0.0);
            let near: Vec<Polygon> = near.map(|(_, t)| t.clone()).collect();
            let covered = total_area(&intersection(std::slice::from_ref(&p), &near));
            if covered >= 0.02 * p.area() {
                continue;
            }
            match (lap_exposure(&h.hatch), h.hatch.level_line()) {
                (Some(pitch), Some(level)) if !is_filled(h) && p.area() >= least => {
                    mine.push(of_patch(p, pitch, level, (with, h)));
                }
                (Some(_), _) if !is_filled(h) && p.area() >= SPECK => small.push(p),
                _ if is_filled(h) && p.area() >= least => filled.push((p, h)),
                _ => {}
            }
        }
        // Small parts of a hatch are siding where the rest of it is.
        if let Some(patches) = mine.first_mut().map(|o| &mut o.patches) {
            let more = small
                .into_iter()
                .filter(|p| p.area() >= SCRAP)
                .filter_map(|shape| Some(Patch { shape, ..patches.first()?.clone() }));
            patches.extend(more.collect::<Vec<_>>());
        } else if let Some((pitch, level)) = lap_exposure(&h.hatch).zip(h.hatch.level_line()) {
            let of = |shape| of_patch(shape, pitch, level, (with, h)).patches;
            scraps.extend(small.into_iter().flat_map(of));
        }
        out.extend(mine);
    }
    scraps.into_iter().for_each(|scrap| add_scrap(&mut out, scrap));
    out.extend(of_filled(lines, filled));
    out.sort_by(|a, b| a.frame().x0.total_cmp(&b.frame().x0));
    out
}

/// A small area hatched by itself is siding where it touches an area whose lines run on into it.
fn add_scrap(all: &mut [Outline], scrap: Patch) {
    let near = scrap.shape.bounds().inflate(SAME, SAME);
    let touches = |p: &Patch| {
        let (a, b) = (p.shape.bounds(), near);
        let meets = a.x0 <= b.x1 && a.x1 >= b.x0 && a.y0 <= b.y1 && a.y1 >= b.y0;
        meets && p.layer == scrap.layer && p.runs_on(&scrap, near.center().y)
    };
    if let Some(o) = all.iter_mut().find(|o| o.patches.first().is_some_and(touches)) {
        o.patches.push(scrap);
    }
}

fn of_patch(shape: Polygon, pitch: f64, level: f64, (with, h): (usize, &HatchArea)) -> Outline {
    let mut origin = h.origin.clone();
    origin.entity = EntityKind::Hatch;
    Outline {
        ring: shape.outer.clone(),
        way: WallWay::Hatch,
        layer: h.layer,
        origin: origin.clone(),
        exposure: Some(pitch),
        patches: vec![Patch { shape, pitch, level, layer: h.layer, with, origin }],
        ..Outline::default()
    }
}

fn of_filled(lines: &Linework, mut areas: Vec<(Polygon, &HatchArea)>) -> Vec<Outline> {
    areas.sort_by(|a, b| a.0.bounds().x0.total_cmp(&b.0.bounds().x0));
    let groups = joined(lines, &areas);
    let mut out = Vec::new();
    for group in groups {
        let parts: Vec<Polygon> = group.iter().map(|i| areas[*i].0.clone()).collect();
        let first = areas[group[0]].1;
        for whole in union_all(&parts) {
            let mut origin = first.origin.clone();
            if first.course_lines == 0 {
                origin.entity = EntityKind::Hatch;
            }
            out.push(Outline {
                ring: whole.outer,
                way: WallWay::Hatch,
                layer: first.layer,
                origin,
                exposure: lap_exposure(&first.hatch),
                openings: recess::holes(&whole.holes, &first.origin),
                ..Outline::default()
            });
        }
    }
    out
}

/// Indices of hatched areas that are one wall.
fn joined(lines: &Linework, areas: &[(Polygon, &HatchArea)]) -> Vec<Vec<usize>> {
    let mut group: Vec<usize> = (0..areas.len()).collect();
    for i in 0..areas.len() {
        for j in i + 1..areas.len() {
            let (a, b) = (&areas[i].0, &areas[j].0);
            // They stand left to right: what begins beyond this one's right end meets it nowhere.
            if b.bounds().x0 > a.bounds().x1 + SAME {
                break;
            }
            let same = (lap_exposure(&areas[i].1.hatch), lap_exposure(&areas[j].1.hatch));
            if same.0 == same.1 && one_wall(lines, a, b) {
                let (from, to) = (group[i].max(group[j]), group[i].min(group[j]));
                group.iter_mut().filter(|g| **g == from).for_each(|g| *g = to);
            }
        }
    }
    let mut out: Vec<Vec<usize>> = vec![Vec::new(); areas.len()];
    for (i, g) in group.iter().enumerate() {
        out[*g].push(i);
    }
    out.retain(|g| !g.is_empty());
    out
}

/// Whether two areas overlap, or share a side that no line is drawn along: a drafter hatched one
/// wall in two goes.
fn one_wall(lines: &Linework, a: &Polygon, b: &Polygon) -> bool {
    let (fa, fb) = (a.bounds().inflate(SAME, SAME), b.bounds());
    let both = fa.intersect(fb);
    if both.width() < 0.0 || both.height() < 0.0 || fa.x1 < fb.x0 || fb.x1 < fa.x0 {
        return false;
    }
    if total_area(&intersection(std::slice::from_ref(a), std::slice::from_ref(b))) > 1.0 {
        return true;
    }
    let all =
        |p: &Polygon| p.rings().flat_map(|r| sides(r).collect::<Vec<_>>()).collect::<Vec<_>>();
    let (mine, theirs) = (all(a), all(b));
    mine.iter().any(|(p, q)| {
        theirs.iter().any(|(r, s)| {
            shared(*p, *q, *r, *s)
                .is_some_and(|(u, v)| u.distance(v) > 1.0 && !drawn_along(lines, u.midpoint(v)))
        })
    })
}

/// The part that two sides share.
fn shared(p: Point, q: Point, r: Point, s: Point) -> Option<(Point, Point)> {
    let length = p.distance(q);
    if length < 1e-6 {
        return None;
    }
    let u = (q - p) / length;
    let off = |x: Point| u.cross(x - p).abs();
    if off(r) > SAME || off(s) > SAME {
        return None;
    }
    let (t0, t1) = ((r - p).dot(u), (s - p).dot(u));
    let (from, to) = (t0.min(t1).max(0.0), t0.max(t1).min(length));
    (to > from).then(|| (p + u * from, p + u * to))
}

fn drawn_along(lines: &Linework, at: Point) -> bool {
    lines.strokes.iter().any(|s| {
        let b = stroke_box(s);
        b.inflate(LEVEL, LEVEL).contains(at)
            && s.points.windows(2).any(|w| {
                let length = w[0].distance(w[1]);
                if length < 1.0 {
                    return false;
                }
                let u = (w[1] - w[0]) / length;
                let t = (at - w[0]).dot(u);
                u.cross(at - w[0]).abs() < LEVEL && t > -LEVEL && t < length + LEVEL
            })
    })
}

/// Settles the openings of hatched walls by what is drawn: holes get their kind, notches in which an
/// opening stands are closed.
pub(crate) fn settle(outline: &mut Outline, drawn: &[FoundOpening]) {
    let whole = outline.polygon();
    let foot = whole.bounds().y0;
    for hole in &mut outline.openings {
        hole.kind = recess::kind_in(&hole.outline, foot, drawn);
    }
    // What is too small for an opening, and holds none, is a tag or a fixture: the wall goes on.
    outline.openings.retain(|o| {
        signed_area(&o.outline).abs() >= crate::extract::openings::LEAST
            || drawn.iter().any(|d| d.within(&o.outline))
    });
    let (ring, more) = recess::notches(&whole, &outline.openings, drawn);
    outline.ring = ring;
    outline.openings.extend(more);
}
