//! A layout that holds what an earlier one has: walls that did not change keep their seams, panels and marks; the
//! others are laid anew, from what the panels of those have left and from new ones.

mod asked;
mod found;
mod marks;
mod rest;

use std::collections::BTreeMap;

pub(super) use self::asked::{Asked, Keep};
use self::found::{Found, held_walls, rooms};
use self::marks::held_marks;
use self::rest::{order, rest, waits};
use super::seams::seams;
use crate::compare;
use crate::finding::Refusal;
use crate::finding::files::{FileFinding, KeepFault};
use crate::job::Job;
use crate::job::differences::differences;
use crate::layout::Layout;
use crate::layout::kept::{Kept, KeptPiece};
use crate::model::house::House;
use crate::model::ids::WallId;
use crate::model::progress::Progress;
use crate::model::seam::{RunPlan, SeamPlan, SeamProblem};
use crate::seam::at_hand::cut_from;

/// A plan with what is held in it.
#[derive(Default)]
pub(super) struct Held {
    pub(super) plan: SeamPlan,
    /// Numbers in the names of panels that are held, by panel.
    pub(super) names: BTreeMap<usize, usize>,
    /// What marks begin with, field by field.
    pub(super) marks: Vec<String>,
    pub(super) kept: Option<Kept>,
}

/// Settings that seams, panels and pieces hang on.
const LAID_BY: [&str; 6] = ["product.", "stock", "boards.", "weather.", "seams.", "courses."];
/// Of these, what says how hard is searched and what may wait: held pieces do not hang on it.
const SEARCHED_BY: [&str; 5] =
    ["seams.effort", "seams.seed", "seams.waiting", "seams.offcuts", "courses.datum"];

/// Whether a layout can be held under a job.
///
/// # Errors
/// `layout-not-kept` for boards, several stock lengths, halves of ripped panels, and settings that differ.
pub(super) fn can_be_held(old: &Layout, job: &Job) -> Result<(), Refusal> {
    let fault = if job.siding().joints.is_on_studs() {
        Some(KeepFault::Boards)
    } else if job.panel_stocks().len() > 1 || old.stocks.len() > 1 {
        Some(KeepFault::StockLengths)
    } else if job.seams.reuse_halves {
        Some(KeepFault::Halves)
    } else {
        let keys = differences(&old.job, job).into_iter().map(|d| d.key);
        let hung_on = |k: &String| {
            LAID_BY.iter().any(|p| k.starts_with(p)) && !SEARCHED_BY.contains(&k.as_str())
        };
        let keys: Vec<String> = keys.filter(hung_on).collect();
        (!keys.is_empty()).then_some(KeepFault::Settings { keys })
    };
    fault.map_or(Ok(()), |fault| Err(Refusal::new(FileFinding::LayoutNotKept { fault })))
}

/// The house with names as the earlier layout has them, the job on its course lines, and the walls that stand in
/// both: `anew` is the house laid out in any way.
pub(super) fn prepared<'a>(
    old: &'a Layout,
    anew: &Layout,
    house: &House,
    job: &Job,
) -> Result<(House, Job, Keep<'a>), Refusal> {
    let Some(same) = compare::same_walls(old, anew) else {
        return Err(Refusal::new(FileFinding::LayoutNotKept { fault: KeepFault::OtherHand }));
    };
    let names = compare::names(old, anew, &same);
    let mut job = job.clone();
    if job.courses.datum.is_none() {
        // The floor line may lie elsewhere against the walls.
        let up = same.first().map_or(0.0, |s| s.by[1]);
        job.courses.datum = Some(old.datum + up);
    }
    Ok((house.renamed(&names), job, Keep { old, same }))
}

/// Plans the house with what is held; `marks` are what marks would begin with.
pub(super) fn plan(
    keep: &Keep,
    asked: &Asked,
    marks: Vec<String>,
    watch: &mut dyn FnMut(Progress),
) -> Held {
    let found = held_walls(keep, asked, &marks);
    let of = (asked.walls, asked.planned);
    let all = seams(asked.problem, of, asked.job, watch);
    let with = laid_with(keep, asked, (&found, &all), true, watch);
    let marks = held_marks(keep, asked, marks);
    // Offcuts that are used may wait too many together: then none is.
    let plan = if waits(&with.0, asked) {
        with
    } else {
        laid_with(keep, asked, (&found, &all), false, watch)
    };
    let (plan, from_offcuts) = plan;
    let kept = kept(keep, asked, &found, (all.panels, from_offcuts));
    Held { plan, names: found.names, marks, kept: Some(kept) }
}

/// The plan with what is held, the rest searched for by itself; and how many pieces are cut from offcuts.
fn laid_with(
    keep: &Keep,
    asked: &Asked,
    (found, all): (&Found, &SeamPlan),
    offcuts: bool,
    watch: &mut dyn FnMut(Progress),
) -> (SeamPlan, usize) {
    let order = order(keep, asked, all);
    let rest = rest(asked, found, &order);
    let open = rest.elevations.iter().any(|e| !e.courses.is_empty());
    let laid = open.then(|| seams(&rest, (asked.walls, asked.planned), asked.job, watch));
    let laid = laid.unwrap_or_default();
    let first = found.names.len();
    let mut runs = laid.runs;
    runs.iter_mut().flat_map(|r| &mut r.pieces).for_each(|c| c.panel += first);
    let mut rooms = if offcuts { rooms(found, asked) } else { Vec::new() };
    let moved = cut_from(&mut runs, first, &mut rooms, &asked.problem.rules);
    let mut numbers: BTreeMap<usize, usize> = (0..first).map(|n| (n, n)).collect();
    for cut in runs.iter_mut().flat_map(|r| &mut r.pieces) {
        let next = numbers.len();
        cut.panel = *numbers.entry(cut.panel).or_insert(next);
    }
    runs.extend(found.runs.iter().cloned());
    let panels = numbers.len();
    let mut certificate = all.certificate.clone();
    (certificate.panels, certificate.proven) = (panels, panels <= certificate.bound);
    let plan = SeamPlan {
        runs: in_order(asked.problem, runs),
        panels,
        order,
        stocks: Vec::new(),
        certificate,
        crew_panels: all.crew_panels,
        other_policy_panels: None,
        conflicts: laid.conflicts,
        least_at_openings: all.least_at_openings,
    };
    (plan, moved)
}

fn in_order(problem: &SeamProblem, runs: Vec<RunPlan>) -> Vec<RunPlan> {
    let mut by: BTreeMap<String, RunPlan> =
        runs.into_iter().map(|r| (r.id.to_string(), r)).collect();
    let all = problem.elevations.iter().flat_map(|e| &e.courses).flat_map(|c| &c.runs);
    all.filter_map(|r| by.remove(r.id.as_str())).collect()
}

/// What is held, as the earlier layout has it.
fn kept(
    keep: &Keep,
    asked: &Asked,
    found: &Found,
    (all_anew, from_offcuts): (usize, usize),
) -> Kept {
    let id = |i: usize| asked.walls.get(i).map(|w| w.id.clone()).unwrap_or_default();
    let walls: Vec<WallId> = found.walls.keys().map(|i| id(*i)).collect();
    let open = (0..asked.fields.len()).filter(|i| !found.walls.contains_key(i));
    let anew = open.map(id).collect();
    let mut pieces = Vec::new();
    for (i, s) in &found.walls {
        let Some(was) = keep.wall(s) else { continue };
        for (bottom, run) in was.courses.iter().flat_map(|c| c.runs.iter().map(|r| (c.bottom, r))) {
            pieces.extend(run.pieces.iter().map(|p| KeptPiece {
                mark: p.mark.clone(),
                wall: id(*i),
                panel: p.panel.clone(),
                cut: [p.start, p.end],
                x: [p.x0 + s.by[0], p.x1 + s.by[0]],
                bottom: bottom + s.by[1],
            }));
        }
    }
    let panels = found.numbers.len();
    Kept { from: keep.old.drawing.clone(), walls, anew, pieces, panels, from_offcuts, all_anew }
}
