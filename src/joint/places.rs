//! The sets of joints a run may have.

use crate::geom::tol::ROUNDING;
use crate::model::joint::Studs;
use crate::model::seam::{SeamRules, SeamRun};

/// Sets looked at for one run.
const MOST: usize = 160;
/// From where to where boards go.
pub(super) fn span(run: &SeamRun, rules: &SeamRules) -> (f64, f64) {
    (run.x0 + rules.gap, run.x1 - rules.gap)
}

/// Gap of a joint: a lap below 0.
pub(super) fn gap(rules: &SeamRules) -> f64 {
    -rules.lap
}

/// Places a joint may have in a run: studs, off what is barred; whole inches where no set of studs
/// joins it. Left to right.
pub(super) fn places(run: &SeamRun, rules: &SeamRules, studs: Option<Studs>) -> Vec<f64> {
    let (from, to) = span(run, rules);
    let (first, spacing) = studs.map_or((from.ceil(), 1.0), |s| (s.first, s.spacing));
    let half = gap(rules) / 2.0;
    let low = ((from + rules.shortest + half - first) / spacing - ROUNDING).ceil() as i64;
    let high = ((to - rules.shortest - half - first) / spacing + ROUNDING).floor() as i64;
    let all = (low..=high).map(|n| first + n as f64 * spacing);
    all.filter(|x| run.barred.iter().all(|b| *x <= b.0 || *x >= b.1)).collect()
}

/// Sets of places with the fewest joints, or one more, such that no piece is longer than a board;
/// long first pieces first, thinned evenly where there are many.
pub(super) fn sets(run: &SeamRun, rules: &SeamRules, places: &[f64], more: usize) -> Vec<Vec<f64>> {
    let (from, to) = span(run, rules);
    let g = gap(rules);
    let fewest = ((to - from + g) / (rules.stock() + g) - ROUNDING).ceil() as usize;
    let count = fewest.saturating_sub(1) + more;
    let mut out = Vec::new();
    let mut steps = 20_000;
    deepen(&mut Vec::new(), (from, to), (count, rules, places), &mut out, &mut steps);
    if out.len() > MOST {
        let every = out.len().div_ceil(MOST);
        out = out.into_iter().step_by(every).collect();
    }
    out
}

fn deepen(
    set: &mut Vec<f64>,
    (from, to): (f64, f64),
    on: (usize, &SeamRules, &[f64]),
    out: &mut Vec<Vec<f64>>,
    steps: &mut u32,
) {
    let (count, rules, places) = on;
    let half = gap(rules) / 2.0;
    let begins = set.last().map_or(from, |x| x + half);
    if set.len() == count {
        let length = to - begins;
        if length <= rules.stock() + ROUNDING && length >= rules.shortest - ROUNDING {
            out.push(set.clone());
        }
        return;
    }
    let left = (count - set.len()) as f64;
    for x in places.iter().rev() {
        let length = x - half - begins;
        // What is left must still go into as many boards.
        let rest = to - (x + half);
        if length > rules.stock() + ROUNDING
            || rest > left * (rules.stock() + 2.0 * half) + ROUNDING
        {
            continue;
        }
        if length < rules.shortest - ROUNDING || *steps == 0 {
            return;
        }
        *steps -= 1;
        set.push(*x);
        deepen(set, (from, to), on, out, steps);
        set.pop();
    }
}
