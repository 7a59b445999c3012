//! Joints of courses that clash, moved until none does: each run in turn takes the studs that clash
//! least, and what clashes again and again weighs more each time (Morris's breakout method, 1993).

use super::ask::Ask;
use super::near::Near;
use super::places::{gap, places, span};
use crate::geom::tol::ROUNDING;
use crate::model::joint::{JointRules, Studs};
use crate::model::seam::SeamRules;

/// Rounds of each run, in which it may be laid again.
const ROUNDS: usize = 60;
/// Runs begun with from patterns, all patterns together: large houses try fewer.
const MOST_BEGUN: usize = 4000;
/// Places of a pattern along the studs that are begun from.
const MOST_SHIFTS: i64 = 24;
/// A clash, beside a joint more.
const CLASH: u64 = 1000;

/// The joints of every run once no two clash, from how they are laid, else from a pattern that every
/// course takes its turn of; `None` where none is found.
pub(super) fn mended(
    asks: &[Ask],
    laid: &[Vec<f64>],
    rules: &SeamRules,
    joints: &JointRules,
) -> Option<Vec<Vec<f64>>> {
    let studs: Vec<Vec<f64>> = asks
        .iter()
        .map(|a| places(a.run, rules, joints.studs.get(&a.run.id).map(|s| s.1)))
        .collect();
    let widest = joints.studs.values().map(|s| studs_of_a_board(rules, s.1)).max().unwrap_or(0);
    let most = MOST_BEGUN / asks.len().max(1) + 1;
    let shifts = (0..widest.min(MOST_SHIFTS)).take(most).filter_map(|shift| {
        let start = asks.iter().zip(&studs).map(|(a, s)| patterned(a, s, rules, joints, shift));
        start.collect::<Option<Vec<Vec<f64>>>>()
    });
    let mut starts = std::iter::once(laid.to_vec()).chain(shifts);
    starts.find_map(|start| apart(asks, start, &studs, rules, joints))
}

/// How many studs a board reaches over from joint to joint.
fn studs_of_a_board(rules: &SeamRules, studs: Studs) -> i64 {
    ((rules.stock() + gap(rules)) / studs.spacing + ROUNDING).floor().max(1.0) as i64
}

/// Joints of a run a board apart, on the studs that are its course's: courses that must keep apart take
/// others in turn. Where those do not join it, what joins it with the fewest others.
fn patterned(
    ask: &Ask,
    places: &[f64],
    rules: &SeamRules,
    joints: &JointRules,
    shift: i64,
) -> Option<Vec<f64>> {
    let (from, to) = span(ask.run, rules);
    if to - from <= rules.stock() + ROUNDING {
        return Some(Vec::new());
    }
    let studs = joints.studs.get(&ask.run.id)?.1;
    let board = studs_of_a_board(rules, studs);
    let apart = (joints.apart / studs.spacing - ROUNDING).ceil() as i64;
    let turn = i64::from(ask.course).rem_euclid(i64::from(rules.clear_courses) + 1);
    let own = (shift + turn * apart).rem_euclid(board);
    let is_own = |k: usize| {
        let n = ((places[k] - studs.first) / studs.spacing).round() as i64;
        n.rem_euclid(board) == own
    };
    fewest(ask, rules, places, |k| if is_own(k) { 0 } else { CLASH })
}

/// The joints of every run once no two clash, each run in turn laid anew.
fn apart(
    asks: &[Ask],
    mut now: Vec<Vec<f64>>,
    studs: &[Vec<f64>],
    rules: &SeamRules,
    joints: &JointRules,
) -> Option<Vec<Vec<f64>>> {
    let near = Near::of(asks, rules);
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
