//! Runs: named once, and each ending in the trim that is drawn where it ends.

use std::collections::{BTreeMap, BTreeSet};

use super::corner_sides::runs_upright;
use super::course_lines::course_at;
use super::named;
use super::rule::{Cases, found};
use super::tolerance::NEAR;
use crate::geom::tol::SAME;
use crate::geom::vocabulary::Xy;
use crate::layout::breach::piece::RunBreach;
use crate::layout::course::{LaidCourse, LaidRun};
use crate::layout::laid::LaidHouse;
use crate::layout::rule::Rule;
use crate::layout::verified::RuleCheck;
use crate::layout::wall::{LaidEdge, LaidWall};
use crate::model::corner::Hand;
use crate::model::receiver::Receiver;

pub(super) fn check(layout: &LaidHouse) -> RuleCheck {
    let mut rule = Cases::new(Rule::RunEnds);
    let mut seen = BTreeSet::new();
    // What ends at a fixture stands in a channel round it.
    let pockets = layout.job.siding().receivers.has_pockets();
    let at_fixture = if pockets { Receiver::JChannel } else { Receiver::Trim };
    for (e, w) in layout.walls() {
        let by_course = by_course(layout, w);
        for on in named::runs_of(e, w) {
            let (c, r) = (on.course, on.run);
            let sides = by_course.get(&c.index).map_or(&[][..], Vec::as_slice);
            rule.case(seen.insert(&r.id), || {
                found(on.subject(), RunBreach::NameTwice).at(on.middle())
            });
            let both = [(r.x0, Hand::Left), (r.x1, Hand::Right)];
            for (end, (x, hand)) in r.ends.iter().zip(both) {
                let receiver = end.receiver;
                let v = layout.job.courses.notch_clearance;
                let drawn = drawn(sides, (c, r), v, usize::from(hand == Hand::Right));
                let agrees =
                    drawn.contains(&receiver) || (drawn.is_empty() && receiver == at_fixture);
                rule.case(agrees, || {
                    let drawn = drawn.into_iter().collect();
                    let breach = RunBreach::EndReceiver { hand, receiver, drawn };
                    found(on.subject(), breach).at(on.at(x))
                });
            }
        }
    }
    rule.done()
}

/// The plumb and sloped sides of a field by the courses they pass.
fn by_course<'a>(layout: &LaidHouse, w: &'a LaidWall) -> BTreeMap<i32, Vec<&'a LaidEdge>> {
    let mut out: BTreeMap<i32, Vec<&LaidEdge>> = BTreeMap::new();
    let index = |y: f64| course_at(layout, y);
    let v = layout.job.courses.notch_clearance;
    for e in &w.edges {
        let (low, high) = (e.from[1].min(e.to[1]), e.from[1].max(e.to[1]));
        if high - low > SAME {
            // What is kept clear of under it may reach into the course below.
            let past = if e.opening.is_some() { v } else { 0.0 };
            for i in index(low - past + SAME)..=index(high + past - SAME) {
                out.entry(i).or_default().push(e);
            }
        }
    }
    out
}

/// What takes panels along the sides that bound a run on one hand.
fn drawn(
    sides: &[&LaidEdge],
    (c, r): (&LaidCourse, &LaidRun),
    v: f64,
    hand: usize,
) -> BTreeSet<Receiver> {
    let out = if hand == 0 { -r.gap } else { r.gap };
    let outermost = if hand == 0 { f64::min } else { f64::max };
    // The field lies on the left hand of its sides: a left side runs down.
    let faces = |e: &&&LaidEdge| (e.to[1] < e.from[1]) == (hand == 0);
    // Heights at which the run shows: a thin strip ends short of what it stands against.
    let heights = || r.pieces.iter().flat_map(|p| &p.outline).map(|q| q[1]);
    let mut corners: Vec<f64> = heights().collect();
    corners.sort_by(f64::total_cmp);
    // Between two corners of its own or of a side it ends at one side.
    let between = |low: f64, high: f64| {
        let inside = corners.iter().copied().filter(|y| *y > low && *y < high);
        let ys: Vec<f64> = std::iter::once(low).chain(inside).chain([high]).collect();
        let parts = ys.windows(2).filter(|w| w[1] - w[0] > SAME).map(|w| (w[0] + w[1]) / 2.0);
        parts.collect::<Vec<f64>>()
    };
    let foot = heights().fold(f64::INFINITY, f64::min).max(c.bottom);
    let head = heights().fold(f64::NEG_INFINITY, f64::max).min(c.top);
    sides
        .iter()
        .filter(faces)
        .filter(|e| {
            let low = e.from[1].min(e.to[1]).max(foot);
            let high = e.from[1].max(e.to[1]).min(head);
            over_or_under(e, r, (foot, head), v, hand)
                || low < high
                    && between(low, high).into_iter().any(|y| {
                        let x = e.from[0]
                            + (y - e.from[1]) / (e.to[1] - e.from[1]) * (e.to[0] - e.from[0]);
                        let ends = r.pieces.iter().filter_map(|p| bound(&p.outline, y, hand));
                        // Where it leans panels end square, as far in as it comes in the course.
                        let step = leans(e) * (c.top - c.bottom);
                        ends.reduce(outermost).is_some_and(|b| (b + out - x).abs() < NEAR + step)
                    })
        })
        .map(|e| e.receiver)
        .collect()
}

/// How far a corner, or another upright side, leans for an inch up.
fn leans(e: &LaidEdge) -> f64 {
    let (run, rise) = ((e.to[0] - e.from[0]).abs(), (e.to[1] - e.from[1]).abs());
    if e.opening.is_none() && runs_upright(e.from, e.to) { run / rise } else { 0.0 }
}

/// Whether a run ends all along under or over a side of an opening that is flatter than 45 degrees: by
/// the clearance kept there.
fn over_or_under(e: &LaidEdge, r: &LaidRun, (foot, head): (f64, f64), v: f64, hand: usize) -> bool {
    let (dx, dy) = (e.to[0] - e.from[0], e.to[1] - e.from[1]);
    if e.opening.is_none() || dy.abs() > dx.abs() {
        return false;
    }
    // The field lies on the left hand: under a side that runs to the left.
    let shift = if dx < 0.0 { -v } else { v };
    let low = (e.from[1].min(e.to[1]) + shift).max(foot);
    let high = (e.from[1].max(e.to[1]) + shift).min(head);
    let outermost = if hand == 0 { f64::min } else { f64::max };
    low < high
        && [0.1, 0.5, 0.9].into_iter().map(|t| low + t * (high - low)).any(|y| {
            let x = e.from[0] + (y - shift - e.from[1]) / dy * dx;
            let ends = r.pieces.iter().filter_map(|p| bound(&p.outline, y, hand));
            ends.reduce(outermost).is_some_and(|b| (b - x).abs() < NEAR)
        })
}

/// The leftmost or rightmost place of a ring at a height.
fn bound(ring: &[Xy], y: f64, hand: usize) -> Option<f64> {
    let crossings = (0..ring.len()).filter_map(|i| {
        let (a, b) = (ring[i], ring[(i + 1) % ring.len()]);
        ((a[1] > y) != (b[1] > y)).then(|| a[0] + (y - a[1]) / (b[1] - a[1]) * (b[0] - a[0]))
    });
    crossings.reduce(if hand == 0 { f64::min } else { f64::max })
}
