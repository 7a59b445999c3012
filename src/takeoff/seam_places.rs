//! Where seams stand beside openings and one another, counted from the layout.

use std::collections::BTreeMap;

use crate::geom::strip::reach_in_band;
use crate::geom::tol::SAME;
use crate::geom::vocabulary::Point;
use crate::layout::bound::{SeamPlace, SeamPlaces};
use crate::layout::course::{LaidCourse, LaidRun};
use crate::layout::laid::LaidHouse;
use crate::layout::wall::{LaidElevation, LaidOpening, LaidWall};
use crate::model::notch::LEAST_HEM_CUT;
use crate::model::seam::{AtOpenings, IN_LINE, LeastAtOpenings, ON_JAMB, STAIR};

/// Counts seams; `least` holds the fewest at openings of those that no fixture fixes.
pub(super) fn seam_places(layout: &LaidHouse, least: Option<LeastAtOpenings>) -> SeamPlaces {
    let mut out = SeamPlaces::default();
    let mut fixed = AtOpenings::default();
    for (_, w) in layout.walls() {
        for c in &w.courses {
            for r in &c.runs {
                count(layout, (w, c, r), &mut out, &mut fixed);
            }
        }
    }
    for e in &layout.elevations {
        let (stairs, ladders) = patterns(e, layout.job.seams.clear_courses);
        out.stairs += stairs;
        out.ladders += ladders;
    }
    // What fixtures fix no layout avoids.
    let have = out.at_openings;
    let and_fixed = |l: AtOpenings| AtOpenings {
        in_notches: l.in_notches + fixed.in_notches,
        on_jambs: l.on_jambs + fixed.on_jambs,
        near_jambs: l.near_jambs + fixed.near_jambs,
    };
    out.least = least.map(|l| and_fixed(l.each)).map(|l| AtOpenings {
        in_notches: l.in_notches.min(have.in_notches),
        on_jambs: l.on_jambs.min(have.on_jambs),
        near_jambs: l.near_jambs.min(have.near_jambs),
    });
    out.least_in_turn = least.map(|l| and_fixed(l.in_turn).min(have));
    out
}

fn count(
    layout: &LaidHouse,
    (w, c, r): (&LaidWall, &LaidCourse, &LaidRun),
    out: &mut SeamPlaces,
    fixed: &mut AtOpenings,
) {
    if r.seams.is_empty() {
        return;
    }
    let wish = layout.job.seams.jamb - SAME;
    let (left, right) = (r.x0 + r.gap, r.x1 - r.gap);
    let clearance = layout.job.courses.notch_clearance;
    let notched: Vec<(f64, f64)> =
        w.openings.iter().filter_map(|o| notch(o, c, (left, right), clearance)).collect();
    let lines = || c.avoid.iter().filter(|v| **v > left && **v < right);
    for x in &r.seams {
        let at = AtOpenings {
            in_notches: usize::from(notched.iter().any(|n| *x > n.0 - wish && *x < n.1 + wish)),
            on_jambs: usize::from(lines().any(|v| (v - x).abs() <= ON_JAMB + SAME)),
            near_jambs: usize::from(lines().any(|v| (v - x).abs() < wish)),
        };
        out.seams += 1;
        let is_fixed = r.fixed.iter().any(|f| (f - x).abs() <= SAME);
        for sum in std::iter::once(&mut out.at_openings).chain(is_fixed.then_some(&mut *fixed)) {
            sum.in_notches += at.in_notches;
            sum.on_jambs += at.on_jambs;
            sum.near_jambs += at.near_jambs;
        }
        if at.on_jambs > 0 {
            out.on_jambs.push(SeamPlace { wall: w.id.clone(), course: c.index, x: *x });
        }
    }
}

/// From where to where an opening bites into a course's run: over its head, or under its sill with what
/// is cut off there.
fn notch(
    o: &LaidOpening,
    c: &LaidCourse,
    (left, right): (f64, f64),
    clearance: f64,
) -> Option<(f64, f64)> {
    let high = c.top + clearance.max(LEAST_HEM_CUT);
    let ring: Vec<Point> = o.outline.iter().map(|p| Point::new(p[0], p[1])).collect();
    let reaches = o.sill < high - SAME && o.head > c.bottom + SAME;
    let span = if reaches { reach_in_band(&ring, c.bottom, high) } else { None };
    span.filter(|s| s.0 < right - SAME && s.1 > left + SAME)
}

/// Stairs and ladders of an elevation.
fn patterns(e: &LaidElevation, clear: u32) -> (usize, usize) {
    let mut seams: BTreeMap<i32, Vec<f64>> = BTreeMap::new();
    for c in e.walls.iter().flat_map(|w| &w.courses) {
        seams.entry(c.index).or_default().extend(c.runs.iter().flat_map(|r| &r.seams));
    }
    let none = Vec::new();
    let at = |course: i32| seams.get(&course).unwrap_or(&none);
    let (alike, most) = (STAIR.0 as f64, STAIR.1 as f64);
    let (mut stairs, mut ladders) = (0, 0);
    for (course, here) in &seams {
        for a in here {
            for b in at(course + 1).iter().filter(|b| (*b - a).abs() < most) {
                let next = at(course + 2).iter();
                stairs += next.filter(|c| ((b - a) - (*c - b)).abs() < alike).count();
            }
            let line = at(course + clear as i32 + 1).iter();
            ladders += line.filter(|b| (*b - a).abs() < IN_LINE as f64).count();
        }
    }
    (stairs, ladders)
}
