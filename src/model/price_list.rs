//! Prices of what one panel can give: a proof of how few panels there can be.

use serde::{Deserialize, Serialize};

/// Prices of pieces, under which nothing that one panel can give is worth more than the panel: at most one
/// left and one right end piece, pieces of runs without a seam, no more of a length than there are such
/// runs, a saw cut between (Gilmore and Gomory, Operations Research 9, 1961). What all runs are worth at
/// least, each parted as is cheapest, is then worth no more than the panels.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize, schemars::JsonSchema)]
pub struct PriceList {
    /// Of end pieces, left and right alike: what those from a length on cost more, from the shortest that
    /// the rules allow.
    pub ends: Vec<EndPrice>,
    /// What end pieces cost more for each step beyond the shortest.
    pub beyond: i64,
    /// Of runs without a seam, by length, rising; others cost nothing.
    pub seamless: Vec<PiecePrice>,
}

/// What end pieces from a length on cost more.
#[derive(
    Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, schemars::JsonSchema,
)]
pub struct EndPrice {
    /// The length, steps.
    pub from: i64,
    /// What they cost more.
    pub more: i64,
}

/// Price of a run without a seam.
#[derive(
    Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, schemars::JsonSchema,
)]
pub struct PiecePrice {
    /// Its length, steps.
    pub length: i64,
    /// Its price.
    pub price: i64,
}
