//! Drawing noise taken out, once, so that all later stages see clean geometry: a common tilt is
//! undone, sides that are all but level or plumb are squared, steps that no one draws are closed.
//!
//! Three thresholds say what is noise. A side over [`noise::LONG`] is squared where it lies within
//! [`noise::ANGLE`] and [`noise::LEAN`] of level or plumb. Where many sides of a view lean, the view is
//! rough: there shorter sides are squared too, and lines that lie within [`noise::STEP`] of one another
//! are one line. What is steeper, longer or wider is built so and stays.

mod apply;
mod classes;
mod ends;
mod lines_of;
mod net;
mod noise;
mod rounded;
mod sites;
mod tilt;

use crate::finding::lines::LineFinding;
use crate::finding::{Finding, Findings};
use crate::job::Job;
use crate::model::linework::Linework;

/// Most of what was moved that goes without a warning, inches: what two marks of a tape are apart.
const SLIGHT: f64 = noise::STEP;

/// Takes drawing noise out of the lines, and says so.
pub(super) fn square(lines: &mut Linework, job: &Job, findings: &mut Findings) {
    // A drawing without a leaning side, and nearly all are, is done with here.
    if !net::any_leans(lines) && !net::any_turned(lines) {
        return;
    }
    let sites = sites::sites(lines, job);
    let tilt = tilt::undone(lines, &sites);
    // Regions of tilted views have moved with them.
    let sites = if tilt.is_some() { sites::sites(lines, job) } else { sites };
    let done = apply::squared(lines, &sites);
    let tilt = tilt.map(|t| t.to_degrees());
    if tilt.is_none() && done.sides + done.steps == 0 {
        return;
    }
    let kind = LineFinding::LinesSquared {
        sides: done.sides,
        steps: done.steps,
        most: done.most,
        tilt,
        slight: done.most <= SLIGHT && tilt.is_none_or(|t| t.abs() <= noise::MOST_TILT),
    };
    let mut finding = Finding::new(kind);
    if let Some((origin, at)) = &done.at {
        finding = finding.about(origin).at(lines.source(*at));
    }
    findings.push(finding);
}
