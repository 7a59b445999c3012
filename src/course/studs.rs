//! Studs of each wall, for the joints of boards.

use std::collections::BTreeMap;

use crate::geom::polygon::bounds;
use crate::job::Job;
use crate::model::course::PlannedCourse;
use crate::model::house::DrawnWall;
use crate::model::joint::{JointRules, Studs};

/// What joints keep: `courses[i]` are the courses of `walls[i]`, whose studs are counted from its
/// left end.
pub fn joint_rules(walls: &[&DrawnWall], courses: &[Vec<PlannedCourse>], job: &Job) -> JointRules {
    let mut studs = BTreeMap::new();
    for (i, (wall, list)) in walls.iter().zip(courses).enumerate() {
        let left = bounds(&wall.outline).map_or(0.0, |b| b.x0);
        let of = Studs { first: left + job.boards.first_stud, spacing: job.boards.stud_spacing };
        let runs = list.iter().flat_map(|c| &c.runs);
        studs.extend(runs.map(|r| (r.id.clone(), (i, of))));
    }
    JointRules { apart: job.boards.apart(), studs }
}
