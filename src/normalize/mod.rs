//! From a drawing to lines in inches on the grid, each with its role: scale, roles, dirt mended and
//! listed.

mod collect;
mod dirt;
mod fills;
mod insertions;
mod left;
pub mod roles;
mod scale;
mod shapes;
pub mod suggest;
pub mod weld;

use crate::finding::{Findings, Refusal};
use crate::job::Job;
use crate::model::drawing::Drawing;
use crate::model::linework::Linework;

/// Lines of the drawing's model space in inches.
///
/// # Errors
/// `unit-implausible` when sizes show that the unit is wrong, `known-unreadable`.
pub fn linework(
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
    dirt::mend(&mut raw, findings);
    weld::close_outlines(&mut raw, job.drawing.weld, findings);
    insertions::assign(&mut raw);
    fills::outline(&mut raw);
    dirt::dimensions(&raw, job, findings);
    Ok(raw)
}
