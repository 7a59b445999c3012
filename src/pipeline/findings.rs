//! What is to be told of a house once it is laid.

use crate::course::warnings;
use crate::diag::{Note, Notes};
use crate::job::Job;
use crate::layout::Layout;
use crate::layout::laid::LaidHouse;
use crate::model::house::House;
use crate::model::seam::Conflict;
use crate::takeoff;
use crate::wording::takeoff::advice;
use crate::wording::{movement, seams};

/// Zones of the job that cover nothing.
pub(super) fn empty_zones(house: &House, job: &Job, notes: &mut Notes) {
    for (i, zone) in job.zone.iter().enumerate() {
        let drawn = house.elevations.iter().flat_map(|e| &e.zones).any(|z| z.zone == zone.name);
        if !drawn {
            let message = format!("the zone {} covers no wall", zone.name);
            let help =
                format!("Draw it on a layer that `zone.{i}.layers` names, or give it a `region`.");
            notes.push(Note::warning("zone-empty", message, &help));
        }
    }
}

/// Everything about a laid house, the product's first.
pub(super) fn of_layout(layout: &Layout, notes: &mut Notes) {
    product(&layout.job, notes);
    warnings::tell(layout, notes);
    layout.bound.conflicts.iter().for_each(|c| notes.push(conflict(c, layout)));
    let style = layout.job.sheet.lengths;
    movement::uncovered(&layout.movement, style).into_iter().for_each(|n| notes.push(n));
    let lot = advice::advice(&takeoff::one_lot(&layout.job), &layout.job);
    notes.push(Note::info("one-lot", lot, "Order spare ones with them."));
}

/// What must be asked of a product's maker.
fn product(job: &Job, notes: &mut Notes) {
    let p = &job.product;
    let longest = p.stocks().into_iter().fold(0.0, f64::max);
    let ask_from = p.system().end_gap.ask_from.unwrap_or(f64::INFINITY);
    if longest >= ask_from && p.end_gap.is_none() {
        let style = job.sheet.lengths;
        let message = format!(
            "panels of {} are 20 ft or longer: their maker states a larger gap at the ends; the usual {} is taken",
            style.length(longest),
            style.short(job.end_gap())
        );
        let help = "Set `product.end_gap` from the maker's instructions (association manual).";
        notes.push(Note::warning("long-panel-gap", message, help));
    }
}

/// Rules of seams that could not be kept.
fn conflict(c: &Conflict, laid: &LaidHouse) -> Note {
    let courses: Vec<String> = c.courses.iter().map(|i| (i + 1).to_string()).collect();
    let message = format!(
        "{}: courses {} cannot keep every seam rule: {}",
        c.elevation,
        courses.join(", "),
        seams::broken(&c.rule, laid.job.sheet.lengths)
    );
    let help = seams::remedies(&c.remedies);
    Note::warning("seam-rules-conflict", message, &help).on(&c.elevation)
}
