//! The lengths that panels are stocked in: `[[stock]]`, or the simple keys of `[product]`.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::length::{Length, length};
use crate::model::seam::MOST_STOCKS;

/// A length that panels come in. Where several are given the layout mixes them, whole panels and end
/// pieces of a run coming from any, so that the length bought is least, or the cost. A run that the
/// shortest covers gets no seam unless `seams.seam_short_runs`; one that only longer ones cover may.
/// Only panels, not boards, are mixed; eight lengths at most. In place of `length` and `carton` of
/// `[product]`, which say one length the simple way.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Stock {
    /// Length of a panel.
    #[serde(deserialize_with = "length")]
    #[schemars(with = "Length")]
    pub length: f64,
    /// Panels in a carton. Left out, as many as `product.carton`.
    #[serde(default = "left_out")]
    pub carton: u32,
    /// What a panel costs: money, or any other measure that the costs of all stocks share. Given for
    /// all of them, the cost is kept least; left out of all, each costs by its length.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub cost: Option<f64>,
}

/// Stands for a carton that is left out, until the job has settled it.
pub(super) const LEFT_OUT: u32 = u32::MAX;

fn left_out() -> u32 {
    LEFT_OUT
}

/// What `[product]` says of stock lengths. Empty once the job has settled it as stocks; kept where it
/// contradicts itself or `[[stock]]`, to be refused.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct GivenStocks {
    pub(super) length: Option<f64>,
    pub(super) second_length: Option<f64>,
    pub(super) second_cost: Option<f64>,
    pub(super) second_carton: Option<u32>,
}

/// The place of the stock that a panel of this length is of.
pub fn stock_of(stocks: &[Stock], length: f64) -> usize {
    let off = |i: &usize| (stocks[*i].length - length).abs();
    (0..stocks.len()).min_by(|a, b| off(a).total_cmp(&off(b))).unwrap_or(0)
}

/// The letter that names of a stock's panels begin with: P for the first, S for the second. Then on by the
/// alphabet, less W and X, which name openings and broken rules.
pub fn panel_letter(stock: usize) -> char {
    const LETTERS: [char; MOST_STOCKS] = ['P', 'S', 'T', 'U', 'V', 'Y', 'Q', 'R'];
    LETTERS.get(stock).copied().unwrap_or('P')
}
