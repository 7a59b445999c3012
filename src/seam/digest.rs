//! The problem in whole steps of an inch, with what the search asks again and again worked out once.

use std::collections::BTreeMap;

use super::hit_sum::{Hits, LIGHTLY_WEIGHED};
use super::hits::{hits, least_hits, wide};
use super::part::{Digest, Part};
use super::rules::{Rules, Steps, Travel};
use super::stagger::standing;
use crate::model::seam::{MOST_STOCKS, MOST_WEIGHT, ON_JAMB, SeamProblem, SeamRun};

impl Digest {
    pub(super) fn new(problem: &SeamProblem) -> Self {
        let r = &problem.rules;
        let steps = Steps(r.steps.max(1));
        let whole = |x: f64| steps.whole(x);
        let kinds =
            r.stocks.iter().map(|s| (whole(s.length).max(1), s.weight.clamp(1, MOST_WEIGHT)));
        let mut kinds: Vec<(i64, i64)> = kinds.take(MOST_STOCKS).collect();
        let (panel, weight) = if kinds.is_empty() { (1, 1) } else { kinds.remove(0) };
        let shortest_panel = kinds.iter().map(|k| k.0).fold(panel, i64::min);
        let rules = Rules {
            steps,
            panel,
            weight: if kinds.is_empty() { 1 } else { weight },
            more: kinds,
            lap: whole(r.lap).clamp(0, shortest_panel - 1),
            kerf: whole(r.kerf).max(0),
            shortest: whole(r.shortest).max(1),
            stagger: whole(r.stagger).max(0),
            clear: r.clear_courses.min(1000) as i32,
            jamb: whole(r.jamb),
            on_jamb: whole(ON_JAMB),
            seam_short: r.seam_short_runs,
            travel: travel(problem),
            hit_costs: LIGHTLY_WEIGHED,
            effort: r.effort,
            seed: r.seed,
        };
        let places = places(problem);
        let mut parts = Vec::new();
        for (e, elevation) in problem.elevations.iter().enumerate() {
            for (c, course) in elevation.courses.iter().enumerate() {
                let avoid: Vec<i64> = course.avoid.iter().map(|x| whole(*x)).collect();
                for (i, run) in course.runs.iter().enumerate() {
                    for (left, cover) in spans(run, whole(r.gap), rules.lap, steps) {
                        let wall = places.get(&run.wall).copied().unwrap_or(0);
                        parts.push(Part {
                            wall,
                            ..part((e, c, i), course.index, (left, cover), run, &avoid, &rules)
                        });
                    }
                }
            }
        }
        let fixed: Vec<(usize, i32, i64)> = fixed_seams(problem, steps);
        link(&mut parts, &rules, &fixed);
        for part in &mut parts {
            part.open = part.ways.iter().map(|w| standing(part, *w, &rules)).collect();
            part.hits = part.ways.iter().map(|w| hits(part, *w, &rules)).collect();
            part.least_hits = least_hits(part);
        }
        Digest { rules, parts }
    }

    /// Least hits that the runs, each alone, allow.
    pub(super) fn unavoidable(&self) -> Hits {
        self.parts.iter().fold(Hits::NONE, |sum, p| sum + p.least_hits)
    }
}

/// Place of each wall in the first of the orders asked for, those that it leaves out after it.
fn places(problem: &SeamProblem) -> BTreeMap<usize, usize> {
    let order = super::orders::first(problem);
    order.into_iter().enumerate().map(|(place, wall)| (wall, place)).collect()
}

/// How far offcuts may travel: none where they may as they like, or there is one wall alone.
fn travel(problem: &SeamProblem) -> Option<Travel> {
    let walls = super::orders::first(problem).len();
    let asked = &problem.waiting;
    let most = asked.most.map_or(i64::MAX / 4, |n| i64::try_from(n).unwrap_or(i64::MAX / 4));
    let free = asked.is_free() || walls < 2;
    (!free).then(|| Travel { walls, most, reach: asked.reach.walls() })
}

/// What a run's parts cover: the run is cut at each fixed seam, both sides reaching half a lap past
/// it; both ends there are cut ends.
fn spans(run: &SeamRun, gap: i64, lap: i64, steps: Steps) -> Vec<(i64, i64)> {
    let whole = |x: f64| steps.whole(x);
    let (mut at, end) = (whole(run.x0) + gap, whole(run.x1) - gap);
    let mut out = Vec::new();
    for x in &run.fixed {
        let x = steps.counted(*x, lap);
        if x - lap > at && x + lap < end {
            // The odd step of a lap goes to the right-hand side.
            out.push((at, x + lap / 2 - at));
            at = x + lap / 2 - lap;
        }
    }
    if end > at {
        out.push((at, end - at));
    }
    out
}

/// Fixed seams that stand: elevation, level, place.
fn fixed_seams(problem: &SeamProblem, steps: Steps) -> Vec<(usize, i32, i64)> {
    let (gap, lap) = (steps.whole(problem.rules.gap), steps.whole(problem.rules.lap));
    let mut out = Vec::new();
    for (e, elevation) in problem.elevations.iter().enumerate() {
        for course in &elevation.courses {
            for run in &course.runs {
                let parts = spans(run, gap, lap, steps);
                out.extend(
                    parts.iter().skip(1).map(|(left, _)| (e, course.index, left + lap - lap / 2)),
                );
            }
        }
    }
    out
}

fn part(
    from: (usize, usize, usize),
    level: i32,
    span: (i64, i64),
    run: &SeamRun,
    avoid: &[i64],
    rules: &Rules,
) -> Part {
    let (left, cover) = span;
    let whole = |x: f64| rules.steps.whole(x);
    let (one_piece, mut ways) = super::options::ways(cover, rules);
    let lawful = ways.len();
    ways.extend(super::options::unlawful(cover, rules));
    Part {
        from,
        level,
        wall: 0,
        left,
        cover,
        ways,
        lawful,
        one_piece,
        avoid: avoid.iter().copied().filter(|x| *x > left && *x < left + cover).collect(),
        barred: run.barred.iter().map(|(a, b)| (whole(*a), whole(*b))).collect(),
        notched: wide(&run.notched, rules),
        open: Vec::new(),
        hits: Vec::new(),
        least_hits: Hits::NONE,
        near: Vec::new(),
        fixed_near: Vec::new(),
    }
}

/// Which parts' seams can come too near to each other's.
fn link(parts: &mut [Part], rules: &Rules, fixed: &[(usize, i32, i64)]) {
    let mut standing: BTreeMap<(usize, i32), Vec<i64>> = BTreeMap::new();
    for (e, level, x) in fixed {
        standing.entry((*e, *level)).or_default().push(*x);
    }
    let mut levels: BTreeMap<(usize, i32), Vec<usize>> = BTreeMap::new();
    for (i, p) in parts.iter().enumerate() {
        levels.entry((p.from.0, p.level)).or_default().push(i);
    }
    for i in 0..parts.len() {
        let p = &parts[i];
        let (low, high) = (p.left - rules.stagger, p.left + p.cover + rules.stagger);
        let mut near = Vec::new();
        for level in p.level - rules.clear..=p.level + rules.clear {
            for &j in levels.get(&(p.from.0, level)).into_iter().flatten() {
                let q = &parts[j];
                let seamed = !p.ways.is_empty() && !q.ways.is_empty();
                // Seams of one course keep apart by their panels; only other courses count.
                if level != p.level && seamed && q.left < high && q.left + q.cover > low {
                    near.push(j);
                }
            }
        }
        // Level by level as the fixed seams were met.
        let others = (p.level - rules.clear..=p.level + rules.clear).filter(|l| *l != p.level);
        let fixed_near = others
            .filter_map(|l| standing.get(&(p.from.0, l)))
            .flatten()
            .copied()
            .filter(|x| *x > low && *x < high)
            .collect();
        parts[i].near = near;
        parts[i].fixed_near = fixed_near;
    }
}
