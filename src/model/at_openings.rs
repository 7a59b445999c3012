//! Seams at openings, counted.

use serde::{Deserialize, Serialize};

/// Seams at openings: those of one sort weigh more than any number of the sorts after it.
#[derive(
    Clone,
    Copy,
    Debug,
    Default,
    PartialEq,
    Eq,
    PartialOrd,
    Ord,
    Serialize,
    Deserialize,
    schemars::JsonSchema,
)]
pub struct AtOpenings {
    /// In a notch over a head or under a sill, or nearer to one than the job's distance from jambs.
    pub in_notches: usize,
    /// On a jamb line: 1 1/2 in from it at most.
    pub on_jambs: usize,
    /// Nearer to a jamb line than the job's distance.
    pub near_jambs: usize,
}

/// How few seams at openings any layout has.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct LeastAtOpenings {
    /// Of each sort by itself.
    pub each: AtOpenings,
    /// In notches; on jamb lines where no more are in notches; near them where no more are of both.
    pub in_turn: AtOpenings,
}
