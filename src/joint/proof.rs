//! Whether some courses of a wall have any joints that keep every rule: stud by stud from the left, with
//! where each course was joined last.

use std::collections::BTreeSet;

use super::ask::Ask;
use super::exact;
use super::places::{gap, places, span};
use crate::geom::tol::ROUNDING;
use crate::model::joint::JointRules;
use crate::model::seam::SeamRules;

/// States held at a stud; with more nothing is proven.
const STATES: usize = 20_000;
/// Most courses looked at together.
const COURSES: usize = 5;

/// A run that needs joints.
struct Joined {
    from: f64,
    to: f64,
    /// Studs it may be joined on.
    studs: Vec<f64>,
    course: usize,
}

/// The fewest courses next to one another that have no layout, with a course of `bad` among them; `None`
/// if none was proven. All of one wall.
pub(super) fn without_layout(
    asks: &[&Ask],
    bad: &BTreeSet<i32>,
    rules: &SeamRules,
    joints: &JointRules,
) -> Option<Vec<i32>> {
    let levels: Vec<i32> =
        asks.iter().map(|a| a.course).collect::<BTreeSet<i32>>().into_iter().collect();
    let clear = i64::from(rules.clear_courses);
    for size in 1..=COURSES.min(levels.len()) {
        for window in levels.windows(size).filter(|w| w.iter().any(|c| bad.contains(c))) {
            // Courses farther apart say nothing of one another.
            let reach = i64::from(window[size - 1]) - i64::from(window[0]);
            if reach <= clear.max(0) && none(asks, window, rules, joints) {
                return Some(window.to_vec());
            }
        }
    }
    // Of many courses near one another it may be enough to count.
    for size in 2..=levels.len() {
        for window in levels.windows(size).filter(|w| w.iter().any(|c| bad.contains(c))) {
            let reach = i64::from(window[size - 1]) - i64::from(window[0]);
            if reach <= clear && too_many(asks, window, rules, joints) {
                return Some(window.to_vec());
            }
        }
    }
    // Courses that leave one another room two by two may leave none to all: whatever they are joined by, one of
    // them is bad.
    exact::without_layout(asks, rules, joints)
}

/// Whether more runs must be joined within a board's length of some stud than studs there take joints.
fn too_many(asks: &[&Ask], courses: &[i32], rules: &SeamRules, joints: &JointRules) -> bool {
    let runs = joined(asks, courses, rules, joints);
    let all = studs_of(&runs);
    let (half, reach) = (gap(rules) / 2.0, rules.stock() + gap(rules));
    let ends = runs.iter().map(|r| r.from - half);
    let starts: Vec<f64> = all.iter().copied().chain(ends).collect();
    starts.iter().any(|from| {
        // A run that covers all of it has a joint in it: no board is longer.
        let to = from + reach;
        let need = runs
            .iter()
            .filter(|r| r.from - half <= from + ROUNDING && r.to + half >= to + 2.0 * ROUNDING);
        let (mut last, mut room) = (f64::NEG_INFINITY, 0);
        for x in all.iter().filter(|x| **x > from + ROUNDING && **x <= to + 2.0 * ROUNDING) {
            if x - last >= joints.apart - ROUNDING {
                (last, room) = (*x, room + 1);
            }
        }
        need.count() > room
    })
}

fn joined(asks: &[&Ask], courses: &[i32], rules: &SeamRules, joints: &JointRules) -> Vec<Joined> {
    let mut runs = Vec::new();
    for a in asks {
        let Some(course) = courses.iter().position(|c| *c == a.course) else { continue };
        let (from, to) = span(a.run, rules);
        if to - from <= rules.stock() + ROUNDING {
            continue;
        }
        let studs = places(a.run, rules, joints.studs.get(&a.run.id).map(|s| s.1));
        runs.push(Joined { from, to, studs, course });
    }
    runs
}

fn studs_of(runs: &[Joined]) -> Vec<f64> {
    let mut all: Vec<f64> = runs.iter().flat_map(|r| r.studs.iter().copied()).collect();
    all.sort_by(f64::total_cmp);
    all.dedup_by(|a, b| (*a - *b).abs() < ROUNDING);
    all
}

/// Whether these courses, all near one another, have no joints.
fn none(asks: &[&Ask], courses: &[i32], rules: &SeamRules, joints: &JointRules) -> bool {
    let runs = joined(asks, courses, rules, joints);
    let all = studs_of(&runs);
    let checked = Checked { runs: &runs, all: &all, rules, apart: joints.apart };
    // The last joint of each run, by its stud's number from 1; 0 where there is none yet.
    let mut states: BTreeSet<Vec<u32>> = BTreeSet::from([vec![0; runs.len()]]);
    for n in 0..all.len() {
        let mut next = BTreeSet::new();
        for s in &states {
            let joined = (0..runs.len()).filter(|r| checked.may_join(s, *r, n)).map(|r| {
                let mut with = s.clone();
                with[r] = n as u32 + 1;
                with
            });
            next.extend(joined.chain([s.clone()]).filter(|s| checked.goes_on(s, n + 1)));
        }
        if next.len() > STATES {
            return false;
        }
        states = next;
    }
    states.is_empty() || !states.iter().any(|s| checked.ends(s))
}

struct Checked<'a> {
    runs: &'a [Joined],
    all: &'a [f64],
    rules: &'a SeamRules,
    apart: f64,
}

impl Checked<'_> {
    /// Where the board that is open in a run begins.
    fn begins(&self, state: &[u32], run: usize) -> f64 {
        match state[run] {
            0 => self.runs[run].from,
            n => self.all[n as usize - 1] + gap(self.rules) / 2.0,
        }
    }

    fn may_join(&self, state: &[u32], run: usize, n: usize) -> bool {
        let x = self.all[n];
        let own = &self.runs[run];
        if !own.studs.iter().any(|s| (s - x).abs() < ROUNDING) {
            return false;
        }
        let length = x - gap(self.rules) / 2.0 - self.begins(state, run);
        let fits =
            length <= self.rules.stock() + ROUNDING && length >= self.rules.shortest - ROUNDING;
        fits && self.runs.iter().zip(state).all(|(other, last)| {
            other.course == own.course
                || *last == 0
                || x - self.all[*last as usize - 1] >= self.apart - ROUNDING
        })
    }

    /// Whether every run can still be joined on a stud from this number on, or be ended.
    fn goes_on(&self, state: &[u32], from: usize) -> bool {
        let half = gap(self.rules) / 2.0;
        (0..self.runs.len()).all(|r| {
            let begins = self.begins(state, r);
            let reaches = begins + self.rules.stock() + ROUNDING;
            let next = self.all.get(from).copied();
            self.runs[r].to <= reaches || next.is_some_and(|x| x - half <= reaches)
        })
    }

    fn ends(&self, state: &[u32]) -> bool {
        (0..self.runs.len()).all(|r| {
            let length = self.runs[r].to - self.begins(state, r);
            state[r] > 0
                && length <= self.rules.stock() + ROUNDING
                && length >= self.rules.shortest - ROUNDING
        })
    }
}

#[cfg(test)]
mod tests {
    use std::collections::{BTreeMap, BTreeSet};

    use super::without_layout;
    use crate::joint::ask::asks;
    use crate::joint::exact;
    use crate::joint::mend::mended;
    use crate::model::joint::{JointRules, Studs};
    use crate::model::seam::{
        SeamCourse, SeamElevation, SeamProblem, SeamRules, SeamRun, StockWeight,
    };

    /// Courses of one run each, boards of 64 in on studs every 16 in, no joint on a stud of a near one.
    fn wall(courses: usize, width: f64, clear: u32) -> (SeamProblem, JointRules) {
        let stocks = vec![StockWeight::single(64.0, 1)];
        let gapless =
            SeamRules { lap: 0.0, gap: 0.0, kerf: 0.0, shortest: 8.0, ..SeamRules::usual(64.0) };
        let rules = SeamRules { stocks, clear_courses: clear, ..gapless };
        let course = |i: usize| SeamCourse {
            index: i as i32,
            runs: vec![SeamRun {
                id: i.to_string().into(),
                wall: 0,
                x0: 0.0,
                x1: width,
                fixed: vec![],
                barred: vec![],
                notched: Vec::new(),
            }],
            ..Default::default()
        };
        let courses: Vec<SeamCourse> = (0..courses).map(course).collect();
        let studs = Studs { first: 0.0, spacing: 16.0 };
        let of = courses.iter().map(|c| (c.runs[0].id.clone(), (0, studs)));
        let joints = JointRules { apart: 16.0, studs: of.collect::<BTreeMap<_, _>>() };
        let elevation = SeamElevation { courses, ..Default::default() };
        (SeamProblem { rules, elevations: vec![elevation], waiting: Default::default() }, joints)
    }

    #[test]
    fn joints_are_found_or_proven_to_have_no_place() {
        // A run of 200 in takes a joint on each fourth stud at least: four courses may take turns, a
        // fifth near all of them finds every stud taken.
        for (courses, clear, can) in [(4, 3, true), (9, 3, true), (5, 4, false), (12, 11, false)] {
            let (problem, joints) = wall(courses, 200.0, clear);
            let asks = asks(&problem, &joints);
            let none = vec![Vec::new(); courses];
            let found = mended(&asks, &none, &problem.rules, &joints);
            assert_eq!(found.is_some(), can, "{courses} {clear}");
            let all: Vec<_> = asks.iter().collect();
            let bad: BTreeSet<i32> = (0..courses as i32).collect();
            let proven = without_layout(&all, &bad, &problem.rules, &joints);
            assert_eq!(proven.is_none(), can, "{courses} {clear}: {proven:?}");
        }
        // What the exact search finds or proves by itself agrees.
        for (courses, clear, can) in [(4, 3, true), (9, 3, true), (5, 4, false)] {
            let (problem, joints) = wall(courses, 200.0, clear);
            let asks = asks(&problem, &joints);
            let all: Vec<_> = asks.iter().collect();
            let found = exact::laid(&asks, &problem.rules, &joints);
            assert_eq!(found.is_some(), can, "{courses} {clear}");
            let none = exact::without_layout(&all, &problem.rules, &joints);
            assert_eq!(none, (!can).then(|| (0..courses as i32).collect()), "{courses} {clear}");
            // Joints of near courses on other studs, and no board longer than 64 in.
            for (i, joints) in found.iter().flatten().enumerate() {
                let near = found.iter().flatten().skip(i + 1).take(clear as usize).flatten();
                assert!(near.clone().all(|y| joints.iter().all(|x| (x - y).abs() > 15.9)));
                let ends = [&[0.0], &joints[..], &[200.0]].concat();
                assert!(ends.windows(2).all(|w| w[1] - w[0] <= 64.001), "{ends:?}");
            }
        }
        // No stud is near enough to the ends of a run that boards of this length could join.
        let (problem, mut joints) = wall(1, 100.0, 3);
        joints.studs.values_mut().for_each(|s| s.1 = Studs { first: 4.0, spacing: 200.0 });
        let asks = asks(&problem, &joints);
        assert!(mended(&asks, &[vec![]], &problem.rules, &joints).is_none());
        let all: Vec<_> = asks.iter().collect();
        let proven = without_layout(&all, &BTreeSet::from([0]), &problem.rules, &joints);
        assert_eq!(proven, Some(vec![0]));
    }
}
