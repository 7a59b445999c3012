//! Where the seams of a part hit openings, by the length of its first piece.

use super::hit_sum::Hits;
use super::options::Way;
use super::part::{Digest, Part, Span, hits_at};
use super::placed::Placed;
use super::rules::Rules;
use super::stagger::seams;

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

/// Where a seam is `reach` steps from one of some lines at most, from the first such step to the one after the
/// last: a seam near two lines is one seam.
fn round(lines: &[i64], reach: i64) -> Vec<(i64, i64)> {
    let mut lines = lines.to_vec();
    lines.sort_unstable();
    let mut out: Vec<(i64, i64)> = Vec::new();
    for (a, b) in lines.iter().map(|v| (v - reach, v + reach + 1)).filter(|s| s.0 < s.1) {
        match out.last_mut() {
            Some(last) if a <= last.1 => last.1 = last.1.max(b),
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
pub(super) fn within(part: &Part, way: Way, rules: &Rules, less: i64) -> Vec<(i64, Hits)> {
    let mut turns: Vec<(i64, Hits)> = vec![(way.least, Hits::NONE)];
    let mut turn = |from: i64, to: i64, hit: Hits| {
        if to > way.least && from <= way.most && from < to {
            turns.push((from.max(way.least), hit));
            turns.push((to, hit.times(-1)));
        }
    };
    let near = round(&part.avoid, rules.jamb - less - 1);
    let on = round(&part.avoid, rules.on_jamb - less);
    for x in seams(part, way, 0, rules) {
        near.iter().for_each(|(a, b)| turn(a - x, b - x, Hits::NEAR_JAMB));
        on.iter().for_each(|(a, b)| turn(a - x, b - x, Hits::ON_JAMB));
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

/// Every stretch of first-piece lengths of a way that nothing that stands fast forbids, with the hits all along it.
pub(super) fn open<'a>(
    part: &'a Part,
    way: usize,
    steps: &'a [(i64, Hits)],
) -> impl Iterator<Item = (Hits, Span)> + 'a {
    let most = part.ways[way].most;
    let ends = steps.iter().skip(1).map(|s| s.0 - 1).chain([most]);
    let spans = &part.open[way];
    steps.iter().zip(ends).flat_map(move |(s, end)| {
        let meet = spans.iter().map(move |o| (o.0.max(s.0), o.1.min(end).min(most)));
        meet.filter(|m| m.0 <= m.1).map(|m| (s.1, m))
    })
}

/// Parts that have more hits as they stand than each by itself needs.
pub(super) fn hit_more(digest: &Digest, placed: &[Option<Placed>]) -> Vec<usize> {
    let more = |p: &usize| match placed[*p] {
        Some(Placed::Seamed { way, a, .. }) => {
            hits_at(&digest.parts[*p], way, a) > digest.parts[*p].least_hits
        }
        _ => false,
    };
    (0..digest.parts.len()).filter(more).collect()
}

/// Least hits of a part by itself.
pub(super) fn least_hits(part: &Part) -> Hits {
    if part.one_piece {
        return Hits::NONE;
    }
    let ways = 0..part.ways.len();
    ways.flat_map(|w| open(part, w, &part.hits[w])).map(|o| o.0).min().unwrap_or(Hits::NONE)
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
