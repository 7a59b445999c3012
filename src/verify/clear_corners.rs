//! What panels keep clear of at the corners of slanted openings: where a side flatter than 45 degrees,
//! kept clear of up and down, meets a steeper one, kept clear of sideways, up to where both lines meet.

use std::collections::{BTreeMap, BTreeSet};

use super::tolerance::HEM_CUT;
use crate::geom::tol::SAME;
use crate::geom::vocabulary::Xy;
use crate::layout::laid::LaidHouse;
use crate::layout::wall::{LaidEdge, LaidWall};
use crate::real::Real;

/// A corner of the room kept clear lies no farther from the opening's than so many clearances.
const SHARPEST: f64 = 4.0;

/// Sides that turn by less than 20 degrees, as chords of a curve do, have no corner between.
const CORNER: f64 = 0.342;

/// The corners of a wall's openings.
pub(super) struct Corners {
    /// Sill and head of the opening, and the room kept clear at a corner of it.
    fills: Vec<(f64, f64, Vec<Xy>)>,
    /// Places where the room at a level side ends with the side, since a flat slope goes on.
    ends: BTreeMap<(i64, i64), [bool; 2]>,
    /// Slopes of the wall by the places where they go down from, or up from, a level side of it: run and rise, that
    /// of the one that ends there and that of the one that begins there.
    slopes: BTreeMap<(i64, i64), [Option<Xy>; 2]>,
}

/// A place on a grid wider than noise.
fn cell(p: Xy) -> (i64, i64) {
    ((p[0] * 64.0).round() as i64, (p[1] * 64.0).round() as i64)
}

fn run(e: &LaidEdge) -> Xy {
    run_of(e.from, e.to)
}

fn run_of(a: Xy, b: Xy) -> Xy {
    [b[0] - a[0], b[1] - a[1]]
}

fn cross(u: Xy, w: Xy) -> f64 {
    u[0] * w[1] - u[1] * w[0]
}

fn level(u: Xy) -> bool {
    u[1].abs() <= SAME
}

fn flat(u: Xy) -> bool {
    u[1].abs() <= u[0].abs()
}

impl Corners {
    pub(super) fn of(layout: &LaidHouse, w: &LaidWall) -> Self {
        let (gap, v) = (layout.job.end_gap(), layout.job.courses.notch_clearance);
        let mut from: BTreeMap<(i64, i64), Vec<&LaidEdge>> = BTreeMap::new();
        for e in w.edges.iter().filter(|e| e.opening.is_some()) {
            from.entry(cell(e.from)).or_default().push(e);
        }
        let (ends, slopes) = (BTreeMap::new(), slopes(w));
        let mut out = Corners { fills: Vec::new(), ends, slopes };
        for e in w.edges.iter().filter(|e| e.opening.is_some()) {
            let next = from.get(&cell(e.to)).into_iter().flatten();
            for f in next.filter(|f| f.opening == e.opening) {
                let (u, r) = (run(e), run(f));
                // The siding lies on the left hand: a turn to the right goes round the opening.
                let long = u[0].hypotenuse(u[1]) * r[0].hypotenuse(r[1]);
                if cross(u, r) > -CORNER * long {
                    continue;
                }
                match (level(u), level(r)) {
                    (true, false) if flat(r) => out.ends.entry(cell(e.to)).or_default()[1] = true,
                    (false, true) if flat(u) => out.ends.entry(cell(f.from)).or_default()[0] = true,
                    (false, false) if flat(u) != flat(r) => {
                        let o = w.openings.iter().find(|o| e.opening.as_ref() == Some(&o.id));
                        let (sill, head) = o.map_or((0.0, 0.0), |o| (o.sill, o.head));
                        out.fills.push((sill, head, room(e.to, (u, r), gap, v)));
                    }
                    _ => {}
                }
            }
        }
        out
    }

    /// How far the room `v` at a level side reaches past its two ends: on under a slope that comes down to it until
    /// that is lower than the room, so that no point is left between.
    pub(super) fn past(&self, a: Xy, b: Xy, (gap, v): (f64, f64)) -> [f64; 2] {
        let along = run_of(a, b);
        [(a, 0), (b, 1)].map(|(p, k)| {
            if self.ends.get(&cell(p)).is_some_and(|e| e[k]) {
                return 0.0;
            }
            let slope = self.slopes.get(&cell(p)).and_then(|s| s[k]);
            let turns =
                |s: &Xy| if k == 0 { cross(*s, along) > 0.0 } else { cross(along, *s) > 0.0 };
            let beside = slope
                .filter(turns)
                .map_or(0.0, |[x, y]| x.abs().min(v.max(HEM_CUT) * (x / y).abs()));
            gap.max(beside)
        })
    }

    pub(super) fn fills(&self) -> impl Iterator<Item = &(f64, f64, Vec<Xy>)> {
        self.fills.iter()
    }
}

/// The slopes of a wall at its level sides, without those of its openings, by their ends.
fn slopes(w: &LaidWall) -> BTreeMap<(i64, i64), [Option<Xy>; 2]> {
    let mut out: BTreeMap<(i64, i64), [Option<Xy>; 2]> = BTreeMap::new();
    let own = w.edges.iter().filter(|e| e.opening.is_none());
    let (flat, sloped): (Vec<&LaidEdge>, Vec<&LaidEdge>) = own.partition(|e| level(run(e)));
    for e in sloped {
        out.entry(cell(e.to)).or_default()[0] = Some(run(e));
        out.entry(cell(e.from)).or_default()[1] = Some(run(e));
    }
    let ends: BTreeSet<(i64, i64)> = flat.iter().flat_map(|e| [cell(e.from), cell(e.to)]).collect();
    out.retain(|p, _| ends.contains(p));
    out
}

/// The room at a corner between two sides that run so.
fn room(p: Xy, (u, r): (Xy, Xy), gap: f64, v: f64) -> Vec<Xy> {
    // The siding lies over what runs to the right, and to the right of what runs down.
    let moved = |d: Xy| {
        if flat(d) {
            let by = f64::max(v, gap * (d[1] / d[0]).abs());
            [p[0], if d[0] > 0.0 { p[1] + by } else { p[1] - by }]
        } else {
            [if d[1] < 0.0 { p[0] + gap } else { p[0] - gap }, p[1]]
        }
    };
    let (a, b) = (moved(u), moved(r));
    let from_to = [b[0] - a[0], b[1] - a[1]];
    let t = cross(from_to, r) / cross(u, r);
    let m = [a[0] + u[0] * t, a[1] + u[1] * t];
    let far = (m[0] - p[0]).hypotenuse(m[1] - p[1]) > SHARPEST * f64::max(gap, v);
    // Lines that meet before the corner, not past it, are joined straight.
    let short = t < 0.0 || cross(from_to, u) / cross(u, r) > 0.0;
    if far || short { vec![p, a, b] } else { vec![p, a, m, b] }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_room_at_a_corner_is_a_parallelogram() {
        // Down a plumb right jamb, then left along a sill that falls 1 in 2: 1/4 in beside and under.
        let ring = room([0.0, 0.0], ([0.0, -9.0], [-8.0, -4.0]), 0.25, 0.25);
        assert_eq!(ring, [[0.0, 0.0], [0.25, 0.0], [0.25, -0.125], [0.0, -0.25]]);
    }
}
