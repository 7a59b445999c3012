//! Where a part's seams may stand: intervals of first-piece lengths, less those that a seam of a
//! near course, a fixed seam or a mounting block forbids.
//!
//! Seams of every run stand one pitch apart, so all seams of a neighbor of the same pitch forbid what
//! its first one forbids, shifted by whole pitches.

use super::options::Way;
use super::part::{Digest, Part, Span};
use super::placed::Placed;
use super::rules::Rules;

/// Middle of the first seam of a part laid with first piece `a`. An odd lap's middle is counted at
/// the whole step; `answer` states it exactly.
pub(super) fn first_seam(part: &Part, a: i64, rules: &Rules) -> i64 {
    part.left + a - rules.lap / 2
}

/// Seams of a part laid with first piece `a`: middles of its laps.
pub(super) fn seams(part: &Part, way: Way, a: i64, rules: &Rules) -> impl Iterator<Item = i64> {
    let (first, pitch) = (first_seam(part, a, rules), way.pitch(rules));
    (0..way.k - 1).map(move |j| first + j * pitch)
}

/// The seams of a part laid `way` with first piece `a`: the first, how many, how far apart.
pub(super) fn row(part: &Part, way: usize, a: i64, rules: &Rules) -> (i64, i64, i64) {
    let way = part.ways[way];
    (first_seam(part, a, rules), way.k - 1, way.pitch(rules))
}

/// Calls `forbid` with each open interval of first-piece lengths of `part` laid `way`, that would
/// bring one of its seams between `low` and `high` sideways of one of `count` seams, the first at
/// `x` and `pitch` apart.
#[inline]
pub(super) fn blocked(
    part: &Part,
    way: Way,
    rules: &Rules,
    near: (i64, i64, i64),
    reach: (i64, i64),
    mut forbid: impl FnMut(i64, i64),
) {
    let (x, count, pitch) = near;
    let (low, high) = reach;
    let mut meet = |center: i64, pitch: i64, least: i64, most: i64| {
        // Whole pitches between the two seams that meet.
        let from = (way.least - high - center).div_euclid(pitch).max(least);
        let to = ((way.most - low - center).div_euclid(pitch)).min(most);
        for d in from..=to {
            let (a, b) = (center + d * pitch + low, center + d * pitch + high);
            if b > way.least && a < way.most {
                forbid(a, b);
            }
        }
    };
    let (own, center) = (way.pitch(rules), x - first_seam(part, 0, rules));
    if own == pitch || way.k == 2 || count == 1 {
        let pitch = if count == 1 { own } else { pitch };
        meet(center, pitch, 2 - way.k, count - 1);
        return;
    }
    // Panels of two lengths: each of this part's seams by itself.
    for j in 0..way.k - 1 {
        meet(center - j * own, pitch, 0, count - 1);
    }
}

/// What is left of `open` when open intervals `off` are taken out.
#[inline]
pub(super) fn without(open: &[Span], off: &mut [Span], out: &mut Vec<Span>) {
    out.clear();
    off.sort_unstable();
    for (least, most) in open {
        let mut at = *least;
        for (low, high) in off.iter() {
            // The bounds themselves are allowed: exactly the stagger apart is far enough.
            if *low >= at {
                if *low >= *most {
                    break;
                }
                out.push((at, *low));
            }
            at = at.max(*high);
        }
        if at <= *most {
            out.push((at, *most));
        }
    }
}

/// Spans that keep every hard rule but the stagger from seams that are not fixed.
pub(super) fn standing(part: &Part, way: Way, rules: &Rules) -> Vec<Span> {
    let mut off = Vec::new();
    for x in &part.fixed_near {
        let reach = (-rules.stagger, rules.stagger);
        blocked(part, way, rules, (*x, 1, way.pitch(rules)), reach, |a, b| off.push((a, b)));
    }
    for (low, high) in &part.barred {
        let near = (0, 1, way.pitch(rules));
        blocked(part, way, rules, near, (*low, *high), |a, b| off.push((a, b)));
    }
    let mut out = Vec::new();
    without(&[(way.least, way.most)], &mut off, &mut out);
    out
}

/// The first-piece lengths that a run may have, in intervals that are filled anew for each.
#[derive(Clone, Debug, Default)]
pub(super) struct AllowedSpans {
    off: Vec<Span>,
    pub spans: Vec<Span>,
}

impl AllowedSpans {
    /// Fills `spans` with the first-piece lengths that keep every hard rule, given what is laid.
    #[inline]
    pub(super) fn find(
        &mut self,
        digest: &Digest,
        placed: &[Option<Placed>],
        part: usize,
        way: usize,
    ) {
        let (p, rules) = (&digest.parts[part], &digest.rules);
        self.off.clear();
        let reach = (-rules.stagger, rules.stagger);
        for &q in &p.near {
            if let Some(Placed::Seamed { way: w, a, .. }) = placed[q] {
                let near = row(&digest.parts[q], w, a, rules);
                blocked(p, p.ways[way], rules, near, reach, |a, b| self.off.push((a, b)));
            }
        }
        without(&p.open[way], &mut self.off, &mut self.spans);
    }

    /// Whether a part stands as the rules want.
    pub(super) fn lawful(
        &mut self,
        digest: &Digest,
        placed: &[Option<Placed>],
        part: usize,
    ) -> bool {
        let Some(Placed::Seamed { way, a, .. }) = placed[part] else { return true };
        if way >= digest.parts[part].lawful {
            return false;
        }
        self.find(digest, placed, part, way);
        self.spans.iter().any(|s| s.0 <= a && a <= s.1)
    }
}
