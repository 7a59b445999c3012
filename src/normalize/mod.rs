//! From a drawing to lines in inches on the grid, each with its role: scale, roles, dirt mended and
//! listed.

mod collect;
mod dirt;
pub mod roles;
mod scale;
pub mod suggest;
pub mod weld;

use crate::diag::{Notes, Refusal};
use crate::job::Job;
use crate::model::drawing::Drawing;
use crate::model::linework::Linework;

/// Lines of the drawing's model space in inches.
///
/// # Errors
/// `unit-implausible` when sizes show that the unit is wrong, `known-unreadable`.
pub fn linework(drawing: &Drawing, job: &Job, notes: &mut Notes) -> Result<Linework, Refusal> {
    let layers = roles::layer_roles(drawing, job);
    roles::report(&layers, job, notes);
    roles::report_points(drawing, &layers, notes);
    let mut raw = collect::collect(drawing, job, layers);
    let scale = scale::settle(drawing, &raw, job, notes)?;
    collect::to_inches(&mut raw, scale);
    dirt::mend(&mut raw, notes);
    weld::close_outlines(&mut raw, job.drawing.weld, notes);
    dirt::dimensions(&raw, job, notes);
    Ok(raw)
}
