//! From the layout to what to buy, each figure with how it came about.

mod advice;
mod area;
mod checks;
mod cut_plan;
mod explain;
mod fasteners;
mod flashing;
mod lines;
mod movement;
mod panels;
pub mod price;
mod proof;
pub mod rules;
mod shares;
mod trims;
mod zones;

pub use advice::advice;
pub use area::panels_by_area;
pub use explain::explain;
pub use fasteners::fastening;
pub use movement::{findings as movement_findings, movement};
pub use proof::proof;
pub use shares::shares;

use crate::layout::Layout;
use crate::model::takeoff::{FORMAT, PanelUnit, Takeoff};

/// The quantities of a laid-out house. Counts are rounded up (FACTS TK-24).
pub fn quantities(layout: &Layout) -> Takeoff {
    let trim_cuts = cut_plan::trim_cuts(layout);
    let mut lines = panels::lines(layout);
    lines.extend(trims::lines(layout, &trim_cuts));
    lines.extend(trims::caps(layout));
    lines.extend(flashing::lines(layout, &trim_cuts));
    lines.extend(fasteners::lines(layout));
    lines.extend(zones::lines(layout));
    lines.push(area::line(layout));
    let leftovers = cut_plan::leftovers(layout, &trim_cuts);
    Takeoff {
        format: FORMAT,
        drawing: layout.drawing.clone(),
        offcuts: cut_plan::offcuts(layout, &trim_cuts, &leftovers),
        ways: area::ways(layout),
        checks: checks::checks(layout, &lines),
        advice: advice(layout),
        panels_by: if panels::sold_singly(layout) {
            PanelUnit::Panels
        } else {
            PanelUnit::default()
        },
        cost: None,
        lines,
        trim_cuts,
        leftovers,
    }
}
