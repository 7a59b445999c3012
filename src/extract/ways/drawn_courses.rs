//! Course lines that the architect drew: level lines at an even pitch. They tell siding from the
//! rest, and are never laid out from (`LayoutFact::HatchIsNoLayout`).

use std::collections::BTreeMap;

use crate::geom::segment::Segment;

/// Pitches that drawn courses have, inches (common practice, no source).
const PITCHES: std::ops::RangeInclusive<f64> = 3.0..=14.0;
/// Fewest lines in step that are courses.
const LEAST: usize = 4;
/// How far a line may be from its step, inches.
const OFF: f64 = 0.125;
/// Most levels that are looked at: the search is cubic.
const MOST_LEVELS: usize = 200;

/// Courses as drawn.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct DrawnCourses {
    /// From one butt line to the next, inches.
    pub(crate) pitch: f64,
    /// The butt lines found.
    pub(crate) lines: usize,
}

/// The courses that level lines among `segments` show.
pub(crate) fn drawn_courses(segments: &[Segment]) -> Option<DrawnCourses> {
    let levels = levels(segments);
    let mut best: Option<DrawnCourses> = None;
    for (i, from) in levels.iter().enumerate() {
        for to in &levels[i + 1..] {
            let pitch = to - from;
            if !PITCHES.contains(&pitch) {
                continue;
            }
            let hits = in_step(&levels, *from, pitch);
            let better = best
                .as_ref()
                .is_none_or(|b| hits > b.lines || (hits == b.lines && pitch > b.pitch + OFF));
            if hits >= LEAST && better {
                best = Some(DrawnCourses { pitch, lines: hits });
            }
        }
    }
    best
}

/// Heights of long level lines, bottom to top.
fn levels(segments: &[Segment]) -> Vec<f64> {
    let mut at: BTreeMap<i64, f64> = BTreeMap::new();
    for (a, b) in segments.iter().filter(|(a, b)| a.y == b.y) {
        *at.entry((a.y * 64.0).round() as i64).or_default() += (a.x - b.x).abs();
    }
    let longest = at.values().copied().fold(0.0, f64::max);
    let kept = at.into_iter().filter(|(_, length)| *length >= longest / 8.0);
    kept.map(|(y, _)| y as f64 / 64.0).take(MOST_LEVELS).collect()
}

/// How many levels stand at whole steps of `pitch` from `from`, upward, with at most one step left
/// out at a time: a course may end at a sill.
fn in_step(levels: &[f64], from: f64, pitch: f64) -> usize {
    let (mut hits, mut missed, mut at) = (1, 0, from);
    while missed < 2 {
        at += pitch;
        let near = levels.iter().find(|y| (**y - at).abs() <= OFF);
        match near {
            Some(y) => {
                hits += 1;
                missed = 0;
                // Steps are counted from the line found, so that rounding does not pile up.
                at = *y;
            }
            None => missed += 1,
        }
    }
    hits
}

#[cfg(test)]
mod tests {
    use super::*;

    fn level(y: f64, length: f64) -> Segment {
        ((0.0, y).into(), (length, y).into())
    }

    #[test]
    fn lines_in_step_are_courses_and_a_few_at_odd_heights_are_not() {
        // Pairs of lines, 3/4 in apart, every 6.7 in, one of them moved to a sill.
        let mut lines: Vec<Segment> = Vec::new();
        for k in 0..9 {
            let y = 10.0 + 6.7 * f64::from(k) + if k == 4 { 0.4 } else { 0.0 };
            lines.extend([level(y, 200.0), level(y + 0.75, 200.0)]);
        }
        let found = drawn_courses(&lines).unwrap();
        assert!((found.pitch - 6.7).abs() < 0.02, "{found:?}");
        assert_eq!(found.lines, 8);
        let odd = [0.0, 7.0, 30.0, 41.0, 90.0].map(|y| level(y, 100.0));
        assert_eq!(drawn_courses(&odd), None);
    }
}
