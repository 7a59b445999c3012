//! What the job says of views: how one is turned before it is laid out, which is left out.

use super::mirror::mirrored_region;
use super::outline::stroke_box;
use crate::finding::views::{JobList, ViewFinding};
use crate::finding::{Finding, Findings};
use crate::geom::vocabulary::Rect;
use crate::job::Job;
use crate::job::drawing::View as JobView;
use crate::model::linework::{Linework, ViewTurn};

/// Wider than any drawing: the region of a view that is all of it.
const ALL: f64 = 1e9;

/// Every turn that the job asks for, with the part of the drawing it is for. Views are given by their
/// names and regions.
pub(super) fn asked(lines: &Linework, found: &[(&str, Rect)], job: &Job) -> Vec<ViewTurn> {
    let mut out = Vec::new();
    for asked in &job.elevation {
        let Some(turn) = asked.turn.filter(|_| !asked.skip) else { continue };
        let Some((_, region)) = found.iter().find(|v| asked.is_of(v.0)) else {
            continue;
        };
        let all = || lines.strokes.iter().map(stroke_box).reduce(|a, b| a.union(b));
        let region = if region.width() > ALL {
            all().unwrap_or_default().inflate(1.0, 1.0)
        } else {
            *region
        };
        out.push(ViewTurn { view: asked.name.clone(), region, turn });
    }
    out
}

/// Says of names that no view has.
pub(super) fn report_unknown(
    found: &[&str],
    job: &Job,
    of: impl Fn(&JobView) -> bool,
    findings: &mut Findings,
) {
    for asked in job.elevation.iter().filter(|v| v.is_remark() && of(v)) {
        if found.iter().all(|v| !asked.is_of(v)) {
            let elevations = found.iter().map(|v| (*v).into()).collect();
            let (list, named) = (JobList::Elevation, asked.name.clone());
            findings.push(Finding::new(ViewFinding::PartUnknown { list, named, elevations }));
        }
    }
}

/// Whether the job leaves a view out.
pub(super) fn skips(job: &Job, view: &str) -> bool {
    job.elevation.iter().any(|e| e.skip && e.is_of(view))
}

/// Where a region of the job lies now, if the job turned it.
pub(super) fn region_of(lines: &Linework, asked: &JobView, drawn: Rect) -> Rect {
    let own = lines.moved.iter().rev().find(|m| m.view.as_deref() == Some(asked.name.as_str()));
    mirrored_region(lines, own.map_or(drawn, |m| m.now))
}
