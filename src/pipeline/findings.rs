//! What was found of a house once it is laid.

use crate::course::warnings;
use crate::finding::laying::LayingFinding;
use crate::finding::{Finding, Findings};
use crate::job::Job;
use crate::layout::bound::Bound;
use crate::layout::laid::LaidHouse;
use crate::model::conflict::Conflict;
use crate::model::fastening::Movement;
use crate::model::house::House;
use crate::takeoff;

/// Zones of the job that cover nothing.
pub(super) fn empty_zones(house: &House, job: &Job, findings: &mut Findings) {
    for (number, zone) in job.zone.iter().enumerate() {
        let drawn = house.elevations.iter().flat_map(|e| &e.zones).any(|z| z.zone == zone.name);
        if !drawn {
            findings.push(empty_zone(job, number));
        }
    }
}

/// A zone that covers no wall, or too little to side.
pub(super) fn empty_zone(job: &Job, number: usize) -> Finding {
    let zone = job.zone.get(number).map_or_else(String::new, |z| z.name.clone());
    Finding::new(LayingFinding::ZoneEmpty { zone, number })
}

/// Everything about a laid house, the product's first.
pub(super) fn of_laid(
    laid: &LaidHouse,
    bound: &Bound,
    movement: &Movement,
    findings: &mut Findings,
) {
    product(&laid.job, findings);
    warnings::tell(laid, findings);
    bound.conflicts.iter().for_each(|c| findings.push(conflict(c)));
    takeoff::movement_findings(movement).into_iter().for_each(|f| findings.push(f));
    findings.push(Finding::new(one_lot(&laid.job)));
}

/// What must be asked of a product's manufacturer.
fn product(job: &Job, findings: &mut Findings) {
    let p = &job.product;
    let length = job.longest_length();
    let ask_from = p.system().end_gap.ask_from.unwrap_or(f64::INFINITY);
    if length >= ask_from && p.end_gap.is_none() {
        let gap = job.end_gap();
        findings.push(Finding::new(LayingFinding::LongPanelGap { length, gap }));
    }
}

fn one_lot(job: &Job) -> LayingFinding {
    let color = Some(job.product.color.clone()).filter(|c| !c.is_empty());
    LayingFinding::OneLot { color, piece: job.product.kind.piece() }
}

/// Rules of seams that could not be kept.
fn conflict(c: &Conflict) -> Finding {
    let kind = LayingFinding::SeamRulesConflict {
        courses: c.courses.iter().map(|i| i + 1).collect(),
        rule: c.rule.clone(),
        remedies: c.remedies.clone(),
    };
    Finding::new(kind).on(&c.elevation)
}
