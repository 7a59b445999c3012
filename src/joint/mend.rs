//! Joints of courses that clash, moved until none does: each run in turn takes the studs that clash
//! least, and what clashes again and again weighs more each time (Morris's breakout method, 1993).

use super::ask::Ask;
use super::near::Near;
use super::places::{gap, places, span};
use crate::geom::tol::ROUNDING;
use crate::model::joint::JointRules;
use crate::model::seam::SeamRules;

/// Rounds of each run, in which it may be laid again.
const ROUNDS: usize = 60;
/// A clash, beside a joint more.
const CLASH: u64 = 1000;

/// The joints of every run once no two clash, from how they are laid; `None` where none is found.
pub(super) fn mended(
    asks: &[Ask],
    laid: &[Vec<f64>],
    rules: &SeamRules,
    joints: &JointRules,
) -> Option<Vec<Vec<f64>>> {
    let near = Near::of(asks, rules);
    let mut now = laid.to_vec();
    let studs: Vec<Vec<f64>> = asks
        .iter()
        .map(|a| places(a.run, rules, joints.studs.get(&a.run.id).map(|s| s.1)))
        .collect();
    let joined: Vec<bool> = asks
        .iter()
        .map(|a| {
            let (from, to) = span(a.run, rules);
            to - from > rules.stock() + ROUNDING
        })
        .collect();
    let mut weights: Vec<Vec<u64>> = studs.iter().map(|s| vec![1; s.len()]).collect();
    for i in (0..asks.len()).filter(|i| joined[*i]) {
        // A run that wants a joint and has none is not laid yet.
        let on_studs = !now[i].is_empty()
            && now[i].iter().all(|x| studs[i].iter().any(|s| (s - x).abs() < ROUNDING));
        if !on_studs {
            now[i] = fewest(&asks[i], rules, &studs[i], |_| 0)?;
        }
    }
    let clashes = |now: &[Vec<f64>], i: usize, x: f64| -> u64 {
        let others = near.of_run(i).iter().flat_map(|j| &now[*j]);
        others.filter(|y| (x - **y).abs() < joints.apart - ROUNDING).count() as u64
    };
    let mut at = 0;
    for _ in 0..ROUNDS * asks.len() {
        let clashing = |i: &usize| joined[*i] && now[*i].iter().any(|x| clashes(&now, *i, *x) > 0);
        let turn = (0..asks.len()).map(|k| (at + k) % asks.len());
        let Some(i) = turn.into_iter().find(clashing) else { return Some(now) };
        at = i + 1;
        let cost = |k: usize| clashes(&now, i, studs[i][k]) * CLASH * weights[i][k];
        let next = fewest(&asks[i], rules, &studs[i], cost)?;
        now[i] = next;
        for (k, x) in studs[i].iter().enumerate() {
            if now[i].contains(x) {
                weights[i][k] += clashes(&now, i, *x).min(1);
            }
        }
    }
    None
}

/// The set of studs that costs least, a joint the more counting 1; `None` where no set joins the run.
fn fewest(
    ask: &Ask,
    rules: &SeamRules,
    studs: &[f64],
    cost: impl Fn(usize) -> u64,
) -> Option<Vec<f64>> {
    let (from, to) = span(ask.run, rules);
    let half = gap(rules) / 2.0;
    let fits =
        |a: f64, b: f64| b - a <= rules.stock() + ROUNDING && b - a >= rules.shortest - ROUNDING;
    // The least cost of joints up to each stud, and the one before.
    let mut best: Vec<Option<(u64, Option<usize>)>> = vec![None; studs.len()];
    for k in 0..studs.len() {
        let own = cost(k) + 1;
        let first = fits(from, studs[k] - half).then_some((own, None));
        let after = (0..k).rev().filter_map(|p| {
            let (before, _) = best[p]?;
            fits(studs[p] + half, studs[k] - half).then_some((before + own, Some(p)))
        });
        best[k] = first.into_iter().chain(after).min_by_key(|b| b.0);
    }
    let ends = (0..studs.len()).filter(|k| fits(studs[*k] + half, to));
    let mut at = ends.filter_map(|k| Some((best[k]?.0, k))).min().map(|b| b.1);
    at?;
    let mut out = Vec::new();
    while let Some(k) = at {
        out.push(studs[k]);
        at = best[k].and_then(|b| b.1);
    }
    out.reverse();
    Some(out)
}
