//! From a drawing to lines in inches on the grid, each with its role: scale, roles, dirt mended and
//! listed.

mod collect;
mod courses;
mod dimension_texts;
mod dirt;
mod fills;
mod insertions;
mod left;
mod loose_courses;
mod motion;
mod paper_scale;
pub mod roles;
mod roofs;
mod scale;
mod shapes;
mod sizes;
mod square;
mod stated;
mod stories;
pub mod suggest;
mod view_scales;
pub mod weld;

use crate::finding::views::ViewFinding;
use crate::finding::{Finding, Findings, Refusal};
use crate::geom::vocabulary::Rect;
use crate::job::Job;
use crate::model::drawing::Drawing;
use crate::model::linework::{Linework, ViewTurn};

/// Lines of the drawing's model space in inches, on the grid and mended.
///
/// # Errors
/// As [`in_inches`].
pub fn linework(
    drawing: &Drawing,
    job: &Job,
    findings: &mut Findings,
) -> Result<Linework, Refusal> {
    let mut lines = in_inches(drawing, job, findings)?;
    settle(&mut lines, job, findings);
    Ok(lines)
}

/// Lines of the drawing's model space in inches, as drawn.
///
/// # Errors
/// `unit-implausible` when sizes fit no unit, `known-unreadable`.
pub fn in_inches(
    drawing: &Drawing,
    job: &Job,
    findings: &mut Findings,
) -> Result<Linework, Refusal> {
    let layers = roles::layer_roles(drawing, job);
    roles::report(&layers, job, findings);
    roles::report_points(drawing, &layers, findings);
    let mut raw = collect::collect(drawing, job, layers, findings);
    let scale = scale::settle(drawing, &raw, job, findings)?;
    collect::to_inches(&mut raw, scale);
    Ok(raw)
}

/// Sets a view upright that the job says is not.
pub fn turned(lines: &mut Linework, asked: &ViewTurn, findings: &mut Findings) {
    motion::turned(lines, asked);
    if !asked.turn.is_none() {
        let (view, turn) = (asked.view.clone(), asked.turn);
        findings.push(Finding::new(ViewFinding::ViewSetUpright { view, turn }));
    }
}

/// Mirrors the whole drawing at an upright axis: the house is built the other way round.
pub fn mirrored(lines: &mut Linework, axis: f64, findings: &mut Findings) {
    motion::mirrored(lines, axis);
    findings.push(Finding::new(ViewFinding::ModelMirrored {}));
}

/// Whether views of a drawing may have scales of their own: the job gives one, or a page shows several.
pub fn may_differ_in_scale(drawing: &Drawing, lines: &Linework, job: &Job) -> bool {
    let given = job.elevation.iter().any(|v| v.known.is_some() && !v.skip);
    given || paper_scale::is_paper(drawing) && view_scales::are_several(lines)
}

/// Brings each view to the scale taken for the drawing that is drawn at another; `views` are those found,
/// with the boxes they are drawn in, inches.
///
/// # Errors
/// `known-unreadable` for a distance of a view that is none.
pub fn to_one_scale(
    lines: &mut Linework,
    drawing: &Drawing,
    views: &[(String, Rect)],
    job: &Job,
    findings: &mut Findings,
) -> Result<(), Refusal> {
    let paper = paper_scale::is_paper(drawing);
    for view in view_scales::found(lines, views, (job, paper), findings)? {
        motion::scaled(lines, &view);
    }
    Ok(())
}

/// Takes drawing noise out of lines in inches, sets them on the grid, mends and closes them.
pub fn settle(lines: &mut Linework, job: &Job, findings: &mut Findings) {
    square::square(lines, job, findings);
    collect::to_grid(lines);
    dirt::mend(lines, job.drawing.weld, findings);
    weld::close_outlines(lines, job.drawing.weld, findings);
    insertions::assign(lines);
    fills::outline(lines);
    courses::find(lines, job, findings);
    roofs::mark(lines, &courses::regions(lines, job), findings);
    dirt::dimensions(lines, job, findings);
}
