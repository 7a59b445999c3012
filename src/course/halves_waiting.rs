//! Halves that wait: where both halves of a ripped panel serve, the one lies about until its own wall comes.

use std::collections::BTreeMap;

use super::problem::CutHouse;
use crate::job::Job;

/// What waits at the ends of walls, by their place in the order, as panels come to share their halves.
pub(super) struct HalvesWaiting {
    most: Option<usize>,
    reach: usize,
    counts: Vec<usize>,
    /// From the first to the last wall that uses each panel; the first over the last where none does.
    spans: Vec<(usize, usize)>,
}

impl HalvesWaiting {
    /// What waits before any panel shares its halves.
    pub(super) fn new(made: &CutHouse, order: &[usize], job: &Job) -> Self {
        let rest = (0..made.courses.len()).filter(|i| !order.contains(i));
        let turns: Vec<usize> = order.iter().copied().chain(rest).collect();
        // Pieces of each panel: where they begin, and the turn of their wall.
        let mut cuts: BTreeMap<&str, Vec<(f64, usize)>> = BTreeMap::new();
        for (turn, field) in turns.iter().enumerate() {
            let courses = made.courses.get(*field).into_iter().flatten();
            for p in courses.flat_map(|c| &c.runs).flat_map(|r| &r.pieces) {
                cuts.entry(p.panel.as_str()).or_default().push((p.start, turn));
            }
        }
        let mut counts = vec![0; turns.len()];
        for of in cuts.values_mut() {
            of.sort_by(|a, b| a.0.total_cmp(&b.0));
            let opened = of.iter().map(|c| c.1).min().unwrap_or(0);
            for (end, n) in counts.iter_mut().enumerate().skip(opened) {
                let left = of.chunk_by(|a, b| (a.1 > end) == (b.1 > end));
                *n += left.filter(|l| l[0].1 > end).count();
            }
        }
        let span = |id: &str| {
            let of = cuts.get(id).into_iter().flatten();
            of.fold((usize::MAX, 0), |(a, b), c| (a.min(c.1), b.max(c.1)))
        };
        let spans = made.panels.iter().map(|p| span(&p.id)).collect();
        let (most, reach) = (job.seams.waiting.most(), job.seams.offcuts.walls());
        HalvesWaiting { most, reach, counts, spans }
    }

    /// From the first wall of the earlier to that of the later: there the later one's half waits as well.
    fn added(&self, a: usize, b: usize) -> std::ops::Range<usize> {
        let (p, q) = (self.spans[a].0, self.spans[b].0);
        p.min(q)..p.max(q)
    }

    /// Whether two panels may be one.
    pub(super) fn may(&self, a: usize, b: usize) -> bool {
        let (p, q) = (self.spans[a], self.spans[b]);
        let near = p.1.max(q.1).saturating_sub(p.0.min(q.0)) <= self.reach;
        let room = |end: usize| {
            let n = self.counts.get(end).copied().unwrap_or(0);
            self.most.is_none_or(|most| n < most)
        };
        near && self.added(a, b).all(room)
    }

    /// Makes them one.
    pub(super) fn share(&mut self, a: usize, b: usize) {
        for end in self.added(a, b) {
            if let Some(n) = self.counts.get_mut(end) {
                *n += 1;
            }
        }
    }
}
