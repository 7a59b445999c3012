//! Where the seams of a part hit openings, by the length of its first piece.

use super::hit_sum::Hits;
use super::options::Way;
use super::part::Part;
use super::rules::Rules;
use super::stagger::seams;
use crate::model::seam::AtOpenings;

/// Steps by which an interval may be wider than it truly is, at either end.
const BETWEEN_STEPS: i64 = 2;

/// Open intervals where a seam stands in a notch or nearer to one than wished, left to right; those that
/// meet are one. Ends between two steps go outward: no seam is nearer than it is told to be.
pub(super) fn wide(notched: &[(f64, f64)], rules: &Rules) -> Vec<(i64, i64)> {
    let steps = rules.steps;
    let outward = |(a, b): &(f64, f64)| (steps.down(*a) - rules.jamb, steps.up(*b) + rules.jamb);
    let mut all: Vec<(i64, i64)> = notched.iter().map(outward).collect();
    all.sort_unstable();
    let mut out: Vec<(i64, i64)> = Vec::new();
    for (a, b) in all {
        match out.last_mut() {
            Some(last) if a < last.1 => last.1 = last.1.max(b),
            _ => out.push((a, b)),
        }
    }
    out
}

/// Hits by first-piece length, as steps.
pub(super) fn hits(part: &Part, way: Way, rules: &Rules) -> Vec<(i64, Hits)> {
    within(part, way, rules, 0)
}

/// The same with every interval `less` steps shorter at both ends.
fn within(part: &Part, way: Way, rules: &Rules, less: i64) -> Vec<(i64, Hits)> {
    let mut turns: Vec<(i64, Hits)> = vec![(way.least, Hits::NONE)];
    let mut turn = |from: i64, to: i64, hit: Hits| {
        if to > way.least && from <= way.most && from < to {
            turns.push((from.max(way.least), hit));
            turns.push((to, hit.times(-1)));
        }
    };
    for x in seams(part, way, 0, rules) {
        for v in &part.avoid {
            // Hit from one step inside the wished distance to one on the other side.
            let near = rules.jamb - less;
            turn(v - x - near + 1, v - x + near, Hits::NEAR_JAMB);
            let on = rules.on_jamb - less;
            turn(v - x - on, v - x + on + 1, Hits::ON_JAMB);
        }
        for (low, high) in &part.notched {
            turn(low + less - x + 1, high - less - x, Hits::IN_NOTCH);
        }
    }
    turns.sort_unstable();
    let mut steps: Vec<(i64, Hits)> = Vec::new();
    let mut count = Hits::NONE;
    for (a, change) in turns {
        count = count + change;
        match steps.last_mut() {
            Some(last) if last.0 == a => last.1 = count,
            _ => steps.push((a, count)),
        }
    }
    steps
}

/// The hits that some first-piece length of a way has where nothing that stands fast forbids it.
fn open<'a>(
    part: &'a Part,
    way: usize,
    steps: &'a [(i64, Hits)],
) -> impl Iterator<Item = Hits> + 'a {
    let most = part.ways[way].most;
    let ends = steps.iter().skip(1).map(|s| s.0 - 1).chain([most]);
    let spans = &part.open[way];
    steps.iter().zip(ends).filter_map(move |(s, end)| {
        let meets = |o: &(i64, i64)| o.0 <= end.min(most) && s.0 <= o.1;
        spans.iter().any(meets).then_some(s.1)
    })
}

/// Least hits of a part by itself.
pub(super) fn least_hits(part: &Part) -> Hits {
    if part.one_piece {
        return Hits::NONE;
    }
    let ways = 0..part.ways.len();
    ways.flat_map(|w| open(part, w, &part.hits[w])).min().unwrap_or(Hits::NONE)
}

/// How few hits of each sort the runs allow, each by itself and each sort by itself: what no layout of
/// them has fewer of. Intervals are shorter than the rules' by what lies between two steps: of the ends of
/// notches, and of the runs, which are posed in whole steps.
pub(super) fn least_at_openings(digest: &super::part::Digest) -> AtOpenings {
    let mut sums = [0; 3];
    for part in digest.parts.iter().filter(|p| !p.one_piece && !p.ways.is_empty()) {
        let mut least = [i64::MAX; 3];
        for (w, way) in part.ways.iter().enumerate() {
            let steps = within(part, *way, &digest.rules, BETWEEN_STEPS);
            for hits in open(part, w, &steps) {
                for (least, n) in least.iter_mut().zip(hits.each()) {
                    *least = n.min(*least);
                }
            }
        }
        for (sum, n) in sums.iter_mut().zip(least) {
            *sum += if n == i64::MAX { 0 } else { n };
        }
    }
    let [in_notches, on_jambs, near_jambs] = sums.map(|n| usize::try_from(n).unwrap_or(0));
    AtOpenings { in_notches, on_jambs, near_jambs }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn notches_that_meet_once_the_distance_is_kept_are_one() {
        let rules = Rules { jamb: 96, ..Rules::plain(2400, 2) };
        let spans = wide(&[(40.0, 60.0), (10.0, 30.0), (100.0, 110.0)], &rules);
        assert_eq!(spans, [(4 * 16, 66 * 16), (94 * 16, 116 * 16)]);
        // 10.03 in lies between 160 and 161 sixteenths, 30.04 in between 480 and 481.
        assert_eq!(wide(&[(10.03, 30.04)], &rules), [(160 - 96, 481 + 96)]);
    }
}
