//! Trim by stock length.

use std::collections::BTreeSet;

use super::waste;
use crate::job::TrimRules;
use crate::model::layout::{Layout, TakeoffLine};
use crate::model::trim::{TrimPiece, TrimStock};

/// Length of a stock.
fn stock_length(stock: TrimStock, r: &TrimRules) -> f64 {
    match stock {
        TrimStock::Starter => r.starter,
        TrimStock::OutsidePost => r.outside_post,
        TrimStock::InsidePost => r.inside_post,
        TrimStock::JChannel => r.j_channel,
        TrimStock::FinishTrim => r.finish_trim,
        TrimStock::DripCap => r.drip_cap,
    }
}

pub(super) fn lines(layout: &Layout) -> Vec<TakeoffLine> {
    TrimStock::ALL
        .into_iter()
        .filter_map(|stock| {
            let mine: Vec<&TrimPiece> =
                layout.trims.iter().filter(|t| t.kind.stock() == stock).collect();
            let used: f64 = mine.iter().map(|t| t.length).sum();
            let pieces: BTreeSet<&str> = mine.iter().map(|t| t.stock.as_str()).collect();
            let length = stock_length(stock, &layout.job.trim);
            (!mine.is_empty()).then(|| TakeoffLine {
                item: stock.words().into(),
                unit: "piece".into(),
                net: used / length,
                order: pieces.len() as f64,
                waste: waste(used, pieces.len() as f64 * length),
                how: format!(
                    "{} lengths, {} in all, cut from {}",
                    mine.len(),
                    crate::units::feet_inches(used),
                    crate::units::feet_inches(length)
                ),
            })
        })
        .collect()
}
