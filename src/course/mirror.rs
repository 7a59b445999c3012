//! The seam problem turned to one hand: a house and its mirror image are one problem, so that one
//! answer serves both and differs in handedness alone.
//!
//! Of the problem and its mirror image, each moved so that every elevation's first run begins at 0,
//! the one whose figures come first in order is solved; the answer is turned and moved back.

use crate::model::ids::RunId;
use crate::model::seam::{RunPlan, SeamCourse, SeamElevation, SeamPlan, SeamProblem, SeamRun};

/// The answer of `solve`, the same for either hand of the house. Fixed seams stand past the right side
/// of what they pass, so a house with any is mirrored in all but these.
pub fn either_hand(
    problem: &SeamProblem,
    solve: impl FnOnce(&SeamProblem) -> SeamPlan,
) -> SeamPlan {
    let (as_drawn, turned) = (placed(problem, false), placed(problem, true));
    let turn = figures(&turned.0) < figures(&as_drawn.0);
    let (mut posed, moves) = if turn { turned } else { as_drawn };
    let walls = walls_numbered(&mut posed);
    let mut plan = back(solve(&posed), problem, &moves, turn);
    plan.order = plan.order.iter().filter_map(|w| walls.get(*w).copied()).collect();
    plan
}

/// Numbers walls as they come, and sorts their orders, so that either hand has the same; what each was
/// numbered before.
fn walls_numbered(problem: &mut SeamProblem) -> Vec<usize> {
    let mut numbers = std::collections::BTreeMap::new();
    let mut before = Vec::new();
    let runs = problem.elevations.iter_mut().flat_map(|e| &mut e.courses).flat_map(|c| &mut c.runs);
    for run in runs {
        let number = *numbers.entry(run.wall).or_insert(before.len());
        if number == before.len() {
            before.push(run.wall);
        }
        run.wall = number;
    }
    for order in &mut problem.waiting.orders {
        *order = order.iter().filter_map(|w| numbers.get(w).copied()).collect();
    }
    problem.waiting.orders.sort();
    before
}

/// The problem, mirrored or not, with each elevation moved to begin at 0; and for each elevation of
/// the problem as given what a place is taken from (mirrored) or less.
fn placed(problem: &SeamProblem, turn: bool) -> (SeamProblem, Vec<f64>) {
    let moves: Vec<f64> = problem
        .elevations
        .iter()
        .map(|e| {
            let runs = e.courses.iter().flat_map(|c| &c.runs);
            let edge = if turn {
                runs.map(|r| r.x1).reduce(f64::max)
            } else {
                runs.map(|r| r.x0).reduce(f64::min)
            };
            edge.unwrap_or(0.0)
        })
        .collect();
    let mut elevations: Vec<SeamElevation> = problem
        .elevations
        .iter()
        .zip(&moves)
        .map(|(e, by)| elevation(e, &|x| if turn { by - x } else { x - by }))
        .collect();
    if turn {
        elevations.reverse();
    }
    let (rules, waiting) = (problem.rules.clone(), problem.waiting.clone());
    (SeamProblem { rules, elevations, waiting }, moves)
}

fn elevation(e: &SeamElevation, to: &dyn Fn(f64) -> f64) -> SeamElevation {
    let places = |list: &[f64]| {
        let mut out: Vec<f64> = list.iter().map(|x| to(*x)).collect();
        out.sort_by(f64::total_cmp);
        out
    };
    let span = |a: f64, b: f64| {
        let (a, b) = (to(a), to(b));
        (a.min(b), a.max(b))
    };
    let run = |r: &SeamRun| {
        let (x0, x1) = span(r.x0, r.x1);
        let spans = |list: &[(f64, f64)]| {
            let mut out: Vec<(f64, f64)> = list.iter().map(|(a, b)| span(*a, *b)).collect();
            out.sort_by(|a, b| a.0.total_cmp(&b.0));
            out
        };
        let (barred, notched) = (spans(&r.barred), spans(&r.notched));
        SeamRun { x0, x1, fixed: places(&r.fixed), barred, notched, ..r.clone() }
    };
    let course = |c: &SeamCourse| {
        let mut runs: Vec<SeamRun> = c.runs.iter().map(run).collect();
        runs.sort_by(|a, b| a.x0.total_cmp(&b.x0).then(a.id.cmp(&b.id)));
        SeamCourse { avoid: places(&c.avoid), runs, ..c.clone() }
    };
    SeamElevation {
        name: e.name.clone(),
        entrances: places(&e.entrances),
        courses: e.courses.iter().map(course).collect(),
    }
}

/// Every figure of a problem in one list, 1/1024 in; two lists are compared as words are.
fn figures(problem: &SeamProblem) -> Vec<i64> {
    let whole = |x: f64| (x * 1024.0).round() as i64;
    let mut out = Vec::new();
    for e in &problem.elevations {
        for c in &e.courses {
            out.push(i64::from(c.index));
            for r in &c.runs {
                out.extend([r.x0, r.x1].map(whole));
                out.extend(r.fixed.iter().map(|x| whole(*x)));
                let spans = r.barred.iter().chain(&r.notched);
                out.extend(spans.flat_map(|b| [whole(b.0), whole(b.1)]));
            }
            out.extend(c.avoid.iter().map(|x| whole(*x)));
        }
        out.extend(e.entrances.iter().map(|x| whole(*x)));
    }
    out
}

/// The answer in the problem's own places and order.
fn back(mut plan: SeamPlan, problem: &SeamProblem, moves: &[f64], turn: bool) -> SeamPlan {
    let mut found: std::collections::BTreeMap<RunId, RunPlan> =
        plan.runs.into_iter().map(|r| (r.id.clone(), r)).collect();
    let stock = problem.rules.stock();
    let placed = |x: f64, by: f64| if turn { by - x } else { x + by };
    let mut runs = Vec::new();
    let mut moved: std::collections::BTreeMap<&str, f64> = std::collections::BTreeMap::new();
    for (e, by) in problem.elevations.iter().zip(moves) {
        for r in e.courses.iter().flat_map(|c| &c.runs) {
            moved.insert(&r.id, *by);
            let Some(mut run) = found.remove(&r.id) else { continue };
            run.seams.iter_mut().for_each(|x| *x = placed(*x, *by));
            if turn {
                run.seams.reverse();
                run.pieces.reverse();
                for p in &mut run.pieces {
                    let stock = plan.stocks.get(p.panel).copied().unwrap_or(stock);
                    (p.start, p.end) = (stock - p.end, stock - p.start);
                }
            }
            runs.push(run);
        }
    }
    plan.runs = runs;
    // Broken rules are marked at seams: their places go back with them.
    let breaks = plan.conflicts.iter_mut().flat_map(|c| &mut c.breaks);
    for s in breaks.flat_map(|b| &mut b.seams) {
        if let Some(by) = moved.get(s.run.as_str()) {
            s.x = placed(s.x, *by);
        }
    }
    plan
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::model::conflict::{Break, Conflict, SeamAt};
    use crate::model::seam::{Cut, SeamRules};

    fn problem(runs: &[(f64, f64)]) -> SeamProblem {
        let rules = SeamRules::usual(150.0);
        let run = |(i, (x0, x1)): (usize, &(f64, f64))| SeamRun {
            id: format!("r{i}").into(),
            wall: 0,
            x0: *x0,
            x1: *x1,
            fixed: Vec::new(),
            barred: Vec::new(),
            notched: Vec::new(),
        };
        let runs = runs.iter().enumerate().map(run).collect();
        let course = SeamCourse { index: 0, avoid: vec![], ripped: false, runs };
        let front =
            SeamElevation { name: "front".into(), entrances: vec![], courses: vec![course] };
        SeamProblem { rules, elevations: vec![front], waiting: Default::default() }
    }

    #[test]
    fn both_hands_pose_one_problem_and_answers_come_back_turned() {
        // A run of 200 left of one of 60, and its mirror image in a wall 300 wide.
        let (one, other) =
            (problem(&[(4.0, 204.0), (240.0, 300.0)]), problem(&[(0.0, 60.0), (96.0, 296.0)]));
        let mut posed = Vec::new();
        for p in [&one, &other] {
            let plan = either_hand(p, |q| {
                posed.push(figures(q));
                let runs = q.elevations[0].courses[0].runs.iter().map(|r| {
                    // A seam 100 in from the left of the long run.
                    let long = r.x1 - r.x0 > 150.0;
                    let cut = |start: f64, end: f64| Cut { panel: 0, start, end };
                    let (pieces, seams) = if long {
                        (vec![cut(49.0, 150.0), cut(0.0, 101.0)], vec![r.x0 + 100.0])
                    } else {
                        (vec![cut(0.0, 59.5)], vec![])
                    };
                    RunPlan { id: r.id.clone(), pieces, seams }
                });
                let runs: Vec<RunPlan> = runs.collect();
                // As if every seam broke a rule.
                let at = |r: &RunPlan| {
                    let of = |x: &f64| SeamAt { run: r.id.clone(), course: 0, x: *x };
                    r.seams.iter().map(of).collect::<Vec<_>>()
                };
                let seams = runs.iter().flat_map(at).collect();
                let one = Break { seams, ..Default::default() };
                let conflict = Conflict { breaks: vec![one], ..Default::default() };
                SeamPlan { runs, conflicts: vec![conflict], ..Default::default() }
            });
            let seams: Vec<f64> = plan.runs.iter().flat_map(|r| r.seams.clone()).collect();
            let told: Vec<f64> = plan.conflicts[0].breaks[0].seams.iter().map(|s| s.x).collect();
            assert_eq!(told, seams);
            let long = plan.runs.iter().find(|r| r.pieces.len() == 2).unwrap();
            if std::ptr::eq(p, &one) {
                // Turned: 4 + 200 - 100.
                assert_eq!(
                    (seams, long.pieces[0].start, long.pieces[1].end),
                    (vec![104.0], 49.0, 101.0)
                );
            } else {
                assert_eq!(
                    (seams, long.pieces[0].start, long.pieces[1].end),
                    (vec![196.0], 49.0, 101.0)
                );
            }
        }
        assert_eq!(posed[0], posed[1]);
    }
}
