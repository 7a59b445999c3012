//! Joints of one wall course by course from the bottom, with every way of joining that the courses under each
//! leave it: a layout where there is one, or the courses that have none. For walls that it is not too much for.

use std::collections::BTreeMap;

use super::ask::Ask;
use super::places::{gap, places, span};
use crate::geom::tol::ROUNDING;
use crate::model::joint::JointRules;
use crate::model::seam::SeamRules;

/// Ways of joining one course that are looked at; with more it is given up.
const WAYS: usize = 1000;
/// Pairs of a way of some courses and a way of the next that are compared in one search.
const COMPARED: usize = 2_000_000;

/// A way of joining the runs of one course: joints, each with its run.
type Way = Vec<(usize, f64)>;

/// The runs of one course.
struct Level {
    course: i32,
    ways: Vec<Way>,
}

/// What came of a search.
enum Found {
    /// A way of every level.
    Laid(Vec<usize>),
    /// No way of the levels up to this one.
    Nothing(usize),
    /// Too much to look at.
    Unknown,
}

/// The joints of every run of the house, none near another; `None` where a wall has none, or is too large.
pub(super) fn laid(asks: &[Ask], rules: &SeamRules, joints: &JointRules) -> Option<Vec<Vec<f64>>> {
    let mut walls: BTreeMap<usize, Vec<usize>> = BTreeMap::new();
    for (i, a) in asks.iter().enumerate() {
        walls.entry(a.wall).or_default().push(i);
    }
    let mut out = vec![Vec::new(); asks.len()];
    for on in walls.values() {
        let of: Vec<(usize, &Ask)> = on.iter().map(|i| (*i, &asks[*i])).collect();
        let levels = levels(&of, rules, joints)?;
        let Found::Laid(ways) = search(&levels, rules, joints) else { return None };
        for (level, way) in levels.iter().zip(ways) {
            level.ways[way].iter().for_each(|(run, x)| out[*run].push(*x));
        }
    }
    Some(out)
}

/// Courses of one wall, next to one another, that have no joints together; `None` where none are found.
pub(super) fn without_layout(
    asks: &[&Ask],
    rules: &SeamRules,
    joints: &JointRules,
) -> Option<Vec<i32>> {
    let of: Vec<(usize, &Ask)> = asks.iter().copied().enumerate().collect();
    let levels = levels(&of, rules, joints)?;
    let Found::Nothing(last) = search(&levels, rules, joints) else { return None };
    // The fewest of them that have none.
    let fails =
        |first: &usize| matches!(search(&levels[*first..=last], rules, joints), Found::Nothing(_));
    let first = (0..=last).rev().find(fails)?;
    Some(levels[first..=last].iter().map(|l| l.course).collect())
}

/// The courses of a wall, bottom up, with their ways; `None` where there are too many.
fn levels(of: &[(usize, &Ask)], rules: &SeamRules, joints: &JointRules) -> Option<Vec<Level>> {
    let mut courses: BTreeMap<i32, Vec<Way>> = BTreeMap::new();
    for (run, a) in of {
        let own = ways(*run, a, rules, joints)?;
        let ways = courses.entry(a.course).or_insert_with(|| vec![Way::new()]);
        if ways.len() * own.len() > WAYS {
            return None;
        }
        // Every way of this run beside every way of those before it.
        *ways = ways.iter().flat_map(|w| own.iter().map(|o| [&w[..], o].concat())).collect();
    }
    Some(courses.into_iter().map(|(course, ways)| Level { course, ways }).collect())
}

/// The ways of joining a run from which no joint can be left out: any other has one of them in it.
fn ways(run: usize, ask: &Ask, rules: &SeamRules, joints: &JointRules) -> Option<Vec<Way>> {
    let (from, to) = span(ask.run, rules);
    if to - from <= rules.stock() + ROUNDING {
        return Some(vec![Way::new()]);
    }
    let studs = places(ask.run, rules, joints.studs.get(&ask.run.id).map(|s| s.1));
    let half = gap(rules) / 2.0;
    let long = |a: f64, b: f64| b - a > rules.stock() + ROUNDING;
    let fits = |a: f64, b: f64| !long(a, b) && b - a >= rules.shortest - ROUNDING;
    let mut out = Vec::new();
    let mut open: Vec<Vec<f64>> = vec![Vec::new()];
    while let Some(set) = open.pop() {
        if out.len() + open.len() > WAYS {
            return None;
        }
        let starts = |n: usize| if n == 0 { from } else { set[n - 1] + half };
        let begins = starts(set.len());
        // The board before the last joint and the one after it would make one.
        let spare = |end: f64| !set.is_empty() && !long(starts(set.len() - 1), end);
        if !set.is_empty() && fits(begins, to) && !spare(to) {
            out.push(set.iter().map(|x| (run, *x)).collect());
        }
        for x in studs.iter().filter(|x| fits(begins, **x - half) && !spare(**x - half)) {
            open.push([&set[..], &[*x]].concat());
        }
    }
    Some(out)
}

/// Goes up the levels with every choice of ways, those that leave the same to the next as one.
fn search(levels: &[Level], rules: &SeamRules, joints: &JointRules) -> Found {
    let clear = i64::from(rules.clear_courses);
    let near = |a: &Level, b: &Level| i64::from(b.course) - i64::from(a.course) <= clear;
    let apart = |a: &Way, b: &Way| {
        a.iter().all(|(_, x)| b.iter().all(|(_, y)| (x - y).abs() >= joints.apart - ROUNDING))
    };
    // Choices so far: the way of a level, and the choice before it.
    let mut chosen: Vec<(usize, usize)> = Vec::new();
    // By the ways of the levels that are near the next one, the last choice.
    let mut states: BTreeMap<Vec<usize>, usize> = BTreeMap::from([(Vec::new(), usize::MAX)]);
    let mut compared = 0;
    for (n, level) in levels.iter().enumerate() {
        compared += states.len() * level.ways.len();
        if compared > COMPARED {
            return Found::Unknown;
        }
        let mut next: BTreeMap<Vec<usize>, usize> = BTreeMap::new();
        for (kept, before) in &states {
            let first = n - kept.len();
            for (w, way) in level.ways.iter().enumerate() {
                let clashes = |(k, o): (usize, &usize)| {
                    let under = &levels[first + k];
                    near(under, level) && !apart(&under.ways[*o], way)
                };
                if kept.iter().enumerate().any(clashes) {
                    continue;
                }
                let mut now = kept.clone();
                now.push(w);
                let over = levels.get(n + 1);
                let forgotten =
                    (first..=n).take_while(|k| !over.is_some_and(|o| near(&levels[*k], o)));
                now.drain(..forgotten.count());
                next.entry(now).or_insert_with(|| {
                    chosen.push((w, *before));
                    chosen.len() - 1
                });
            }
        }
        if next.is_empty() {
            return Found::Nothing(n);
        }
        states = next;
    }
    let mut at = states.values().next().copied().unwrap_or(usize::MAX);
    let mut ways = Vec::new();
    while let Some((way, before)) = chosen.get(at) {
        ways.push(*way);
        at = *before;
    }
    ways.reverse();
    Found::Laid(ways)
}
