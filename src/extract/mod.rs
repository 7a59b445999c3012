//! From lines with roles to the house: views, walls, openings, and what each side of a wall is.

mod angled;
mod corners;
mod edges;
mod faces;
mod limits;
mod openings;
mod order;
mod parts;
mod returns;
mod views;
mod ways;
mod zones;

use self::ways::Outline;
use crate::diag::{Note, Notes, Refusal};
use crate::geom::vocabulary::{Affine, Point, Rect};
use crate::job::Job;
use crate::model::house::{Backdrop, DrawnElevation, House};
use crate::model::linework::{Linework, Role, Stroke};

/// The house that the lines show.
///
/// # Errors
/// `no-walls` when no view holds a closed wall outline. Faults that spoil an area (open or crossing
/// outlines, overlapping walls, openings outside any wall) are pushed to `notes` as errors.
pub fn house(lines: &Linework, job: &Job, notes: &mut Notes) -> Result<House, Refusal> {
    let found = part(lines, job, None, notes);
    // A wall drawn in millimetres is told of where it was drawn, not where the grid has it.
    notes.round_places(lines.scale.inches);
    found.map_err(|Refusal(mut why)| {
        why.round_places(lines.scale.inches);
        Refusal(why)
    })
}

/// The house as one of the job's zones shows it: of each wall what lies in the zone.
///
/// # Errors
/// As [`house`]; `no-walls` when the zone covers no wall.
pub fn zone(lines: &Linework, job: &Job, zone: usize, notes: &mut Notes) -> Result<House, Refusal> {
    part(lines, job, Some(zone), notes)
}

fn part(
    lines: &Linework,
    job: &Job,
    part: Option<usize>,
    notes: &mut Notes,
) -> Result<House, Refusal> {
    let found = ways::outlines(lines, job, notes);
    // Open outlines are errors: without them walls would be missing.
    notes.refuse_on_error()?;
    let views = views::views(lines, &found, job, notes);
    let mut shown: Vec<(&views::View, Vec<Outline>)> = Vec::new();
    for view in &views.elevations {
        let walls = walls_of(lines, view, &found, job, notes);
        if let Some(note) = limits::too_many_walls(&view.name, walls.len()) {
            notes.push(note);
            notes.refuse_on_error()?;
        }
        if !walls.is_empty() {
            shown.push((view, walls));
        }
    }
    let by_view: Vec<(&str, &[Outline])> =
        shown.iter().map(|(v, o)| (v.name.as_str(), o.as_slice())).collect();
    ways::report(&by_view, notes);
    let base = shared_base(&shown);
    let unlevelled: Vec<&str> = shown
        .iter()
        .filter(|(v, _)| level_line(lines, v).is_none())
        .map(|(v, _)| v.name.as_str())
        .collect();
    report_levels(&unlevelled, shown.len(), base.is_some(), notes);
    let mut elevations = Vec::new();
    for (view, walls) in shown {
        if let Some(e) = elevation(lines, view, walls, base, (job, part), notes) {
            elevations.push(e);
        }
    }
    if part.is_some() {
        elevations.retain(|e| !e.walls.is_empty());
    }
    views::stray_openings(lines, &views, job, notes);
    if elevations.iter().all(|e| e.walls.is_empty()) {
        // Why each wall was refused comes first.
        if !elevations.is_empty() {
            notes.refuse_on_error()?;
        }
        return Err(no_walls(lines, job));
    }
    let mut house = order::wrapped(elevations);
    order::name_walls(&mut house);
    if let Some(zone) = part.and_then(|z| job.zone.get(z)) {
        // Walls of the job's other lists are the whole house's.
        house
            .elevations
            .iter_mut()
            .for_each(|e| e.name = format!("{}, {}", e.name, zone.name).into());
        house.corners = corners::paired(&house);
        house.zone = part;
        return Ok(house);
    }
    house.corners = corners::paired(&house);
    // Walls at an angle leave their elevation, and one that is empty goes: names are asked before.
    parts::report(&house, job, notes);
    angled::widen(&mut house, job, notes);
    returns::add(&mut house, job, notes);
    corners::report(&house, job.sheet.lengths, notes);
    Ok(house)
}

/// Says of which views the heights are not tied to the others by a level line.
fn report_levels(views: &[&str], all: usize, based: bool, notes: &mut Notes) {
    // A single view has nothing to be tied to.
    if views.is_empty() || all < 2 {
        return;
    }
    let how = if based {
        "heights are taken from the lowest wall of all views"
    } else {
        "heights are taken from each one's own lowest wall"
    };
    let message = format!("no level line is drawn in {}; {how}", views.join(", "));
    let help = "Draw the first-floor line across each elevation on A-FLOR-LEVL, so that courses meet at the corners.";
    notes.push(if based {
        Note::info("level-assumed", message, help)
    } else {
        Note::warning("level-assumed", message, help)
    });
}

/// Where no level line ties the views: the lowest wall bottom of all, if the views stand on one
/// line in the source (bottoms within a storey), so that heights can be compared.
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
    notes: &mut Notes,
) -> Vec<Outline> {
    let here: Vec<Outline> = found.iter().filter(|o| view.holds(lines, o)).cloned().collect();
    if here.is_empty() && view.of_job {
        return ways::loose::of_view(lines, view.strokes(lines), job, notes);
    }
    here
}

/// Nothing to side: says what the drawing holds instead.
fn no_walls(lines: &Linework, job: &Job) -> Refusal {
    let found: Vec<String> = lines
        .layers
        .iter()
        .filter(|l| l.items > 0)
        .take(30)
        .map(|l| {
            let hidden = if l.layer.shown { "" } else { ", hidden" };
            format!("{} ({}{hidden})", l.layer.name, l.items)
        })
        .collect();
    let found =
        if found.is_empty() { "none with anything on it".to_owned() } else { found.join(", ") };
    let message = format!(
        "nothing to side: there is neither a closed outline on a wall layer ({}) nor a siding hatch with level lines. Layers found: {found}",
        job.patterns(Role::Wall).join(", ")
    );
    let help = "Draw each wall as a closed outline on A-WALL-OTLN inside its view, or name the layer that holds the walls as `wall` under [layers] in the job file; `lapwright layers DRAWING --suggest` makes a beginning.";
    Note::error("no-walls", message, help).into()
}

fn elevation(
    lines: &Linework,
    view: &views::View,
    outlines: Vec<Outline>,
    base: Option<f64>,
    (job, part): (&Job, Option<usize>),
    notes: &mut Notes,
) -> Option<DrawnElevation> {
    let all = frame(&outlines)?;
    let level = level_line(lines, view);
    let y0 = level.or(base).unwrap_or(all.y0);
    let origin = Point::new(all.x0, y0);
    let k = lines.scale.inches;
    // Elevation inches to source: move back, then out of inches.
    let to_source = Affine::scale(1.0 / k) * Affine::translate(origin.to_vec2());
    let local = Local { lines, view, origin, to_source, job, part };
    let (walls, zones) = faces::walls(&local, outlines, notes);
    let mut grade: Vec<Point> = local
        .strokes(Role::Grade)
        .flat_map(|s| s.points.iter().map(|p| local.place(*p)).collect::<Vec<_>>())
        .collect();
    grade.sort_by(|a, b| a.x.total_cmp(&b.x));
    let backdrop = view
        .strokes(lines)
        .map(|s| Backdrop {
            points: s.points.iter().map(|p| local.place(*p)).collect(),
            closed: s.closed,
            role: s.role,
        })
        .collect();
    Some(DrawnElevation {
        name: view.name.as_str().into(),
        to_source,
        walls,
        grade,
        level_drawn: level.is_some(),
        backdrop,
        zones,
    })
}

/// Height of the level line: the longest level stroke on the layer.
fn level_line(lines: &Linework, view: &views::View) -> Option<f64> {
    let mut found: Option<(f64, f64)> = None;
    for s in view.strokes(lines).filter(|s| s.role == Some(Role::Level)) {
        for w in s.points.windows(2) {
            let length = (w[1].x - w[0].x).abs();
            if crate::geom::tol::level(w[1].y - w[0].y) && found.is_none_or(|(l, _)| length > l) {
                found = Some((length, w[0].y));
            }
        }
    }
    found.map(|(_, y)| y)
}

/// One view with its own coordinates.
pub(crate) struct Local<'a> {
    pub(crate) lines: &'a Linework,
    pub(crate) view: &'a views::View,
    /// Origin of the elevation, inches of the whole drawing.
    pub(crate) origin: Point,
    pub(crate) to_source: Affine,
    pub(crate) job: &'a Job,
    /// The zone that is laid out; the house where none is named.
    pub(crate) part: Option<usize>,
}

impl<'a> Local<'a> {
    /// A place of the whole drawing in elevation inches.
    pub(crate) fn place(&self, p: Point) -> Point {
        p - self.origin.to_vec2()
    }

    /// An elevation place in source coordinates.
    pub(crate) fn source(&self, p: Point) -> Point {
        self.to_source * p
    }

    pub(crate) fn strokes(&self, role: Role) -> impl Iterator<Item = &'a Stroke> + use<'a> {
        self.view.strokes(self.lines).filter(move |s| s.role == Some(role))
    }

    pub(crate) fn ring(&self, s: &Stroke) -> Vec<Point> {
        s.points.iter().map(|p| self.place(*p)).collect()
    }
}

/// Box of a stroke.
pub(crate) fn stroke_box(s: &Stroke) -> Rect {
    crate::geom::polygon::bounds(&s.points).unwrap_or(Rect::ZERO)
}
