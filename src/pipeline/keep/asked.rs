//! What is asked of the search, and the earlier layout that is held.

use std::collections::BTreeSet;

use crate::compare::SameWall;
use crate::job::Job;
use crate::layout::Layout;
use crate::layout::at_hand::AtHand;
use crate::layout::wall::LaidWall;
use crate::model::course::PlannedCourse;
use crate::model::house::DrawnWall;
use crate::model::ids::{PanelId, PieceMark};
use crate::model::receiver::Field;
use crate::model::seam::SeamProblem;

/// An earlier layout with its walls that stand in the new one.
pub(in crate::pipeline) struct Keep<'a> {
    pub(super) old: &'a Layout,
    pub(super) same: Vec<SameWall>,
    /// What hangs, where the job says so: then that is held, and nothing else.
    pub(super) hung: Option<Hung>,
}

/// What hangs, and what lies on the site.
#[derive(Clone, Debug, Default)]
pub(in crate::pipeline) struct Hung {
    /// Marks of the pieces that hang.
    pub(in crate::pipeline) marks: BTreeSet<PieceMark>,
    /// What lies on the site; none where no list was given.
    pub(in crate::pipeline) stock: Option<Vec<AtHand>>,
}

impl Keep<'_> {
    /// The wall of before.
    pub(super) fn wall(&self, s: &SameWall) -> Option<&LaidWall> {
        self.old.elevations.get(s.old.0)?.walls.get(s.old.1)
    }

    /// The part of a panel of before that lay on the site as an offcut.
    pub(super) fn at_hand(&self, panel: &PanelId) -> Option<[f64; 2]> {
        self.old.panels.iter().find(|p| p.id == *panel)?.at_hand
    }
}

/// What is asked of the search, with the walls and courses it is of.
pub(in crate::pipeline) struct Asked<'a> {
    pub(in crate::pipeline) problem: &'a SeamProblem,
    pub(in crate::pipeline) fields: &'a [Field],
    pub(in crate::pipeline) walls: &'a [&'a DrawnWall],
    pub(in crate::pipeline) planned: &'a [Vec<PlannedCourse>],
    pub(in crate::pipeline) job: &'a Job,
}
