//! Where boards end: butt joints on studs, and the cutting of boards to pieces, for the whole house.
//!
//! A joint stands on a stud, and no joint of a near course on the same one
//! (`TrimFact::FiberCementJoints`). Cut ends may meet, so that any piece may come from any board:
//! joints are chosen course by course from what boards and offcuts give, then all pieces are packed
//! anew. Several such layouts are made with other preferences; the one of the fewest boards stands.

mod ask;
mod boards;
mod bound;
mod broken;
mod exact;
mod mend;
mod near;
mod places;
mod proof;
mod run;
mod waiting;

use ask::{Ask, asks};
use run::State;

use crate::model::joint::JointRules;
use crate::model::seam::{Cut, Effort, RunPlan, SeamPlan, SeamProblem};
use crate::packing;

/// Layouts tried for an effort.
fn tries(effort: Effort) -> u64 {
    match effort {
        Effort::Crew => 1,
        Effort::Brief => 2,
        Effort::Usual => 6,
        Effort::Long => 24,
    }
}

/// Joins the boards of a house. Total, and the same for the same problem on every machine.
pub fn plan(problem: &SeamProblem, joints: &JointRules) -> SeamPlan {
    let asks = asks(problem, joints);
    let bound = bound::bound(&asks, &problem.rules);
    let mut best: Option<(usize, SeamPlan)> = None;
    let mut crew = 0;
    for n in 0..tries(problem.rules.effort) {
        let mut state = State::new(problem.rules.seed.wrapping_add(n), n);
        let laid: Vec<run::Laid> =
            asks.iter().map(|a| state.lay(a, &problem.rules, joints)).collect();
        if n == 0 {
            crew = state.boards();
        }
        let plan = packed(&asks, &laid, problem, &state);
        let found = broken::count(&asks, &joints_of(&plan), &problem.rules, joints);
        let better = best.as_ref().is_none_or(|(n, b)| (found, plan.panels) < (*n, b.panels));
        if better {
            best = Some((found, plan));
        }
    }
    let (found, mut out) = best.unwrap_or_default();
    if found > 0 {
        if let Some(plan) = mended(&asks, &out, problem, joints) {
            out = plan;
        }
        out.conflicts = broken::conflicts(&asks, &joints_of(&out), &problem.rules, joints);
    }
    waiting::keep(&mut out, problem);
    out.crew_panels = crew;
    out.certificate = bound;
    out.certificate.panels = out.panels;
    out.certificate.proven = out.panels <= out.certificate.bound;
    out
}

/// Where joints stand, run by run.
fn joints_of(plan: &SeamPlan) -> Vec<Vec<f64>> {
    plan.runs.iter().map(|r| r.seams.clone()).collect()
}

/// The same runs with joints that keep every rule, where some are found.
fn mended(
    asks: &[Ask],
    plan: &SeamPlan,
    problem: &SeamProblem,
    joints: &JointRules,
) -> Option<SeamPlan> {
    let found = mend::mended(asks, &joints_of(plan), &problem.rules, joints)
        .or_else(|| exact::laid(asks, &problem.rules, joints))?;
    let mut state = State::new(problem.rules.seed, 0);
    let cut = asks.iter().zip(found);
    let laid: Vec<run::Laid> = cut.map(|(a, set)| state.cut(a, &problem.rules, set)).collect();
    Some(packed(asks, &laid, problem, &state))
}

/// Every piece cut from the fewest boards found: as they were laid, or packed anew.
fn packed(asks: &[Ask], laid: &[run::Laid], problem: &SeamProblem, state: &State) -> SeamPlan {
    let rules = &problem.rules;
    let lengths: Vec<f64> = laid.iter().flat_map(|l| l.pieces.iter().map(|p| p.length)).collect();
    let anew = packing::least(&lengths, rules.stock(), rules.kerf);
    let mut cuts: Vec<Cut> = laid.iter().flat_map(|l| l.pieces.iter().map(|p| p.cut)).collect();
    let mut boards = state.boards();
    if anew.len() < boards {
        boards = anew.len();
        for (panel, on) in anew.iter().enumerate() {
            let mut at = 0.0;
            for i in on {
                cuts[*i] = Cut { panel, start: at, end: at + lengths[*i] };
                at += lengths[*i] + rules.kerf;
            }
        }
    }
    let mut next = cuts.into_iter();
    let runs = asks.iter().zip(laid).map(|(a, l)| RunPlan {
        id: a.run.id.clone(),
        pieces: next.by_ref().take(l.pieces.len()).collect(),
        seams: l.joints.clone(),
    });
    SeamPlan { runs: runs.collect(), panels: boards, ..Default::default() }
}
