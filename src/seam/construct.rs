//! A first whole layout by inserting every part once, and guided ejection where rules leave no
//! place.

use std::collections::VecDeque;

use super::insert::Inserter;
use super::part::Digest;
use super::placed::Placed;
use super::pool::Pool;
use super::random::Random;
use super::stagger::{blocked, row};

/// Times that a part may be without a place before it is laid close to a neighbor.
const PATIENCE: u64 = 6;

/// A first whole layout: seamed runs first bottom up, then runs of one piece by falling length.
pub(super) fn lay(digest: &Digest) -> Pool {
    let mut pool = Pool::new(digest);
    let mut inserter = Inserter::new(digest, Random::new(digest.rules.seed), 0);
    let mut order: Vec<usize> = (0..digest.parts.len()).collect();
    order.sort_by_key(|i| {
        let p = &digest.parts[*i];
        let seamed = !p.ways.is_empty() && !p.one_piece;
        if seamed { (0, p.from.0 as i64, i64::from(p.level), p.left) } else { (1, -p.cover, 0, 0) }
    });
    insert_all(&mut inserter, &mut pool, order);
    pool
}

/// Inserts parts in order; where rules leave no place, the neighbors in the way are taken up and
/// laid again later. Weights of parts grow each time they find no place, so that the search does
/// not turn in circles; after too many turns a part is laid with the fewest rules broken.
fn insert_all(inserter: &mut Inserter, pool: &mut Pool, order: Vec<usize>) {
    let digest = inserter.digest;
    let mut queue: VecDeque<usize> = order.into();
    let mut weights = vec![1u64; digest.parts.len()];
    let mut turns = 40 * digest.parts.len().max(10);
    while let Some(part) = queue.pop_front() {
        if let Some(how) = inserter.best(pool, part) {
            pool.place(digest, part, how);
            continue;
        }
        weights[part] += 1;
        turns = turns.saturating_sub(1);
        let (way, a, blockers) = least_blocked(digest, pool, part, &weights);
        let stuck = turns == 0 || weights[part] > 60;
        if !stuck {
            for q in &blockers {
                pool.take(digest, *q);
            }
        }
        // Neighbors that leave no room by halves push one another round; close up, they find it.
        let close = !stuck && weights[part] > PATIENCE;
        inserter.pinned[part] = close.then_some((way, a));
        let how = inserter.best(pool, part).unwrap_or_else(|| {
            let rest = digest.parts[part].ways[way].sum - a;
            let kinds =
                [a, rest].map(|length| holding(digest, way_kind(digest, part, way), length));
            let (first, other) = pool.fresh(kinds[0]);
            let last = if kinds[0] == kinds[1] { other } else { pool.fresh(kinds[1]).0 };
            Placed::Seamed { way, a, first, last }
        });
        inserter.pinned[part] = None;
        pool.place(digest, part, how);
        if !stuck {
            blockers.into_iter().rev().for_each(|q| queue.push_front(q));
        }
    }
}

/// The kind of the whole panels of a way.
fn way_kind(digest: &Digest, part: usize, way: usize) -> usize {
    digest.parts[part].ways[way].whole
}

/// A kind of panel that holds an end piece: that of the whole ones, if it does.
fn holding(digest: &Digest, kind: usize, length: i64) -> usize {
    let rules = &digest.rules;
    let holds = |k: &usize| rules.panel_of(*k) >= length;
    if holds(&kind) {
        return kind;
    }
    rules.kinds().filter(holds).min_by_key(|k| rules.weight_of(*k)).unwrap_or(kind)
}

/// The way and first-piece length that the lightest set of neighbors blocks, and that set.
fn least_blocked(
    digest: &Digest,
    pool: &Pool,
    part: usize,
    weights: &[u64],
) -> (usize, i64, Vec<usize>) {
    let (p, rules) = (&digest.parts[part], &digest.rules);
    let mut best = (u64::MAX, 0, p.ways.first().map_or(0, |w| w.least), Vec::new());
    let reach = (-rules.stagger, rules.stagger);
    let tried = if p.lawful > 0 { p.lawful } else { p.ways.len() };
    for (w, way) in p.ways[..tried].iter().enumerate() {
        // What each neighbor blocks; what never moves weighs more than all that does.
        let mut off: Vec<(i64, i64, Option<usize>)> = Vec::new();
        for &q in &p.near {
            if let Some(Placed::Seamed { way: v, a, .. }) = pool.placed[q] {
                let near = row(&digest.parts[q], v, a, rules);
                blocked(p, *way, rules, near, reach, |a, b| off.push((a, b, Some(q))));
            }
        }
        let mut at = way.least;
        for open in p.open[w].iter().chain(&[(way.most + 1, way.most + 1)]) {
            if at < open.0 {
                off.push((at - 1, open.0, None));
            }
            at = open.1 + 1;
        }
        let inside = |a: &i64| *a >= way.least && *a <= way.most;
        let mut tried: Vec<i64> = off.iter().flat_map(|o| [o.0, o.1]).filter(inside).collect();
        tried.extend([way.least, way.most]);
        tried.sort_unstable();
        tried.dedup();
        for a in tried {
            let hit = || off.iter().filter(|o| o.0 < a && a < o.1);
            let mut who: Vec<usize> = hit().filter_map(|o| o.2).collect();
            who.sort_unstable();
            who.dedup();
            let fast = hit().filter(|o| o.2.is_none()).count() as u64;
            let weight = who.iter().map(|q| weights[*q]).sum::<u64>() + 1_000_000 * fast;
            if weight < best.0 {
                best = (weight, w, a, who);
            }
        }
    }
    (best.1, best.2, best.3)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::model::seam::{SeamCourse, SeamElevation, SeamProblem, SeamRules, SeamRun};
    use crate::seam::conflicts::broken;

    #[test]
    fn courses_that_leave_no_room_by_halves_are_laid_close_up() {
        // First pieces of 42 to 144 in: 42, 66, 90 and 114 round and round keep 24 in, but three that
        // stand in the middle of what is left shut a fourth out.
        for seed in 1..=100 {
            let rules = SeamRules { gap: 0.0, seed, ..SeamRules::usual(144.0) };
            let run = |id: i32| SeamRun {
                id: id.to_string().into(),
                wall: 0,
                x0: 0.0,
                x1: 470.25,
                fixed: vec![],
                barred: vec![],
                notched: Vec::new(),
            };
            let courses = (0..40).map(|index| SeamCourse {
                index,
                runs: vec![run(index)],
                ..Default::default()
            });
            let elevation = SeamElevation { courses: courses.collect(), ..Default::default() };
            let digest = Digest::new(&SeamProblem {
                rules,
                elevations: vec![elevation],
                waiting: Default::default(),
            });
            assert_eq!(broken(&digest, &lay(&digest)), Vec::<usize>::new(), "seed {seed}");
        }
    }
}
