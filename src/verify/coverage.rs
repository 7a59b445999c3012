//! Pieces cover the field exactly, and overlap only at laps.
//!
//! What may be covered of a course is the field's strip, less the end gap to both sides of every
//! plumb or sloped side, less the notch clearance above and below level sides that cut the course
//! and above and below an opening's sides flatter than 45 degrees and tops out of level, less fixtures
//! grown by that clearance. Under a level side that stands on the course's top line, or nearer over it than
//! that clearance, it is less the clearance too: the nail hem is cut off there. Areas are exact: see `sweep`.

use std::collections::BTreeMap;

use super::area::{Area, NOISE, Stamps};
use super::clear_corners::Corners;
use super::corner_sides::{is_top, is_upright, runs_upright};
use super::course_lines::{butt, course_at};
use super::named;
use super::rule::{Cases, found};
use super::scan::{Spans, length, twice, without};
use super::sweep::{Height, Shapes, Slab};
use super::tolerance::{CUT, HEM_CUT};
use crate::geom::tol::SAME;
use crate::geom::vocabulary::Xy;
use crate::layout::breach::wall::FieldBreach;
use crate::layout::course::LaidCourse;
use crate::layout::laid::LaidHouse;
use crate::layout::piece::Piece;
use crate::layout::rule::Rule;
use crate::layout::verified::RuleCheck;
use crate::layout::violation::Figure;
use crate::layout::wall::{LaidEdge, LaidWall};
use crate::real::Real;

/// What is wrong with one course.
#[derive(Clone, Copy, Debug, Default)]
struct Areas {
    uncovered: Area,
    beyond: Area,
    doubled: Area,
}

pub(super) fn check(layout: &LaidHouse) -> [RuleCheck; 3] {
    let mut open = Cases::new(Rule::FieldCovered);
    let mut beyond = Cases::new(Rule::PiecesInField);
    let mut doubled = Cases::new(Rule::PiecesOverlap);
    for (e, w) in layout.walls() {
        let strips = strips(layout, w);
        let corners = Corners::of(layout, w);
        let areas: Vec<Areas> = strips.iter().map(|c| compare(layout, w, &corners, c)).collect();
        let limit = NOISE + 1e-6 * w.gross_area * 144.0;
        let gather = |cases: &mut Cases, area: &dyn Fn(&Areas) -> Area, breach: FieldBreach| {
            cases.checked += strips.len();
            if areas.iter().map(|a| area(a).sum).sum::<f64>() <= limit {
                return;
            }
            let of_each = strips.iter().zip(areas.iter().map(area));
            for (course, a) in of_each.filter(|(_, a)| a.sum > NOISE / 10.0) {
                let subject = named::course(&w.id, course.index);
                let at = a.at.and_then(|p| named::place(&e.name, p));
                let v = found(subject, breach.clone()).at(at);
                let none = Figure::SquareInches(0.0);
                cases.breaks(v.measured(Figure::SquareInches(a.sum)).exactly(none));
            }
        };
        gather(&mut open, &|a| a.uncovered, FieldBreach::Uncovered);
        gather(&mut beyond, &|a| a.beyond, FieldBreach::Beyond);
        gather(&mut doubled, &|a| a.doubled, FieldBreach::LaidTwice);
    }
    [open.done(), beyond.done(), doubled.done()]
}

/// Every course that was laid or that the field reaches, an empty one where nothing was laid.
fn strips(layout: &LaidHouse, w: &LaidWall) -> Vec<LaidCourse> {
    let mut out: BTreeMap<i32, LaidCourse> = BTreeMap::new();
    let ys = w.field.iter().flatten().map(|p| p[1]);
    let (low, high) = ys.fold((f64::INFINITY, f64::NEG_INFINITY), |(a, b), y| (a.min(y), b.max(y)));
    if low < high {
        let at = |y: f64| course_at(layout, y);
        for index in at(low + SAME)..=at(high - SAME) {
            let (bottom, top) = (butt(layout, index), butt(layout, index + 1));
            let (avoid, runs) = (Vec::new(), Vec::new());
            let bare = LaidCourse { index, bottom, top, rip: None, avoid, runs };
            out.insert(index, bare);
        }
    }
    out.extend(w.courses.iter().map(|c| (c.index, c.clone())));
    // One that was left out ends where its neighbors are laid: their lines are on the grid.
    for c in &w.courses {
        if let Some(below) = out.get_mut(&(c.index - 1)).filter(|b| b.runs.is_empty()) {
            below.top = c.bottom;
        }
        if let Some(above) = out.get_mut(&(c.index + 1)).filter(|a| a.runs.is_empty()) {
            above.bottom = c.top;
        }
    }
    out.into_values().collect()
}

/// Numbers of the shapes of one course: the field, then what is taken off it, then pieces.
struct Parts<'a> {
    field: usize,
    first_piece: usize,
    /// Run of each piece, and the piece.
    pieces: Vec<(usize, &'a Piece)>,
}

fn compare(layout: &LaidHouse, w: &LaidWall, corners: &Corners, course: &LaidCourse) -> Areas {
    let (gap, v) = (layout.job.end_gap(), layout.job.courses.notch_clearance);
    let mut shapes = Shapes::default();
    let field = shapes.add(&w.field);
    take_off(&mut shapes, (w, corners), course, gap, v);
    // Boards leave a gap at each joint.
    let half = -layout.job.lap() / 2.0;
    for run in course.runs.iter().filter(|_| half > 0.0) {
        // As high as its run: another one of the course may lie over it.
        let ys = || run.pieces.iter().flat_map(|p| &p.outline).map(|q| q[1]);
        let (low, high) = (ys().fold(course.top, f64::min), ys().fold(course.bottom, f64::max));
        for s in &run.seams {
            shapes.add([&rectangle(s - half, low, s + half, high)]);
        }
    }
    let first_piece = shapes.count();
    let mut pieces = Vec::new();
    for (n, run) in course.runs.iter().enumerate() {
        for p in &run.pieces {
            shapes.add(std::iter::once(&p.outline).chain(&p.holes).chain(&p.more));
            pieces.push((n, p));
        }
    }
    // A piece that leaves its course is looked at where it is.
    let ys = pieces.iter().flat_map(|(_, p)| &p.outline).map(|q| q[1]);
    let (low, high) = ys.fold((course.bottom, course.top), |(a, b), y| (a.min(y), b.max(y)));
    let parts = Parts { field, first_piece, pieces };
    measure(&parts, &shapes.slabs(low, high), (course, layout.job.least_strip()))
}

/// Adds what clearances take off the field in a course.
fn take_off(
    shapes: &mut Shapes,
    (w, corners): (&LaidWall, &Corners),
    course: &LaidCourse,
    gap: f64,
    v: f64,
) {
    for ring in &w.field {
        for i in 0..ring.len() {
            let (a, b) = (ring[i], ring[(i + 1) % ring.len()]);
            beside_a_side(shapes, course, (a, b), (gap, v), corners.past(a, b, (gap, v)));
        }
    }
    // Over and under the flatter sides of a curved opening.
    for e in &w.edges {
        let (a, b) = (e.from, e.to);
        if let Some([x, y]) = steps_in(e, course) {
            off(shapes, course, &rectangle(x[0] - gap, y[0], x[1] + gap, y[1]));
        }
        let (run, rise) = ((a[0] - b[0]).abs(), (a[1] - b[1]).abs());
        let of = w.openings.iter().find(|o| e.opening.as_ref() == Some(&o.id));
        let clears = is_top(e) || of.is_some_and(|o| reaches(course, o.sill, o.head));
        if clears && rise > SAME && rise <= run {
            let ring = [[a[0], a[1] - v], [b[0], b[1] - v], [b[0], b[1] + v], [a[0], a[1] + v]];
            off(shapes, course, &ring);
        }
    }
    for (sill, head, ring) in corners.fills() {
        if reaches(course, *sill, *head) {
            off(shapes, course, ring);
        }
    }
    for o in &w.obstacles {
        off(shapes, course, &o.outline);
        for i in 0..o.outline.len() {
            let ring = grown(o.outline[i], o.outline[(i + 1) % o.outline.len()], v);
            off(shapes, course, &ring);
        }
    }
}

/// Along a corner or an end of a wall that leans panels are cut square, course by course: from where to where
/// one leans in a course by more than a cutter tells, along the wall and up.
fn steps_in(e: &LaidEdge, course: &LaidCourse) -> Option<[[f64; 2]; 2]> {
    let stands = is_upright(e.kind) && e.opening.is_none();
    let ys = [e.from[1], e.to[1]];
    let (low, high) = (ys[0].min(ys[1]).max(course.bottom), ys[0].max(ys[1]).min(course.top));
    if !stands || low >= high || !runs_upright(e.from, e.to) {
        return None;
    }
    let lean = (e.to[0] - e.from[0]) / (e.to[1] - e.from[1]);
    let [a, b] = [low, high].map(|y| e.from[0] + lean * (y - e.from[1]));
    ((a - b).abs() > CUT).then(|| [[a.min(b), a.max(b)], [low, high]])
}

/// Takes a ring off; a side of it that ends on a course line but for drawing noise leaves nothing
/// between.
fn off(shapes: &mut Shapes, course: &LaidCourse, ring: &[Xy]) {
    let on = |y: f64, line: f64| if (y - line).abs() <= SAME { line } else { y };
    let ring: Vec<Xy> =
        ring.iter().map(|q| [q[0], on(on(q[1], course.bottom), course.top)]).collect();
    shapes.add([&ring]);
}

/// Whether heights reach into a course by more than drawing noise.
fn reaches(course: &LaidCourse, low: f64, high: f64) -> bool {
    low < course.top - SAME && high > course.bottom + SAME
}

/// What the end gap or the notch clearance takes beside a side of the field.
fn beside_a_side(
    shapes: &mut Shapes,
    course: &LaidCourse,
    (a, b): (Xy, Xy),
    (gap, v): (f64, f64),
    past: [f64; 2],
) {
    let (low, high) = (a[1].min(b[1]), a[1].max(b[1]));
    if (a[0] - b[0]).hypotenuse(a[1] - b[1]) <= SAME {
        return;
    }
    let (left, right) = if a[0] < b[0] {
        (a[0] - past[0], b[0] + past[1])
    } else {
        (b[0] - past[1], a[0] + past[0])
    };
    // The field lies on the left hand of its sides: under one that runs to the left.
    let over = b[0] < a[0] && high - low <= SAME && low >= course.top - SAME;
    let room = v.max(HEM_CUT);
    if over && high - room < course.top - SAME {
        off(shapes, course, &rectangle(left, high - room, right, high));
        return;
    }
    if !reaches(course, low, high) {
        // On a course line but for drawing noise: nothing is laid between.
        for line in [course.bottom, course.top] {
            let (low, high) = (low.min(line), high.max(line));
            if low < high && high - low <= SAME {
                off(shapes, course, &rectangle(left, low, right, high));
            }
        }
        return;
    }
    let swept = if (a[1] - b[1]).abs() <= SAME {
        rectangle(left, a[1] - v, right, a[1] + v)
    } else {
        vec![[a[0] - gap, a[1]], [a[0] + gap, a[1]], [b[0] + gap, b[1]], [b[0] - gap, b[1]]]
    };
    off(shapes, course, &swept);
}

/// What is wider than drawing noise: an end is put on a corner that near, so that no sliver stays, and
/// may stand past it by as much.
fn wide(mut spans: Spans) -> Spans {
    spans.retain(|s| s.1 - s.0 > SAME);
    spans
}

fn rectangle(left: f64, bottom: f64, right: f64, top: f64) -> Vec<Xy> {
    vec![[left, bottom], [right, bottom], [right, top], [left, top]]
}

/// A side swept by a square of half-width `v`: the six outer corners of the squares at its ends.
fn grown(a: Xy, b: Xy, v: f64) -> Vec<Xy> {
    let (l, r) = if a[0] <= b[0] { (a, b) } else { (b, a) };
    let at = |p: Xy, x: f64, y: f64| [p[0] + x * v, p[1] + y * v];
    if l[1] <= r[1] {
        vec![
            at(l, -1.0, -1.0),
            at(l, 1.0, -1.0),
            at(r, 1.0, -1.0),
            at(r, 1.0, 1.0),
            at(r, -1.0, 1.0),
            at(l, -1.0, 1.0),
        ]
    } else {
        vec![
            at(l, -1.0, -1.0),
            at(r, -1.0, -1.0),
            at(r, 1.0, -1.0),
            at(r, 1.0, 1.0),
            at(l, 1.0, 1.0),
            at(l, -1.0, 1.0),
        ]
    }
}

fn measure(parts: &Parts, slabs: &[Slab], (course, least): (&LaidCourse, f64)) -> Areas {
    let first = parts.first_piece;
    let clear = |slab: &Slab, height: Height| -> Spans {
        if slab.high <= course.bottom || slab.low >= course.top {
            return Spans::new();
        }
        let off = slab.union(height, |i| i > parts.field && i < first);
        without(&slab.union(height, |i| i == parts.field), &off)
    };
    let mut out = Areas::default();
    let mut bare = Stamps::default();
    for slab in slabs {
        let may = clear(slab, Height::Middle);
        let laid = slab.union(Height::Middle, |i| i >= first);
        let over = wide(without(&laid, &may));
        out.beyond.add(slab, slab.rise() * length(&over), &over);
        let each = slab.spans(Height::Middle, |i| i >= first);
        let more = each.iter().map(length).sum::<f64>() - length(&laid) - lapped(parts, slab);
        if more > 0.0 {
            out.doubled.add(slab, slab.rise() * more, &twice(&each));
        }
        let ends = [clear(slab, Height::Bottom), clear(slab, Height::Top)];
        bare.slab(slab, &may, &ends, &laid);
    }
    out.uncovered = bare.uncovered(least);
    out
}

/// Length covered by two neighbors of a run between where the second begins and the first ends.
fn lapped(parts: &Parts, slab: &Slab) -> f64 {
    parts
        .pieces
        .windows(2)
        .enumerate()
        .filter(|(_, pair)| pair[0].0 == pair[1].0)
        .map(|(i, pair)| {
            let of = |k: usize| slab.union(Height::Middle, |n| n == parts.first_piece + k);
            let outside = without(&of(i), &of(i + 1));
            let both = without(&of(i), &outside);
            let lap = vec![(pair[1].1.x0, pair[0].1.x1)];
            length(&both) - length(&without(&both, &lap))
        })
        .sum()
}

#[cfg(test)]
mod tests {
    use super::{Xy, grown};

    #[test]
    fn a_side_swept_by_a_square_has_the_area_of_both() {
        // A square of side 2v along (dx, dy): 4 v^2 + 2 v (|dx| + |dy|).
        for (a, b) in
            [([0.0, 0.0], [6.0, 3.0]), ([0.0, 0.0], [6.0, -3.0]), ([1.0, 5.0], [1.0, 0.0])]
        {
            let ring = grown(a, b, 0.25);
            let twice: f64 = (0..6)
                .map(|i| {
                    let (p, q): (Xy, Xy) = (ring[i], ring[(i + 1) % 6]);
                    p[0] * q[1] - q[0] * p[1]
                })
                .sum();
            let (dx, dy) = ((b[0] - a[0]).abs(), (b[1] - a[1]).abs());
            assert!((twice / 2.0 - (0.25 + 0.5 * (dx + dy))).abs() < 1e-12, "{ring:?}");
        }
    }
}
