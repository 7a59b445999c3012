//! Runs to be joined, one by one.

use crate::model::joint::JointRules;
use crate::model::seam::{SeamProblem, SeamRun};

/// One run with where it is.
pub(super) struct Ask<'a> {
    pub(super) elevation: &'a str,
    /// Number of the wall.
    pub(super) wall: usize,
    pub(super) course: i32,
    pub(super) run: &'a SeamRun,
    pub(super) avoid: &'a [f64],
}

/// Every run of the house, elevation by elevation.
pub(super) fn asks<'a>(problem: &'a SeamProblem, joints: &JointRules) -> Vec<Ask<'a>> {
    let mut out = Vec::new();
    for e in &problem.elevations {
        for c in &e.courses {
            out.extend(c.runs.iter().map(|run| Ask {
                elevation: &e.name,
                wall: joints.studs.get(&run.id).map_or(usize::MAX, |s| s.0),
                course: c.index,
                run,
                avoid: &c.avoid,
            }));
        }
    }
    out
}
