//! The order of the stages, known here alone: [`layout`] reads a drawing and lays out all of its sets;
//! [`crate::outputs`] turns each into files.

mod earlier;
mod findings;
mod first_job;
mod head;
pub mod houses;
mod keep;
mod letters;
pub mod measures;
mod pages;
mod posed;
pub mod quantities;
mod reread;
mod seams;
pub mod site;
mod suggest;
pub mod waiting_prices;

use std::sync::Arc;

use crate::course::halves::reuse;
use crate::course::problem::{make, problem};
use crate::course::{edge_work, piece_marks, strips, wall_order};
use crate::finding::files::{FileFinding, KeepFault};
use crate::finding::{Findings, Refusal};
use crate::fingerprint::sha256;
use crate::job::{Boards, Job};
use crate::layout::Layout;
use crate::layout::backdrop::Backdrops;
use crate::layout::format::LayoutFormat;
use crate::layout::from_drawn;
use crate::layout::laid::LaidHouse;
use crate::layout::set::{LaidSet, LaidSets};
use crate::model::course::PlannedCourse;
use crate::model::house::{DrawnWall, House};
use crate::model::ids::WallId;
use crate::model::linework::Linework;
use crate::model::progress::Progress;
use crate::model::seam::{Effort, SeamPlan, SeamProblem};
use crate::model::source::Source;
use crate::takeoff::Others;
use crate::verify::claims::Claims;
use crate::{cores, extract, takeoff, trim, verify, work};

pub use self::earlier::Earlier;
pub use self::first_job::first_job;
pub use self::head::{Checked, Reading, checked, layers, reading};
use self::keep::{Asked, Held, Keep};
use self::measures::Tape;
use self::posed::{Posed, posed};
pub use self::reread::{compared, reread};
use self::seams::{counted, each_elevation, seams};
pub use self::suggest::suggestions;

/// What is told to whoever watches the search for seams.
pub type Watch<'a> = &'a mut dyn FnMut(Progress);

/// Reads a drawing and lays out the house, then each zone with lap siding of its own: all on one
/// datum, seams and panels by themselves.
///
/// # Errors
/// As [`reading`].
pub fn layout(
    bytes: &[u8],
    name: &str,
    job: &Job,
    findings: &mut Findings,
    watch: Watch,
) -> Result<LaidSets, Refusal> {
    layout_keeping(bytes, name, (job, None), findings, watch)
}

/// The same, holding what did not change of an earlier layout where one is given: seams, panels and marks
/// of its walls, names of what it has.
///
/// # Errors
/// As [`reading`]; `layout-not-kept`.
pub fn layout_keeping(
    bytes: &[u8],
    name: &str,
    (job, old): (&Job, Option<&Earlier>),
    findings: &mut Findings,
    watch: Watch,
) -> Result<LaidSets, Refusal> {
    if old.is_none() && !job.built.is_empty() {
        let fault = KeepFault::BuiltOfNothing;
        return Err(Refusal::new(FileFinding::LayoutNotKept { fault }));
    }
    let Reading { lines, house, tape, .. } = reading(bytes, name, job, findings)?;
    let source = from_drawn::source(name, sha256(bytes), &lines.scale);
    let sets = all_sets((&lines, &tape), &house, &source, (job, old), findings, watch)?;
    Ok(sets.on_print(head::print_base(bytes, job).map(Arc::new)))
}

/// Lays out what `check` has read, in memory; none where there is no house.
pub fn checked_layout(
    checked: &Checked,
    job: &Job,
    findings: &mut Findings,
    watch: Watch,
) -> Option<LaidSets> {
    let house = checked.house.as_ref().ok()?;
    let (name, lines) = (&checked.drawing.name, &checked.lines);
    let source = from_drawn::source(name, checked.fingerprint.clone(), &lines.scale);
    all_sets((lines, &checked.tape), house, &source, (job, None), findings, watch).ok()
}

/// The house, then each zone with lap siding of its own.
fn all_sets(
    (lines, tape): (&Linework, &Tape),
    house: &House,
    source: &Source,
    (job, old): (&Job, Option<&Earlier>),
    findings: &mut Findings,
    watch: Watch,
) -> Result<LaidSets, Refusal> {
    findings::empty_zones(house, job, findings);
    let before = old.map(|o| (o, &o.sets.house.layout));
    let house = lay_kept(house, source, (job, before), findings, &mut *watch)?;
    let mut zones = Vec::new();
    for i in 0..job.zone.len() {
        let Some(own) = job.for_zone(i, Some(house.layout.datum)) else { continue };
        // What was found in reading stands with the house's own set.
        match extract::zone(lines, &own, i, &mut Findings::default()) {
            Ok(mut part) => {
                // What slopes was told with the whole house.
                tape.move_house(lines, &mut part, &mut Findings::default());
                let named = |s: &&LaidSet| s.layout.zone.as_ref() == Some(&job.zone[i].name);
                let before = old.and_then(|o| Some((o, &o.sets.zones.iter().find(named)?.layout)));
                let told = &mut Findings::default();
                zones.push(lay_kept(&part, source, (&own, before), told, &mut *watch)?);
            }
            // What is drawn of it is too small to be a wall.
            Err(_) => {
                let empty = findings::empty_zone(job, i);
                if !findings.all().contains(&empty) {
                    findings.push(empty);
                }
            }
        }
    }
    let mut sets = LaidSets { house, zones };
    let each: Vec<takeoff::Set> = sets.iter().map(|s| (&s.layout.laid, &s.takeoff)).collect();
    sets.house.takeoff.one_order = takeoff::one_order(&each);
    Ok(sets)
}

/// Lays a house out, holding what did not change of an earlier layout where there is one.
fn lay_kept(
    house: &House,
    source: &Source,
    (job, old): (&Job, Option<(&Earlier, &Layout)>),
    findings: &mut Findings,
    watch: Watch,
) -> Result<LaidSet, Refusal> {
    let Some((given, old)) = old else { return Ok(lay(house, source, job, findings, watch)) };
    keep::can_be_held(old, job)?;
    let hung = given.hung(old, job)?;
    // Laid in any way, to see which of its walls stand in both.
    let mut quick = job.clone();
    quick.seams.effort = Effort::Crew;
    let anew = lay(house, source, &quick, &mut Findings::default(), &mut |_| {});
    let (house, job, keep) = keep::prepared(old, (&anew.layout, hung), house, job)?;
    Ok(lay_with(&house, source, (&job, Some(&keep)), findings, watch))
}

/// Lays a house out. Total: a rule that cannot be kept gives a finding and a mark, never an abort.
pub fn lay(
    house: &House,
    source: &Source,
    job: &Job,
    findings: &mut Findings,
    watch: Watch,
) -> LaidSet {
    lay_with(house, source, (job, None), findings, watch)
}

/// The same with what is held.
fn lay_with(
    house: &House,
    source: &Source,
    (job, keep): (&Job, Option<&Keep>),
    findings: &mut Findings,
    watch: Watch,
) -> LaidSet {
    let posed = posed(house, job);
    let (given, as_drawn, house) = (house, posed.as_drawn(house), posed.as_hung(house));
    let Posed { fields, planned, .. } = &posed;
    let walls: Vec<&DrawnWall> = fields.iter().map(|f| from_drawn::wall_of(house, f)).collect();
    let asked = problem(house, fields, planned, job);
    // Trim, and what it takes laid out in other ways, ask nothing of how it is laid.
    let trims = || trim::trims(house, fields, &posed.pole, job);
    let aside = || (trims(), others(given, &asked, (&walls, planned), job));
    let marks = piece_marks::beginnings(house, fields);
    let here = || match keep {
        Some(keep) => {
            let asked = Asked { problem: &asked, fields, walls: &walls, planned, job };
            keep::plan(keep, &asked, marks, watch)
        }
        None => {
            let plan = seams(&asked, (&walls, planned), job, watch);
            Held { plan, marks, ..Held::default() }
        }
    };
    let (aside, Held { plan, names, marks, kept }) = cores::beside(aside, here);
    let (trims, others) = aside.unwrap_or_else(|| (trims(), Others::default()));
    findings::walls_unknown(&walls, wall_order::unknown(house, fields, &job.work.walls), findings);
    let mut made = make(&walls, planned, &marks, &plan, &names, job);
    if job.seams.reuse_halves {
        reuse(&mut made, &plan.order, job);
    }
    edge_work::tell(&mut made.courses, house, fields, &trims, job);
    let mut laid = LaidHouse {
        drawing: source.clone(),
        zone: house.zone.and_then(|z| job.zone.get(z)).map(|z| z.name.clone()),
        job: job.clone(),
        stocks: job.panel_stocks(),
        datum: posed.pole.datum,
        story_pole: posed.table(house),
        datum_reason: posed.pole.reason.clone(),
        elevations: from_drawn::elevations(house, as_drawn, fields, made.courses),
        corners: house.corners.clone(),
        order: order(&walls, &plan.order),
        kept,
        panels: made.panels,
        trims,
    };
    // What is said of the datum in force is what is laid on it.
    let (thin_strips, skirted) = (strips::laid(&laid), strips::skirted(&laid));
    if let Some(chosen) = laid.story_pole.choices.iter_mut().find(|c| c.chosen) {
        (chosen.effects.thin_strips, chosen.effects.skirted) = (thin_strips, skirted);
    }
    finished(laid, (&plan, others), Backdrops::of_house(house), findings)
}

/// What a house takes laid out in other ways.
fn others(
    house: &House,
    asked: &SeamProblem,
    of: (&[&DrawnWall], &[Vec<PlannedCourse>]),
    job: &Job,
) -> Others {
    Others { each_elevation: each_elevation(asked, of, job), courses: other_courses(house, job) }
}

/// The walls in the order they are sided; those without runs come last.
fn order(walls: &[&DrawnWall], order: &[usize]) -> Vec<WallId> {
    let rest = (0..walls.len()).filter(|i| !order.contains(i));
    let all = order.iter().copied().chain(rest);
    all.filter_map(|i| Some(walls.get(i)?.id.clone())).collect()
}

/// Boards that the house takes with courses of one exposure where its own are evened, and the other way
/// round; none for panels.
fn other_courses(house: &House, job: &Job) -> Option<usize> {
    if !job.siding().courses.is_evened() {
        return None;
    }
    let boards = Boards { even: !job.boards.even, ..job.boards.clone() };
    let job = Job { boards, ..job.clone() };
    let posed = posed(house, &job);
    let on = posed.as_hung(house);
    let walls: Vec<&DrawnWall> = posed.fields.iter().map(|f| from_drawn::wall_of(on, f)).collect();
    let asked = problem(on, &posed.fields, &posed.planned, &job);
    Some(counted(&asked, (&walls, &posed.planned), &job).panels)
}

/// All that is reckoned of a house as laid.
fn finished(
    laid: LaidHouse,
    (plan, others): (&SeamPlan, Others),
    backdrops: Backdrops,
    findings: &mut Findings,
) -> LaidSet {
    let (bound, movement) = (takeoff::proof(&laid, plan, others), takeoff::movement(&laid));
    let takeoff = takeoff::with_lengths_alone(takeoff::quantities(&laid), &laid, &bound);
    let work = work::work(&laid);
    let claims = Claims { laid: &laid, bound: &bound, takeoff: &takeoff.lines, work: &work };
    let verify = verify::check(claims);
    findings::of_laid(&laid, (&bound, &takeoff.lines), &movement, findings);
    findings::failed(&laid, &verify, findings);
    let layout = Layout {
        format: LayoutFormat,
        work,
        fastening: takeoff::fastening(&laid),
        verify,
        takeoff: takeoff.lines.clone(),
        findings: findings.all().to_vec(),
        bound,
        movement,
        laid,
    };
    LaidSet { layout, takeoff, backdrops }
}
