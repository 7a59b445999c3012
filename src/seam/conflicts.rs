//! Rules that cannot all be kept: which wall, the least set of its courses, and the nearest setting
//! that works. The wall is laid with the fewest rules broken.

use std::collections::{BTreeMap, BTreeSet};

use super::differences::{Verdict, solve};
use super::insert::Inserter;
use super::part::Digest;
use super::pool::Pool;
use super::random::Random;
use super::rules::Rules;
use super::stagger::{AllowedSpans, seams};
use super::wall::{Limits, Stand, lay};
use crate::model::conflict::{
    Break, BrokenSeamRule, Conflict, ConflictProof, SeamAt, SeamFault, SeamRemedy,
};
use crate::model::seam::{SeamProblem, SeamRules};

/// Looking for a layout of a whole wall, first in haste.
const HASTE: Limits = Limits { deep: 4, states: 120, work: 2_000_000, forgiving: false };
const SEARCH: Limits = Limits { deep: 8, states: 800, work: 10_000_000, forgiving: false };
/// Work of the exact check of a wall, and of one that a few courses have no layout: some tenths of a second.
const EXACT: usize = 6_000_000;
const PROOF: usize = 4_000_000;
/// Sets of courses that may be too many for a proof before it is given up: wide walls have hundreds.
const UNSURE: usize = 6;
/// Most courses looked at together for a proof.
const WINDOW: usize = 7;

/// Parts that stand where they break a rule, since no layout was found that keeps all.
pub(super) type Pins = Vec<Option<(usize, i64)>>;

/// Looks at each group of runs in which the first layout broke a rule, and lays it as the rules
/// want, if it can be; else with the fewest broken, whose parts are pinned.
pub(super) fn settle(
    problem: &SeamProblem,
    digest: &Digest,
    pool: &mut Pool,
) -> (Pins, Vec<Conflict>) {
    let mut pins = vec![None; digest.parts.len()];
    let mut conflicts = Vec::new();
    let mut seen: BTreeSet<usize> = BTreeSet::new();
    for part in broken(digest, pool) {
        if seen.contains(&part) {
            continue;
        }
        let group = group(digest, part);
        seen.extend(&group);
        let found = search(digest, &digest.rules, &group);
        if let Verdict::Laid(laid) = &found {
            put(digest, pool, laid, &mut pins);
            continue;
        }
        if !digest.rules.mixed() {
            let forgiving = Limits { forgiving: true, ..SEARCH };
            let least = lay(digest, &digest.rules, &group, forgiving);
            put(digest, pool, &least.laid, &mut pins);
        }
        let bad: Vec<usize> =
            broken(digest, pool).into_iter().filter(|p| group.contains(p)).collect();
        for p in &bad {
            if let Some(super::placed::Placed::Seamed { way, a, .. }) = pool.placed[*p] {
                pins[*p] = Some((way, a));
            }
        }
        if !bad.is_empty() {
            let none = matches!(found, Verdict::None);
            conflicts.push(conflict(problem, digest, pool, (&group, none), &bad));
        }
    }
    (pins, conflicts)
}

fn search(digest: &Digest, rules: &Rules, group: &[usize]) -> Verdict {
    // The first ones know panels of one length alone.
    let tried = |limits: Limits| {
        let laid = if rules.mixed() { Vec::new() } else { lay(digest, rules, group, limits).laid };
        (!laid.is_empty()).then_some(Verdict::Laid(laid))
    };
    tried(HASTE).unwrap_or_else(|| match solve(digest, rules, group, EXACT) {
        Verdict::Unknown => tried(SEARCH).unwrap_or(Verdict::Unknown),
        known => known,
    })
}

/// Seamed parts that break a hard rule.
pub(super) fn broken(digest: &Digest, pool: &Pool) -> Vec<usize> {
    let mut allowed = AllowedSpans::default();
    (0..digest.parts.len()).filter(|p| !allowed.lawful(digest, &pool.placed, *p)).collect()
}

/// All seamed parts that touch a part through near courses, by level.
fn group(digest: &Digest, part: usize) -> Vec<usize> {
    let mut found = BTreeSet::from([part]);
    let mut todo = vec![part];
    while let Some(p) = todo.pop() {
        for q in &digest.parts[p].near {
            if found.insert(*q) {
                todo.push(*q);
            }
        }
    }
    let mut parts: Vec<usize> = found.into_iter().collect();
    parts.retain(|p| !digest.parts[*p].one_piece);
    parts.sort_by_key(|p| (digest.parts[*p].level, digest.parts[*p].left));
    parts
}

/// Lays parts where the check says, from whatever panels suit.
fn put(digest: &Digest, pool: &mut Pool, laid: &[Stand], pins: &mut Pins) {
    let mut inserter = Inserter::new(digest, Random::new(digest.rules.seed), 0);
    // What one panel covers may stand in two where these go: it gives way.
    let near: BTreeSet<usize> =
        laid.iter().flat_map(|s| &digest.parts[s.part].near).copied().collect();
    let free = near.into_iter().filter(|p| {
        let seamed = matches!(pool.placed[*p], Some(super::placed::Placed::Seamed { .. }));
        digest.parts[*p].one_piece && seamed
    });
    let free: Vec<usize> = free.collect();
    for p in &free {
        pool.take(digest, *p);
    }
    for s in laid {
        pool.take(digest, s.part);
        inserter.pinned[s.part] = Some((s.way, s.a));
    }
    let of_group = laid.iter().map(|s| s.part);
    for p in of_group.chain(free) {
        pins[p] = None;
        if let Some(how) = inserter.best(pool, p) {
            pool.place(digest, p, how);
        }
    }
}

/// The conflict of a group in which `bad` parts break a rule.
fn conflict(
    problem: &SeamProblem,
    digest: &Digest,
    pool: &Pool,
    (group, none): (&[usize], bool),
    bad: &[usize],
) -> Conflict {
    let mut levels: BTreeMap<i32, Vec<usize>> = BTreeMap::new();
    for p in group {
        levels.entry(digest.parts[*p].level).or_default().push(*p);
    }
    let at: Vec<i32> = levels.keys().copied().collect();
    let bad_levels: BTreeSet<i32> = bad.iter().map(|p| digest.parts[*p].level).collect();
    let proven = least_set(digest, &levels, &at, &bad_levels).or(none.then(|| at.clone()));
    let least = proven.is_some();
    let courses = proven.unwrap_or_else(|| bad_levels.into_iter().collect());
    let rules = &digest.rules;
    let inches = |n: i64| rules.steps.inches(n);
    let rule = BrokenSeamRule::Stagger {
        least: inches(rules.stagger),
        clear_courses: rules.clear.unsigned_abs(),
        proof: if least { ConflictProof::NoLayoutExists } else { ConflictProof::NoneFound },
        nearest: nearest_pair(digest, pool, bad).map(inches),
    };
    let elevation = problem.elevations.get(digest.parts[bad[0]].from.0);
    let name = |p: &usize| {
        let (_, c, r) = digest.parts[*p].from;
        elevation.and_then(|e| Some(e.courses.get(c)?.runs.get(r)?.id.clone()))
    };
    Conflict {
        breaks: breaks(problem, digest, pool, bad),
        elevation: elevation.map(|e| e.name.clone()).unwrap_or_default(),
        runs: bad.iter().filter_map(name).collect(),
        courses,
        rule,
        remedies: remedies(problem, digest, group),
    }
}

/// Where the seams of a part stand.
fn places(digest: &Digest, pool: &Pool, part: usize) -> Vec<i64> {
    let of = &digest.parts[part];
    let Some(super::placed::Placed::Seamed { way, a, .. }) = pool.placed[part] else {
        return Vec::new();
    };
    seams(of, of.ways[way], a, &digest.rules).collect()
}

/// A seam of a part, by its run and course.
fn seam_at(problem: &SeamProblem, digest: &Digest, part: usize, x: i64) -> SeamAt {
    let (e, c, r) = digest.parts[part].from;
    let course = problem.elevations.get(e).and_then(|e| e.courses.get(c));
    let run = course.and_then(|c| c.runs.get(r));
    SeamAt {
        run: run.map(|r| r.id.clone()).unwrap_or_default(),
        course: digest.parts[part].level,
        x: digest.rules.steps.middle(x, digest.rules.lap),
    }
}

/// Each rule that `bad` parts break: pairs of seams that stand too near, and parts that break one by
/// themselves. Unmarked yet.
pub(super) fn breaks(
    problem: &SeamProblem,
    digest: &Digest,
    pool: &Pool,
    bad: &[usize],
) -> Vec<Break> {
    let rules = &digest.rules;
    let inches = |n: i64| rules.steps.inches(n);
    let mut out = Vec::new();
    for p in bad {
        let part = &digest.parts[*p];
        let here = places(digest, pool, *p);
        let near = |x: i64, y: i64| (x - y).abs() < rules.stagger;
        let mut paired = false;
        for q in &part.near {
            let there = places(digest, pool, *q);
            // A pair of parts that both break is told once, from the lower number.
            let told_there = bad.contains(q) && q < p;
            for (x, y) in here.iter().flat_map(|x| there.iter().map(move |y| (*x, *y))) {
                if !near(x, y) {
                    continue;
                }
                paired = true;
                if !told_there {
                    let (low, high) = (part.level, digest.parts[*q].level);
                    let fault = SeamFault::TooNear {
                        courses: [low.min(high) + 1, low.max(high) + 1],
                        apart: inches((x - y).abs()),
                        least: inches(rules.stagger),
                    };
                    let seams =
                        vec![seam_at(problem, digest, *p, x), seam_at(problem, digest, *q, y)];
                    out.push(Break { mark: String::new(), fault, seams });
                }
            }
        }
        if !paired {
            let fault = SeamFault::NoLawfulPlace {
                course: part.level + 1,
                shortest: inches(rules.shortest),
            };
            let seams = here.into_iter().map(|x| seam_at(problem, digest, *p, x)).collect();
            out.push(Break { mark: String::new(), fault, seams });
        }
    }
    out
}

/// Numbers broken rules through the house.
pub(super) fn number(conflicts: &mut [Conflict]) {
    let all = conflicts.iter_mut().flat_map(|c| &mut c.breaks);
    all.enumerate().for_each(|(i, b)| b.mark = format!("X{}", i + 1));
}

/// The least sideways distance between seams of near courses where a rule is broken.
fn nearest_pair(digest: &Digest, pool: &Pool, bad: &[usize]) -> Option<i64> {
    let places = |p: usize| places(digest, pool, p);
    let mut best = None;
    for p in bad {
        let mine = places(*p);
        let part = &digest.parts[*p];
        let others = part.near.iter().flat_map(|q| places(*q)).chain(part.fixed_near.clone());
        for y in others {
            let d = mine.iter().map(|x| (x - y).abs()).min();
            best = [best, d].into_iter().flatten().min();
        }
    }
    best.filter(|d| *d < digest.rules.stagger)
}

/// The fewest courses, next to one another or nearly so, that have no layout; `None` if that could
/// not be proven.
fn least_set(
    digest: &Digest,
    levels: &BTreeMap<i32, Vec<usize>>,
    at: &[i32],
    bad: &BTreeSet<i32>,
) -> Option<Vec<i32>> {
    let mut unsure = 0;
    let mut none = |courses: &[i32]| {
        if unsure > UNSURE {
            return false;
        }
        let parts: Vec<usize> = courses.iter().flat_map(|c| levels[c].iter().copied()).collect();
        let found = solve(digest, &digest.rules, &parts, PROOF);
        unsure += usize::from(matches!(found, Verdict::Unknown));
        matches!(found, Verdict::None)
    };
    for size in 1..=WINDOW.min(at.len()) {
        let windows = at.windows(size).filter(|w| w.iter().any(|c| bad.contains(c)));
        let Some(found) = windows.into_iter().find(|w| none(w)) else { continue };
        // Every window one shorter has a layout, so the outer two are needed; the others one by one.
        let mut courses = found.to_vec();
        let mut i = 0;
        while i < courses.len() {
            let mut fewer = courses.clone();
            fewer.remove(i);
            if !fewer.is_empty() && none(&fewer) {
                courses = fewer;
            } else {
                i += 1;
            }
        }
        return Some(courses);
    }
    None
}

/// The nearest settings under which the group has a layout.
fn remedies(problem: &SeamProblem, digest: &Digest, group: &[usize]) -> Vec<SeamRemedy> {
    let works = |rules: &Rules| {
        plainly(problem, digest.parts[group[0]].from.0, rules)
            || !rules.mixed() && !lay(digest, rules, group, HASTE).laid.is_empty()
            || matches!(solve(digest, rules, group, PROOF), Verdict::Laid(_))
    };
    let with = |stagger: i64, clear: i32| Rules { stagger, clear, ..digest.rules.clone() };
    let (stagger, clear) = (digest.rules.stagger, digest.rules.clear);
    let mut out = Vec::new();
    // Whole inches: a shorter stagger never makes a layout impossible.
    let (mut low, mut high) =
        (0, (stagger + digest.rules.steps.of(1) - 1) / digest.rules.steps.of(1));
    while high - low > 1 {
        let middle = (low + high) / 2;
        if works(&with(digest.rules.steps.of(middle), clear)) {
            low = middle
        } else {
            high = middle
        }
    }
    if low > 0 {
        out.push(SeamRemedy::Stagger { inches: low });
    }
    if let Some(fewer) = (0..clear).rev().find(|c| works(&with(stagger, *c))) {
        out.push(SeamRemedy::ClearCourses { courses: fewer.unsigned_abs() });
    }
    out
}

/// Whether the first layout of an elevation alone keeps these rules.
fn plainly(problem: &SeamProblem, elevation: usize, rules: &Rules) -> bool {
    let alone = SeamProblem {
        rules: SeamRules {
            stagger: rules.steps.inches(rules.stagger),
            clear_courses: rules.clear.unsigned_abs(),
            ..problem.rules.clone()
        },
        elevations: problem.elevations.get(elevation).cloned().into_iter().collect(),
        waiting: Default::default(),
    };
    let digest = Digest::new(&alone);
    broken(&digest, &super::construct::lay(&digest)).is_empty()
}
