//! Panels, cartons and squares: three separate numbers (FACTS TK-22).

use super::waste;
use crate::model::layout::{Layout, TakeoffLine};

pub(super) fn lines(layout: &Layout) -> Vec<TakeoffLine> {
    let product = &layout.job.product;
    let used: f64 = layout.pieces().map(|(.., p)| p.length).sum();
    let count = layout.panels.len() as f64;
    let bought = count * product.length;
    let mut out = vec![TakeoffLine {
        item: "panels".into(),
        unit: "piece".into(),
        net: used / product.length,
        order: count,
        waste: waste(used, bought),
        how: format!(
            "{} pieces cut from {count} panels of {}; {}",
            layout.pieces().count(),
            crate::units::feet_inches(product.length),
            layout.bound.words
        ),
    }];
    let spare = (count * layout.job.takeoff.spare / 100.0).ceil();
    if spare > 0.0 {
        out.push(TakeoffLine {
            item: "spare panels".into(),
            unit: "piece".into(),
            net: 0.0,
            order: spare,
            waste: 100.0,
            how: format!("{} % of the panels, for damage, by the job", layout.job.takeoff.spare),
        });
    }
    let all = count + spare;
    let cartons = (all / f64::from(product.carton.max(1))).ceil();
    out.push(TakeoffLine {
        item: "cartons".into(),
        unit: "carton".into(),
        net: all / f64::from(product.carton.max(1)),
        order: cartons,
        waste: waste(used, cartons * f64::from(product.carton) * product.length),
        how: format!("{all} panels, {} to a carton, rounded up", product.carton),
    });
    let net: f64 = layout.walls().map(|(_, w)| w.net_area).sum();
    let square = product.exposure * product.length / 144.0 / 100.0;
    out.push(TakeoffLine {
        item: "squares".into(),
        unit: "100 sq ft".into(),
        net: net / 100.0,
        order: cartons * f64::from(product.carton) * square,
        waste: waste(net / 100.0, cartons * f64::from(product.carton) * square),
        how: format!(
            "net wall area {net:.1} sq ft; ordered as whole cartons at {:.3} sq ft a panel",
            square * 100.0
        ),
    });
    out
}
