//! Jobs that a drawing may be read with, each tried by reading it: in memory, and as often as its size
//! allows.

use std::collections::BTreeMap;

use super::head::lines_of;
use super::pages::limits;
use crate::finding::lines::LineFinding;
use crate::finding::{FindingKind, Findings, Refusal, Severity};
use crate::geom::polygon::{bounds, signed_area, total_area};
use crate::job::Job;
use crate::model::drawing::{Drawing, Space};
use crate::model::guess::LayerGuess;
use crate::model::house::{House, WallWay};
use crate::model::linework::{LayerUse, Role};
use crate::model::trial::{JobGuess, Reached, Suggested};
use crate::units::Unit;
use crate::{extract, normalize, read};

/// Items read over all trials: a drawing of a million is tried a few times, one of ten thousand with every
/// guess.
const MOST_ITEMS: usize = 3_000_000;
/// Fewest and most trials.
const TRIALS: [usize; 2] = [3, 20];
/// Jobs that are kept.
const KEPT: usize = 3;
/// A wall higher than this, inches, is no wall of a house but a border or a plan: 60 ft. Of our own
/// choosing: no source.
const HIGHEST: f64 = 720.0;

/// Walls that are smaller than this on the average, square feet, are not better than none: of our own
/// choosing, no source.
const LEAST_WALL: f64 = 10.0;

/// Jobs that lead to a layout better than none.
///
/// # Errors
/// When the drawing cannot be read.
pub fn suggestions(bytes: &[u8], name: &str, job: &Job) -> Result<Suggested, Refusal> {
    let drawing = read::drawing(bytes, name, &limits(job), &mut Findings::default())?;
    Ok(suggested(&drawing, job))
}

/// The same of a drawing that is read.
pub(super) fn suggested(drawing: &Drawing, job: &Job) -> Suggested {
    let mut left = (MOST_ITEMS / drawing.items.len().max(1)).clamp(TRIALS[0], TRIALS[1]);
    let (plain, found) = tried(drawing, job);
    let unit = likely_unit(&found).filter(|_| !plain.usable);
    let hidden = !plain.usable && is_hidden(drawing);
    let base = JobGuess { unit, hidden_layers: hidden, ..JobGuess::default() };
    let mut jobs: Vec<JobGuess> = Vec::new();
    for guess in candidates(drawing, &base, job, plain.usable) {
        if left == 0 {
            break;
        }
        // What is drawn as siding goes before outlines, whatever these lead to.
        if jobs.iter().any(|j| j.reached.from_siding)
            && !guess.layers.is_empty()
            && is_outlines(&guess)
        {
            continue;
        }
        left -= 1;
        let reached = tried(drawing, &job.with_guess(&guess)).0;
        // A layer that is tried for its siding is no wall's where none is found on it.
        let as_guessed = reached.from_siding || !is_siding(&guess);
        // Loops of a plan, a schedule or a detail are no walls.
        let are_walls = plain.usable || reached.area >= LEAST_WALL * reached.walls as f64;
        if as_guessed && are_walls && reached.is_better_than(&plain) {
            jobs.push(JobGuess { reached, ..guess });
        }
    }
    if jobs.iter().any(|j| j.reached.from_siding) {
        jobs.retain(|j| j.reached.from_siding);
    }
    jobs.sort_by(|a, b| rank(&b.reached).total_cmp(&rank(&a.reached)));
    jobs.dedup_by(|b, a| same_walls(a, b));
    jobs.truncate(KEPT);
    Suggested { plain, jobs }
}

/// Whether two lead to the same, so that the second says nothing new.
fn same_walls(a: &JobGuess, b: &JobGuess) -> bool {
    a.reached.has_walls_of(&b.reached) && a.reached.openings == b.reached.openings
}

/// Whether a guess takes walls from outlines.
fn is_outlines(guess: &JobGuess) -> bool {
    use crate::model::guess::GuessReason as R;
    let of_wall = |g: &&LayerGuess| g.role == Role::Wall;
    guess
        .layers
        .iter()
        .filter(of_wall)
        .any(|g| matches!(g.reason, R::LargestOutline | R::NameHolds { .. }))
}

/// Whether a guess takes walls from siding that is drawn on a layer.
fn is_siding(guess: &JobGuess) -> bool {
    use crate::model::guess::GuessReason as R;
    let of_siding = |g: &LayerGuess| {
        matches!(g.reason, R::SidingHatches { .. } | R::LevelLines { .. }) && g.role == Role::Wall
    };
    guess.layers.iter().any(of_siding)
}

/// How far a job leads: its share of the facades, less a little for each warning, and more where openings
/// are found.
fn rank(r: &Reached) -> f64 {
    r.percent.min(100.0) + 20.0 * (r.openings as f64).min(20.0).sqrt()
        - 2.0 * (r.warnings as f64).min(20.0)
}

/// Reads a drawing with a job: what it comes to, and what was found.
pub(super) fn tried(drawing: &Drawing, job: &Job) -> (Reached, Findings) {
    let mut findings = Findings::default();
    let house = lines_of(drawing, job, &mut findings)
        .and_then(|lines| extract::house(&lines, job, &mut findings));
    let house = match house {
        Ok(house) => Some(house),
        Err(Refusal(stop)) => {
            if !findings.all().contains(&stop) {
                findings.push(*stop);
            }
            None
        }
    };
    (reached(house.as_ref(), &findings), findings)
}

fn reached(house: Option<&House>, findings: &Findings) -> Reached {
    let count = |s: Severity| findings.all().iter().filter(|f| f.severity() == s).count();
    let errors = count(Severity::Error);
    let (warnings, remarks) = (count(Severity::Warning), count(Severity::Info));
    let none = Reached { errors, warnings, remarks, ..Reached::default() };
    let Some(house) = house else { return none };
    let with_walls = house.elevations.iter().filter(|e| !e.walls.is_empty());
    let walls = || house.elevations.iter().flat_map(|e| &e.walls);
    let tallest =
        walls().filter_map(|w| bounds(&w.outline)).map(|b| b.height()).fold(0.0, f64::max);
    let openings = || walls().flat_map(|w| &w.openings);
    let faces: f64 = walls().map(|w| total_area(&w.faces)).sum();
    let open: f64 = openings().map(|o| signed_area(&o.outline).abs()).sum();
    let facades: f64 = house.elevations.iter().map(extract::facade).sum();
    Reached {
        usable: errors == 0 && tallest > 0.0 && tallest <= HIGHEST,
        from_siding: walls().any(|w| w.way == WallWay::Hatch),
        elevations: with_walls.count(),
        walls: walls().count(),
        openings: openings().count(),
        area: (faces - open).max(0.0) / 144.0,
        percent: if facades > 0.0 { (100.0 * faces / facades).min(100.0) } else { 0.0 },
        ..none
    }
}

/// The unit that sizes speak for, where the one taken is not plausible.
fn likely_unit(found: &Findings) -> Option<Unit> {
    found.all().iter().find_map(|f| match &f.kind {
        FindingKind::Lines(LineFinding::UnitImplausible { likely, .. }) => {
            likely.as_ref().map(|h| h.unit)
        }
        _ => None,
    })
}

/// Whether most of what is drawn is on layers that are off.
fn is_hidden(drawing: &Drawing) -> bool {
    let model = || drawing.items.iter().filter(|i| i.space == Space::Model);
    let off =
        |i: &&crate::model::drawing::Item| drawing.layers.get(i.layer).is_some_and(|l| !l.shown);
    2 * model().filter(off).count() > model().count()
}

/// Jobs to try, the likeliest first. Where the drawing reads without a job its walls stay as they are.
fn candidates(drawing: &Drawing, base: &JobGuess, job: &Job, reads: bool) -> Vec<JobGuess> {
    let layers = normalize::roles::layer_roles(drawing, job);
    let named = normalize::suggest::guesses(drawing, &layers);
    let is_wall = |g: &LayerGuess| g.role == Role::Wall;
    let others: Vec<LayerGuess> = named.iter().filter(|g| !is_wall(g)).cloned().collect();
    let made = |walls: &[LayerGuess], others: &[LayerGuess]| {
        let all: Vec<LayerGuess> = walls.iter().chain(others).cloned().collect();
        // A layer means one thing, the walls' first.
        let mut by_layer: BTreeMap<String, LayerGuess> = BTreeMap::new();
        for g in all {
            by_layer.entry(g.layer.clone()).or_insert(g);
        }
        let layers = normalize::suggest::beside_agreed(by_layer.into_values().collect(), &layers);
        JobGuess { layers, ..base.clone() }
    };
    let mut out = vec![made(&[], &others)];
    let openings: Vec<LayerGuess> = others.iter().filter(|g| g.role.is_thing()).cloned().collect();
    out.push(made(&[], &openings));
    if base.unit.is_some() || base.hidden_layers {
        out.push(base.clone());
    }
    if !reads {
        for wall in normalize::suggest::siding_layers(drawing, &layers) {
            out.push(made(std::slice::from_ref(&wall), &openings));
        }
        let walls: Vec<LayerGuess> = named.iter().filter(|g| is_wall(g)).cloned().collect();
        out.push(made(&walls, &others));
        out.push(made(&walls, &openings));
        for wall in walls.into_iter().chain(normalize::suggest::outline_layers(drawing, &layers)) {
            out.push(made(std::slice::from_ref(&wall), &openings));
            out.push(made(&[wall], &[]));
        }
    }
    out.retain(|g| *g != JobGuess::default());
    out.dedup();
    out
}

/// Roles of layers as the drawing has them.
pub(super) fn roles(drawing: &Drawing, job: &Job) -> Vec<LayerUse> {
    normalize::roles::layer_roles(drawing, job)
}
