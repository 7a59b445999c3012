//! From patches of drawn siding to plane walls, view by view.

mod banded;
mod cells;
mod columns;
mod corners;
mod ends;
mod lines;
mod meetings;
mod straight;
mod together;
mod whole;

use self::lines::Lines;
use self::together::{Doubts, planes};
use super::frame::ViewFrame;
use super::ink::Ink;
use super::limits::MOST_TOLD;
use super::openings::openings;
use super::outline::{Outline, Trimmings};
use super::patch::Patch;
use super::views::View;
use super::ways::recess::FoundOpening;
use crate::finding::house::HouseFinding;
use crate::finding::lines::LineFinding;
use crate::finding::{Finding, Findings};
use crate::geom::boolean::{difference, intersection, thinner_than, union_all};
use crate::geom::polygon::{Polygon, bounds, total_area};
use crate::geom::vocabulary::{Affine, Point, Rect};
use crate::job::Job;
use crate::model::linework::Linework;
use crate::model::no_siding::NoSiding;

/// Most corners of the patches of one view: a hatch round a thousand leaves is none of siding.
const MOST_CORNERS: usize = 20_000;
/// Planes smaller than this, square inches, are no walls: one square foot.
const LEAST: f64 = 144.0;
/// Strips of siding narrower than this take no panel between two channels, inches (common practice, no
/// source).
const STRIP: f64 = 2.0;
/// Parts of a patch at least this long, inches, and on average no thicker than [`THIN`], are the pen's.
const HAIR: f64 = 3.0;
const THIN: f64 = 0.5;
/// Walls smaller than this, square inches, may be something else: ten square feet (common practice, no
/// source).
const SLIGHT: f64 = 1440.0;
/// A patch of which more than this share lies under patches drawn before it says nothing new.
const COVERED: f64 = 0.95;

/// The walls of a view, with those that are drawn as siding made whole.
pub(super) fn of_view(
    lines: &Linework,
    view: &View,
    outlines: Vec<Outline>,
    (job, findings): (&Job, &mut Findings),
) -> Vec<Outline> {
    let (drawn, mut out): (Vec<Outline>, Vec<Outline>) =
        outlines.into_iter().partition(|o| !o.patches.is_empty());
    let patches: Vec<Patch> = drawn.iter().flat_map(|o| o.patches.iter().cloned()).collect();
    let corners: usize = patches.iter().flat_map(|p| p.shape.rings()).map(Vec::len).sum();
    if patches.is_empty() || corners > MOST_CORNERS {
        out.extend(drawn);
        return out;
    }
    let patches = distinct(patches);
    let things = things(lines, view, job);
    let boxes: Vec<_> = things.iter().filter_map(|t| bounds(&t.outline)).collect();
    let ink = Ink::of(lines, view);
    let found = planes(&patches, &boxes, &ink);
    let mut told = Told { doubts: found.doubts, ..Told::default() };
    let areas = areas(&patches, &found.groups, &mut told);
    let (mut made, mut gone) = (0, Vec::new());
    for (n, group) in found.groups.iter().enumerate() {
        let mine: Vec<&Patch> = group.iter().map(|i| &patches[*i]).collect();
        let of_plane = walls(&mine, (&areas, n), (&things, &ink), &mut told);
        if of_plane.is_empty() {
            gone.push(mine);
        }
        made += of_plane.len();
        out.extend(of_plane);
    }
    if made == 0 {
        gone = vec![gone.concat()];
    }
    let least = if made == 0 { LEAST } else { SLIGHT };
    for finding in gone.iter().filter_map(|g| lost(lines, view, g, least)) {
        findings.push(finding);
    }
    told.report(lines, view, patches.first(), findings);
    out
}

/// What the patches of each plane cover, no place twice.
fn areas(patches: &[Patch], groups: &[Vec<usize>], told: &mut Told) -> Vec<Vec<Polygon>> {
    let union = |g: &Vec<usize>| {
        union_all(&g.iter().map(|i| patches[*i].shape.clone()).collect::<Vec<_>>())
    };
    let mut areas: Vec<Vec<Polygon>> = groups
        .iter()
        .map(|g| {
            let all: Vec<Polygon> =
                without_strips(union(g), told).iter().map(straight::straight).collect();
            let lines = Lines::of(&all);
            union_all(&all.iter().map(|p| lines.onto(p)).collect::<Vec<_>>())
        })
        .collect();
    for i in 0..areas.len() {
        for j in i + 1..areas.len() {
            part(&mut areas, i, j);
        }
    }
    areas
}

/// Drawn siding that no wall comes of, where it is more than so many square inches.
fn lost(lines: &Linework, view: &View, patches: &[&Patch], least: f64) -> Option<Finding> {
    let first = patches.first()?;
    let drawn: f64 = patches.iter().map(|p| p.shape.area()).sum();
    let layer = lines.layers.get(first.layer);
    let kind = LineFinding::LinesNoSiding {
        beside_hatches: false,
        layer: layer.map(|l| l.layer.name.clone()).unwrap_or_default(),
        why: NoSiding::NoWall,
        spacing: first.pitch,
        patches: patches.len(),
        area: drawn / 144.0,
    };
    let places = |p: &&Patch| lines.source(p.shape.bounds().center());
    let also = patches.iter().skip(1).take(MOST_TOLD).map(places);
    let finding = Finding::new(kind).about(&first.origin).at(places(first)).on(&view.name);
    (drawn >= least).then(|| finding.also_at(also.collect()))
}

/// What is told of the planes of a view.
#[derive(Default)]
struct Told {
    doubts: Doubts,
    holes: usize,
    slight: usize,
    filled: usize,
    strips: usize,
    /// Square inches of strips.
    area: f64,
}

impl Told {
    fn report(
        &self,
        lines: &Linework,
        view: &View,
        first: Option<&Patch>,
        findings: &mut Findings,
    ) {
        let Some(first) = first else { return };
        let middle = first.shape.bounds().center();
        let mut tell = |kind: HouseFinding, places: &[Point]| {
            let mut places = places.iter().map(|p| lines.source(*p));
            let at = places.next().unwrap_or_else(|| lines.source(middle));
            let mut finding = Finding::new(kind).about(&first.origin).at(at).on(&view.name);
            finding.also.extend(places.take(MOST_TOLD));
            findings.push(finding);
        };
        let Doubts { uprights, roofs, places } = &self.doubts;
        let (uprights, roofs, holes, slight) = (*uprights, *roofs, self.holes, self.slight);
        if uprights + roofs + holes + slight > 0 {
            tell(HouseFinding::PlaneAssumed { uprights, roofs, holes, slight }, places);
        }
        if self.filled + self.strips > 0 {
            let (filled, strips, area) = (self.filled, self.strips, self.area / 144.0);
            tell(HouseFinding::SidingDetail { filled, strips, area }, &[]);
        }
    }
}

/// Without strips that no panel fits into.
fn without_strips(area: Vec<Polygon>, told: &mut Told) -> Vec<Polygon> {
    let mut strips = thinner_than(&area, STRIP);
    strips.retain(|s| s.area() >= STRIP * STRIP * 3.0 || is_hair(s));
    told.strips += strips.len();
    told.area += total_area(&strips);
    if strips.is_empty() { area } else { difference(&area, &strips) }
}

/// Whether a small part is a strip all the same, and not the tip of a gable.
fn is_hair(p: &Polygon) -> bool {
    let b = p.bounds();
    let long = b.width().max(b.height());
    long >= HAIR && p.area() <= THIN * long
}

/// Gives what two planes share to one of them: it is taken off the one that it sticks out of.
fn part(areas: &mut [Vec<Polygon>], i: usize, j: usize) {
    let (a, b) = (boxed(&areas[i]), boxed(&areas[j]));
    if a.intersect(b).area() <= 0.0 || intersection(&areas[i], &areas[j]).is_empty() {
        return;
    }
    let (left, right) = (difference(&areas[i], &areas[j]), difference(&areas[j], &areas[i]));
    let tab = |before: Rect, after: &[Polygon]| before.area() - boxed(after).area();
    if tab(a, &left) > tab(b, &right) { areas[i] = left } else { areas[j] = right }
}

fn boxed(shapes: &[Polygon]) -> Rect {
    bounds(shapes.iter().flat_map(|p| &p.outer)).unwrap_or_default()
}

/// Patches without what others cover already.
fn distinct(mut patches: Vec<Patch>) -> Vec<Patch> {
    // Those drawn first are kept.
    patches.sort_by_key(|p| p.with);
    let mut kept: Vec<Patch> = Vec::new();
    for p in patches {
        let b = p.shape.bounds();
        let near: Vec<Polygon> = kept
            .iter()
            .filter(|k| k.shape.bounds().intersect(b).area() > 0.0)
            .map(|k| k.shape.clone())
            .collect();
        let left = difference(std::slice::from_ref(&p.shape), &union_all(&near));
        if near.is_empty() || total_area(&left) > (1.0 - COVERED) * p.shape.area() {
            kept.push(p);
        }
    }
    kept
}

/// The openings drawn in a view, inches of the whole drawing.
fn things(lines: &Linework, view: &View, job: &Job) -> Vec<FoundOpening> {
    let to_source = Affine::scale(1.0 / lines.scale.inches);
    let (origin, part, slug) = (Point::ZERO, None, "");
    let frame = ViewFrame { lines, view, origin, to_source, job, part, slug };
    let found = openings(&frame).into_iter();
    found
        .map(|o| FoundOpening {
            outline: o.outline,
            kind: o.kind,
            block: o.block,
            origin: o.origin,
        })
        .collect()
}

/// The walls of one plane: one, where nothing parts it for good.
fn walls(
    patches: &[&Patch],
    (areas, n): (&[Vec<Polygon>], usize),
    (things, ink): (&[FoundOpening], &Ink),
    told: &mut Told,
) -> Vec<Outline> {
    let Some(first) = patches.first() else { return Vec::new() };
    let area = &areas[n];
    let mut plane = whole::plane(area, (things, ink), &first.origin);
    let others = areas.iter().enumerate().filter(|(i, _)| *i != n);
    let others: Vec<Polygon> = others.flat_map(|(_, a)| a.iter().cloned()).collect();
    ends::complete(&mut plane, &others, ink);
    told.filled += plane.cleaned;
    told.holes += plane.unnamed.len();
    told.doubts.places.extend(&plane.unnamed);
    if (LEAST..SLIGHT).contains(&total_area(area)) {
        told.slight += 1;
        told.doubts.places.push(boxed(area).center());
    }
    let whole = |outline: &Polygon| {
        let inside = |p: &Polygon| outline.contains(middle(p));
        let of = |all: &[Polygon]| all.iter().filter(|p| inside(p)).cloned().collect::<Vec<_>>();
        let openings = plane.openings.iter();
        let held = |ring: &[Point]| inside(&Polygon::simple(ring.to_vec()).wound());
        let (boards, bare) = (of(&plane.boards), of(&plane.bare));
        let channels = corners::channels(outline, &plane.openings, ink);
        Outline {
            ring: outline.outer.clone(),
            way: crate::model::house::WallWay::Hatch,
            layer: first.layer,
            origin: first.origin.clone(),
            exposure: Some(first.pitch),
            openings: openings.filter(|o| held(&o.outline)).cloned().collect(),
            patches: patches.iter().map(|p| (*p).clone()).collect(),
            trimmings: Trimmings { boards, bare, channels },
            given: None,
        }
    };
    plane.outlines.iter().filter(|p| p.area() >= LEAST).map(whole).collect()
}

/// A place inside a shape: the middle of its box where that lies in it.
fn middle(p: &Polygon) -> Point {
    let c = p.bounds().center();
    if p.contains(c) { c } else { crate::geom::arrangement::inside(p).unwrap_or(c) }
}
