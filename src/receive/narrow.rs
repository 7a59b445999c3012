//! Where a field is too narrow for siding: sides so near that too little shows between the trim that stands
//! on them.

use super::faces::Faces;
use crate::geom::boolean::intersection;
use crate::geom::polygon::{Polygon, total_area};
use crate::geom::tol::{LEANS, SAME};
use crate::geom::vocabulary::Rect;
use crate::model::course::StoryPole;
use crate::model::house::EdgeKind;
use crate::model::receiver::{Field, FieldEdge};

/// How long two sides must stand beside one another, inches: a shorter neck is part of a notch. Of our own
/// choosing, no source.
const LEAST_LONG: f64 = 2.0;
/// Area that rounding to the grid takes of a rectangle, square inches for each inch round it.
const NOISE: f64 = SAME;

/// A part of a field where no siding goes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Narrow {
    pub(super) place: Rect,
    /// The sides it stands between, by their places in the field; none is a course line.
    pub(super) sides: [Option<usize>; 2],
    pub(super) upright: bool,
}

/// All of a field.
pub(super) fn narrow(field: &Field, pole: &StoryPole, faces: &Faces) -> Vec<Narrow> {
    let mut out = beside(field, faces);
    out.extend(between_levels(field, pole, faces));
    out
}

/// A side as an interval at a place across: a plumb one over heights at an x, a level one the other way.
struct Side {
    edge: usize,
    at: f64,
    from: f64,
    to: f64,
}

fn sorted(mut sides: Vec<Side>) -> Vec<Side> {
    sides.sort_by(|a, b| a.at.total_cmp(&b.at).then(a.from.total_cmp(&b.from)));
    sides
}

fn plumb_sides(field: &Field, bounds_left: bool) -> Vec<Side> {
    let all = field.edges.iter().enumerate().filter(|(_, e)| {
        // The field lies on the left hand: right of what runs down.
        let down = e.to.y < e.from.y;
        (e.from.x - e.to.x).abs() <= SAME && !e.is_curved && down == bounds_left
    });
    sorted(
        all.map(|(edge, e)| Side {
            edge,
            at: e.from.x,
            from: e.from.y.min(e.to.y),
            to: e.from.y.max(e.to.y),
        })
        .collect(),
    )
}

fn level_sides(field: &Field, bounds_below: bool) -> Vec<Side> {
    let all = field.edges.iter().enumerate().filter(|(_, e)| {
        let right = e.to.x > e.from.x;
        (e.from.y - e.to.y).abs() <= SAME && !e.is_curved && right == bounds_below
    });
    sorted(
        all.map(|(edge, e)| Side {
            edge,
            at: e.from.y,
            from: e.from.x.min(e.to.x),
            to: e.from.x.max(e.to.x),
        })
        .collect(),
    )
}

/// Pairs of a lower and an upper side nearer than their trim and the least that shall show.
fn pairs<'a>(
    (low, high): (&'a [Side], &'a [Side]),
    least: impl Fn(&Side, &Side) -> f64 + 'a,
    most: f64,
) -> impl Iterator<Item = (&'a Side, &'a Side, f64, f64)> {
    low.iter()
        .flat_map(move |a| {
            let first = high.partition_point(|b| b.at <= a.at + SAME);
            high[first..].iter().take_while(move |b| b.at < a.at + most).map(move |b| (a, b))
        })
        .filter(move |(a, b)| b.at - a.at < least(a, b) - SAME)
        .map(|(a, b)| (a, b, a.from.max(b.from), a.to.min(b.to)))
        .filter(|(.., from, to)| to - from >= LEAST_LONG - SAME)
}

fn beside(field: &Field, faces: &Faces) -> Vec<Narrow> {
    let both = [plumb_sides(field, true), plumb_sides(field, false)];
    let kind = |s: &Side| field.edges[s.edge].kind;
    let least = |a: &Side, b: &Side| faces.least(kind(a), kind(b));
    let found = pairs((&both[0], &both[1]), least, faces.most());
    found
        .map(|(a, b, from, to)| Narrow {
            place: Rect::new(a.at, from, b.at, to),
            sides: [Some(a.edge), Some(b.edge)],
            upright: true,
        })
        .filter(|n| is_open(&field.shapes, n.place))
        .collect()
}

fn between_levels(field: &Field, pole: &StoryPole, faces: &Faces) -> Vec<Narrow> {
    let both = [level_sides(field, true), level_sides(field, false)];
    let least = |a: &Side, b: &Side| {
        let starts = starts_whole(&field.edges[a.edge], pole);
        faces.least(field.edges[a.edge].kind, field.edges[b.edge].kind)
            - if starts { faces.of(field.edges[a.edge].kind) } else { 0.0 }
    };
    let found = pairs((&both[0], &both[1]), least, faces.most());
    found
        .map(|(a, b, from, to)| Narrow {
            place: Rect::new(from, a.at, to, b.at),
            sides: [Some(a.edge), Some(b.edge)],
            upright: false,
        })
        .filter(|n| is_open(&field.shapes, n.place))
        .map(|n| Narrow { place: past_leaning(&field.shapes, n.place), ..n })
        .collect()
}

/// A level place that ends at a side that leans, ending past it: to the grid a hairline would be left beside it.
fn past_leaning(field: &[Polygon], r: Rect) -> Rect {
    // A side that leans more is none of an upright corner.
    let far = LEANS * r.height() + 2.0 * SAME;
    let within = |strip: Rect| {
        let all = [Polygon::rect(strip.x0, strip.y0, strip.x1, strip.y1)];
        intersection(field, &all).iter().map(Polygon::bounds).reduce(|a, b| a.union(b))
    };
    let right = within(Rect::new(r.x1, r.y0, r.x1 + far, r.y1)).map_or(r.x1, |b| b.x1);
    let left = within(Rect::new(r.x0 - far, r.y0, r.x0, r.y1)).map_or(r.x0, |b| b.x0);
    // What goes on farther is another place.
    let x1 = if right < r.x1 + far - SAME { right.max(r.x1) } else { r.x1 };
    let x0 = if left > r.x0 - far + SAME { left.min(r.x0) } else { r.x0 };
    Rect::new(x0, r.y0, x1, r.y1)
}

/// Between a level roof, a deck or a ledge and the next course line, where less of a course is left over it
/// than the least strip: a skirt board closes the place, and siding starts whole on it.
pub(super) fn under_first_lines(
    field: &Field,
    pole: &StoryPole,
    (least, clear): (f64, f64),
) -> Vec<Narrow> {
    let starts = level_sides(field, true).into_iter().filter(|s| {
        let e = &field.edges[s.edge];
        let holds = matches!(e.kind, EdgeKind::LowerRoof | EdgeKind::BareTop);
        holds && e.opening.is_none() && s.to - s.from >= LEAST_LONG - SAME
    });
    let place = |s: Side| {
        let line = pole.butt(pole.course_at(s.at) + 1);
        let left = line - s.at - clear;
        let on_line = (pole.settled(s.at) - pole.butt(pole.course_at(s.at))).abs() <= SAME;
        (!on_line && left > SAME && left < least - SAME).then(|| Narrow {
            place: Rect::new(s.from, s.at, s.to, line),
            sides: [Some(s.edge), None],
            upright: false,
        })
    };
    starts.filter_map(place).filter(|n| is_open(&field.shapes, n.place)).collect()
}

/// Whether a first course stands whole on a starter, which has no face.
fn starts_whole(e: &FieldEdge, pole: &StoryPole) -> bool {
    let starts = matches!(e.kind, EdgeKind::Base | EdgeKind::BareTop);
    starts && (pole.butt(pole.course_at(e.from.y)) - e.from.y).abs() <= SAME
}

/// Whether all of a rectangle lies in the field.
pub(super) fn is_open(field: &[Polygon], r: Rect) -> bool {
    let all = Polygon::rect(r.x0, r.y0, r.x1, r.y1);
    let near: Vec<Polygon> =
        field.iter().filter(|p| !p.bounds().intersect(r).is_zero_area()).cloned().collect();
    let inside = total_area(&intersection(&near, &[all]));
    inside >= r.area() - NOISE * (r.width() + r.height())
}
