//! How few panels there can be, beside what the layout and others take.

use super::area::panels_by_area;
use super::seam_places::seam_places;
use crate::layout::bound::{Bound, BoundMethod, HalvesReused, KeptLeast};
use crate::layout::laid::LaidHouse;
use crate::model::seam::{Certificate, Exclusion, SeamPlan};
use crate::model::waiting::OffcutReach;

/// What the house takes laid out in other ways.
#[derive(Clone, Copy, Debug, Default)]
pub struct Others {
    /// Each elevation by itself: see [`Bound::each_elevation`].
    pub each_elevation: Option<i64>,
    /// Courses the other way: see [`Bound::other_courses`].
    pub courses: Option<usize>,
}

/// The panel count with its proof.
pub fn proof(layout: &LaidHouse, plan: &SeamPlan, others: Others) -> Bound {
    let certificate = plan.certificate.clone();
    let reuse = layout.job.seams.reuse_halves;
    let reuse = reuse.then(|| HalvesReused { saved: layout.halved(), cut: layout.panels.len() });
    Bound {
        panels: certificate.bound,
        best: layout.panels.len(),
        proven: certificate.proven,
        kept_least: kept_least(layout, &certificate),
        method: method(&certificate),
        excludes: excludes(layout, &certificate, reuse),
        reuse,
        crew: plan.crew_panels,
        each_elevation: others.each_elevation,
        by_area: panels_by_area(layout),
        other_policy: plan.other_policy_panels,
        other_courses: others.courses,
        conflicts: plan.conflicts.clone(),
        seams: seam_places(layout, plan.least_at_openings),
        certificate,
    }
}

fn method(certificate: &Certificate) -> BoundMethod {
    match (&certificate.mixed, &certificate.prices) {
        (None, Some(list)) => BoundMethod::Prices { prices: list.ends.len() + list.seamless.len() },
        (None, None) => BoundMethod::One { function: certificate.function },
        (Some(mixed), _) => {
            BoundMethod::Mixed { functions: mixed.stocks.iter().map(|s| s.function).collect() }
        }
    }
}

/// What is kept least: one length is counted, several are weighed.
fn kept_least(layout: &LaidHouse, certificate: &Certificate) -> KeptLeast {
    match certificate.mixed {
        None => KeptLeast::Panels,
        Some(_) if layout.stocks.iter().all(|s| s.cost.is_some()) => KeptLeast::Cost,
        Some(_) => KeptLeast::Length,
    }
}

/// Halves in use are left out by so many as they save.
fn excludes(
    layout: &LaidHouse,
    certificate: &Certificate,
    reuse: Option<HalvesReused>,
) -> Vec<Exclusion> {
    let mut out = certificate.excludes.clone();
    let seams = &layout.job.seams;
    let free = seams.waiting.most().is_none() && seams.offcuts == OffcutReach::House;
    if !free && layout.order.len() > 1 {
        out.push(Exclusion::OffcutsWaiting);
    }
    if let Some(reuse) = reuse {
        out.retain(|e| *e != Exclusion::RippedHalves);
        out.push(Exclusion::ReusedHalves { saved: reuse.saved });
    }
    out
}
