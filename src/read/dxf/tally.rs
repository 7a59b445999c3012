//! What is counted over all of a drawing's entities while blocks are inserted.

use std::collections::BTreeMap;
use std::sync::Arc;

use crate::finding::drawing::{BlockFault, DrawingFinding};
use crate::finding::{Finding, Findings};
use crate::origin::Origin;
use crate::read::limits::Limits;

/// Most blocks that are told of one by one.
pub(super) const MOST_TOLD: usize = 20;

/// What is counted over all of a drawing's entities.
#[derive(Default)]
pub(super) struct Tally {
    /// Whether a limit was met and told.
    pub full: bool,
    /// Points so far.
    pub points: usize,
    /// Shapes left out so far.
    pub left: usize,
    /// Indices of the items, and of the shapes left out, that are flagged invisible.
    pub invisible: Vec<usize>,
    pub invisible_left: Vec<usize>,
    /// Blocks inserted but not defined.
    pub missing: Vec<Arc<str>>,
    /// Shapes with absurd coordinates: how many, and the first.
    pub absurd: Option<(usize, Origin)>,
    /// Blocks that stand in other files: which one, how many insertions, and the first.
    pub external: BTreeMap<Arc<str>, (String, usize, Origin)>,
    /// Insertions left out by block, with why, how many, and the first.
    pub looped: BTreeMap<Arc<str>, (BlockFault, usize, Origin)>,
}

impl Tally {
    /// Counts a shape with a coordinate beyond the limit: millions of them are one finding.
    pub(super) fn too_far(&mut self, at: &Origin) {
        self.absurd.get_or_insert_with(|| (0, at.clone())).0 += 1;
    }

    /// Tells of what was left out: blocks not defined, shapes too far away, blocks inside themselves.
    pub(super) fn tell(&mut self, limits: &Limits, findings: &mut Findings) {
        if let Some((n, first)) = self.absurd.take() {
            let (shapes, farthest) = (n, limits.coordinate);
            let kind = DrawingFinding::NumbersAbsurd { shapes, farthest };
            findings.push(Finding::new(kind).about(&first));
        }
        for (block, (fault, insertions, first)) in std::mem::take(&mut self.looped) {
            let block = block.to_string();
            let kind = DrawingFinding::BlockNesting { block, fault, insertions };
            findings.push(Finding::new(kind).about(&first));
        }
        for (block, (file, insertions, first)) in std::mem::take(&mut self.external) {
            let block = block.to_string();
            let kind = DrawingFinding::BlockExternal { block, file, insertions };
            findings.push(Finding::new(kind).about(&first));
        }
        for block in std::mem::take(&mut self.missing) {
            let block = block.to_string();
            findings.push(Finding::new(DrawingFinding::BlockMissing { block }));
        }
    }
}
