//! The exact check of a wall: a dynamic programme over its runs, course by course, whose state is
//! where the seams of the last courses stand.
//!
//! It need not try every step: in any layout each seam can be pushed left until it meets the
//! end of its span or stands exactly the stagger past a seam of a near course. So every first seam
//! lies, whole pitches aside, a whole number of staggers past the left end of some part's span; the
//! number is at most the number of parts.

use std::collections::BTreeSet;

use super::part::{Digest, Part};
use super::rules::Rules;
use super::stagger::{first_seam, standing};

/// Most parts whose seams may matter at once.
const WIDE: usize = 8;

/// A part's way and first-piece length.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Stand {
    pub part: usize,
    pub way: usize,
    pub a: i64,
}

/// How much is tried.
#[derive(Clone, Copy, Debug)]
pub(super) struct Limits {
    /// Staggers past the left end of a span.
    pub deep: usize,
    /// States kept after each part.
    pub states: usize,
    /// States tried in all, for each group of parts that touch.
    pub work: usize,
    /// Whether rules may be broken, as few times as can be.
    pub forgiving: bool,
}

/// What was found.
#[derive(Clone, Debug, Default)]
pub(super) struct Outcome {
    /// Where the parts stand; empty if they cannot.
    pub laid: Vec<Stand>,
    /// Pairs of seams that stand too near, in the hundred thousands, and below that by how much, in
    /// sixteenths of an inch.
    pub broken: u64,
    /// Nothing was left out: empty means that no layout keeps the rules.
    pub exact: bool,
}

struct Choice {
    way: usize,
    a: i64,
    /// First seam, and how many.
    seam: i64,
    count: i64,
    /// Broken rules it stands for by itself.
    cost: u64,
}

#[derive(Clone, Copy)]
struct State {
    /// Choice of each part that still matters.
    key: [u16; WIDE],
    cost: u64,
    /// Entry of the way here, and the last choice.
    back: u32,
    choice: u16,
}

/// Most states held before they are thinned: 128 MB.
const CROWD: usize = 4_000_000;

/// One broken rule.
const BROKEN: u64 = 100_000;

/// Lays the seamed `parts` (by level) under `rules`, which may differ from the digest's in stagger
/// and clear courses, if they are no stricter.
pub(super) fn lay(digest: &Digest, rules: &Rules, parts: &[usize], limits: Limits) -> Outcome {
    let mut out = Outcome { exact: true, ..Default::default() };
    for group in groups(digest, rules, parts) {
        let found = lay_group(digest, rules, &group, limits);
        out.exact &= found.exact;
        out.broken += found.broken;
        if found.laid.is_empty() {
            return Outcome { exact: found.exact, ..Default::default() };
        }
        out.laid.extend(found.laid);
    }
    out
}

/// Parts that touch one another through near courses, each group in the order of `parts`.
pub(super) fn groups(digest: &Digest, rules: &Rules, parts: &[usize]) -> Vec<Vec<usize>> {
    let mut left: BTreeSet<usize> = parts.iter().copied().collect();
    let mut out = Vec::new();
    while let Some(first) = left.pop_first() {
        let mut group = BTreeSet::from([first]);
        let mut todo = vec![first];
        while let Some(p) = todo.pop() {
            for q in &digest.parts[p].near {
                let levels = digest.parts[p].level - digest.parts[*q].level;
                if levels.abs() <= rules.clear && left.remove(q) {
                    group.insert(*q);
                    todo.push(*q);
                }
            }
        }
        out.push(parts.iter().copied().filter(|p| group.contains(p)).collect());
    }
    out
}

fn lay_group(digest: &Digest, rules: &Rules, parts: &[usize], limits: Limits) -> Outcome {
    let choices: Vec<Vec<Choice>> = choices(digest, rules, parts, limits);
    let mut out = Outcome { exact: limits.deep >= parts.len(), ..Default::default() };
    let near = |i: usize, j: usize| are_near(digest, rules, parts[i], parts[j]);
    // The last part that each part is near to.
    let last: Vec<usize> = (0..parts.len())
        .map(|i| (i..parts.len()).rev().find(|j| *j == i || near(i, *j)).unwrap_or(i))
        .collect();
    let mut trail: Vec<(u32, u16)> = Vec::new();
    let mut open: Vec<usize> = Vec::new();
    let mut states = vec![State { key: [0; WIDE], cost: 0, back: u32::MAX, choice: 0 }];
    let mut work = 0;
    for i in 0..parts.len() {
        let beside: Vec<(usize, usize)> =
            open.iter().copied().enumerate().filter(|(_, j)| near(i, *j)).collect();
        let stay: Vec<usize> = (0..open.len()).filter(|s| last[open[*s]] > i).collect();
        let keeps = last[i] > i;
        if stay.len() + usize::from(keeps) > WIDE {
            return Outcome::default();
        }
        let mut next: Vec<State> = Vec::new();
        for s in &states {
            for (c, choice) in choices[i].iter().enumerate() {
                let clashes = beside
                    .iter()
                    .map(|(slot, j)| clash(choice, &choices[*j][usize::from(s.key[*slot])], rules));
                let cost = s.cost + choice.cost + clashes.sum::<u64>();
                if cost > 0 && !limits.forgiving {
                    continue;
                }
                let key = carried(&s.key, &stay, keeps.then_some(c as u16));
                next.push(State { key, cost, back: s.back, choice: c as u16 });
            }
            if next.len() > (32 * limits.states).min(CROWD) {
                thin(&mut next, limits.states, &mut out.exact);
            }
        }
        work += states.len() * choices[i].len();
        thin(&mut next, limits.states, &mut out.exact);
        if work > limits.work {
            return Outcome::default();
        }
        for s in &mut next {
            trail.push((s.back, s.choice));
            s.back = trail.len() as u32 - 1;
        }
        states = next;
        open = stay.iter().map(|s| open[*s]).chain(keeps.then_some(i)).collect();
        if states.is_empty() {
            return out;
        }
    }
    let Some(end) = states.iter().min_by_key(|s| s.cost) else { return out };
    out.broken = end.cost;
    out.laid = walk_back(parts, &choices, &trail, end.back);
    out
}

/// The choices of the parts that stay open, with the new part's where it stays open too.
fn carried(key: &[u16; WIDE], stay: &[usize], new: Option<u16>) -> [u16; WIDE] {
    let mut out = [0; WIDE];
    stay.iter().enumerate().for_each(|(to, from)| out[to] = key[*from]);
    if let Some(choice) = new {
        out[stay.len()] = choice;
    }
    out
}

/// Whether seams of two parts must keep apart.
fn are_near(digest: &Digest, rules: &Rules, one: usize, other: usize) -> bool {
    let (p, q) = (&digest.parts[one], &digest.parts[other]);
    p.near.contains(&other) && (p.level - q.level).abs() <= rules.clear
}

/// The choices that led to a state, from the last part to the first.
fn walk_back(
    parts: &[usize],
    choices: &[Vec<Choice>],
    trail: &[(u32, u16)],
    mut at: u32,
) -> Vec<Stand> {
    let mut laid = Vec::with_capacity(parts.len());
    for i in (0..parts.len()).rev() {
        let Some((before, c)) = trail.get(at as usize) else { break };
        let choice = &choices[i][usize::from(*c)];
        laid.push(Stand { part: parts[i], way: choice.way, a: choice.a });
        at = *before;
    }
    laid
}

/// Keeps the cheapest state of each key, and of these at most `most`, spread evenly among equals.
fn thin(states: &mut Vec<State>, most: usize, exact: &mut bool) {
    states.sort_unstable_by_key(|s| (s.key, s.cost, s.back));
    states.dedup_by_key(|s| s.key);
    if states.len() <= most {
        return;
    }
    *exact = false;
    states.sort_by_key(|s| s.cost);
    let cheapest = states[0].cost;
    let alike = states.iter().take_while(|s| s.cost == cheapest).count();
    if alike > most {
        let kept = (0..most).map(|i| states[i * alike / most]).collect();
        *states = kept;
    }
    states.truncate(most);
}

/// What it costs that two choices bring seams of near courses nearer than the stagger.
fn clash(a: &Choice, b: &Choice, rules: &Rules) -> u64 {
    let pitch = rules.pitch();
    let d = (a.seam - b.seam).div_euclid(pitch);
    // `d` whole pitches from the first seam of `b`, the seams stand nearest.
    let mut cost = 0;
    for d in [d, d + 1] {
        let apart = (b.seam + d * pitch - a.seam).abs();
        // Seams `j` of `a` and `j + d` of `b`, as far as there are any.
        let pairs = a.count.min(b.count - d) - 0.max(-d);
        if pairs > 0 && apart < rules.stagger {
            cost += pairs as u64 * (BROKEN + ((rules.stagger - apart) * 16 / rules.steps.0) as u64);
        }
    }
    cost
}

fn choices(digest: &Digest, rules: &Rules, parts: &[usize], limits: Limits) -> Vec<Vec<Choice>> {
    let spans: Vec<Vec<Vec<(i64, i64)>>> = parts
        .iter()
        .map(|p| {
            let part = &digest.parts[*p];
            part.ways[..part.lawful].iter().map(|w| standing(part, *w, rules)).collect()
        })
        .collect();
    let pitch = rules.pitch();
    // Left ends of spans, whole pitches aside, and what lies whole staggers past them.
    let mut places: Vec<i64> = Vec::new();
    for (p, ways) in parts.iter().zip(&spans) {
        let part = &digest.parts[*p];
        places
            .extend(ways.iter().flatten().map(|s| first_seam(part, s.0, rules).rem_euclid(pitch)));
    }
    places.sort_unstable();
    places.dedup();
    let deep = limits.deep.min(parts.len()) as i64;
    let mut all: Vec<i64> = places
        .iter()
        .flat_map(|b| (0..=deep).map(move |n| (b + n * rules.stagger).rem_euclid(pitch)))
        .collect();
    all.sort_unstable();
    all.dedup();
    parts
        .iter()
        .zip(&spans)
        .map(|(p, ways)| of_part(&digest.parts[*p], ways, &all, rules))
        .collect()
}

fn of_part(part: &Part, ways: &[Vec<(i64, i64)>], places: &[i64], rules: &Rules) -> Vec<Choice> {
    let pitch = rules.pitch();
    let zero = first_seam(part, 0, rules);
    let mut out = Vec::new();
    let choice = |way: usize, a: i64, cost: u64| Choice {
        way,
        a,
        seam: zero + a,
        count: part.ways[way].k - 1,
        cost,
    };
    for (way, spans) in ways.iter().enumerate() {
        for (low, high) in spans {
            for place in places {
                let mut a = low + (place - zero - low).rem_euclid(pitch);
                while a <= *high {
                    out.push(choice(way, a, 0));
                    a += pitch;
                }
            }
        }
    }
    if out.is_empty() {
        // Nothing keeps the rules: any place breaks one by itself.
        out.extend(
            part.ways
                .iter()
                .enumerate()
                .map(|(w, way)| choice(w, (way.least + way.most) / 2, BROKEN)),
        );
    }
    out.truncate(usize::from(u16::MAX));
    out
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::model::seam::{
        Effort, SeamCourse, SeamElevation, SeamProblem, SeamRules, SeamRun, StockWeight,
    };
    use crate::seam::differences::{Verdict, solve};
    use crate::seam::stagger::seams;

    /// A wall of small numbers: lengths in sixteenths.
    fn wall(covers: &[i64], stagger: i64, clear: u32) -> Digest {
        let inches = |x: i64| x as f64 / 16.0;
        let rules = SeamRules {
            steps: 16,
            stocks: vec![StockWeight::single(inches(40), 1)],
            lap: inches(2),
            gap: 0.0,
            kerf: 0.0,
            shortest: inches(7),
            stagger: inches(stagger),
            clear_courses: clear,
            jamb: 0.0,
            seam_short_runs: false,
            effort: Effort::Brief,
            seed: 1,
        };
        let courses = covers.iter().enumerate().map(|(i, c)| SeamCourse {
            index: i as i32,
            runs: vec![SeamRun {
                id: i.to_string().into(),
                wall: 0,
                x0: inches(3 * (i as i64 % 2)),
                x1: inches(3 * (i as i64 % 2) + c),
                fixed: vec![],
                barred: vec![],
                notched: Vec::new(),
            }],
            ..Default::default()
        });
        let elevation = SeamElevation { courses: courses.collect(), ..Default::default() };
        Digest::new(&SeamProblem {
            rules,
            elevations: vec![elevation],
            waiting: Default::default(),
        })
    }

    /// Whether any layout keeps the stagger, by trying every sixteenth.
    fn any(digest: &Digest, laid: &mut Vec<(i32, Vec<i64>)>) -> bool {
        let Some(part) = digest.parts.get(laid.len()) else { return true };
        for way in &part.ways {
            for a in way.least..=way.most {
                let mine: Vec<i64> = seams(part, *way, a, &digest.rules).collect();
                let clear = laid.iter().all(|(level, theirs)| {
                    (part.level - level).abs() > digest.rules.clear
                        || theirs
                            .iter()
                            .all(|y| mine.iter().all(|x| (x - y).abs() >= digest.rules.stagger))
                });
                if clear {
                    laid.push((part.level, mine));
                    if any(digest, laid) {
                        return true;
                    }
                    laid.pop();
                }
            }
        }
        false
    }

    /// Whether seams of near courses keep the stagger, and every part is laid.
    fn apart(digest: &Digest, stands: &[Stand]) -> bool {
        let rows: Vec<(i32, Vec<i64>)> = stands
            .iter()
            .map(|s| {
                let part = &digest.parts[s.part];
                (part.level, seams(part, part.ways[s.way], s.a, &digest.rules).collect())
            })
            .collect();
        let near = |x: &i64, y: &i64| (x - y).abs() < digest.rules.stagger;
        let clash = |a: &(i32, Vec<i64>), b: &(i32, Vec<i64>)| {
            let courses = (a.0 - b.0).abs();
            courses > 0
                && courses <= digest.rules.clear
                && a.1.iter().any(|x| b.1.iter().any(|y| near(x, y)))
        };
        stands.len() == digest.parts.len() && !rows.iter().any(|a| rows.iter().any(|b| clash(a, b)))
    }

    #[test]
    fn agrees_with_every_sixteenth_tried() {
        let (mut yes, mut no) = (0, 0);
        let mut s = 11u64;
        for _ in 0..300 {
            let mut next = |n: u64| {
                s = s.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1);
                ((s >> 33) % n) as i64
            };
            let covers: Vec<i64> = (0..4).map(|_| 41 + next(90)).collect();
            let (stagger, clear) = (6 + next(14), 1 + next(3) as u32);
            let digest = wall(&covers, stagger, clear);
            let all: Vec<usize> = (0..digest.parts.len()).collect();
            let limits =
                Limits { deep: usize::MAX, states: 50_000, work: usize::MAX, forgiving: false };
            let found = lay(&digest, &digest.rules, &all, limits);
            assert!(found.exact);
            let told = !found.laid.is_empty();
            assert_eq!(told, any(&digest, &mut Vec::new()), "{covers:?} {stagger} {clear}");
            // The same as differences: a layout, which keeps the stagger, or none.
            match solve(&digest, &digest.rules, &all, usize::MAX) {
                Verdict::Laid(stands) => assert!(told && apart(&digest, &stands), "{covers:?}"),
                Verdict::None => assert!(!told, "{covers:?} {stagger} {clear}"),
                Verdict::Unknown => panic!("given up"),
            }
            yes += usize::from(told);
            no += usize::from(!told);
        }
        assert!(yes > 30 && no > 30, "{yes} can be laid, {no} cannot");
    }
}
