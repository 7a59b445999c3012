//! Openings in the gaps of a plane: each with its casing, as far as the siding round it leaves room.

use super::together::CASING;
use crate::extract::ways::recess::FoundOpening;
use crate::geom::boolean::{difference, intersection, union_all};
use crate::geom::polygon::{Polygon, bounds, sides, total_area};
use crate::geom::tol::{level, plumb, snap};
use crate::geom::vocabulary::{Point, Rect, Ring};
use crate::model::house::DrawnOpening;

/// Openings that stand this near one another with no siding between are one in one casing, inches.
const ONE_CASING: f64 = 14.0;
/// How far a casing may go down to the foot of a wall, inches: a sill, a step and a band.
const FOOT: f64 = 36.0;

/// Sloped sides from which they are chords of a curved head; fewer are a roof's.
const CHORDS: usize = 3;

/// The openings that stand in gaps of a plane, with their casings.
pub(super) fn openings(
    siding: &[Polygon],
    gaps: &[Polygon],
    drawn: &[FoundOpening],
) -> Vec<DrawnOpening> {
    let boxed: Vec<(Rect, &FoundOpening)> =
        drawn.iter().filter_map(|d| Some((bounds(&d.outline)?, d))).collect();
    let here = within(siding, gaps, boxed);
    let mut found: Vec<(Polygon, Vec<usize>)> = Vec::new();
    for group in groups(siding, &here) {
        found.extend(cells(siding, gaps, &here, &group).into_iter().map(|p| (p, group.clone())));
    }
    // Those that share a side are one hole in the siding.
    let shapes: Vec<Polygon> = found.iter().map(|f| f.0.clone()).collect();
    let mut out = Vec::new();
    for whole in union_all(&shapes) {
        let inside = |p: &Polygon| {
            total_area(&intersection(std::slice::from_ref(p), std::slice::from_ref(&whole))) > 0.0
        };
        let mut mine: Vec<usize> =
            found.iter().filter(|(p, _)| inside(p)).flat_map(|(_, group)| group.clone()).collect();
        mine.sort_unstable();
        mine.dedup();
        let largest = mine.iter().max_by(|a, b| here[**a].0.area().total_cmp(&here[**b].0.area()));
        let Some((_, first)) = largest.map(|i| here[*i]) else { continue };
        // What is left in a corner of its box is casing too, where it is no siding.
        let b = whole.bounds();
        let boxed = Polygon::rect(b.x0, b.y0, b.x1, b.y1);
        let free = total_area(&intersection(siding, std::slice::from_ref(&boxed))) < 1.0;
        let whole = if free { boxed } else { whole };
        let snapped = whole.map(|q| Point::new(snap(q.x), snap(q.y)));
        out.push(DrawnOpening {
            id: Default::default(),
            kind: first.kind,
            outline: snapped.outer,
            unfilled: None,
            cut: Vec::new(),
            block: first.block.clone().filter(|_| mine.len() == 1),
            origin: first.origin.clone(),
        });
    }
    out
}

/// Openings that stand in a plane's gaps or at its ends, and those beside them in one casing.
fn within<'a>(
    siding: &[Polygon],
    gaps: &[Polygon],
    boxed: Vec<(Rect, &'a FoundOpening)>,
) -> Vec<(Rect, &'a FoundOpening)> {
    let frame = bounds(siding.iter().flat_map(|p| &p.outer)).unwrap_or_default();
    let stands = |b: &Rect| is_between(gaps, *b) || is_in_corner(siding, *b);
    let (mut here, mut rest): (Vec<_>, Vec<_>) = boxed.into_iter().partition(|(b, _)| stands(b));
    rest.retain(|(b, _)| frame.contains(b.center()));
    loop {
        let covered = |p: Point| siding.iter().any(|s| s.contains(p));
        let beside = |b: &Rect| {
            !covered(b.center())
                && here.iter().any(|(h, _)| in_one_casing(*h, *b) && !parted(siding, *h, *b))
        };
        let (more, others): (Vec<_>, Vec<_>) = rest.into_iter().partition(|(b, _)| beside(b));
        if more.is_empty() {
            return here;
        }
        here.extend(more);
        rest = others;
    }
}

/// The holes that openings of one casing stand in.
fn cells(
    siding: &[Polygon],
    gaps: &[Polygon],
    here: &[(Rect, &FoundOpening)],
    group: &[usize],
) -> Vec<Polygon> {
    let frame = bounds(siding.iter().flat_map(|p| &p.outer)).unwrap_or_default();
    let Some(glass) = group.iter().map(|i| here[*i].0).reduce(|a, b| a.union(b)) else {
        return Vec::new();
    };
    let room = room(siding, gaps, glass).intersect(frame);
    let part = difference(&[Polygon::rect(room.x0, room.y0, room.x1, room.y1)], siding);
    let holds = |p: &Polygon| {
        group.iter().any(|i| {
            let b = here[*i].0;
            let glass = [Polygon::rect(b.x0, b.y0, b.x1, b.y1)];
            total_area(&intersection(std::slice::from_ref(p), &glass)) > 0.1 * b.area()
        })
    };
    let between = group.iter().any(|i| is_between(gaps, here[*i].0));
    let under_roof = |p: &Polygon| {
        let slope = |(a, b): (Point, Point)| !plumb(b.x - a.x) && !level(b.y - a.y);
        (1..CHORDS).contains(&sides(&p.outer).filter(|s| slope(*s)).count())
    };
    part.into_iter().filter(|p| holds(p) && (between || !under_roof(p))).collect()
}

/// Whether a box stands in gaps: its middle, or half of it, where a band at its middle parts them.
fn is_between(gaps: &[Polygon], b: Rect) -> bool {
    let boxed = [Polygon::rect(b.x0, b.y0, b.x1, b.y1)];
    gaps.iter().any(|g| g.contains(b.center()))
        || total_area(&intersection(gaps, &boxed)) > 0.5 * b.area()
}

/// Whether siding stands over or under a box and at a side of it too: an opening at the end of a wall.
fn is_in_corner(siding: &[Polygon], b: Rect) -> bool {
    let c = b.center();
    let covered = |p: Point| siding.iter().any(|s| s.contains(p));
    let reach = |half: f64, at: &dyn Fn(f64) -> Point| {
        let mut off = half;
        while off <= half + 2.0 * CASING {
            if covered(at(off)) {
                return true;
            }
            off += 1.0;
        }
        false
    };
    let (w, h) = (b.width() / 2.0, b.height() / 2.0);
    let up = reach(h, &|d| Point::new(c.x, c.y + d)) || reach(h, &|d| Point::new(c.x, c.y - d));
    let aside = reach(w, &|d| Point::new(c.x - d, c.y)) || reach(w, &|d| Point::new(c.x + d, c.y));
    !covered(c) && up && aside
}

/// Openings by the casing they share.
fn groups(siding: &[Polygon], here: &[(Rect, &FoundOpening)]) -> Vec<Vec<usize>> {
    let mut group: Vec<usize> = (0..here.len()).collect();
    for i in 0..here.len() {
        for j in i + 1..here.len() {
            let (a, b) = (here[i].0, here[j].0);
            if group[i] != group[j] && in_one_casing(a, b) && !parted(siding, a, b) {
                let (from, to) = (group[i].max(group[j]), group[i].min(group[j]));
                group.iter_mut().filter(|g| **g == from).for_each(|g| *g = to);
            }
        }
    }
    let mut out: Vec<Vec<usize>> = vec![Vec::new(); here.len()];
    (0..here.len()).for_each(|i| out[group[i]].push(i));
    out.retain(|g| !g.is_empty());
    out
}

/// Whether two openings stand over or beside one another, as near as one casing holds them.
fn in_one_casing(a: Rect, b: Rect) -> bool {
    let (across, up) = (apart(a.x0, a.x1, b.x0, b.x1), apart(a.y0, a.y1, b.y0, b.y1));
    across.max(up) <= ONE_CASING && (across <= 0.0 || up <= 0.0)
}

/// How far apart two spans are; below 0 where they overlap.
fn apart(a0: f64, a1: f64, b0: f64, b1: f64) -> f64 {
    (a0 - b1).max(b0 - a1)
}

/// Whether siding stands between two boxes that see one another.
fn parted(siding: &[Polygon], a: Rect, b: Rect) -> bool {
    let (x, y) = ((a.x0.max(b.x0), a.x1.min(b.x1)), (a.y0.max(b.y0), a.y1.min(b.y1)));
    let order = |p: (f64, f64)| (p.0.min(p.1), p.0.max(p.1));
    let (x, y) = (order(x), order(y));
    let strip = Polygon::rect(x.0, y.0, x.1, y.1);
    total_area(&intersection(siding, std::slice::from_ref(&strip))) > 0.1 * strip.area()
}

/// The box round openings and their casing: out to the siding at each side.
fn room(siding: &[Polygon], gaps: &[Polygon], frame: Rect) -> Rect {
    let all: Vec<(Point, Point)> =
        siding.iter().flat_map(Polygon::rings).flat_map(|r| sides(r)).collect();
    let span = gaps.iter().filter(|g| g.contains(frame.center())).map(Polygon::bounds).next();
    let span = span.unwrap_or(frame);
    // Siding lies on the left hand of its sides: what runs up has it to the left.
    let upright = |up: bool, from: f64, to: f64| {
        longest(all.iter().filter(|(a, b)| plumb(b.x - a.x) && (b.y > a.y) == up).filter_map(
            |(a, b)| {
                let (low, high) = (a.y.min(b.y).max(frame.y0), a.y.max(b.y).min(frame.y1));
                let x = (a.x + b.x) / 2.0;
                (x >= from && x <= to && high > low).then_some((x, high - low))
            },
        ))
    };
    let flat = |right: bool, from: f64, to: f64| {
        longest(all.iter().filter(|(a, b)| level(b.y - a.y) && (b.x > a.x) == right).filter_map(
            |(a, b)| {
                let (low, high) = (a.x.min(b.x).max(frame.x0), a.x.max(b.x).min(frame.x1));
                let y = (a.y + b.y) / 2.0;
                (y >= from && y <= to && high > low).then_some((y, high - low))
            },
        ))
    };
    let left = upright(true, frame.x0 - CASING, frame.x0 + 1.0);
    let right = upright(false, frame.x1 - 1.0, frame.x1 + CASING);
    // A side that no siding stands at has the casing of the other side.
    let wide = match (left, right) {
        (Some(l), None) => (frame.x0 - l).max(0.0),
        (None, Some(r)) => (r - frame.x1).max(0.0),
        _ => 0.0,
    };
    let x0 = left.unwrap_or(frame.x0 - wide);
    let x1 = right.unwrap_or(frame.x1 + wide);
    let y0 = flat(false, frame.y0 - CASING, frame.y0 + 1.0);
    let y1 = flat(true, frame.y1 - 1.0, frame.y1 + CASING);
    // Open to the foot or the head of the wall, or curved: as far as the gap goes, and the siding beside
    // it: what parts siding there is no casing.
    let stands = |x: f64| [left, right].iter().flatten().any(|s| (s - x).abs() <= 0.5);
    let jambs = all.iter().filter(|(a, b)| plumb(b.x - a.x) && stands(a.x));
    let reach = jambs
        .map(|(a, b)| (a.y.min(b.y), a.y.max(b.y)))
        .filter(|(low, high)| *low < frame.y1 && *high > frame.y0)
        .reduce(|p, q| (p.0.min(q.0), p.1.max(q.1)))
        .map_or((span.y0, span.y1), |(low, high)| (low.max(span.y0), high.min(span.y1)));
    let y0 = y0.unwrap_or(if frame.y0 - reach.0 <= FOOT { reach.0 } else { frame.y0 - wide });
    let y1 = y1.unwrap_or(if reach.1 - frame.y1 <= FOOT { reach.1 } else { frame.y1 + wide });
    Rect::new(x0.min(frame.x0), y0.min(frame.y0), x1.max(frame.x1), y1.max(frame.y1))
}

/// The place that most of the length stands at.
fn longest(found: impl Iterator<Item = (f64, f64)>) -> Option<f64> {
    let mut sums: Vec<(f64, f64)> = Vec::new();
    for (at, length) in found {
        match sums.iter_mut().find(|s| (s.0 - at).abs() <= 0.5) {
            Some(s) => s.1 += length,
            None => sums.push((at, length)),
        }
    }
    sums.into_iter().max_by(|a, b| a.1.total_cmp(&b.1)).map(|s| s.0)
}

/// Rings of openings as polygons.
pub(super) fn shapes(openings: &[DrawnOpening]) -> Vec<Polygon> {
    let ring = |o: &DrawnOpening| Polygon::simple(o.outline.clone() as Ring).wound();
    union_all(&openings.iter().map(ring).collect::<Vec<_>>())
}
