//! From courses to the seam problem and back from its answer to pieces.
//!
//! The problem is posed in whole steps (`Job::steps`), from where the first panel of a run begins to
//! where the last one ends, both moved outward to the next step; the answer is moved back, so that the
//! layout itself is exact. A piece is thus reckoned up to two steps longer than it is cut, never shorter.

use std::collections::BTreeMap;

use super::panel_names::{HeldNames, Marks, Names, panel_name};
use super::pieces::Making;
use super::wall_order::waiting;
use crate::geom::tol::{ROUNDING, SAME};
use crate::job::Job;
use crate::job::steps::{down, up};
use crate::model::course::{PlannedCourse, PlannedRun};
use crate::model::house::{DrawnWall, House, OpeningKind};
use crate::model::receiver::Field;
use crate::model::seam::{
    Cut, RunPlan, SeamCourse, SeamElevation, SeamPlan, SeamProblem, SeamRules, SeamRun, StockWeight,
};

/// The rules in force, for the seam stage: stock down to the step beneath, all that is a least up to the
/// next. Joints of boards take lengths as they are.
fn rules(job: &Job) -> SeamRules {
    let steps = job.steps();
    let boards = job.siding().joints.is_on_studs();
    let least = |x: f64| if boards { x } else { up(x, steps) };
    let whole = |s: StockWeight| StockWeight { length: laid_length(s.length, job), ..s };
    SeamRules {
        steps,
        stocks: job.stock_weights().into_iter().map(whole).collect(),
        lap: job.lap(),
        // Runs are posed from panel to panel.
        gap: 0.0,
        kerf: least(job.seams.kerf),
        shortest: least(job.shortest()),
        stagger: least(job.seams.stagger),
        clear_courses: job.seams.clear_courses,
        jamb: job.seams.jamb,
        seam_short_runs: job.seams.seam_short_runs,
        effort: job.seams.effort,
        seed: job.seams.seed,
    }
}

/// How much of a stock length is laid: whole steps.
fn laid_length(length: f64, job: &Job) -> f64 {
    if job.siding().joints.is_on_studs() { length } else { down(length, job.steps()) }
}

/// Where a run's panels begin and end, moved outward to whole steps.
fn outward(r: &PlannedRun, steps: i64) -> (f64, f64) {
    (down(r.x0 + r.gap, steps), up(r.x1 - r.gap, steps))
}

/// What of them no panel covers, left and right.
pub(super) fn spare(r: &PlannedRun, steps: i64) -> [f64; 2] {
    let (x0, x1) = outward(r, steps);
    [(r.x0 + r.gap - x0).max(0.0), (x1 - (r.x1 - r.gap)).max(0.0)]
}

/// The seam problem of a house: `courses[i]` are the courses of `fields[i]`.
pub fn problem(
    house: &House,
    fields: &[Field],
    courses: &[Vec<PlannedCourse>],
    job: &Job,
) -> SeamProblem {
    let mut rules = rules(job);
    let steps = rules.steps;
    let off_step = |r: &PlannedRun| {
        let (x0, x1) = (r.x0 + r.gap, r.x1 - r.gap);
        [x0, x1].iter().any(|x| up(*x, steps) > down(*x, steps))
    };
    if courses.iter().flatten().flat_map(|c| &c.runs).any(off_step) {
        // A piece is cut up to a step shorter at each end than it is reckoned.
        rules.shortest = up(rules.shortest, steps) + 1.0 / steps as f64;
    }
    let elevations = house
        .elevations
        .iter()
        .enumerate()
        .map(|(i, e)| {
            let mut levels: BTreeMap<i32, SeamCourse> = BTreeMap::new();
            let walls = fields.iter().zip(courses).enumerate();
            let here = walls.filter(|(_, (f, _))| f.elevation == i).map(|(w, (_, c))| (w, c));
            for (wall, course) in here.flat_map(|(w, c)| c.iter().map(move |c| (w, c))) {
                let level = levels.entry(course.index).or_default();
                level.index = course.index;
                level.avoid.extend(&course.avoid);
                level.runs.extend(course.runs.iter().map(|r| seam_run(r, wall, &rules)));
            }
            for level in levels.values_mut() {
                level.avoid.sort_by(f64::total_cmp);
                level.avoid.dedup();
                level.runs.sort_by(|a, b| a.x0.total_cmp(&b.x0).then(a.id.cmp(&b.id)));
            }
            let doors = e.walls.iter().flat_map(|w| &w.openings);
            let entrances = doors
                .filter(|o| o.kind == OpeningKind::Door)
                .map(|o| (o.sides().0 + o.sides().1) / 2.0)
                .collect();
            SeamElevation {
                name: e.name.clone(),
                entrances,
                courses: levels.into_values().collect(),
            }
        })
        .collect();
    SeamProblem { rules, elevations, waiting: waiting(house, fields, job) }
}

fn seam_run(r: &PlannedRun, wall: usize, rules: &SeamRules) -> SeamRun {
    let (steps, half) = (rules.steps, rules.lap / 2.0);
    let (x0, x1) = outward(r, steps);
    SeamRun {
        id: r.id.clone(),
        wall,
        x0,
        x1,
        // Panels end on whole steps: down, so that the next one still reaches the fixture.
        fixed: r.fixed.iter().map(|x| down(x + half + SAME, steps) - half).collect(),
        barred: r.barred.clone(),
        notched: r.notched.clone(),
    }
}

/// Pieces and panels of the layout.
pub struct CutHouse {
    /// Courses of each field, in the layout's shape.
    pub courses: Vec<Vec<crate::layout::course::LaidCourse>>,
    /// Stock panels.
    pub panels: Vec<crate::layout::piece::Panel>,
}

/// Turns the answer into pieces with marks and panels with names. `codes[i]` begins the marks of
/// `fields[i]`; panels that `held` gives a number have it in their names, others the numbers after them.
pub fn make(
    walls: &[&DrawnWall],
    courses: &[Vec<PlannedCourse>],
    codes: &[String],
    plan: &SeamPlan,
    held: &HeldNames,
    job: &Job,
) -> CutHouse {
    let plans: BTreeMap<&str, &RunPlan> = plan.runs.iter().map(|r| (r.id.as_str(), r)).collect();
    let stocks = job.panel_stocks();
    let mut names = Names::new(&stocks, &plan.stocks, held);
    // Panels are numbered as they are opened: wall by wall in the order of walls.
    for course in plan.order.iter().filter_map(|i| courses.get(*i)).flatten() {
        let cuts = course.runs.iter().filter_map(|r| plans.get(r.id.as_str()));
        cuts.flat_map(|p| &p.pieces).for_each(|c| drop(names.name(c.panel)));
    }
    let made: Vec<Vec<crate::layout::course::LaidCourse>> = courses
        .iter()
        .enumerate()
        .map(|(i, list)| {
            let of_wall = walls.get(i).copied();
            let code = codes.get(i).map_or("", String::as_str);
            list.iter()
                .filter_map(|c| {
                    Some(one_course(of_wall?, c, (code, held), &plans, job, &mut names))
                })
                .collect()
        })
        .collect();
    let panels = panels(&made, (&names, held), job);
    CutHouse { courses: made, panels }
}

fn one_course(
    wall: &DrawnWall,
    course: &PlannedCourse,
    (code, held): (&str, &HeldNames),
    plans: &BTreeMap<&str, &RunPlan>,
    job: &Job,
    names: &mut Names<'_>,
) -> crate::layout::course::LaidCourse {
    let mut marks = Marks::new(held, format!("{code}-{}", course.index + 1));
    let runs: Vec<crate::layout::course::LaidRun> = course
        .runs
        .iter()
        .map(|run| {
            let making = Making {
                wall,
                course,
                run,
                notch_clearance: job.courses.notch_clearance,
                lap: job.lap(),
                lengths: job.sheet.lengths,
            };
            let found = plans.get(run.id.as_str());
            let pieces = found.map_or_else(Vec::new, |p| {
                placed(run, p, job)
                    .into_iter()
                    .enumerate()
                    .map(|(i, (cut, x0, x1))| {
                        let mark = marks.next(&run.id, i);
                        // A factory end is where whole steps of the panel end, or the panel itself.
                        let stock = names.length(cut.panel);
                        let laid = laid_length(stock, job);
                        let stock = if cut.end >= laid - ROUNDING { laid } else { stock };
                        making.piece(mark, cut, names.name(cut.panel), stock, x0, x1)
                    })
                    .collect()
            });
            let seams = found.map_or_else(Vec::new, |p| p.seams.clone());
            crate::layout::course::LaidRun {
                id: run.id.clone(),
                x0: run.x0,
                x1: run.x1,
                ends: run.ends,
                gap: run.gap,
                fixed: seams.iter().copied().filter(|s| is_fixed(run, *s)).collect(),
                seams,
                pieces,
            }
        })
        .collect();
    crate::layout::course::LaidCourse {
        index: course.index,
        bottom: course.bottom,
        top: course.top,
        rip: common_rip(&runs),
        avoid: course.avoid.clone(),
        runs,
    }
}

fn is_fixed(run: &PlannedRun, seam: f64) -> bool {
    run.fixed.iter().any(|f| (f - seam).abs() < 0.0625 + SAME)
}

/// Height kept, where every piece of the course is ripped to one height from its butt edge.
fn common_rip(runs: &[crate::layout::course::LaidRun]) -> Option<f64> {
    let mut rips = runs.iter().flat_map(|r| &r.pieces).map(|p| p.rip.as_ref());
    let first = rips.next()??;
    let alike = rips.all(|r| r == Some(first));
    (alike && first.from == 0.0).then_some(first.to)
}

/// Each piece's cut and its ends on the wall.
fn placed(run: &PlannedRun, plan: &RunPlan, job: &Job) -> Vec<(Cut, f64, f64)> {
    let half = job.lap() / 2.0;
    let last = plan.pieces.len().saturating_sub(1);
    let [spare_left, spare_right] = spare(run, job.steps());
    plan.pieces
        .iter()
        .enumerate()
        .map(|(i, cut)| {
            let mut cut = *cut;
            let before = i.checked_sub(1).and_then(|k| plan.seams.get(k));
            let x0 = before.map_or(run.x0 + run.gap, |s| s - half);
            let x1 = plan.seams.get(i).map_or(run.x1 - run.gap, |s| s + half);
            if i == 0 {
                cut.start += spare_left;
            }
            if i == last {
                cut.end -= spare_right;
            }
            (cut, x0, x1)
        })
        .collect()
}

fn panels(
    made: &[Vec<crate::layout::course::LaidCourse>],
    (names, held): (&Names<'_>, &HeldNames),
    job: &Job,
) -> Vec<crate::layout::piece::Panel> {
    let mut cuts: BTreeMap<&str, Vec<&crate::layout::piece::Piece>> = BTreeMap::new();
    let all = made.iter().flatten().flat_map(|c| &c.runs).flat_map(|r| &r.pieces);
    for piece in all {
        cuts.entry(piece.panel.as_str()).or_default().push(piece);
    }
    let mut numbered: Vec<((usize, usize), usize)> =
        names.order.iter().map(|(p, n)| (*n, *p)).collect();
    numbered.sort_unstable();
    numbered
        .into_iter()
        .map(|(named, panel)| {
            let id = panel_name(named);
            let stock = names.length(panel);
            let mut mine = cuts.remove(id.as_str()).unwrap_or_default();
            mine.sort_by(|a, b| a.start.total_cmp(&b.start));
            let at_hand = held.at_hand.get(&panel).copied();
            let offcut = longest_free(&mine, at_hand.unwrap_or([0.0, stock]), job.seams.kerf);
            crate::layout::piece::Panel {
                id,
                stock,
                pieces: mine.iter().map(|p| p.mark.clone()).collect(),
                offcut,
                at_hand,
            }
        })
        .collect()
}

/// The longest length left on a panel, in its full height, once its pieces and their cuts are off;
/// pieces by where they begin.
pub(super) fn longest_free(
    pieces: &[&crate::layout::piece::Piece],
    [begins, ends]: [f64; 2],
    kerf: f64,
) -> f64 {
    let mut at: f64 = begins;
    let mut longest: f64 = 0.0;
    for p in pieces {
        let room = p.start - at - if p.start > begins { kerf } else { 0.0 };
        longest = longest.max(room);
        // Pieces of two halves lie over one another.
        at = at.max(p.end + kerf);
    }
    longest.max(ends - at).max(0.0)
}
