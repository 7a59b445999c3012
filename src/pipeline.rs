//! The order of the stages, known here alone: [`layout`] reads a drawing and lays out all of its sets;
//! [`crate::outputs`] turns each into files.

mod findings;
mod first_job;
mod head;
pub mod houses;
mod letters;
mod pages;
pub mod quantities;
mod suggest;
pub mod waiting_prices;

use std::sync::Arc;

use crate::course::blocks::moved;
use crate::course::datum::{Found, search};
use crate::course::halves::reuse;
use crate::course::hang::hung;
use crate::course::mirror::either_hand;
use crate::course::pole_lines::lines;
use crate::course::problem::{make, problem};
use crate::course::runs::courses;
use crate::course::settle::settled;
use crate::course::story_pole::story_pole;
use crate::course::studs::joint_rules;
use crate::course::{edge_work, even, piece_marks, strips, wall_order};
use crate::finding::{Findings, Refusal};
use crate::fingerprint::sha256;
use crate::job::{Boards, Job};
use crate::layout::Layout;
use crate::layout::backdrop::Backdrops;
use crate::layout::format::LayoutFormat;
use crate::layout::from_drawn;
use crate::layout::laid::LaidHouse;
use crate::layout::set::{LaidSet, LaidSets};
use crate::model::course::{PlannedCourse, StoryPole};
use crate::model::house::{DrawnWall, House};
use crate::model::ids::WallId;
use crate::model::linework::Linework;
use crate::model::pole::PoleTable;
use crate::model::progress::Progress;
use crate::model::receiver::Field;
use crate::model::seam::{Effort, SeamPlan, SeamProblem, SeamRules};
use crate::model::source::Source;
use crate::model::waiting::Waiting;
use crate::takeoff::Others;
use crate::verify::claims::Claims;
use crate::{cores, extract, joint, receive, seam, takeoff, trim, verify, work};

pub use self::first_job::first_job;
pub use self::head::{Checked, Reading, checked, layers, reading};
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
    let Reading { lines, house, .. } = reading(bytes, name, job, findings)?;
    let source = from_drawn::source(name, sha256(bytes), &lines.scale);
    let sets = all_sets(&lines, &house, &source, job, findings, watch);
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
    Some(all_sets(lines, house, &source, job, findings, watch))
}

/// The house, then each zone with lap siding of its own.
fn all_sets(
    lines: &Linework,
    house: &House,
    source: &Source,
    job: &Job,
    findings: &mut Findings,
    watch: Watch,
) -> LaidSets {
    findings::empty_zones(house, job, findings);
    let house = lay(house, source, job, findings, &mut *watch);
    let mut zones = Vec::new();
    for i in 0..job.zone.len() {
        let Some(own) = job.for_zone(i, Some(house.layout.datum)) else { continue };
        // What was found in reading stands with the house's own set.
        match extract::zone(lines, &own, i, &mut Findings::default()) {
            Ok(part) => {
                zones.push(lay(&part, source, &own, &mut Findings::default(), &mut *watch));
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
    sets
}

/// Lays a house out. Total: a rule that cannot be kept gives a finding and a mark, never an abort.
pub fn lay(
    house: &House,
    source: &Source,
    job: &Job,
    findings: &mut Findings,
    watch: Watch,
) -> LaidSet {
    let posed = posed(house, job);
    let (given, as_drawn, house) = (house, posed.as_drawn(house), posed.as_hung(house));
    let Posed { fields, planned, .. } = &posed;
    let walls: Vec<&DrawnWall> = fields.iter().map(|f| from_drawn::wall_of(house, f)).collect();
    let asked = problem(house, fields, planned, job);
    // What it takes laid out in other ways asks nothing of how it is laid.
    let others = || Others {
        each_elevation: each_elevation(&asked, (&walls, planned), job),
        courses: other_courses(given, job),
    };
    let here = || seams(&asked, (&walls, planned), job, watch);
    let (others, plan) = cores::beside(others, here);
    let others = others.unwrap_or_default();
    findings::walls_unknown(&walls, wall_order::unknown(house, fields, &job.work.walls), findings);
    let trims = trim::trims(house, fields, &posed.pole, job);
    let marks = piece_marks::beginnings(house, fields);
    let mut made = make(&walls, planned, &marks, &plan, job);
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

/// The walls in the order they are sided; those without runs come last.
fn order(walls: &[&DrawnWall], order: &[usize]) -> Vec<WallId> {
    let rest = (0..walls.len()).filter(|i| !order.contains(i));
    let all = order.iter().copied().chain(rest);
    all.filter_map(|i| Some(walls.get(i)?.id.clone())).collect()
}

/// A house with its courses: walls moved to be laid, where siding goes on them, and its runs.
struct Posed {
    found: Found,
    pole: StoryPole,
    /// Levels a hair off a course line are on it; none where nothing moved.
    settled: Option<House>,
    /// The first course hangs below the drawn bottom; none where nothing moved.
    hung: Option<House>,
    /// Blocks are moved a little and places too narrow for siding filled; none where there is neither.
    filled: Option<House>,
    fields: Vec<Field>,
    planned: Vec<Vec<PlannedCourse>>,
}

/// Settles courses and runs.
fn posed(house: &House, job: &Job) -> Posed {
    // The exposure of panels is fixed and the datum free; boards are evened between levels.
    let evened = job.siding().courses.is_evened();
    let found = if evened { Found::default() } else { search(house, job) };
    let pole = if evened { even::pole(house, job) } else { story_pole(house, &found, job) };
    let settled = settled(house, &pole);
    let as_drawn = settled.as_ref().unwrap_or(house);
    let hung = hung(as_drawn, &pole, &job.courses);
    let on = hung.as_ref().unwrap_or(as_drawn);
    let shifted = moved(on, &pole, job);
    let on = shifted.as_ref().unwrap_or(on);
    let filled = receive::filled(on, &pole, job).or_else(|| shifted.clone());
    let on = filled.as_ref().unwrap_or(on);
    let fields = fields(on, &pole, job);
    let wall = |f: &Field| courses(f, from_drawn::wall_of(on, f), &pole, job);
    let planned = fields.iter().map(wall).collect();
    Posed { found, pole, settled, hung, filled, fields, planned }
}

impl Posed {
    /// Walls as they are drawn.
    fn as_drawn<'a>(&'a self, house: &'a House) -> &'a House {
        self.settled.as_ref().unwrap_or(house)
    }

    /// Walls as they are laid.
    fn as_hung<'a>(&'a self, house: &'a House) -> &'a House {
        let moved = self.filled.as_ref().or(self.hung.as_ref());
        moved.unwrap_or_else(|| self.as_drawn(house))
    }

    /// The story pole as a table, of the walls as they are laid.
    fn table(&self, house: &House) -> PoleTable {
        PoleTable {
            lines: lines(house, &self.fields, &self.planned, &self.pole),
            choices: self.found.choices.clone(),
            tried: self.found.tried,
            evened: self.pole.lines.clone(),
            divisions: self.pole.divisions.clone(),
        }
    }
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
    Some(seams(&asked, (&walls, &posed.planned), &job, &mut |_| {}).panels)
}

/// Where panels go on each wall.
fn fields(house: &House, pole: &StoryPole, job: &Job) -> Vec<Field> {
    let pockets = job.siding().receivers.has_pockets();
    let set_backs = job.set_backs();
    let walls = house.elevations.iter().enumerate();
    walls
        .flat_map(|(e, on)| (0..on.walls.len()).map(move |w| (e, w)))
        .map(|(e, w)| {
            let rules = (&job.courses, &job.trim, job.clearances(), set_backs);
            receive::field(house, e, w, pole, rules)
        })
        .map(|f| if pockets { f } else { receive::boards::for_boards(f) })
        .collect()
}

/// Where seams stand: joints of boards on studs, laps of panels wherever the search puts them.
fn seams(
    asked: &SeamProblem,
    (walls, planned): (&[&DrawnWall], &[Vec<PlannedCourse>]),
    job: &Job,
    watch: Watch,
) -> SeamPlan {
    if job.siding().joints.is_on_studs() {
        joint::plan(asked, &joint_rules(walls, planned, job))
    } else {
        either_hand(asked, |p| seam::plan(p, watch))
    }
}

/// What elevations take where each is laid by itself, after a short search: panels, or their weight
/// where stock lengths are mixed. None where there is one alone.
fn each_elevation(
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
            let plan = seams(&one, of, job, &mut |_| {});
            let panels = i64::try_from(plan.panels).unwrap_or(i64::MAX);
            plan.certificate.mixed.map_or(panels, |m| m.weight)
        })
        .collect();
    (each.len() > 1).then(|| each.iter().sum())
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
