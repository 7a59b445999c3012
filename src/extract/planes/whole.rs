//! One plane wall out of its patches: the outline round them with the gaps between them filled, and what
//! each gap is.

use super::lines::Lines;
use super::straight::straight;
use super::together::BOARD;
use super::{banded, cells};
use crate::extract::ink::Ink;
use crate::extract::openings::LEAST;
use crate::extract::ways::recess::{FoundOpening, by_size};
use crate::geom::boolean::{difference, intersection, union_all};
use crate::geom::gaps::{beside, over};
use crate::geom::polygon::{Polygon, bounds, total_area};
use crate::geom::tol::{LEVEL, snap};
use crate::geom::vocabulary::{Point, Rect};
use crate::model::house::{DrawnOpening, OpeningKind};
use crate::origin::Origin;

/// Gaps thinner than this are the pen's, inches.
const HAIR: f64 = 1.0;
/// Thinnest drawn band, inches, and the share of its edges that lines must be drawn along: flashing and
/// floor lines (common practice, no source).
const THIN_BAND: f64 = 0.75;
const DRAWN: f64 = 0.9;
/// A corner post hides the wall this far from the corner, inches, drawn or not (common practice, no
/// source).
pub(super) const POST: f64 = 2.0;
/// Notches and gaps smaller than this both ways are drawing detail, inches: less than the face of one
/// course (common practice, no source).
pub(super) const DETAIL: f64 = 4.0;
/// The shortest upright board that parts a wall from foot to head, inches.
const LONG: f64 = 24.0;
/// A door's notch begins no higher than this over its wall's foot, inches: a step and a sill (common
/// practice, no source).
const SILL: f64 = 12.0;
/// Least height of a door, inches (`TakeoffFact::CallSizes`: 80).
const DOOR: f64 = 72.0;
/// Widths of doors with their casings, inches: from a narrow leaf to a double garage door
/// (`TakeoffFact::CallSizes`).
const WIDE: std::ops::RangeInclusive<f64> = 24.0..=220.0;
/// The smallest window in a notch, inches.
const LEAST_WINDOW: f64 = 16.0;
/// The narrowest opening, inches.
const NARROW: f64 = 8.0;

/// What a plane is made of, inches of the whole drawing.
#[derive(Clone, Debug, Default)]
pub(super) struct Plane {
    /// Outer outlines.
    pub(super) outlines: Vec<Polygon>,
    pub(super) openings: Vec<DrawnOpening>,
    /// Bands, casings and corner boards between its parts.
    pub(super) boards: Vec<Polygon>,
    /// What else takes siding away: roofs, decks, posts before it.
    pub(super) bare: Vec<Polygon>,
    /// Gaps and notches closed as drawing detail.
    pub(super) cleaned: usize,
    /// Where openings are that only their holes show.
    pub(super) unnamed: Vec<Point>,
}

impl Plane {
    /// Adds openings that only their holes show.
    fn take_unnamed(
        &mut self,
        found: &[Polygon],
        (siding, ink): (&[Polygon], &Ink),
        origin: &Origin,
    ) {
        self.unnamed.extend(found.iter().map(|p| p.bounds().center()));
        self.openings.extend(found.iter().map(|p| unnamed(p, (siding, ink), origin)));
    }
}

/// A plane of patches that lie in one.
pub(super) fn plane(
    patches: &[Polygon],
    (drawn, ink): (&[FoundOpening], &Ink),
    origin: &Origin,
) -> Plane {
    let mut out = Plane::default();
    let mut siding = union_all(patches);
    // What lies between siding at both sides, and between siding above and beneath.
    let between = gaps(&siding);
    let detail: Vec<Polygon> = between.all.iter().filter(|p| is_detail(p, ink)).cloned().collect();
    out.cleaned = detail.len();
    siding = union_all(&[siding, detail].concat());
    let open = difference(&between.all, &siding);
    out.openings = in_lines(cells::openings(&siding, &open, drawn), &siding);
    let gaps = difference(&open, &cells::shapes(&out.openings));
    let (banded, rest) = banded::openings(gaps, &siding, ink);
    out.take_unnamed(&banded, (&siding, ink), origin);
    let aside = difference(&rest, &between.over);
    let (across, stacked) = straddling(intersection(&rest, &between.over), &between.beside);
    out.take_unnamed(&across, (&siding, ink), origin);
    for p in stacked {
        let b = p.bounds();
        let hole = is_hole(&p, &between.beside);
        if b.width().min(b.height()) <= BOARD && !is_square(&p) && p.area() > 0.8 * b.area() {
            out.boards.push(p);
        } else if hole && p.area() >= LEAST && b.width().min(b.height()) >= NARROW && is_square(&p)
        {
            out.take_unnamed(&[p], (&siding, ink), origin);
        } else if (hole && p.area() < LEAST) || (!hole && is_behind_post(&p)) {
            siding.push(p);
            out.cleaned += 1;
        } else {
            out.bare.push(p);
        }
    }
    // What has siding at both sides and none above or beneath is part of the wall only as an upright
    // board, or as what stands between such boards and openings.
    let frame = bounds(siding.iter().flat_map(|p| &p.outer)).unwrap_or_default();
    for p in parts(aside) {
        let b = p.bounds();
        if b.width() <= BOARD && b.height() >= LONG && p.area() > 0.8 * b.area() {
            out.boards.push(p);
        } else if is_notch(&p, frame) || is_drawn(&p, frame, ink) {
            out.openings.push(unnamed(&p, (&siding, ink), origin));
        }
    }
    out.openings = as_one(std::mem::take(&mut out.openings));
    let mut all = siding;
    all.extend(cells::shapes(&out.openings));
    all.extend(out.boards.iter().chain(&out.bare).cloned());
    let outer =
        |p: &Polygon| Polygon::simple(p.outer.clone()).map(|q| Point::new(snap(q.x), snap(q.y)));
    // What crosses itself by a place put on the grid is untangled by a second pass.
    let whole = union_all(&all);
    let holes = whole.iter().flat_map(|p| &p.holes);
    out.bare.extend(holes.map(|h| Polygon::simple(h.clone()).wound()));
    let once: Vec<Polygon> = whole.iter().map(outer).collect();
    out.outlines = union_all(&once).iter().map(outer).collect();
    out
}

/// Openings with their sides in the lines that the siding round them ends in.
fn in_lines(mut openings: Vec<DrawnOpening>, siding: &[Polygon]) -> Vec<DrawnOpening> {
    let lines = Lines::of(siding);
    for o in &mut openings {
        let ring = lines.ring(&o.outline);
        o.outline = straight(&Polygon::simple(ring)).outer;
    }
    openings
}

/// The gaps of a shape.
struct Gaps {
    beside: Vec<Polygon>,
    over: Vec<Polygon>,
    all: Vec<Polygon>,
}

fn gaps(siding: &[Polygon]) -> Gaps {
    let snapped = |all: Vec<Polygon>| -> Vec<Polygon> {
        let on_grid = |p: &Polygon| p.map(|q| Point::new(snap(q.x), snap(q.y)));
        let whole = union_all(&all.iter().map(on_grid).collect::<Vec<_>>());
        difference(&whole, siding)
    };
    let (beside, over) = (snapped(beside(siding)), snapped(over(siding)));
    let all = union_all(&[beside.clone(), over.clone()].concat());
    Gaps { beside, over, all }
}

/// Windows that stand across a band in gaps that siding stands over and under, and the gaps without them: a
/// well in the siding under the band goes on over it.
fn straddling(stacked: Vec<Polygon>, beside: &[Polygon]) -> (Vec<Polygon>, Vec<Polygon>) {
    let (mut across, mut rest) = (Vec::new(), Vec::new());
    for p in parts(stacked) {
        let wells = parts(intersection(std::slice::from_ref(&p), beside));
        let mut found: Vec<Polygon> = Vec::new();
        for (low, high) in wells.iter().flat_map(|a| wells.iter().map(move |b| (a, b))) {
            let (l, h) = (low.bounds(), high.bounds());
            let alike = (l.x0 - h.x0).abs() <= HAIR && (l.x1 - h.x1).abs() <= HAIR;
            let band = (HAIR..=BOARD).contains(&(h.y0 - l.y1));
            let b = l.union(h);
            let whole = Polygon::rect(b.x0, b.y0, b.x1, b.y1);
            let free =
                total_area(&intersection(std::slice::from_ref(&p), std::slice::from_ref(&whole)));
            let sized = b.width() >= NARROW && whole.area() >= LEAST && is_square(&whole);
            if alike && band && sized && free > 0.98 * whole.area() {
                found.push(whole);
            }
        }
        rest.extend(if found.is_empty() { vec![p] } else { parts(difference(&[p], &found)) });
        across.extend(found);
    }
    (across, rest)
}

/// Parts that are more than slivers.
fn parts(shapes: Vec<Polygon>) -> Vec<Polygon> {
    let wide = |p: &Polygon| p.bounds().width().min(p.bounds().height()) > 1.0 / 16.0;
    shapes.into_iter().filter(wide).collect()
}

fn is_detail(p: &Polygon, ink: &Ink) -> bool {
    let b = p.bounds();
    let (short, long) = (b.width().min(b.height()), b.width().max(b.height()));
    (short <= HAIR || long < DETAIL) && !is_thin_band(p, ink)
}

/// Whether a gap as thin as a pen's is a band: lines are drawn along its foot and its head.
fn is_thin_band(p: &Polygon, ink: &Ink) -> bool {
    let b = p.bounds();
    let lined = |y: f64| ink.along_level(y, (b.x0, b.x1)) >= DRAWN * b.width();
    let flat = b.width() >= LONG && p.area() > 0.8 * b.area();
    // Rounding to the grid leaves one drawn 3/4 in high a hair under it.
    flat && b.height() >= THIN_BAND - LEVEL && lined(b.y0) && lined(b.y1)
}

/// Whether a notch in the end of a wall, as a gutter's end leaves it, is no deeper than what a corner post
/// hides, and the post runs past it.
fn is_behind_post(p: &Polygon) -> bool {
    let b = p.bounds();
    b.width() <= POST && b.height() <= LONG
}

/// Whether siding stands all round a gap: nearly all of it has siding at both sides too.
fn is_hole(p: &Polygon, beside: &[Polygon]) -> bool {
    total_area(&intersection(std::slice::from_ref(p), beside)) > 0.98 * p.area()
}

/// Whether a gap is about as wide as high, as openings are.
fn is_square(p: &Polygon) -> bool {
    let b = p.bounds();
    let (short, long) = (b.width().min(b.height()), b.width().max(b.height()));
    long <= 5.0 * short && p.area() > 0.6 * b.area()
}

/// Whether a gap that is open at foot or head is as a door is, up from the foot, or a window, down from the
/// head.
fn is_notch(p: &Polygon, frame: Rect) -> bool {
    let b = p.bounds();
    let filled = p.area() > 0.9 * b.area();
    let door = b.y0 - frame.y0 <= SILL && b.height() >= DOOR && WIDE.contains(&b.width());
    let window = frame.y1 - b.y1 <= DETAIL && b.y0 - frame.y0 > SILL && is_square(p);
    filled && (door || (window && b.width().min(b.height()) >= LEAST_WINDOW))
}

/// Whether an opening is drawn in a gap up from the foot.
fn is_drawn(p: &Polygon, frame: Rect, ink: &Ink) -> bool {
    is_glazed(p, frame, ink) || is_door_on_stone(p, frame, ink)
}

/// Whether a gap up from the foot holds the uprights of a frame: a window that stands over stone.
fn is_glazed(p: &Polygon, frame: Rect, ink: &Ink) -> bool {
    let b = p.bounds();
    let filled = p.area() > 0.9 * b.area() && is_square(p);
    let sized = b.width() >= LEAST_WINDOW && b.height() >= LEAST_WINDOW && WIDE.end() >= &b.width();
    filled && sized && b.y0 - frame.y0 <= SILL && ink.uprights_in(b) >= 2
}

/// Whether a gap up from the foot is the upper part of a door that stands down before stone: its head is drawn, and
/// both its sides go on down to a door's height.
fn is_door_on_stone(p: &Polygon, frame: Rect, ink: &Ink) -> bool {
    let b = p.bounds();
    let filled = p.area() > 0.9 * b.area() && WIDE.contains(&b.width());
    let upper = b.height() >= LEAST_WINDOW && b.y0 - frame.y0 <= SILL;
    let side = (b.y1 - DOOR, b.y1);
    let sides = || [b.x0, b.x1].iter().all(|x| ink.along_plumb(*x, side, side) >= DRAWN * DOOR);
    filled && upper && ink.along_level(b.y1, (b.x0, b.x1)) >= DRAWN * b.width() && sides()
}

/// Openings with those that share a whole upright side with the next one made one: they stand in one hole.
fn as_one(openings: Vec<DrawnOpening>) -> Vec<DrawnOpening> {
    let boxed = |o: &DrawnOpening| bounds(&o.outline).unwrap_or_default();
    let is_box = |o: &DrawnOpening| {
        let b = boxed(o);
        (Polygon::simple(o.outline.clone()).wound().area() - b.area()).abs() < 1.0
    };
    let near = |a: f64, b: f64| (a - b).abs() <= HAIR / 8.0;
    let mut out: Vec<DrawnOpening> = Vec::new();
    for mut o in openings {
        while let Some(i) = out.iter().position(|p| {
            let (a, b) = (boxed(p), boxed(&o));
            let beside = near(a.x1, b.x0) || near(b.x1, a.x0);
            beside && near(a.y0, b.y0) && near(a.y1, b.y1) && is_box(p) && is_box(&o)
        }) {
            let (p, b) = (out.swap_remove(i), boxed(&o));
            let b = b.union(boxed(&p));
            o.outline = Polygon::rect(b.x0, b.y0, b.x1, b.y1).outer;
            o.block = None;
        }
        out.push(o);
    }
    out
}

/// An opening that only its hole shows.
fn unnamed(p: &Polygon, (siding, ink): (&[Polygon], &Ink), origin: &Origin) -> DrawnOpening {
    let foot = siding.iter().map(|s| s.bounds().y0).fold(f64::INFINITY, f64::min);
    DrawnOpening {
        id: Default::default(),
        kind: match by_size(p.bounds(), foot) {
            // A strip of windows that stands on the foot of the siding.
            OpeningKind::OverheadDoor if ink.is_in_lights(p.bounds()) => OpeningKind::Window,
            kind => kind,
        },
        outline: Polygon::simple(p.outer.clone()).wound().outer,
        unfilled: None,
        cut: Vec::new(),
        block: None,
        origin: origin.clone(),
    }
}
