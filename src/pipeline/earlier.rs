//! An earlier layout that is held, with what is said of it since.

use std::collections::BTreeSet;

use super::keep::{Hung, marks_hung};
use crate::finding::Refusal;
use crate::finding::files::{FileFinding, KeepFault};
use crate::job::Job;
use crate::layout::Layout;
use crate::layout::at_hand::AtHand;
use crate::layout::set::LaidSets;

/// An earlier layout that is held.
#[derive(Clone, Debug)]
pub struct Earlier<'a> {
    /// Its sets.
    pub sets: &'a LaidSets,
    /// Marks of pieces that saved ticks say hang.
    pub ticked: Vec<String>,
    /// What lies on the site; none where no list is given.
    pub stock: Option<Vec<AtHand>>,
}

impl Earlier<'_> {
    /// What hangs of a set; none where the job says of nothing that it hangs.
    pub(super) fn hung(&self, old: &Layout, job: &Job) -> Result<Option<Hung>, Refusal> {
        let refused = |fault| Err(Refusal::new(FileFinding::LayoutNotKept { fault }));
        if job.built.is_empty() {
            return if self.stock.is_some() { refused(KeepFault::StockAlone) } else { Ok(None) };
        }
        // What is of another set is told there; what is of none is told by each.
        let others = || self.sets.iter().map(|s| &s.layout).filter(|l| l.zone != old.zone);
        let has = |l: &Layout, name: &str| l.walls().any(|(_, w)| w.id.eq_ignore_ascii_case(name));
        let elsewhere: BTreeSet<&str> =
            others().flat_map(|l| l.pieces()).map(|(.., p)| p.mark.as_str()).collect();
        let here = |mark: &String| !elsewhere.contains(mark.as_str());
        let mut built = job.built.clone();
        for b in &mut built {
            b.pieces.retain(here);
            if others().any(|l| has(l, &b.wall)) {
                // A wall with siding of several sets hangs whole in each; courses have their numbers set by set.
                if !has(old, &b.wall) {
                    b.wall.clear();
                } else if !b.courses.is_empty() {
                    return refused(KeepFault::WallOfSeveral { wall: b.wall.clone() });
                }
            }
        }
        let ticked: Vec<String> = self.ticked.iter().filter(|m| here(m)).cloned().collect();
        let marks = marks_hung(old, &built, &ticked)?;
        // The list is of the house's own panels.
        let stock = self.stock.clone().filter(|_| old.zone.is_none());
        Ok(Some(Hung { marks, stock }))
    }
}
