//! Pieces cover the field exactly, and overlap only at laps.
//!
//! What may be covered of a course is the field's strip, less the end gap to both sides of every
//! plumb or sloped side, less the notch clearance above and below level sides that cut the course
//! and above and below an opening's sides flatter than 45 degrees, less mounting blocks grown by that
//! clearance, less bare fixtures. Areas are exact: see `sweep`.

use std::collections::BTreeMap;

use super::scan::{Spans, length, without};
use super::sweep::{Height, Shapes, Slab};
use super::{Rule, butt, course_at};
use crate::geom::tol::SAME;
use crate::geom::vocabulary::Xy;
use crate::layout::Layout;
use crate::layout::course::LaidCourse;
use crate::layout::piece::Piece;
use crate::layout::verified::RuleCheck;
use crate::layout::wall::LaidWall;

/// Area of a wall that counts as none, square inches, beside a millionth of the wall: noise of
/// boolean results over a wall.
const NOISE: f64 = 0.01;
/// A part of a course smaller than this, square inches, is left bare: no piece is cut for it.
const STAMP: f64 = 0.5;
/// Length of a border at which two parts of a course are one part, inches.
const JOINED: f64 = 1e-4;

/// Square inches of one course.
#[derive(Clone, Copy, Debug, Default)]
struct Areas {
    uncovered: f64,
    beyond: f64,
    doubled: f64,
}

pub(super) fn check(layout: &Layout) -> [RuleCheck; 3] {
    let mut rules = [Rule::default(), Rule::default(), Rule::default()];
    for (e, w) in layout.walls() {
        let strips = strips(layout, w);
        let found: Vec<Areas> = strips.iter().map(|c| compare(layout, w, c)).collect();
        let limit = NOISE + 1e-6 * w.gross_area * 144.0;
        let tell = |rule: &mut Rule, area: &dyn Fn(&Areas) -> f64, what: &str| {
            rule.checked += strips.len();
            let sum: f64 = found.iter().map(area).sum();
            if sum <= limit {
                return;
            }
            for (course, a) in strips.iter().zip(&found).filter(|(_, a)| area(a) > NOISE / 10.0) {
                let place = format!("{}, {}, course {}", e.name, w.id, course.index + 1);
                rule.violations.push(format!("{place}: {what} {:.3} sq in", area(a)));
            }
        };
        tell(&mut rules[0], &|a| a.uncovered, "not covered of the field:");
        tell(&mut rules[1], &|a| a.beyond, "laid outside the field or in its clearances:");
        tell(&mut rules[2], &|a| a.doubled, "laid twice other than at a lap:");
    }
    let [open, over, twice] = rules;
    [
        open.done("pieces cover the whole field"),
        over.done("pieces stay in the field and out of its clearances"),
        twice.done("pieces overlap only at laps"),
    ]
}

/// Every course that was laid or that the field reaches, an empty one where nothing was laid.
fn strips(layout: &Layout, w: &LaidWall) -> Vec<LaidCourse> {
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
    out.into_values().collect()
}

/// Numbers of the shapes of one course: the field, then what is taken off it, then pieces.
struct Parts<'a> {
    field: usize,
    first_piece: usize,
    /// Run of each piece, and the piece.
    pieces: Vec<(usize, &'a Piece)>,
}

fn compare(layout: &Layout, w: &LaidWall, course: &LaidCourse) -> Areas {
    let (gap, v) = (layout.job.end_gap(), layout.job.courses.notch_clearance);
    let mut shapes = Shapes::default();
    let field = shapes.add(&w.field);
    take_off(&mut shapes, w, course, gap, v);
    // Boards leave a gap at each joint.
    let half = -layout.job.lap() / 2.0;
    for s in course.runs.iter().flat_map(|r| &r.seams).filter(|_| half > 0.0) {
        shapes.add([&rectangle(s - half, course.bottom, s + half, course.top)]);
    }
    let first_piece = shapes.count();
    let mut pieces = Vec::new();
    for (n, run) in course.runs.iter().enumerate() {
        for p in &run.pieces {
            shapes.add(std::iter::once(&p.outline).chain(&p.holes).chain(&p.more));
            pieces.push((n, p));
        }
    }
    let parts = Parts { field, first_piece, pieces };
    // A piece that leaves its course is looked at where it is.
    let ys = parts.pieces.iter().flat_map(|(_, p)| &p.outline).map(|q| q[1]);
    let (low, high) = ys.fold((course.bottom, course.top), |(a, b), y| (a.min(y), b.max(y)));
    measure(&parts, &shapes.slabs(low, high), course)
}

/// Adds what clearances take off the field in a course. One that ends on a course line but for
/// drawing noise leaves nothing between.
fn take_off(shapes: &mut Shapes, w: &LaidWall, course: &LaidCourse, gap: f64, v: f64) {
    let on = |y: f64, line: f64| if (y - line).abs() <= SAME { line } else { y };
    let mut off = |ring: &[Xy]| {
        let ring: Vec<Xy> =
            ring.iter().map(|q| [q[0], on(on(q[1], course.bottom), course.top)]).collect();
        shapes.add([&ring]);
    };
    let near = |low: f64, high: f64| low < course.top - SAME && high > course.bottom + SAME;
    for ring in &w.field {
        for i in 0..ring.len() {
            let (a, b) = (ring[i], ring[(i + 1) % ring.len()]);
            let (low, high) = (a[1].min(b[1]), a[1].max(b[1]));
            if (a[0] - b[0]).hypot(a[1] - b[1]) <= SAME {
                continue;
            }
            if !near(low, high) {
                // On a course line but for drawing noise: nothing is laid between.
                for line in [course.bottom, course.top] {
                    let (low, high) = (low.min(line), high.max(line));
                    if low < high && high - low <= SAME {
                        let (left, right) = (a[0].min(b[0]) - gap, a[0].max(b[0]) + gap);
                        off(&rectangle(left, low, right, high));
                    }
                }
                continue;
            }
            let swept = if (a[1] - b[1]).abs() <= SAME {
                let (left, right) = (a[0].min(b[0]) - gap, a[0].max(b[0]) + gap);
                rectangle(left, a[1] - v, right, a[1] + v)
            } else {
                vec![[a[0] - gap, a[1]], [a[0] + gap, a[1]], [b[0] + gap, b[1]], [b[0] - gap, b[1]]]
            };
            off(&swept);
        }
    }
    // Over and under the flatter sides of a curved opening.
    for e in &w.edges {
        let (a, b) = (e.from, e.to);
        let (run, rise) = ((a[0] - b[0]).abs(), (a[1] - b[1]).abs());
        let of = w.openings.iter().find(|o| e.opening.as_ref() == Some(&o.id));
        if of.is_some_and(|o| near(o.sill, o.head)) && rise > SAME && rise <= run {
            let ring = vec![[a[0], a[1] - v], [b[0], b[1] - v], [b[0], b[1] + v], [a[0], a[1] + v]];
            off(&ring);
        }
    }
    for o in &w.obstacles {
        off(&o.outline);
        if o.mounting_block {
            for i in 0..o.outline.len() {
                off(&grown(o.outline[i], o.outline[(i + 1) % o.outline.len()], v));
            }
        }
    }
}

/// Length of what is wider than drawing noise: an end is put on a corner that near, so that no sliver
/// stays, and may stand past it by as much.
fn wide(spans: &Spans) -> f64 {
    spans.iter().map(|s| s.1 - s.0).filter(|l| *l > SAME).sum()
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

fn measure(parts: &Parts, slabs: &[Slab], course: &LaidCourse) -> Areas {
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
        out.beyond += slab.rise() * wide(&without(&laid, &may));
        let each = slab.spans(Height::Middle, |i| i >= first);
        let twice = each.iter().map(length).sum::<f64>() - length(&laid);
        out.doubled += slab.rise() * (twice - lapped(parts, slab)).max(0.0);
        let ends = [clear(slab, Height::Bottom), clear(slab, Height::Top)];
        bare.slab(slab.rise(), &may, &ends, &laid);
    }
    out.uncovered = bare.uncovered();
    out
}

/// Length covered by two neighbours of a run between where the second begins and the first ends.
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

/// Connected parts of what may be covered of a course, each with its area and what is bare of it.
#[derive(Debug, Default)]
struct Stamps {
    /// (part it was joined to, area, bare area).
    parts: Vec<(usize, f64, f64)>,
    /// Spans just under the top of the slab below, with their parts.
    below: Vec<((f64, f64), usize)>,
}

impl Stamps {
    fn root(&self, mut i: usize) -> usize {
        while self.parts[i].0 != i {
            i = self.parts[i].0;
        }
        i
    }

    fn slab(&mut self, rise: f64, may: &Spans, ends: &[Spans; 2], laid: &Spans) {
        // Spans keep their number from bottom to top of a slab, unless one is thinner than noise.
        let alike = ends[0].len() == may.len() && ends[1].len() == may.len();
        let mut above = Vec::new();
        for (n, span) in may.iter().enumerate() {
            let id = self.parts.len();
            let bare = length(&without(&vec![*span], laid));
            self.parts.push((id, rise * (span.1 - span.0), rise * bare));
            let foot = if alike { ends[0][n] } else { *span };
            for (other, part) in self.below.clone() {
                if other.1.min(foot.1) - other.0.max(foot.0) > JOINED {
                    let (a, b) = (self.root(part), self.root(id));
                    self.parts[a].0 = b;
                }
            }
            above.push((if alike { ends[1][n] } else { *span }, id));
        }
        self.below = above;
    }

    /// Bare area, less that of parts too small for a piece.
    fn uncovered(&self) -> f64 {
        let mut sums: BTreeMap<usize, (f64, f64)> = BTreeMap::new();
        for i in 0..self.parts.len() {
            let sum = sums.entry(self.root(i)).or_default();
            sum.0 += self.parts[i].1;
            sum.1 += self.parts[i].2;
        }
        let stamp = |(area, bare): &(f64, f64)| *area < STAMP && *bare > area - 1e-3;
        sums.values().filter(|s| !stamp(s)).map(|s| s.1).sum()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

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
