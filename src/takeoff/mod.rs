//! From the layout to what to buy, each figure with how it came about.

mod area;
mod fasteners;
mod panels;
mod trims;

pub use area::panels_by_area;

use crate::model::layout::Layout;
use crate::model::takeoff::Takeoff;

/// The quantities of a laid-out house. Counts are rounded up (FACTS TK-24).
pub fn quantities(layout: &Layout) -> Takeoff {
    let mut lines = panels::lines(layout);
    lines.extend(trims::lines(layout));
    lines.extend(fasteners::lines(layout));
    lines.extend(area::lines(layout));
    Takeoff { lines }
}

/// Percent of what is bought that is not used.
fn waste(used: f64, bought: f64) -> f64 {
    if bought > 0.0 { (100.0 * (1.0 - used / bought)).max(0.0) } else { 0.0 }
}
