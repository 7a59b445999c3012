//! How seams look together: stairs, ladders, seams beside an entrance.
//!
//! A **stair** is three courses, one over the other, whose seams step the same way by the same
//! width; a **ladder** is two seams in line with only the clear courses between.

use std::collections::BTreeMap;

use super::hit_sum::Hits;
use super::part::{Digest, hits_at};
use super::placed::Placed;
use super::stagger::seams;
use crate::model::seam::{IN_LINE, STAIR, SeamProblem};

/// A seam this near to the middle of an entrance is looked at (3 ft): common practice, no source.
const BESIDE: i64 = 36;

/// Costs, one against the other; seams at openings come before all of these.
const STAIR_SEAM: i64 = 10;
const LADDER: i64 = 10;
const ENTRANCE: i64 = 8;

/// Which parts are looked at together.
#[derive(Clone, Debug)]
pub(super) struct Looks {
    /// Parts one and two courses up and down, and those that may stand in line.
    over: Vec<[Vec<usize>; 6]>,
    entrances: Vec<Vec<i64>>,
}

/// Seams round a part, by course: one up, two up, one down, two down, in line up and down.
pub(super) type Round = [Vec<i64>; 6];

impl Looks {
    pub(super) fn new(problem: &SeamProblem, digest: &Digest) -> Self {
        let mut levels: BTreeMap<(usize, i32), Vec<usize>> = BTreeMap::new();
        for (i, p) in digest.parts.iter().enumerate() {
            if !p.ways.is_empty() {
                levels.entry((p.from.0, p.level)).or_default().push(i);
            }
        }
        let line = digest.rules.clear + 1;
        let over = digest.parts.iter().map(|p| {
            [1, 2, -1, -2, line, -line].map(|d| {
                let key = (p.from.0, p.level + d);
                if p.ways.is_empty() {
                    Vec::new()
                } else {
                    levels.get(&key).cloned().unwrap_or_default()
                }
            })
        });
        let entrances = digest.parts.iter().map(|p| {
            let doors = problem.elevations.get(p.from.0).map(|e| e.entrances.as_slice());
            let steps = digest.rules.steps;
            let (doors, beside) =
                (doors.unwrap_or_default().iter().map(|x| steps.whole(*x)), steps.of(BESIDE));
            doors.filter(|x| *x > p.left - beside && *x < p.left + p.cover + beside).collect()
        });
        Looks { over: over.collect(), entrances: entrances.collect() }
    }

    /// Fills in where the seams round a part stand.
    pub(super) fn look_round(
        &self,
        digest: &Digest,
        placed: &[Option<Placed>],
        part: usize,
        round: &mut Round,
    ) {
        for (parts, out) in self.over[part].iter().zip(round) {
            out.clear();
            for q in parts {
                if let Some(Placed::Seamed { way, a, .. }) = placed[*q] {
                    let p = &digest.parts[*q];
                    out.extend(seams(p, p.ways[way], a, &digest.rules));
                }
            }
            // Mostly one run, whose seams rise as they are.
            if parts.len() > 1 {
                out.sort_unstable();
            }
        }
    }

    /// What is ill about a part laid `way` with first piece `a`: seams at openings, then stairs,
    /// ladders, seams beside entrances.
    pub(super) fn cost(
        &self,
        digest: &Digest,
        round: &Round,
        part: usize,
        way: usize,
        a: i64,
    ) -> Ill {
        let p = &digest.parts[part];
        let mut cost = 0;
        let [up, up2, down, down2, line, line2] = round;
        let steps = digest.rules.steps;
        let (alike, step) = (steps.of(STAIR.0), steps.of(STAIR.1));
        let (in_line, beside) = (steps.of(IN_LINE), steps.of(BESIDE));
        for x in seams(p, p.ways[way], a, &digest.rules) {
            cost += LADDER * (count(line, x, in_line) + count(line2, x, in_line));
            // As the lowest, the highest and the middle one of a stair.
            for (first, second) in [(up, up2), (down, down2)] {
                for b in within(first, x, step) {
                    cost += STAIR_SEAM * count(second, 2 * b - x, alike);
                }
            }
            for b in within(up, x, step) {
                cost += STAIR_SEAM * count(down, 2 * x - b, alike);
            }
            let doors = self.entrances[part].iter().filter(|e| (x - **e).abs() < beside);
            cost += ENTRANCE * doors.count() as i64;
        }
        Ill { hits: hits_at(p, way, a), others: cost }
    }
}

/// Looks, and room to note what stands round a part: it is looked at again and again.
pub(super) struct Viewer<'a> {
    pub(super) looks: &'a Looks,
    round: Round,
}

impl<'a> Viewer<'a> {
    pub(super) fn new(looks: &'a Looks) -> Self {
        Viewer { looks, round: Round::default() }
    }

    /// [`Looks::cost`] of a part as it stands.
    pub(super) fn of(&mut self, digest: &Digest, placed: &[Option<Placed>], part: usize) -> Ill {
        let Some(Placed::Seamed { way, a, .. }) = placed[part] else { return Ill::default() };
        self.looks.look_round(digest, placed, part, &mut self.round);
        self.looks.cost(digest, &self.round, part, way, a)
    }
}

/// What is ill about some seams: hits at openings, then all else.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Ill {
    pub(super) hits: Hits,
    pub(super) others: i64,
}

impl Ill {
    /// One against the other while a part is laid, so that no hit is worth a panel.
    pub(super) fn weight(self) -> i64 {
        self.hits.look() + self.others
    }
}

impl std::ops::Add for Ill {
    type Output = Ill;

    fn add(self, other: Ill) -> Ill {
        Ill { hits: self.hits + other.hits, others: self.others + other.others }
    }
}

impl std::ops::Sub for Ill {
    type Output = Ill;

    fn sub(self, other: Ill) -> Ill {
        Ill { hits: self.hits + other.hits.times(-1), others: self.others - other.others }
    }
}

/// Of sorted places, those nearer to `x` than `reach`.
fn within(places: &[i64], x: i64, reach: i64) -> &[i64] {
    let from = places.partition_point(|p| *p <= x - reach);
    let to = places.partition_point(|p| *p < x + reach);
    &places[from..to.max(from)]
}

fn count(places: &[i64], x: i64, reach: i64) -> i64 {
    within(places, x, reach).len() as i64
}
