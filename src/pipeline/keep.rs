//! A layout that holds what an earlier one has: walls that did not change keep their seams, panels and marks; the
//! others are laid anew, from what the panels of those have left and from new ones.

mod asked;
mod built;
mod found;
mod hung;
mod marks;
mod rest;

use std::collections::{BTreeMap, BTreeSet};

pub(super) use self::asked::{Asked, Hung, Keep};
use self::built::so_far;
use self::found::{Found, held_walls, rooms};
pub(super) use self::hung::marks_hung;
use self::hung::{LOOSE, held_runs};
use self::marks::held_marks;
use self::rest::{order, rest, waits};
use super::seams::seams;
use crate::compare::{self, SameWall};
use crate::course::panel_names::HeldNames;
use crate::finding::Refusal;
use crate::finding::files::{FileFinding, KeepFault};
use crate::geom::tol::CUT;
use crate::job::Job;
use crate::job::differences::differences;
use crate::layout::Layout;
use crate::layout::at_hand::BuiltSoFar;
use crate::layout::kept::Kept;
use crate::layout::piece::Piece;
use crate::model::house::House;
use crate::model::progress::Progress;
use crate::model::seam::{RunPlan, SeamPlan, SeamProblem};
use crate::seam::at_hand::{Room, cut_from};

/// A plan with what is held in it.
#[derive(Default)]
pub(super) struct Held {
    pub(super) plan: SeamPlan,
    /// Names that are held, and what lies on the site.
    pub(super) names: HeldNames,
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
    (anew, hung): (&Layout, Option<Hung>),
    house: &House,
    job: &Job,
) -> Result<(House, Job, Keep<'a>), Refusal> {
    let Some(same) = compare::same_walls(old, anew) else {
        return Err(Refusal::new(FileFinding::LayoutNotKept { fault: KeepFault::OtherHand }));
    };
    let names = compare::names(old, anew, &same);
    let mut job = job.clone();
    if job.courses.datum.is_none() {
        job.courses.datum = Some(old.datum + up_most(old, &same, hung.as_ref()));
    }
    Ok((house.renamed(&names), job, Keep { old, same, hung }))
}

/// How far up most pieces go over that may be held, or that hang: the floor line may lie elsewhere against the walls,
/// be it of one elevation.
fn up_most(old: &Layout, same: &[SameWall], hung: Option<&Hung>) -> f64 {
    let counts = |p: &&Piece| hung.is_none_or(|h| h.marks.contains(&p.mark));
    let mut by: Vec<(f64, usize)> = Vec::new();
    for s in same {
        let Some(wall) = old.elevations.get(s.old.0).and_then(|e| e.walls.get(s.old.1)) else {
            continue;
        };
        let runs = wall.courses.iter().flat_map(|c| &c.runs);
        let pieces = runs.flat_map(|r| &r.pieces).filter(counts).count();
        match by.iter_mut().find(|(up, _)| (up - s.by[1]).abs() <= CUT) {
            Some((_, all)) => *all += pieces,
            None => by.push((s.by[1], pieces)),
        }
    }
    // Of two alike that of the wall that comes first.
    by.into_iter().rev().max_by_key(|(_, pieces)| *pieces).map_or(0.0, |(up, _)| up)
}

/// Plans the house with what is held; `marks` are what marks would begin with.
pub(super) fn plan(
    keep: &Keep,
    asked: &Asked,
    marks: Vec<String>,
    watch: &mut dyn FnMut(Progress),
) -> Held {
    let mut found = match &keep.hung {
        Some(hung) => held_runs(keep, asked, &hung.marks),
        None => held_walls(keep, asked, &marks),
    };
    let all = seams(asked.problem, (asked.walls, asked.planned), asked.job, watch);
    let laid = laid_with(keep, asked, (&found, &all), watch);
    let kept = kept(keep, asked, &found, (all.panels, &laid));
    let names = HeldNames {
        panels: std::mem::take(&mut found.names),
        at_hand: laid.at_hand,
        marks: std::mem::take(&mut found.marks),
    };
    let marks = held_marks(keep, asked, marks);
    Held { plan: laid.plan, names, marks, kept: Some(kept) }
}

/// A plan with what is held, the rest searched for by itself.
struct Laid {
    plan: SeamPlan,
    /// Pieces that are cut from offcuts.
    moved: usize,
    /// The part of panels that lay on the site, by panel.
    at_hand: BTreeMap<usize, [f64; 2]>,
    built: Option<BuiltSoFar>,
}

/// Offcuts that lie on the site have numbers from here on.
const ON_SITE: usize = 200_000;

fn laid_with(
    keep: &Keep,
    asked: &Asked,
    (found, all): (&Found, &SeamPlan),
    watch: &mut dyn FnMut(Progress),
) -> Laid {
    let order = order(keep, asked, all);
    let rest = rest(asked, found, &order);
    let open = rest.elevations.iter().any(|e| !e.courses.is_empty());
    let laid = open.then(|| seams(&rest, (asked.walls, asked.planned), asked.job, watch));
    let laid = laid.unwrap_or_default();
    let (first, rules) = (found.names.len(), &asked.problem.rules);
    let mut runs = laid.runs.clone();
    runs.iter_mut().flat_map(|r| &mut r.pieces).for_each(|c| c.panel += first);
    runs.extend(found.runs.iter().cloned());
    let whole = [0.0, rules.stock()];
    let on_site: Vec<Room> = match &keep.hung {
        Some(hung) => self::built::offcuts(hung, rules.stock(), ON_SITE),
        None => Vec::new(),
    };
    let listed = keep.hung.as_ref().is_some_and(|h| h.stock.is_some());
    let mut from = if listed {
        on_site.clone()
    } else {
        // A panel that was an offcut before gives no more than that was.
        let had = |p: usize| found.at_hand.get(&p).copied().unwrap_or(whole);
        rooms(&found.runs, asked, &|p| (p < first).then(|| had(p)))
    };
    // Each offcut that is used may wait too: no more than the job lets.
    let may = |runs: &[RunPlan]| waits(runs, &order, asked);
    let mut moved = cut_from(&mut runs, first, &mut from, rules, &may);
    // Single pieces of runs that hang in part go into what the panels of the rest have left.
    if !found.marks.is_empty() {
        let fresh = |p: usize| (first..ON_SITE).contains(&p).then_some(whole);
        from.extend(rooms(&runs, asked, &fresh));
        moved += cut_from(&mut runs, LOOSE, &mut from, rules, &may);
    }
    let mut numbers: BTreeMap<usize, usize> = (0..first).map(|n| (n, n)).collect();
    for cut in runs.iter_mut().flat_map(|r| &mut r.pieces) {
        let next = numbers.len();
        cut.panel = *numbers.entry(cut.panel).or_insert(next);
    }
    let at = |r: &Room| Some((*numbers.get(&r.panel)?, [r.from, r.to]));
    let mut at_hand: BTreeMap<usize, [f64; 2]> = on_site.iter().filter_map(at).collect();
    let (panels, used) = (numbers.len(), at_hand.len());
    let fresh = panels - first - used;
    at_hand.extend(&found.at_hand);
    let built =
        keep.hung.as_ref().map(|hung| so_far((hung, found), asked, (&rest, &laid), (fresh, used)));
    let plan = planned(asked, (runs, order), panels, (all, laid));
    Laid { plan, moved, at_hand, built }
}

/// The plan of the whole house, with the proof of the whole.
fn planned(
    asked: &Asked,
    (runs, order): (Vec<RunPlan>, Vec<usize>),
    panels: usize,
    (all, laid): (&SeamPlan, SeamPlan),
) -> SeamPlan {
    let mut certificate = all.certificate.clone();
    (certificate.panels, certificate.proven) = (panels, panels <= certificate.bound);
    SeamPlan {
        runs: in_order(asked.problem, runs),
        panels,
        order,
        stocks: Vec::new(),
        certificate,
        crew_panels: all.crew_panels,
        other_policy_panels: None,
        conflicts: laid.conflicts,
        least_at_openings: all.least_at_openings,
    }
}

fn in_order(problem: &SeamProblem, runs: Vec<RunPlan>) -> Vec<RunPlan> {
    let mut by: BTreeMap<String, RunPlan> =
        runs.into_iter().map(|r| (r.id.to_string(), r)).collect();
    let all = problem.elevations.iter().flat_map(|e| &e.courses).flat_map(|c| &c.runs);
    all.filter_map(|r| by.remove(r.id.as_str())).collect()
}

/// What is held, as the earlier layout has it.
fn kept(keep: &Keep, asked: &Asked, found: &Found, (all_anew, laid): (usize, &Laid)) -> Kept {
    let id = |i: usize| asked.walls.get(i).map(|w| w.id.clone()).unwrap_or_default();
    let open = (0..asked.fields.len()).filter(|i| !found.walls.contains_key(i));
    Kept {
        from: keep.old.drawing.clone(),
        walls: found.walls.keys().map(|i| id(*i)).collect(),
        anew: open.map(id).collect(),
        panels: found.pieces.iter().map(|p| &p.panel).collect::<BTreeSet<_>>().len(),
        pieces: found.pieces.clone(),
        from_offcuts: laid.moved,
        all_anew,
        built: laid.built.clone(),
    }
}
