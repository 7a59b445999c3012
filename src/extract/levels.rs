//! Level lines: what ties the heights of views together.

use super::views;
use crate::finding::views::ViewFinding;
use crate::finding::{Finding, Findings};
use crate::model::ids::ElevationName;
use crate::model::linework::{Linework, Role};

/// Says of which views the heights are not tied to the others by a level line.
pub(super) fn report_levels(views: &[&str], all: usize, based: bool, findings: &mut Findings) {
    // A single view has nothing to be tied to.
    if views.is_empty() || all < 2 {
        return;
    }
    let elevations = views.iter().map(|v| ElevationName::from(*v)).collect();
    findings.push(Finding::new(ViewFinding::LevelAssumed { elevations, shared_base: based }));
}

/// Height of the level line: the longest level stroke on the layer.
pub(super) fn level_line(lines: &Linework, view: &views::View) -> Option<f64> {
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
