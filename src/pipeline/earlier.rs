//! An earlier layout that is held, with what is said of it since.

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
        let marks = marks_hung(old, &job.built, &self.ticked)?;
        Ok(Some(Hung { marks, stock: self.stock.clone() }))
    }
}
