//! From the layout to what to buy, each figure with how it came about, as facts.

mod advice;
mod area;
mod bare;
mod checks;
mod cut_plan;
mod estimate;
mod fasteners;
mod flashing;
mod level_flashing;
mod lines;
mod movement;
mod nail_lines;
mod one_order;
mod panels;
pub mod price;
mod proof;
pub mod rules;
mod seam_places;
mod shares;
mod shown;
mod trims;
mod zones;

pub use area::with_lengths_alone;
pub use fasteners::fastening;
pub use movement::{findings as movement_findings, movement};
pub use one_order::{NamedSet, Set, one_order, purchase};
pub use proof::{Others, proof};
pub use shares::shares;

use crate::layout::laid::LaidHouse;
use crate::model::quantity::TakeoffLine;
use crate::model::takeoff::{FORMAT, PanelUnit, StockCut, Takeoff};

/// What to buy, line by line. Counts are rounded up (`TakeoffFact::RoundedForSafety`).
fn lines(layout: &LaidHouse, trim_cuts: &[StockCut]) -> Vec<TakeoffLine> {
    let mut lines = panels::lines(layout);
    lines.extend(trims::lines(layout, trim_cuts));
    lines.extend(trims::caps(layout));
    lines.extend(flashing::lines(layout, trim_cuts));
    lines.extend(nail_lines::lines(layout));
    lines.extend(zones::lines(layout));
    lines.extend(bare::line(layout));
    lines.extend(estimate::lines(layout));
    lines.extend(estimate::labor(layout, &lines));
    lines.push(area::line(layout));
    lines.iter_mut().for_each(|l| named_by_job(l, layout));
    lines
}

/// The color and the supplier's number that the job gives a line.
fn named_by_job(line: &mut TakeoffLine, layout: &LaidHouse) {
    let rules = &layout.job.estimate;
    if let Some(color) = rules.colors.get(line.id.as_str()) {
        line.color.clone_from(color);
    }
    if let Some(number) = rules.item_numbers.get(line.id.as_str()) {
        line.item_number.clone_from(number);
    }
}

/// The takeoff of a laid-out house, reckoned once: its lines, and what they are cut from and weighed
/// against.
pub fn quantities(layout: &LaidHouse) -> Takeoff {
    let trim_cuts = cut_plan::trim_cuts(layout);
    let lines = lines(layout, &trim_cuts);
    let leftovers = cut_plan::leftovers(layout, &trim_cuts);
    Takeoff {
        format: FORMAT.to_owned(),
        drawing: layout.drawing.clone(),
        offcuts: cut_plan::offcuts(layout, &lines, &trim_cuts, &leftovers),
        comparison: area::comparison(layout),
        checks: checks::checks(layout, &lines),
        advice: advice::advice(layout),
        panels_by: if panels::sold_singly(layout) {
            PanelUnit::Panels
        } else {
            PanelUnit::default()
        },
        cost: None,
        one_order: Vec::new(),
        lines,
        trim_cuts,
        leftovers,
    }
}
