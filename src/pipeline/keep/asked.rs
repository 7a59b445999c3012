//! What is asked of the search, and the earlier layout that is held.

use crate::compare::SameWall;
use crate::job::Job;
use crate::layout::Layout;
use crate::layout::wall::LaidWall;
use crate::model::course::PlannedCourse;
use crate::model::house::DrawnWall;
use crate::model::receiver::Field;
use crate::model::seam::SeamProblem;

/// An earlier layout with its walls that stand in the new one.
pub(in crate::pipeline) struct Keep<'a> {
    pub(super) old: &'a Layout,
    pub(super) same: Vec<SameWall>,
}

impl Keep<'_> {
    /// The wall of before.
    pub(super) fn wall(&self, s: &SameWall) -> Option<&LaidWall> {
        self.old.elevations.get(s.old.0)?.walls.get(s.old.1)
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
