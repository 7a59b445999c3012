//! One plane wall out of its patches: the outline round them with the gaps between them filled, and what
//! each gap is.

use super::ink::Ink;
use super::together::BOARD;
use super::{banded, cells};
use crate::extract::openings::LEAST;
use crate::extract::ways::recess::{FoundOpening, by_size};
use crate::geom::boolean::{difference, intersection, union_all};
use crate::geom::gaps::{beside, over};
use crate::geom::polygon::{Polygon, bounds, total_area};
use crate::geom::tol::snap;
use crate::geom::vocabulary::{Point, Rect};
use crate::model::house::DrawnOpening;
use crate::origin::Origin;

/// Gaps thinner than this are the pen's, inches.
const HAIR: f64 = 1.0;
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
    let (detail, _): (Vec<Polygon>, Vec<Polygon>) =
        between.all.iter().cloned().partition(is_detail);
    out.cleaned = detail.len();
    siding = union_all(&[siding, detail.clone()].concat());
    let open = difference(&between.all, &siding);
    out.openings = cells::openings(&siding, &open, drawn);
    let gaps = difference(&open, &cells::shapes(&out.openings));
    let (banded, rest) = banded::openings(gaps, &siding, ink);
    out.unnamed.extend(banded.iter().map(|p| p.bounds().center()));
    out.openings.extend(banded.iter().map(|p| unnamed(p, &siding, origin)));
    let stacked = intersection(&rest, &between.over);
    let aside = difference(&rest, &between.over);
    for p in parts(stacked) {
        let b = p.bounds();
        let hole = is_hole(&p, &between.beside);
        if b.width().min(b.height()) <= BOARD && !is_square(&p) && p.area() > 0.8 * b.area() {
            out.boards.push(p);
        } else if hole && p.area() >= LEAST && b.width().min(b.height()) >= NARROW && is_square(&p)
        {
            out.openings.push(unnamed(&p, &siding, origin));
            out.unnamed.push(b.center());
        } else if hole && p.area() < LEAST {
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
        } else if is_notch(&p, frame) || is_glazed(&p, frame, ink) {
            out.openings.push(unnamed(&p, &siding, origin));
        }
    }
    let mut all = siding;
    all.extend(cells::shapes(&out.openings));
    all.extend(out.boards.iter().chain(&out.bare).cloned());
    let outer =
        |p: &Polygon| Polygon::simple(p.outer.clone()).map(|q| Point::new(snap(q.x), snap(q.y)));
    // What crosses itself by a place put on the grid is untangled by a second pass.
    let whole = union_all(&all);
    out.bare
        .extend(whole.iter().flat_map(|p| &p.holes).map(|h| Polygon::simple(h.clone()).wound()));
    let once: Vec<Polygon> = whole.iter().map(outer).collect();
    out.outlines = union_all(&once).iter().map(outer).collect();
    out
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

/// Parts that are more than slivers.
fn parts(shapes: Vec<Polygon>) -> Vec<Polygon> {
    let wide = |p: &Polygon| p.bounds().width().min(p.bounds().height()) > 1.0 / 16.0;
    shapes.into_iter().filter(wide).collect()
}

fn is_detail(p: &Polygon) -> bool {
    let b = p.bounds();
    let (short, long) = (b.width().min(b.height()), b.width().max(b.height()));
    short <= HAIR || long < DETAIL
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

/// Whether a gap up from the foot holds the uprights of a frame: a window that stands over stone.
fn is_glazed(p: &Polygon, frame: Rect, ink: &Ink) -> bool {
    let b = p.bounds();
    let filled = p.area() > 0.9 * b.area() && is_square(p);
    let sized = b.width() >= LEAST_WINDOW && b.height() >= LEAST_WINDOW && WIDE.end() >= &b.width();
    filled && sized && b.y0 - frame.y0 <= SILL && ink.uprights_in(b) >= 2
}

/// An opening that only its hole shows.
fn unnamed(p: &Polygon, siding: &[Polygon], origin: &Origin) -> DrawnOpening {
    let foot = siding.iter().map(|s| s.bounds().y0).fold(f64::INFINITY, f64::min);
    DrawnOpening {
        id: Default::default(),
        kind: by_size(p.bounds(), foot),
        outline: Polygon::simple(p.outer.clone()).wound().outer,
        unfilled: None,
        cut: Vec::new(),
        block: None,
        origin: origin.clone(),
    }
}
