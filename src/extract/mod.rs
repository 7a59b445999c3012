//! From lines with roles to the house: views, walls, openings, and what each side of a wall is.

mod account;
mod angled;
mod bays;
mod by_hand;
mod call_size;
mod called;
mod corner_report;
mod corners;
mod crossing;
mod cut_sides;
mod doubted;
mod edges;
mod faces;
mod facing;
mod frame;
mod give;
mod given;
mod grade;
mod hidden;
mod ink;
mod join;
mod levels;
mod limits;
mod mirror;
mod no_walls;
mod numbers;
mod openings;
mod order;
mod outline;
mod parts;
mod patch;
mod planes;
mod returns;
mod share;
mod shown;
mod siding;
mod stops_short;
mod too_large;
mod turns;
mod upright;
mod views;
mod ways;
mod zones;

use std::collections::BTreeSet;

pub use self::angled::moved_anew;
use self::frame::ViewFrame;
use self::given::outlines;
use self::levels::{level_line, report_levels};
pub use self::mirror::axis as mirror_axis;
use self::outline::Outline;
pub use self::share::facade;
pub use self::shown::shown_views;
use crate::finding::{Findings, Refusal};
use crate::geom::vocabulary::{Affine, Point, Rect};
use crate::job::Job;
use crate::model::house::{Backdrop, DrawnElevation, House, WallWay};
use crate::model::ids::{ElevationName, WallId};
use crate::model::linework::{Linework, Role, ViewTurn};

/// The house that the lines show.
///
/// # Errors
/// `no-walls` when no view holds a closed wall outline. Faults that spoil an area (open or crossing
/// outlines, overlapping walls, openings outside any wall) are pushed to `findings` as errors.
pub fn house(lines: &Linework, job: &Job, findings: &mut Findings) -> Result<House, Refusal> {
    let found = part(lines, job, None, findings);
    // A wall drawn in millimeters is told of where it was drawn, not where the grid has it.
    findings.round_places(lines.scale.inches);
    found.map_err(|Refusal(mut why)| {
        why.round_places(lines.scale.inches);
        Refusal(why)
    })
}

/// The house as one of the job's zones shows it: of each wall what lies in the zone.
///
/// # Errors
/// As [`house`]; `no-walls` when the zone covers no wall.
pub fn zone(
    lines: &Linework,
    job: &Job,
    zone: usize,
    findings: &mut Findings,
) -> Result<House, Refusal> {
    part(lines, job, Some(zone), findings)
}

/// The elevations of lines as they are drawn, each with its name and the part of the drawing it is in,
/// inches.
pub fn views_found(lines: &Linework, job: &Job) -> Vec<(String, Rect)> {
    let named = siding::as_named(lines, job);
    let walls = outlines(&named, job, &mut Findings::default());
    let views = views::views(lines, &walls, job, &mut Findings::default());
    views.elevations.iter().map(|v| (v.name.clone(), v.region)).collect()
}

/// The turns that the job asks for, of lines as they are drawn.
///
/// # Errors
/// `part-unknown` for a view that there is not.
pub fn turns(
    lines: &Linework,
    job: &Job,
    findings: &mut Findings,
) -> Result<Vec<ViewTurn>, Refusal> {
    let views = views_found(lines, job);
    let found: Vec<(&str, Rect)> = views.iter().map(|(v, r)| (v.as_str(), *r)).collect();
    let names: Vec<&str> = found.iter().map(|v| v.0).collect();
    turns::report_unknown(&names, job, |v| v.turn.is_some() && !v.skip, findings);
    findings.refuse_on_error()?;
    Ok(turns::asked(lines, &found, job))
}

fn part(
    lines: &Linework,
    job: &Job,
    part: Option<usize>,
    findings: &mut Findings,
) -> Result<House, Refusal> {
    if let Some(finding) = limits::too_fine(lines) {
        return Err(Refusal(Box::new(finding)));
    }
    let named = siding::as_named(lines, job);
    let lines = named.as_ref();
    let found = outlines(lines, job, findings);
    // Open outlines are errors: without them walls would be missing.
    findings.refuse_on_error()?;
    let views = views::views(lines, &found, job, findings);
    let shown = sided_views(lines, &views.elevations, &found, job, findings)?;
    given::report(lines, &views.elevations, &given_shown(&shown), job, findings);
    let by_view: Vec<(&str, &[Outline])> =
        shown.iter().map(|(v, o)| (v.name.as_str(), o.as_slice())).collect();
    ways::report(&by_view, findings);
    if part.is_none() {
        upright::check(lines, &shown, findings);
        findings.refuse_on_error()?;
    }
    let base = shared_base(&shown);
    let mut account = part.is_none().then(|| account::Account::of(lines));
    report_levels(&unlevelled(lines, &shown), shown.len(), base.is_some(), findings);
    let (mut elevations, named) =
        elevations(lines, shown, base, (job, part), &mut account, findings)?;
    if part.is_some() {
        elevations.retain(|e| !e.walls.is_empty());
    }
    views::stray_openings(lines, &views, job, findings);
    let accounts = account.map(|a| a.close(&views, job, findings)).unwrap_or_default();
    if elevations.iter().all(|e| e.walls.is_empty()) {
        // Why each wall was refused comes first.
        if !elevations.is_empty() {
            findings.refuse_on_error()?;
        }
        let left_out = named.into_iter().map(|(_, id)| id).collect();
        return Err(no_walls::refusal(lines, job, &views.others, left_out));
    }
    let mut house = order::wrapped(elevations);
    (house.accounts, house.roughness) = (accounts, lines.roughness);
    order::name_walls(&mut house);
    Ok(match part {
        Some(zone) => of_zone(house, zone, job),
        None => {
            share::report(&house, findings);
            doubted::report(&house, findings);
            by_hand::settle(&mut house, &named, job, findings);
            with_corners(&mut house, job, findings);
            house
        }
    })
}

/// Elevations with their walls, and the names of all walls, those that the job leaves out among them.
fn elevations(
    lines: &Linework,
    shown: Vec<(&views::View, Vec<Outline>)>,
    base: Option<f64>,
    (job, part): (&Job, Option<usize>),
    account: &mut Option<account::Account>,
    findings: &mut Findings,
) -> Result<(Vec<DrawnElevation>, WallNames), Refusal> {
    let built: Vec<String> = shown.iter().map(|(v, _)| mirror::built_name(&v.name, job)).collect();
    let slugs = order::slugs(&built.iter().map(String::as_str).collect::<Vec<_>>());
    let (mut out, mut named) = (Vec::new(), Vec::new());
    for ((view, walls), slug) in shown.into_iter().zip(&slugs) {
        if let Some(finding) = limits::too_many_outlines(lines, view) {
            return Err(Refusal(Box::new(finding)));
        }
        let of = (job, part, slug.as_str());
        if let Some((e, names)) = elevation((lines, view, walls), base, of, account, findings) {
            named.extend(names.into_iter().map(|n| (e.name.clone(), n)));
            out.push(e);
        }
    }
    Ok((out, named))
}

/// Names of walls with the elevations they are in.
type WallNames = Vec<(ElevationName, WallId)>;

/// Pairs the corners of a house and adds the walls that its job gives.
fn with_corners(house: &mut House, job: &Job, findings: &mut Findings) {
    house.corners = corners::paired(house);
    bays::join(house, job);
    // Walls at an angle leave their elevation, and one that is empty goes: names are asked before.
    parts::report(house, job, findings);
    angled::widen(house, job, findings);
    returns::add(house, job, findings);
    corner_report::report(house, findings);
    stops_short::ask(house, findings);
}

/// A house as one of its zones shows it.
fn of_zone(mut house: House, zone: usize, job: &Job) -> House {
    let Some(of_job) = job.zone.get(zone) else { return house };
    // Walls of the job's other lists are the whole house's.
    let named = |name: &str| format!("{name}, {}", of_job.name).into();
    house.elevations.iter_mut().for_each(|e| e.name = named(&e.name));
    // A strip is counted once, with the house.
    house.elevations.iter_mut().flat_map(|e| &mut e.walls).for_each(|w| w.short.clear());
    house.corners = corners::paired(&house);
    house.zone = Some(zone);
    house
}

/// Views with walls to side, and their walls.
fn sided_views<'a>(
    lines: &Linework,
    views: &'a [views::View],
    found: &[Outline],
    job: &Job,
    findings: &mut Findings,
) -> Result<Vec<(&'a views::View, Vec<Outline>)>, Refusal> {
    let mut shown = Vec::new();
    for view in views {
        let walls = walls_of(lines, view, found, job, findings);
        let walls = planes::of_view(lines, view, walls, (job, findings));
        if let Some(note) = limits::too_many_walls(&view.name, walls.len()) {
            findings.push(note);
            findings.refuse_on_error()?;
        }
        if !walls.is_empty() {
            shown.push((view, walls));
        }
    }
    Ok(shown)
}

/// Which walls of the job the views show, from 1.
fn given_shown(shown: &[(&views::View, Vec<Outline>)]) -> BTreeSet<usize> {
    let all = shown.iter().flat_map(|(_, walls)| walls);
    all.filter_map(|o| o.given.as_ref()).map(|g| g.number).collect()
}

/// Names of views without a level line.
fn unlevelled<'a>(lines: &Linework, shown: &[(&'a views::View, Vec<Outline>)]) -> Vec<&'a str> {
    let bare = shown.iter().filter(|(v, _)| level_line(lines, v).is_none());
    bare.map(|(v, _)| v.name.as_str()).collect()
}

/// Where no level line ties the views: the lowest wall bottom of all, if the views stand on one
/// line in the source (bottoms within a story), so that heights can be compared.
fn shared_base(shown: &[(&views::View, Vec<Outline>)]) -> Option<f64> {
    let bottoms: Vec<f64> = shown.iter().filter_map(|(_, w)| frame(w)).map(|r| r.y0).collect();
    let (low, high) =
        (bottoms.iter().copied().reduce(f64::min)?, bottoms.iter().copied().reduce(f64::max)?);
    (high - low < 96.0).then_some(low)
}

fn frame(walls: &[Outline]) -> Option<Rect> {
    walls.iter().map(Outline::frame).reduce(|a, b| a.union(b))
}

/// The walls of a view, by the first of the three ways that finds any.
fn walls_of(
    lines: &Linework,
    view: &views::View,
    found: &[Outline],
    job: &Job,
    findings: &mut Findings,
) -> Vec<Outline> {
    if let Some(named) = siding::walls(lines, view, job, findings) {
        let given = found.iter().filter(|o| o.given.is_some() && view.holds(lines, o));
        let given: Vec<Outline> = given.cloned().collect();
        let named = named.into_iter().filter(|o| !given::covers(&given, o));
        return named.chain(given.iter().cloned()).collect();
    }
    let here: Vec<Outline> = found.iter().filter(|o| view.holds(lines, o)).cloned().collect();
    // Where the job names the layers of a view, its lines say where every wall ends and what it encloses.
    let of_courses = here.iter().all(|o| o.way == WallWay::Hatch && o.is_of_lines());
    if view.of_job && (here.is_empty() || (of_courses && !view.layers.is_empty())) {
        let found = ways::loose::of_view(lines, view.strokes(lines), job, findings);
        return if found.is_empty() { here } else { found };
    }
    here
}

fn elevation(
    (lines, view, outlines): (&Linework, &views::View, Vec<Outline>),
    base: Option<f64>,
    (job, part, slug): (&Job, Option<usize>, &str),
    account: &mut Option<account::Account>,
    findings: &mut Findings,
) -> Option<(DrawnElevation, Vec<WallId>)> {
    let all = frame(&outlines)?;
    let level = level_line(lines, view);
    let y0 = level.or(base).unwrap_or(all.y0);
    let origin = Point::new(all.x0, y0);
    let k = lines.scale.inches;
    // Elevation inches to source: move back, then out of inches.
    let back = lines.way_back(all.center());
    let to_source = Affine::scale(1.0 / k) * back * Affine::translate(origin.to_vec2());
    let local = ViewFrame { lines, view, origin, to_source, job, part, slug };
    let shown = faces::walls(&local, outlines, findings);
    let mut lines_of_grade: Vec<Vec<Point>> =
        local.strokes(Role::Grade).map(|s| local.ring(s)).collect();
    let points = lines_of_grade.iter().map(Vec::len).sum();
    if let Some(finding) = limits::too_fine_grade(&view.name, points) {
        findings.push(finding);
        lines_of_grade.clear();
    }
    let grade = grade::profile(&lines_of_grade);
    let backdrop = view
        .strokes(lines)
        .map(|s| Backdrop {
            points: s.points.iter().map(|p| local.place(*p)).collect(),
            closed: s.closed,
            role: s.role,
        })
        .collect();
    let made = DrawnElevation {
        name: mirror::built_name(&view.name, job).into(),
        to_source,
        walls: shown.walls,
        grade,
        level_drawn: level.is_some(),
        backdrop,
        texts: local.texts(),
        zones: shown.zones,
    };
    if part.is_none() {
        called::check(&local, &made, findings);
    }
    if let Some(account) = account {
        account.view(&local, &made, (&shown.skipped, &shown.taken));
    }
    Some((made, shown.named))
}
