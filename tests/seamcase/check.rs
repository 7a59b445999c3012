//! Every hard rule of an answer, counted by arithmetic of its own in inches.

use std::collections::BTreeMap;

use lapwright::model::seam::{RunPlan, SeamPlan, SeamProblem, SeamRules, SeamRun};

const SAME: f64 = 1e-6;

/// What is found in an answer.
#[derive(Debug, Default)]
pub(crate) struct Found {
    /// Hard rules broken, in words.
    pub broken: Vec<String>,
    /// Panels that pieces name.
    pub panels: usize,
    /// Seams nearer to a jamb line than wished, and the fewest that the runs one by one allow.
    pub hits: usize,
    pub unavoidable: usize,
    /// Offcuts that wait at the end of each wall, in the order of walls, and panels that several walls share.
    pub waiting: Vec<usize>,
    pub shared: usize,
}

/// A seam: course, place, and whether an obstacle fixes it.
type Seam = (i32, f64, bool);

pub(crate) fn check(p: &SeamProblem, plan: &SeamPlan) -> Found {
    let r = &p.rules;
    let mut out = Found::default();
    let mut panels: BTreeMap<usize, Vec<(f64, f64)>> = BTreeMap::new();
    let mut plans: BTreeMap<&str, _> = BTreeMap::new();
    for got in &plan.runs {
        if plans.insert(got.id.as_str(), got).is_some() {
            out.broken.push(format!("{} is answered twice", got.id));
        }
    }
    for e in &p.elevations {
        let mut seams: Vec<Seam> = Vec::new();
        for c in &e.courses {
            for run in &c.runs {
                let cover = run.x1 - run.x0 - 2.0 * r.gap;
                if cover <= 0.0 {
                    continue;
                }
                let Some(got) = plans.get(run.id.as_str()) else {
                    out.broken.push(format!("{} is missing", run.id));
                    continue;
                };
                let at = one_run(p, run, got, &plan.stocks, &mut out.broken);
                for (x, fixed) in &at {
                    seams.push((c.index, *x, *fixed));
                    let across = c.avoid.iter().filter(|v| run.x0 < **v && **v < run.x1);
                    out.hits += across.filter(|v| (*x - **v).abs() < r.jamb - SAME).count();
                }
                out.unavoidable += fewest_hits(p, run, &c.avoid);
                for c in &got.pieces {
                    panels.entry(c.panel).or_default().push((c.start, c.end));
                }
            }
        }
        stagger(p, &e.name, seams, &mut out.broken);
    }
    (out.waiting, out.shared) = replayed(p, plan);
    if let Some(most) = p.waiting.most.filter(|most| out.waiting.iter().any(|n| n > most)) {
        out.broken.push(format!("more than {most} offcuts wait: {:?}", out.waiting));
    }
    let reach = p.waiting.reach.walls();
    for (panel, far) in far_apart(p, plan).into_iter().filter(|(_, far)| *far > reach) {
        out.broken.push(format!("panel {panel} goes {far} walls on"));
    }
    out.panels = panels.len();
    for (n, mut cuts) in panels {
        cuts.sort_by(|a, b| a.0.total_cmp(&b.0));
        let over = cuts.windows(2).any(|w| w[1].0 - w[0].1 < r.kerf - SAME);
        let stock = stock(r, &plan.stocks, n);
        if over || cuts[0].0 < -SAME || cuts.iter().any(|c| c.1 > stock + SAME) {
            out.broken.push(format!("panel {n} is cut {cuts:?}"));
        }
    }
    if out.panels != plan.panels {
        out.broken.push(format!("{} panels, said to be {}", out.panels, plan.panels));
    }
    out
}

/// Walks the order of walls, opens panels and cuts them: offcuts still to be used at the end of each wall, a
/// panel that is cut in its middle counting for both its ends; and panels that several walls share.
fn replayed(p: &SeamProblem, plan: &SeamPlan) -> (Vec<usize>, usize) {
    let runs = p.elevations.iter().flat_map(|e| &e.courses).flat_map(|c| &c.runs);
    let walls: BTreeMap<&str, usize> = runs.map(|r| (r.id.as_str(), r.wall)).collect();
    let mut panels: BTreeMap<usize, Vec<(f64, usize)>> = BTreeMap::new();
    for run in &plan.runs {
        let wall = walls.get(run.id.as_str()).copied().unwrap_or(0);
        let place = plan.order.iter().position(|w| *w == wall).unwrap_or(usize::MAX);
        for c in &run.pieces {
            panels.entry(c.panel).or_default().push((c.start, place));
        }
    }
    let mut waiting = vec![0; plan.order.len()];
    for cuts in panels.values_mut() {
        cuts.sort_by(|a, b| a.0.total_cmp(&b.0));
        for (end, n) in waiting.iter_mut().enumerate() {
            let used = |c: &(f64, usize)| c.1 <= end;
            if cuts.iter().any(used) {
                let stretches = cuts.chunk_by(|a, b| used(a) == used(b));
                *n += stretches.filter(|s| !used(&s[0])).count();
            }
        }
    }
    let shared = panels.values().filter(|cuts| cuts.iter().any(|c| c.1 != cuts[0].1)).count();
    (waiting, shared)
}

/// How many walls lie between the first and the last that each panel serves.
fn far_apart(p: &SeamProblem, plan: &SeamPlan) -> BTreeMap<usize, usize> {
    let mut spans: BTreeMap<usize, (usize, usize)> = BTreeMap::new();
    let plans: BTreeMap<&str, &RunPlan> = plan.runs.iter().map(|r| (r.id.as_str(), r)).collect();
    for run in p.elevations.iter().flat_map(|e| &e.courses).flat_map(|c| &c.runs) {
        let place = plan.order.iter().position(|w| *w == run.wall).unwrap_or(0);
        for c in plans.get(run.id.as_str()).into_iter().flat_map(|r| &r.pieces) {
            let span = spans.entry(c.panel).or_insert((place, place));
            *span = (span.0.min(place), span.1.max(place));
        }
    }
    spans.into_iter().map(|(panel, (first, last))| (panel, last - first)).collect()
}

/// Length of a panel: one of those that the rules have, where they mix several.
fn stock(r: &SeamRules, stocks: &[f64], panel: usize) -> f64 {
    if r.stocks.len() == 1 {
        return r.stock();
    }
    let told = stocks.get(panel).copied().unwrap_or(0.0);
    if r.stocks.iter().any(|s| s.length == told) { told } else { 0.0 }
}

/// Checks one run; its seams, each with whether an obstacle fixes it.
fn one_run(
    p: &SeamProblem,
    run: &SeamRun,
    got: &lapwright::model::seam::RunPlan,
    stocks: &[f64],
    broken: &mut Vec<String>,
) -> Vec<(f64, bool)> {
    let r = &p.rules;
    let cover = run.x1 - run.x0 - 2.0 * r.gap;
    let sum: f64 = got.pieces.iter().map(|c| c.end - c.start).sum();
    if (sum - (got.pieces.len() as f64 - 1.0) * r.lap - cover).abs() > SAME {
        broken.push(format!("{} covers {sum} of {cover}", run.id));
    }
    if got.seams.len() + 1 != got.pieces.len() {
        broken.push(format!("{}: {} seams", run.id, got.seams.len()));
    }
    let is_fixed = |x: f64| run.fixed.iter().any(|f| (f - x).abs() <= 1.0 / 16.0);
    let mut at = Vec::new();
    let mut x = run.x0 + r.gap;
    for pair in got.pieces.windows(2) {
        x += pair[0].end - pair[0].start - r.lap;
        at.push((x + r.lap / 2.0, is_fixed(x + r.lap / 2.0)));
    }
    for (i, (x, fixed)) in at.iter().enumerate() {
        if got.seams.get(i).is_none_or(|s| (s - x).abs() > SAME) {
            broken.push(format!("{} says a seam elsewhere than {x}", run.id));
        }
        let (a, b) = (&got.pieces[i], &got.pieces[i + 1]);
        let end = stock(r, stocks, a.panel);
        if !fixed && ((a.end - end).abs() > SAME || b.start.abs() > SAME) {
            broken.push(format!("{} joins a cut end at {x}", run.id));
        }
        if !fixed && run.barred.iter().any(|(low, high)| low + SAME < *x && *x < high - SAME) {
            broken.push(format!("{} has a seam on a block at {x}", run.id));
        }
    }
    // A piece between fixed seams is as short as they leave it.
    let ends = |i: usize| {
        let left = i == 0 || at[i - 1].1;
        let right = i == at.len() || at[i].1;
        (left, right)
    };
    for (i, c) in got.pieces.iter().enumerate() {
        let whole_part = ends(i) == (true, true);
        if got.pieces.len() > 1 && !whole_part && c.end - c.start < r.shortest - SAME {
            broken.push(format!("{} has a short piece, {}", run.id, c.end - c.start));
        }
    }
    let shortest = r.stocks.iter().map(|s| s.length).fold(f64::INFINITY, f64::min);
    let needless = cover <= shortest && run.fixed.is_empty() && !r.seam_short_runs;
    if got.pieces.len() > 1 && needless {
        broken.push(format!("{} has a needless seam", run.id));
    }
    at
}

fn stagger(p: &SeamProblem, name: &str, mut seams: Vec<Seam>, broken: &mut Vec<String>) {
    let r = &p.rules;
    seams.sort_by(|a, b| a.0.cmp(&b.0).then(a.1.total_cmp(&b.1)));
    for (i, a) in seams.iter().enumerate() {
        for b in &seams[i + 1..] {
            let apart = b.0 - a.0;
            if apart > r.clear_courses as i32 {
                break;
            }
            let near = (a.1 - b.1).abs() < r.stagger - SAME;
            if apart > 0 && near && !(a.2 && b.2) {
                broken.push(format!("{name}: {} in {} and {} in {}", a.1, a.0, b.1, b.0));
            }
        }
    }
}

/// Fewest jamb lines that any lawful parting of a run alone hits, on the eighths of an inch. With
/// several lengths it is not counted.
fn fewest_hits(p: &SeamProblem, run: &SeamRun, avoid: &[f64]) -> usize {
    let r = &p.rules;
    let cover = run.x1 - run.x0 - 2.0 * r.gap;
    let across: Vec<f64> = avoid.iter().copied().filter(|v| run.x0 < *v && *v < run.x1).collect();
    if cover <= r.stock() || across.is_empty() || !run.fixed.is_empty() || r.stocks.len() > 1 {
        return 0;
    }
    let first = ((cover - r.lap) / (r.stock() - r.lap) - 1e-9).ceil().max(2.0) as usize;
    let mut best = usize::MAX;
    for k in [first, first + 1] {
        let sum = cover + (k - 1) as f64 * r.lap - (k - 2) as f64 * r.stock();
        let (low, high) = (r.shortest.max(sum - r.stock()), r.stock().min(sum - r.shortest));
        let steps = ((high - low) * 8.0 + 1e-6).floor() as i64;
        for i in 0..=steps {
            let a = low + i as f64 / 8.0;
            let seam = |j: usize| run.x0 + r.gap + a - r.lap / 2.0 + j as f64 * (r.stock() - r.lap);
            let hits = (0..k - 1)
                .map(|j| across.iter().filter(|v| (seam(j) - **v).abs() < r.jamb - SAME).count())
                .sum();
            best = best.min(hits);
        }
    }
    if best == usize::MAX { 0 } else { best }
}
