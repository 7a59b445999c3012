//! The rule of thumb beside the layout: net area and a percentage.

use crate::model::layout::{Layout, TakeoffLine};

/// Panels that net area and the job's percentage would buy, at nominal coverage (length times
/// exposure, the lap not taken off, as in trade lists: FACTS section 2).
pub fn panels_by_area(layout: &Layout) -> usize {
    let net: f64 = layout.walls().map(|(_, w)| w.net_area).sum();
    let product = &layout.job.product;
    let each = product.exposure * product.length / 144.0;
    (net * (1.0 + layout.job.takeoff.area_waste / 100.0) / each - 1e-9).ceil().max(0.0) as usize
}

pub(super) fn lines(layout: &Layout) -> Vec<TakeoffLine> {
    let by_area = panels_by_area(layout);
    let laid = layout.panels.len();
    let verdict = match by_area.cmp(&laid) {
        std::cmp::Ordering::Less => {
            format!("{} panels SHORT of what this layout takes", laid - by_area)
        }
        std::cmp::Ordering::Equal => "the same as this layout".to_owned(),
        std::cmp::Ordering::Greater => {
            format!("{} panels more than this layout takes", by_area - laid)
        }
    };
    vec![TakeoffLine {
        item: format!("for comparison: net area + {} %", layout.job.takeoff.area_waste),
        unit: "panel".into(),
        net: by_area as f64,
        order: 0.0,
        waste: 0.0,
        how: format!("not ordered; {verdict}"),
    }]
}
