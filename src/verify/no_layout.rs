//! Violations of seam rules that no layout avoids: proven here by reasoning of the check's own, from the
//! runs and the rules alone; what the seam search says of a conflict is not asked.
//!
//! A violation is held apart where the runs of a few courses round it have no layout at all. Of each such
//! proof one run is left out of all that follow, so that one conflict does not excuse whatever else
//! stands near: where the others could keep the rule, that they do not is a failure.
//!
//! A proof narrows for each run where its first seam may stand to what some place of every near run goes
//! with, and parts the widest range in two where that does not decide it. Ranges are wider than the rules
//! by the check's tolerance; where one stays, nothing is proven.

use std::collections::{BTreeMap, BTreeSet};

use super::named::{self, RunOn};
use super::scan::Spans;
use super::seam_options::{Part, parts};
use super::seam_ranges::{halves, reach, seams, supported};
use super::tolerance::SAME;
use crate::layout::breach::Breach;
use crate::layout::breach::piece::RunBreach;
use crate::layout::laid::LaidHouse;
use crate::layout::rule::Rule;
use crate::layout::verified::RuleCheck;
use crate::layout::violation::{Subject, Violation};
use crate::layout::wall::LaidElevation;

/// Most courses looked at together.
const WINDOW: i32 = 7;
/// Pairs of seams compared in one proof at most; with more nothing is proven.
const MOST: usize = 300_000;
/// All violations together may take so many: a proof that takes longer tells no more of a layout that
/// is broken in hundreds of places.
const MOST_IN_ALL: usize = 3_000_000;
/// Most violations looked at: so many are a fault of more than one place.
const MOST_LOOKED_AT: usize = 500;
/// A range no wider than this is taken for a place, inches.
const NARROW: f64 = 1.0 / 32.0;

/// Moves violations that no layout avoids from the failures of their rules.
pub(super) fn hold_apart(layout: &LaidHouse, rules: &mut [RuleCheck]) {
    let is_of_seams = |r: &RuleCheck| {
        let of = [Rule::SeamStagger, Rule::JointStagger, Rule::ShortestPiece];
        of.contains(&r.rule) || [Rule::SeamsAtFixtures, Rule::JointsOnStuds].contains(&r.rule)
    };
    let broken = rules.iter().filter(|r| is_of_seams(r)).map(|r| r.violations.len()).sum::<usize>();
    if broken == 0 || broken > MOST_LOOKED_AT {
        return;
    }
    let mut proofs = Proofs::of(layout);
    for rule in rules.iter_mut().filter(|r| is_of_seams(r)) {
        let all = std::mem::take(&mut rule.violations);
        let counts = counts(&all);
        (rule.unavoidable, rule.violations) =
            all.into_iter().partition(|v| proofs.unavoidable(v, &counts));
    }
}

/// In how many violations each run is.
fn counts(all: &[Violation]) -> BTreeMap<String, usize> {
    let mut out = BTreeMap::new();
    for v in all {
        for subject in [Some(&v.subject), v.other.as_ref()].into_iter().flatten() {
            if let Subject::Run { run } = subject {
                *out.entry(run.to_string()).or_default() += 1;
            }
        }
    }
    out
}

/// A run with its parts, and where it is.
struct Known<'a> {
    on: RunOn<'a>,
    /// None where there are too many ways to look at.
    parts: Option<Vec<Part>>,
}

/// What is proven of a layout.
struct Proofs<'a> {
    layout: &'a LaidHouse,
    runs: BTreeMap<&'a str, Known<'a>>,
    /// Runs that must break a rule: left out of every further proof.
    given_up: BTreeSet<String>,
    left: usize,
}

impl<'a> Proofs<'a> {
    fn of(layout: &'a LaidHouse) -> Self {
        let known = |on: RunOn<'a>| (on.run.id.as_str(), Known { on, parts: parts(layout, &on) });
        let runs = named::runs(layout).map(known).collect();
        Proofs { layout, runs, given_up: BTreeSet::new(), left: MOST_IN_ALL }
    }

    /// Whether no layout avoids a violation.
    fn unavoidable(&mut self, v: &Violation, counts: &BTreeMap<String, usize>) -> bool {
        match (&v.subject, &v.other, &v.breach) {
            (
                Subject::Run { run: a },
                Some(Subject::Run { run: b }),
                Breach::Run(RunBreach::SeamsNear { .. }),
            ) => self.pair(a, b, counts),
            (Subject::Piece { piece }, ..) => {
                let has = |k: &&Known| k.on.run.pieces.iter().any(|p| p.mark == *piece);
                self.runs.values().find(has).is_some_and(has_no_place)
            }
            (Subject::Run { run }, ..) => self.runs.get(run.as_str()).is_some_and(has_no_place),
            _ => false,
        }
    }

    /// Whether the courses round two runs have no layout.
    fn pair(&mut self, a: &str, b: &str, counts: &BTreeMap<String, usize>) -> bool {
        if self.given_up.contains(a) || self.given_up.contains(b) {
            return true;
        }
        let (Some(first), Some(second)) = (self.runs.get(a), self.runs.get(b)) else {
            return false;
        };
        let elevation = first.on.elevation;
        let (one, other) = (first.on.course.index, second.on.course.index);
        let (low, high) = (one.min(other), one.max(other));
        let proven = (high - low + 1..=WINDOW).any(|size| {
            (high - size + 1..=low).any(|from| {
                let near = self.near(elevation, (from, from + size - 1), &[a, b]);
                near.is_some_and(|near| self.has_no_layout(&near))
            })
        });
        if proven {
            let in_more = counts.get(a) > counts.get(b);
            self.given_up.insert(if in_more { a } else { b }.to_owned());
        }
        proven
    }

    /// The parts of runs in these courses that touch these runs through near courses. `None` where one
    /// of them has too many ways to look at.
    fn near(
        &self,
        elevation: &LaidElevation,
        (low, high): (i32, i32),
        runs: &[&str],
    ) -> Option<Vec<Part>> {
        let boards = self.layout.job.siding().joints.is_on_studs();
        let inside = |k: &&Known| {
            let course = k.on.course.index;
            std::ptr::eq(k.on.elevation, elevation) && course >= low && course <= high
        };
        let all: Vec<&Known> = self
            .runs
            .iter()
            .filter(|(id, _)| !self.given_up.contains(**id))
            .map(|(_, k)| k)
            .filter(inside)
            .collect();
        let mut taken: BTreeSet<&str> = runs.iter().copied().collect();
        let mut todo: Vec<&str> = runs.to_vec();
        while let Some(run) = todo.pop() {
            let Some(from) = self.runs.get(run) else { continue };
            for k in &all {
                // Joints of boards keep off those of their own wall alone.
                let walls = !boards || k.on.wall.id == from.on.wall.id;
                if walls && self.touch(from, k) && taken.insert(&k.on.run.id) {
                    todo.push(&k.on.run.id);
                }
            }
        }
        let mut out = Vec::new();
        for k in all.iter().filter(|k| taken.contains(k.on.run.id.as_str())) {
            out.extend(k.parts.clone()?);
        }
        let fixed = self.fixed(elevation);
        let (apart, clear) = self.rule();
        for part in &mut out {
            // A seam that a fixture fixes stands where it is: the others keep off it.
            let near = fixed.iter().filter(|(c, _)| *c != part.course);
            let near = near.filter(|(c, _)| (c - part.course).abs() <= clear);
            let off: Vec<(f64, f64)> = near.map(|(_, x)| (x - apart, x + apart)).collect();
            part.patterns.iter_mut().for_each(|p| p.bar(&off));
            part.patterns.retain(|p| !p.spans.is_empty());
        }
        Some(out)
    }

    fn touch(&self, a: &Known, b: &Known) -> bool {
        let (apart, clear) = self.rule();
        let courses = (a.on.course.index - b.on.course.index).abs();
        courses > 0
            && courses <= clear
            && a.on.run.x0 - apart < b.on.run.x1
            && b.on.run.x0 - apart < a.on.run.x1
    }

    /// Least distance sideways, a little less, and clear courses.
    fn rule(&self) -> (f64, i32) {
        let (job, boards) = (&self.layout.job, &self.layout.job.boards);
        let apart = if job.siding().joints.is_on_studs() {
            f64::from(boards.studs_apart) * boards.stud_spacing
        } else {
            job.seams.stagger
        };
        (apart - 2.0 * SAME, i32::try_from(job.seams.clear_courses).unwrap_or(i32::MAX))
    }

    fn fixed(&self, elevation: &LaidElevation) -> Vec<(i32, f64)> {
        let of = self.runs.values().filter(|k| std::ptr::eq(k.on.elevation, elevation));
        of.flat_map(|k| k.on.run.fixed.iter().map(|x| (k.on.course.index, *x))).collect()
    }

    /// Whether no places of all these parts go together.
    fn has_no_layout(&mut self, parts: &[Part]) -> bool {
        let (apart, clear) = self.rule();
        let mut budget = MOST.min(self.left);
        let before = budget;
        let ranges: Vec<Vec<Spans>> =
            parts.iter().map(|p| p.patterns.iter().map(|q| q.spans.clone()).collect()).collect();
        let found = none(parts, ranges, (apart, clear), &mut budget);
        self.left -= before - budget;
        found
    }
}

/// Whether a run has a part without a lawful place for its seams.
fn has_no_place(k: &Known) -> bool {
    let without = |parts: &Vec<Part>| parts.iter().any(|p| p.patterns.is_empty());
    k.parts.as_ref().is_some_and(without)
}

/// Whether nothing is left of some part's ranges, however they are parted. False where that cannot be
/// told.
fn none(parts: &[Part], mut ranges: Vec<Vec<Spans>>, rule: (f64, i32), budget: &mut usize) -> bool {
    match narrowed(parts, &mut ranges, rule, budget) {
        Some(true) => return true,
        Some(false) => {}
        None => return false,
    }
    // The widest, whichever part and pattern it is of; many ranges of one part are as wide as all.
    let width = |of: &Vec<Spans>| -> f64 {
        let all = of.iter().flatten();
        all.clone().map(|s| s.1 - s.0).sum::<f64>() + NARROW * (all.count() as f64 - 1.0)
    };
    let widest = (0..parts.len()).max_by(|a, b| width(&ranges[*a]).total_cmp(&width(&ranges[*b])));
    let Some(part) = widest.filter(|p| width(&ranges[*p]) > NARROW) else { return false };
    let [low, high] = halves(&ranges[part]);
    [low, high].into_iter().all(|half| {
        let mut next = ranges.clone();
        next[part] = half;
        none(parts, next, rule, budget)
    })
}

/// Takes off every part's ranges what goes with no place of a near part, over and over as long as it
/// takes much. Whether nothing is left of one; none where that takes more than there is to spend.
fn narrowed(
    parts: &[Part],
    ranges: &mut [Vec<Spans>],
    (apart, clear): (f64, i32),
    budget: &mut usize,
) -> Option<bool> {
    let empty = |of: &Vec<Spans>| of.iter().all(Vec::is_empty);
    let sum = |of: &Vec<Spans>| -> f64 { of.iter().flatten().map(|s| s.1 - s.0).sum() };
    if ranges.iter().any(empty) {
        return Some(true);
    }
    for _ in 0..50 {
        let mut taken = 0.0;
        for i in 0..parts.len() {
            for j in (0..parts.len()).filter(|j| *j != i) {
                let courses = (parts[i].course - parts[j].course).abs();
                if courses == 0 || courses > clear || !reach(&parts[i], &parts[j], apart) {
                    continue;
                }
                let work = seams(&parts[i], &ranges[i]) * seams(&parts[j], &ranges[j]);
                *budget = budget.checked_sub(1 + work)?;
                let before = sum(&ranges[i]);
                let kept: Vec<Spans> = (0..ranges[i].len())
                    .map(|p| {
                        let own = (&parts[i].patterns[p], &ranges[i][p]);
                        supported(own, (&parts[j].patterns, &ranges[j]), apart)
                    })
                    .collect();
                ranges[i] = kept;
                taken += before - sum(&ranges[i]);
                if empty(&ranges[i]) {
                    return Some(true);
                }
            }
        }
        if taken < NARROW {
            break;
        }
    }
    Some(false)
}

#[cfg(test)]
mod tests {
    use super::super::seam_options::Pattern;
    use super::*;

    /// A run from 0 that takes one seam, somewhere between two places.
    fn part(course: i32, spans: &[(f64, f64)]) -> Part {
        let pattern = Pattern { offsets: vec![0.0], spans: spans.to_vec() };
        Part { course, reach: (0.0, 200.0), patterns: vec![pattern] }
    }

    fn proven(parts: &[Part], apart: f64, clear: i32) -> bool {
        let ranges = parts.iter().map(|p| vec![p.patterns[0].spans.clone()]).collect();
        none(parts, ranges, (apart, clear), &mut MOST.clone())
    }

    #[test]
    fn three_seams_a_stagger_apart_need_twice_the_stagger() {
        // By hand: three places in a range, each 24 from the others, take 48.
        let three = |width: f64| [0, 1, 2].map(|c| part(c, &[(50.0, 50.0 + width)]));
        assert!(proven(&three(47.0), 24.0, 2));
        assert!(!proven(&three(49.0), 24.0, 2));
        // Only neighbors keep apart: two places do.
        assert!(!proven(&three(47.0), 24.0, 1));
        assert!(proven(&three(23.0), 24.0, 1));
    }

    #[test]
    fn agrees_with_every_inch_tried() {
        // Ranges whose ends are whole inches and a stagger that is not: any layout may be moved to
        // whole inches or fails by more than the narrowest range.
        let (mut yes, mut no) = (0, 0);
        let mut s = 7u64;
        let mut next = |n: u64| {
            s = s.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1);
            ((s >> 33) % n) as i32
        };
        for _ in 0..200 {
            let apart = 6 + next(12);
            let spans: Vec<(i32, i32)> = (0..4)
                .map(|_| {
                    let low = next(20);
                    (low, low + 1 + next(24))
                })
                .collect();
            let clear = 1 + next(3);
            let fits = |at: &[i32], x: i32| {
                at.iter()
                    .enumerate()
                    .all(|(i, y)| at.len() as i32 - i as i32 > clear || (x - y).abs() >= apart)
            };
            let mut laid: Vec<Vec<i32>> = vec![Vec::new()];
            for (low, high) in &spans {
                let grown = laid.iter().flat_map(|at| {
                    let places = (*low..=*high).filter(|x| fits(at, *x));
                    places.map(|x| at.iter().copied().chain([x]).collect::<Vec<i32>>())
                });
                laid = grown.collect();
            }
            let parts: Vec<Part> = (0..)
                .zip(&spans)
                .map(|(c, (a, b))| part(c, &[(f64::from(*a), f64::from(*b))]))
                .collect();
            // A little less than the stagger, as the check reckons.
            let told = proven(&parts, f64::from(apart) - 0.01, clear);
            assert_eq!(told, laid.is_empty(), "{spans:?} {apart} {clear}");
            yes += usize::from(told);
            no += usize::from(!told);
        }
        assert!(yes > 20 && no > 20, "{yes} proven, {no} not");
    }
}
