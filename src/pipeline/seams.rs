//! Where seams stand, by the stage that the siding takes.

use crate::course::mirror::either_hand;
use crate::course::studs::joint_rules;
use crate::job::Job;
use crate::model::course::PlannedCourse;
use crate::model::house::DrawnWall;
use crate::model::progress::Progress;
use crate::model::seam::{Effort, SeamPlan, SeamProblem, SeamRules};
use crate::model::waiting::Waiting;
use crate::{joint, seam};

/// Where seams stand: joints of boards on studs, laps of panels wherever the search puts them.
pub(super) fn seams(
    asked: &SeamProblem,
    (walls, planned): (&[&DrawnWall], &[Vec<PlannedCourse>]),
    job: &Job,
    watch: &mut dyn FnMut(Progress),
) -> SeamPlan {
    if job.siding().joints.is_on_studs() {
        joint::plan(asked, &joint_rules(walls, planned, job))
    } else {
        either_hand(asked, |p| seam::plan(p, watch))
    }
}

/// The same for its number of panels or boards alone.
pub(super) fn counted(
    asked: &SeamProblem,
    (walls, planned): (&[&DrawnWall], &[Vec<PlannedCourse>]),
    job: &Job,
) -> SeamPlan {
    if job.siding().joints.is_on_studs() {
        joint::plan(asked, &joint_rules(walls, planned, job))
    } else {
        either_hand(asked, seam::count)
    }
}

/// What elevations take where each is laid by itself, after a short search: panels, or their weight
/// where stock lengths are mixed. None where there is one alone.
pub(super) fn each_elevation(
    asked: &SeamProblem,
    of: (&[&DrawnWall], &[Vec<PlannedCourse>]),
    job: &Job,
) -> Option<i64> {
    let effort = match asked.rules.effort {
        Effort::Crew => Effort::Crew,
        _ => Effort::Brief,
    };
    let rules = SeamRules { effort, ..asked.rules.clone() };
    let sided = asked.elevations.iter().filter(|e| !e.courses.is_empty());
    let each: Vec<i64> = sided
        .map(|e| {
            let one = SeamProblem {
                rules: rules.clone(),
                elevations: vec![e.clone()],
                waiting: Waiting::default(),
            };
            let plan = counted(&one, of, job);
            let panels = i64::try_from(plan.panels).unwrap_or(i64::MAX);
            plan.certificate.mixed.map_or(panels, |m| m.weight)
        })
        .collect();
    (each.len() > 1).then(|| each.iter().sum())
}
