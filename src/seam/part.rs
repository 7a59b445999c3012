//! Runs and parts of runs, with what the search asks of them again and again.

use super::hit_sum::Hits;
use super::options::Way;
use super::rules::Rules;

/// An interval of first-piece lengths, both ends allowed.
pub(super) type Span = (i64, i64);

/// A run, or a part of one between fixed seams.
#[derive(Clone, Debug)]
pub(super) struct Part {
    /// Elevation, course (in the problem's order) and run it came from.
    pub from: (usize, usize, usize),
    /// Course number from the datum.
    pub level: i32,
    /// Place of its wall in the order of walls.
    pub wall: usize,
    /// Left end of what is covered.
    pub left: i64,
    /// Length covered.
    pub cover: i64,
    /// Ways to part it with seams; empty if only one piece is possible.
    pub ways: Vec<Way>,
    /// How many of the ways keep the rules: all, or none where nothing lawful covers the run.
    pub lawful: usize,
    /// Whether one piece may cover it.
    pub one_piece: bool,
    /// Jamb lines across it.
    pub avoid: Vec<i64>,
    /// Intervals where no seam may stand.
    pub barred: Vec<(i64, i64)>,
    /// Open intervals where a seam stands in a notch or too near to one, none meeting another.
    pub notched: Vec<(i64, i64)>,
    /// For each way, where the first piece may end for all that does not move.
    pub open: Vec<Vec<Span>>,
    /// For each way, [`Hits`] from a first-piece length on, up to the next entry's.
    pub hits: Vec<Vec<(i64, Hits)>>,
    /// Least hits that any lawful parting of this part alone has.
    pub least_hits: Hits,
    /// Parts whose seams must keep `stagger` from this one's.
    pub near: Vec<usize>,
    /// Fixed seams of near courses.
    pub fixed_near: Vec<i64>,
}

/// The whole problem.
#[derive(Clone, Debug)]
pub(super) struct Digest {
    pub rules: Rules,
    pub parts: Vec<Part>,
}

/// Hits of a part laid `way` with first piece `a`.
pub(super) fn hits_at(part: &Part, way: usize, a: i64) -> Hits {
    let steps = &part.hits[way];
    if steps.len() < 2 {
        return Hits::NONE;
    }
    steps[steps.partition_point(|s| s.0 <= a).saturating_sub(1)].1
}
