//! Seams at openings, in stairs and in ladders, counted again: what is told of them is true, and the least
//! that is told is no more than what is laid. Each that stands on a jamb line is told with its place.

use super::claims::Claims;
use super::named;
use super::rule::{Cases, count, found};
use super::tolerance::{HEM_CUT, SAME};
use crate::geom::vocabulary::Xy;
use crate::layout::bound::SeamPlace;
use crate::layout::breach::count::{CountBreach, SeamCount};
use crate::layout::rule::Rule;
use crate::layout::verified::RuleCheck;
use crate::layout::violation::Subject;
use crate::layout::wall::LaidOpening;

/// On a jamb line, inches.
const ON_LINE: f64 = 1.5;

/// A seam that misses a distance by no more keeps it, inches: 1/128, as the counts are told. A notch's
/// end at a slant or a curve lies on no grid, so a finer one here would count other seams. An opening that
/// reaches no farther into a course is not cut round.
const MISSED: f64 = 1.0 / 128.0;

/// A seam: its elevation, course and place.
type At = (usize, i32, f64);

pub(super) fn check(layout: &Claims) -> RuleCheck {
    let mut rule = Cases::new(Rule::SeamCounts);
    let said = &layout.bound.seams;
    let (mut all, mut in_notches, mut near): (Vec<At>, usize, usize) = (Vec::new(), 0, 0);
    let mut on: Vec<(&str, i32, f64)> = Vec::new();
    let apart = layout.job.seams.jamb;
    for r in named::runs(layout) {
        let e = layout.elevations.iter().position(|e| std::ptr::eq(e, r.elevation));
        let (c, run) = (r.course, r.run);
        let inside = |x: f64| x > run.x0 + run.gap && x < run.x1 - run.gap;
        for s in &run.seams {
            all.push((e.unwrap_or(0), c.index, *s));
            let off = |v: &f64| (v - s).abs();
            let lines = || c.avoid.iter().filter(|v| inside(**v));
            near += usize::from(lines().any(|v| off(v) < apart - MISSED));
            if lines().any(|v| off(v) <= ON_LINE + MISSED) {
                on.push((&r.wall.id, c.index, *s));
            }
            let room = layout.job.courses.notch_clearance.max(HEM_CUT);
            let bites = |o: &LaidOpening| {
                let b = within(&o.outline, c.bottom, c.top + room)?;
                let spanned = b.0 < run.x1 - run.gap - MISSED && b.1 > run.x0 + run.gap + MISSED;
                let into = o.sill < c.top + room - MISSED && o.head > c.bottom + MISSED;
                (spanned && into).then_some(b)
            };
            let in_one = |b: (f64, f64)| *s > b.0 - apart + MISSED && *s < b.1 + apart - MISSED;
            in_notches += usize::from(r.wall.openings.iter().filter_map(bites).any(in_one));
        }
    }
    let (stairs, ladders) = patterns(&all, layout.job.seams.clear_courses as i32);
    let at = said.at_openings;
    for (what, says, is) in [
        (SeamCount::Seams, said.seams, all.len()),
        (SeamCount::InNotches, at.in_notches, in_notches),
        (SeamCount::OnJambs, at.on_jambs, on.len()),
        (SeamCount::NearJambs, at.near_jambs, near),
        (SeamCount::Stairs, said.stairs, stairs),
        (SeamCount::Ladders, said.ladders, ladders),
    ] {
        rule.case(says == is, || {
            let v = found(Subject::House, CountBreach::Seams { what });
            v.measured(count(says)).exactly(count(is))
        });
    }
    told(&mut rule, layout, &on);
    least(&mut rule, layout);
    rule.done()
}

/// Each seam on a jamb line is told.
fn told(rule: &mut Cases, layout: &Claims, on: &[(&str, i32, f64)]) {
    for (wall, course, x) in on {
        let same =
            |p: &&SeamPlace| *p.wall == **wall && p.course == *course && (p.x - x).abs() <= SAME;
        let told = layout.bound.seams.on_jambs.iter().any(|p| same(&p));
        rule.case(told, || {
            let place = layout.walls().find(|(_, w)| *w.id == **wall);
            let at = place.and_then(|(e, w)| {
                let c = w.courses.iter().find(|c| c.index == *course)?;
                named::place(&e.name, [*x, (c.bottom + c.top) / 2.0])
            });
            found(named::course(wall, *course), CountBreach::SeamOnJambUntold).at(at)
        });
    }
}

/// The least is no more than there is.
fn least(rule: &mut Cases, layout: &Claims) {
    let said = &layout.bound.seams;
    let Some(least) = said.least else { return };
    let at = said.at_openings;
    for (what, most, is) in [
        (SeamCount::InNotches, least.in_notches, at.in_notches),
        (SeamCount::OnJambs, least.on_jambs, at.on_jambs),
        (SeamCount::NearJambs, least.near_jambs, at.near_jambs),
    ] {
        rule.case(most <= is, || {
            let v = found(Subject::House, CountBreach::SeamsLeast { what });
            v.measured(count(most)).at_most(count(is))
        });
    }
    in_turn(rule, layout);
}

/// The least in turn is no more than there is of the first sort in which the two differ, and no less than the
/// least of the first sort by itself.
fn in_turn(rule: &mut Cases, layout: &Claims) {
    let said = &layout.bound.seams;
    let (Some(turn), Some(least)) = (said.least_in_turn, said.least) else { return };
    let at = said.at_openings;
    let sorts = [
        (SeamCount::InNotches, turn.in_notches, at.in_notches),
        (SeamCount::OnJambs, turn.on_jambs, at.on_jambs),
        (SeamCount::NearJambs, turn.near_jambs, at.near_jambs),
    ];
    let differs = sorts.into_iter().find(|(_, most, is)| most != is);
    let over = differs.filter(|(_, most, is)| most > is);
    let (what, most, is) = over.unwrap_or(sorts[0]);
    rule.case(over.is_none(), || {
        let v = found(Subject::House, CountBreach::SeamsLeast { what });
        v.measured(count(most)).at_most(count(is))
    });
    rule.case(turn.in_notches <= least.in_notches, || {
        let v = found(Subject::House, CountBreach::SeamsLeast { what: SeamCount::InNotches });
        v.measured(count(turn.in_notches)).at_most(count(least.in_notches))
    });
}

/// From where to where a ring reaches between two heights; what only touches one of them is not between.
fn within(ring: &[Xy], low: f64, high: f64) -> Option<(f64, f64)> {
    let mut xs: Vec<f64> = Vec::new();
    for i in 0..ring.len() {
        let (a, b) = (ring[i], ring[(i + 1) % ring.len()]);
        if a[1] > low && a[1] < high {
            xs.push(a[0]);
        }
        let over_low = (a[1] > low) != (b[1] > low);
        let under_high = (a[1] < high) != (b[1] < high);
        for y in [over_low.then_some(low), under_high.then_some(high)].into_iter().flatten() {
            xs.push(a[0] + (y - a[1]) / (b[1] - a[1]) * (b[0] - a[0]));
        }
    }
    let least = xs.iter().copied().reduce(f64::min)?;
    Some((least, xs.iter().copied().fold(least, f64::max)))
}

/// Stairs: three seams of courses one over the other, steps under 5 ft that differ by less than 2 in.
/// Ladders: two less than 3 in from one line with the clear courses between.
fn patterns(all: &[At], clear: i32) -> (usize, usize) {
    let mut by = std::collections::BTreeMap::<(usize, i32), Vec<f64>>::new();
    for (e, course, x) in all {
        by.entry((*e, *course)).or_default().push(*x);
    }
    let none = Vec::new();
    let (mut stairs, mut ladders) = (0, 0);
    for ((e, course), middle) in &by {
        let over = |n: i32| by.get(&(*e, course + n)).unwrap_or(&none);
        // Seen from the middle one of three.
        for b in middle {
            for a in over(-1).iter().filter(|a| (*a - b).abs() < 60.0) {
                stairs += over(1).iter().filter(|c| (a + *c - 2.0 * b).abs() < 2.0).count();
            }
            ladders += over(clear + 1).iter().filter(|c| (*c - b).abs() < 3.0).count();
        }
    }
    (stairs, ladders)
}
